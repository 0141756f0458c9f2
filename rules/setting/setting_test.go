package setting_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules/setting"
	"wickrule/schema"
)

const today = "2026-10-20"

// shelf is the stock of the shops in these tests.
const shelf = `
wax "quarry" {
  title            = "Quarry paraffin"
  family           = "paraffin"
  suits            = ["pillar"]
  melt_to          = "180 to 190 °F"
  pour_at          = "168 to 182 °F"
  add_fragrance_at = "175 to 188 °F"
  never_above      = "240 °F"
  flash_point      = "450 °F"
  congeals_at      = "140 °F"
  density          = "0.90 g/mL"
  shrinkage        = "12 %"
  cure             = "2 to 3 d"
}
wax "once" {
  title     = "Quarry, one pour"
  family    = "paraffin"
  suits     = ["pillar"]
  shrinkage = "12 %"
  one_pour  = true
}
wax "hive" {
  title     = "Hive wax"
  family    = "beeswax"
  shrinkage = "11 %"
}
wax "rock" {
  title     = "Rock wax"
  family    = "paraffin"
  suits     = ["pillar"]
  shrinkage = "6 %"
}
wax "silent" {
  title  = "Silent paraffin"
  family = "paraffin"
  suits  = ["pillar"]
}
wax "nameless" {
  title = "Left-over wax"
}
fragrance "thyme" {
  title = "Thyme"
}
fragrance "kelp" {
  title = "Kelp"
}
dye "rust" {
  title = "Rust"
}
dye "chalk" {
  title = "Chalk"
}
additive "hardener" {
  title = "Hardener"
}
mold "round" {
  title     = "Round mold"
  shape     = "cylinder"
  diameter  = "3 in"
  height    = "6 in"
  wick_hole = true
}
mold "slim" {
  title     = "Slim mold"
  shape     = "cylinder"
  diameter  = "40 mm"
  height    = "60 mm"
  wick_hole = true
}
mold "fifty" {
  title     = "Fifty mold"
  shape     = "cylinder"
  diameter  = "50 mm"
  height    = "61 mm"
  wick_hole = true
}
mold "pinned" {
  title     = "Pinned mold"
  shape     = "cylinder"
  diameter  = "3 in"
  height    = "6 in"
  wick_hole = false
  material  = "silicone"
}
mold "unsaid" {
  title    = "Unsaid mold"
  shape    = "cylinder"
  diameter = "3 in"
  height   = "6 in"
}
mold "broken" {
  title     = "Broken mold"
  shape     = "cylinder"
  diameter  = "3 in"
  height    = "6 in"
  wick_hole = "perhaps"
}
mold "melts" {
  title  = "Melt tray"
  makes  = "melt"
  shape  = "other"
  height = "1 in"
  holds  = "100 mL"
}
container "jar" {
  title    = "Jar"
  kind     = "jar"
  diameter = "3 in"
  height   = "4 in"
  holds    = "300 mL"
}
container "cup" {
  title    = "Cup"
  kind     = "tealight cup"
  diameter = "1.5 in"
  height   = "0.6 in"
  holds    = "15 mL"
}
taper "ten-inch" {
  title    = "Ten-inch"
  diameter = "7/8 in"
  length   = "10 in"
}
wick "braid" {
  title = "Braid"
  trim  = "1/4 in"
}
wick "ranged" {
  title = "Ranged braid"
  trim  = "4 to 6 mm"
}
wick "untold" {
  title = "Untold braid"
}
wick "tabbed" {
  title = "Tabbed"
  tab   = true
}
seal "plug" {
  title    = "Plug"
  kind     = "plug"
  holds_to = "350 °F"
}
seal "putty" {
  title    = "Putty"
  kind     = "putty"
  holds_to = "180 °F"
}
seal "unrated-putty" {
  title = "Unrated putty"
  kind  = "putty"
}
seal "screw" {
  title = "Screw"
  kind  = "screw"
}
seal "glue" {
  title = "Glue"
  kind  = "hot-melt glue"
}
seal "cool-glue" {
  title    = "Cool glue"
  kind     = "hot-melt glue"
  holds_to = "50 °C"
}
seal "sticker" {
  title    = "Sticker"
  kind     = "sticker"
  holds_to = "220 °F"
}
seal "masking" {
  title = "Masking tape"
  kind  = "tape"
}
seal "foil" {
  title = "Foil tape"
  kind  = "tape"
}
seal "rated-masking" {
  title    = "Masking tape for ovens"
  kind     = "tape"
  holds_to = "300 °F"
}
`

// report checks a recipe, whose body is given, against this group's rules.
// More is laid over the shop in a file of its own.
func report(t *testing.T, body string, more ...string) *lint.Report {
	t.Helper()
	files := []*schema.File{
		schema.Read("shelf.candle.hcl", []byte(shelf)),
		schema.Read("recipe.candle.hcl", []byte("recipe \"it\" {\n  title = \"It\"\n"+body+"\n}\n")),
	}
	for _, text := range more {
		files = append(files, schema.Read("more.candle.hcl", []byte(text)))
	}
	r := lint.Run(lint.NewShop(".", files), setting.Rules(), today)
	require.Empty(t, r.Faults)
	return r
}

// said is what one rule says: "must "the flagged text"" for each finding, and
// "? wax.trim" for each attribute it waits for.
func said(r *lint.Report, rule string) []string {
	var all []string
	for _, f := range r.Findings {
		if f.Rule.Name == rule {
			all = append(all, f.Level.String()+" "+f.At.File.Text.Slice(f.At.Span))
		}
	}
	for _, u := range r.Unchecked {
		if slices.Contains(u.Rules, rule) {
			all = append(all, "? "+u.Needs)
		}
	}
	return all
}

// sample is one recipe and what a rule says of it.
type sample struct {
	name string
	body string
	want []string
}

func holdTo(t *testing.T, rule string, samples []sample, more ...string) {
	t.Helper()
	for _, s := range samples {
		t.Run(s.name, func(t *testing.T) {
			assert.Equal(t, s.want, said(report(t, s.body, more...), rule))
		})
	}
}

// lines joins steps and blocks.
func lines(parts ...string) string { return strings.Join(parts, "\n") }

// None of these rules has anything to say of the sound recipes of the demo
// shop, at any level, and none waits for an attribute there.
func TestTheDemoShopIsSound(t *testing.T) {
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	r := lint.Run(shop, setting.Rules(), today)
	require.Empty(t, r.Faults)
	for _, f := range r.Findings {
		t.Errorf("%s: %s: %s", f.At.File.Name, f.Rule.Name, f.Message)
	}
	for _, u := range r.Unchecked {
		t.Errorf("%s: %s", u.At.File.Name, u.Message)
	}
}

// What is said names the subject, what was found, what is allowed and the
// difference, in the maker's own units.
func TestMessages(t *testing.T) {
	for _, c := range []struct{ body, want string }{
		{lines(paraffin, `mold "round" {}`, melt, pour),
			"nothing seals the wick hole of Round mold: wax at 176 °F (80 °C) runs out of it over the bench. Seal it before the pour"},
		{lines(paraffin, `mold "round" {}`, melt, pour, sealed),
			"the wick hole of Round mold is sealed in step 3, after the pour in step 2: by then the wax has run out over the bench"},
		{poured(`"cool-glue"`, `step "pour" { at = "80 °C" }`),
			"Cool glue holds to 50 °C (122 °F): the pour at 80 °C (176 °F) is 30 °C over that. A seal that softens lets the mold drain over the bench"},
		{poured(`"glue"`, `step "pour" { at = "170 to 176 °F" }`),
			"Glue states no holds_to, and such a seal counts as holding to 140 °F (60 °C) (common practice): the pour at 176 °F (80 °C), the end of 170 to 176 °F, is 36 °F over that. " +
				"A seal that softens lets the mold drain over the bench"},
		{two("176 °F", "170 °F"),
			"the second pour at 170 °F (76.7 °C) is 6 °F cooler than the first at 176 °F (80 °C): it does not melt into it, and a seam stays. " +
				"Common practice is 5 to 10 °F (3 to 6 °C) hotter, within what the wax, the seal and the mold bear"},
		{in(`mold "round" {}`, "quarry", scented, perfume, pour, `step "cure" { for = "1 d" }`),
			"a cure of 1 d is 1 d short: Quarry paraffin takes 2 to 3 d"},
	} {
		var all []string
		for _, f := range report(t, c.body).Findings {
			all = append(all, f.Message)
		}
		assert.Contains(t, all, c.want)
	}
}
