package lsp

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

// example offers an untested rule of the shop's own the example it lacks, from
// a recipe of the shop, cut down to what matters to the rule.
func (a *actions) example(found []lint.Found) {
	rule := topOf(a.block)
	if !rule.Is("rule") {
		return
	}
	for i := range found {
		if found[i].Rule.Name != "rule-untested" || !rule.LabelSpan.Touches(found[i].At.Span.Start) {
			continue
		}
		for _, sort := range []string{"sound", "faulty"} {
			if first(blocksOf(rule, sort)) == nil {
				a.exampleFrom(rule, sort, a.saidAs(&found[i]))
			}
		}
	}
}

func blocksOf(b *schema.Block, name string) (all []*schema.Block) {
	for inner := range b.Each(name) {
		all = append(all, inner)
	}
	return all
}

// exampleFrom takes the first recipe that the rule passes, or speaks of.
func (a *actions) exampleFrom(rule *schema.Block, sort string, said []any) {
	d := shoprule.DraftOf(a.shop, rule)
	for i, recipe := range a.shop.Recipes() {
		if i == mostAsked {
			return
		}
		text, ok := d.Excerpt(a.view(recipe), "like-"+recipe.Label, sort == "faulty")
		if !ok {
			continue
		}
		text = sort + " {\n  " + strings.ReplaceAll(text, "\n", "\n  ") + "\n}"
		a.offer(codeAction{Title: fmt.Sprintf("add a %s example from %s", sort, recipe.Label), Kind: quickFix, Diagnostics: said},
			[]schema.Edit{appendApart(rule, text)})
		return
	}
}
