package formula_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// recorded is a demo recipe with burns in place of its own, and its test.
func recorded(t *testing.T, key string, burns ...string) (*lint.View, *formula.Tested) {
	t.Helper()
	shop := demo(t)
	file := shop.Find("recipe", key).File
	text := file.Text.String()
	text = text[:strings.Index(text, "  test_burn")] + strings.Join(burns, "") + "}\n"
	shop = shop.With(schema.Read(file.Name, []byte(text)))
	view := lint.NewView(shop, shop.Find("recipe", key), today)
	tests := formula.Tests(view)
	require.Len(t, tests, 1)
	return view, &tests[0]
}

func burnText(t *testing.T, key, lines string) string {
	return "  test_burn \"2026-10-01\" {\n    formula = \"" + of(t, key, "").Code + "\"\n" + lines + "  }\n"
}

func TestWhichCandleIsNext(t *testing.T) {
	burn := func(lines string) string { return burnText(t, "tide-pillar", lines) }
	next := func(candle string, burns ...string) (string, int) {
		_, tested := recorded(t, "tide-pillar", burns...)
		return tested.Next(candle)
	}
	for _, c := range []struct {
		about, asked string
		burns        []string
		candle       string
		cycle        int
	}{
		{"none yet", "", nil, "A", 1},
		{"it burns on", "", []string{burn("    candle = \"A\"\n    cycle  = 1\n")}, "A", 2},
		{"cycles are counted where they are not written", "", []string{burn("    candle = \"A\"\n"), burn("    candle = \"A\"\n")}, "A", 3},
		{"it ended", "", []string{burn("    candle = \"A\"\n    cycle  = 9\n    to_end = true\n")}, "B", 1},
		{"it failed", "", []string{burn("    candle = \"A\"\n    result = \"fail\"\n")}, "B", 1},
		{"the one that is named", "C", []string{burn("    candle = \"A\"\n    cycle  = 1\n")}, "C", 1},
		{"the next of the one that is named", "A", []string{burn("    candle = \"A\"\n    cycle  = 4\n")}, "A", 5},
		{"burns of another formulation are other candles", "", []string{"  test_burn \"2026-10-01\" {\n    formula = \"2h00k8m-3f9a2c\"\n    candle  = \"A\"\n  }\n"}, "A", 1},
	} {
		candle, cycle := next(c.asked, c.burns...)
		assert.Equal(t, c.candle, candle, c.about)
		assert.Equal(t, c.cycle, cycle, c.about)
	}
}

// A burn that is written reads back as what was said, in the house layout.
func TestARecordReadsBack(t *testing.T) {
	end := true
	record := formula.Record{
		Date: "2026-11-20", Candle: "D", Cycle: 3, BurnedFor: "4 h", MeltPool: "2.6 in", PoolDepth: "3/8 in", Flame: "1.2 in", Wall: "130 °F",
		WeightBefore: "632 g", WeightAfter: "604 g", ToEnd: &end, Soot: "light", Seen: []string{"drip", "tunnel"}, Result: "pass", Notes: "Leaned \"left\".",
	}
	shop := demo(t)
	for _, key := range []string{"tide-pillar", "gorse-melt"} { // behind other burns, and where there is none
		recipe := shop.Find("recipe", key)
		view := lint.NewView(shop, recipe, today)
		text, err := schema.Apply(recipe.File.Text.String(), []schema.Edit{record.Edit(view, "2h00k8m-3f9a2c", []string{"wax northlight-pillar: 100 % of wax", "wick flat-braid-24: 1 to a candle"})})
		require.NoError(t, err)
		file := schema.Read(recipe.File.Name, []byte(text))
		require.True(t, file.Clean, "%v", file.Problems)
		edits, err := schema.Format(file)
		require.NoError(t, err)
		assert.Empty(t, edits, "in the house layout")
		var last *schema.Block
		for burn := range file.Blocks[0].Each("test_burn") {
			last = burn
		}
		require.NotNil(t, last)
		assert.Equal(t, "2026-11-20", last.Label)
		assert.Equal(t, "2h00k8m-3f9a2c", last.Get("formula").Text())
		assert.Equal(t, 3, last.Get("cycle").Whole(0))
		assert.True(t, last.Get("to_end").Yes())
		assert.Equal(t, "3/8 in", last.Get("pool_depth").Amount().Written())
		assert.Len(t, last.Get("seen").Items(), 2)
		assert.Equal(t, "Leaned \"left\".", last.Get("notes").Text())
	}
}

// rate = (m0 - m1) / t: 28 g in 4 h are 7 g/h; of 632 g that is 90 h.
func TestBurnRate(t *testing.T) {
	weighed := func(candle, before, after, time string) string {
		return burnText(t, "tide-pillar", "    candle = \""+candle+"\"\n    weight_before = \""+before+"\"\n    weight_after = \""+after+"\"\n    burned_for = \""+time+"\"\n    result = \"pass\"\n")
	}
	view, tested := recorded(t, "tide-pillar", weighed("A", "632 g", "604 g", "4 h"))
	rate, ok := tested.Rate()
	require.True(t, ok)
	assert.Equal(t, "7", rate.PerHour.Decimal(3))
	hours, ok := tested.Hours(batch.Of.In(view))
	require.True(t, ok)
	assert.Equal(t, "90", hours.Decimal(3), "3 in by 6 in of 0.91 g/mL is 632.45 g")

	// The fastest candle counts; the burns of one candle are taken together.
	_, tested = recorded(t, "tide-pillar", weighed("A", "632 g", "604 g", "4 h"), weighed("A", "604 g", "572 g", "4 h"), weighed("B", "632 g", "600 g", "4 h"))
	rate, _ = tested.Rate()
	assert.Equal(t, "8", rate.PerHour.Decimal(3), "A: 60 g in 8 h are 7.5 g/h")
	assert.Equal(t, 2, rate.Candles)

	_, tested = recorded(t, "tide-pillar", weighed("A", "604 g", "632 g", "4 h"))
	_, ok = tested.Rate()
	assert.False(t, ok, "no candle grows heavier")

	// A jar's last 13 mm are not burned.
	jar := func(after string) string {
		return burnText(t, "harbor-jar", "    candle = \"A\"\n    weight_before = \"500 g\"\n    weight_after = \""+after+"\"\n    burned_for = \"4 h\"\n    result = \"pass\"\n")
	}
	view, tested = recorded(t, "harbor-jar", jar("480 g"))
	b := batch.Of.In(view)
	hours, ok = tested.Hours(b)
	require.True(t, ok)
	whole, _ := b.Vessels[0].Mass.Value.Quo(quantity.Int(5)) // 20 g in 4 h
	assert.True(t, hours.Less(whole), "%s h of %s h", hours.Decimal(1), whole.Decimal(1))
}
