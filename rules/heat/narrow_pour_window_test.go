package heat_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand, with Newton's law of cooling: 1.03 kg of wax and oil at 0.787 g/mL
// fill 1.31 L, in a pot as wide as tall 118 mm across, which gives off 10 W/m2K
// from 0.0551 m2. With 2300 J/kgK that is a time constant of 4300 s, and from
// 82 °C in a room of 21.1 °C it is at 80 °C after 4300 ln(60.9/58.9) = 144 s, at
// 80.4 °C after 114 s and at 81 °C after 71 s. Two minutes: common practice.
func TestNarrowPourWindow(t *testing.T) {
	flagged := func(at string) []string { return []string{`narrow-pour-window consider "` + at + `"`} }
	for _, c := range []struct {
		about, waxes, steps string
		want                []string
	}{
		{"144 s", "celsius", melt("82 °C") + pour("80 °C"), nil},
		{"114 s", "celsius", melt("82 °C") + pour("80.4 °C"), flagged("80.4 °C")},
		{"no drop at all", "celsius", melt("82 °C") + pour("82 °C"), flagged("82 °C")},
		{"a range that reaches low enough", "celsius", melt("82 °C") + pour("79 to 82 °C"), nil},
		{"a melt that may be hot enough", "celsius", melt("80 to 85 °C") + pour("80 °C"), nil},
		{"fragrance between the two changes nothing", "celsius", melt("82 °C") + add("81 °C") + pour("81 °C"), flagged("81 °C")},
		{"a pour in the wrong scale is that and nothing else", "celsius", melt("82 °C") + pour("81 °F"), []string{`temperature-scale-doubtful must "81 °F"`}},
		{"a second pour is topped up from a pot kept warm", "celsius", melt("82 °C") + pour("79 °C") + second("82 °C"), nil},
	} {
		assert.Equal(t, c.want, check(t, recipeOf(c.waxes, c.steps)), c.about)
	}
	r := run(t, stock, recipeOf("celsius", melt("82 °C")+pour("81 °C")))
	require.Len(t, r.Findings, 1)
	assert.Equal(t, "from the melt at 82 °C (179.6 °F) to the pour at 81 °C (177.8 °F) the pot cools by 1 °C, in about 1 min (±40 %, since drafts, the wall and the wax itself are known no better): under the 2 min that stirring takes",
		r.Findings[0].Message)
	assert.Contains(t, unchecked(run(t, stock, recipeOf("blend", melt("82 °C")+pour("81 °C")))), "should wax.density: narrow-pour-window")
}
