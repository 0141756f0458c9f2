package schema

import (
	"slices"

	"wickrule/schema/quantity"
)

// Language is the house format: its top-level blocks, in the order a maker
// meets them. Everything the format allows hangs below these. The table is
// built once and must not be changed.
func Language() []*BlockSpec { return language.tops }

// Top is the top-level block of that name, or nil.
func Top(name string) *BlockSpec { return language.top[name] }

// Steps are the specs of all step kinds, in working order. Must not be changed.
func Steps() []*BlockSpec { return language.steps }

// Step is the spec of a step of that kind, or nil. The block named "step" that
// a recipe holds (Top("recipe").Block("step")) has only what every kind takes.
func Step(kind string) *BlockSpec { return language.step[kind] }

// StepKinds are the names of all step kinds, in working order.
func StepKinds() []string { return slices.Clone(language.stepKinds) }

// StockKinds are the names of the blocks that stand for an item on the shelves.
func StockKinds() []string { return slices.Clone(stockKinds) }

// Block is the spec of an inner block of that name, or nil. For "step" it is
// the spec that holds what every kind of step takes.
func (s *BlockSpec) Block(name string) *BlockSpec {
	for _, b := range s.Blocks {
		if b.Name == name {
			return b
		}
	}
	return nil
}

// AllSpecs is every spec of the language once: the top-level blocks, each
// followed by what it holds, and after the recipe every kind of step.
func AllSpecs() []*BlockSpec {
	var all []*BlockSpec
	var walk func(*BlockSpec)
	walk = func(s *BlockSpec) {
		if slices.Contains(all, s) {
			return
		}
		all = append(all, s)
		for _, b := range s.Blocks {
			walk(b)
			if b.Label == StepKind && !slices.Contains(all, language.steps[0]) {
				all = append(all, language.steps...)
			}
		}
	}
	for _, s := range language.tops {
		walk(s)
	}
	return all
}

// language is built once and never changes.
var language = buildLanguage()

type languageTable struct {
	tops      []*BlockSpec
	top       map[string]*BlockSpec
	steps     []*BlockSpec
	step      map[string]*BlockSpec
	stepKinds []string
}

func buildLanguage() *languageTable {
	t := &languageTable{steps: stepSpecs(), top: map[string]*BlockSpec{}, step: map[string]*BlockSpec{}}
	for _, s := range t.steps {
		t.step[s.Kind] = s
		t.stepKinds = append(t.stepKinds, s.Kind)
	}
	t.tops = append(t.tops, shopSpec())
	t.tops = append(t.tops, stockSpecs()...)
	t.tops = append(t.tops, recipeSpec(), lateBurnSpec(), trialSpec())
	// An example inside a rule may hold what a file may hold, save another rule.
	t.tops = append(t.tops, ruleSpec(t.stepKinds, slices.Clone(t.tops)))
	for _, s := range t.tops {
		t.top[s.Name] = s
	}
	for _, s := range slices.Concat(t.tops, t.steps) {
		s.indexAll()
	}
	return t
}

// What an amount may measure.
var (
	dimWeight      = []quantity.Dimension{quantity.Weight}
	dimVolume      = []quantity.Dimension{quantity.Volume}
	dimLength      = []quantity.Dimension{quantity.Length}
	dimTemperature = []quantity.Dimension{quantity.Temperature}
	dimDifference  = []quantity.Dimension{quantity.Difference}
	dimTime        = []quantity.Dimension{quantity.Time}
	dimProportion  = []quantity.Dimension{quantity.Proportion}
	dimShare       = []quantity.Dimension{quantity.Share}
	dimDensity     = []quantity.Dimension{quantity.Density}
	dimCount       = []quantity.Dimension{quantity.Count}
	// A bare % of a load is read, so that a rule can ask what it is a share of.
	dimLoad      = []quantity.Dimension{quantity.Proportion, quantity.Share}
	dimLiquid    = []quantity.Dimension{quantity.Weight, quantity.Volume}
	dimDyeWeight = []quantity.Dimension{quantity.Weight, quantity.Volume, quantity.Count}
	dimFill      = []quantity.Dimension{quantity.Length, quantity.Volume, quantity.Weight, quantity.Share}
)

// Closed lists that more than one block uses.
var (
	marketNames = []string{"US", "EU", "UK"}
	madeKinds   = []string{"pillar", "jar", "tealight", "votive", "taper", "melt"}
	waxUses     = []string{"pillar", "votive", "container", "taper", "tealight", "melt"}
	waxFamilies = []string{"paraffin", "soy", "palm", "beeswax", "coconut", "rapeseed", "stearin", "gel", "blend"}
	heatSources = []string{"water bath", "thermostatic melter", "direct heat", "microwave"}
	ruleLevels  = []string{"must", "should", "consider"}
	quietLevels = []string{"must", "should", "consider", "off"}
	vesselKinds = []string{"mold", "container", "taper"}
	stockKinds  = []string{"wax", "fragrance", "dye", "additive", "mold", "container", "taper", "topping", "pot", "wick", "seal", "label"}
	// The official languages of the EU (Council Regulation No 1 of 1958, as amended), by ISO 639-1 code.
	labelLanguages = []string{"bg", "cs", "da", "de", "el", "en", "es", "et", "fi", "fr", "ga", "hr", "hu", "it", "lt", "lv", "mt", "nl", "pl", "pt", "ro", "sk", "sl", "sv"}
)

// titleAttr is the name a maker knows the thing by.
func titleAttr(example string) *AttrSpec {
	return &AttrSpec{Name: "title", Type: Line, Example: example,
		Doc: "The name people know it by, as it should stand on sheets and in findings. Left out, the key is shown."}
}

func sourceAttr() *AttrSpec {
	return &AttrSpec{Name: "source", Type: Line, Example: `"supplier's sheet, 2026-03"`,
		Doc: "Where the figures come from and of what date, so that they can be checked again."}
}

func notesAttr(example string) *AttrSpec {
	return &AttrSpec{Name: "notes", Type: Prose, Example: example,
		Doc: "Anything else worth keeping. It is never judged."}
}

func languagesAttr(doc string) *AttrSpec {
	return &AttrSpec{Name: "languages", Type: Choices, Choices: labelLanguages, Example: `["en"]`, Doc: doc}
}
