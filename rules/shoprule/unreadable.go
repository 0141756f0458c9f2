package shoprule

import (
	"fmt"

	"wickrule/lint"
	"wickrule/schema"
)

// Group is the heading of what is said about rules and trials.
const Group = "Own rules and trials"

const source = "the house format, schema/FORMAT.md and rules/shoprule/NAMES.md"

// Rules are the rules about a shop's own rules and trials, in handbook order.
func Rules() []*lint.Rule {
	return []*lint.Rule{Unreadable, Untested, ExampleFails, TuneWithoutEffect, RestsOnNothing, TrialContradicts, TrialOpen}
}

// Names that are spoken of before their rules are made.
const (
	unreadable     = "rule-unreadable"
	untested       = "rule-untested"
	restsOnNothing = "rule-rests-on-nothing"
)

// Unreadable is a rule whose expressions cannot be compiled.
var Unreadable = &lint.Rule{
	Name:   unreadable,
	Group:  Group,
	Title:  "a rule of the shop's own that cannot be read",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFile,
	Why: "A rule that asks for a name there is not, or holds a temperature against a weight, can never speak. " +
		"It is told where it is written, and the other rules go on; until it is put right nobody is warned of what it was written for.",
	Remedy: "Put the expression right at the characters shown. What can be named, with what it measures, stands in the reference of names.",
	Source: source,
	Bad: []lint.Example{
		{
			About: "a temperature held against a weight",
			Text:  ruleText("pours-are-cool", `"pour"`, `pour.at <= amount("180 g")`, ""),
			Flags: []string{`pour.at <= amount("180 g")`},
		},
		{
			About: "the name of a rule that comes with the program",
			Text:  ruleText(untested, `"pour"`, `pour.at <= amount("180 °F")`, ""),
			Flags: []string{`"` + untested + `"`},
		},
		{
			About: "a name that a pour does not have",
			Text:  ruleText("pours-are-cool", `"pour"`, `pour.heat <= amount("180 °F")`, ""),
			Flags: []string{"heat"},
		},
	},
	Good: []lint.Example{{
		About: "a temperature against a temperature",
		Text:  ruleText("pours-are-cool", `"pour"`, `pour.at <= amount("180 °F")`, ""),
	}},
	Also: []string{untested, restsOnNothing},
	Check: eachRule(func(p *lint.Pass, b *schema.Block, own *program) {
		if ofProgram(p, b.Label) {
			p.Report(lint.Finding{At: lint.AtLabel(b), Message: b.Label + " is already a rule that comes with the program, and this one is passed over: choose another name"})
		}
		for _, problem := range own.problems {
			f := lint.Finding{At: lint.Place{File: b.File, Span: moved(problem.span, b.Span.Start)}, Message: problem.message}
			if write := problem.instead; write != "" {
				f.Fixes = func() []schema.Fix {
					return []schema.Fix{{Title: "write " + write, Edits: []schema.Edit{{File: b.File, Span: moved(problem.put, b.Span.Start), Text: write}}}}
				}
			}
			p.Report(f)
		}
	}),
}

// ofProgram says whether a rule of that name comes with the program.
func ofProgram(p *lint.Pass, name string) bool {
	r := p.RuleNamed(name)
	return r != nil && r.Group != OwnGroup
}

// ruleText is a rule for an example.
func ruleText(name, about, require, more string) string {
	return fmt.Sprintf("rule %q {\n  title   = \"A rule\"\n  about   = %s\n  require = %s\n%s}\n", name, about, require, more)
}

// eachRule is a check that looks at every rule block of a file, as it is
// written.
func eachRule(look func(*lint.Pass, *schema.Block, *program)) func(*lint.Pass) {
	return func(p *lint.Pass) {
		for _, b := range p.File.Blocks {
			if b.Is("rule") {
				look(p, b, programs.In(p.View, written(b)))
			}
		}
	}
}

func moved(s schema.Span, by int32) schema.Span {
	return schema.Span{Start: s.Start + by, End: s.End + by}
}
