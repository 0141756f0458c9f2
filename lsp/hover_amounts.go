package lsp

import (
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// amount tells of a written quantity: it in both systems, and what it means
// where it stands.
func (h *here) amount(v schema.Value) []string {
	attribute := h.attribute(v.Spec)
	if !v.IsAmount() {
		says := attribute
		if v.Text() == "to shade" {
			says = append([]string{"**to shade** By eye: nobody can repeat it, and in the totals it counts as nothing."}, says...)
		}
		return says
	}
	q := v.Amount()
	says := []string{"**" + h.plain(q.Both(h.units())) + "**"}
	if v.BelowRim() {
		says[0] = "**" + h.plain(q.Both(h.units())) + "** below the rim"
	}
	if f, ok := h.figuresOf(v.Block); ok {
		means := spaced(f.means(v)...)
		if in := f.ingredient(v.Block); in != nil && in.Said.Spec == v.Spec && means != "" {
			says = nil // its share begins with the amount itself
		}
		says = append(says, means)
	}
	return append(says, attribute[0])
}

// means is what an amount of the recipe comes to.
func (f figures) means(v schema.Value) []string {
	if in := f.ingredient(v.Block); in != nil {
		return f.share(in)
	}
	if i := f.vessel(v.Block); i >= 0 {
		if v.Spec.Name == "fill" {
			return f.fills(i)
		}
		return nil
	}
	if s := f.stepOf(v.Block); s != nil {
		return f.ofStep(s, v)
	}
	if v.Block.Is("test_burn") {
		return f.ofBurn(v)
	}
	return nil
}

// ofStep is what an amount of a step comes to.
func (f figures) ofStep(s *batch.Step, v schema.Value) []string {
	if s.Heat.Spec == v.Spec && s.Heat.Spec != nil {
		return f.heat(s, v)
	}
	switch v.Spec.Name {
	case "after", "from_pour":
		return []string{f.when(s), f.stepWindow(s)}
	case "leave":
		return []string{f.firstPour(s)}
	case "for":
		if s.Kind == "cure" {
			return []string{f.stepWindow(s)}
		}
	case "to":
		if s.Kind == "trim wick" {
			return []string{f.stepWindow(s)}
		}
		if s.Kind == "warm container" {
			for i := range f.batch.Pours {
				if p := f.batch.Pours[i].Step; p.Index > s.Index && p.Heat.IsAmount() && len(s.Vessels) > 0 && p.Is(s.Vessels[0]) && f.batch.Vessels[s.Vessels[0]].Kind == "container" && f.batch.Vessels[s.Vessels[0]].Stock != nil {
					return []string{"The pour comes at " + p.Heat.Amount().Both(f.view.Units()) + ".", f.shock(p, s.Vessels[0], p.Heat.Amount().High().Base())}
				}
			}
		}
	}
	return nil
}

// ofBurn is what a figure of a test burn is held against.
func (f figures) ofBurn(v schema.Value) []string {
	vessel := 0
	for i := range f.batch.Vessels {
		if f.batch.Vessels[i].Block.Label == v.Block.Get("vessel").Text() {
			vessel = i
		}
	}
	if v.Spec.Name != "melt_pool" || vessel >= len(f.batch.Vessels) || !f.batch.Vessels[vessel].Diameter.Known() {
		return nil
	}
	d := f.batch.Vessels[vessel].Diameter.Value
	share, ok := v.Amount().High().Base().Quo(d)
	if !ok {
		return nil
	}
	return []string{share.Mul(quantity.Int(100)).Decimal(0) + " % of the candle's " + f.length(d) + " across."}
}

// burn is a test burn in a sentence.
func (h *here) burn(b *schema.Block) []string {
	var parts []string
	for _, p := range [...]phrase{
		{attr: "candle", lead: "candle "}, {attr: "burned_for", lead: "burned for "}, {attr: "flame", lead: "flame up to "}, {attr: "soot", lead: "soot: "}, {attr: "seen", lead: "seen: "}, {attr: "result", lead: "result: "},
	} {
		parts = append(parts, h.phrase(b, p))
	}
	says := append([]string{inOne(parts...)}, h.fingerprint(b.Get("formula"))...)
	return append(says, "**"+b.Name()+"** "+b.Spec.Doc)
}

// number tells of a whole number: how many candles the batch fills, or which
// wicks they share.
func (h *here) number(v schema.Value) []string {
	f, ok := h.figuresOf(v.Block)
	if !ok {
		return nil
	}
	i := f.vessel(v.Block)
	switch {
	case i < 0:
		return nil
	case v.Spec.Name == "count":
		return []string{spaced(f.fills(i)...)}
	case v.Spec.Name == "wicks":
		return f.wicked(i)
	}
	return nil
}

// fingerprint tells whether a burn was of the formulation as it stands.
func (h *here) fingerprint(v schema.Value) []string {
	recipe := recipeOf(v.Block)
	if recipe == nil {
		recipe = h.shop.Find("recipe", v.Block.Get("recipe").Text())
	}
	if recipe == nil {
		return nil
	}
	view := h.view(recipe)
	now := formula.Of.In(view)
	if !now.Known() || v.Text() == "" {
		return nil
	}
	b := batch.Of.In(view)
	vessel := 0
	for i := range b.Vessels {
		if now.Counts(v.Block, i, b) {
			return []string{"The formulation is still the one that was burned."}
		}
		if formula.Speaks(v.Block, i, b) {
			vessel = i
		}
	}
	if v.Text() == now.Code {
		return []string{"The formulation is still the one that was burned."}
	}
	return []string{"Since this burn " + h.plain(formula.ToldChange(view, v.Text(), vessel)) + ": it says nothing of the recipe as it stands."}
}
