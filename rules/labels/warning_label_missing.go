package labels

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// WarningLabelMissing is a candle on which no label is put at all. What the
// labels lack is caution-missing's to say, so that one cause is one finding.
var WarningLabelMissing = &lint.Rule{
	Name:   "warning-label-missing",
	Group:  Group,
	Title:  "a candle without a warning label",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Should, Sale: lint.Must}, Binding: true,
	Why: "Whoever lights a bought candle was not in the workshop when you explained how to burn it. The label is all they have: keep it in sight, " +
		"away from what can catch fire, out of the reach of children. Every market this tool knows expects those words on the candle or on what " +
		"it is sold in, to be read before it is bought. In a class the label goes home with the candle. On your own shelf it is a " +
		"kindness to whoever lights it after you.",
	Remedy: "Add a step \"attach label\" with a label made for every market the candle is sold in.",
	Card: lint.Card{
		Question: "Does every candle need a warning label?",
		Answer: "Every candle that is sold. Whoever lights it has only the label: keep it in sight, away from what can catch fire, out of the reach " +
			"of children.",
		AllRight: "On your own shelf nobody asks for one. On a gift it is a kindness.",
		Do:       "Put a label of your market on the candle or on what it is sold in, where it is read before it is bought.",
	},
	Source:   "ASTM F2058 (US) and EN 15494 (EU, UK), as far as publicly known; in the EU also Regulation (EU) 2023/988 on general product safety (from memory)",
	Cautions: deferral,
	Bad: []lint.Example{
		{
			About:   "no label attached",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "  step \"attach label\" {\n    label = \"us-base\"\n    on    = \"base\"\n  }\n", To: ""}},
			Flags:   []string{`mold "pillar-3x6"`},
		},
		{
			About:   "a step that attaches a label without saying which",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "    label = \"us-base\"\n", To: ""}},
			Flags:   []string{`step "attach label"`},
		},
		{
			About:  "a candle from a class",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: "made_for = \"sale\"", To: "made_for = \"class\""},
				{From: "  step \"attach label\" {\n    label = \"us-base\"\n    on    = \"base\"\n  }\n", To: ""},
			},
			Flags: []string{`mold "pillar-3x6"`},
			Level: lint.Should,
		},
	},
	Good: []lint.Example{
		{About: "a base label", Recipe: "tide-pillar", Shows: `step "attach label"`},
		{About: "a wax melt has no flame to be warned of", Recipe: "gorse-melt", Shows: `makes    = "melt"`},
	},
	Check: checkWarningLabel,
}

func checkWarningLabel(p *lint.Pass) {
	b := batch.Of.In(p.View)
	all := labelsOf(p, b)
	for _, on := range all {
		if on.broken || len(on.labels) > 0 || isMelt(b, on.vessel) {
			continue
		}
		subject := p.Recipe.Title()
		if len(all) > 1 {
			subject = fmt.Sprintf("%s in %s", subject, on.vessel.Stock.Title())
		}
		said := "gets no label"
		if len(on.steps) > 0 {
			said = "gets a label, but the step does not say which"
		}
		p.Missing(lint.Finding{
			At: on.at(p.Recipe),
			Message: fmt.Sprintf("%s %s: nothing tells whoever lights it to keep it in sight, away from what can catch fire and out of the reach of children%s",
				subject, said, forWhom(p)),
			Fixes: func() []schema.Fix { return attachments(p, on, candleType(b, on.vessel), len(all) > 1) },
		})
	}
}

// forWhom ends the message with what the candle is made for.
func forWhom(p *lint.Pass) string {
	switch p.MadeFor {
	case lint.Class:
		return "; it goes home from the class with somebody who may not have listened"
	case lint.OwnUse:
		return "; worth it even at home, for whoever lights it after you"
	}
	return fmt.Sprintf("; it may not be sold in %s like this", marketList(p.Markets()))
}
