package labels

import (
	"strings"

	"wickrule/schema/quantity"
)

// netQuantity is a printed net quantity taken apart: "1 lb 5 oz (595 g)",
// "190 g / 6.7 oz". Either is the zero Quantity where it is not there.
type netQuantity struct {
	us, metric quantity.Quantity
	unread     string // a part that is neither
}

// parseNet reads the parts of a printed net weight, net contents or length.
// The words "net wt." before it, and what counts the candles, are passed over.
func parseNet(printed string, dims ...quantity.Dimension) netQuantity {
	var net netQuantity
	for part := range strings.FieldsFuncSeq(printed, func(r rune) bool { return r == '(' || r == ')' || r == '/' || r == ',' || r == ';' || r == '|' }) {
		part = withoutLead(part)
		if part == "" {
			continue
		}
		q, err := quantity.Parse(part, dims...)
		switch {
		case err != nil:
			if strings.ContainsAny(part, "0123456789") && net.unread == "" {
				net.unread = part
			}
		case q.Unit().System == quantity.US:
			net.us = q
		default:
			net.metric = q
		}
	}
	return net
}

// withoutLead drops the words before the number: "Net wt. 7 oz" is "7 oz".
func withoutLead(part string) string {
	at := strings.IndexAny(part, "0123456789")
	if at < 0 {
		return ""
	}
	return strings.TrimSpace(part[at:])
}

func (n netQuantity) hasUS() bool     { return n.us.Dim() != quantity.None }
func (n netQuantity) hasMetric() bool { return n.metric.Dim() != quantity.None }

// agree says whether the two figures are one and the same, each rounded as it
// is printed: the metric one to three figures (16 CFR 500.19(b)), the other to
// the last digit written, to the nearest or downwards.
func (n netQuantity) agree() bool {
	if !n.hasUS() || !n.hasMetric() || n.us.Dim() != n.metric.Dim() {
		return true
	}
	off := n.metric.Base().Sub(n.us.Base())
	fromOunces := !thirdFigure(n.us.Base(), n.metric).Less(off.Abs())
	fromGrams := !off.Less(n.us.HalfDigit().Neg()) && off.Less(lastDigit(n.us))
	return fromOunces || fromGrams
}

// lastDigit is one step of the last digit written, in base units.
func lastDigit(q quantity.Quantity) quantity.Rat { return q.HalfDigit().Mul(quantity.Int(2)) }

// thirdFigure is one step of the third figure of a weight, in base units, or
// of the last digit printed where that is coarser.
func thirdFigure(base quantity.Rat, printed quantity.Quantity) quantity.Rat {
	step := quantity.Int(1)
	for !base.Less(step.Mul(quantity.Int(1000))) {
		step = step.Mul(quantity.Int(10))
	}
	for base.Sign() > 0 && base.Less(step.Mul(quantity.Int(100))) {
		step, _ = step.Quo(quantity.Int(10))
	}
	return quantity.Max(step, lastDigit(printed))
}

// most is the larger of the two figures: what the buyer may take it to promise.
func (n netQuantity) most() quantity.Quantity {
	if n.hasUS() && (!n.hasMetric() || n.metric.Dim() != n.us.Dim() || n.metric.Base().Less(n.us.Base())) {
		return n.us
	}
	return n.metric
}
