package lsp

import (
	"fmt"

	"wickrule/lint"
	"wickrule/schema"
)

// trial offers to write down a trial that starts from a recipe: of what the
// recipe names at the cursor, or of the recipe as a whole. The question is the
// maker's, so there stands one to be replaced.
func (a *actions) trial() {
	if a.recipe == nil || a.recipe.Label == "" || a.shop.Find("recipe", a.recipe.Label) != a.recipe {
		return
	}
	tried := a.triedHere()
	if tried == nil && !a.block.Is("recipe") {
		return
	}
	of, asked, key := "", a.recipe.Title(), a.recipe.Label
	if tried != nil {
		of, asked, key = " of "+tried.Label, tried.Title()+" in "+asked, tried.Label
	}
	var lines string
	line := func(name, text string) { lines += fmt.Sprintf("  %-8s = %s\n", name, schema.Quote(text)) }
	line("question", "What do we want to know about "+asked+"?")
	line("date", a.today)
	line("recipe", a.recipe.Label)
	if tried != nil {
		line("tried", tried.Label)
	}
	line("outcome", "open")
	text := "trial " + schema.Quote(a.newKey("trial", key+"-trial")) + " {\n" + lines + "}"
	a.write(codeAction{Kind: rewriting}, "trial", text, func(where string) string {
		return "start a trial" + of + " with this recipe, in " + where
	})
}

// triedHere is the item on the shelves that the recipe names at the cursor, or
// nil.
func (a *actions) triedHere() *schema.Block {
	for ref := range lint.References(a.file) {
		if ref.At.Span.Touches(a.at.Start) {
			if b := a.shop.Resolve(ref); b != nil && b.Spec.Stock && a.shop.Resolve(lint.Reference{Kinds: schema.StockKinds(), Key: b.Label}) == b {
				return b
			}
		}
	}
	return nil
}

// newKey is a key that no block of the kind has yet.
func (a *actions) newKey(kind, key string) string {
	free := key
	for n := 2; a.shop.Find(kind, free) != nil; n++ {
		free = fmt.Sprintf("%s-%d", key, n)
	}
	return free
}
