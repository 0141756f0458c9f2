package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// FragranceOverCertificate compares each fragrance with what its certificate
// allows in candles. It is another limit than the wax's, of the finished
// candle, so both may speak.
var FragranceOverCertificate = &lint.Rule{
	Name:   "fragrance-over-certificate",
	Group:  group,
	Title:  "more of a fragrance than its certificate allows in candles",
	Levels: lint.Levels{OwnUse: lint.Should, Class: lint.Should, Sale: lint.Must},
	Why: "The certificate says up to what share of the finished candle the fragrance has been judged safe to use, for the people who breathe it. " +
		"It says nothing of what the wax holds; the lower of the two counts.",
	Remedy: "Lower the load to what the certificate allows, or ask the supplier for one that covers it.",
	Card: lint.Card{
		Question: "The certificate of this oil says 25 %. Can I put in that much?",
		Answer: "Only if the wax holds it too, and hardly any does. The certificate says up to what share of the candle the scent has been judged " +
			"safe for those who breathe it; the lower of the two counts.",
		AllRight: "Any load that is below both figures, each on its own basis: the certificate counts the whole candle, most wax sheets the wax.",
		Do:       "Look up both, the certificate and the wax's sheet, and weigh by the lower one.",
	},
	Source: "the supplier's certificate of use for candles (category 12 of the fragrance trade's standards, from memory), a share of the finished candle; arithmetic",
	Bad: []lint.Example{{
		About:   "a fragrance allowed up to 3 % of total",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `fragrance "tide-and-thyme"`, To: `fragrance "strict-oil"`}},
		Stock:   strictOil("3 % of total"),
		Flags:   []string{`"5 % of wax"`},
	}},
	Also: []string{"ingredient-never-added", "test-burn-missing"},
	Good: []lint.Example{{
		About:   "5 % of wax is 4.76 % of total: within 4.8",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `fragrance "tide-and-thyme"`, To: `fragrance "strict-oil"`}},
		Stock:   strictOil("4.8 % of total"),
	}},
	Check: checkCertificate,
}

func strictOil(most string) string {
	return "fragrance \"strict-oil\" {\n  title           = \"Strict oil\"\n  flash_point     = \"210 °F\"\n  density         = \"0.96 g/mL\"\n  most_in_candles = \"" + most +
		"\"\n  gel_safe        = false\n  water_based     = false\n  components      = \"none classified\"\n}\n"
}

func checkCertificate(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Fragrances {
		in := &b.Fragrances[i]
		if in.Stock == nil {
			continue
		}
		most := in.Stock.Get("most_in_candles")
		if !most.Known() {
			p.CannotCheck(in.Stock, "most_in_candles")
			continue
		}
		share, basis := in.OfTotal, quantity.OfTotal
		if most.Amount().Basis() == quantity.OfWax {
			share, basis = in.OfWax, quantity.OfWax
		}
		limit := most.Amount().High().Base()
		if !share.Ask(p) || !limit.Less(share.Value) || basis == quantity.OfTotal && !share.Value.Less(one) {
			continue // what leaves no room for wax is a slip, which other rules say
		}
		p.Report(lint.Finding{
			At: lint.AtValue(in.Said),
			Message: fmt.Sprintf("%s over what its certificate allows in candles (%s) by %s", measured(in, share.Value, limit, basis),
				most.Amount().String(), excessOf(p, b, in, share.Value, limit, basis)),
			Notes: []lint.Note{{Place: lint.AtValue(most), Message: "what the certificate allows is stated here"}},
			Fixes: func() []schema.Fix { return lowerOne(in, limit, basis) },
		})
	}
}

// allowed is what a limit on a basis leaves of one ingredient, as a ratio to
// the wax, and everything else that goes in, which stays as it is.
func allowed(in *batch.Ingredient, limit quantity.Rat, basis quantity.Basis) (kept, rest quantity.Rat, ok bool) {
	if !in.OfWax.Known() || in.OfWax.Value.IsZero() {
		return kept, rest, false
	}
	if in.OfTotal.Known() {
		total, ok := in.OfWax.Value.Quo(in.OfTotal.Value)
		if !ok {
			return kept, rest, false
		}
		rest = total.Sub(in.OfWax.Value)
	}
	if basis == quantity.OfWax {
		return limit, rest, true
	}
	if !in.OfTotal.Known() {
		return kept, rest, false
	}
	kept, ok = limit.Mul(rest).Quo(one.Sub(limit))
	return kept, rest, ok
}

// excessOf is how much of one ingredient is too much: the weight that has to be
// left out, which also makes the total less; in per cent where no weight is
// known.
func excessOf(p *lint.Pass, b *batch.Batch, in *batch.Ingredient, share, limit quantity.Rat, basis quantity.Basis) string {
	if kept, _, ok := allowed(in, limit, basis); ok && in.Weight.Known() {
		part, _ := kept.Quo(in.OfWax.Value)
		return weight(p, b, in.Said, in.Weight.Value.Sub(in.Weight.Value.Mul(part)))
	}
	return batch.Percent(share.Sub(limit), basis)
}

// lowerOne offers one ingredient brought down to a limit on a basis. What goes
// in beside it stays as it is.
func lowerOne(in *batch.Ingredient, limit quantity.Rat, basis quantity.Basis) []schema.Fix {
	kept, rest, ok := allowed(in, limit, basis)
	if !ok || !in.Said.IsAmount() {
		return nil
	}
	written := in.Said.Amount().High()
	var amount quantity.Quantity
	if written.Basis() == quantity.OfTotal {
		share, ok := kept.Quo(rest.Add(kept))
		if !ok || !in.OfTotal.Known() {
			return nil
		}
		amount = repair.Lowered(written, share)
	} else {
		factor, _ := kept.Quo(in.OfWax.Value)
		amount = repair.Lowered(written, written.Base().Mul(factor))
	}
	if amount.Base().IsZero() {
		return nil // it comes to nothing on a scale
	}
	title := "lower " + in.Block.Label + " to " + amount.String()
	edits := []schema.Edit{schema.SetValue(in.Said, schema.Quote(amount.String()))}
	if beside, load := loadBeside(in, kept, rest.Add(kept)); beside != nil {
		title += " and the load beside it to " + load.String()
		edits = append(edits, beside...)
	}
	return []schema.Fix{{Title: title, Edits: edits}}
}

// loadBeside lowers the load that is written beside a weight, where it says
// more than the weight is brought down to: kept and total are ratios to the
// wax. Left as it is, the sheet would go on asking for too much.
func loadBeside(in *batch.Ingredient, kept, total quantity.Rat) ([]schema.Edit, quantity.Quantity) {
	if !in.Load.IsAmount() {
		return nil, quantity.Quantity{}
	}
	load := in.Load.Amount().High()
	if load.Basis() == quantity.OfTotal {
		share, ok := kept.Quo(total)
		if !ok || total.Less(one) {
			return nil, quantity.Quantity{}
		}
		kept = share
	}
	lower := repair.Lowered(load, kept)
	if !kept.Less(load.Base()) || lower.Base().IsZero() {
		return nil, quantity.Quantity{}
	}
	return []schema.Edit{schema.SetValue(in.Load, schema.Quote(lower.String()))}, lower
}
