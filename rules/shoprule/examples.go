package shoprule

import (
	"fmt"

	"wickrule/lint"
	"wickrule/schema"
)

// Untested is a rule without a sound or without a faulty example.
var Untested = &lint.Rule{
	Name:   untested,
	Group:  Group,
	Title:  "a rule of the shop's own that no example proves",
	Levels: lint.Every(lint.Should),
	About:  lint.AboutFile,
	Why: "A rule that has never been seen to speak may never do so, and one that has never been seen to pass may speak of everything. " +
		"One example of each kind, where the rule is written, tells.",
	Remedy: "Write a sound example that the rule must pass and a faulty one in which it must speak, inside the rule.",
	Source: source,
	Bad: []lint.Example{{
		About: "a rule with no examples",
		Text:  ruleText("pours-are-cool", `"pour"`, `pour.at <= amount("180 °F")`, ""),
		Flags: []string{`"pours-are-cool"`},
	}},
	Also: []string{restsOnNothing},
	Good: []lint.Example{{About: "one example of each kind", Text: coolPours("170 °F", "190 °F")}},
	Check: eachRule(func(p *lint.Pass, b *schema.Block, _ *program) {
		sound, faulty := 0, 0
		for _, inner := range b.Blocks() {
			switch {
			case inner.Is("sound"):
				sound++
			case inner.Is("faulty"):
				faulty++
			}
		}
		lacks := ""
		switch {
		case sound+faulty == 0:
			lacks = "a sound example nor a faulty one"
			p.Missing(lint.Finding{At: lint.AtLabel(b), Message: fmt.Sprintf("%s has neither %s: nobody knows whether it speaks when it should", b.Title(), lacks)})
			return
		case sound == 0:
			lacks = "no sound example: it may speak of everything"
		case faulty == 0:
			lacks = "no faulty example: nobody has seen it speak"
		default:
			return
		}
		p.Missing(lint.Finding{At: lint.AtLabel(b), Message: b.Title() + " has " + lacks})
	}),
}

// coolPours is a rule whose two examples pour at these temperatures.
func coolPours(sound, faulty string) string {
	pour := func(block, at string) string {
		return fmt.Sprintf("  %s {\n    recipe %q {\n      step \"pour\" { at = %q }\n    }\n  }\n", block, block+"-pour", at)
	}
	return ruleText("pours-are-cool", `"pour"`, `pour.at <= amount("180 °F")`, pour("sound", sound)+pour("faulty", faulty))
}

// ExampleFails is an example that did not come out as it must.
var ExampleFails = &lint.Rule{
	Name:   "rule-example-fails",
	Group:  Group,
	Title:  "an example that does not come out as its rule says",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFile,
	Why: "Either the rule does not say what is meant, or the example is not what it is called. Until one of the two is put right " +
		"the rule cannot be trusted, neither where it speaks nor where it is silent.",
	Remedy: "Read the rule against the example: put right whichever is wrong.",
	Source: source,
	Bad: []lint.Example{
		{
			About: "a sound example that the rule speaks of",
			Text:  coolPours("185 °F", "190 °F"),
			Flags: []string{`recipe "sound-pour"`},
		},
		{
			About: "a faulty example that the rule passes",
			Text:  coolPours("170 °F", "180 °F"),
			Flags: []string{`recipe "faulty-pour"`},
		},
	},
	Also: []string{restsOnNothing},
	Good: []lint.Example{{About: "both come out as they must", Text: coolPours("180 °F", "180.5 °F")}},
	Check: eachRule(func(p *lint.Pass, b *schema.Block, own *program) {
		if !own.runs() || !p.Whole() {
			return
		}
		proof := Prove(p.View, b)
		for _, e := range proof.Examples {
			if e.Says != "" && e.Readable {
				p.Report(lint.Finding{At: e.At, Message: e.Says})
			}
		}
	}),
}
