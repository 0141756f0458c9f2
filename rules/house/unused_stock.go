package house

import (
	"fmt"

	"wickrule/lint"
)

// UnusedStock is an item on the shelves that no recipe names.
var UnusedStock = &lint.Rule{
	Name:   "unused-stock",
	Group:  Group,
	Title:  "a stock item that nothing in the shop uses",
	Levels: lint.Every(lint.Consider),
	About:  lint.AboutFile,
	Why: "An item nobody uses may be a leftover, or the one a recipe should have named. It does no harm; figures that nobody " +
		"looks at grow old unseen.",
	Remedy: "Leave it if it is there to be tried out; otherwise take it out, or use it.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a dye that no recipe takes",
		Text:  "dye \"slate\" {\n  title = \"Slate gray\"\n}\n",
		Flags: []string{`dye "slate"`},
	}},
	Good: []lint.Example{{
		About:  "a dye that a recipe takes",
		Stock:  "dye \"slate\" {\n  title = \"Slate gray\"\n  limit = \"0.1 % of wax\"\n}\n",
		Recipe: "tide-pillar",
		Changes: []lint.Change{
			{From: "dye \"madder\" {", To: "dye \"slate\" {"},
			{From: "dye = \"madder\"", To: "dye = \"slate\""},
		},
	}},
	Check: checkUnusedStock,
}

// checkUnusedStock stays silent in a shop that has no recipes yet, or where a
// file did not parse whole and may name anything.
func checkUnusedStock(p *lint.Pass) {
	for _, b := range p.File.Blocks {
		if !b.Spec.Stock || b.Label == "" || !p.AnyRecipe() || !p.AllWhole() {
			continue
		}
		if first, _ := p.Stock(b.Name(), b.Label); first == b && !p.Used(b) {
			p.Missing(lint.Finding{
				At:      lint.AtHeader(b),
				Message: fmt.Sprintf("nothing in the shop uses %s", b.Title()),
			})
		}
	}
}
