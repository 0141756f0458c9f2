package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// IngredientNeverAdded is a fragrance, dye or additive that no step stirs in,
// or that a step stirs in and the recipe does not list.
var IngredientNeverAdded = &lint.Rule{
	Name:   "ingredient-never-added",
	Group:  group,
	Title:  "an ingredient that no step adds, or a step that adds what the recipe does not list",
	Levels: lint.Every(lint.Should),
	Why: "Whoever pours follows the steps, not the list: what no step names stays in the bottle, and the candle is not the one that was tested. " +
		"What a step names and the list does not is added by guess, since nothing says how much.",
	Remedy: "Add a step that names it, before the pour; or list it with its amount; or take it out.",
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "a fragrance that stays in the bottle",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: fragranceOfTidePillar, To: ""}},
			Flags:   []string{`fragrance "tide-and-thyme"`},
		},
		{
			About:   "a dye with no step",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "  step \"add dye\" {\n    dye = \"madder\"\n  }\n", To: ""}},
			Flags:   []string{`dye "madder"`},
		},
		{
			About:   "a step that adds another dye than is listed",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "    dye = \"madder\"\n", To: "    dye = \"pewter\"\n"}},
			Flags:   []string{`"pewter"`},
		},
		{
			About:   "a step that adds dye to a recipe with none",
			Recipe:  "clover-jar",
			Changes: []lint.Change{{From: "  step \"pour\" {\n", To: "  step \"add dye\" {}\n  step \"pour\" {\n"}},
			Flags:   []string{`step "add dye"`},
		},
	},
	Good: []lint.Example{
		{About: "a step that names nothing adds all that is left", Recipe: "tide-pillar", Changes: []lint.Change{{From: "    dye = \"madder\"\n", To: ""}}, Shows: `step "add dye" {`},
		{About: "an additive in a dipping vat", Recipe: "quayside-taper", Shows: `step "melt" {
    to   = "170 °F"
    over = "water bath"
  }
  step "add additive" {
    additive = "stearin"`},
	},
	Check: checkIngredientNeverAdded,
}

func checkIngredientNeverAdded(p *lint.Pass) {
	b := batch.Of.In(p.View)
	if !worked(b) {
		return // no method is written yet
	}
	checkKind(p, b, "add fragrance", b.Fragrances)
	checkKind(p, b, "add dye", b.Dyes)
	checkKind(p, b, "add additive", b.Additives)
}

// worked says whether the recipe has a step that has to do with the wax.
func worked(b *batch.Batch) bool {
	for i := range b.Steps {
		switch s := &b.Steps[i]; s.Kind {
		case "melt", "add fragrance", "add dye", "add additive":
			return true
		default:
			if takesWax(s.Kind) {
				return true
			}
		}
	}
	return false
}

func checkKind(p *lint.Pass, b *batch.Batch, kind string, listed []batch.Ingredient) {
	what := kind[len("add "):]
	silent := false // a step names something else in place of what is listed, or what cannot be read
	all := false    // a step adds all that is left
	for i := range b.Steps {
		s := &b.Steps[i]
		if s.Kind != kind {
			continue
		}
		names := s.Block.Get(what)
		switch {
		case names.Broken():
			silent = true
		case names.Absent():
			all = true
			if len(listed) == 0 {
				reportNothingToAdd(p, s, what)
			}
		}
		for _, item := range names.Items() {
			if isListed(listed, item.Text) {
				continue
			}
			silent = true
			if stock, ok := p.Stock(what, item.Text); ok {
				reportUnlisted(p, b, s, names, item, stock, listed)
			}
		}
	}
	if silent || all {
		return
	}
	for i := range listed {
		if in := &listed[i]; in.Stock != nil && !isAdded(b, kind, in.Block.Label) {
			reportNeverAdded(p, b, kind, in)
		}
	}
}

func isListed(listed []batch.Ingredient, key string) bool {
	for i := range listed {
		if listed[i].Block.Label == key {
			return true
		}
	}
	return false
}

func isAdded(b *batch.Batch, kind, key string) bool {
	for i := range b.Steps {
		if s := &b.Steps[i]; s.Kind == kind && lists(s.Block.Get(kind[len("add "):]), key) {
			return true
		}
	}
	return false
}

func reportNothingToAdd(p *lint.Pass, s *batch.Step, what string) {
	p.Missing(lint.Finding{
		At:      lint.AtHeader(s.Block),
		Message: fmt.Sprintf("this step adds %s, and the recipe lists none: list it with its amount, or take the step out", what),
		Fixes: func() []schema.Fix {
			return []schema.Fix{{Title: "take out the step that adds nothing", Edits: []schema.Edit{schema.RemoveBlock(s.Block)}}}
		},
	})
}

// reportUnlisted says that a step adds what the recipe does not list. Where
// just one listed item is added by no step, that one is likely meant.
func reportUnlisted(p *lint.Pass, b *batch.Batch, s *batch.Step, names schema.Value, item schema.Item, stock *schema.Block, listed []batch.Ingredient) {
	p.Missing(lint.Finding{
		At:      lint.AtItem(names, item),
		Message: fmt.Sprintf("this step adds %s, which the recipe does not list: nothing says how much. List it with its amount, or leave it out", stock.Title()),
		Fixes: func() []schema.Fix {
			var meant []*batch.Ingredient
			for i := range listed {
				if in := &listed[i]; in.Stock != nil && !isAdded(b, s.Kind, in.Block.Label) {
					meant = append(meant, in)
				}
			}
			if len(meant) != 1 {
				return nil
			}
			key := meant[0].Block.Label
			return []schema.Fix{{
				Title: "add " + key + " in place of " + item.Text,
				Edits: []schema.Edit{{File: s.Block.File, Span: item.Span, Text: schema.Quote(key)}},
			}}
		},
	})
}

func reportNeverAdded(p *lint.Pass, b *batch.Batch, kind string, in *batch.Ingredient) {
	p.Missing(lint.Finding{
		At:      lint.AtHeader(in.Block),
		Message: fmt.Sprintf("no step adds %s: whoever follows the steps leaves it out", in.Stock.Title()),
		Fixes:   func() []schema.Fix { return addStep(p, b, kind, in) },
	})
}

// addStep offers a step that adds an ingredient: fragrance before the first
// pour, at a temperature that its own range and the melt both allow; dye and
// additives right after the first melt, while the wax is hottest.
func addStep(p *lint.Pass, b *batch.Batch, kind string, in *batch.Ingredient) []schema.Fix {
	key := in.Block.Label
	title := "add " + key
	attrs := []repair.Attr{repair.Text(kind[len("add "):], key)}
	var melt, pour *batch.Step
	for i := range b.Steps {
		s := &b.Steps[i]
		if s.Kind == "melt" && melt == nil && pour == nil {
			melt = s
		}
		if takesWax(s.Kind) && pour == nil {
			pour = s
		}
	}
	if kind == "add fragrance" {
		if heat, ok := fragranceHeat(b, melt); ok {
			attrs = append(attrs, repair.Text("at", heat.String()))
		}
		attrs = append(attrs, repair.Text("stir", "2 min"))
	}
	step := repair.Step(kind, attrs...)
	switch {
	case melt != nil && kind != "add fragrance":
		return []schema.Fix{repair.After(title+" after the melt", melt.Block, step)}
	case pour != nil:
		return []schema.Fix{repair.Before(title+" before the "+pour.Kind, pour.Block, step)}
	case melt != nil:
		return []schema.Fix{repair.After(title+" after the melt", melt.Block, step)}
	}
	return []schema.Fix{repair.LastStep(title, p.Recipe, step)}
}

// fragranceHeat is how hot fragrance may be added: the top of its range, but
// never hotter than the wax is melted to. False: it cannot be said.
func fragranceHeat(b *batch.Batch, melt *batch.Step) (quantity.Quantity, bool) {
	within := b.AddFragranceAt()
	if melt == nil || !melt.Heat.IsAmount() || !within.Known() || within.Empty {
		return quantity.Quantity{}, false
	}
	written := melt.Heat.Amount().Low()
	heat := repair.Lowered(written, quantity.Min(written.Base(), within.High()))
	if heat.Base().Less(within.Low()) {
		return quantity.Quantity{}, false
	}
	return heat, true
}
