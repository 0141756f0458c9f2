package labels

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// LabelLanguage is a label in a language that those who buy the candle need not
// read.
var LabelLanguage = &lint.Rule{
	Name:   "label-language",
	Group:  Group,
	Title:  "a label that is not in the language of the market",
	Levels: lint.Levels{Sale: lint.Should},
	Why: "A warning nobody can read warns nobody. In the EU the label of a hazardous mixture is in the official languages of each country it is sold in, and safety warnings in one that its people " +
		"understand; in Great Britain it is in English. Which countries of the EU a candle goes to is not written in a recipe, so there only that the label says its languages is asked for: " +
		"a label in English serves Ireland and Malta, and not Finland.",
	Remedy:   "Print the label in the language of each country the candle is sold in, and write the languages into the stock label.",
	Source:   "Regulation (EC) No 1272/2008, Article 17(2), and the same as retained in Great Britain (from memory); Regulation (EU) 2023/988, Article 9(7) (from memory)",
	Cautions: deferral,
	Bad: []lint.Example{{
		About:   "a label in German for the UK",
		Recipe:  "firth-uk",
		Changes: []lint.Change{{From: "label = \"uk-amber-jar\"", To: "label = \"uk-abroad\""}},
		Stock: without(ukLabel("uk-abroad", "  hazards    = [\"EUH208\"]\n  names      = [\"benzyl salicylate\", \"coumarin\", \"cinnamal\"]\n"),
			"languages  = [\"en\"]", "languages  = [\"de\"]"),
		Flags: []string{`"uk-abroad"`},
	}},
	Good:  []lint.Example{{About: "English in the UK", Recipe: "firth-uk", Shelf: `label uk-amber-jar`}, {About: "a label that says its languages", Recipe: "skerry-eu", Shelf: `label eu-kelp-jar`}, {About: "not asked in the US", Recipe: "tide-pillar"}},
	Check: checkLanguage,
}

func checkLanguage(p *lint.Pass) {
	eu, uk := p.SoldIn("EU"), p.SoldIn("UK")
	if !eu && !uk {
		return
	}
	eachLabelled(p, batch.Of.In(p.View), func(on attached) {
		languages, whole := on.says("languages")
		switch {
		case !whole:
		case len(languages) == 0:
			p.CannotCheck(on.labels[0].stock, "languages")
		case uk && on.madeFor("UK") != madeForOthers && !slices.Contains(languages, "en"):
			p.Report(lint.Finding{At: on.at(p.Recipe), Message: fmt.Sprintf("%s %s in %s, and the UK asks for English (en)",
				on.titles(), verb(len(on.labels), "is", "are"), strings.Join(languages, ", "))})
		}
	})
}
