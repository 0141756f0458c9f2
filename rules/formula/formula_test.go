package formula_test

import (
	"crypto/sha256"
	"fmt"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
)

const today = "2026-11-25"

func demo(t testing.TB) *lint.Shop {
	t.Helper()
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	return shop
}

// of is the formulation of a demo recipe with changes made to its file, and
// further stock laid over the shop.
func of(t testing.TB, key, stock string, changes ...lint.Change) *formula.Formulation {
	t.Helper()
	shop, _, err := lint.Example{Recipe: key, Changes: changes, Stock: stock}.Over(demo(t))
	require.NoError(t, err)
	return formula.Of.In(lint.NewView(shop, shop.Find("recipe", key), today))
}

// whole is what the scheme says of a code's last six letters, worked out with
// another arithmetic than the program's.
func whole(attributes []formula.Attribute) string {
	text := "wickrule formulation 1\n"
	for _, a := range attributes {
		text += a.Name + "=" + a.Value + "\n"
	}
	sum := sha256.Sum256([]byte(text))
	n := new(big.Int).Rsh(new(big.Int).SetBytes(sum[:]), 256-30)
	out := ""
	for range 6 {
		var digit big.Int
		n.DivMod(n, big.NewInt(32), &digit)
		out = string("0123456789abcdefghjkmnpqrstvwxyz"[digit.Int64()]) + out
	}
	return out
}

func TestWhatACodeRestsOn(t *testing.T) {
	f := of(t, "tide-pillar", "")
	require.True(t, f.Known())
	assert.Equal(t, []formula.Attribute{
		{Part: formula.Wax, Name: "wax northlight-pillar", Value: "100 % of wax"},
		{Part: formula.Fragrance, Name: "fragrance tide-and-thyme", Value: "5 % of wax"},
		{Part: formula.Dye, Name: "dye madder", Value: "0.05 % of wax"},
		{Part: formula.Vessel, Name: "mold pillar-3x6", Value: "cylinder, 76 mm across, 152 mm high"},
		{Part: formula.Wick, Name: "wick flat-braid-24", Value: "1 to a candle, for 70 to 83 mm"},
	}, f.Attributes)
	assert.True(t, formula.IsCode(f.Code), f.Code)
	assert.Equal(t, whole(f.Attributes), f.Code[8:])
	assert.Equal(t, byte('0'), f.Code[formula.Additive], "no additive")
	assert.Equal(t, byte('0'), f.Code[formula.Topping], "no topping")
	assert.Equal(t, f.Print, f.Each[0])
	// Written down once: a code that changes makes every burn ever recorded stale.
	assert.Equal(t, "4g0w0vn-3e195k", f.Code)
}

// What makes another candle changes the code, and the code tells where.
func TestWhatChangesACode(t *testing.T) {
	was := of(t, "tide-pillar", "")
	for _, c := range []struct {
		about, stock string
		part         formula.Part
		from, to     string
	}{
		{"another wax", "", formula.Wax, `wax "northlight-pillar"`, `wax "millrace-soy"`},
		{"a second wax", "", formula.Wax, "    weight = \"1.24 kg\"\n  }\n", "    weight = \"1.2 kg\"\n  }\n  wax \"millrace-soy\" {\n    weight = \"40 g\"\n  }\n"},
		{"another load", "", formula.Fragrance, `"5 % of wax"`, `"5.1 % of wax"`},
		{"another scent", "", formula.Fragrance, `fragrance "tide-and-thyme"`, `fragrance "rain-on-slate"`},
		{"no scent", "", formula.Fragrance, "  fragrance \"tide-and-thyme\" {\n    load = \"5 % of wax\"\n  }\n", ""},
		{"twice the dye", "", formula.Dye, `"0.6 g"`, `"1.2 g"`},
		{"an additive", "", formula.Additive, "  dye \"madder\" {", "  additive \"hardener\" {\n    load = \"2 % of wax\"\n  }\n  dye \"madder\" {"},
		{"a topping", "", formula.Topping, "  dye \"madder\" {", "  topping \"sea-lavender\" {}\n  dye \"madder\" {"},
		{"another wick", "", formula.Wick, `"flat-braid-24"`, `"flat-braid-30"`},
		{"two wicks", "", formula.Wick, `wick  = "flat-braid-24"`, "wick  = \"flat-braid-24\"\n    wicks = 2"},
		{"a shorter candle", "", formula.Vessel, `wick  = "flat-braid-24"`, "wick  = \"flat-braid-24\"\n    fill  = \"3 in\""},
	} {
		t.Run(c.about, func(t *testing.T) {
			stock := `additive "hardener" {}
topping "sea-lavender" {}
wick "flat-braid-30" {
  burns = "3.25 to 3.75 in"
}
`
			is := of(t, "tide-pillar", stock, lint.Change{From: c.from, To: c.to})
			require.True(t, is.Known())
			assert.NotEqual(t, was.Code[8:], is.Code[8:])
			assert.Contains(t, formula.Changed(was.Code, is.Code), c.part)
		})
	}
}

// What makes the same candle keeps the code.
func TestWhatKeepsACode(t *testing.T) {
	was := of(t, "tide-pillar", "").Code
	for about, changes := range map[string][]lint.Change{
		"titles and prose":   {{From: `"Tide and thyme pillar"`, To: `"Thyme"`}, {From: `"Stop just below the line the first pour left."`, To: `"Stop."`}},
		"a bigger batch":     {{From: `"1.24 kg"`, To: `"2.48 kg"`}, {From: `"0.6 g"`, To: `"1.2 g"`}, {From: `count = 2`, To: `count = 4`}},
		"times and heat":     {{From: `"14 h"`, To: `"16 h"`}, {From: `"186 °F"`, To: `"185 °F"`}},
		"a load as weight":   {{From: `load = "5 % of wax"`, To: `weight = "62 g"`}},
		"another basis":      {{From: `"5 % of wax"`, To: `"4.76 % of total"`}},
		"another unit":       {{From: `"1.24 kg"`, To: `"1240 g"`}},
		"under the rounding": {{From: `"5 % of wax"`, To: `"5.04 % of wax"`}},
		"the order written":  {{From: "  dye \"madder\" {\n    weight = \"0.6 g\"\n  }\n", To: ""}, {From: "  fragrance \"tide", To: "  dye \"madder\" {\n    weight = \"0.6 g\"\n  }\n  fragrance \"tide"}},
		"whom it is for":     {{From: `made_for = "sale"`, To: `made_for = "own use"`}},
	} {
		assert.Equal(t, was, of(t, "tide-pillar", "", changes...).Code, about)
	}
}

// A corrected density or flash point makes no other candle, nor does a new
// title of a stock item; another size of the mold does.
func TestCorrectedStock(t *testing.T) {
	shop := demo(t)
	code := func(file, from, to string) string {
		changed := shop
		for _, f := range shop.Files() {
			if f.Name == file {
				text := f.Text.String()
				require.Contains(t, text, from)
				changed = shop.With(schema.Read(f.Name, []byte(replaced(text, from, to))))
			}
		}
		require.NotSame(t, shop, changed)
		return formula.Of.In(lint.NewView(changed, changed.Find("recipe", "tide-pillar"), today)).Code
	}
	was := of(t, "tide-pillar", "").Code
	assert.Equal(t, was, code("stock/waxes.candle.hcl", `density          = "0.91 g/mL"`, `density          = "0.90 g/mL"`))
	assert.Equal(t, was, code("stock/waxes.candle.hcl", `flash_point      = "450 °F"`, `flash_point      = "440 °F"`))
	changed := code("stock/molds.candle.hcl", `height    = "6 in"`, `height    = "6.5 in"`)
	assert.Equal(t, []formula.Part{formula.Vessel}, formula.Changed(was, changed))
}

func replaced(text, from, to string) string {
	for i := 0; i+len(from) <= len(text); i++ {
		if text[i:i+len(from)] == from {
			return text[:i] + to + text[i+len(from):]
		}
	}
	return text
}

// What is ordered by volume enters by volume: a corrected density of the oil
// changes what it is thought to weigh, and not the candle.
func TestByVolume(t *testing.T) {
	f := of(t, "tide-pillar", "", lint.Change{From: `load = "5 % of wax"`, To: `weight = "62 mL"`})
	assert.Contains(t, f.Attributes, formula.Attribute{Part: formula.Fragrance, Name: "fragrance tide-and-thyme", Value: "5 mL to 100 g of wax"})
}

// Each vessel of a recipe has a code of its own, which another vessel's wick
// does not change; the recipe's code changes with either.
func TestEachVessel(t *testing.T) {
	both := lint.Change{From: "  step \"seal wick hole\" {", To: "  container \"tumbler-10\" {\n    wick = \"cored-cotton-44\"\n  }\n\n  step \"seal wick hole\" {"}
	was := of(t, "tide-pillar", "", both)
	is := of(t, "tide-pillar", "", both, lint.Change{From: `"flat-braid-24"`, To: `"flat-braid-15"`})
	require.Len(t, was.Each, 2)
	assert.NotEqual(t, was.Code, is.Code)
	assert.NotEqual(t, was.Each[0].Code, is.Each[0].Code)
	assert.Equal(t, was.Each[1].Code, is.Each[1].Code)
	assert.Equal(t, of(t, "tide-pillar", "").Code, was.Each[0].Code, "a vessel by itself is the recipe of that vessel alone")
}

func TestWhatCannotBeRead(t *testing.T) {
	assert.Equal(t, schema.Broken, of(t, "tide-pillar", "", lint.Change{From: `"1.24 kg"`, To: `"1.24 kgs of it"`}).State)
	assert.Equal(t, schema.Broken, of(t, "tide-pillar", "", lint.Change{From: `wax "northlight-pillar"`, To: `wax "nowhere"`}).State)
	assert.Equal(t, schema.Broken, of(t, "tide-pillar", "", lint.Change{From: `"flat-braid-24"`, To: `"nowhere"`}).State)
	f := of(t, "tide-pillar", "", lint.Change{From: `load = "5 % of wax"`, To: ""})
	assert.Equal(t, schema.Absent, f.State)
	assert.Equal(t, "load", f.Attr)
	assert.Empty(t, f.Code)
}

func TestCodesAreTold(t *testing.T) {
	for _, text := range []string{"", "not-yet-computed", "q7-3f9a2c", "2h00k8m-3f9a2", "2h00k8m-3f9a2i", "2h00k8m_3f9a2c"} {
		assert.False(t, formula.IsCode(text), text)
	}
	assert.True(t, formula.IsCode("2h00k8m-3f9a2c"))
	assert.Nil(t, formula.Changed("not-yet-computed", "2h00k8m-3f9a2c"))
	assert.Equal(t, []formula.Part{formula.Fragrance, formula.Wick}, formula.Changed("2h00k8m-3f9a2c", "2a00k81-aaaaaa"))
}

// No two demo recipes make the same candle, and each has a code.
func TestTheDemoRecipes(t *testing.T) {
	shop := demo(t)
	seen := map[string]string{}
	for _, recipe := range shop.Recipes() {
		view := lint.NewView(shop, recipe, today)
		f := formula.Of.In(view)
		require.True(t, f.Known(), recipe.Label)
		assert.Empty(t, seen[f.Code], "%s is made as %s", recipe.Label, seen[f.Code])
		seen[f.Code] = recipe.Label
		for _, burn := range view.TestBurns() {
			current := false
			for i := range batch.Of.In(view).Vessels {
				current = current || f.Counts(burn, i, batch.Of.In(view))
			}
			assert.True(t, current, fmt.Sprintf("%s: the burn of %s is of %q, the recipe is %s", recipe.Label, burn.Label, burn.Get("formula").Text(), f.Code))
		}
	}
}

func BenchmarkFormula(b *testing.B) {
	shop := demo(b)
	recipe := shop.Find("recipe", "tide-pillar")
	b.ReportAllocs()
	for b.Loop() {
		view := lint.NewView(shop, recipe, today)
		batch.Of.In(view)
		formula.Of.In(view)
	}
}

func BenchmarkBatchAlone(b *testing.B) {
	shop := demo(b)
	recipe := shop.Find("recipe", "tide-pillar")
	b.ReportAllocs()
	for b.Loop() {
		batch.Of.In(lint.NewView(shop, recipe, today))
	}
}
