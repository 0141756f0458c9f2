package labels

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// SignalMissing is a US label without its signal word. A candle with no label at
// all has another finding.
var SignalMissing = &lint.Rule{
	Name:   "signal-missing",
	Group:  Group,
	Title:  "a US label without the word WARNING",
	Levels: lint.Levels{Sale: lint.Should},
	Why: "In the US the cautions on a candle follow the triangle with the exclamation mark and the word WARNING in capitals, so that " +
		"they are found at a glance. Elsewhere the triangle is one of the cautions, and a signal word comes from the hazard classification.",
	Remedy:   "State signal = \"WARNING\" on a label whose print really has it.",
	Source:   "ASTM F2058-07(2021), as publicly known",
	Cautions: deferral,
	Bad: []lint.Example{{
		About:   "cautions without the word before them",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "label = \"us-base\"", To: "label = \"quiet-base\""}},
		Stock:   strings.ReplaceAll(exampleLabel, "  signal     = \"WARNING\"\n", ""),
		Flags:   []string{`"quiet-base"`},
	}},
	Good:  []lint.Example{{About: "the word in capitals", Recipe: "tide-pillar", Shelf: `label us-base`}},
	Check: checkSignal,
}

func checkSignal(p *lint.Pass) {
	if !p.SoldIn("US") {
		return
	}
	b := batch.Of.In(p.View)
	eachLabelled(p, b, func(on attached) {
		signal, whole := on.first("signal")
		if !whole || isMelt(b, on.vessel) || signal.Text() == "WARNING" {
			return
		}
		f := lint.Finding{At: on.at(p.Recipe), Message: fmt.Sprintf("%s %s the word WARNING in capitals before the cautions, as sold in the US", on.titles(), verb(len(on.labels), "lacks", "lack"))}
		if signal.Known() {
			f.Message += fmt.Sprintf(": it says %q", signal.Text())
			f.Notes = []lint.Note{{Place: lint.AtValue(signal), Message: "its signal word stands here"}}
		}
		p.Report(f)
	})
}
