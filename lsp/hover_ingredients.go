package lsp

import (
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// share tells how much of an ingredient goes in: its load on both bases and
// its weight, with the limits it is held to.
func (f figures) share(in *batch.Ingredient) []string {
	kind := in.Block.Name()
	if in.ByEye {
		return []string{"By eye: nobody can repeat it, and in the totals it counts as nothing."}
	}
	var says []string
	weight := known(in.Weight, f.grams)
	if in.Said.IsAmount() && in.Said.Amount().Dim() == quantity.Weight {
		weight = in.Said.Amount().Both(f.view.Units())
	}
	switch {
	case kind == "wax":
		text := weight
		if len(f.batch.Waxes) > 1 && in.OfWax.Known() {
			text = sentencePart(text, batch.Percent(in.OfWax.Value, quantity.NoBasis)+" of the wax")
		}
		if in.OfTotal.Known() {
			text = sentencePart(text, batch.Percent(in.OfTotal.Value, quantity.OfTotal))
		}
		says = append(says, fullStop(text))
	default:
		loads := batch.Loads(in.OfWax, in.OfTotal)
		switch {
		case loads != "" && weight != "":
			says = append(says, loads+", which is "+weight+" in this batch.")
		case loads != "" || weight != "":
			says = append(says, loads+weight+".")
		}
	}
	if said := in.Said; said.IsAmount() && said.Amount().Dim() == quantity.Share {
		says = append(says, "It does not say of what: it is read as of wax until it does.")
	}
	switch kind {
	case "fragrance":
		if len(f.batch.Fragrances) > 1 && f.batch.FragranceOfWax.Known() {
			says = append(says, "All fragrances together: "+batch.Loads(f.batch.FragranceOfWax, f.batch.FragranceOfTotal)+".")
		}
		says = append(says, f.fragranceLimit(), f.certificate(in))
	case "dye":
		says = append(says, f.stockLimit(in, "limit", "at most"))
	case "additive":
		says = append(says, f.stockLimit(in, "usual", "usually"))
	case "wax":
		if total := known(f.batch.Total, f.grams); total != "" {
			says = append(says, "Everything weighed in comes to "+total+".")
		}
	}
	return says
}

func sentencePart(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}

// fragranceLimit is the most fragrance the wax holds and what is left of it.
func (f figures) fragranceLimit() string {
	l := f.batch.FragranceLimit()
	if l.State != schema.Known || !l.Strictest.Known() {
		return ""
	}
	usual := ""
	if l.Family != "" {
		usual = " as a rule (common practice: " + f.title(l.Lacks) + " states no limit)"
	}
	if !l.Blend {
		who := f.plain(l.At.Whose())
		if l.Family != "" {
			who = schema.Capital(l.Family)
		}
		return who + " holds " + l.At.Amount.String() + usual + f.room(l, l.Strictest.Value) + "."
	}
	text := "Of this blend " + f.plain(l.At.Whose()) + " holds least, " + l.At.Amount.String() + f.room(l, l.Strictest.Value)
	if l.Average.Known() {
		text += "; by weight the blend averages " + batch.Percent(l.Average.Value, l.Basis) + ", which nobody has tested"
	}
	return text + "."
}

// room is what is left up to a limit of fragrance, or by how much it is over.
func (f figures) room(l batch.Limit, limit quantity.Rat) string {
	if !l.Load.Known() {
		return ""
	}
	over := l.Load.Value.Sub(limit)
	g := ""
	if w := f.batch.Over(l, limit); w.Known() && !over.IsZero() {
		g = ", " + f.grams(w.Value.Abs())
	}
	switch {
	case over.IsZero():
		return "; this is just that"
	case over.Sign() > 0:
		return "; this is over it by " + batch.Percent(over, l.Basis) + g
	}
	return "; this is " + batch.Percent(over.Neg(), l.Basis) + g + ", under it"
}

// certificate is the most its certificate allows in a candle.
func (f figures) certificate(in *batch.Ingredient) string {
	if in.Stock == nil || !in.Stock.Get("most_in_candles").IsAmount() {
		return ""
	}
	most := in.Stock.Get("most_in_candles").Amount().High()
	text := "Its certificate allows " + most.String()
	of := in.OfTotal
	if most.Basis() == quantity.OfWax {
		of = in.OfWax
	}
	if of.Known() && most.Base().Less(of.Value) {
		text += "; this is over it"
	}
	return text + "."
}

// stockLimit is what the supplier says of how much of a dye or an additive.
func (f figures) stockLimit(in *batch.Ingredient, attr, word string) string {
	if in.Stock == nil || !in.Stock.Get(attr).IsAmount() {
		return ""
	}
	limit := in.Stock.Get(attr).Amount()
	text := f.title(in.Stock) + ": " + word + " " + limit.String()
	of := in.OfTotal
	if limit.High().Basis() == quantity.OfWax {
		of = in.OfWax
	}
	if of.Known() {
		over := of.Value.Sub(limit.High().Base())
		switch {
		case over.Sign() > 0:
			text += "; this is over it by " + batch.Percent(over, limit.High().Basis())
		case attr == "limit" && !over.IsZero():
			text += "; this is " + batch.Percent(over.Neg(), limit.High().Basis()) + " under it"
		}
	}
	return text + "."
}
