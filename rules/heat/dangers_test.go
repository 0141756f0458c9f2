package heat_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/schema/quantity"
)

// without is the stock with a line of one wax's figures left out.
func without(t testing.TB, lines ...string) string {
	s := stock
	for _, line := range lines {
		require.Contains(t, s, line)
		s = strings.Replace(s, line, "", 1)
	}
	return s
}

const (
	soyFlash   = "  flash_point      = \"440 °F\"\n"
	soyCeiling = "  never_above      = \"185 °F\"\n"
)

// 30 °C of difference are 54 °F (NIST SP 811 (2008), B.9), so a flash point of
// 440 °F keeps every step below 386 °F. The margin itself is common practice.
func TestNearFlash(t *testing.T) {
	noCeiling := strings.Replace(stock, soyCeiling, "  never_above      = \"390 °F\"\n", 1)
	noFlash := strings.Replace(noCeiling, soyFlash, "", 1)
	for _, c := range []struct {
		about, stock, steps string
		want                []string
	}{
		{"at the limit", noCeiling, melt("386 °F"), []string{`heat-near-flash must "386 °F"`}},
		{"a hair below", noCeiling, melt("385.99 °F"), []string{`melt-too-hot should "385.99 °F"`}},
		{"in Celsius: 386 °F = 196 2/3 °C", noCeiling, second("196.7 °C"), []string{`heat-near-flash must "196.7 °C"`}},
		{"and below", noCeiling, second("196.6 °C"), nil},
		{"every step of the wax counts", noCeiling,
			"step \"prime wick\" { at = \"386 °F\" }\n step \"add dye\" { at = \"387 °F\" }\n step \"add additive\" { at = \"388 °F\" }\n step \"dip\" { at = \"389 °F\" }\n step \"overdip\" { at = \"390 °F\" }\n",
			[]string{`heat-near-flash must "386 °F"`, `heat-near-flash must "387 °F"`, `heat-near-flash must "388 °F"`, `heat-near-flash must "389 °F"`, `heat-near-flash must "390 °F"`}},
		{"a mold and a jar are not wax", noCeiling, "step \"warm mold\" { to = \"390 °F\" }\n step \"warm container\" { to = \"390 °F\" }\n", nil},
		{"a range by its upper end", noCeiling, second("180 to 386 °F"), []string{`heat-near-flash must "180 to 386 °F"`}},
		{"nothing stated: below 121 °C", noFlash, second("120.9 °C"), nil},
		{"nothing stated: at 121 °C = 249.8 °F", noFlash, second("249.8 °F"), []string{`heat-near-flash should "249.8 °F"`}},
		{"nothing stated: 250 °F is 121.1 °C", noFlash, second("250 °F"), []string{`heat-near-flash should "250 °F"`}},
		{"both dangers are said", stock, melt("390 °F"), []string{`heat-above-ceiling must "390 °F"`, `heat-near-flash must "390 °F"`}},
		{"a stated ceiling takes the place of the hard stop", without(t, soyFlash), melt("300 °F"), []string{`heat-above-ceiling must "300 °F"`}},
		{"of what is only usual the gravest speaks", without(t, soyFlash, soyCeiling), second("300 °F"), []string{`heat-near-flash should "300 °F"`}},
		{"a flash point that cannot be read is silent", strings.Replace(noCeiling, `"440 °F"`, `"hot"`, 1), second("388 °F"), nil},
	} {
		t.Run(c.about, func(t *testing.T) {
			assert.Equal(t, c.want, checkShop(t, c.stock, recipeOf("soy", c.steps)))
		})
	}
}

func TestNearFlashOfBlends(t *testing.T) {
	// The other wax states neither; what is usual for it (196 °C) does not
	// hide what this sheet states.
	s := strings.Replace(stock, soyCeiling, "", 1) + "wax \"plain-stearin\" {\n  title = \"Plain stearin\"\n  family = \"stearin\"\n}\n"
	assert.Contains(t, checkShop(t, s, recipeOf("soy plain-stearin", second("390 °F"))), `heat-near-flash must "390 °F"`)
	assert.Contains(t, checkShop(t, s, recipeOf("soy plain-stearin", second("340 °F"))), `heat-near-flash should "340 °F"`)
	// The lowest of two stated ones counts: 220 °C less 30 °C, not 230 °C; 190 °C = 374 °F.
	assert.Contains(t, check(t, recipeOf("celsius palm", second("374 °F"))), `heat-near-flash must "374 °F"`)
	assert.NotContains(t, check(t, recipeOf("celsius palm", second("373.9 °F"))), `heat-near-flash must "373.9 °F"`)
}

func TestAboveCeiling(t *testing.T) {
	bare := recipeOf("bare-soy", "")
	for _, c := range []struct {
		about, stock, recipe string
		want                 []string
	}{
		{"at the ceiling", stock, recipeOf("soy", second("185 °F")), nil},
		{"at the ceiling, 85 °C = 185 °F", stock, recipeOf("soy", second("85 °C")), nil},
		{"over it takes the place of melt-too-hot", stock, recipeOf("soy", melt("186 °F")), []string{`heat-above-ceiling must "186 °F"`}},
		{"over it takes the place of pour-too-hot", stock, recipeOf("soy", melt("182 °F")+pour("185.1 °F")), []string{`heat-above-ceiling must "185.1 °F"`}},
		{"over it takes the place of fragrance-added-too-hot", stock, recipeOf("soy", add("186 °F")),
			[]string{`fragrance-above-its-flash consider "186 °F"`, `heat-above-ceiling must "186 °F"`}},
		{"a second pour", stock, recipeOf("soy", second("186 °F")), []string{`heat-above-ceiling must "186 °F"`}},
		{"soy is usually kept to 85 °C: at it", stock, strings.Replace(bare, "\n  \n", "\n"+melt("85 °C")+"\n", 1), nil},
		{"and over it", stock, strings.Replace(bare, "\n  \n", "\n"+melt("86 °C")+"\n", 1), []string{`heat-above-ceiling should "86 °C"`}},
		{"a range that the sheet states is not over what is usual", stock, recipeOf("hot-range", melt("195 °F")), nil},
		{"beyond that range, what is usual speaks beside it", stock, recipeOf("hot-range", melt("196 °F")), []string{`heat-above-ceiling should "196 °F"`, `melt-too-hot should "196 °F"`}},
		{"what is usual hides what is usual of less weight", stock, recipeOf("bare-soy", pour("90 °C")), []string{`heat-above-ceiling should "90 °C"`}},
		{"what is usual hides no range that is stated", without(t, soyCeiling), recipeOf("soy", pour("190 °F")), []string{`heat-above-ceiling should "190 °F"`, `pour-too-hot should "190 °F"`}},
		{"a blend bears what the weakest bears", stock, recipeOf("soy palm", second("186 °F")), []string{`heat-above-ceiling must "186 °F"`}},
	} {
		t.Run(c.about, func(t *testing.T) {
			assert.Equal(t, c.want, checkShop(t, c.stock, c.recipe))
		})
	}
}

// Nobody is told to heat up to a range that the wax does not bear.
func TestNoAdviceIntoDanger(t *testing.T) {
	s := strings.Replace(stock, `pour_at          = "130 to 145 °F"`, `pour_at          = "190 to 200 °F"`, 1)
	assert.Empty(t, checkShop(t, s, recipeOf("soy", melt("178 °F")+pour("150 °F"))))
}

func TestScaleDoubtful(t *testing.T) {
	for _, c := range []struct {
		about, waxes, steps string
		want                []string
	}{
		{"a pour in Celsius that is meant in Fahrenheit", "soy", melt("178 °F") + pour("138 °C"), []string{`temperature-scale-doubtful must "138 °C"`}},
		{"a melt", "soy", melt("178 °C"), []string{`temperature-scale-doubtful must "178 °C"`}},
		{"fragrance, which says nothing of its flash point either", "soy", melt("178 °F") + add("170 °C"), []string{`temperature-scale-doubtful must "170 °C"`}},
		{"a second pour", "celsius", melt("85 °C") + pour("80 °C") + second("182 °C"), []string{`temperature-scale-doubtful must "182 °C"`}},
		{"a range", "soy", melt("178 °F") + pour("135 to 140 °C"), []string{`temperature-scale-doubtful must "135 to 140 °C"`}},
		{"a pour in Fahrenheit that is meant in Celsius", "celsius", melt("85 °C") + pour("80 °F"), []string{`temperature-scale-doubtful must "80 °F"`}},
		{"too hot in either scale is only too hot", "soy", second("300 °C"), []string{`heat-above-ceiling must "300 °C"`, `heat-near-flash must "300 °C"`}},
		{"too hot, and the other scale is outside where it is worked", "soy", second("90 °C"), []string{`heat-above-ceiling must "90 °C"`}},
		{"too cool in either scale is only too cool", "celsius", melt("85 °C") + pour("120 °F"), []string{`pour-too-cool should "120 °F"`}},
		{"what is usual for the family makes it a should", "bare-soy", second("130 °C"), []string{`temperature-scale-doubtful should "130 °C"`}},
		{"nothing is known: only the hard stop", "blend", second("130 °C"), []string{`heat-near-flash should "130 °C"`}},
		{"a range in two scales is no slip", "soy", second("80 °C to 185 °F"), nil},
	} {
		t.Run(c.about, func(t *testing.T) {
			assert.Equal(t, c.want, check(t, recipeOf(c.waxes, c.steps)))
		})
	}
}

// Where what is usual makes the scale doubtful, a limit that is stated and
// passed as written keeps it a must.
func TestDoubtIsAsLoudAsWhatItStandsFor(t *testing.T) {
	s := stock + "wax \"ceiling-only\" {\n  title = \"Ceiling only\"\n  family = \"soy\"\n  suits = [\"container\"]\n  never_above = \"185 °F\"\n}\n"
	assert.Equal(t, []string{`temperature-scale-doubtful must "138 °C"`}, checkShop(t, s, recipeOf("ceiling-only", pour("138 °C"))))
}

// A dangerous figure does not go silent with the doubt: where the recipe
// concedes it or the shop tunes it, the figure is meant as written.
func TestDangerOutlivesTheDoubt(t *testing.T) {
	hot := recipeOf("soy", second("178 °C")+`concession "temperature-scale-doubtful" {
    reason = "We do mean it"
  }
`)
	assert.Contains(t, check(t, hot), `heat-above-ceiling must "178 °C"`)
	tuned := stock + "shop \"s\" {\n  tune \"temperature-scale-doubtful\" {\n    level = \"off\"\n  }\n}\n"
	assert.Equal(t, []string{`heat-above-ceiling must "178 °C"`}, checkShop(t, tuned, recipeOf("soy", second("178 °C"))))

	offCeiling := stock + "shop \"s\" {\n  tune \"heat-above-ceiling\" {\n    level = \"off\"\n  }\n}\n"
	own := strings.Replace(recipeOf("soy", pour("190 °F")), `"sale"`, `"own use"`, 1)
	assert.Equal(t, []string{`pour-too-hot should "190 °F"`}, checkShop(t, offCeiling, own))
	assert.Contains(t, checkShop(t, offCeiling, recipeOf("soy", pour("190 °F"))), `heat-above-ceiling must "190 °F"`, "binding for sale")
}

func TestDoubtSaysTheDanger(t *testing.T) {
	r := run(t, stock, recipeOf("soy", pour("138 °C")))
	require.Len(t, r.Findings, 1)
	f := &r.Findings[0]
	assert.Equal(t, "138 °C (280.4 °F) is 53 °C over the ceiling of Test soy, 185 °F (85 °C), while 138 °F suits it: which scale is meant? Heat nothing until that is settled", f.Message)
	require.Len(t, f.Notes, 1)
	assert.Equal(t, `"185 °F"`, f.Notes[0].File.Text.Slice(f.Notes[0].Span))
	require.Len(t, f.Repairs(), 1)
	assert.Equal(t, `"138 °F"`, f.Repairs()[0].Edits[0].Text)

	r = run(t, stock, recipeOf("celsius", melt("85 °C")+pour("80 °F")))
	require.Len(t, r.Findings, 1)
	assert.Equal(t, "80 °F (26.7 °C) is 60 °F below where Test paraffin sets, 140 °F (60 °C), while 80 °C suits it: which scale is meant?", r.Findings[0].Message)
	assert.Empty(t, r.Findings[0].Repairs(), "the swap would be hotter: nobody does that for you")
}

// Figures of the stock in the wrong scale would let everything through.
func TestStockInTheWrongScale(t *testing.T) {
	for _, c := range []struct {
		about, from, to, steps string
		want                   []string
	}{
		{"a range", `"130 to 145 °F"`, `"130 to 145 °C"`, melt("178 °F") + pour("138 °F"), []string{`temperature-scale-doubtful should "130 to 145 °C"`}},
		{"a cold range", `"75 to 83 °C"`, `"75 to 83 °F"`, melt("178 °F") + pour("138 °F"), nil}, // of a wax that is not used
		{"a ceiling", `"185 °F"`, `"185 °C"`, second("150 °C"), []string{`temperature-scale-doubtful must "150 °C"`, `temperature-scale-doubtful should "185 °C"`}},
		{"a flash point", `"440 °F"`, `"440 °C"`, second("250 °F"), []string{`heat-above-ceiling must "250 °F"`, `temperature-scale-doubtful should "440 °C"`}},
	} {
		t.Run(c.about, func(t *testing.T) {
			s := strings.Replace(stock, c.from, c.to, 1)
			require.NotEqual(t, stock, s)
			assert.ElementsMatch(t, c.want, checkShop(t, s, recipeOf("soy", c.steps)))
		})
	}
	// Published flash points of candle waxes are no slips: fully refined
	// paraffin over 200 °C (392 °F), beeswax 242 to 250 °C (468 to 482 °F).
	for _, flash := range []string{"199 °C", "204 °C", "250 °C", "300 °C", "390 °F", "450 °F", "480 °F", "> 113 °C"} {
		s := strings.Replace(stock, `"440 °F"`, `"`+flash+`"`, 1)
		assert.Empty(t, checkShop(t, s, recipeOf("soy", melt("178 °F")+pour("138 °F"))), flash)
	}
}

func TestTheMarginIsADifference(t *testing.T) {
	thirty := quantity.Of(quantity.Int(30), quantity.CelsiusDegrees)
	assert.Equal(t, "54", thirty.In(quantity.FahrenheitDegrees).Number().Decimal(6)) // not 86: NIST SP 811 (2008), B.9
	said := messages(run(t, strings.Replace(stock, soyCeiling, "  never_above      = \"390 °F\"\n", 1), recipeOf("soy", second("386 °F"))))
	assert.Equal(t, []string{"386 °F (196.7 °C) is 54 °F below the flash point of Test soy, 440 °F (226.7 °C), where its vapor can be lit: stay more than 54 °F below it"}, said)
}
