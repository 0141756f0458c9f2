package drill

import (
	"strings"

	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// OwnKinds are slips against the rules that the shop wrote for itself: what
// stands in a rule's faulty examples is carried into the recipe, and the value
// that the rule points at is written too high and too low. What of it the rule
// speaks of, the checker tells.
func OwnKinds(shop *lint.Shop) []Kind {
	var kinds []Kind
	for _, rule := range shop.Rules() {
		title := strings.TrimSuffix(strings.TrimSpace(rule.Title()), ".")
		kinds = append(kinds, Kind{"the shop's own rule was not kept: " + title, rule.Label, func(b *Bench) []Fault {
			return append(fromExamples(b, rule), aroundPoint(b, rule)...)
		}})
	}
	return kinds
}

// fromExamples carries each value of the rule's faulty examples into the
// blocks of the same kind.
func fromExamples(b *Bench, rule *schema.Block) []Fault {
	var all []Fault
	carry := func(from, to *schema.Block) {
		for v := range from.Attrs() {
			if !v.Known() || v.Spec.Name == "title" {
				continue
			}
			if now := to.Get(v.Spec.Name); now.Written() != v.Written() && !now.Broken() {
				all = append(all, Fault{Edits: []schema.Edit{schema.SetValue(now, v.Written())}})
			}
		}
	}
	for faulty := range rule.Each("faulty") {
		for example := range faulty.Each("recipe") {
			carry(example, b.Recipe)
			for _, from := range example.Blocks() {
				for _, to := range b.Recipe.Blocks() {
					if to.Spec != from.Spec {
						continue
					}
					carry(from, to)
					if from.Spec.Label == schema.Refers && from.Label != to.Label {
						all = append(all, relabel(to, from.Label))
					}
				}
			}
		}
	}
	return all
}

// aroundPoint writes the value that the rule points at too high and too low.
func aroundPoint(b *Bench, rule *schema.Block) []Fault {
	word, attr, ok := strings.Cut(strings.TrimSpace(rule.Get("point_at").Written()), ".")
	if !ok || strings.Contains(attr, ".") {
		return nil
	}
	var all []Fault
	for _, at := range append([]*schema.Block{b.Recipe}, b.Recipe.Blocks()...) {
		called := at.Spec.Name
		if at.Spec.Kind != "" {
			called = strings.ReplaceAll(at.Spec.Kind, " ", "_")
		}
		if called != word || at.Spec.Attr(attr) == nil {
			continue
		}
		if v := at.Get(attr); v.IsAmount() && !v.Amount().IsRange() {
			for _, q := range around(v.Amount()) {
				all = append(all, Fault{Edits: []schema.Edit{schema.SetValue(v, schema.Quote(q.String()))}})
			}
		}
	}
	return all
}

// around are amounts a good deal smaller and larger than one; of a temperature
// some degrees.
func around(q quantity.Quantity) []quantity.Quantity {
	var all []quantity.Quantity
	if q.Dim() == quantity.Temperature {
		for _, degrees := range []int64{-25, -12, -6, 6, 12, 25} {
			all = append(all, quantity.Of(q.Number().Add(quantity.Int(degrees)), q.Unit()))
		}
		return all
	}
	for _, times := range [][2]int64{{1, 4}, {1, 2}, {3, 2}, {2, 1}, {4, 1}} {
		all = append(all, quantity.Of(q.Number().Mul(quantity.NewRat(times[0], times[1])), q.Unit()))
	}
	return all
}
