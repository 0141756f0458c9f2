package shoprule

import (
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/schema"
)

// TuneWithoutEffect is a tune, or an option in one, that changes nothing.
var TuneWithoutEffect = &lint.Rule{
	Name:   "tune-without-effect",
	Group:  Group,
	Title:  "a tune that does not do what it says",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFile,
	Why: "Whoever wrote it believes that the rule goes by another figure here. It does not: the rule goes on as it is written, " +
		"and its findings are not those that were meant.",
	Remedy: "Spell the option as the rule does, and give it what it is in the rule: an amount of the same dimension, a number, a text, true or false.",
	Cautions: "The examples of a rule prove it as it is written. A figure of the shop's own has no example: look once at what the rule says with it, " +
		"of a recipe on either side.",
	Source: source,
	Bad: []lint.Example{
		{
			About: "an option that the rule does not have",
			Text:  poursInHand + tuning("in_had", `"5 °F"`),
			Flags: []string{`"in_had"`},
		},
		{
			About: "a weight for a difference of temperatures",
			Text:  poursInHand + tuning("in_hand", `"5 g"`),
			Flags: []string{`"5 g"`},
		},
		{
			About: "neither a level nor an option",
			Text:  "shop \"quay\" {\n  tune \"dye-by-eye\" {\n    reason = \"We know our dyes\"\n  }\n}\n",
			Flags: []string{`tune "dye-by-eye"`},
		},
	},
	Good: []lint.Example{{
		About: "another difference",
		Text:  poursInHand + tuning("in_hand", `"5 °F"`),
	}},
	Also:  []string{untested, restsOnNothing, "key-repeated"},
	Check: checkTunes,
}

var poursInHand = ruleText("pours-are-cool", `"pour"`, `pour.at <= amount("180 °F") - option.in_hand`,
	"  option \"in_hand\" {\n    is = degrees(\"10 °F\")\n  }\n")

func tuning(option, is string) string {
	return fmt.Sprintf("\nshop \"quay\" {\n  tune \"pours-are-cool\" {\n    option %q {\n      is = %s\n    }\n  }\n}\n", option, is)
}

func checkTunes(p *lint.Pass) {
	for _, b := range p.File.Blocks {
		if !b.Is("shop") {
			continue
		}
		var earlier []string
		for tune := range b.Each("tune") {
			switch {
			case tune.Label == "":
			case slices.Contains(earlier, tune.Label):
				p.Report(lint.Finding{At: lint.AtLabel(tune), Message: "there is a tune of " + tune.Label + " above, and the first one counts", Fixes: takingOut(tune)})
			default:
				earlier = append(earlier, tune.Label)
				checkTune(p, tune)
			}
		}
	}
}

func checkTune(p *lint.Pass, tune *schema.Block) {
	if len(tune.Blocks()) == 0 {
		if tune.Get("level").Absent() && !amiss(tune) {
			p.Missing(lint.Finding{At: lint.AtHeader(tune), Message: "this tune of " + tune.Label + " changes nothing: it has neither a level nor an option"})
		}
		return
	}
	if ofProgram(p, tune.Label) {
		for o := range tune.Each("option") {
			p.Report(lint.Finding{At: lint.AtLabel(o), Message: tune.Label + " has no options: only rules of the shop's own have"})
		}
		return
	}
	rule, ok := p.Stock("rule", tune.Label)
	if !ok {
		return // the name leads nowhere, which is told
	}
	t := &tuned{Pass: p, rule: rule, program: programs.In(p.View, written(rule))}
	t.options(tune)
	if t.program.runs() {
		t.whole(tune)
	}
}

// amiss says whether something in a block is not of the format, which is told
// there.
func amiss(b *schema.Block) bool {
	return slices.ContainsFunc(b.File.Problems, func(p schema.Problem) bool { return b.Span.Contains(p.Span) })
}

// tuned is a look at what a shop has for the options of a rule.
type tuned struct {
	*lint.Pass
	rule    *schema.Block
	program *program // as it is written
}

// options looks at each by itself.
func (t *tuned) options(tune *schema.Block) {
	var earlier []string
	for o := range tune.Each("option") {
		is := o.Get("is")
		was := t.program.options[o.Label]
		switch {
		case o.Label == "" || slices.Contains(t.program.unread, o.Label): // told where it is written
		case was == nil:
			t.unknown(o)
		case slices.Contains(earlier, o.Label):
			t.Report(lint.Finding{At: lint.AtLabel(o), Message: "there is already an option " + o.Label + " in this tune, and the first one counts", Fixes: takingOut(o)})
		default:
			earlier = append(earlier, o.Label)
			if _, m := was.tuned(o.Label, is); m != nil {
				t.Report(lint.Finding{At: lint.AtValue(is), Message: m.message, Fixes: t.writing(is.Span(), o.File, m.instead), Notes: t.notes(o.Label)})
			}
		}
	}
}

func (t *tuned) unknown(o *schema.Block) {
	message := t.rule.Label + " has no option " + o.Label
	if len(t.program.optionNames) == 0 {
		t.Report(lint.Finding{At: lint.AtLabel(o), Message: message + ": it has none at all"})
		return
	}
	near, _ := schema.Nearest(o.Label, t.program.optionNames)
	if near != "" {
		near = schema.Quote(near)
	}
	t.Report(lint.Finding{At: lint.AtLabel(o), Message: message + "; " + schema.NearestOrKnown(o.Label, t.program.optionNames, ""),
		Fixes: t.writing(o.LabelSpan, o.File, near)})
}

// notes lead to the option in the rule.
func (t *tuned) notes(name string) []lint.Note {
	for o := range t.rule.Each("option") {
		if o.Label == name {
			return []lint.Note{{Place: lint.AtHeader(o), Message: "the option stands here"}}
		}
	}
	return nil
}

// writing is the fix that puts other words there; nil for none.
func (t *tuned) writing(at schema.Span, file *schema.File, write string) func() []schema.Fix {
	if write == "" {
		return nil
	}
	return func() []schema.Fix {
		return []schema.Fix{{Title: "write " + write, Edits: []schema.Edit{{File: file, Span: at, Text: write}}}}
	}
}

// takingOut is the fix for what does not count: without it all stays as it is.
func takingOut(b *schema.Block) func() []schema.Fix {
	return func() []schema.Fix {
		return []schema.Fix{{Title: "take this one out", Edits: []schema.Edit{schema.RemoveBlock(b)}}}
	}
}

// whole looks at whether the rule can be read with all of them: a text may be
// none of the words that it is compared with. It is told at the option that
// does it by itself; where none does, at the tune.
func (t *tuned) whole(tune *schema.Block) {
	if programs.In(t.View, tunedBy(t.rule, tune)).runs() {
		return
	}
	message := func(with *program) string {
		return fmt.Sprintf("with this %s cannot be read, and goes on as it is written: %s", t.rule.Label, with.problems[0].message)
	}
	alone := false
	for o := range tune.Each("option") {
		is := o.Get("is")
		if is.Span() != tunedOption(tune, o.Label).Span() {
			continue // an earlier one counts
		}
		if with := programs.In(t.View, setBy(t.rule, o)); !with.runs() {
			alone = true
			t.Report(lint.Finding{At: lint.AtValue(is), Message: message(with), Fixes: t.writing(is.Span(), o.File, with.problems[0].instead), Notes: t.notes(o.Label)})
		}
	}
	if !alone {
		t.Report(lint.Finding{At: lint.AtHeader(tune), Message: message(programs.In(t.View, tunedBy(t.rule, tune)))})
	}
}
