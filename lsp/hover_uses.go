package lsp

import (
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// mostNamed is how many recipes are named where an item is used in many.
const mostNamed = 3

// usedIn says which recipes name an item, the first few by title.
func (h *here) usedIn(b *schema.Block) string {
	recipes, others := h.shop.Uses(b)
	if !b.Spec.Stock && recipes+others == 0 {
		return ""
	}
	elsewhere := ""
	if others > 0 {
		elsewhere = things(others, "place") + " outside recipes"
		if others == 1 {
			elsewhere = "one place outside recipes"
		}
	}
	switch {
	case recipes == 0 && others == 0:
		return "No recipe uses it."
	case recipes == 0:
		return "No recipe uses it; named in " + elsewhere + "."
	}
	text := "Used in " + things(recipes, "recipe")
	if names := h.recipesWith(b, mostNamed); len(names) > 0 {
		text += ": " + strings.Join(names, "; ")
		if len(names) < recipes {
			text += "; and " + things(recipes-len(names), "other")
		}
	}
	if elsewhere != "" {
		text += ". Named in " + elsewhere
	}
	return text + "."
}

// recipesWith is the titles of the first recipes that name an item, so many at
// the most.
func (h *here) recipesWith(b *schema.Block, most int) []string {
	var names []string
	var last *schema.Block
	for _, f := range h.shop.Files() {
		for ref := range lint.References(f) {
			recipe := recipeOf(ref.From)
			if ref.Key != b.Label || recipe == nil || recipe == last || h.shop.Resolve(ref) != b {
				continue
			}
			names, last = append(names, h.title(recipe)), recipe
			if len(names) == most {
				return names
			}
		}
	}
	return names
}
