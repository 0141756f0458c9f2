package labels

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/hazard"
)

// HazardLabelUnfounded is a label with hazards that the candle is not
// classified for.
var HazardLabelUnfounded = &lint.Rule{
	Name:   "hazard-label-unfounded",
	Group:  Group,
	Title:  "a label with a hazard sign or statement that the classification does not call for",
	Levels: lint.Levels{Sale: lint.Consider},
	Why: "A sign too many hides the one that matters, and the law wants none that the classification does not give. It happens when a label is taken over from another scent, from the neat oil " +
		"or from a sheet for another load: an exclamation mark beside the corrosion sign for irritation alone, the fish and tree for H412, H319 beside H318.",
	Remedy:   "Compare the label with the classification shown, and print it anew; or, where tests of the candle or another sheet stand behind it, leave it and write that in the label's notes.",
	Source:   "Regulation (EC) No 1272/2008, Articles 25, 26 and 27, and Annex I for the arithmetic; the same as retained in Great Britain",
	Cautions: deferral,
	Bad: []lint.Example{{
		About:   "the environment's sign for harm that has none",
		Recipe:  "firth-uk",
		Changes: []lint.Change{{From: "label = \"uk-amber-jar\"", To: "label = \"uk-old\""}},
		Stock:   ukLabel("uk-old", "  hazards    = [\"EUH208\", \"H412\"]\n  names      = [\"benzyl salicylate\", \"coumarin\", \"cinnamal\"]\n  pictograms = [\"GHS09\"]\n"),
		Flags:   []string{`"uk-old"`},
	}},
	Good:  []lint.Example{{About: "what the classification calls for", Recipe: "skerry-eu", Shelf: `label eu-kelp-jar`}, {About: "EUH208 alone", Recipe: "firth-uk", Shelf: `label uk-amber-jar`}},
	Check: checkUnfounded,
}

func checkUnfounded(p *lint.Pass) {
	c, markets, ok := hazards(p)
	if !ok || !c.Whole() || banned(c) || len(markets) != len(p.Markets()) {
		return // another market may have reasons of its own
	}
	b := batch.Of.In(p.View)
	for _, on := range labelsOf(p, b) {
		if on.broken || len(on.labels) == 0 {
			continue
		}
		pictograms, readPictograms := on.says("pictograms")
		statements, readStatements := on.says("hazards")
		if !readPictograms || !readStatements {
			continue
		}
		var due hazard.Elements
		for _, market := range markets {
			if on.madeFor(market) == madeForOthers {
				return // which another rule says
			}
			e := on.elements(c, market)
			due.Pictograms = append(due.Pictograms, e.Pictograms...)
			due.Statements = append(append(due.Statements, e.Statements...), e.SmallPack...)
		}
		extra := due.Extra(pictograms, statements)
		if extra.None() {
			continue
		}
		p.Report(lint.Finding{
			At: on.at(p.Recipe),
			Message: fmt.Sprintf("%s %s %s, which this candle is not classified for by what the stock states; %s", on.titles(),
				verb(len(on.labels), "carries", "carry"), listed(&extra), decides),
			Notes: shown(stepsOf(c)),
		})
	}
}

// stepsOf are all steps of a classification.
func stepsOf(c *hazard.Classification) []*hazard.Step {
	steps := make([]*hazard.Step, len(c.Steps))
	for i := range c.Steps {
		steps[i] = &c.Steps[i]
	}
	return steps
}
