package schema

import "slices"

// anyStepSpec is what a recipe holds under the name "step": the attributes
// every kind takes. A step of a known kind has the spec Step(kind).
func anyStepSpec() *BlockSpec {
	return &BlockSpec{
		ID: "step", Name: "step", Label: StepKind,
		Doc:     "One thing that is done. Steps are done in the order they are written, and a recipe may melt and pour several times; each pour is judged with the last melt before it.",
		Example: "step \"pour\" {\n  at    = \"176 °F\"\n  leave = \"3/8 in\"\n}\n",
		Attrs:   commonStepAttrs(),
	}
}

func commonStepAttrs() []*AttrSpec {
	return []*AttrSpec{
		{Name: "say", Type: Prose, Example: `"Tap the mold to bring the bubbles up."`,
			Doc: "The words for the batch sheet, where the step's own name does not say enough."},
		{Name: "vessel", Type: Key, Refers: vesselKinds, Example: `"pillar-3x6"`,
			Doc: "Which mold, container or taper of this recipe the step is done to; left out, all of them."},
		{Name: "after", Type: Amount, Dims: dimTime, Range: true, Example: `"1 h 45 min"`,
			Doc: "How long to wait after the step before this one."},
		{Name: "from_pour", Type: Amount, Dims: dimTime, Range: true, Example: `"2 to 3 h"`,
			Doc: "How long after the first pour the step is done, in place of `after`."},
	}
}

// stepSpecs are all kinds of step, in working order.
func stepSpecs() []*BlockSpec {
	return slices.Concat(preparingSteps(), meltingSteps(), pouringSteps(), finishingSteps())
}

// stepSpec makes a kind of step from what it takes beyond what every step takes.
func stepSpec(kind, doc, example string, own ...*AttrSpec) *BlockSpec {
	return &BlockSpec{
		ID: "step " + kind, Name: "step", Kind: kind, Label: StepKind,
		Doc: doc, Example: example, Attrs: append(own, commonStepAttrs()...),
	}
}

func temperatureAttr(name, example, doc string) *AttrSpec {
	return &AttrSpec{Name: name, Type: Amount, Dims: dimTemperature, Range: true, Example: example, Doc: doc}
}

func timeAttr(name, example, doc string) *AttrSpec {
	return &AttrSpec{Name: name, Type: Amount, Dims: dimTime, Range: true, Example: example, Doc: doc}
}

func lengthAttr(name, example, doc string) *AttrSpec {
	return &AttrSpec{Name: name, Type: Amount, Dims: dimLength, Range: true, Example: example, Doc: doc}
}

func preparingSteps() []*BlockSpec {
	room := "How warm the room is meanwhile, where that differs from the usual."
	return []*BlockSpec{
		stepSpec("release", "Treats the mold so that the candle comes out. Silicone molds need none.",
			`step "release" { with = "a thin coat of silicone spray" }`,
			&AttrSpec{Name: "with", Type: Line, Example: `"a thin coat of silicone spray"`,
				Doc: "What the mold is treated with."}),
		stepSpec("warm mold", "Warms the mold before the pour. Cold metal sets the first wax in rings.",
			`step "warm mold" { to = "110 °F" }`,
			temperatureAttr("to", `"110 °F"`, "How warm the mold is made."),
			timeAttr("for", `"10 min"`, "How long it is warmed."),
			temperatureAttr("room", `"70 °F"`, room)),
		stepSpec("warm container", "Warms the container before the pour. Cold glass can crack when hot wax strikes it.",
			`step "warm container" { to = "110 °F" }`,
			temperatureAttr("to", `"110 °F"`, "How warm the container is made; the pour's temperature less this must stay within what the glass withstands."),
			timeAttr("for", `"10 min"`, "How long it is warmed."),
			temperatureAttr("room", `"70 °F"`, room)),
		stepSpec("prime wick", "Soaks the wick in wax before it is set, so that air leaves it and it lights at once.",
			`step "prime wick" { at = "170 °F" }`,
			temperatureAttr("at", `"170 °F"`, "How hot the wax is that it is soaked in."),
			timeAttr("for", `"1 min"`, "How long it is soaked.")),
		stepSpec("seal wick hole", "Closes the hole in the bottom of the mold, before the pour. Left open, hot wax runs out over the bench.",
			`step "seal wick hole" { with = ["wick-screw", "wick-putty"] }`,
			&AttrSpec{Name: "with", Type: Keys, Refers: []string{"seal"}, Example: `"rubber-plug"`,
				Doc: "What it is sealed with: one seal or several together. Several are judged by the weakest."}),
		stepSpec("set wick", "Puts the wick in its place: fixed by its tab, or threaded through the mold.",
			`step "set wick" { with = "tab-sticker" }`,
			&AttrSpec{Name: "with", Type: Keys, Refers: []string{"seal"}, Example: `"tab-sticker"`,
				Doc: "What holds the wick's tab to the bottom. A wick that floats off burns at the wall."},
			&AttrSpec{Name: "wick", Type: Key, Refers: []string{"wick"}, Example: `"cored-12"`,
				Doc: "Which wick is set; left out, the one the vessel names."}),
	}
}

// addingStep is a step that stirs something from the shelves into the wax.
func addingStep(what, doc, at string, more ...*AttrSpec) *BlockSpec {
	own := []*AttrSpec{
		{Name: what, Type: Keys, Refers: []string{what}, Example: map[string]string{"additive": `"stearin"`, "dye": `"madder"`, "fragrance": `"tide-and-thyme"`}[what],
			Doc: "Which of the recipe's " + map[string]string{"additive": "additives", "dye": "dyes", "fragrance": "fragrances"}[what] + " go in: one or several; left out, all not yet added."},
		temperatureAttr("at", at, "How hot the wax is as it goes in."),
		timeAttr("stir", `"2 min"`, "How long it is stirred in, gently. Two minutes is common practice."),
	}
	return stepSpec("add "+what, doc, "step \"add "+what+"\" {\n  at   = "+at+"\n  stir = \"2 min\"\n}", append(own, more...)...)
}

func meltingSteps() []*BlockSpec {
	return []*BlockSpec{
		stepSpec("melt", "Melts the wax. Every heat in the recipe is judged from the figure given here, so melting by eye is not enough.",
			"step \"melt\" {\n  to   = \"186 °F\"\n  over = \"water bath\"\n}",
			temperatureAttr("to", `"186 °F"`, "How hot the wax is made. It is held against the wax's own range, its ceiling and its flash point."),
			&AttrSpec{Name: "over", Type: Choice, Choices: heatSources, Example: `"water bath"`,
				Doc: "What heats the pot; left out, what the pot says. Direct heat is a flame or a plate without a thermostat: like a microwave, it overheats wax unseen."},
			timeAttr("hold", `"20 min"`, "How long it is kept that hot."),
			&AttrSpec{Name: "unattended", Type: YesNo, Example: `false`,
				Doc: "Whether nobody watches it meanwhile. Wax heated with nobody there is how workshops burn down."},
			&AttrSpec{Name: "wax", Type: Keys, Refers: []string{"wax"}, Example: `"northlight-pillar"`,
				Doc: "Which of the recipe's waxes are melted here, for layers; left out, all of them."}),
		addingStep("additive", "Stirs additives into the melted wax.", `"183 °F"`),
		addingStep("dye", "Stirs dye into the melted wax.", `"183 °F"`),
		addingStep("fragrance", "Stirs fragrance into the melted wax, before the pour it belongs to.", `"183 °F"`),
	}
}

func pouringSteps() []*BlockSpec {
	dipAttrs := func() []*AttrSpec {
		return []*AttrSpec{
			{Name: "times", Type: Whole, Example: `22`, Doc: "How many dips."},
			temperatureAttr("at", `"158 °F"`, "How hot the wax in the vat is kept."),
			timeAttr("wait", `"3 min"`, "How long the taper hangs between two dips, to set."),
		}
	}
	return []*BlockSpec{
		stepSpec("pour", "Pours the wax. In layers there are several, each judged with the last melt before it.",
			"step \"pour\" {\n  at    = \"176 °F\"\n  leave = \"3/8 in\"\n}",
			temperatureAttr("at", `"176 °F"`, "How hot the wax is as it is poured. It is held against the wax's own range and against what the seal and the mold bear."),
			lengthAttr("leave", `"3/8 in"`, "How far below the rim the pour stops, to leave room for a second pour.")),
		stepSpec("relief holes", "Pokes holes beside the wick while the wax sets, so that no cave forms where it shrinks.",
			"step \"relief holes\" {\n  after = \"1 h 45 min\"\n  again = \"45 min\"\n}",
			timeAttr("again", `"45 min"`, "How often they are opened again until the wax is set."),
			&AttrSpec{Name: "count", Type: Whole, Example: `4`, Doc: "How many holes."},
			lengthAttr("depth", `"5 in"`, "How deep they go. A hole through to the base lets the second pour out underneath.")),
		stepSpec("second pour", "Fills what has shrunk. A little hotter than the first pour, it melts into it.",
			`step "second pour" { at = "182 °F" }`,
			temperatureAttr("at", `"182 °F"`, "How hot the second pour is. It is held against the ceiling of the wax and against what the seal bears.")),
		stepSpec("dip", "Builds a taper up by dipping.",
			"step \"dip\" {\n  times = 22\n  at    = \"158 °F\"\n  wait  = \"3 min\"\n}", dipAttrs()...),
		stepSpec("overdip", "Gives a candle a last coat of another color or a harder wax.",
			"step \"overdip\" {\n  times = 2\n  at    = \"180 °F\"\n}", dipAttrs()...),
	}
}

func finishingSteps() []*BlockSpec {
	return []*BlockSpec{
		stepSpec("cool", "Lets the candle cool.",
			"step \"cool\" {\n  for  = \"12 h\"\n  room = \"70 °F\"\n}",
			temperatureAttr("to", `"86 °F"`, "How cool it gets to the core."),
			timeAttr("for", `"12 h"`, "How long it cools."),
			temperatureAttr("room", `"70 °F"`, "How warm the room is, or the water."),
			&AttrSpec{Name: "in", Type: Choice, Choices: []string{"air", "water"}, Example: `"air"`,
				Doc: "What it cools in; left out, still air. Water takes the heat away several times faster. Never put hot glass in it."}),
		stepSpec("unmold", "Takes the candle out of its mold, once the core is firm.", `step "unmold" { after = "14 h" }`),
		stepSpec("trim base", "Levels the base so that the candle stands upright.", `step "trim base" { say = "Level it on the warm plate." }`),
		stepSpec("trim wick", "Cuts the wick to length. A long wick burns with a tall, sooty flame.",
			`step "trim wick" { to = "1/4 in" }`,
			lengthAttr("to", `"1/4 in"`, "How long it is left, from the wax.")),
		stepSpec("cure", "Lets a scented candle rest before it is burned or sold, so that the scent settles into the wax.",
			`step "cure" { for = "1 week" }`,
			timeAttr("for", `"1 week"`, "How long it rests.")),
		stepSpec("attach label", "Puts a label on. All labels of a recipe together must say what its markets require.",
			"step \"attach label\" {\n  label = \"us-base\"\n  on    = \"base\"\n}",
			&AttrSpec{Name: "label", Type: Keys, Refers: []string{"label"}, Example: `"us-base"`,
				Doc: "Which label, or labels, from the shelves."},
			&AttrSpec{Name: "on", Type: Line, Example: `"base"`,
				Doc: "Where it goes."}),
		stepSpec("note", "A reminder for the batch sheet. It is never judged.", `step "note" { say = "Check that the lid fits before boxing." }`),
	}
}
