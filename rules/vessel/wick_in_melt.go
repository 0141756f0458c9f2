package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
)

// WickInMelt is a wick in what is said to be a melt. All rules about flames are
// silent for melts, so that the word would switch them off; batch.MadeIn takes
// the wick at its word instead.
var WickInMelt = &lint.Rule{
	Name:   "wick-in-melt",
	Group:  group,
	Title:  "a wick in what is said to be a melt",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "A melt is warmed without a flame, so nobody asks whether its vessel bears one, whether the wick fits, or what a label must warn of. " +
		"With a wick in it, it will be lit: in a plastic clamshell, in a glass that nobody rated, with no warning on it.",
	Remedy: "Leave the wick out, or say what candle it is (makes = \"jar\"). Until then it is judged as the candle that its vessel holds.",
	Source: "common practice: what has a wick is a candle",
	Bad: []lint.Example{
		{
			About:   "a jar with its wick, said to be a melt",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `makes    = "jar"`, To: `makes    = "melt"`}},
			Flags:   []string{`"cored-cotton-44"`},
		},
		{
			About:   "a wick in a clamshell, and nothing said of what it makes",
			Recipe:  "gorse-melt",
			Changes: []lint.Change{{From: "  makes    = \"melt\"\n", To: ""}, {From: "    count = 10\n", To: "    count = 10\n    wick  = \"cored-cotton-44\"\n"}},
			Flags:   []string{`"cored-cotton-44"`},
		},
	},
	Good: []lint.Example{
		{About: "melts without wicks", Recipe: "gorse-melt"},
		{About: "a jar that says so", Recipe: "harbor-jar", Shows: `makes    = "jar"`},
	},
	Also: []string{
		"container-not-for-candles", "wax-not-for-container", "wick-not-for-wax", "wick-outside-diameter", "wick-tab-missing", "wick-untrimmed", "signal-missing",
		"caution-missing", "test-burn-missing", "test-burn-stale",
	},
	Check: checkWickInMelt,
}

func checkWickInMelt(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		said, melts := b.SaidToBeMelts(v)
		if !melts || !burns(b, v) {
			continue
		}
		w := wickOf(p, b, i)
		made := b.MadeIn(v)
		name := w.said.Text()
		if w.stock != nil {
			name = w.stock.Title()
		}
		p.Report(lint.Finding{
			At: lint.AtValue(w.said),
			Message: fmt.Sprintf("%s is a wick, and what is made in %s is said to be a melt, which has no flame: with a wick it will be lit, so it is judged as a %s. Leave the wick out, or say which candle it is",
				name, v.Stock.Title(), made),
			Notes: batch.NoteAt("that it is a melt is said here", said),
			Fixes: func() []schema.Fix {
				fixes := []schema.Fix{{Title: "leave the wick out: it is a melt", Guess: true, Edits: []schema.Edit{schema.RemoveAttr(w.said)}}}
				if said.Block == b.Recipe {
					candle := repair.Rewrite("write makes = \""+made+"\": it is a candle", said, schema.Quote(made))
					candle.Guess = true
					fixes = append(fixes, candle)
				}
				return fixes
			},
		})
	}
}
