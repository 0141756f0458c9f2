package house_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/formulation"
	"wickrule/rules/house"
	"wickrule/schema"
)

const stock = `
wax "plain" {
  title           = "Plain wax"
  family          = "paraffin"
  suits           = ["pillar"]
  fragrance_limit = "6 % of wax"
}
wax "blend" {
  family = "blend"
  part "plain" {
    share = "100 %"
  }
}
dye "madder" {
  limit       = "0.1 % of wax"
  water_based = false
}
fragrance "thyme" {
  most_in_candles = "25 % of total"
  water_based     = false
}
`

func check(t testing.TB, day string, texts ...string) []string {
	t.Helper()
	var files []*schema.File
	for i, text := range append([]string{stock}, texts...) {
		files = append(files, schema.Read(fmt.Sprintf("%d.candle.hcl", i), []byte(text)))
	}
	report := lint.Run(lint.NewShop(".", files), slices.Concat(formulation.Rules(), house.Rules()), day)
	require.Empty(t, report.Faults)
	found := []string{}
	for _, f := range report.Findings {
		for _, fix := range f.Repairs() {
			_, err := schema.Apply(f.At.File.Text.String(), fix.Edits)
			require.NoError(t, err, fix.Title)
		}
		found = append(found, fmt.Sprintf("%s %s on %s", f.Level, f.Rule.Name, f.At.File.Text.Slice(f.At.Span)))
	}
	for _, c := range report.Conceded {
		found = append(found, "conceded "+c.Rule.Name)
	}
	return found
}

// recipe uses all of the stock: a dye by eye and a fragrance within its limit.
func recipe(made, more string) string {
	return "recipe \"try\" {\n  made_for = \"" + made + "\"\n  wax \"blend\" {\n    weight = \"1 kg\"\n  }\n  wax \"plain\" {\n    weight = \"1 kg\"\n  }\n" +
		"  dye \"madder\" {\n    amount = \"to shade\"\n  }\n" + more + "}\n"
}

func concession(rule, lines string) string {
	return "  concession \"" + rule + "\" {\n" + lines + "  }\n"
}

const (
	reason  = "    reason = \"The color is meant to vary\"\n"
	scented = "  fragrance \"thyme\" {\n    load = \"1 % of wax\"\n  }\n"
)

// The house format: a concession holds to the end of the day it names.
func TestTheLastDayOfAConcession(t *testing.T) {
	text := recipe("sale", scented+concession("dye-by-eye", reason+"    until = \"2026-10-20\"\n"))
	assert.Equal(t, []string{"conceded dye-by-eye"}, check(t, "2026-10-19", text))
	assert.Equal(t, []string{"conceded dye-by-eye"}, check(t, "2026-10-20", text))
	assert.ElementsMatch(t, []string{`should concession-expired on "2026-10-20"`, `should dye-by-eye on "to shade"`}, check(t, "2026-10-21", text))
}

func TestWhatCanBeConceded(t *testing.T) {
	day := "2026-10-20"
	eye := `should dye-by-eye on "to shade"`
	assert.Equal(t, []string{"conceded dye-by-eye"}, check(t, day, recipe("sale", scented+concession("dye-by-eye", reason))))
	assert.ElementsMatch(t, []string{`must concession-without-reason on concession "dye-by-eye"`, eye}, check(t, day, recipe("sale", scented+concession("dye-by-eye", ""))))
	assert.ElementsMatch(t, []string{`must concession-without-reason on concession "dye-by-eye"`, eye}, check(t, day, recipe("sale", scented+concession("dye-by-eye", "    reason = \"\"\n"))))
	assert.ElementsMatch(t, []string{`consider concession-unused on "water-in-wax"`, eye}, check(t, day, recipe("sale", scented+concession("water-in-wax", reason))))
	assert.ElementsMatch(t, []string{`must concession-not-allowed on "syntax"`, eye}, check(t, day, recipe("sale", scented+concession("syntax", reason))))
	assert.ElementsMatch(t, []string{`must unknown-key on "dye-by-eyes"`, eye}, check(t, day, recipe("sale", scented+concession("dye-by-eyes", reason))))
}

// More fragrance than the wax holds can catch fire: binding for what is sold,
// and for what is sold alone.
func TestBindingRules(t *testing.T) {
	over := "  fragrance \"thyme\" {\n    load = \"7 % of wax\"\n  }\n"
	text := func(made string) string {
		return "wax \"limit\" {\n  fragrance_limit = \"6 % of wax\"\n}\nrecipe \"try\" {\n  made_for = \"" + made + "\"\n  wax \"limit\" {\n    weight = \"1 kg\"\n  }\n" + over + concession("fragrance-over-limit", reason) + "}\n"
	}
	limits := func(found []string) []string {
		return slices.DeleteFunc(found, func(f string) bool { return f[:8] == "consider" })
	}
	assert.ElementsMatch(t, []string{`must concession-not-allowed on "fragrance-over-limit"`, `must fragrance-over-limit on "7 % of wax"`}, limits(check(t, "2026-10-20", text("sale"))))
	assert.Equal(t, []string{"conceded fragrance-over-limit"}, limits(check(t, "2026-10-20", text("class"))))
	assert.Equal(t, []string{"conceded fragrance-over-limit"}, limits(check(t, "2026-10-20", text("own use"))))

	// Nor is it tuned away for what is sold, as other rules are.
	tuned := "shop \"try\" {\n  tune \"fragrance-over-limit\" {\n    level = \"off\"\n  }\n  tune \"dye-by-eye\" {\n    level = \"off\"\n  }\n}\n"
	bare := func(made string) string {
		return "wax \"limit\" {\n  fragrance_limit = \"6 % of wax\"\n}\nrecipe \"try\" {\n  made_for = \"" + made + "\"\n  wax \"limit\" {\n    weight = \"1 kg\"\n  }\n" + over +
			"  dye \"madder\" {\n    amount = \"to shade\"\n  }\n}\n"
	}
	assert.Equal(t, []string{`must fragrance-over-limit on "7 % of wax"`}, limits(check(t, "2026-10-20", tuned, bare("sale"))))
	assert.Empty(t, limits(check(t, "2026-10-20", tuned, bare("own use"))))
}

func TestWhatIsUsed(t *testing.T) {
	day := "2026-10-20"
	// The wax is used as a part of the blend, the fragrance not at all.
	text := "recipe \"try\" {\n  made_for = \"own use\"\n  wax \"blend\" {\n    weight = \"1 kg\"\n  }\n  dye \"madder\" {\n    weight = \"0.5 g\"\n  }\n}\n"
	assert.Equal(t, []string{`consider unused-stock on fragrance "thyme"`}, check(t, day, text))
	assert.Empty(t, check(t, day), "no recipe yet")
	assert.NotContains(t, check(t, day, text, "recipe \"next\" {\n  fragrance \"thy"), `consider unused-stock on fragrance "thyme"`, "still being typed")
}

func TestKeys(t *testing.T) {
	day := "2026-10-20"
	text := "recipe \"try\" {\n  made_for = \"own use\"\n  wax \"blnd\" {\n    weight = \"1 kg\"\n  }\n}\n"
	assert.Contains(t, check(t, day, text), `must unknown-key on "blnd"`)
	// What the example of a shop rule names is in the shop, or in the example.
	rule := "rule \"r\" {\n  about = \"wax\"\n  require = wax.weight > amount(\"1 g\")\n  sound {\n    wax \"own\" {\n    }\n    recipe \"like\" {\n" +
		"      wax \"own\" {\n      }\n      wax \"plain\" {\n      }\n      wax \"plan\" {\n      }\n    }\n  }\n}\n"
	assert.Contains(t, check(t, day, rule), `must unknown-key on "plan"`)
	assert.NotContains(t, check(t, day, rule), `must unknown-key on "own"`)
	assert.NotContains(t, check(t, day, rule), `must unknown-key on "plain"`)
	again := "wax \"plain\" {\n  fragrance_limit = \"20 % of wax\"\n}\n"
	assert.Contains(t, check(t, day, again), `must key-repeated on "plain"`)
	assert.NotContains(t, check(t, day, "dye \"plain\" {\n}\n"), `must key-repeated on "plain"`, "a key is a kind's own")
	// The first counts: the second's limit is not used.
	load := "recipe \"try\" {\n  made_for = \"sale\"\n  wax \"plain\" {\n    weight = \"1 kg\"\n  }\n  fragrance \"thyme\" {\n    load = \"7 % of wax\"\n  }\n}\n"
	assert.Contains(t, check(t, day, again, load), `must fragrance-over-limit on "7 % of wax"`)
}
