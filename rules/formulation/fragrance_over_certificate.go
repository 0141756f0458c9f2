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
				most.Amount().String(), batch.Percent(share.Value.Sub(limit), basis)),
			Notes: []lint.Note{{Place: lint.AtValue(most), Message: "what the certificate allows is stated here"}},
			Fixes: func() []schema.Fix { return lowerOne(b, in, limit, basis) },
		})
	}
}

// lowerOne offers one ingredient brought down to a limit on a basis. What goes
// in beside it stays as it is.
func lowerOne(b *batch.Batch, in *batch.Ingredient, limit quantity.Rat, basis quantity.Basis) []schema.Fix {
	if !in.OfWax.Known() || in.OfWax.Value.IsZero() || !in.Said.IsAmount() {
		return nil
	}
	written := in.Said.Amount().High()
	target := limit
	if basis == quantity.OfTotal || written.Basis() == quantity.OfTotal {
		if !in.OfTotal.Known() {
			return nil
		}
		total, ok := in.OfWax.Value.Quo(in.OfTotal.Value)
		if !ok {
			return nil
		}
		rest := total.Sub(in.OfWax.Value)
		if basis == quantity.OfTotal {
			target, _ = limit.Mul(rest).Quo(one.Sub(limit))
		}
		if written.Basis() == quantity.OfTotal {
			share, _ := target.Quo(rest.Add(target))
			return setAmount(in, repair.Lowered(written, share))
		}
	}
	factor, _ := target.Quo(in.OfWax.Value)
	return setAmount(in, repair.Lowered(written, written.Base().Mul(factor)))
}

// setAmount offers an amount, unless it comes to nothing on a scale.
func setAmount(in *batch.Ingredient, amount quantity.Quantity) []schema.Fix {
	if amount.Base().IsZero() {
		return nil
	}
	return []schema.Fix{repair.Rewrite(fmt.Sprintf("lower %s to %s", in.Block.Label, amount.String()), in.Said, schema.Quote(amount.String()))}
}
