package schema

import (
	"slices"
	"strings"
)

// aboutNames is what a shop rule may be about: a kind of block, the one recipe
// or shop there is, what is reckoned from it, or a kind of step.
func aboutNames(stepKinds []string) []string {
	names := []string{"recipe", "wax", "fragrance", "dye", "additive", "mold", "container", "taper", "topping",
		"wick", "seal", "label", "pot", "step", "batch", "cooling", "hazards", "shop"}
	for _, kind := range stepKinds {
		names = append(names, strings.ReplaceAll(kind, " ", "_"))
	}
	return names
}

func ruleSpec(stepKinds []string, tops []*BlockSpec) *BlockSpec {
	var anyStep *BlockSpec
	for _, top := range tops {
		if top.Name == "recipe" {
			anyStep = top.Block("step")
		}
	}
	return &BlockSpec{
		ID: "rule", Name: "rule", Label: Defines,
		Doc: "A rule of the shop's own, with its reason, what it rests on, and examples that prove it. It computes; nothing else in the format does.",
		Example: `rule "fresh-putty-for-hot-pours" {
  title    = "Putty only well below the temperature it holds to"
  about    = "mold"
  when     = mold.seal.kind == "putty"
  require  = pour.at <= mold.seal.holds_to - degrees("10 °F")
  level    = "should"
  point_at = pour.at
  message  = "The pour is ${show(pour.at)}; this putty holds to ${show(mold.seal.holds_to)}."
  because  = "Putty that softens lets the mold drain onto the bench."
  rests_on = ["putty-reuse"]
}
`,
		Attrs: []*AttrSpec{
			{Name: "title", Type: Line, Example: `"Putty only well below the temperature it holds to"`,
				Doc: "The rule in one line, for the handbook."},
			{Name: "about", Type: Choice, Choices: aboutNames(stepKinds), Required: true, Example: `"mold"`,
				Doc: "What the rule is about: it is checked once for each of these in a recipe. A kind of step is written with underscores."},
			{Name: "when", Type: Expression, Example: `mold.seal.kind == "putty"`,
				Doc: "Where the rule applies; left out, everywhere."},
			{Name: "require", Type: Expression, Required: true, Example: `pour.at <= mold.seal.holds_to - degrees("10 °F")`,
				Doc: "What must hold. Where it does not, the rule speaks; where a value is not written, it says what it could not check."},
			{Name: "level", Type: Choice, Choices: ruleLevels, Example: `"should"`,
				Doc: "How loud it speaks; left out, should."},
			{Name: "level_for_class", Type: Choice, Choices: quietLevels, Example: `"consider"`,
				Doc: "How loud it speaks of recipes made for a class, where that differs."},
			{Name: "level_for_own_use", Type: Choice, Choices: quietLevels, Example: `"off"`,
				Doc: "How loud it speaks of recipes made for own use, where that differs."},
			{Name: "point_at", Type: Expression, Example: `pour.at`,
				Doc: "The value an editor underlines; left out, the head of the block the rule is about."},
			{Name: "message", Type: Expression, Example: `"The pour is ${show(pour.at)}; this putty holds to ${show(mold.seal.holds_to)}."`,
				Doc: "What it says: the figure found, the figure wanted."},
			{Name: "because", Type: Prose, Example: `"Putty that softens lets the mold drain onto the bench."`,
				Doc: "Why, in words that new staff believe."},
			{Name: "rests_on", Type: Keys, Refers: []string{"trial"}, Example: `["putty-reuse"]`,
				Doc: "The trials that bear it out."},
		},
		Blocks: []*BlockSpec{
			{ID: "rule option", Name: "option", Label: FreeLabel,
				Doc: "A figure of the rule under a name, so that it stands in one place; the rule asks for it as option.NAME. " +
					"A shop that shares the rule and needs another figure sets it in its tune of the rule.",
				Example: "option \"in_hand\" {\n  is = degrees(\"10 °F\")\n}\n",
				Attrs: []*AttrSpec{
					{Name: "is", Type: Expression, Required: true, Example: `degrees("10 °F")`,
						Doc: "What it is: a figure, a number or a word, without any name of the recipe in it."},
					{Name: "title", Type: Line, Example: `"What we keep in hand"`,
						Doc: "What it is for, in a few words."},
				}},
			{ID: "rule set", Name: "set", Label: FreeLabel,
				Doc:     "A fix that rewrites one value of the recipe; its label says what comes of it. It is offered only where it raises nothing.",
				Example: "set \"pour at what the putty bears\" {\n  what = pour.at\n  to   = mold.seal.holds_to - degrees(\"10 °F\")\n}\n",
				Attrs: []*AttrSpec{
					{Name: "what", Type: Expression, Required: true, Example: `pour.at`,
						Doc: "The attribute of the recipe that is rewritten."},
					{Name: "to", Type: Expression, Required: true, Example: `mold.seal.holds_to - degrees("10 °F")`,
						Doc: "What it becomes. A figure is rounded down to one that scale and thermometer at the bench can show."},
				}},
			{ID: "rule insert", Name: "insert", Label: FreeLabel, Blocks: []*BlockSpec{anyStep},
				Doc:     "A fix that puts a step into the recipe; its label says what comes of it. The step may not state a temperature.",
				Example: "insert \"cure for three days\" {\n  after = \"unmold\"\n  step \"cure\" { for = \"3 days\" }\n}\n",
				Attrs: []*AttrSpec{
					{Name: "after", Type: Choice, Choices: stepKinds, Example: `"unmold"`,
						Doc: "Behind the last step of that kind; where the recipe has none the fix is not offered."},
					{Name: "before", Type: Choice, Choices: stepKinds, Example: `"pour"`,
						Doc: "In front of the first step of that kind. With neither it comes last."},
				}},
			{ID: "rule sound", Name: "sound", Label: NoLabel, Blocks: slices.Clip(tops),
				Doc:     "An example that the rule must pass, read like a file laid over this shop.",
				Example: "sound {\n  recipe \"cool-pour\" {\n    title = \"A pour well below what the putty bears\"\n  }\n}\n"},
			{ID: "rule faulty", Name: "faulty", Label: NoLabel, Blocks: slices.Clip(tops),
				Doc:     "An example in which the rule must speak of every recipe.",
				Example: "faulty {\n  recipe \"hot-pour\" {\n    title = \"A pour as hot as the putty bears\"\n  }\n}\n"},
		},
	}
}

func trialSpec() *BlockSpec {
	return &BlockSpec{
		ID: "trial", Name: "trial", Label: Defines,
		Doc: "Something the shop tried, with what came of it. Rules rest on trials, and a trial of a seal is quoted where its maker gives no figure.",
		Example: `trial "putty-reuse" {
  question = "How many pours does a ball of wick putty seal before it weeps?"
  date     = "2026-09-12"
  recipe   = "tide-pillar"
  tried    = "wick-putty"
  up_to    = "182 °F"
  outcome  = "mixed"
  notes    = "Clean for six pours; wept at the seventh."
}
`,
		Attrs: []*AttrSpec{
			{Name: "question", Type: Prose, Example: `"How many pours does a ball of wick putty seal before it weeps?"`,
				Doc: "What you wanted to know."},
			{Name: "date", Type: Date, Example: `"2026-09-12"`,
				Doc: "When it was tried, or begun."},
			{Name: "recipe", Type: Key, Refers: []string{"recipe"}, Example: `"tide-pillar"`,
				Doc: "The recipe it was tried with, where there was one."},
			{Name: "tried", Type: Key, Refers: stockKinds, Example: `"wick-putty"`,
				Doc: "The item from the shelves it was about, where it was about one."},
			{Name: "up_to", Type: Amount, Dims: dimTemperature, Example: `"182 °F"`,
				Doc: "The hottest it was tried."},
			{Name: "outcome", Type: Choice, Choices: []string{"held", "failed", "mixed", "open"}, Example: `"mixed"`,
				Doc: "What came of it; open while it runs."},
			notesAttr(`"Clean for six pours; wept at the seventh."`),
		},
	}
}
