package house

import (
	"fmt"

	"wickrule/lint"
	"wickrule/schema"
)

// KeyRepeated is a key given to two things of one kind.
var KeyRepeated = &lint.Rule{
	Name:   "key-repeated",
	Group:  Group,
	Title:  "two things of one kind with the same key",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFile,
	Why: "A recipe that names this key may mean either of the two. The first counts, in the order of the files' names, " +
		"and figures written in the second are never used.",
	Remedy: "Give one of them another key, or remove the one that is out of date.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a seal and a wick that are already on the shelves",
		Text:  "wick \"flat-braid-24\" {\n  construction = \"flat braid\"\n}\n",
		Stock: "seal \"rubber-plug\" {\n  kind = \"plug\"\n}\n",
		Flags: []string{`"rubber-plug"`, `"flat-braid-24"`},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "a key of its own",
		Text:  "wick \"flat-braid-25\" {\n  construction = \"flat braid\"\n}\n",
	}},
	Check: checkRepeatedKeys,
}

func checkRepeatedKeys(p *lint.Pass) {
	for _, b := range p.File.Blocks {
		if b.Is("recipe") {
			checkRepeatedIngredients(p, b)
		}
		if b.Spec.Label != schema.Defines || b.Label == "" {
			continue
		}
		first := p.Config()
		if !b.Is("shop") {
			first = p.Same(b.Name(), b.Label)[0]
		}
		if first == b {
			continue
		}
		p.Report(lint.Finding{
			At:      lint.AtLabel(b),
			Message: fmt.Sprintf("there is already a %s called %s: give this one another key, or remove one of the two", b.Name(), first.Label),
			Notes:   []lint.Note{{Place: lint.AtLabel(first), Message: "the first stands here, and counts"}},
		})
	}
}

// checkRepeatedIngredients looks for a fragrance, dye or additive that a recipe
// lists twice: each would be held against its limit alone. Layers may be of
// one wax, so that may stand twice.
func checkRepeatedIngredients(p *lint.Pass, recipe *schema.Block) {
	for i, b := range recipe.Blocks() {
		if !b.Is("fragrance") && !b.Is("dye") && !b.Is("additive") {
			continue
		}
		for _, before := range recipe.Blocks()[:i] {
			if before.Name() == b.Name() && before.Label == b.Label && b.Label != "" {
				p.Report(lint.Finding{
					At:      lint.AtLabel(b),
					Message: fmt.Sprintf("%s is listed twice in this recipe: make one of the two, with both amounts added up", b.Label),
					Notes:   []lint.Note{{Place: lint.AtLabel(before), Message: "it stands here already"}},
				})
				break
			}
		}
	}
}
