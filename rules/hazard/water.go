package hazard

import "wickrule/schema/quantity"

// water sums what harms water (Annex I, Tables 4.1.1 and 4.1.2), each share
// times its M-factor. What is very toxic counts from 0.1 % over its M-factor
// on, the rest from 1 % (Table 1.1).
func (c *Classification) water() {
	limit := percent(2500)
	acute := Step{Into: Hazard{Class: AquaticAcute, Cat: 1, Code: "H400"}, Provision: "Annex I, Table 4.1.1"}
	chronic := [5]Step{}
	for cat, code := range chronicCodes {
		if cat > 0 {
			chronic[cat] = Step{Into: Hazard{Class: AquaticChronic, Cat: int8(cat), Code: code}, Provision: "Annex I, Table 4.1.2"}
		}
	}
	for _, s := range c.Substances {
		if s.is(AquaticAcute, 1) {
			m := c.factor(s, s.M)
			acute.add(s, m, quantity.NewRat(1, 1000*m))
		}
		h, ok := s.most(AquaticChronic)
		if !ok {
			continue
		}
		if h.Cat == 1 {
			m := c.factor(s, s.MChronic)
			cutOff := quantity.NewRat(1, 1000*m)
			chronic[1].add(s, m, cutOff)
			chronic[2].add(s, 10*m, cutOff)
			chronic[3].add(s, 100*m, cutOff)
			chronic[4].add(s, 1, cutOff)
			continue
		}
		for cat, factor := h.Cat, int64(1); cat < 4; cat, factor = cat+1, factor*10 {
			chronic[cat].add(s, factor, percent(100))
		}
		chronic[4].add(s, 1, percent(100))
	}
	acute.decide(limit)
	c.keep(acute)
	for cat := 1; cat <= 4; cat++ {
		chronic[cat].decide(limit)
		if c.keep(chronic[cat]) {
			return // the gravest that is reached decides
		}
	}
}

var chronicCodes = [5]string{"", "H410", "H411", "H412", "H413"}

// mostM is the largest M-factor taken for one: far above any in use.
const mostM = 1_000_000_000

// factor is the M-factor; 1 where none is stated, which is noted.
func (c *Classification) factor(s *Substance, m int64) int64 {
	if m > 0 {
		return min(m, mostM)
	}
	for _, p := range s.Parts {
		if p.Component.Get("m_factor").Absent() {
			c.NoM = append(c.NoM, p.Component)
		}
	}
	return 1
}
