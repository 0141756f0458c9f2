package hazard

import "wickrule/schema/quantity"

// general is a limit for classes that are judged substance by substance: in a
// category, from a share on, the candle falls into a category. Those from
// memory were not held against the text of the regulation.
type general struct {
	class     Class
	cat, into int8
	from      quantity.Rat
	provision string
	memory    bool
}

var generals = []general{
	{Muta, 1, 1, percent(10), "Annex I, Table 3.5.2", false},
	{Muta, 2, 2, percent(100), "Annex I, Table 3.5.2", false},
	{Carc, 1, 1, percent(10), "Annex I, Table 3.6.2", true},
	{Carc, 2, 2, percent(100), "Annex I, Table 3.6.2", true},
	{Repr, 1, 1, percent(30), "Annex I, Table 3.7.2", false},
	{Repr, 2, 2, percent(300), "Annex I, Table 3.7.2", false},
	{Lact, 0, 0, percent(30), "Annex I, Table 3.7.2", false},
	{STOTSingle, 1, 1, percent(1000), "Annex I, Table 3.8.3", true},
	{STOTSingle, 1, 2, percent(100), "Annex I, Table 3.8.3", true},
	{STOTSingle, 2, 2, percent(1000), "Annex I, Table 3.8.3", true},
	{STOTRepeated, 1, 1, percent(1000), "Annex I, Table 3.9.4", true},
	{STOTRepeated, 1, 2, percent(100), "Annex I, Table 3.9.4", true},
	{STOTRepeated, 2, 2, percent(1000), "Annex I, Table 3.9.4", true},
	{Ozone, 1, 1, percent(10), "Annex I, Table 5.1", true},
	{DisruptsHumans, 1, 1, percent(10), "Regulation (EU) 2023/707", true},
	{DisruptsHumans, 2, 2, percent(100), "Regulation (EU) 2023/707", true},
	{DisruptsNature, 1, 1, percent(10), "Regulation (EU) 2023/707", true},
	{DisruptsNature, 2, 2, percent(100), "Regulation (EU) 2023/707", true},
	{Lasting, 0, 0, percent(10), "Regulation (EU) 2023/707", true},
}

// oneByOne judges what causes mutations and cancer, harms children or organs
// (Annex I, 3.5 to 3.9), and the classes of Regulation (EU) 2023/707.
func (c *Classification) oneByOne() {
	for _, s := range c.Substances {
		for i, h := range s.Hazards {
			if h.Class == STOTSingle && h.Cat == 3 || repeats(s.Hazards[:i], h) {
				continue
			}
			for _, g := range generals {
				if g.class == h.Class && g.cat == h.Cat && c.single(s, h, g) {
					break // the graver category is reached
				}
			}
		}
	}
}

// single is one substance against one limit.
func (c *Classification) single(s *Substance, h Hazard, g general) bool {
	result := h
	if g.into != g.cat { // a category lower, with the statement of that
		result = Hazard{Class: h.Class, Cat: g.into}
		result.codeFromCategory()
	}
	step := Step{Into: result, Provision: g.provision, Memory: g.memory}
	step.add(s, 1, quantity.Int(0))
	limit, own := s.limit(h.Class, g.from)
	if step.Own = own; own {
		step.Provision, step.Memory = "Article 10 and "+g.provision, false
	}
	step.decide(limit)
	return c.keep(step)
}

func repeats(before []Hazard, h Hazard) bool {
	for _, b := range before {
		if b.Class == h.Class && b.Cat == h.Cat && b.Code == h.Code {
			return true
		}
	}
	return false
}

// narcoticAndIrritant sums STOT SE 3, each effect by itself, against 20 %: a
// guide value that experts may set aside (Annex I, 3.8.3.4.5).
func (c *Classification) narcoticAndIrritant() {
	for _, code := range []string{"H335", "H336"} {
		step := Step{Into: Hazard{Class: STOTSingle, Cat: 3, Code: code}, Provision: "Annex I, 3.8.3.4.5, a guide value", Memory: true}
		for _, s := range c.Substances {
			for i, h := range s.Hazards {
				if h.Code == code && !repeats(s.Hazards[:i], h) {
					step.add(s, 1, percent(100))
				}
			}
		}
		step.decide(percent(2000))
		c.keep(step)
	}
}
