package shoprule

import (
	"math"

	"wickrule/rules/batch"
	"wickrule/rules/cooling"
	"wickrule/rules/hazard"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// reckoned adds what can be asked of a kind beyond what is written: figures of
// the batch, defaults, times, what belongs to it.
func (t *kindTable) reckoned(k *kind) {
	switch {
	case k.Name == "recipe":
		recipeNames(k)
	case k.Name == "batch":
		batchNames(k)
	case k.Name == "cooling":
		coolingNames(k)
	case k.Name == "hazards":
		hazardNames(k)
	case k.Name == "shop":
		shopNames(k)
	case k.ingredients != nil:
		ingredientNames(k)
	case k.vessel:
		vesselNames(k)
	case k.step != "":
		stepNames(k)
	}
	if k.stock != nil && k.Name != "shop" {
		k.put(reckonedName("key", Type{Kind: Text}, "Its key.", func(_ *scene, th *thing) value {
			if th.stock == nil {
				return broken()
			}
			return words(th.stock.Label)
		}))
	}
	if k.stock != nil && k.stock.Attr("title") != nil && k.Name != "shop" {
		k.put(reckonedName("title", Type{Kind: Text}, "How people call it: its title, else its key.", func(_ *scene, th *thing) value {
			if th.stock == nil {
				return broken()
			}
			return words(th.stock.Title())
		}))
	}
}

// reckonedName is a name that is worked out. What is not there is not asked.
func reckonedName(word string, t Type, doc string, get func(*scene, *thing) value) *name {
	return &name{Name: word, Type: t, Doc: doc, From: "reckoned", get: func(s *scene, th *thing) value {
		if th.state != schema.Known {
			return value{state: th.state, lacks: th.lacks, attr: th.attr}
		}
		return get(s, th)
	}}
}

func recipeNames(k *kind) {
	put := func(word string, t Type, doc string, get func(*scene, *thing) value) {
		n := reckonedName(word, t, doc, get)
		n.Attr = k.recipe.Attr(word)
		k.put(n)
	}
	put("key", Type{Kind: Text}, "Its key.", func(s *scene, _ *thing) value { return words(s.view.Recipe.Label) })
	put("title", Type{Kind: Text}, "Its title, else its key.", func(s *scene, _ *thing) value {
		v := words(s.view.Recipe.Title())
		v.said = s.view.Recipe.Get("title")
		return v
	})
	put("makes", Type{Kind: Text, Choices: k.recipe.Attr("makes").Choices}, "What it makes: as it says, else as its first vessel says.", func(s *scene, _ *thing) value {
		v := broken()
		if s.b.Makes != "" {
			v = words(s.b.Makes)
		}
		v.said = s.view.Recipe.Get("makes")
		return v
	})
	put("made_for", Type{Kind: Text, Choices: k.recipe.Attr("made_for").Choices}, "Whom it is made for; where it does not say, sale.", func(s *scene, _ *thing) value {
		v := words(s.view.MadeFor.String())
		v.said = s.view.Recipe.Get("made_for")
		return v
	})
	put("markets", Type{Kind: List, Choices: k.recipe.Attr("markets").Choices}, "Where it is sold: as it says, else as the shop says.", func(s *scene, _ *thing) value {
		v := value{state: schema.Known, said: s.view.Recipe.Get("markets"), list: []string{}}
		if v.said.Broken() {
			return broken()
		}
		for _, item := range s.view.Markets() {
			v.list = append(v.list, item.Text)
		}
		return v
	})
	put("room", amountOf(quantity.Temperature), "How warm the room is: as it says, else as the shop says.", func(s *scene, _ *thing) value {
		if said := s.view.Recipe.Get("room"); !said.Absent() {
			t := amountOf(quantity.Temperature)
			return s.read(said, &t)
		}
		q := s.view.Room()
		return span(q.Low().Base(), q.High().Base())
	})
	k.put(&name{Name: "pot", Type: Type{Kind: Thing, Of: "pot"}, Doc: "The pot it is melted in.", From: "reckoned", Attr: k.recipe.Attr("pot"), follow: func(s *scene, _ *thing) thing {
		pots := s.of(s.table.byName["pot"].at)
		if len(pots) == 0 {
			return missing(s.view.Recipe, "pot")
		}
		return pots[0]
	}})
}

func shopNames(k *kind) {
	k.put(reckonedName("room", amountOf(quantity.Temperature), "How warm the workshop usually is; 70 °F where the shop does not say.", func(s *scene, _ *thing) value {
		q := s.view.Room()
		return span(q.Low().Base(), q.High().Base())
	}))
	k.put(reckonedName("units", Type{Kind: Text, Choices: k.stock.Attr("units").Choices}, "The units it reads first.", func(s *scene, _ *thing) value {
		if s.view.Units() == quantity.Metric {
			return words("metric")
		}
		return words("us")
	}))
}

func batchNames(k *kind) {
	put := func(word string, t Type, doc string, of func(*batch.Batch) *batch.Figure) {
		n := reckonedName(word, t, doc, func(s *scene, _ *thing) value { return figure(*of(s.b)) })
		n.quickFigure = func(s *scene, _ *thing) *batch.Figure { return of(s.b) }
		k.put(n)
	}
	weight, volume, share := amountOf(quantity.Weight), amountOf(quantity.Volume), amountOf(quantity.Share)
	put("wax_weight", weight, "All wax together.", func(b *batch.Batch) *batch.Figure { return &b.WaxWeight })
	put("total", weight, "Everything weighed in: waxes, additives, dyes, fragrances.", func(b *batch.Batch) *batch.Figure { return &b.Total })
	put("fragrance_of_wax", ofWax, "All fragrances together, against the wax.", func(b *batch.Batch) *batch.Figure { return &b.FragranceOfWax })
	put("fragrance_of_total", ofTotal, "All fragrances together, against everything weighed in.", func(b *batch.Batch) *batch.Figure { return &b.FragranceOfTotal })
	put("takes", weight, "What all vessels take, filled to their fill.", func(b *batch.Batch) *batch.Figure { return &b.Takes })
	put("spare", share, "What is weighed in beyond what the vessels take, as a share of that; below nothing where it is short.", func(b *batch.Batch) *batch.Figure { return &b.Spare })
	k.put(reckonedName("molten", volume, "The volume of everything once it is melted.", func(s *scene, _ *thing) value { return figure(s.b.Molten()) }))
	k.put(reckonedName("candles", Type{Kind: Number}, "How many candles the recipe makes.", func(s *scene, _ *thing) value {
		n := 0
		for i := range s.b.Vessels {
			n += s.b.Vessels[i].Count
		}
		return number(quantity.Int(int64(n)))
	}))
	k.put(reckonedName("fragrance_limit", ofWax, "The most fragrance the wax holds, in this batch; of several waxes the strictest.", func(s *scene, _ *thing) value {
		l := s.b.FragranceLimit()
		switch {
		case l.State == schema.Broken:
			return broken()
		case l.State == schema.Absent:
			return lacking(l.Lacks, "fragrance_limit")
		case l.Basis == quantity.OfTotal && l.Strictest.Known():
			return s.onWax(number(l.Strictest.Value))
		}
		return figure(l.Strictest)
	}))
	stated := func(word string, d quantity.Dimension, doc string, of func(*batch.Batch) batch.Stated) {
		k.put(reckonedName(word, amountOf(d), doc+" Where the supplier's sheet is silent, what is usual for the family.", func(s *scene, _ *thing) value {
			f := of(s.b)
			switch f.State {
			case schema.Broken:
				return broken()
			case schema.Absent:
				return lacking(f.Lacks, f.Attr)
			}
			if f.Empty {
				return broken() // waxes that have no heat in common: another rule says so
			}
			return span(f.Low(), f.High())
		}))
	}
	stated("melt_to", quantity.Temperature, "The range the wax is melted to; of several waxes what they have in common.", (*batch.Batch).MeltTo)
	stated("pour_at", quantity.Temperature, "The range the wax is poured at; of several waxes what they have in common.", (*batch.Batch).PourAt)
	stated("add_fragrance_at", quantity.Temperature, "The range fragrance is added at; of several waxes what they have in common.", (*batch.Batch).AddFragranceAt)
	stated("never_above", quantity.Temperature, "The ceiling of the wax; of several waxes the lowest.", (*batch.Batch).NeverAbove)
	stated("flash_point", quantity.Temperature, "The flash point of the wax; of several waxes the lowest.", (*batch.Batch).FlashPoint)
	stated("congeals_at", quantity.Temperature, "Where the wax begins to set; of several waxes the highest.", (*batch.Batch).CongealsAt)
	stated("cure", quantity.Time, "How long a scented candle rests; of several waxes the longest.", (*batch.Batch).Cure)
	stated("density", quantity.Density, "Of the solid wax; of several waxes the average.", (*batch.Batch).Density)
	stated("shrinkage", quantity.Share, "What the wax loses of its volume; of several waxes the average.", (*batch.Batch).Shrinkage)
}

func ingredientNames(k *kind) {
	n := reckonedName("weight", amountOf(quantity.Weight), "What it weighs in the whole batch.", func(_ *scene, th *thing) value {
		v := figure(th.in.Weight)
		v.said = th.block.Get("weight")
		return v
	})
	n.Attr = k.recipe.Attr("weight")
	n.quickFigure = func(_ *scene, th *thing) *batch.Figure { return &th.in.Weight }
	k.put(n)
	share := func(word string, t Type, doc string, of func(*batch.Ingredient) *batch.Figure) {
		n := reckonedName(word, t, doc, func(_ *scene, th *thing) value { return figure(*of(th.in)).at(th.in.Said) })
		n.quickFigure = func(_ *scene, th *thing) *batch.Figure { return of(th.in) }
		k.put(n)
	}
	share("of_wax", ofWax, "How much of it, against all wax.", func(in *batch.Ingredient) *batch.Figure { return &in.OfWax })
	share("of_total", ofTotal, "How much of it, against everything weighed in.", func(in *batch.Ingredient) *batch.Figure { return &in.OfTotal })
	if k.Name == "dye" {
		k.put(reckonedName("by_eye", Type{Kind: YesNo}, "Whether the amount is to shade.", func(_ *scene, th *thing) value { return yes(th.in.ByEye) }))
	}
}

// at is the value with where what it rests on is written.
func (v value) at(said schema.Value) value {
	v.said = said
	return v
}

func vesselNames(k *kind) {
	put := func(word string, d quantity.Dimension, doc string, of func(*batch.Vessel) *batch.Figure) {
		n := reckonedName(word, amountOf(d), doc, func(s *scene, th *thing) value { return figure(*of(&s.b.Vessels[th.vessel])) })
		n.quickFigure = func(s *scene, th *thing) *batch.Figure { return of(&s.b.Vessels[th.vessel]) }
		k.put(n)
	}
	count := func(word, doc string, of func(*batch.Vessel) int) {
		n := reckonedName(word, Type{Kind: Number}, doc, func(s *scene, th *thing) value {
			return number(quantity.Int(int64(of(&s.b.Vessels[th.vessel])))).at(th.block.Get(word))
		})
		n.Attr = k.recipe.Attr(word)
		k.put(n)
	}
	count("count", "How many of it; 1 where the recipe does not say.", func(v *batch.Vessel) int { return v.Count })
	count("wicks", "How many wicks one candle has; 1 where the recipe does not say.", func(v *batch.Vessel) int { return v.Wicks })
	put("diameter", quantity.Length, "Its inside diameter, of a block the smaller side.", func(v *batch.Vessel) *batch.Figure { return &v.Diameter })
	put("height", quantity.Length, "Its inside height.", func(v *batch.Vessel) *batch.Figure { return &v.Height })
	put("holds", quantity.Volume, "What it holds: as measured with water, else from its shape.", func(v *batch.Vessel) *batch.Figure { return &v.Holds })
	put("filled", quantity.Volume, "The finished wax in one candle, second pour included.", func(v *batch.Vessel) *batch.Figure { return &v.Fill })
	put("headspace", quantity.Length, "From the finished wax to the rim.", func(v *batch.Vessel) *batch.Figure { return &v.Headspace })
	put("candle_weight", quantity.Weight, "One finished candle.", func(v *batch.Vessel) *batch.Figure { return &v.Mass })
	put("first_fill", quantity.Weight, "What the first pour puts into one.", func(v *batch.Vessel) *batch.Figure { return &v.FirstFill })
	put("top_up", quantity.Weight, "What the second pour puts into one.", func(v *batch.Vessel) *batch.Figure { return &v.TopUp })
	step, doc := "seal wick hole", "The seal that its `seal wick hole` step names; of several the weakest."
	if k.Name == "container" {
		step, doc = "set wick", "What its `set wick` step holds the tab with; of several the weakest."
	}
	k.put(&name{Name: "seal", Type: Type{Kind: Thing, Of: "seal"}, Doc: doc, From: "reckoned", follow: func(s *scene, th *thing) thing { return s.seal(step, th) }})
	k.put(&name{Name: "cooling", Type: Type{Kind: Thing, Of: "cooling"}, Doc: "How the first pour into it is reckoned to cool.", From: "reckoned",
		follow: func(_ *scene, th *thing) thing {
			return thing{state: schema.Known, vessel: th.vessel, step: -1, block: th.block}
		}})
	k.put(&name{Name: "wick", Type: Type{Kind: Thing, Of: "wick"}, Doc: "Its wick.", From: "reckoned", Attr: k.recipe.Attr("wick"),
		follow: func(s *scene, th *thing) thing {
			v := &s.b.Vessels[th.vessel]
			switch {
			case v.WickSaid.Absent():
				return missing(v.Block, "wick")
			case v.Wick == nil:
				return brokenThing()
			}
			return thing{state: schema.Known, vessel: th.vessel, step: -1, stock: v.Wick, said: v.WickSaid}
		}})
}

func stepNames(k *kind) {
	step := func(s *scene, th *thing) *batch.Step { return &s.b.Steps[th.step] }
	k.put(reckonedName("kind", Type{Kind: Text, Choices: schema.StepKinds()}, "What kind of step it is.", func(s *scene, th *thing) value { return words(step(s, th).Kind) }))
	k.put(reckonedName("number", Type{Kind: Number}, "Which step of the recipe it is, from 1.", func(_ *scene, th *thing) value { return number(quantity.Int(int64(th.step + 1))) }))
	time := func(word, doc string, of func(*batch.Step) *batch.Figure) {
		n := reckonedName(word, amountOf(quantity.Time), doc, func(s *scene, th *thing) value {
			v := figure(*of(step(s, th))).at(th.block.Get("after"))
			v.computed = true
			return v
		})
		n.quickFigure = func(s *scene, th *thing) *batch.Figure { return of(step(s, th)) }
		k.put(n)
	}
	time("from_start", "How long after the first step it begins, where the waits say so.", func(s *batch.Step) *batch.Figure { return &s.FromStart })
	time("since_pour", "How long after the first pour it begins, at the earliest.", func(s *batch.Step) *batch.Figure { return &s.FromPour })
	time("since_pour_at_most", "How long after the first pour it begins, at the latest.", func(s *batch.Step) *batch.Figure { return &s.FromPourLatest })
	if k.step == anyStep {
		k.put(reckonedName("heat", amountOf(quantity.Temperature), "How hot the wax is in it: `to` of a melt, `at` of the others.", func(s *scene, th *thing) value {
			heat := step(s, th).Heat
			if heat.Spec == nil {
				return broken() // a step without wax
			}
			t := amountOf(quantity.Temperature)
			v := s.read(heat, &t)
			return v
		}))
	}
	if k.step != "pour" && k.step != "second pour" {
		return
	}
	pour := func(s *scene, th *thing) *batch.Pour {
		for i := range s.b.Pours {
			if s.b.Pours[i].Step.Index == th.step {
				return &s.b.Pours[i]
			}
		}
		return &batch.Pour{}
	}
	k.put(&name{Name: "melt", Type: Type{Kind: Thing, Of: "melt"}, Doc: "The last melt before it.", From: "reckoned", follow: func(s *scene, th *thing) thing {
		if p := pour(s, th); p.Melt != nil {
			return s.stepThing(p.Melt.Index)
		}
		return brokenThing()
	}})
	if k.step == "second pour" {
		k.put(&name{Name: "first", Type: Type{Kind: Thing, Of: "pour"}, Doc: "The pour that it tops up.", From: "reckoned", follow: func(s *scene, th *thing) thing {
			if p := pour(s, th); p.First != nil {
				return s.stepThing(p.First.Index)
			}
			return brokenThing()
		}})
	}
}

func coolingNames(k *kind) {
	time := func(word, doc string, of func(*cooling.Windows) cooling.Estimate) {
		k.put(reckonedName(word, amountOf(quantity.Time), doc+" Counted from the pour.", func(s *scene, th *thing) value {
			w, not := s.windows(th)
			if w == nil {
				return not
			}
			e := of(w)
			if e.Never() {
				return broken()
			}
			return span(quantity.Int(int64(math.Floor(e.Low()))), quantity.Int(int64(math.Ceil(e.High()))))
		}))
	}
	time("relief_holes_from", "From when relief holes make sense.", func(w *cooling.Windows) cooling.Estimate { return w.ReliefHoles.From })
	time("relief_holes_to", "Until when relief holes make sense.", func(w *cooling.Windows) cooling.Estimate { return w.ReliefHoles.To })
	time("second_pour_from", "From when a second pour makes sense.", func(w *cooling.Windows) cooling.Estimate { return w.SecondPour.From })
	time("second_pour_to", "Until when a second pour makes sense.", func(w *cooling.Windows) cooling.Estimate { return w.SecondPour.To })
	time("skin_2_mm", "Until 2 mm of wax are set at the wall and the top.", func(w *cooling.Windows) cooling.Estimate { return w.Skin2 })
	time("skin_3_mm", "Until 3 mm of wax are set at the wall and the top.", func(w *cooling.Windows) cooling.Estimate { return w.Skin3 })
	time("skin_5_mm", "Until 5 mm of wax are set at the wall and the top.", func(w *cooling.Windows) cooling.Estimate { return w.Skin5 })
	time("half_set", "Until set wax reaches half way to the middle.", func(w *cooling.Windows) cooling.Estimate { return w.HalfSet })
	time("core_set", "Until all is set.", func(w *cooling.Windows) cooling.Estimate { return w.CoreSet })
	time("unmold", "Until it can be unmolded.", func(w *cooling.Windows) cooling.Estimate { return w.Unmold })
}

// windows are those of the first pour into a vessel, or into the one that sets
// last. Nil: why there are none.
func (s *scene) windows(th *thing) (*cooling.Windows, value) {
	var slowest *cooling.Windows
	not := broken()
	pours := cooling.Of.In(s.view).Pours
	seen := make([]bool, len(s.b.Vessels))
	for i := range pours {
		p := &pours[i]
		if p.Second || seen[p.Vessel] || th.vessel >= 0 && p.Vessel != th.vessel {
			continue
		}
		seen[p.Vessel] = true
		if !p.Modeled() {
			if p.State == schema.Absent && p.Lacks != nil {
				not = lacking(p.Lacks, p.Attr)
			}
			continue
		}
		if w := p.Windows(s.view); w != nil && (slowest == nil || w.CoreSet > slowest.CoreSet) {
			slowest = w
		}
	}
	return slowest, not
}

func hazardNames(k *kind) {
	put := func(word string, t Type, doc string, of func(*scene, *hazard.Classification, hazard.Elements) value) {
		k.put(reckonedName(word, t, doc, func(s *scene, _ *thing) value {
			c := hazard.Of.In(s.view)
			switch {
			case c.Broken || len(c.Unread) > 0:
				return broken()
			case len(c.Unknown) > 0 && c.Unknown[0].Stock != nil:
				return lacking(c.Unknown[0].Stock, "components")
			case len(c.Waits) > 0:
				return figure(c.Waits[0])
			case len(c.NoM) > 0:
				return lacking(c.NoM[0], "m_factor")
			}
			market := "EU"
			if !s.view.SoldIn("EU") && s.view.SoldIn("UK") {
				market = "UK"
			}
			return of(s, c, c.Label(market, batch.Figure{}))
		}))
	}
	put("classified", Type{Kind: YesNo}, "Whether the candle falls into any class.", func(_ *scene, c *hazard.Classification, _ hazard.Elements) value {
		return yes(len(c.Results) > 0)
	})
	put("signal", Type{Kind: Text, Choices: []string{"", "Warning", "Danger"}}, "Its signal word; an empty text where it has none.", func(_ *scene, _ *hazard.Classification, e hazard.Elements) value {
		return words(e.Signal)
	})
	put("pictograms", Type{Kind: List}, "The codes of its pictograms, \"GHS07\".", func(_ *scene, _ *hazard.Classification, e hazard.Elements) value {
		return value{state: schema.Known, list: append([]string{}, e.Pictograms...)}
	})
	put("statements", Type{Kind: List}, "The codes of its statements, \"H317\".", func(_ *scene, _ *hazard.Classification, e hazard.Elements) value {
		return value{state: schema.Known, list: append([]string{}, e.Statements...)}
	})
	put("names", Type{Kind: List}, "The substances that its label must name.", func(_ *scene, _ *hazard.Classification, e hazard.Elements) value {
		v := value{state: schema.Known, list: []string{}}
		for _, sub := range e.Names {
			v.list = append(v.list, sub.Name)
		}
		return v
	})
}
