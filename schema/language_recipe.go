package schema

func recipeSpec() *BlockSpec {
	return &BlockSpec{
		ID: "recipe", Name: "recipe", Label: Defines,
		Doc: "One candle: what goes in, what it is poured into, what is done in which order, and how it burned. " +
			"The steps are done in the order they are written; the other blocks may stand in any order.",
		Example: recipeExample,
		Attrs: []*AttrSpec{
			titleAttr(`"Tide and thyme pillar"`),
			{Name: "makes", Type: Choice, Choices: madeKinds, Example: `"pillar"`,
				Doc: "What comes out, which decides what the wax must suit and which rules apply. Left out, it is what the mold or container says."},
			{Name: "made_for", Type: Choice, Choices: []string{"sale", "own use", "class"}, Example: `"sale"`,
				Doc: "Who will burn it. A candle that a stranger lights is judged most strictly, so a recipe that does not say is judged as for sale."},
			{Name: "markets", Type: Choices, Choices: marketNames, Example: `["US"]`,
				Doc: "Where this candle is sold, where that differs from the shop's markets."},
			languagesAttr("The languages of the countries this candle is sold to, where they differ from the shop's."),
			{Name: "pot", Type: Key, Refers: []string{"pot"}, Example: `"big-pot"`,
				Doc: "The pot the batch is melted in. Wax swells as it melts, and a pot filled to the brim spills onto the heat."},
			{Name: "room", Type: Amount, Dims: dimTemperature, Example: `"72 °F"`,
				Doc: "How warm the room is where this candle sets, where that differs from the shop's usual."},
			{Name: "floats", Type: YesNo, Example: `true`,
				Doc: "Whether it is a floating candle. Those need a caution of their own on the label in the EU and the UK."},
			{Name: "looks_like", Type: Choice, Choices: []string{"food", "toy"}, Example: `"food"`,
				Doc: "Whether it imitates food or a toy. A child may bite it, and the EU and the UK restrict the sale of such things."},
			notesAttr(`"Pour on a dry day: the dye blooms in damp air."`),
		},
		Blocks: []*BlockSpec{
			recipeWaxSpec(), recipeFragranceSpec(), recipeDyeSpec(), recipeAdditiveSpec(),
			recipeVesselSpec("mold"), recipeVesselSpec("container"), recipeVesselSpec("taper"),
			recipeToppingSpec(), anyStepSpec(), burnSpec(), concessionSpec(),
		},
	}
}

const recipeExample = `recipe "tide-pillar" {
  title    = "Tide and thyme pillar"
  makes    = "pillar"
  made_for = "sale"
  markets  = ["US"]

  wax "northlight-pillar" {
    weight = "1.45 kg"
  }
  fragrance "tide-and-thyme" {
    load = "5 % of wax"
  }
  dye "madder" {
    weight = "0.6 g"
  }

  mold "pillar-3x6" {
    count = 2
    wick  = "flat-braid-24"
  }

  step "seal wick hole" { with = "rubber-plug" }
  step "melt" { to = "186 °F" }
  step "add dye" { dye = "madder" }
  step "add fragrance" {
    at   = "183 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "relief holes" { after = "1 h 45 min" }
  step "second pour" { at = "182 °F" }
  step "unmold" { after = "14 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
}
`

func recipeWaxSpec() *BlockSpec {
	return &BlockSpec{
		ID: "recipe wax", Name: "wax", Label: Refers, LabelRefers: []string{"wax"},
		Doc:     "A wax that goes in. Several wax blocks are a loose blend; stearin used as a wax belongs here, not among the additives.",
		Example: "wax \"northlight-pillar\" {\n  weight = \"1.45 kg\"\n}\n",
		Attrs: []*AttrSpec{
			{Name: "weight", Type: Amount, Dims: dimWeight, Required: true, Example: `"1.45 kg"`,
				Doc: "How much of it, for the whole batch. Loads in % of wax and the number of candles rest on it."},
		},
	}
}

// loadAttr is an amount measured against the wax or against everything.
func loadAttr(example, doc string) *AttrSpec {
	return &AttrSpec{Name: "load", Type: Amount, Dims: dimLoad, Example: example, Doc: doc}
}

func recipeFragranceSpec() *BlockSpec {
	return &BlockSpec{
		ID: "recipe fragrance", Name: "fragrance", Label: Refers, LabelRefers: []string{"fragrance"},
		Doc:     "A fragrance that goes in, by its load or by its weight. All of them together are held against what the wax can carry.",
		Example: "fragrance \"tide-and-thyme\" {\n  load = \"5 % of wax\"\n}\n",
		Attrs: []*AttrSpec{
			loadAttr(`"5 % of wax"`, "How much against the wax. Say of what: 8 % of wax is 7.41 % of total, and suppliers use both."),
			{Name: "weight", Type: Amount, Dims: dimLiquid, Example: `"65 g"`,
				Doc: "How much for the whole batch, in place of a load. Weigh it; a volume can be converted only where the fragrance states its density."},
		},
	}
}

func recipeDyeSpec() *BlockSpec {
	return &BlockSpec{
		ID: "recipe dye", Name: "dye", Label: Refers, LabelRefers: []string{"dye"},
		Doc:     "A dye that goes in. Weighed or counted, the next batch will match this one; judged by eye, it will not.",
		Example: "dye \"madder\" {\n  weight = \"0.6 g\"\n}\n",
		Attrs: []*AttrSpec{
			{Name: "weight", Type: Amount, Dims: dimDyeWeight, Example: `"0.6 g"`,
				Doc: "How much for the whole batch. Drops, chips and blocks are weighed through the dye's own drop or piece weight."},
			loadAttr(`"0.04 % of wax"`, "How much against the wax, in place of a weight."),
			{Name: "amount", Type: Amount, Dims: dimCount, Words: []string{"to shade"}, Example: `"3 drops"`,
				Doc: "A number of drops, chips or blocks; or \"to shade\", by eye, which nobody can repeat."},
		},
	}
}

func recipeAdditiveSpec() *BlockSpec {
	return &BlockSpec{
		ID: "recipe additive", Name: "additive", Label: Refers, LabelRefers: []string{"additive"},
		Doc:     "A hardener, an oil or a stabilizer that goes in. It counts in the total, not in the wax.",
		Example: "additive \"stearin\" {\n  load = \"5 % of wax\"\n}\n",
		Attrs: []*AttrSpec{
			loadAttr(`"5 % of wax"`, "How much against the wax or the total."),
			{Name: "weight", Type: Amount, Dims: dimLiquid, Example: `"70 g"`,
				Doc: "How much for the whole batch, in place of a load."},
		},
	}
}

// recipeVesselSpec is what the candles of a recipe are formed in; the three
// kinds take the same attributes, so that whatever asks need not ask which.
func recipeVesselSpec(kind string) *BlockSpec {
	vessel := map[string]struct{ doc, example string }{
		"mold":      {"A mold the candles are poured into and taken out of again.", "mold \"pillar-3x6\" {\n  count = 2\n  wick  = \"flat-braid-24\"\n}\n"},
		"container": {"A container the candles stay in as they burn.", "container \"tumbler-10\" {\n  count = 6\n  wick  = \"cored-12\"\n  fill  = \"12 mm below rim\"\n}\n"},
		"taper":     {"A taper built up by dipping, without any vessel.", "taper \"ten-inch\" {\n  count = 12\n  wick  = \"square-braid-2\"\n}\n"},
	}[kind]
	return &BlockSpec{
		ID: "recipe " + kind, Name: kind, Label: Refers, LabelRefers: []string{kind},
		Doc:     vessel.doc,
		Example: vessel.example,
		Attrs: []*AttrSpec{
			{Name: "count", Type: Whole, Example: `2`,
				Doc: "How many candles of this kind the batch makes; left out, one."},
			{Name: "wick", Type: Key, Refers: []string{"wick"}, Example: `"flat-braid-24"`,
				Doc: "The wick each candle gets. It must suit the wax and the width: too large it soots and overheats, too small it drowns."},
			{Name: "wicks", Type: Whole, Example: `3`,
				Doc: "How many wicks each candle has; left out, one. Several wicks share the width between them."},
			{Name: "fill", Type: Amount, Dims: dimFill, BelowRim: true, Example: `"12 mm below rim"`,
				Doc: "What one candle is filled to, second pour included: a height, a distance below the rim, a volume, a weight or a share. Left out, it is what the vessel holds; yield, headspace and net weight rest on it."},
			{Name: "from_wall", Type: Amount, Dims: dimLength, Example: `"25 mm"`,
				Doc: "How far the outermost wick stands from the wall. A flame too near the wall heats one side of it."},
			{Name: "wick_spacing", Type: Amount, Dims: dimLength, Example: `"40 mm"`,
				Doc: "How far apart several wicks stand, measured between neighbors. Flames too close together draw into one tall flame."},
		},
	}
}

func recipeToppingSpec() *BlockSpec {
	return &BlockSpec{
		ID: "recipe topping", Name: "topping", Label: Refers, LabelRefers: []string{"topping"},
		Doc:     "Something laid on or set into the candle. What can burn and lies where the flame or the hot pool reaches it turns into a second wick.",
		Example: "topping \"sea-lavender\" {\n  in_reach = false\n}\n",
		Attrs: []*AttrSpec{
			{Name: "in_reach", Type: YesNo, Example: `false`,
				Doc: "Whether the flame or the melted pool can come to it at any time in the candle's life. Left out, it is judged as within reach."},
			{Name: "weight", Type: Amount, Dims: dimWeight, Example: `"2 g"`,
				Doc: "How much of it, for the whole batch."},
			{Name: "vessel", Type: Key, Refers: vesselKinds, Example: `"pillar-3x6"`,
				Doc: "Which candles get it, where the recipe makes several kinds; left out, all."},
		},
	}
}

func concessionSpec() *BlockSpec {
	return &BlockSpec{
		ID: "recipe concession", Name: "concession", Label: RuleName,
		Doc: "A permitted departure: the named rule's finding on this recipe is listed apart, with its reason. " +
			"Rules that guard against fire grant none for candles made for sale.",
		Example: "concession \"batch-left-over\" {\n  reason = \"The spare goes into tealights the same day\"\n  until  = \"2027-03-31\"\n}\n",
		Attrs: []*AttrSpec{
			{Name: "reason", Type: Prose, Example: `"The spare goes into tealights the same day"`,
				Doc: "Why this recipe may differ, in words that will still convince you in a year. Without one the concession does not count."},
			{Name: "until", Type: Date, Example: `"2027-03-31"`,
				Doc: "The last day it holds. After it the finding speaks again; left out, it holds until it is removed."},
		},
	}
}

// burnAttrs is what a test burn records.
func burnAttrs() []*AttrSpec {
	return []*AttrSpec{
		{Name: "formula", Type: Line, Example: `"4g0w0vn-3e195k"`,
			Doc: "The fingerprint of the formulation that was burned, as the batch sheet prints it. A burn of an older formulation proves nothing about this one."},
		{Name: "burned_as", Type: Texts, Example: `["wax northlight-pillar: 100 % of wax", "fragrance tide-and-thyme: 5 % of wax"]`,
			Doc: "What the fingerprint rests on, as `burn` writes it into the first burn of a formulation, so that a later change can be told attribute by attribute. It is believed only while the fingerprint worked out from it is the burn's own."},
		{Name: "candle", Type: Line, Example: `"A"`,
			Doc: "Which candle it was: three different ones are wanted before a candle is sold."},
		{Name: "cycle", Type: Whole, Example: `1`,
			Doc: "Which burn of that candle this was: 1, 2, 3 and so on."},
		{Name: "burned_for", Type: Amount, Dims: dimTime, Example: `"4 h"`,
			Doc: "How long it burned this time."},
		{Name: "to_end", Type: YesNo, Example: `false`,
			Doc: "True on the burn that ended the candle's life. Jars fail in the last half inch, so a candle not burned to its end is half tested."},
		{Name: "vessel", Type: Key, Refers: vesselKinds, Example: `"pillar-3x6"`,
			Doc: "Which of the recipe's vessels was burned, where it has several."},
		{Name: "melt_pool", Type: Amount, Dims: dimLength, Example: `"2.6 in"`,
			Doc: "How wide the melted pool was at the end of this burn."},
		{Name: "pool_depth", Type: Amount, Dims: dimLength, Example: `"3/8 in"`,
			Doc: "How deep the melted pool was at its deepest."},
		{Name: "flame", Type: Amount, Dims: dimLength, Example: `"1.2 in"`,
			Doc: "The tallest flame seen. Over 75 mm, or 30 mm on a tealight, the candle is not safe to burn."},
		{Name: "wall", Type: Amount, Dims: dimTemperature, Example: `"140 °F"`,
			Doc: "The hottest place measured on the outside of the container."},
		{Name: "weight_before", Type: Amount, Dims: dimWeight, Example: `"632 g"`,
			Doc: "What the candle weighed when it was lit, vessel and all. With the weight after it gives the burn rate, and from that honest burn hours."},
		{Name: "weight_after", Type: Amount, Dims: dimWeight, Example: `"604 g"`,
			Doc: "What it weighed when it was put out and had set, on the same scale."},
		{Name: "soot", Type: Choice, Choices: []string{"none", "light", "heavy"}, Example: `"none"`,
			Doc: "How much black it left."},
		{Name: "seen", Type: Choices, Example: `["mushroom"]`,
			Choices: []string{"mushroom", "drip", "flare", "relight", "crack", "tip", "drowned", "tunnel", "after-smoke"},
			Doc:     "What else was seen; an empty list says that nothing was. A flare, a relight, a crack or a candle that tips is a failure whatever else went well."},
		{Name: "result", Type: Choice, Choices: []string{"pass", "fail"}, Example: `"pass"`,
			Doc: "The tester's own verdict on this burn."},
		notesAttr(`"Leaned to the window side from the second hour."`),
	}
}

func burnSpec() *BlockSpec {
	return &BlockSpec{
		ID: "recipe test_burn", Name: "test_burn", Label: DateLabel,
		Doc: "One burn of one candle of this recipe, on the day its label says. It is a record of what was seen, not a certificate.",
		Example: `test_burn "2026-10-04" {
  formula    = "4g0w0vn-3e195k"
  candle     = "A"
  cycle      = 1
  burned_for = "4 h"
  to_end     = false
  melt_pool  = "2.6 in"
  pool_depth = "3/8 in"
  flame      = "1.2 in"
  soot       = "none"
  seen       = []
  result     = "pass"
}
`,
		Attrs: burnAttrs(),
	}
}

// lateBurnSpec is a test burn that stands beside the recipes, in a log.
func lateBurnSpec() *BlockSpec {
	recipe := &AttrSpec{Name: "recipe", Type: Key, Refers: []string{"recipe"}, Required: true, Example: `"tide-pillar"`,
		Doc: "The recipe the candle was made from."}
	return &BlockSpec{
		ID: "test_burn", Name: "test_burn", Label: DateLabel,
		Doc:     "A test burn kept outside its recipe, in a log for instance. It counts as if it stood in the recipe it names.",
		Example: "test_burn \"2026-10-05\" {\n  recipe = \"tide-pillar\"\n  candle = \"A\"\n  cycle  = 2\n  result = \"pass\"\n}\n",
		Attrs:   append([]*AttrSpec{recipe}, burnAttrs()...),
	}
}
