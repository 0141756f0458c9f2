package hazard

import "wickrule/schema/quantity"

// sensitizers judges substance by substance: they are never summed. From its
// limit on (Table 3.4.5, or its own) one classifies the candle; from a tenth
// of that on it must be named, for those who are allergic already (Table
// 3.4.6; Annex II, 2.8).
func (c *Classification) sensitizers(class Class) {
	result := Hazard{Class: class, Cat: 1, Code: "H317"}
	if class == RespSens {
		result.Code = "H334"
	}
	for _, s := range c.Substances {
		h, ok := s.most(class)
		if !ok {
			continue
		}
		general := percent(100)
		if h.Sub == 'A' {
			general = percent(10)
		}
		step := Step{Into: result, Provision: "Annex I, Table 3.4.5"}
		step.add(s, 1, quantity.Int(0))
		limit, own := s.limit(class, general)
		if step.Own = own; own {
			step.Provision = "Article 10 and Annex I, Table 3.4.5"
		}
		step.decide(limit)
		if c.keep(step) {
			continue
		}
		if c.elicits(s, class, h) {
			c.elicit(s)
		}
	}
}

// elicits says whether a sensitizer must be named: from 0.1 %, of 1A from
// 0.01 %; with a limit of its own from a tenth of that, where it is less. Older
// texts take the tenth only of limits under 0.1 %, newer ones of any: the
// lower figure is kept here.
func (c *Classification) elicits(s *Substance, class Class, h Hazard) bool {
	from := percent(10)
	if h.Sub == 'A' {
		from = percent(1)
	}
	step := Step{Provision: "Annex I, Table 3.4.6 and Annex II, 2.8"}
	step.add(s, 1, quantity.Int(0))
	if s.limitFor() == class {
		if tenth := s.Limit.Mul(quantity.NewRat(1, 10)); tenth.Less(from) {
			from, step.Own = tenth, true
		}
	}
	step.decide(from)
	return c.keep(step)
}

func (c *Classification) elicit(s *Substance) {
	for _, known := range c.Elicits {
		if known == s {
			return
		}
	}
	c.Elicits = append(c.Elicits, s)
}
