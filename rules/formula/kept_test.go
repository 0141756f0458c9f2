package formula_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/formula"
	"wickrule/schema"
)

// kept is a demo recipe with one burn of it that keeps what was burned, then
// changed in its text.
func kept(t *testing.T, key, stock string, changes ...lint.Change) *lint.View {
	t.Helper()
	shop := demo(t)
	recipe := shop.Find("recipe", key)
	view := lint.NewView(shop, recipe, today)
	lines := formula.Of.In(view).Lines()
	text := recipe.File.Text.String()
	if at := strings.Index(text, "  test_burn"); at >= 0 {
		text = text[:at] + "}\n"
	}
	bare := shop.With(schema.Read(recipe.File.Name, []byte(text)))
	view = lint.NewView(bare, bare.Find("recipe", key), today)
	assert.Equal(t, lines, formula.ToKeep(view, 0), "nothing is kept yet")
	edit := formula.Record{Date: "2026-10-01", Candle: "A", Result: "pass"}.Edit(view, formula.Of.In(view).Code, formula.ToKeep(view, 0))
	text, err := schema.Apply(text, []schema.Edit{edit})
	require.NoError(t, err)
	for _, c := range changes {
		require.Contains(t, text, c.From)
		text = strings.Replace(text, c.From, c.To, 1)
	}
	files := []*schema.File{schema.Read(recipe.File.Name, []byte(text))}
	if stock != "" {
		files = append(files, schema.Read("more.candle.hcl", []byte(stock)))
	}
	after := bare
	for _, f := range files {
		after = after.With(f)
	}
	return lint.NewView(after, after.Find("recipe", key), today)
}

func told(view *lint.View) string {
	var burn *schema.Block
	for _, b := range view.TestBurns() {
		burn = b
	}
	return formula.ToldChange(view, burn.Get("formula").Text(), 0)
}

// What is not as it was is told attribute by attribute, then and now.
func TestChangesAreToldAttributeByAttribute(t *testing.T) {
	for about, c := range map[string]struct {
		changes []lint.Change
		want    string
	}{
		"a load":          {[]lint.Change{{From: `load = "5 % of wax"`, To: `load = "5.5 % of wax"`}}, "fragrance tide-and-thyme was changed (5 % of wax then, 5.5 % of wax now)"},
		"a dye by weight": {[]lint.Change{{From: `"0.6 g"`, To: `"0.9 g"`}}, "dye madder was changed (0.05 % of wax then, 0.07 % of wax now)"},
		"a dye left out":  {[]lint.Change{{From: "  dye \"madder\" {\n    weight = \"0.6 g\"\n  }\n", To: ""}}, "dye madder was left out (it was 0.05 % of wax)"},
		"another wick": {[]lint.Change{{From: `"flat-braid-24"`, To: `"flat-braid-15"`}},
			"wick flat-braid-15 (1 to a candle, for 19 to 25 mm) took the place of wick flat-braid-24 (1 to a candle, for 70 to 83 mm)"},
		"two wicks": {[]lint.Change{{From: `wick  = "flat-braid-24"`, To: "wick  = \"flat-braid-24\"\n    wicks = 2"}},
			"wick flat-braid-24 was changed (1 to a candle, for 70 to 83 mm then, 2 to a candle, for 70 to 83 mm now)"},
		"an additive": {[]lint.Change{{From: "  dye \"madder\" {", To: "  additive \"stearin\" {\n    load = \"5 % of wax\"\n  }\n  dye \"madder\" {"}}, "additive stearin was added (5 % of wax)"},
		"two things": {[]lint.Change{{From: `load = "5 % of wax"`, To: `load = "4 % of wax"`}, {From: `"0.6 g"`, To: `"0.9 g"`}},
			"fragrance tide-and-thyme was changed (5 % of wax then, 4 % of wax now); dye madder was changed (0.05 % of wax then, 0.07 % of wax now)"},
	} {
		assert.Equal(t, c.want, told(kept(t, "tide-pillar", "", c.changes...)), about)
	}
}

// A list that somebody changed by hand is not believed: the code worked out
// from it is another.
func TestAListThatIsNotTheCodesIsNotBelieved(t *testing.T) {
	view := kept(t, "tide-pillar", "", lint.Change{From: `"fragrance tide-and-thyme: 5 % of wax"`, To: `"fragrance tide-and-thyme: 4 % of wax"`},
		lint.Change{From: `load = "5 % of wax"`, To: `load = "5.5 % of wax"`})
	assert.Equal(t, "the fragrance was changed (now fragrance tide-and-thyme, 5.5 % of wax); what it was before is not written down", told(view))
	none := kept(t, "tide-pillar", "", lint.Change{From: `"wick flat-braid-24: 1`, To: `"a wick: 1`}, lint.Change{From: `load = "5 % of wax"`, To: `load = "5.5 % of wax"`})
	assert.Contains(t, told(none), "not written down")
}

// One burn of a formulation keeps what it rests on; the next need not.
func TestItIsKeptOnce(t *testing.T) {
	view := kept(t, "tide-pillar", "")
	assert.Empty(t, formula.ToKeep(view, 0))
	changed := kept(t, "tide-pillar", "", lint.Change{From: `load = "5 % of wax"`, To: `load = "5.5 % of wax"`})
	assert.NotEmpty(t, formula.ToKeep(changed, 0))
}

// Of every demo recipe what is kept reads back as the code it was kept for.
func TestEveryDemoRecipeCanBeKept(t *testing.T) {
	shop := demo(t)
	for _, recipe := range shop.Recipes() {
		view := kept(t, recipe.Label, "")
		list, ok := formula.Kept(view, formula.Of.In(view).Code)
		assert.True(t, ok, recipe.Label)
		assert.Equal(t, formula.Of.In(view).Attributes, list, recipe.Label)
	}
}
