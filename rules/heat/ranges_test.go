package heat_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each temperature against the range of its step. Conversions between scales
// are those of NIST SP 811 (2008), B.8: 140 °F = 60 °C, 185 °F = 85 °C; the
// ranges are invented, what they mean is common practice.
func TestRanges(t *testing.T) {
	for _, c := range []struct {
		about, waxes, steps string
		want                []string
	}{
		{"the bottom of the range", "soy", melt("178 °F") + pour("130 °F"), nil},
		{"the top of the range", "soy", melt("178 °F") + pour("145 °F"), nil},
		{"a hair above", "soy", melt("178 °F") + pour("145.01 °F"), []string{`pour-too-hot should "145.01 °F"`}},
		{"a hair below", "soy", melt("178 °F") + pour("129.99 °F"), []string{`pour-too-cool should "129.99 °F"`}},
		{"a fraction at the top", "soy", melt("178 °F") + pour("144 1/2 °F"), nil},
		{"140 °F = 60 °C against a Fahrenheit sheet", "soy", melt("178 °F") + pour("60 °C"), nil},
		{"63 °C = 145.4 °F", "soy", melt("178 °F") + pour("63 °C"), []string{`pour-too-hot should "63 °C"`}},
		{"54 °C = 129.2 °F", "soy", melt("178 °F") + pour("54 °C"), []string{`pour-too-cool should "54 °C"`}},
		{"a Fahrenheit recipe against a Celsius sheet, 181.4 °F = 83 °C", "celsius", melt("185 °F") + pour("181.4 °F"), nil},
		{"181.5 °F > 83 °C", "celsius", melt("185 °F") + pour("181.5 °F"), []string{`pour-too-hot should "181.5 °F"`}},
		{"Celsius against Celsius", "celsius", melt("85 °C") + pour("74.9 °C"), []string{`pour-too-cool should "74.9 °C"`}},
		{"a range just inside", "soy", melt("170 to 182 °F") + pour("130 to 145 °F"), nil},
		{"a range with a bad upper end", "soy", melt("178 °F") + pour("140 to 146 °F"), []string{`pour-too-hot should "140 to 146 °F"`}},
		{"a range with a bad lower end", "soy", melt("178 °F") + pour("128 to 140 °F"), []string{`pour-too-cool should "128 to 140 °F"`}},
		{"a range bad at both ends", "soy", melt("178 °F") + pour("128 to 146 °F"), []string{`pour-too-cool should "128 to 146 °F"`, `pour-too-hot should "128 to 146 °F"`}},
		{"a range in two scales", "soy", melt("178 °F") + pour("130 °F to 62 °C"), nil},
		{"a second pour is not held to the pour's range", "celsius", melt("85 °C") + pour("80 °C") + second("86 °C"), nil},
		{"a second pour below the range neither", "celsius", melt("85 °C") + pour("80 °C") + second("70 °C"), nil},
		{"each layer is held to the range", "celsius", melt("85 °C") + pour("80 °C") + melt("85 °C") + pour("84 °C") + melt("85 °C") + pour("74 °C"),
			[]string{`pour-too-hot should "84 °C"`, `pour-too-cool should "74 °C"`}},
		{"a melt over its range", "celsius", melt("88.1 °C"), []string{`melt-too-hot should "88.1 °C"`}},
		{"a melt under its range", "celsius", melt("79.9 °C"), []string{`melt-too-cool should "79.9 °C"`}},
		{"fragrance over its range", "celsius", melt("88 °C") + add("86.5 °C"), []string{`fragrance-above-its-flash consider "86.5 °C"`, `fragrance-added-too-hot should "86.5 °C"`}},
		{"fragrance under its range", "celsius", melt("88 °C") + add("77 °C"), []string{`fragrance-added-too-cool should "77 °C"`}},

		{"the family's range, soy in containers 49 to 77 °C: the top", "bare-soy", melt("82 °C") + pour("77 °C"), nil},
		{"over the family's range", "bare-soy", melt("82 °C") + pour("78 °C"), []string{`pour-too-hot should "78 °C"`}},
		{"under the family's range", "bare-soy", melt("82 °C") + pour("48 °C"), []string{`pour-too-cool should "48 °C"`}},
		{"no range and no family's", "blend", melt("82 °C") + pour("48 °C"), nil},

		{"a blend: in the common range, 88 to 83 °C is none, said once", "celsius palm", melt("95 °C") + pour("85 °C") + melt("95 °C") + pour("84 °C"),
			[]string{`melt-too-hot should "95 °C"`, `pour-too-hot should "85 °C"`}},
		{"a blend with no common range, from below", "celsius palm", melt("90 °C") + pour("80 °C"), []string{`melt-too-hot should "90 °C"`, `pour-too-cool should "80 °C"`}},
		{"a blend with a wax nobody knows is held to the other", "soy nothing", melt("178 °F") + pour("150 °F"), []string{`pour-too-hot should "150 °F"`}},
		{"an unknown wax alone is silent", "nothing", melt("600 °F") + pour("600 °F"), nil},
		{"no wax at all is silent", "", melt("600 °F") + pour("600 °F"), nil},
		{"a figure that cannot be read is silent", "soy", melt("178 °F") + pour("very hot"), nil},
	} {
		t.Run(c.about, func(t *testing.T) {
			assert.Equal(t, c.want, check(t, recipeOf(c.waxes, c.steps)))
		})
	}
}

// A layer of another wax is held to that wax's figures, and not to what both
// have in common.
func TestLayersOfTwoWaxes(t *testing.T) {
	meltOne := func(wax, to string) string {
		return "step \"melt\" {\n    to = \"" + to + "\"\n    wax = \"" + wax + "\"\n    over = \"water bath\"\n  }\n  "
	}
	sound := meltOne("celsius", "85 °C") + pour("80 °C") + meltOne("palm", "95 °C") + pour("90 °C")
	assert.Empty(t, check(t, recipeOf("celsius palm", sound)))
	swapped := meltOne("celsius", "85 °C") + pour("84 °C") + meltOne("palm", "95 °C") + pour("87 °C")
	assert.Equal(t, []string{`pour-too-hot should "84 °C"`, `pour-too-cool should "87 °C"`}, check(t, recipeOf("celsius palm", swapped)))
	// Melted one after the other into the same pot, they are a blend again.
	together := meltOne("palm", "95 °C") + meltOne("celsius", "85 °C") + pour("85 °C")
	assert.Contains(t, check(t, recipeOf("celsius palm", together)), `pour-too-hot should "85 °C"`)
}

// The difference is in degrees of the scale as written, and the message says
// whose figure it is.
func TestWhatRangesSay(t *testing.T) {
	for _, c := range []struct{ waxes, steps, want string }{
		{"soy", melt("178 °F") + pour("160 °F"), "160 °F (71.1 °C) is 15 °F hotter than Test soy is poured: 130 to 145 °F (54.4 to 62.8 °C)"},
		{"soy", melt("178 °F") + pour("70 °C"), "70 °C (158 °F) is 7.2 °C hotter than Test soy is poured: 130 to 145 °F (54.4 to 62.8 °C)"},
		{"celsius", melt("85 °C") + pour("158 °F"), "158 °F (70 °C) is 9 °F cooler than Test paraffin is poured: 75 to 83 °C (167 to 181.4 °F)"},
		{"bare-soy", melt("82 °C") + pour("80 °C"), "80 °C (176 °F) is 3 °C hotter than soy is usually poured: 49 to 77 °C (120.2 to 170.6 °F). " +
			"Bare soy states no pour_at, so this is what is usual for soy (common practice)"},
		{"celsius palm", melt("88 °C") + pour("80 °C"), "no temperature suits all waxes of this blend: Test paraffin is poured at 75 to 83 °C (167 to 181.4 °F), " +
			"Test palm at 88 to 95 °C (190.4 to 203 °F). Try the blend out and write it down as a wax of its own, with the figures you found"},
		{"soy", melt("178 °F") + pour("62.8 °C"), "62.8 °C (145 °F) is 0.02 °C hotter than Test soy is poured: 130 to 145 °F (54.4 to 62.8 °C) (62.778 °C to the digit)"},
	} {
		said := messages(run(t, stock, recipeOf(c.waxes, c.steps)))
		assert.Contains(t, said, c.want)
	}
}

// A figure that the sheet does not state is asked for where nothing is usual,
// and never where there is nothing to hold against it.
func TestWhatRangesCannotCheck(t *testing.T) {
	r := run(t, stock, recipeOf("blend", melt("82 °C")+add("80 °C")+pour("70 °C")))
	assert.Equal(t, []string{
		"should wax.add_fragrance_at: fragrance-added-too-cool fragrance-added-too-hot",
		"should wax.flash_point: heat-near-flash",
		"should wax.melt_to: melt-too-cool melt-too-hot",
		"should wax.never_above: heat-above-ceiling",
		"should wax.pour_at: pour-too-cool pour-too-hot",
	}, unchecked(r))
	assert.Empty(t, unchecked(run(t, stock, recipeOf("blend", ""))))
	r = run(t, stock, recipeOf("soy", melt("178 °F")+"step \"add fragrance\" {}\n"+pour("140 °F")))
	assert.Equal(t, []string{"should step.at: fragrance-above-its-flash fragrance-added-too-cool fragrance-added-too-hot"}, unchecked(r))
}

// Fixes lower to the top of the range, in the scale as written, and never
// below its other end.
func TestLowering(t *testing.T) {
	for _, c := range []struct{ waxes, steps, want string }{
		{"soy", melt("178 °F") + pour("160 °F"), `pour at 145 °F`},
		{"soy", melt("178 °F") + pour("70 °C"), `pour at 62 °C`},
		{"soy", melt("178 °F") + pour("140 to 160 °F"), `pour at 140 to 145 °F`},
		{"soy", melt("178 °F") + pour("150 to 160 °F"), `pour at 145 °F`},
		{"soy", melt("184 °F") + pour("140 °F"), `melt to 182 °F`},
		{"celsius", melt("85 °C") + pour("80 °C") + second("105 °C"), `make the second pour at 85 °C`},
		{"celsius", melt("85 °C") + pour("176 °F") + second("230 °F"), `make the second pour at 186 °F`},
		{"celsius", melt("101 °C") + pour("80 °C"), `melt to 88 °C`},
	} {
		r := run(t, stock, recipeOf(c.waxes, c.steps))
		require.Len(t, r.Findings, 1, messages(r))
		fixes := r.Findings[0].Repairs()
		require.Len(t, fixes, 1)
		assert.Equal(t, c.want, fixes[0].Title)
		assert.False(t, fixes[0].Safe)
		assert.True(t, strings.HasSuffix(c.want, strings.Trim(fixes[0].Edits[0].Text, `"`)), fixes[0].Edits[0].Text)
	}
	for _, steps := range []string{melt("178 °F") + pour("120 °F"), melt("160 °F") + pour("140 °F")} {
		r := run(t, stock, recipeOf("soy", steps))
		require.Len(t, r.Findings, 1)
		assert.Empty(t, r.Findings[0].Repairs(), "a raise is never an edit")
	}
	// A range narrower than a degree of the other scale.
	narrow := strings.Replace(stock, `"130 to 145 °F"`, `"140.5 to 141.5 °F"`, 1)
	r := run(t, narrow, recipeOf("soy", melt("178 °F")+pour("61 °C")))
	require.Len(t, r.Findings, 1)
	require.Len(t, r.Findings[0].Repairs(), 1)
	assert.Equal(t, "pour at 60.8 °C", r.Findings[0].Repairs()[0].Title) // 141.5 °F = 60.83 °C, 60 °C would be under 140.5 °F
}

func TestPourAboveMelt(t *testing.T) {
	for _, c := range []struct {
		about, waxes, steps string
		want                []string
	}{
		{"as hot as the melt: only no time is left", "celsius", melt("82 °C") + pour("82 °C"), []string{`narrow-pour-window consider "82 °C"`}},
		{"hotter", "celsius", melt("82 °C") + pour("83 °C"), []string{`pour-above-melt should "83 °C"`}},
		{"in the other scale, 180 °F = 82.2 °C", "celsius", melt("82 °C") + pour("180 °F"), []string{`pour-above-melt should "180 °F"`}},
		{"the sheet's ranges copied out", "palm", melt("92 to 98 °C") + pour("88 to 95 °C"), nil},
		{"too hot a pour, and lowering it puts this right too", "celsius", melt("85 °C") + pour("90 °C"), []string{`pour-too-hot should "90 °C"`}},
		{"too cool a melt, and raising it puts this right too", "celsius", melt("70 °C") + pour("80 °C"), []string{`melt-too-cool should "70 °C"`}},
		{"too cool a melt, and raising it is not enough", "celsius", melt("79 °C") + pour("82 °C"), []string{`melt-too-cool should "79 °C"`, `pour-above-melt should "82 °C"`}},
		{"the last melt before it counts", "celsius", melt("80 °C") + melt("88 °C") + pour("83 °C"), nil},
		{"a melt after it does not", "celsius", melt("80 °C") + pour("83 °C") + melt("88 °C"), []string{`pour-above-melt should "83 °C"`}},
		{"a second pour is not a first", "celsius", melt("82 °C") + pour("80 °C") + second("84 °C"), nil},
		{"a melt in the wrong scale is that and nothing else", "celsius", melt("85 °F") + pour("80 °C"), []string{`temperature-scale-doubtful must "85 °F"`}},
	} {
		t.Run(c.about, func(t *testing.T) {
			assert.Equal(t, c.want, check(t, recipeOf(c.waxes, c.steps)))
		})
	}
}
