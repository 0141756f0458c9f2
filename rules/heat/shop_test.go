package heat_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules/heat"
	"wickrule/schema"
)

const today = "2026-10-20"

// A wax with every figure, one that states only its family, and one of another
// scale; all invented.
const stock = `
wax "soy" {
  title            = "Test soy"
  family           = "soy"
  suits            = ["container"]
  melt_to          = "170 to 182 °F"
  pour_at          = "130 to 145 °F"
  add_fragrance_at = "165 to 180 °F"
  congeals_at      = "114 °F"
  never_above      = "185 °F"
  flash_point      = "440 °F"
}
wax "bare-soy" {
  title  = "Bare soy"
  family = "soy"
  suits  = ["container"]
}
wax "blend" {
  title  = "House blend"
  family = "blend"
}
wax "celsius" {
  title            = "Test paraffin"
  family           = "paraffin"
  suits            = ["pillar"]
  melt_to          = "80 to 88 °C"
  pour_at          = "75 to 83 °C"
  add_fragrance_at = "78 to 86 °C"
  congeals_at      = "60 °C"
  never_above      = "100 °C"
  flash_point      = "230 °C"
}
wax "palm" {
  title            = "Test palm"
  family           = "palm"
  suits            = ["pillar"]
  melt_to          = "92 to 98 °C"
  pour_at          = "88 to 95 °C"
  add_fragrance_at = "90 to 96 °C"
  congeals_at      = "58 °C"
  never_above      = "100 °C"
  flash_point      = "220 °C"
}
wax "hot-range" {
  title       = "Soy of a hot range"
  family      = "soy"
  suits       = ["container"]
  melt_to     = "180 to 195 °F"
  pour_at     = "130 to 145 °F"
  flash_point = "440 °F"
}
fragrance "oil" {
  title       = "Oil"
  flash_point = "180 °F"
}
fragrance "other-oil" {
  title       = "Other oil"
  flash_point = "170 °F"
}
fragrance "silent-oil" {
  title = "Silent oil"
}
pot "plate" {
  title = "Pot on a plate"
  holds = "4 qt"
  heat  = "direct heat"
}
pot "silent-pot" {
  title = "Silent pot"
  holds = "4 qt"
}
`

// check runs the rules of this group over a recipe and says what they find: the rule, its level, and the characters flagged.
func check(t testing.TB, recipe string) []string {
	t.Helper()
	return checkShop(t, stock, recipe)
}

func checkShop(t testing.TB, stock, recipe string) []string {
	t.Helper()
	var said []string
	for _, f := range run(t, stock, recipe).Findings {
		said = append(said, f.Rule.Name+" "+f.Level.String()+" "+f.At.File.Text.Slice(f.At.Span))
	}
	return said
}

func run(t testing.TB, stock, recipe string) *lint.Report {
	t.Helper()
	files := []*schema.File{schema.Read("stock.candle.hcl", []byte(stock)), schema.Read("r.candle.hcl", []byte(recipe))}
	report := lint.Run(lint.NewShop(".", files), heat.Rules(), today)
	require.Empty(t, report.Faults)
	return report
}

func messages(r *lint.Report) []string {
	var said []string
	for _, f := range r.Findings {
		said = append(said, f.Message)
	}
	return said
}

func unchecked(r *lint.Report) []string {
	var said []string
	for _, u := range r.Unchecked {
		said = append(said, u.Level.String()+" "+u.Needs+": "+strings.Join(u.Rules, " "))
	}
	return said
}

// Sound recipes stay sound: nothing is found and nothing is left unchecked.
func TestTheDemoShopIsSilent(t *testing.T) {
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	report := lint.Run(shop, heat.Rules(), today)
	require.Empty(t, report.Faults)
	require.NotZero(t, report.Recipes)
	assert.Empty(t, messages(report))
	assert.Empty(t, unchecked(report))
}

// Half-typed text is never told that something is missing, and nothing panics
// on any beginning of a recipe.
func TestEveryBeginningOfARecipe(t *testing.T) {
	text := recipeOf("soy", `step "melt" {
    to   = "176 °C"
    over = "water bath"
  }
  step "add fragrance" {
    at = "172 °F"
  }
  step "pour" {
    at = "138 °F"
  }`)
	for i := range text {
		for _, said := range checkShop(t, stock, text[:i]) {
			assert.NotContains(t, said, "temperature-never-said", text[:i])
		}
	}
}

// recipeOf is a recipe of one wax or several, with a fragrance and these steps.
func recipeOf(waxes, steps string) string {
	var b strings.Builder
	b.WriteString("recipe \"r\" {\n  made_for = \"sale\"\n")
	for _, wax := range strings.Fields(waxes) {
		b.WriteString("  wax \"" + wax + "\" {\n    weight = \"1 kg\"\n  }\n")
	}
	b.WriteString("  fragrance \"oil\" {\n    load = \"3 % of wax\"\n  }\n  mold \"any\" {}\n  " + steps + "\n}\n")
	return b.String()
}

func melt(to string) string {
	return "step \"melt\" {\n    to = \"" + to + "\"\n    over = \"water bath\"\n  }\n  "
}
func pour(at string) string { return "step \"pour\" { at = \"" + at + "\" }\n  " }
func add(at string) string  { return "step \"add fragrance\" { at = \"" + at + "\" }\n  " }
func second(at string) string {
	return "step \"second pour\" { at = \"" + at + "\" }\n  "
}
