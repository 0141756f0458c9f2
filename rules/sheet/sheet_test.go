package sheet_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules"
	"wickrule/rules/sheet"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

const today = "2026-11-25"

func all(*lint.Shop) []*lint.Rule { return rules.All() }

func demo(t testing.TB) *lint.Shop {
	t.Helper()
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	return shop
}

func order(t testing.TB, text string) sheet.Order {
	t.Helper()
	if text == "" {
		return sheet.Order{}
	}
	o, err := sheet.ParseOrder(text)
	require.NoError(t, err)
	return o
}

// of makes the sheet of a demo recipe, with changes made to its file.
func of(t testing.TB, key, forThis string, changes ...lint.Change) *sheet.Sheet {
	t.Helper()
	shop, _, err := lint.Example{Recipe: key, Changes: changes}.Over(demo(t))
	require.NoError(t, err)
	s, err := sheet.Make(shop, shop.Find("recipe", key), sheet.Options{Today: today, Order: order(t, forThis), Rules: all})
	require.NoError(t, err)
	return s
}

// Ounces and pounds beside grams: NIST SP 811 (2008), Appendix B.8, gives
// 1 oz = 28.349 52 g and 1 lb = 453.592 4 g (both to seven digits).
func TestBothSystems(t *testing.T) {
	wax := func(weight string) sheet.Weight {
		return *of(t, "tide-pillar", "", lint.Change{From: `"1.24 kg"`, To: schema.Quote(weight)}).Pots[0].Weigh[0].Weight
	}
	assert.Equal(t, sheet.Weight{Grams: 454, Text: "1 lb", Other: "454 g"}, wax("1 lb"))
	assert.Equal(t, sheet.Weight{Grams: 1276, Text: "2 lb 13 oz", Other: "1276 g"}, wax("2 lb 13 oz"), "45 × 28.349 52 g = 1275.73 g")
	assert.Equal(t, sheet.Weight{Grams: 29, Text: "1 oz", Other: "29 g"}, wax("1 oz"))
	assert.Equal(t, sheet.Weight{Grams: 907, Text: "2 lb", Other: "907 g"}, wax("907 g"), "907 / 453.592 4 = 1.9996 lb, and wax is rounded up")

	s := of(t, "tide-pillar", "")
	assert.Equal(t, sheet.Weight{Grams: 62, Text: "2.18 oz", Other: "62 g"}, *s.Pots[0].Weigh[2].Weight, "62 / 28.349 52 = 2.187: oil is rounded down")
	assert.Equal(t, sheet.Weight{Grams: 0.6, Text: "0.021 oz", Other: "0.6 g"}, *s.Pots[0].Weigh[1].Weight)
}

// Temperatures stand in both scales: NIST SP 811 (2008), B.8, t/°C =
// (t/°F - 32)/1.8, so that 176 °F is 80 °C and 186 °F is 85.56 °C.
func TestBothScales(t *testing.T) {
	s := of(t, "tide-pillar", "")
	var did []string
	for _, step := range s.Steps {
		did = append(did, step.Do)
	}
	text := strings.Join(did, "\n")
	assert.Contains(t, text, "Melt the wax to 186 °F (85.6 °C)")
	assert.Contains(t, text, "Pour at 176 °F (80 °C)")
}

func TestOrders(t *testing.T) {
	for text, want := range map[string]sheet.Order{
		"24 candles": {Candles: 24}, "24": {Candles: 24}, "1 candle": {Candles: 1},
		"2 kg of wax": {Wax: quantity.Int(2000)}, "2 kg": {Wax: quantity.Int(2000)}, "2 kg wax": {Wax: quantity.Int(2000)},
	} {
		got, err := sheet.ParseOrder(text)
		require.NoError(t, err, text)
		assert.True(t, got.Candles == want.Candles && got.Wax.Equal(want.Wax), text)
	}
	for _, text := range []string{"", "0", "-3", "0 kg", "many", "2.5 candles", "24 drops", "2 to 3 kg", "10 °F", "24 candles please"} {
		_, err := sheet.ParseOrder(text)
		assert.Error(t, err, text)
	}
}

// An order is shared over as few pots as hold it at three quarters full, as
// evenly as can be, and no candle is lost on the way.
func TestSharedOverPots(t *testing.T) {
	s := of(t, "harbor-jar", "24 candles")
	require.Len(t, s.Pots, 1)
	assert.Equal(t, 3, s.Pots[0].Times)
	assert.Equal(t, 8, s.Pots[0].Candles)
	assert.Equal(t, 24, s.Vessels[0].Count)
	// 2 lb 13 oz for 6 candles is 212.62 g each; 8 take 1700.97 g, weighed up to the gram.
	assert.Equal(t, "1701 g", s.Pots[0].Weigh[0].Weight.Other)
	assert.Empty(t, s.Findings)

	s = of(t, "harbor-jar", "25 candles")
	require.Len(t, s.Pots, 2)
	assert.Equal(t, []int{9, 1, 8, 2}, []int{s.Pots[0].Candles, s.Pots[0].Times, s.Pots[1].Candles, s.Pots[1].Times})

	s = of(t, "harbor-jar", "2 kg of wax")
	made := 0
	for _, pot := range s.Pots {
		made += pot.Times * pot.Candles
	}
	// 2000 g with 7 % of oil fills 2140 g / 222 g = 9 candles and leaves some.
	assert.Equal(t, 9, made)

	shop := demo(t)
	_, err := sheet.Make(shop, shop.Find("recipe", "harbor-jar"), sheet.Options{Today: today, Order: sheet.Order{Wax: quantity.Int(10)}})
	assert.ErrorContains(t, err, "does not fill 1 candle")
	_, err = sheet.Make(shop, shop.Find("recipe", "harbor-jar"), sheet.Options{Today: today, Order: sheet.Order{Candles: 1_000_000}})
	assert.ErrorContains(t, err, "at most")
}

// Whatever is ordered, no load on the scale is over what the recipe says, and
// the wax is enough for it.
func TestNoLoadRises(t *testing.T) {
	for _, key := range demo(t).Keys("recipe") {
		for _, forThis := range []string{"", "12 candles", "36 candles", "3 lb of wax", "777 g of wax"} {
			shop := demo(t)
			s, err := sheet.Make(shop, shop.Find("recipe", key), sheet.Options{Today: today, Order: order(t, forThis)})
			if err != nil {
				continue // too little wax for one candle, or vessels that do not share out
			}
			asWritten := of(t, key, "")
			for _, pot := range s.Pots {
				for i, line := range pot.Weigh {
					was := asWritten.Pots[0].Weigh[i]
					require.Equal(t, was.Title, line.Title)
					if line.Kind == "wax" || line.Weight == nil || line.Weight.Grams == 0 {
						continue
					}
					load := line.Weight.Grams / waxOf(pot)
					limit := was.Weight.Grams / waxOf(asWritten.Pots[0])
					// What is written is itself on the scale's step: a step of difference.
					step := 1 / waxOf(asWritten.Pots[0])
					assert.LessOrEqual(t, load, limit+step, "%s for %q: %s", key, forThis, line.Title)
				}
			}
		}
	}
}

func waxOf(p sheet.Pot) float64 {
	sum := 0.0
	for _, line := range p.Weigh {
		if line.Kind == "wax" {
			sum += line.Weight.Grams
		}
	}
	return sum
}

// The batch is checked as it is weighed, and its burns as they are recorded.
func TestTheBatchIsChecked(t *testing.T) {
	s := of(t, "tide-pillar", "", lint.Change{From: `"5 % of wax"`, To: `"7 % of wax"`})
	assert.Equal(t, "do not pour or sell it like this", s.Verdict)
	assert.Equal(t, 2, s.Musts())
	var found []string
	for _, f := range s.Findings {
		found = append(found, f.Rule)
	}
	assert.Equal(t, []string{"fragrance-over-limit", "test-burn-stale"}, found)
	require.Len(t, s.Burns, 1)
	assert.False(t, s.Burns[0].Enough)
	assert.Equal(t, 6, s.Burns[0].Older)

	s = of(t, "tide-pillar", "10 candles")
	assert.Empty(t, s.Findings)
	assert.True(t, s.Burns[0].Enough)
	s = of(t, "kitchen-shelf", "")
	require.NotEmpty(t, s.Findings)
	assert.NotEmpty(t, s.Findings[0].Conceded)
}

// Every demo recipe has a sheet in every form; the JSON is what its published
// schema says (JSON Schema 2020-12).
func TestEveryRecipeInEveryForm(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(sheet.Schema))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("sheet.json", doc))
	form, err := c.Compile("sheet.json")
	require.NoError(t, err)
	for _, shopOf := range []func() *lint.Shop{func() *lint.Shop { return demo(t) }, func() *lint.Shop {
		shop, errs := lint.Load(examples.Faulty(), ".", nil)
		require.Empty(t, errs)
		return shop
	}} {
		shop := shopOf()
		for _, recipe := range shop.Recipes() {
			s, err := sheet.Make(shop, recipe, sheet.Options{Today: today, Rules: all})
			require.NoError(t, err, recipe.Label)
			assert.Len(t, s.Steps, countSteps(recipe), recipe.Label)
			for _, step := range s.Steps {
				assert.NotEmpty(t, step.Do, recipe.Label)
			}
			var out bytes.Buffer
			require.NoError(t, s.JSON(&out))
			got, err := jsonschema.UnmarshalJSON(bytes.NewReader(out.Bytes()))
			require.NoError(t, err)
			assert.NoError(t, form.Validate(got), recipe.Label)
			var again sheet.Sheet
			require.NoError(t, json.Unmarshal(out.Bytes(), &again))

			for _, write := range []func() error{
				func() error { return s.Markdown(&out) },
				func() error { return s.Text(&out, report.Look{Width: 60}) },
				func() error { return s.HTML(&out) },
			} {
				out.Reset()
				require.NoError(t, write(), recipe.Label)
				for _, step := range s.Steps {
					if step.Kind == "melt" {
						assert.Contains(t, strings.Join(strings.Fields(out.String()), " "), "Melt", recipe.Label)
					}
				}
				assert.Contains(t, strings.Join(strings.Fields(out.String()), " "), "Never put water on burning", recipe.Label)
				assert.NotContains(t, out.String(), "%!", recipe.Label)
			}
		}
	}
}

func countSteps(recipe *schema.Block) int {
	n := 0
	for range recipe.Each("step") {
		n++
	}
	return n
}

// Words from a recipe do not turn into markup.
func TestMarkup(t *testing.T) {
	s := of(t, "tide-pillar", "", lint.Change{From: `"Tide and thyme pillar"`, To: `"<b>Tide</b> | *thyme* & [x](y)"`})
	var out bytes.Buffer
	require.NoError(t, s.Markdown(&out))
	assert.Contains(t, out.String(), `# &lt;b>Tide&lt;/b> | \*thyme\* & \[x\](y)`)
	out.Reset()
	require.NoError(t, s.HTML(&out))
	assert.NotContains(t, out.String(), "<b>Tide")
	assert.NotContains(t, out.String(), "http", "it needs nothing but itself")
}
