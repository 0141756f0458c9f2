package setting_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/setting"
	"wickrule/schema"
)

const (
	scented  = `fragrance "thyme" { load = "5 % of wax" }`
	dyed     = `dye "rust" { weight = "1 g" }`
	perfume  = `step "add fragrance" { stir = "2 min" }`
	addRust  = `step "add dye" { dye = "rust" }`
	unmold   = `step "unmold" { after = "14 h" }`
	addsScnt = `must step "add fragrance"`
)

func steps(all ...string) string { return in(`mold "round" {}`, "quarry", all...) }

// Common practice, all of it: what has to be in the pot before the wax leaves
// it, and what needs a candle that has been poured.
func TestStepsOutOfOrder(t *testing.T) {
	afterMelt := lines(paraffin, `mold "round" {}`, sealed)
	holdTo(t, "steps-out-of-order", []sample{
		{"in order", steps(scented, dyed, addRust, perfume, pour, `step "relief holes" { after = "2 h" }`, second, unmold, `step "cure" { for = "3 d" }`), nil},
		{"nothing but a melt", steps(), nil},

		{"fragrance after the only pour", steps(scented, pour, perfume), []string{addsScnt}},
		{"fragrance into the second pour only", steps(scented, pour, perfume, second), []string{addsScnt}},
		{"fragrance into the second pour only, melted again", steps(scented, pour, melt, perfume, second), []string{addsScnt}},
		{"fragrance into what is left as well", steps(scented, perfume, pour, melt, perfume, second), nil},
		{"fragrance after the second pour", steps(scented, pour, second, perfume), []string{addsScnt}},
		{"a second fragrance after the pour", steps(scented, `fragrance "kelp" { load = "1 % of wax" }`, "step \"add fragrance\" {\n fragrance = \"thyme\"\n stir = \"2 min\"\n}", pour,
			"step \"add fragrance\" {\n fragrance = \"kelp\"\n stir = \"2 min\"\n}", second), []string{addsScnt}},
		{"fragrance before the melt", lines(paraffin, scented, `mold "round" {}`, sealed, perfume, melt, pour), []string{`should step "add fragrance"`}},
		{"dye and hardener in the pot with the cold wax", lines(paraffin, dyed, `additive "hardener" { load = "1 % of wax" }`, `mold "round" {}`, sealed, addRust, `step "add additive" {}`, melt, pour), nil},
		{"dye after the pour", steps(dyed, pour, addRust), []string{`must step "add dye"`}},
		{"dye for a second pour that is melted again", steps(dyed, pour, melt, addRust, second), nil},
		{"dye for the second pour, out of the pot", steps(dyed, pour, addRust, second), []string{`must step "add dye"`}},

		{"layers, each melted and scented", steps(scented, perfume, pour, melt, perfume, pour), nil},
		{"layers out of one pot, darker each time", steps(dyed, pour, addRust, pour), nil},
		{"tapers", lines(`wax "quarry" { weight = "1 kg" }`, dyed, `taper "ten-inch" {}`, melt, `step "dip" { at = "160 °F" }`, addRust, `step "overdip" { at = "165 °F" }`), nil},

		{"poured before the melt", lines(afterMelt, pour, melt), []string{`must step "pour"`}},
		{"dipped before the melt", lines(paraffin, `taper "ten-inch" {}`, `step "dip" { at = "160 °F" }`, melt), []string{`must step "dip"`}},
		{"two pours before the melt: said once", lines(afterMelt, pour, pour, melt), []string{`must step "pour"`}},
		{"no melt at all", lines(afterMelt, pour), []string{`should step "pour"`}},

		{"unmolded before the pour", steps(unmold, pour), []string{`must step "unmold"`}},
		{"relief holes before the pour", steps(`step "relief holes" {}`, pour), []string{`must step "relief holes"`}},
		{"the second pour before the first", steps(second, pour), []string{`must step "second pour"`}},
		{"a second pour alone", steps(second), []string{`must step "second pour"`}},
		{"cured before the pour", steps(`step "cure" { for = "3 d" }`, pour), []string{`must step "cure"`}},
		{"the wax cools in the pot before the pour", steps(`step "cool" { to = "176 °F" }`, pour), nil},
		{"tapers are never poured", lines(paraffin, `taper "ten-inch" {}`, melt, `step "dip" { at = "160 °F" }`, `step "cure" { for = "3 d" }`), nil},
		{"a second pour after the unmolding", steps(pour, unmold, second), []string{`must step "second pour"`}},
		{"relief holes after the unmolding", steps(pour, unmold, `step "relief holes" {}`), []string{`must step "relief holes"`}},
		{"the mold is used twice", steps(pour, unmold, sealed, pour, second, unmold), nil},

		{"wicks set after the pour", lines(paraffin, `container "cup" {}`, melt, pour, `step "set wick" { with = "sticker" }`), nil},
		{"wicks set after the unmolding", steps(pour, unmold, `step "set wick" {}`), nil},
		{"wicks cut before they are set", steps(`step "trim wick" { to = "1/4 in" }`, pour), nil},
		{"jars labeled before the pour", lines(paraffin, `container "jar" {}`, `step "attach label" {}`, melt, pour), nil},

		{"the jar is warmed after the pour", lines(paraffin, `container "jar" {}`, melt, pour, `step "warm container" { to = "110 °F" }`), []string{`should step "warm container"`}},
		{"the jar is warmed again for the second pour", lines(paraffin, `container "jar" {}`, melt, pour, `step "warm container" { to = "110 °F" }`, second), nil},
		{"release after the pour", steps(pour, `step "release" {}`), []string{`should step "release"`}},

		{"one mold is emptied before another is filled", in(`mold "round" {}`, "quarry", `mold "pinned" {}`,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}", unmold, "step \"pour\" {\n at = \"176 °F\"\n vessel = \"pinned\"\n}"), nil},
		{"the step names a mold that is never poured into", in(`mold "round" {}`, "quarry", `mold "pinned" {}`,
			"step \"unmold\" {\n after = \"14 h\"\n vessel = \"pinned\"\n}", "step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}"), nil},
		{"the jar is warmed after its pour, and another is poured later", in(`mold "pinned" {}`, "quarry", `container "jar" {}`,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"jar\"\n}", "step \"warm container\" {\n to = \"110 °F\"\n vessel = \"jar\"\n}",
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"pinned\"\n}"), []string{`should step "warm container"`}},
		{"the jar is warmed before its pour, and another was poured before", in(`mold "pinned" {}`, "quarry", `container "jar" {}`,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"pinned\"\n}", "step \"warm container\" {\n to = \"110 °F\"\n vessel = \"jar\"\n}",
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"jar\"\n}"), nil},
		{"embeds go from a mold into a jar", in(`mold "pinned" {}`, "quarry", `container "jar" {}`,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"pinned\"\n}", "step \"unmold\" {\n after = \"2 h\"\n vessel = \"pinned\"\n}", melt, "step \"pour\" {\n at = \"176 °F\"\n vessel = \"jar\"\n}"), nil},
		{"the step names the mold that is not poured yet", in(`mold "round" {}`, "quarry", `mold "pinned" {}`,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}", "step \"unmold\" {\n after = \"14 h\"\n vessel = \"pinned\"\n}", "step \"pour\" {\n at = \"176 °F\"\n vessel = \"pinned\"\n}"), []string{`must step "unmold"`}},
	})
}

func TestIngredientNeverAdded(t *testing.T) {
	named := func(kind, keys string) string {
		return "step \"add " + kind + "\" {\n " + kind + " = " + keys + "\n stir = \"2 min\"\n}"
	}
	kelp := `fragrance "kelp" { load = "1 % of wax" }`
	holdTo(t, "ingredient-never-added", []sample{
		{"added", steps(scented, dyed, addRust, perfume, pour), nil},
		{"never added", steps(scented, dyed, pour), []string{`should fragrance "thyme"`, `should dye "rust"`}},
		{"an additive never added", steps(`additive "hardener" { load = "1 % of wax" }`, pour), []string{`should additive "hardener"`}},
		{"a step that names none adds all", steps(scented, kelp, perfume, pour), nil},
		{"a step that names one of two", steps(scented, kelp, named("fragrance", `"thyme"`), pour), []string{`should fragrance "kelp"`}},
		{"a list of both", steps(scented, kelp, named("fragrance", `["thyme", "kelp"]`), pour), nil},
		{"one by name, and then the rest", steps(scented, kelp, named("fragrance", `"thyme"`), perfume, pour), nil},
		{"a layer each", steps(scented, perfume, pour, melt, perfume, pour), nil},
		{"the step adds what is not listed", steps(dyed, addRust, named("fragrance", `"kelp"`), pour), []string{`should "kelp"`}},
		{"another than is listed: said once", steps(scented, named("fragrance", `"kelp"`), pour), []string{`should "kelp"`}},
		{"a key that is not in stock, which is another rule", steps(scented, named("fragrance", `"tyme"`), pour), nil},
		{"listed, and not in stock, which is another rule", steps(`fragrance "tyme" { load = "5 % of wax" }`, pour), nil},
		{"no dye to add", steps(`step "add dye" {}`, pour), []string{`should step "add dye"`}},
		{"a list of ingredients and no method yet", lines(paraffin, scented, `mold "round" {}`, sealed), nil},
		{"while it is typed", steps(scented, pour, `step "note" { say = "open`), nil},
	})
}

// Two minutes: common practice.
func TestStirTooShort(t *testing.T) {
	stirred := func(how string) string { return steps(scented, "step \"add fragrance\" { "+how+" }", pour) }
	holdTo(t, "stir-too-short", []sample{
		{"just 2 min", stirred(`stir = "2 min"`), nil},
		{"just 120 s", stirred(`stir = "120 s"`), nil},
		{"119 s", stirred(`stir = "119 s"`), []string{`consider "119 s"`}},
		{"a range that begins below", stirred(`stir = "1 to 3 min"`), []string{`consider "1 to 3 min"`}},
		{"not said", stirred(``), []string{"? step.stir"}},
		{"dye is another matter", steps(dyed, `step "add dye" { stir = "30 s" }`, pour), nil},
	})
}

// The wax's own figure first; for its family common practice.
func TestCureTooShort(t *testing.T) {
	cured := func(wax string, more ...string) string {
		return in(`mold "round" {}`, wax, append([]string{scented, perfume, pour}, more...)...)
	}
	holdTo(t, "cure-too-short", []sample{
		{"just the low end", cured("quarry", `step "cure" { for = "2 d" }`), nil},
		{"just the low end, in hours", cured("quarry", `step "cure" { for = "48 h" }`), nil},
		{"an hour less", cured("quarry", `step "cure" { for = "47 h" }`), []string{`should "47 h"`}},
		{"own use", cured("quarry", `made_for = "own use"`, `step "cure" { for = "47 h" }`), []string{`consider "47 h"`}},
		{"a range that begins below", cured("quarry", `step "cure" { for = "1 to 3 d" }`), []string{`should "1 to 3 d"`}},
		{"two cures add up", cured("quarry", `step "cure" { for = "1 d" }`, `step "cure" { for = "1 d" }`), nil},
		{"none", cured("quarry"), []string{`should mold "round"`}},
		{"beeswax can do without", cured("hive"), nil},
		{"the family's figure", cured("silent", `step "cure" { for = "23 h" }`), []string{`should "23 h"`}},
		{"nothing is known of the wax", cured("nameless", `step "cure" { for = "23 h" }`), []string{"? wax.cure"}},
		{"not said for how long", cured("quarry", `step "cure" {}`), []string{"? step.for"}},
		{"unscented", steps(pour), nil},
	})
}

// 3 to 10 mm, and a sixteenth of an inch either side of a maker's single
// figure: common practice. 1/4 in is 6.35 mm.
func TestWickUntrimmed(t *testing.T) {
	trimmed := func(wick, to string) string {
		return lines(paraffin, `mold "round" { wick = "`+wick+`" }`, sealed, melt, pour, `step "trim wick" { `+to+` }`)
	}
	holdTo(t, "wick-untrimmed", []sample{
		{"the maker's figure", trimmed("braid", `to = "1/4 in"`), nil},
		{"6 mm is as good", trimmed("braid", `to = "6 mm"`), nil},
		{"just a sixteenth of an inch more", trimmed("braid", `to = "5/16 in"`), nil},
		{"and less", trimmed("braid", `to = "3/16 in"`), nil},
		{"over", trimmed("braid", `to = "8 mm"`), []string{`should "8 mm"`}},
		{"under", trimmed("braid", `to = "4.7 mm"`), []string{`should "4.7 mm"`}},
		{"a maker's range holds exactly", trimmed("ranged", `to = "6 mm"`), nil},
		{"over a maker's range", trimmed("ranged", `to = "1/4 in"`), []string{`should "1/4 in"`}},
		{"no figure: just 10 mm", trimmed("untold", `to = "10 mm"`), nil},
		{"no figure: over 10 mm", trimmed("untold", `to = "7/16 in"`), []string{`should "7/16 in"`}},
		{"no figure: just 3 mm", trimmed("untold", `to = "3 mm"`), nil},
		{"a range that ends over", trimmed("untold", `to = "5 to 12 mm"`), []string{`should "5 to 12 mm"`}},
		{"not said", trimmed("braid", ``), []string{"? step.to"}},
		{"the last trim counts", lines(trimmed("braid", `to = "1 in"`), `step "trim wick" { to = "1/4 in" }`), nil},
		{"never", lines(paraffin, `mold "round" { wick = "braid" }`, sealed, melt, pour), []string{`should mold "round"`}},
		{"no wick is said, which is another rule", lines(paraffin, `mold "round" {}`, sealed, melt, pour), nil},
		{"an unknown wick", lines(paraffin, `mold "round" { wick = "nowhere" }`, sealed, melt, pour), nil},
		{"a tealight", lines(paraffin, `container "cup" { wick = "braid" }`, melt, pour), nil},
		{"a taper", lines(paraffin, `taper "ten-inch" { wick = "braid" }`, melt, `step "dip" { at = "160 °F" }`), nil},
		{"a votive whose wick comes cut", lines(`makes = "votive"`, paraffin, `mold "slim" { wick = "tabbed" }`, sealed, melt, pour), nil},
		{"a votive whose wick may come cut", lines(`makes = "votive"`, paraffin, `mold "slim" { wick = "braid" }`, sealed, melt, pour), []string{"? wick.tab"}},
		{"a jar beside tealights", lines(paraffin, `container "cup" { wick = "braid" }`, `container "jar" { wick = "braid" }`, melt, pour), []string{`should container "jar"`}},
	})
}

// mendedKinds are the kinds of step of a recipe, in order, once the first fix
// of each finding of a rule has been made, until it finds nothing more.
func mendedKinds(t *testing.T, body string, rule *lint.Rule) (kinds []string, text string) {
	t.Helper()
	text = "recipe \"it\" {\n" + body + "\n}\n"
	for range 8 {
		f := schema.Read("recipe.candle.hcl", []byte(text))
		require.True(t, f.Clean, text)
		shop := lint.NewShop(".", []*schema.File{schema.Read("shelf.candle.hcl", []byte(shelf)), f})
		r := lint.Run(shop, []*lint.Rule{rule}, today)
		if len(r.Findings) == 0 {
			kinds = nil
			for step := range f.Blocks[0].Each("step") {
				kinds = append(kinds, step.Label)
			}
			return kinds, text
		}
		fixes := r.Findings[0].Repairs()
		require.NotEmpty(t, fixes, r.Findings[0].Message)
		var err error
		text, err = schema.Apply(text, fixes[0].Edits)
		require.NoError(t, err)
	}
	t.Fatal("it is never put right")
	return nil, ""
}

func TestStepsAreMovedIntoOrder(t *testing.T) {
	last := `step "attach label" {}`
	for _, c := range []struct {
		name, body string
		want       []string
	}{
		{"fragrance to the pour", steps(scented, pour, perfume, last), []string{"seal wick hole", "melt", "add fragrance", "pour", "attach label"}},
		{"dye to the first pour out of the same pot", steps(dyed, pour, pour, addRust, last), []string{"seal wick hole", "melt", "add dye", "pour", "pour", "attach label"}},
		{"dye to the last melt's pour", steps(dyed, pour, melt, pour, addRust, last), []string{"seal wick hole", "melt", "pour", "melt", "add dye", "pour", "attach label"}},
		{"fragrance behind the melt", lines(paraffin, scented, `mold "round" {}`, sealed, perfume, melt, pour), []string{"seal wick hole", "melt", "add fragrance", "pour"}},
		{"the melt to the pour", lines(paraffin, `mold "round" {}`, sealed, pour, melt), []string{"seal wick hole", "melt", "pour"}},
		{"unmolding behind the second pour", steps(unmold, pour, second, last), []string{"seal wick hole", "melt", "pour", "second pour", "unmold", "attach label"}},
		{"the cure behind the unmolding", steps(`step "cure" { for = "3 d" }`, pour, second, unmold, last), []string{"seal wick hole", "melt", "pour", "second pour", "unmold", "cure", "attach label"}},
		{"the second pour behind the first", steps(second, pour, last), []string{"seal wick hole", "melt", "pour", "second pour", "attach label"}},
		{"the second pour before the unmolding", steps(pour, unmold, second), []string{"seal wick hole", "melt", "pour", "second pour", "unmold"}},
		{"release to the pour", steps(pour, `step "release" {}`), []string{"seal wick hole", "melt", "release", "pour"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			kinds, _ := mendedKinds(t, c.body, setting.StepsOutOfOrder)
			assert.Equal(t, c.want, kinds)
		})
	}
	kinds, _ := mendedKinds(t, steps(pour, sealed), setting.WickHoleSealedLate)
	assert.Equal(t, []string{"seal wick hole", "melt", "pour", "seal wick hole"}, kinds)
	kinds, _ = mendedKinds(t, lines(paraffin, `mold "round" {}`, melt, pour, sealed), setting.WickHoleSealedLate)
	assert.Equal(t, []string{"melt", "seal wick hole", "pour"}, kinds)
}

// Fragrance is added at the top of its range, never hotter than the melt, and
// where the two do not meet the step says nothing of it.
func TestTheStepThatAdds(t *testing.T) {
	atOnce := func(melt string) string {
		return lines(paraffin, scented, `mold "round" {}`, sealed, `step "melt" { to = "`+melt+`" }`, pour)
	}
	for _, c := range []struct{ name, body, want string }{
		{"the top of its range", atOnce("190 °F"), "step \"add fragrance\" {\n  fragrance = \"thyme\"\n  at        = \"188 °F\"\n  stir      = \"2 min\"\n}"},
		{"the melt is cooler", atOnce("186 °F"), "step \"add fragrance\" {\n  fragrance = \"thyme\"\n  at        = \"186 °F\"\n  stir      = \"2 min\"\n}"},
		{"in the melt's scale, rounded down: 188 °F is 86.7 °C", atOnce("88 °C"), "step \"add fragrance\" {\n  fragrance = \"thyme\"\n  at        = \"86 °C\"\n  stir      = \"2 min\"\n}"},
		{"the melt is too cool for it", atOnce("170 °F"), "step \"add fragrance\" {\n  fragrance = \"thyme\"\n  stir      = \"2 min\"\n}"},
		{"dye", steps(dyed, pour), "step \"add dye\" { dye = \"rust\" }"},
	} {
		t.Run(c.name, func(t *testing.T) {
			kinds, text := mendedKinds(t, c.body, setting.IngredientNeverAdded)
			assert.Contains(t, text, c.want)
			assert.Equal(t, []string{"seal wick hole", "melt", kinds[2], "pour"}, kinds)
		})
	}
	_, text := mendedKinds(t, steps(scented, "step \"add fragrance\" {\n fragrance = \"kelp\"\n}", pour), setting.IngredientNeverAdded)
	assert.Contains(t, text, "fragrance = \"thyme\"")
	kinds, _ := mendedKinds(t, steps(`step "add dye" {}`, pour), setting.IngredientNeverAdded)
	assert.Equal(t, []string{"seal wick hole", "melt", "pour"}, kinds)
}
