package hazard

import "wickrule/schema/quantity"

// routes have their limits of each category (Annex I, Table 3.1.1), what
// stands for a category where no estimate is known (Table 3.1.2, from memory), in
// thousandths of mg/kg or mg/L, and the statements of their categories.
type route struct {
	route     Route
	limits    [5]int64
	converted [5]int64
	codes     [5]string
	unit      string
	words     string
}

var routes = []route{
	{Oral, [5]int64{0, 5000, 50_000, 300_000, 2_000_000}, [5]int64{0, 500, 5000, 100_000, 500_000}, [5]string{"", "H300", "H300", "H301", "H302"}, "mg/kg", "by mouth"},
	{Dermal, [5]int64{0, 50_000, 200_000, 1_000_000, 2_000_000}, [5]int64{0, 5000, 50_000, 300_000, 1_100_000}, [5]string{"", "H310", "H310", "H311", "H312"}, "mg/kg", "by skin"},
	{Vapor, [5]int64{0, 500, 2000, 10_000, 20_000}, [5]int64{0, 50, 500, 3000, 11_000}, [5]string{"", "H330", "H330", "H331", "H332"}, "mg/L", "inhaled as vapor"},
	{Dust, [5]int64{0, 50, 500, 1000, 5000}, [5]int64{0, 5, 50, 500, 1500}, [5]string{"", "H330", "H330", "H331", "H332"}, "mg/L", "inhaled as dust or mist"},
}

func (r *route) limit(cat int8) quantity.Rat { return quantity.NewRat(r.limits[cat], 1000) }

// category is the category of an estimate; 0 where it is above all of them.
func (r *route) category(ate quantity.Rat) int8 {
	for cat := int8(1); cat <= 4; cat++ {
		if !r.limit(cat).Less(ate) {
			return cat
		}
	}
	return 0
}

// of is a substance's category and estimate by a route. Only what falls into a
// category counts (3.1.3.6.1). An estimate that is not stated is the one that
// stands for the category. Where the sheet does not say how a substance is
// inhaled, it counts both as vapor and as dust.
func (r *route) of(s *Substance) (cat int8, ate quantity.Rat, converted, ok bool) {
	for _, a := range s.ATEs {
		if a.Route == r.route && (!ok || a.Value.Less(ate)) {
			cat, ate, ok = r.category(a.Value), a.Value, true
		}
	}
	if ok {
		return cat, ate, false, cat > 0
	}
	for _, h := range s.Hazards {
		if h.Class != AcuteTox || !(h.Route == r.route || h.Route == Inhaled && (r.route == Vapor || r.route == Dust) && !s.statesInhaled()) {
			continue
		}
		if !ok || h.Cat < cat {
			cat, ate, ok = h.Cat, quantity.NewRat(r.converted[h.Cat], 1000), true
		}
	}
	return cat, ate, true, ok
}

func (s *Substance) statesInhaled() bool {
	for _, a := range s.ATEs {
		if a.Route == Vapor || a.Route == Dust {
			return true
		}
	}
	return false
}

// Estimate is the acute toxicity estimate of a mixture (Annex I, 3.1.3.6): 1
// over the sum of share over estimate, the shares as ratios. Of what is
// unknown and is more than a tenth of the mixture, the rest is taken for the
// whole (3.1.3.6.2.3). False: nothing in it is toxic.
func Estimate(terms []Term, unknown quantity.Rat) (quantity.Rat, bool) {
	sum := quantity.Int(0)
	for _, t := range terms {
		if t.Counted {
			part, ok := t.Substance.InCandle.Quo(t.ATE)
			if !ok {
				continue
			}
			sum = sum.Add(part)
		}
	}
	whole := quantity.Int(1)
	if quantity.NewRat(1, 10).Less(unknown) {
		whole = whole.Sub(unknown)
	}
	return whole.Quo(sum)
}

// acute estimates the acute toxicity of the candle by each route. Categories 1
// to 3 count from 0.1 %, category 4 from 1 % (Table 1.1).
func (c *Classification) acute() {
	for i := range routes {
		r := &routes[i]
		step := Step{Provision: "Annex I, 3.1.3.6 and Table 3.1.1", Unit: r.unit}
		for _, s := range c.Substances {
			cat, ate, converted, ok := r.of(s)
			if !ok {
				continue
			}
			cutOff := percent(10)
			if cat == 4 {
				cutOff = percent(100)
			}
			step.Terms = append(step.Terms, Term{Substance: s, Factor: 1, Counted: !s.InCandle.Less(cutOff), CutOff: cutOff, ATE: ate, Converted: converted})
		}
		if len(step.Terms) == 0 {
			continue
		}
		cat := int8(0)
		if ate, ok := Estimate(step.Terms, quantity.Int(0)); ok {
			step.Sum = ate
			cat = r.category(ate)
		}
		step.Reached = cat > 0
		step.Memory = step.Reached && r.withoutConverted(step.Terms) != cat
		shown := cat
		if shown == 0 {
			shown = 4
		}
		step.Into = Hazard{Class: AcuteTox, Cat: shown, Route: r.route, Code: r.codes[shown]}
		step.Limit = r.limit(shown)
		c.keepAcute(step)
	}
}

// withoutConverted is the category that the stated estimates alone give; 0 where
// they give none. The figures that stand for a category are from memory.
func (r *route) withoutConverted(terms []Term) int8 {
	var stated []Term
	for _, t := range terms {
		if !t.Converted {
			stated = append(stated, t)
		}
	}
	if ate, ok := Estimate(stated, quantity.Int(0)); ok {
		return r.category(ate)
	}
	return 0
}

// keepAcute keeps the graver result where a substance counts both as vapor and
// as dust.
func (c *Classification) keepAcute(step Step) {
	for i := range c.Results {
		had := &c.Results[i]
		if !step.Reached || had.Class != AcuteTox || had.Code[:3] != step.Into.Code[:3] {
			continue
		}
		c.Steps = append(c.Steps, step)
		if step.Into.Cat < had.Cat {
			*had = Result{step.Into, len(c.Steps) - 1}
		}
		return
	}
	c.keep(step)
}

func howTaken(r Route) string {
	for i := range routes {
		if routes[i].route == r {
			return routes[i].words
		}
	}
	return ""
}
