package drill

import (
	"strings"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// writingKinds are slips of the pen: the text itself cannot be read as it was
// meant.
func writingKinds() []Kind {
	return []Kind{
		{"the name of a wax is misspelled", "unknown-key", func(b *Bench) []Fault {
			var all []Fault
			for i := range b.Waxes {
				all = append(all, relabel(b.Waxes[i].Block, misspelt(b.Waxes[i].Block.Label)))
			}
			return all
		}},
		{"a closing quote is forgotten", "syntax", func(b *Bench) []Fault {
			var all []Fault
			for i := range b.Steps {
				if heat := b.Steps[i].Heat; heat.Known() {
					at := heat.Span().End
					all = append(all, Fault{Edits: []schema.Edit{{File: heat.Block.File, Span: schema.Span{Start: at - 1, End: at}}}, Flag: strings.TrimSuffix(heat.Written(), `"`)})
				}
			}
			return all
		}},
		{"the word for a value is misspelled", "unknown-attribute", func(b *Bench) []Fault {
			return b.everyStep("pour", func(s *batch.Step) []Fault {
				if !s.Heat.Known() {
					return nil
				}
				return []Fault{{Edits: []schema.Edit{{File: s.Block.File, Span: s.Heat.NameSpan(), Text: "aat"}}, Flag: "aat"}}
			})
		}},
		{"a temperature has no unit", "unit-missing", func(b *Bench) []Fault {
			var all []Fault
			for i := range b.Steps {
				if heat := b.Steps[i].Heat; heat.IsAmount() && !heat.Amount().IsRange() {
					number := heat.Amount().Number().Decimal(1)
					all = append(all, Fault{Edits: []schema.Edit{schema.SetValue(heat, number)}, Flag: number})
				}
			}
			return all
		}},
		{"a weight stands where a temperature belongs", "unit-wrong-kind", func(b *Bench) []Fault {
			return b.everyStep("pour", func(s *batch.Step) []Fault {
				if !s.Heat.IsAmount() || s.Heat.Amount().IsRange() {
					return nil
				}
				grams := s.Heat.Amount().Number().Decimal(0) + " g"
				return []Fault{{Edits: []schema.Edit{schema.SetValue(s.Heat, schema.Quote(grams))}, Flag: grams}}
			})
		}},
		{"the name of a step is misspelled", "unknown-step", func(b *Bench) []Fault {
			return b.everyStep("pour", func(s *batch.Step) []Fault { return []Fault{relabel(s.Block, "poor")} })
		}},
		{"a sum stands where the weight belongs", "not-a-literal", func(b *Bench) []Fault {
			var all []Fault
			for i := range b.Waxes {
				w := b.Waxes[i].Block.Get("weight")
				if !w.IsAmount() || w.Amount().IsRange() {
					continue
				}
				grams := w.Amount().Base()
				part := grams.Mul(quantity.NewRat(2, 5)).Floor(quantity.Int(1))
				all = append(all, rewrite(w, part.Decimal(0)+" + "+grams.Sub(part).Decimal(0)))
			}
			return all
		}},
	}
}

// misspelt is a key with its last two different letters swapped.
func misspelt(key string) string {
	letters := []byte(key)
	for i := len(letters) - 1; i > 0; i-- {
		if a, b := letters[i-1], letters[i]; a != b && a < 0x80 && b < 0x80 && a != '-' && b != '-' {
			letters[i-1], letters[i] = b, a
			return string(letters)
		}
	}
	return key + "x"
}
