package hazard

import (
	"fmt"

	"wickrule/schema/quantity"
)

// skin sums what is corrosive and what irritates the skin (Annex I, Table
// 3.2.3), of substances from 1 % on (Table 1.1).
func (c *Classification) skin() {
	one := percent(100)
	irrit := Hazard{Class: SkinIrrit, Cat: 2, Code: "H315"}
	corr := Step{Provision: "Annex I, Table 3.2.3"}
	weak := Step{Into: irrit, Provision: "Annex I, Table 3.2.3"}
	both := Step{Into: irrit, Provision: "Annex I, Table 3.2.3"}
	for _, s := range c.Substances {
		if s.is(SkinCorr, 1) {
			corr.add(s, 1, one)
			weak.add(s, 1, one)
			both.add(s, 10, one)
		} else if s.is(SkinIrrit, 2) {
			both.add(s, 1, one)
		}
	}
	corr.decide(percent(500))
	corr.Into = Hazard{Class: SkinCorr, Cat: 1, Sub: corrosiveAs(corr.Counted()), Code: "H314"}
	if c.keep(corr) {
		return
	}
	c.irritates(weak, both, "skin", "Table 3.2.4")
}

// irritates judges the two sums that make a mixture an irritant of skin or
// eyes: what does more than irritate, from 1 %, and ten times that with the
// irritants, from 10 %.
func (c *Classification) irritates(weak, both Step, organ, table string) {
	weak.decide(percent(100))
	if c.keep(weak) {
		return
	}
	both.decide(percent(1000))
	if !c.keep(both) {
		c.notSummable(both.Into.Class, percent(300), organ, table)
	}
}

// corrosiveAs is the sub-category of a corrosive mixture: A where 1A alone
// reaches 5 %, B where 1A and 1B do, C where it takes all; none where one of
// them is not split.
func corrosiveAs(all []*Substance) byte {
	var a, b quantity.Rat
	for _, s := range all {
		h, _ := s.most(SkinCorr)
		switch h.Sub {
		case 0:
			return 0
		case 'A':
			a = a.Add(s.InCandle)
		case 'B':
			b = b.Add(s.InCandle)
		}
	}
	switch five := percent(500); {
	case !a.Less(five):
		return 'A'
	case !a.Add(b).Less(five):
		return 'B'
	}
	return 'C'
}

// eyes sums what damages and what irritates eyes (Annex I, Table 3.3.3). What
// is corrosive to skin damages eyes too; a substance that is both counts once.
func (c *Classification) eyes() {
	one := percent(100)
	irrit := Hazard{Class: EyeIrrit, Cat: 2, Code: "H319"}
	dam := Step{Into: Hazard{Class: EyeDam, Cat: 1, Code: "H318"}, Provision: "Annex I, Table 3.3.3"}
	weak := Step{Into: irrit, Provision: "Annex I, Table 3.3.3"}
	both := Step{Into: irrit, Provision: "Annex I, Table 3.3.3"}
	for _, s := range c.Substances {
		if s.is(SkinCorr, 1) || s.is(EyeDam, 1) {
			dam.add(s, 1, one)
			weak.add(s, 1, one)
			both.add(s, 10, one)
		} else if s.is(EyeIrrit, 2) {
			both.add(s, 1, one)
		}
	}
	dam.decide(percent(300))
	if c.keep(dam) {
		return
	}
	c.irritates(weak, both, "eyes", "Table 3.3.4")
}

// notSummable doubts a sum that stays under its limit with an aldehyde or a
// phenol in it: of these little may do more than the sum tells (Annex I,
// 3.2.3.3.4 and 3.3.3.3.4), and alone they count from 3 %.
func (c *Classification) notSummable(class Class, from quantity.Rat, organ, table string) {
	for _, s := range c.Substances {
		k, ok := Find(s.CAS)
		if !ok || !k.Aldehyde && !k.Phenol || !s.is(class, 2) || s.InCandle.Less(from) {
			continue
		}
		kind := "an aldehyde"
		if k.Phenol {
			kind = "a phenol"
		}
		c.doubt(s.Parts[0].Component, fmt.Sprintf("%s is %s, and what those do to %s cannot always be summed: alone it counts from %s (Annex I, %s), and it is %s of the candle",
			s.Name, kind, organ, show(from), table, beside(s.InCandle, from)))
	}
}
