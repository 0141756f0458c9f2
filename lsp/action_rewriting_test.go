package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

const tideName = "recipes/tide-pillar.candle.hcl"

// changed is the demo shop with a change made to one file, in which from
// stands once.
func changedDemo(t testing.TB, name, from, to string) (*lint.Shop, *schema.File) {
	t.Helper()
	shop := loaded(t, examples.Shop())
	text := shop.File(name).Text.String()
	require.Equal(t, 1, strings.Count(text, from), from)
	f := schema.Read(name, []byte(strings.Replace(text, from, to, 1)))
	return shop.With(f), f
}

// at is the first place of a piece of text.
func at(t testing.TB, f *schema.File, piece string) schema.Span {
	t.Helper()
	i := strings.Index(f.Text.String(), piece)
	require.GreaterOrEqual(t, i, 0, piece)
	return schema.Span{Start: int32(i), End: int32(i)}
}

// written is the tide pillar with one value changed, and what a rewriting
// whose title starts so turns it into.
func rewritten(t *testing.T, from, to, title string) string {
	t.Helper()
	shop, f := changedDemo(t, tideName, from, to)
	for _, a := range ask(t, snapshotOf(t, shop), shop, f, at(t, f, to), "refactor") {
		if strings.HasPrefix(a.Title, title) {
			require.NotNil(t, a.Edit, a.Title)
			require.Equal(t, rewriting, a.Kind)
			return after(t, shop, a.Edit)[tideName]
		}
	}
	require.Fail(t, "not offered", title)
	return ""
}

// NIST SP 811 (2008), B.8: t/°C = (t/°F - 32)/1.8. A heat is rounded down to a
// tenth, and the low end of a range up.
func TestTemperaturesOnTheOtherScale(t *testing.T) {
	for _, c := range []struct{ written, want string }{
		{"32 °F", "0 °C"}, {"212 °F", "100 °C"}, {"98.6 °F", "37 °C"}, {"-40 °F", "-40 °C"},
		{"176 °F", "80 °C"}, {"186 °F", "85.5 °C"}, {"100 °C", "212 °F"}, {"85.5 °C", "185.9 °F"}, {"37 °C", "98.6 °F"},
	} {
		text := rewritten(t, `"186 °F"`, `"`+c.written+`"`, "write "+c.written+" as ")
		assert.Contains(t, text, `to   = "`+c.want+`"`, c.written)
	}
}

func TestConvertedNeverCreepsUp(t *testing.T) {
	read := func(text string) schema.Value {
		f := schema.Read("waxes.candle.hcl", []byte(text))
		require.True(t, f.Whole || strings.HasPrefix(text, "test_burn"), text)
		for v := range f.Blocks[0].Attrs() {
			return v
		}
		panic("no attribute")
	}
	for _, c := range []struct{ block, want string }{
		{`wax "w" { pour_at = "168 to 182 °F" }`, "75.6 to 83.3 °C"},     // 75.56 to 83.33: narrower
		{`wax "w" { never_above = "240 °F" }`, "115.5 °C"},               // 115.56
		{`container "c" { thermal_shock = "90 °F" }`, "50 °C"},           // a difference: no 32 in it
		{`container "c" { thermal_shock = "50 °C" }`, "90 °F"},           //
		{`container "c" { holds = "300 mL" }`, "10.14 fl oz"},            // 10.144
		{`container "c" { holds = "2 qt" }`, "1.89 L"},                   // 1892.7
		{`container "c" { diameter = "3 in" }`, "76.2 mm"},               // exact
		{`container "c" { diameter = "76.2 mm" }`, "3 in"},               // exact
		{`wick "w" { burns = "2.75 to 3.25 in" }`, "69.85 to 82.55 mm"},  // exact
		{`dye "d" { drop = "0.03 g" }`, "0.00106 oz"},                    // 0.001058: up, so that no drop weighs less
		{`test_burn "2026-10-04" { wall = "174 °F" }`, "78.9 °C"},        // 78.89: up, for it was as hot as that
		{`recipe "r" { room = "70 °F" }`, "21.1 °C"},                     //
		{`pot "p" { holds = "4 qt" }`, "3.78 L"},                         // 3.785
		{`taper "t" { length = "10 in" }`, "254 mm"},                     //
		{`wax "w" { density = "0.91 g/mL" }`, ""},                        // has one way of writing
		{`fragrance "f" { most_in_candles = "25 % of total" }`, ""},      //
		{`wax "w" { fragrance_limit = "1 oz per lb" }`, "6.25 % of wax"}, // 1/16, exact
		{`wax "w" { cure = "1 to 3 d" }`, ""},                            //
	} {
		v := read(c.block)
		assert.Equal(t, c.want, converted(v, quantity.Int(1)), c.block)
		if c.want == "" {
			continue
		}
		q, err := quantity.Parse(c.want, v.Spec.Dims...)
		require.Nil(t, err, c.want)
		assert.LessOrEqual(t, q.High().Cmp(v.Amount().High()), boolInt(isUp(v)), c.block)
		assert.GreaterOrEqual(t, q.Low().Cmp(v.Amount().Low()), boolInt(v.Amount().IsRange())-1, c.block)
	}
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// Every amount of the demo shop in the units of the other system: the shop
// stays as sound as it is, and the burned formulations stay burned.
func TestEveryAmountInOtherUnits(t *testing.T) {
	shop := loaded(t, examples.Shop())
	s := snapshotOf(t, shop)
	n := 0
	var walk func(b *schema.Block)
	walk = func(b *schema.Block) {
		for v := range b.Attrs() {
			a := &actions{here: s.of(shop, b.File), params: &codeActionParams{}, at: v.Span(), block: b, recipe: recipeOf(b)}
			a.otherUnits()
			if len(a.all) == 0 {
				continue
			}
			n++
			require.NotNil(t, a.all[0].Edit, "%s: %s", b.File.Name, a.all[0].Title)
			if testing.Short() && n%4 != 0 {
				continue
			}
			now := shop.With(schema.Read(b.File.Name, []byte(after(t, shop, a.all[0].Edit)[b.File.Name])))
			report := lint.RunFile(now, rules.All(), today, b.File.Name)
			if recipeOf(b) == nil {
				report = lint.Run(now, rules.All(), today)
			}
			require.Empty(t, report.Findings, "%s: %s", b.File.Name, a.all[0].Title)
		}
		for _, inner := range b.Blocks() {
			walk(inner)
		}
	}
	for _, f := range shop.Files() {
		for _, b := range f.Blocks {
			walk(b)
		}
	}
	require.Greater(t, n, 700)
	t.Logf("%d amounts", n)
}

func TestWeightsInTheOtherSystem(t *testing.T) {
	// The avoirdupois pound is 453.59237 g exactly (NIST SP 811, B.8).
	for _, c := range []struct{ written, want string }{
		{"1.24 kg", "2 lb 11.8 oz"}, // 43.739 oz: wax is rounded up, so that no load grows
		{"2 lb 8 oz", "1.134 kg"},   // 1133.98 g
		{"1 lb", "454 g"},           // 453.59
	} {
		text := rewritten(t, `"1.24 kg"`, `"`+c.written+`"`, "write ")
		assert.Contains(t, text, `weight = "`+c.want+`"`, c.written)
	}
	assert.Contains(t, rewritten(t, `leave = "3/8 in"`, `leave = "3/8 in"`, "write "), `leave = "9.525 mm"`)
}

func TestLoadsAndWeights(t *testing.T) {
	for _, c := range []struct{ from, to, title, want string }{
		{`load = "5 % of wax"`, `load = "5 % of wax"`, "state it as a weight", `weight = "62 g"`},
		{`load = "5 % of wax"`, `weight = "62 g"`, "state it as a load: 5 % of wax", `load = "5 % of wax"`},
		{`load = "5 % of wax"`, `load = "1 oz per lb"`, "state it as a weight", `weight = "77.5 g"`},
		{`load = "5 % of wax"`, `weight = "2 oz"`, "state it as a load: 4.57 % of wax", `load = "4.57 % of wax"`},
		// 62 g in 1240 + 62 + 0.6 g is 4.7596 % of total
		{`load = "5 % of wax"`, `load = "5 % of wax"`, "state it as a load: 4.759 % of total", `load = "4.759 % of total"`},
	} {
		assert.Contains(t, rewritten(t, c.from, c.to, c.title), c.want, c.to)
	}
}

// Every ingredient of every demo recipe, stated in every other way: what is
// written then means what was written before, to its last digit, and never
// more.
func TestRestatingKeepsWhatIsMade(t *testing.T) {
	shop := loaded(t, examples.Shop())
	restated, refused := 0, 0
	for _, recipe := range shop.Recipes() {
		before := batch.Of.In(lint.NewView(shop, recipe, today))
		for _, block := range recipe.Blocks() {
			was := ingredientOf(before, block)
			if was == nil || !was.Said.IsAmount() {
				continue
			}
			for _, a := range ask(t, snapshotOf(t, shop), shop, recipe.File, block.LabelSpan, "refactor.rewrite") {
				if !strings.HasPrefix(a.Title, "state it as") {
					continue
				}
				if a.Edit == nil {
					require.Equal(t, "rounded so, it would count as another formulation than the one that was burned", a.Disabled.Reason)
					refused++
					continue
				}
				restated++
				now := shop.With(schema.Read(recipe.File.Name, []byte(after(t, shop, a.Edit)[recipe.File.Name])))
				require.Empty(t, lint.RunFile(now, rules.All(), today, recipe.File.Name).Findings, a.Title)
				got := batch.Of.In(lint.NewView(now, now.Find("recipe", recipe.Label), today))
				is := ingredientOf(got, got.Recipe.Blocks()[block2index(recipe, block)])
				require.NotSame(t, was, is)
				require.False(t, was.Weight.Value.Less(is.Weight.Value), "%s: %s is more than %s", recipe.Label, a.Title, was.Said.Written())
				// a ratio of half the last digit written, of 1 in 500 at most
				lost := was.Weight.Value.Sub(is.Weight.Value)
				amount := was.Said.Amount()
				share, _ := lost.Quo(was.Weight.Value)
				require.False(t, quantity.NewRat(1, 500).Less(share), "%s: %s", recipe.Label, a.Title)
				if half := amount.HalfDigit(); !half.IsZero() {
					require.False(t, half.Less(share.Mul(amount.Base())), "%s: %s", recipe.Label, a.Title)
				}
			}
		}
	}
	require.Greater(t, restated, 40)
	require.Less(t, refused, 5)
	t.Logf("%d restated, %d not", restated, refused)
}

func block2index(recipe, block *schema.Block) int {
	for i, b := range recipe.Blocks() {
		if b == block {
			return i
		}
	}
	return -1
}

// A bare per cent asks for its basis first, and what has both a weight and a
// load is not touched.
func TestNotRestated(t *testing.T) {
	for _, to := range []string{`load = "5 %"`, "load = \"5 % of wax\"\n    weight = \"62 g\"", `load = "5 % of wox"`, `load = ""`} {
		shop, f := changedDemo(t, tideName, `load = "5 % of wax"`, to)
		for _, title := range titles(ask(t, snapshotOf(t, shop), shop, f, at(t, f, "load ="), "refactor")) {
			assert.NotContains(t, title, "state it", to)
		}
	}
	shop, f := changedDemo(t, tideName, `weight = "1.24 kg"`, `weight = ""`)
	a := titled(ask(t, snapshotOf(t, shop), shop, f, at(t, f, `"5 % of wax"`), "refactor"), "state it as a weight")
	require.NotNil(t, a)
	assert.Equal(t, "something it rests on is missing or cannot be read", a.Disabled.Reason)
	assert.Nil(t, a.Edit)
}

// 1.5 kg of wax is more than two pillars take: the weights that fill them make
// the same candle, and leave nothing over.
func TestWeightsThatFill(t *testing.T) {
	text := rewritten(t, `"1.24 kg"`, `"1.5 kg"`, "weigh in what fills 2 candles: 1.205 kg of wax")
	assert.Contains(t, text, `weight = "1.205 kg"`)
	assert.Contains(t, text, `load = "5 % of wax"`)
	shop := loaded(t, examples.Shop())
	shop = shop.With(schema.Read(tideName, []byte(text)))
	b := batch.Of.In(lint.NewView(shop, shop.Find("recipe", "tide-pillar"), today))
	assert.True(t, b.Spare.Known())
	assert.False(t, quantity.NewRat(1, 200).Less(b.Spare.Value.Abs()), "off by %v", b.Spare.Value.Float64())
	// and it is not offered again
	for _, title := range titles(ask(t, snapshotOf(t, shop), shop, shop.File(tideName), at(t, shop.File(tideName), `"1.205`), "refactor")) {
		assert.NotContains(t, title, "weigh in")
	}
}

func TestNoWeightsThatFill(t *testing.T) {
	shop, f := changedDemo(t, "recipes/harbor-jar.candle.hcl", `title`, `title`)
	a := titled(ask(t, snapshotOf(t, shop), shop, f, at(t, f, "load"), "refactor"), "weigh in what fills 6 candles")
	require.NotNil(t, a)
	assert.Equal(t, `"1 piece" of pewter does not come out even: state it as a weight first`, a.Disabled.Reason)
	shop, f = changedDemo(t, tideName, `"northlight-pillar"`, `"nowhere"`)
	a = titled(ask(t, snapshotOf(t, shop), shop, f, at(t, f, "recipe"), "refactor"), "weigh in what fills 2 candles")
	require.NotNil(t, a)
	require.NotNil(t, a.Disabled)
}

func TestRecordingATestBurn(t *testing.T) {
	shop, f := changedDemo(t, tideName, `"1.24 kg"`, `"1.25 kg"`)
	a := titled(ask(t, snapshotOf(t, shop), shop, f, at(t, f, "recipe"), "refactor"), "record a test burn of today")
	require.NotNil(t, a)
	text := after(t, shop, a.Edit)[tideName]
	code := formula.Of.In(lint.NewView(shop, shop.Find("recipe", "tide-pillar"), today)).Code
	burn := "\n  test_burn \"2026-10-04\" {\n    formula    = \"" + code + "\"\n    candle     = \"\"\n    cycle      = \"\"\n    burned_for = \"\"\n" +
		"    to_end     = \"\"\n    melt_pool  = \"\"\n    pool_depth = \"\"\n    flame      = \"\"\n    soot       = \"\"\n    seen       = \"\"\n    result     = \"\"\n  }\n}\n"
	assert.True(t, strings.HasSuffix(text, burn), text[len(text)-500:])
	now := schema.Read(tideName, []byte(text))
	assert.True(t, now.Whole)
	assert.NotEmpty(t, now.Problems, "blanks are to be filled in")
	// what was burned is not known
	shop, f = changedDemo(t, tideName, `"northlight-pillar"`, `"nowhere"`)
	a = titled(ask(t, snapshotOf(t, shop), shop, f, at(t, f, "recipe"), "refactor"), "record a test burn of today")
	require.NotNil(t, a)
	assert.Contains(t, a.Disabled.Reason, "what was burned is not known")
	// a melt has no flame
	melt := shop.File("recipes/gorse-melt.candle.hcl")
	for _, title := range titles(ask(t, snapshotOf(t, shop), shop, melt, at(t, melt, "recipe"), "refactor")) {
		assert.NotContains(t, title, "test burn")
	}
}
