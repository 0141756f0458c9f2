package formulation_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/formulation"
	"wickrule/schema"
)

const today = "2026-10-20"

// The stock of these tests: round figures, so that what is expected can be
// reckoned by hand; all invented.
const stock = `
shop "try" {
  units = "metric"
}
wax "six" {
  title           = "Six wax"
  family          = "paraffin"
  suits           = ["pillar"]
  fragrance_limit = "6 % of wax"
  density         = "0.9 g/mL"
}
wax "ten" {
  title           = "Ten wax"
  family          = "paraffin"
  suits           = ["pillar"]
  fragrance_limit = "10 % of wax"
  density         = "0.9 g/mL"
}
wax "ten-of-total" {
  title           = "Total wax"
  family          = "soy"
  suits           = ["container"]
  fragrance_limit = "10 % of total"
  density         = "0.9 g/mL"
}
wax "sponge" {
  title           = "Sponge wax"
  family          = "paraffin"
  suits           = ["pillar"]
  fragrance_limit = "20 % of wax"
}
wax "no-sheet" {
  title  = "Sack of paraffin"
  family = "paraffin"
  suits  = ["pillar"]
}
wax "nothing-said" {
  title = "Left-overs"
}
wax "house" {
  title           = "House blend"
  family          = "blend"
  suits           = ["pillar"]
  fragrance_limit = "8 % of wax"
  part "six" {
    share = "70 %"
  }
  part "ten" {
    share = "30 %"
  }
}
wax "gel" {
  title           = "Gel"
  family          = "gel"
  suits           = ["container"]
  fragrance_limit = "5 % of wax"
}
wax "broken-limit" {
  title           = "Broken wax"
  family          = "paraffin"
  suits           = ["pillar"]
  fragrance_limit = "some"
}
fragrance "thyme" {
  title           = "Thyme"
  flash_point     = "190 °F"
  density         = "0.96 g/mL"
  most_in_candles = "25 % of total"
  water_based     = false
  gel_safe        = true
}
fragrance "clove" {
  title           = "Clove"
  flash_point     = "170 °F"
  density         = "1 g/mL"
  most_in_candles = "25 % of total"
  water_based     = false
  gel_safe        = true
}
fragrance "musk" {
  title           = "Musk"
  flash_point     = "169.9 °F"
  most_in_candles = "25 % of total"
  water_based     = false
  gel_safe        = true
}
fragrance "strict" {
  title           = "Strict oil"
  density         = "1 g/mL"
  most_in_candles = "3 % of total"
  water_based     = false
}
dye "madder" {
  title       = "Madder"
  limit       = "0.1 % of wax"
  drop        = "0.05 g"
  water_based = false
}
dye "block-red" {
  title       = "Red block"
  limit       = "0.1 % of total"
  piece       = "4 g"
  water_based = false
}
dye "uncounted" {
  title       = "Uncounted dye"
  limit       = "0.1 % of wax"
  water_based = false
}
additive "stearin" {
  title       = "Stearin"
  usual       = "5 to 10 % of wax"
  water_based = false
}
additive "hardener" {
  title       = "Hardener"
  usual       = "0.5 to 1 % of total"
  water_based = false
}
mold "cube" {
  title  = "Cube"
  shape  = "block"
  width  = "100 mm"
  length = "100 mm"
  height = "100 mm"
}
container "jar" {
  title    = "Jar"
  kind     = "jar"
  diameter = "80 mm"
  height   = "100 mm"
  holds    = "400 mL"
}
taper "ten" {
  diameter = "22 mm"
  length   = "250 mm"
}
`

// check runs the rules of this folder over a recipe with this body and says
// what they find: level, rule, the characters flagged. Every fix must apply.
func check(t testing.TB, body string) []string {
	t.Helper()
	return said(t, run(t, body))
}

func run(t testing.TB, body string) *lint.Report {
	t.Helper()
	return runText(t, "recipe \"try\" {\n"+body+"\n}\n")
}

func runText(t testing.TB, recipe string) *lint.Report {
	t.Helper()
	files := []*schema.File{schema.Read("stock.candle.hcl", []byte(stock)), schema.Read("try.candle.hcl", []byte(recipe))}
	report := lint.Run(lint.NewShop(".", files), formulation.Rules(), today)
	require.Empty(t, report.Faults)
	return report
}

func said(t testing.TB, report *lint.Report) []string {
	t.Helper()
	found := []string{}
	for _, f := range report.Findings {
		for _, fix := range f.Repairs() {
			require.NotEmpty(t, fix.Edits, fix.Title)
			_, err := schema.Apply(f.At.File.Text.String(), fix.Edits)
			require.NoError(t, err, fix.Title)
		}
		found = append(found, fmt.Sprintf("%s %s on %s", f.Level, f.Rule.Name, f.At.File.Text.Slice(f.At.Span)))
	}
	return found
}

func messages(report *lint.Report) []string {
	found := []string{}
	for _, f := range report.Findings {
		found = append(found, f.Rule.Name+": "+f.Message)
	}
	return found
}

func needs(report *lint.Report) []string {
	found := []string{}
	for _, u := range report.Unchecked {
		found = append(found, u.Needs)
	}
	return found
}

// titles are what the fixes of the findings of a rule are called.
func titles(report *lint.Report, rule string) []string {
	found := []string{}
	for _, f := range report.Findings {
		if f.Rule.Name == rule {
			for _, fix := range f.Repairs() {
				found = append(found, fix.Title)
			}
		}
	}
	return found
}

// mended applies the first fix of the first finding of a rule and checks again.
func mended(t testing.TB, report *lint.Report, rule string) *lint.Report {
	t.Helper()
	for _, f := range report.Findings {
		if f.Rule.Name != rule {
			continue
		}
		fixes := f.Repairs()
		require.NotEmpty(t, fixes, "%s offers no fix", rule)
		text, err := schema.Apply(f.At.File.Text.String(), fixes[0].Edits)
		require.NoError(t, err)
		return runText(t, text)
	}
	require.Fail(t, "nothing found by "+rule)
	return nil
}

func wax(key, weight string) string {
	return "  wax \"" + key + "\" {\n    weight = \"" + weight + "\"\n  }\n"
}

func unweighed(key string) string { return "  wax \"" + key + "\" {}\n" }

func fragrance(key, attr, value string) string { return ingredient("fragrance", key, attr, value) }

func ingredient(kind, key, attr, value string) string {
	return "  " + kind + " \"" + key + "\" {\n    " + attr + " = \"" + value + "\"\n  }\n"
}

// kilo is a kilogram of the wax that holds 6 % of wax.
var kilo = wax("six", "1000 g")
