package vessel_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/formula"
	"wickrule/rules/vessel"
	"wickrule/schema"
)

const today = "2026-10-20"

// The stock of these tests: round figures, so that what is expected can be
// reckoned by hand; all invented.
const stock = `
shop "try" {
  units = "metric"
}
wax "pillar" {
  title           = "Pillar wax"
  family          = "paraffin"
  suits           = ["pillar", "votive"]
  melt_to         = "80 to 90 °C"
  pour_at         = "70 to 80 °C"
  never_above     = "110 °C"
  fragrance_limit = "6 % of wax"
  density         = "0.9 g/mL"
  shrinkage       = "10 %"
}
wax "container" {
  title           = "Container wax"
  family          = "paraffin"
  suits           = ["container"]
  melt_to         = "70 to 85 °C"
  pour_at         = "60 to 75 °C"
  never_above     = "95 °C"
  fragrance_limit = "10 % of wax"
  density         = "0.9 g/mL"
  shrinkage       = "10 %"
}
wax "soy" {
  title           = "Soy"
  family          = "soy"
  suits           = ["container", "melt"]
  melt_to         = "75 to 85 °C"
  pour_at         = "55 to 65 °C"
  fragrance_limit = "9 % of total"
}
wax "tealight" {
  title           = "Tealight wax"
  family          = "paraffin"
  suits           = ["tealight"]
  fragrance_limit = "3 % of wax"
}
wax "votive" {
  title           = "Votive wax"
  family          = "paraffin"
  suits           = ["votive"]
  fragrance_limit = "6 % of wax"
}
wax "tested" {
  title      = "Tested pillar wax"
  family     = "paraffin"
  suits      = ["pillar"]
  tested_for = ["container"]
}
wax "house" {
  title           = "House blend"
  family          = "blend"
  suits           = ["container"]
  fragrance_limit = "8 % of wax"
  part "container" {
    share = "85 %"
  }
  part "stearin" {
    share = "15 %"
  }
}
wax "stearin" {
  title  = "Stearin"
  family = "stearin"
  suits  = ["pillar", "taper"]
}
wax "plain-beeswax" {
  title  = "Beeswax of unknown grade"
  family = "beeswax"
}
wax "plain-coconut" {
  title  = "Coconut of unknown grade"
  family = "coconut"
}
wax "plain-paraffin" {
  title  = "Paraffin of unknown grade"
  family = "paraffin"
}
wax "broken" {
  family = "paraffin"
  suits  = ["candles"]
}
fragrance "thyme" {
  title = "Thyme"
}
mold "round" {
  title    = "Round mold"
  shape    = "cylinder"
  diameter = "75 mm"
  height   = "100 mm"
  material = "metal"
}
mold "other-round" {
  title    = "Other mold"
  shape    = "cylinder"
  diameter = "60 mm"
  height   = "100 mm"
  material = "silicone"
}
mold "votive-cup" {
  title    = "Votive mold"
  makes    = "votive"
  shape    = "cylinder"
  diameter = "45 mm"
  height   = "50 mm"
  material = "metal"
}
mold "melt-tray" {
  title    = "Tray for melts"
  makes    = "melt"
  shape    = "block"
  width    = "20 mm"
  height   = "20 mm"
  material = "silicone"
}
mold "slab" {
  title    = "Slab mold"
  shape    = "block"
  width    = "60 mm"
  length   = "120 mm"
  height   = "100 mm"
  material = "metal"
}
container "jar" {
  title            = "Jar"
  kind             = "jar"
  diameter         = "75 mm"
  height           = "100 mm"
  holds            = "380 mL"
  material         = "glass"
  made_for_candles = true
}
container "tin" {
  title            = "Tin"
  kind             = "tin"
  diameter         = "75 mm"
  height           = "50 mm"
  holds            = "190 mL"
  material         = "tin"
  made_for_candles = true
}
container "bowl" {
  title            = "Bowl"
  kind             = "bowl"
  diameter         = "5 in"
  height           = "60 mm"
  holds            = "500 mL"
  material         = "ceramic"
  made_for_candles = true
}
container "cup" {
  title            = "Tealight cup"
  kind             = "tealight cup"
  diameter         = "38 mm"
  height           = "16 mm"
  holds            = "16 mL"
  material         = "aluminum"
  made_for_candles = true
}
container "glass-votive" {
  title            = "Votive glass"
  kind             = "votive glass"
  diameter         = "50 mm"
  height           = "60 mm"
  holds            = "100 mL"
  material         = "glass"
  made_for_candles = true
}
container "clamshell" {
  title    = "Clamshell"
  kind     = "clamshell"
  holds    = "80 mL"
  material = "other plastic"
}
taper "dipped" {
  title    = "Dipped taper"
  diameter = "22 mm"
  length   = "250 mm"
}
wick "w75" {
  title        = "Wick 75"
  construction = "cored"
  core         = "cotton"
  burns        = "70 to 80 mm"
  families     = ["paraffin", "stearin", "soy", "beeswax", "coconut", "blend"]
  tab          = true
}
pot "pot" {
  holds = "2 L"
}
seal "sticker" {
  kind     = "sticker"
  holds_to = "100 °C"
}
seal "weak-sticker" {
  kind     = "sticker"
  holds_to = "60 °C"
}
`

// check runs the rules of this folder over a recipe with this body, and
// further stock, and says what one rule finds: its level and the characters
// flagged. Every fix must apply, and take the finding away.
func check(t testing.TB, rule, more, body string) []string {
	t.Helper()
	report := run(t, more, body)
	found := []string{}
	for _, f := range report.Findings {
		if f.Rule.Name != rule {
			continue
		}
		found = append(found, fmt.Sprintf("%s %s", f.Level, f.At.File.Text.Slice(f.At.Span)))
		for _, fix := range f.Repairs() {
			text, err := schema.Apply(f.At.File.Text.String(), fix.Edits)
			require.NoError(t, err, fix.Title)
			after := runText(t, more, text)
			require.Less(t, count(after, rule), count(report, rule), "%s: %s", rule, fix.Title)
			require.LessOrEqual(t, musts(after), musts(report), "%s: %s", rule, fix.Title)
		}
	}
	return found
}

func run(t testing.TB, more, body string) *lint.Report {
	t.Helper()
	return runText(t, more, "recipe \"try\" {\n"+body+"\n}\n")
}

// fingerprint is the code of a recipe with this body.
func fingerprint(t testing.TB, more, body string) string {
	t.Helper()
	shop := lint.NewShop(".", []*schema.File{schema.Read("more.candle.hcl", []byte(more)), schema.Read("stock.candle.hcl", []byte(stock)), schema.Read("try.candle.hcl", []byte("recipe \"try\" {\n"+body+"\n}\n"))})
	f := formula.Of.In(lint.NewView(shop, shop.Find("recipe", "try"), today))
	require.True(t, f.Known())
	return f.Code
}

func runText(t testing.TB, more, recipe string) *lint.Report {
	t.Helper()
	files := []*schema.File{schema.Read("more.candle.hcl", []byte(more)), schema.Read("stock.candle.hcl", []byte(stock)), schema.Read("try.candle.hcl", []byte(recipe))}
	report := lint.Run(lint.NewShop(".", files), vessel.Rules(), today)
	require.Empty(t, report.Faults)
	return report
}

func count(r *lint.Report, rule string) (n int) {
	for _, f := range r.Findings {
		if f.Rule.Name == rule {
			n++
		}
	}
	return n
}

func musts(r *lint.Report) (n int) {
	for _, f := range r.Findings {
		if f.Level == lint.Must {
			n++
		}
	}
	return n
}

// message is what a rule says first, and titles what its fixes are called.
func message(r *lint.Report, rule string) string {
	for _, f := range r.Findings {
		if f.Rule.Name == rule {
			return f.Message
		}
	}
	return ""
}

func titles(r *lint.Report, rule string) []string {
	found := []string{}
	for _, f := range r.Findings {
		if f.Rule.Name == rule {
			for _, fix := range f.Repairs() {
				found = append(found, fix.Title)
			}
		}
	}
	return found
}

// needs are the attributes that a rule waits for.
func needs(r *lint.Report, rule string) []string {
	found := []string{}
	for _, u := range r.Unchecked {
		if slices.Contains(u.Rules, rule) {
			found = append(found, u.Needs)
		}
	}
	return found
}

func wax(key, weight string) string {
	return "  wax \"" + key + "\" {\n    weight = \"" + weight + "\"\n  }\n"
}

// in is a vessel of the recipe with the usual wick and further lines.
func in(kind, key string, lines ...string) string {
	return vesselOf(kind, key, append([]string{"wick = \"w75\""}, lines...)...)
}

func vesselOf(kind, key string, lines ...string) string {
	text := "  " + kind + " \"" + key + "\" {\n"
	for _, line := range lines {
		text += "    " + line + "\n"
	}
	return text + "  }\n"
}

func step(kind, line string) string { return "  step \"" + kind + "\" { " + line + " }\n" }

func pour(at string) string { return step("pour", "at = \""+at+"\"") }

func made(what string) string { return "  made_for = \"" + what + "\"\n" }
