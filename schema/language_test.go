package schema

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/schema/quantity"
)

func TestEverySpecIsExplained(t *testing.T) {
	seen := map[string]bool{}
	sentence := regexp.MustCompile(`^[A-Z].*\.$`)
	for _, s := range AllSpecs() {
		assert.False(t, seen[s.ID], "%s stands in the table twice", s.ID)
		seen[s.ID] = true
		assert.Regexp(t, sentence, s.Doc, s.ID)
		assert.NotEmpty(t, s.Example, s.ID)
		if s.Label == Refers {
			assert.NotEmpty(t, s.LabelRefers, s.ID)
		}
		for _, name := range s.LabelRefers {
			assert.NotNil(t, Top(name), "%s refers to %s", s.ID, name)
		}
		names := map[string]bool{}
		for _, a := range s.Attrs {
			what := s.ID + "." + a.Name
			assert.False(t, names[a.Name], "%s stands in the table twice", what)
			names[a.Name] = true
			assert.Regexp(t, sentence, a.Doc, what)
			assert.NotEmpty(t, a.Example, what)
			assert.NotEmpty(t, a.Takes(), what)
			assert.Equal(t, a.Type == Choice || a.Type == Choices, len(a.Choices) > 0, what)
			assert.Equal(t, a.Type == Amount, len(a.Dims) > 0, what)
			assert.Equal(t, a.Type == Figure, a.Unit != "", what)
			assert.Equal(t, a.Type == Key || a.Type == Keys, len(a.Refers) > 0, what)
			assert.True(t, !a.Range && len(a.Words) == 0 && !a.BelowRim || a.Type == Amount, what)
			for _, name := range a.Refers {
				assert.NotNil(t, Top(name), "%s refers to %s", what, name)
			}
		}
	}
}

func TestDocsArePlain(t *testing.T) {
	check := func(what, text string) {
		for _, r := range text {
			assert.NotContains(t, "“”‘’\t", string(r), what)
		}
		assert.NotContains(t, text, "  ", what)
		assert.LessOrEqual(t, strings.Count(text, ". "), 2, "%s is too long to read at a bench", what)
	}
	for _, s := range AllSpecs() {
		check(s.ID, s.Doc)
		for _, a := range s.Attrs {
			check(s.ID+"."+a.Name, a.Doc)
		}
	}
}

func TestLookups(t *testing.T) {
	for _, kind := range StepKinds() {
		s := Step(kind)
		require.NotNil(t, s, kind)
		assert.Equal(t, "step "+kind, s.ID)
		assert.Equal(t, kind, s.Kind)
		assert.Equal(t, "step", s.Name)
		for _, name := range []string{"say", "vessel", "after", "from_pour"} {
			assert.NotNil(t, s.Attr(name), "%s %s", kind, name)
		}
	}
	for _, kind := range StockKinds() {
		require.NotNil(t, Top(kind), kind)
		assert.True(t, Top(kind).Stock, kind)
		assert.Equal(t, Defines, Top(kind).Label, kind)
	}
	for _, s := range Language() {
		assert.Same(t, s, Top(s.Name))
		assert.Equal(t, s.Stock, contains(StockKinds(), s.Name), s.Name)
	}
	assert.Nil(t, Top("step"))
	assert.Nil(t, Step("simmer"))
	assert.Nil(t, Top("recipe").Block("pour"))
	assert.Equal(t, "step", Top("recipe").Block("step").ID)
	assert.NotSame(t, Top("wax"), Top("recipe").Block("wax"))
	assert.NotNil(t, Top("rule").Block("sound").Block("recipe"))
	assert.Nil(t, Top("rule").Block("sound").Block("rule"))

	allocations := testing.AllocsPerRun(100, func() {
		if Top("recipe").Block("fragrance").Attr("load") == nil || Step("second pour") == nil {
			t.Fatal("not found")
		}
	})
	assert.Zero(t, allocations)
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

// What a recipe's vessels take must be the same, so that whoever asks a vessel
// need not ask which kind it is.
func TestVesselsTakeTheSame(t *testing.T) {
	recipe := Top("recipe")
	assert.True(t, sameAttrs(recipe.Block("mold"), recipe.Block("container")))
	assert.True(t, sameAttrs(recipe.Block("mold"), recipe.Block("taper")))
}

func TestExampleAmounts(t *testing.T) {
	for _, s := range AllSpecs() {
		for _, a := range s.Attrs {
			text := strings.Trim(a.Example, `"`)
			switch a.Type {
			case Amount:
				text, below := strings.CutSuffix(text, " below rim")
				assert.True(t, !below || a.BelowRim, a.Name)
				q, problem := quantity.Parse(text, a.Dims...)
				if assert.Nil(t, problem, "%s.%s", s.ID, a.Name) {
					assert.True(t, a.Range || !q.IsRange(), "%s.%s", s.ID, a.Name)
				}
			case Figure:
				_, ok := a.readFigure(text)
				assert.True(t, ok, "%s.%s", s.ID, a.Name)
			case Choice:
				assert.Contains(t, a.Choices, text, "%s.%s", s.ID, a.Name)
			}
		}
	}
}

// A bare percentage of a load is read, so that a rule can ask what it is a
// share of; a supplier's limit without a basis is not.
func TestBarePercentages(t *testing.T) {
	load := Top("recipe").Block("fragrance").Attr("load")
	_, problem := quantity.Parse("8 %", load.Dims...)
	assert.Nil(t, problem)
	limit := Top("wax").Attr("fragrance_limit")
	_, problem = quantity.Parse("8 %", limit.Dims...)
	assert.NotNil(t, problem)
}

func TestReadFigure(t *testing.T) {
	wax := Top("wax").Attr("conductivity")
	for _, text := range []string{"0.24 W/mK", "0.24W/mK", "0.24 W/(m K)", "0.24 W/(m·K)", " 0.240 W/m K "} {
		r, ok := wax.readFigure(text)
		assert.True(t, ok, text)
		assert.True(t, r.Equal(quantity.NewRat(6, 25)), text)
	}
	for _, text := range []string{"", "W/mK", "0.24", "0.24 kJ/kg", "0.2.4 W/mK", "-0.24 W/mK", ". W/mK", "0.24 W/cmK", "1e3 W/mK",
		"1234567890123456 W/mK", "0.24 to 0.26 W/mK"} {
		_, ok := wax.readFigure(text)
		assert.False(t, ok, text)
	}
	capacity := Top("wax").Attr("latent_heat")
	r, ok := capacity.readFigure("200 kJ/kg")
	assert.True(t, ok)
	assert.True(t, r.Equal(quantity.Int(200)))
}

// Every example of the table reads: each block's own, and one with every
// attribute it has.
func TestExamplesRead(t *testing.T) {
	for _, top := range Language() {
		reads(t, top, top.Example)
		reads(t, top, withEverything(top))
		for _, inner := range top.Blocks {
			if inner.Label == StepKind {
				for _, step := range Steps() {
					reads(t, step, inside(top, step.Example))
					reads(t, step, inside(top, withEverything(step)))
				}
			}
			reads(t, inner, inside(top, inner.Example))
			if inner.Label != StepKind && len(inner.Attrs) > 0 {
				reads(t, inner, inside(top, withEverything(inner)))
			}
		}
	}
}

func reads(t *testing.T, spec *BlockSpec, text string) {
	t.Helper()
	f := Read("example.candle.hcl", []byte(text))
	require.Len(t, f.Blocks, 1, "%s:\n%s", spec.ID, text)
	for _, p := range f.Problems {
		t.Errorf("%s: %s: %s at %q\n%s", spec.ID, p.Rule, p.Message, f.Text.Slice(p.Span), text)
	}
	assert.True(t, f.Clean, spec.ID)
	b := f.Blocks[0]
	if b.Spec.ID != spec.ID {
		require.Len(t, b.Blocks(), 1, text)
		b = b.Blocks()[0]
	}
	if spec.Label != StepKind || spec.Kind != "" {
		assert.Same(t, spec, b.Spec, text)
	}
	for a := range b.Attrs() {
		assert.Equal(t, Known, b.Get(a.Spec.Name).State(), "%s.%s", spec.ID, a.Spec.Name)
	}
}

// withEverything is a block of the spec with the example of every attribute.
func withEverything(s *BlockSpec) string {
	var b strings.Builder
	head, _, _ := strings.Cut(s.Example, "{")
	b.WriteString(head + "{\n")
	for _, a := range s.Attrs {
		b.WriteString("  " + a.Name + " = " + a.Example + "\n")
	}
	b.WriteString("}\n")
	return b.String()
}

// inside wraps a block in one of the outer kind that lacks nothing.
func inside(outer *BlockSpec, block string) string {
	var b strings.Builder
	head, _, _ := strings.Cut(outer.Example, "{")
	b.WriteString(head + "{\n")
	for _, a := range outer.Attrs {
		if a.Required {
			b.WriteString("  " + a.Name + " = " + a.Example + "\n")
		}
	}
	b.WriteString(block + "\n}\n")
	return b.String()
}
