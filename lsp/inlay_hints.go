package lsp

import (
	"context"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// inlayHints are figures beside what is written, in the range that is asked
// for: loads on the other basis and by weight, temperatures on the other
// scale, how many candles a batch fills. Only what is known is said.
func (h *here) inlayHints(ctx context.Context, p *inlayHintParams) ([]inlayHint, error) {
	hints := []inlayHint{}
	if !h.wants.hints() {
		return hints, nil
	}
	asked := h.span(p.Range)
	for _, b := range h.file.Blocks {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if b.Is("rule") || b.Span.End < asked.Start || b.Span.Start > asked.End {
			continue
		}
		hints = h.hintsIn(b, asked, hints)
	}
	return hints, nil
}

// hintsIn adds the hints of a top-level block that lie in a span.
func (h *here) hintsIn(b *schema.Block, asked schema.Span, hints []inlayHint) []inlayHint {
	add := func(at int32, label string) {
		if label != "" && asked.Touches(at) {
			hints = append(hints, inlayHint{Position: h.position(at), Label: label, PaddingLeft: true})
		}
	}
	f, inRecipe := h.figuresOf(b)
	var walk func(*schema.Block)
	walk = func(b *schema.Block) {
		if b.Span.End < asked.Start || b.Span.Start > asked.End {
			return
		}
		if inRecipe && b.Is("step") && b.Spec.Kind == "second pour" {
			add(b.LabelSpan.End, f.takes(b))
		}
		for v := range b.Attrs() {
			if asked.Touches(v.Span().End) {
				add(v.Span().End, f.beside(v, inRecipe))
			}
		}
		for _, inner := range b.Blocks() {
			walk(inner)
		}
	}
	walk(b)
	return hints
}

// beside is the hint beside a value; "" for none.
func (f figures) beside(v schema.Value, inRecipe bool) string {
	if v.IsAmount() {
		switch v.Amount().Dim() {
		case quantity.Temperature, quantity.Difference:
			return v.Amount().Other()
		}
	}
	if !inRecipe || !v.Known() {
		return ""
	}
	if in := f.ingredient(v.Block); in != nil && v.IsAmount() && in.Said.Spec == v.Spec {
		return f.besideShare(in)
	}
	if i := f.vessel(v.Block); i >= 0 && v.Spec.Name == "count" {
		if y, ok := f.batch.Yield(); ok {
			return "fills " + f.of(y, i)
		}
	}
	return ""
}

// besideShare is what is not written of an ingredient's share: its load on the
// other basis or on both, its weight, and how little is left up to the limit.
// Waxes carry none: their weight is what is written.
func (f figures) besideShare(in *batch.Ingredient) string {
	if in.Block.Is("wax") {
		return ""
	}
	said := in.Said.Amount()
	var parts []string
	if in.OfWax.Known() && said.Unit() != quantity.PercentOfWax {
		parts = append(parts, batch.Percent(in.OfWax.Value, quantity.OfWax))
	}
	if in.OfTotal.Known() && said.Unit() != quantity.PercentOfTotal {
		parts = append(parts, batch.Percent(in.OfTotal.Value, quantity.OfTotal))
	}
	if in.Weight.Known() && said.Dim() != quantity.Weight {
		parts = append(parts, f.grams(in.Weight.Value))
	}
	if near := f.nearLimit(in); near != "" {
		parts = append(parts, near)
	}
	text := ""
	for i, p := range parts {
		if i > 0 {
			text += " · "
		}
		text += p
	}
	return text
}

// nearLimit is what is left up to the most fragrance the wax holds, where that
// is less than a fifth of it; of several fragrances it stands beside the last.
func (f figures) nearLimit(in *batch.Ingredient) string {
	last := len(f.batch.Fragrances) - 1
	if last < 0 || &f.batch.Fragrances[last] != in {
		return ""
	}
	l := f.batch.FragranceLimit()
	if l.State != schema.Known || l.Family != "" || !l.Strictest.Known() || !l.Load.Known() {
		return ""
	}
	left := l.Strictest.Value.Sub(l.Load.Value)
	if left.Sign() < 0 || !left.Mul(quantity.Int(5)).Less(l.Strictest.Value) {
		return ""
	}
	if left.IsZero() {
		return "at the limit"
	}
	return batch.Percent(left, l.Basis) + " under the limit"
}

// takes is what a second pour takes in all.
func (f figures) takes(step *schema.Block) string {
	s := f.stepOf(step)
	if s == nil {
		return ""
	}
	if _, all, ok := f.toppedUp(s); ok {
		return "takes about " + f.grams(all)
	}
	return ""
}
