package labels

import (
	"fmt"

	"wickrule/lint"
)

// HazardUnknown is about ingredients whose hazards are not stated, or not so
// that they can be put to use.
var HazardUnknown = &lint.Rule{
	Name:   "hazard-unknown",
	Group:  Group,
	Title:  "a fragrance, dye or additive whose hazards are not known, in a candle for the EU or the UK",
	Levels: lint.Levels{Sale: lint.Must},
	Why: "In the EU and the UK a candle is classified as a mixture before it is sold, free samples included, and what is in its fragrance decides what the label " +
		"says. Some of those who are allergic react to a thousandth of a substance. Without section 3 of the safety data sheet nobody can tell, and a plain label would be a guess.",
	Remedy: "Ask the supplier for the safety data sheet of this very oil, neat, and copy section 3: one component block a substance, with share and hazards. Where the sheet lists no classified " +
		"substance, write components = \"none classified\" and keep the sheet.",
	Source:   "Regulation (EC) No 1272/2008, Articles 4, 9 and 10, and the same as retained in Great Britain; Regulation (EC) No 1907/2006, Annex II (what section 3 lists)",
	Cautions: deferral,
	Bad: []lint.Example{
		{
			About:  "an oil without its components",
			Recipe: "skerry-eu",
			Changes: []lint.Change{
				{From: "fragrance \"kelp-and-lime\"", To: "fragrance \"from-the-fair\""},
			},
			Stock: oilFromTheFair(""),
			Flags: []string{`"from-the-fair"`},
		},
		{
			About:   "an entry that is no classification",
			Recipe:  "skerry-eu",
			Changes: []lint.Change{{From: "fragrance \"kelp-and-lime\"", To: "fragrance \"from-the-fair\""}},
			Stock:   oilFromTheFair("\n  component \"linalool\" {\n    cas     = \"78-70-6\"\n    share   = \"3 %\"\n    hazards = [\"may irritate\"]\n  }\n"),
			Flags:   []string{`"may irritate"`},
		},
		{
			About:   "a limit that does not say what it is for",
			Recipe:  "skerry-eu",
			Changes: []lint.Change{{From: "fragrance \"kelp-and-lime\"", To: "fragrance \"from-the-fair\""}},
			Stock:   oilFromTheFair("\n  component \"sharp stuff\" {\n    share   = \"3 %\"\n    hazards = [\"Skin Irrit. 2 H315\", \"Eye Irrit. 2 H319\"]\n    limit   = \"5 %\"\n  }\n"),
			Flags:   []string{`"5 %"`},
			Level:   lint.Should,
		},
	},
	Also: []string{"test-burn-missing", "hazard-label-unfounded"}, // the burns and the label are of another oil
	Good: []lint.Example{
		{About: "components as on the sheet", Recipe: "skerry-eu", Shelf: `fragrance kelp-and-lime`},
		{About: "a sheet that lists none", Recipe: "firth-uk", Changes: []lint.Change{{From: "fragrance \"amber-lantern\"", To: "fragrance \"rain-on-slate\""}}, Shelf: "fragrance rain-on-slate"},
		{
			About:   "the US classifies no candles for the shop counter",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "fragrance \"tide-and-thyme\"", To: "fragrance \"from-the-fair\""}},
			Stock:   oilFromTheFair(""),
		},
	},
	Check: checkUnknown,
}

// oilFromTheFair is an example's fragrance with what is stated of its
// components.
func oilFromTheFair(components string) string {
	return "fragrance \"from-the-fair\" {\n  title           = \"Oil from the fair\"\n  flash_point     = \"200 °F\"\n  density         = \"0.96 g/mL\"\n" +
		"  most_in_candles = \"25 % of total\"\n  gel_safe        = false\n  water_based     = false\n" + components + "}\n"
}

func checkUnknown(p *lint.Pass) {
	c, markets, ok := hazards(p)
	if !ok {
		return
	}
	for _, in := range c.Unknown {
		p.Missing(lint.Finding{
			At: lint.AtLabel(in.Block),
			Message: fmt.Sprintf("what is in %s is not stated, so nobody can tell what hazards a label in %s must name: list the classified substances of section 3 of its safety data sheet",
				in.Stock.Title(), theMarkets(markets)),
			Notes: []lint.Note{{Place: lint.AtHeader(in.Stock), Message: "no component and no components = \"none classified\" is written here"}},
		})
	}
	for _, u := range c.Unread {
		f := lint.Finding{At: u.At(), Message: u.Why, Notes: usedIn(p)}
		if u.Limit() {
			f.Levels = lint.Levels{Sale: lint.Should}
		}
		p.Report(f)
	}
	for _, d := range c.Doubts {
		p.Report(lint.Finding{At: lint.AtHeader(d.Component), Message: d.Says + "; " + decides, Levels: lint.Levels{Sale: lint.Consider}, Notes: usedIn(p)})
	}
}

// usedIn points from the stock back at the recipe.
func usedIn(p *lint.Pass) []lint.Note {
	return []lint.Note{{Place: lint.AtLabel(p.Recipe), Message: fmt.Sprintf("for %s", p.Recipe.Title())}}
}

// theMarkets names markets: "the EU", "the EU and the UK".
func theMarkets(markets []string) string {
	names := make([]string, len(markets))
	for i, m := range markets {
		names[i] = "the " + m
	}
	return joined(names)
}
