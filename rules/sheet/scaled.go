package sheet

import (
	"strconv"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// made is the shop with the recipe written for another size.
type made struct {
	shop   *lint.Shop
	recipe *schema.Block
}

// over writes the recipe for so many sets over its shop. Every weight is put
// on the scale's step so that no load rises: wax is rounded up, all else down.
func (p *plan) over(shop *lint.Shop, recipe *schema.Block, sets int) (made, error) {
	if p.written {
		return made{shop, recipe}, nil
	}
	times := p.perSet.Mul(quantity.Int(int64(sets)))
	var edits []schema.Edit
	for i := range p.b.Waxes {
		if in := &p.b.Waxes[i]; in.Weight.Known() {
			edits = append(edits, schema.SetValue(in.Said, grams(in.Weight.Value.Mul(times).Ceil(p.step))))
		}
	}
	for _, list := range [][]batch.Ingredient{p.b.Fragrances, p.b.Additives, p.b.Dyes} {
		for i := range list {
			if literal := scaledAmount(list[i].Said, times, p.step); literal != "" {
				edits = append(edits, schema.SetValue(list[i].Said, literal))
			}
		}
	}
	for i := range p.b.Toppings {
		if weight := p.b.Toppings[i].Get("weight"); weight.IsAmount() {
			edits = append(edits, schema.SetValue(weight, scaledAmount(weight, times, p.step)))
		}
	}
	for i := range p.set {
		edits = append(edits, schema.SetValue(p.b.Vessels[i].Block.Get("count"), strconv.Itoa(p.set[i]*sets)))
	}
	text, err := schema.Apply(recipe.File.Text.String(), edits)
	if err != nil {
		return made{}, err
	}
	next := shop.With(schema.Read(recipe.File.Name, []byte(text)))
	return made{next, next.Find("recipe", recipe.Label)}, nil
}

func grams(g quantity.Rat) string { return schema.Quote(g.Decimal(6) + " g") }

// scaledAmount is what is written in place of an amount that does not grow
// with the wax by itself: a weight, a volume or a number. "" for a load.
func scaledAmount(said schema.Value, times, step quantity.Rat) string {
	if !said.IsAmount() {
		return ""
	}
	amount := said.Amount().High()
	n := amount.Base().Mul(times)
	switch amount.Dim() {
	case quantity.Weight:
		return grams(n.Floor(fine(n, step)))
	case quantity.Volume:
		return schema.Quote(n.Floor(fine(n, quantity.Int(1))).Decimal(6) + " mL")
	case quantity.Count:
		each := quantity.Int(1)
		if amount.Unit() != quantity.Drop {
			each = quantity.NewRat(1, 4) // chips and blocks can be cut
		}
		return schema.Quote(quantity.FromBase(quantity.Max(each, n.Floor(each)), amount.Unit()).String())
	}
	return ""
}

// fine is the step to weigh an amount by: the scale's, or a tenth, hundredth or
// thousandth of it where the amount is less than fifty such steps.
func fine(amount, step quantity.Rat) quantity.Rat {
	for range 3 {
		if !amount.Less(step.Mul(quantity.Int(50))) {
			break
		}
		step = step.Mul(quantity.NewRat(1, 10))
	}
	return step
}
