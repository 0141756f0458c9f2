package labels

import (
	"fmt"

	"wickrule/lint"
)

// BannedIngredient is a candle with enough of a substance that causes cancer or
// mutations or harms children for it not to be sold to the public.
var BannedIngredient = &lint.Rule{
	Name:   "banned-ingredient",
	Group:  Group,
	Title:  "an ingredient that may not be supplied to the public at this share, in the EU or the UK",
	Levels: lint.Levels{Class: lint.Must, Sale: lint.Must}, Binding: true,
	Why: "Substances known or presumed to cause cancer or changes in the genes, or to harm fertility or the unborn child, may not be supplied to the public in the EU and the UK, nor may mixtures " +
		"that hold as much of them as classifies the mixture. It goes for every substance on the law's lists, which follow the harmonized classifications; a sheet that gives category 1A or 1B is reason enough to stop and look.",
	Remedy:   "Use an oil without it, or ask the supplier whether the substance stands on the lists (Annex XVII, Appendices 1 to 6). Old stock of an oil may hold what was banned since.",
	Source:   "Regulation (EC) No 1907/2006, Annex XVII, entries 28 to 30, as the European Chemicals Agency explains them (questions and answers on Annex XVII); limits: Regulation (EC) No 1272/2008, Annex I, Tables 3.5.2, 3.6.2 and 3.7.2. Whether a substance is listed is not checked",
	Cautions: deferral,
	Bad: []lint.Example{{
		About:   "a scent that harms fertility, at a third of a per cent",
		Recipe:  "skerry-eu",
		Changes: []lint.Change{{From: "fragrance \"kelp-and-lime\"", To: "fragrance \"from-the-fair\""}},
		Stock: oilFromTheFair("\n  component \"butylphenyl methylpropional\" {\n    cas     = \"80-54-6\"\n    share   = \"6 %\"\n" +
			"    hazards = [\"Acute Tox. 4 H302\", \"Skin Irrit. 2 H315\", \"Skin Sens. 1B H317\", \"Repr. 1B H360Fd\", \"Aquatic Chronic 3 H412\"]\n  }\n"),
		Flags: []string{`"from-the-fair"`},
	}},
	Also: []string{"test-burn-missing"}, // the burns are of another oil
	Good: []lint.Example{
		{
			About:   "under the limit of 0.3 %",
			Recipe:  "skerry-eu",
			Changes: []lint.Change{{From: "fragrance \"kelp-and-lime\"", To: "fragrance \"from-the-fair\""}},
			Stock: oilFromTheFair("\n  component \"butylphenyl methylpropional\" {\n    cas     = \"80-54-6\"\n    share   = \"5 %\"\n" +
				"    hazards = [\"Acute Tox. 4 H302\", \"Skin Irrit. 2 H315\", \"Skin Sens. 1B H317\", \"Repr. 1B H360Fd\", \"Aquatic Chronic 3 H412\"]\n  }\n"),
		},
		{About: "no such substance", Recipe: "skerry-eu", Shelf: `fragrance kelp-and-lime`},
	},
	Check: checkBanned,
}

func checkBanned(p *lint.Pass) {
	c, markets, ok := hazards(p)
	if !ok {
		return
	}
	for _, r := range c.Results {
		if !isBanned(r) {
			continue
		}
		for _, s := range c.Steps[r.Step].Counted() {
			p.Report(lint.Finding{
				At: lint.AtLabel(s.Parts[0].Ingredient.Block),
				Message: fmt.Sprintf("a candle with %s may not be supplied to the public in %s if it stands on the law's lists: %s. Ask the supplier; %s",
					s.Name, theMarkets(markets), c.Steps[r.Step].String(), decides),
				Notes: []lint.Note{{Place: lint.AtHeader(s.Parts[0].Component), Message: fmt.Sprintf("stated here as %s", r.String())}},
			})
		}
	}
}
