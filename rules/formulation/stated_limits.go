package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// compare reports an ingredient over the upper end of a proportion its stock
// item states, and says whether it did.
func compare(p *lint.Pass, b *batch.Batch, in *batch.Ingredient, attr, whose string) bool {
	stated := in.Stock.Get(attr)
	if !stated.Known() {
		p.CannotCheck(in.Stock, attr)
		return false
	}
	limit := stated.Amount().High().Base()
	share, basis := onBasis(in, stated.Amount())
	if !share.Ask(p) || !limit.Less(share.Value) {
		return false
	}
	message := fmt.Sprintf("%s over %s (%s) by %s", measured(in, share.Value, limit, basis), whose, stated.Amount().String(),
		excessOf(p, b, in, share.Value, limit, basis))
	p.Report(lint.Finding{
		At:      lint.AtValue(in.Said),
		Message: message,
		Notes:   []lint.Note{{Place: lint.AtValue(stated), Message: "it is stated here"}},
		Fixes:   func() []schema.Fix { return lowerOne(in, limit, basis) },
	})
	return true
}

func onBasis(in *batch.Ingredient, stated quantity.Quantity) (batch.Figure, quantity.Basis) {
	if stated.Basis() == quantity.OfTotal {
		return in.OfTotal, quantity.OfTotal
	}
	return in.OfWax, quantity.OfWax
}
