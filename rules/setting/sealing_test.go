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
	paraffin = `wax "quarry" { weight = "1 kg" }`
	melt     = `step "melt" { to = "186 °F" }`
	pour     = `step "pour" { at = "176 °F" }`
	sealed   = `step "seal wick hole" { with = "plug" }`
)

// A mold's hole is open until something closes it: common practice.
func TestWickHoleUnsealed(t *testing.T) {
	holdTo(t, "wick-hole-unsealed", []sample{
		{"sealed", lines(paraffin, `mold "round" {}`, sealed, melt, pour), nil},
		{"not sealed", lines(paraffin, `mold "round" {}`, melt, pour), []string{`must mold "round"`}},
		{"no steps written for it at all", lines(paraffin, `mold "round" {}`), []string{`must mold "round"`}},
		{"a wick pin or a slit fills it", lines(paraffin, `mold "pinned" {}`, melt, pour), nil},
		{"the stock does not say", lines(paraffin, `mold "unsaid" {}`, melt, pour), []string{"? mold.wick_hole"}},
		{"the stock does not say, and it is sealed", lines(paraffin, `mold "unsaid" {}`, sealed, melt, pour), nil},
		{"a tray for melts", lines(paraffin, `mold "melts" {}`, melt, pour), nil},
		{"a jar", lines(paraffin, `container "jar" {}`, melt, pour), nil},
		{"a taper", lines(paraffin, `taper "ten-inch" {}`, melt, `step "dip" { at = "160 °F" }`), nil},
		{"whether there is a hole cannot be read, which is another rule", lines(paraffin, `mold "broken" {}`, melt, pour), nil},
		{"foil tape is not masking tape", lines(paraffin, `mold "round" {}`, `step "seal wick hole" { with = "foil" }`, melt, pour), nil},
		{"a tray for melts that has a hole", lines(`makes = "melt"`, paraffin, `mold "round" {}`, melt, pour), []string{`must mold "round"`}},
		{"unknown mold", lines(paraffin, `mold "nowhere" {}`, melt, pour), nil},
		{"two molds, the step names one", lines(paraffin, `mold "round" {}`, `mold "slim" {}`,
			"step \"seal wick hole\" {\n with = \"plug\"\n vessel = \"round\"\n}", melt, pour), []string{`must mold "slim"`}},
		{"two molds, the step names none", lines(paraffin, `mold "round" {}`, `mold "slim" {}`, sealed, melt, pour), nil},
		{"a step each", lines(paraffin, `mold "round" {}`, `mold "slim" {}`,
			"step \"seal wick hole\" {\n with = \"plug\"\n vessel = \"round\"\n}", "step \"seal wick hole\" {\n with = \"plug\"\n vessel = \"slim\"\n}", melt, pour), nil},
		{"the step names a vessel the recipe does not have", lines(paraffin, `mold "round" {}`,
			"step \"seal wick hole\" {\n with = \"plug\"\n vessel = \"slim\"\n}", melt, pour), nil},
		{"sealed with something unknown", lines(paraffin, `mold "round" {}`, `step "seal wick hole" { with = "chewing-gum" }`, melt, pour), nil},
		{"sealed with something not said", lines(paraffin, `mold "round" {}`, `step "seal wick hole" {}`, melt, pour), nil},
		{"masking tape", lines(paraffin, `mold "round" {}`, `step "seal wick hole" { with = "masking" }`, melt, pour), []string{`must "masking"`}},
		{"masking tape that its maker rates", lines(paraffin, `mold "round" {}`, `step "seal wick hole" { with = "rated-masking" }`, melt, pour), nil},
		{"masking tape, and then a plug", lines(paraffin, `mold "round" {}`, `step "seal wick hole" { with = "masking" }`, sealed, melt, pour), nil},
		{"sealed late is another rule", lines(paraffin, `mold "round" {}`, melt, pour, sealed), nil},
		{"the second pour is the first wax it sees", lines(paraffin, `mold "round" {}`, melt, sealed, `step "second pour" { at = "176 °F" }`), nil},
		{"own use", lines(`made_for = "own use"`, paraffin, `mold "round" {}`, melt, pour), []string{`must mold "round"`}},
		{"class", lines(`made_for = "class"`, paraffin, `mold "round" {}`, melt, pour), []string{`must mold "round"`}},
	})
}

// While the text does not parse whole, the step may only be not typed yet.
func TestUnsealedIsSilentWhileTyping(t *testing.T) {
	r := report(t, lines(paraffin, `mold "round" {}`, melt, pour, `step "seal wick hole" { with = "plu`))
	assert.Empty(t, said(r, "wick-hole-unsealed"))
}

// One finding for one hole: sealed late, or not sealed.
func TestWickHoleSealedLate(t *testing.T) {
	layered := lines(melt, pour, melt, pour)
	holdTo(t, "wick-hole-sealed-late", []sample{
		{"before the pour", lines(paraffin, `mold "round" {}`, melt, sealed, pour), nil},
		{"after the pour", lines(paraffin, `mold "round" {}`, melt, pour, sealed), []string{`must step "seal wick hole"`}},
		{"twice after the pour: said once", lines(paraffin, `mold "round" {}`, melt, pour, sealed, sealed), []string{`must step "seal wick hole"`}},
		{"between layers", lines(paraffin, `mold "round" {}`, melt, pour, sealed, melt, pour), []string{`must step "seal wick hole"`}},
		{"before all layers", lines(paraffin, `mold "round" {}`, sealed, layered), nil},
		{"pressed on again", lines(paraffin, `mold "round" {}`, sealed, melt, pour, sealed), nil},
		{"whether there is a hole cannot be read", lines(paraffin, `mold "broken" {}`, melt, pour, sealed), nil},
		{"no hole", lines(paraffin, `mold "pinned" {}`, melt, pour, sealed), nil},
		{"that it is sealed says that there is a hole", lines(paraffin, `mold "unsaid" {}`, melt, pour, sealed), []string{`must step "seal wick hole"`}},
		{"one mold after another", lines(paraffin, `mold "round" {}`, `mold "slim" {}`,
			"step \"seal wick hole\" {\n with = \"plug\"\n vessel = \"round\"\n}", melt, "step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}",
			"step \"seal wick hole\" {\n with = \"plug\"\n vessel = \"slim\"\n}", "step \"pour\" {\n at = \"176 °F\"\n vessel = \"slim\"\n}"), nil},
		{"the other mold's pour comes first", lines(paraffin, `mold "round" {}`, `mold "slim" {}`, melt,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}", sealed, "step \"pour\" {\n at = \"176 °F\"\n vessel = \"slim\"\n}"), []string{`must step "seal wick hole"`}},
	})
	holdTo(t, "wick-hole-unsealed", []sample{
		{"late for one, too late for none", lines(paraffin, `mold "round" {}`, `mold "slim" {}`, melt,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}", sealed, "step \"pour\" {\n at = \"176 °F\"\n vessel = \"slim\"\n}"), nil},
	})
}

func poured(seal string, pours ...string) string {
	return lines(append([]string{paraffin, `mold "round" {}`, `step "seal wick hole" { with = ` + seal + ` }`, melt}, pours...)...)
}

// What a seal's maker states includes its end. Unrated hot-melt glue counts as
// 60 °C (140 °F): common practice.
func TestSealTooWeak(t *testing.T) {
	second := `step "second pour" { at = "182 °F" }`
	holdTo(t, "seal-too-weak", []sample{
		{"holds", poured(`"plug"`, pour, second), nil},
		{"just the limit", poured(`"putty"`, `step "pour" { at = "180 °F" }`), nil},
		{"a tenth of a degree over", poured(`"putty"`, `step "pour" { at = "180.1 °F" }`), []string{`must "putty"`}},
		{"over, in the other scale: 83 °C is 181.4 °F", poured(`"putty"`, `step "pour" { at = "83 °C" }`), []string{`must "putty"`}},
		{"a range that reaches over", poured(`"putty"`, `step "pour" { at = "176 to 182 °F" }`), []string{`must "putty"`}},
		{"the second pour only", poured(`"putty"`, pour, second), []string{`should "putty"`}},
		{"the second layer only", poured(`"putty"`, pour, melt, `step "pour" { at = "182 °F" }`), []string{`should "putty"`}},
		{"both pours: said once, as the first", poured(`"putty"`, `step "pour" { at = "181 °F" }`, second), []string{`must "putty"`}},
		{"the weakest of a list", poured(`["plug", "cool-glue", "putty"]`, `step "pour" { at = "182 °F" }`), []string{`must "cool-glue"`}},
		{"a metal screw in putty: the putty governs", poured(`["screw", "putty"]`, pour), nil},
		{"a screw by itself", poured(`"screw"`, pour), []string{"? seal.holds_to"}},
		{"unrated putty", poured(`"unrated-putty"`, pour), []string{"? seal.holds_to"}},
		{"unrated putty in a list", poured(`["plug", "unrated-putty"]`, pour), []string{"? seal.holds_to"}},
		{"unrated glue", poured(`"glue"`, pour), []string{`should "glue"`}},
		{"unrated glue, just 60 °C", poured(`"glue"`, `step "pour" { at = "60 °C" }`), nil},
		{"unrated glue, just 140 °F", poured(`"glue"`, `step "pour" { at = "140 °F" }`), nil},
		{"masking tape is not sealed at all, which is another rule", poured(`"masking"`, pour), nil},
		{"masking tape beside putty is the weakest", poured(`["putty", "masking"]`, pour), []string{`should "masking"`}},
		{"a stated limit weighs more than a usual one", poured(`["glue", "cool-glue"]`, pour), []string{`must "cool-glue"`}},
		{"unknown seal", poured(`"chewing-gum"`, pour), nil},
		{"unknown seal beside a weak one", poured(`["chewing-gum", "cool-glue"]`, pour), []string{`must "cool-glue"`}},
		{"the step does not say with what", lines(paraffin, `mold "round" {}`, `step "seal wick hole" {}`, melt, pour), []string{"? step.with"}},
		{"the pour does not say how hot, which is another rule", poured(`"cool-glue"`, `step "pour" {}`), nil},
		{"the mold has no hole", lines(paraffin, `mold "pinned" {}`, `step "seal wick hole" { with = "cool-glue" }`, melt, pour), nil},
		{"the hot pour is into a jar", lines(paraffin, `mold "round" {}`, `container "jar" {}`, `step "seal wick hole" { with = "putty" }`, melt,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}", "step \"pour\" {\n at = \"190 °F\"\n vessel = \"jar\"\n}"), nil},
		{"the hot pour is into the mold sealed with something else", lines(paraffin, `mold "round" {}`, `mold "slim" {}`,
			"step \"seal wick hole\" {\n with = \"putty\"\n vessel = \"round\"\n}", "step \"seal wick hole\" {\n with = \"plug\"\n vessel = \"slim\"\n}", melt,
			"step \"pour\" {\n at = \"176 °F\"\n vessel = \"round\"\n}", "step \"pour\" {\n at = \"190 °F\"\n vessel = \"slim\"\n}"), nil},
	})
}

// Glue under a wick's tab lets the wick float: worth putting right, and no
// flood over the bench.
func TestTheTabsGlue(t *testing.T) {
	jar := func(with, more string) string {
		return lines(paraffin, `container "jar" {}`, `step "set wick" { with = `+with+` }`, melt, more)
	}
	holdTo(t, "seal-too-weak", []sample{
		{"holds", jar(`"sticker"`, pour), nil},
		{"does not", jar(`"cool-glue"`, pour), []string{`should "cool-glue"`}},
		{"unrated glue: usual in the trade", jar(`"glue"`, `step "pour" { at = "150 °F" }`), []string{`consider "glue"`}},
		{"set into poured wax", lines(paraffin, `container "jar" {}`, melt, pour, `step "set wick" { with = "cool-glue" }`), nil},
		{"held by nothing", lines(paraffin, `container "jar" {}`, `step "set wick" {}`, melt, pour), nil},
	})
}

func trial(outcome, upTo string) string {
	return "trial \"ours\" {\n question = \"Does it hold?\"\n date = \"2026-09-12\"\n tried = \"glue\"\n " + upTo + "\n outcome = \"" + outcome + "\"\n}\n"
}

// A trial quietens what is only usual, never what a maker states.
func TestTrialsOfASeal(t *testing.T) {
	weak := poured(`"glue"`, pour, `step "second pour" { at = "182 °F" }`)
	for _, c := range []struct {
		name, trials string
		want         string
	}{
		{"held at the hottest pour", trial("held", `up_to = "182 °F"`), `consider "glue"`},
		{"held, but not as hot as the second pour", trial("held", `up_to = "180 °F"`), `should "glue"`},
		{"held, and nothing says how hot", trial("held", ``), `should "glue"`},
		{"failed", trial("failed", `up_to = "182 °F"`), `should "glue"`},
		{"still open", trial("open", `up_to = "190 °F"`), `should "glue"`},
		{"held once and wept another time", trial("held", `up_to = "190 °F"`) + "trial \"theirs\" {\n question = \"And again?\"\n tried = \"glue\"\n up_to = \"170 °F\"\n outcome = \"mixed\"\n}\n", `should "glue"`},
		{"wept only where it was hotter than here", trial("held", `up_to = "183 °F"`) + "trial \"theirs\" {\n question = \"And again?\"\n tried = \"glue\"\n up_to = \"200 °F\"\n outcome = \"failed\"\n}\n", `consider "glue"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, []string{c.want}, said(report(t, weak, c.trials), "seal-too-weak"))
		})
	}
	stated := "trial \"ours\" {\n question = \"Does it hold?\"\n tried = \"putty\"\n up_to = \"200 °F\"\n outcome = \"held\"\n}\n"
	assert.Equal(t, []string{`must "putty"`}, said(report(t, poured(`"putty"`, `step "pour" { at = "181 °F" }`), stated), "seal-too-weak"))
}

// Only seals whose maker states that they hold the hottest pour are offered,
// the strongest first, and tab stickers and glue not at all.
func TestSealsOffered(t *testing.T) {
	for _, c := range []struct {
		name, body string
		want       []string
	}{
		{"below every limit", lines(paraffin, `mold "round" {}`, melt, `step "pour" { at = "170 °F" }`),
			[]string{"seal the wick hole with plug", "seal the wick hole with putty"}},
		{"just the putty's limit", lines(paraffin, `mold "round" {}`, melt, `step "pour" { at = "180 °F" }`),
			[]string{"seal the wick hole with plug", "seal the wick hole with putty"}},
		{"the second pour is over the putty's limit", lines(paraffin, `mold "round" {}`, melt, pour, `step "second pour" { at = "182 °F" }`),
			[]string{"seal the wick hole with plug"}},
		{"too hot for any, and nothing is raised", lines(paraffin, `mold "round" {}`, melt, `step "pour" { at = "360 °F" }`), nil},
		{"the pour says nothing: the top of the wax's own range", lines(paraffin, `mold "round" {}`, melt, `step "pour" {}`),
			[]string{"seal the wick hole with plug"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.want, titles(report(t, c.body), setting.WickHoleUnsealed))
		})
	}
}

// Where no seal holds every pour, those that hold the first are better than an
// open hole.
func TestASealForTheFirstPour(t *testing.T) {
	body := lines(paraffin, `mold "round" {}`, melt, `step "pour" { at = "340 °F" }`, `step "second pour" { at = "360 °F" }`)
	assert.Equal(t, []string{"seal the wick hole with plug"}, titles(report(t, body), setting.WickHoleUnsealed))
}

// A swap takes the place of the item, or of the whole list where another of it
// is too weak as well or the one put in is in it already.
func TestSwappingASeal(t *testing.T) {
	for _, c := range []struct{ name, with, at, title, becomes string }{
		{"one seal", `"cool-glue"`, "182 °F", "seal the wick hole with plug", `with = "plug" }`},
		{"one of a list", `["rated-masking", "cool-glue"]`, "182 °F", "seal the wick hole with plug in place of cool-glue", `with = ["rated-masking", "plug"] }`},
		{"in the list already", `["plug", "cool-glue"]`, "182 °F", "seal the wick hole with plug", `with = "plug" }`},
		{"another is too weak as well", `["putty", "cool-glue"]`, "182 °F", "seal the wick hole with plug", `with = "plug" }`},
		{"another is masking tape", `["masking", "cool-glue"]`, "182 °F", "seal the wick hole with plug", `with = "plug" }`},
		{"another is not known", `["chewing-gum", "cool-glue"]`, "182 °F", "seal the wick hole with plug", `with = "plug" }`},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := report(t, poured(c.with, `step "pour" { at = "`+c.at+`" }`))
			for _, f := range r.Findings {
				if f.Rule != setting.SealTooWeak {
					continue
				}
				fixes := f.Repairs()
				require.Len(t, fixes, 1)
				assert.Equal(t, c.title, fixes[0].Title)
				text, err := schema.Apply(f.At.File.Text.String(), fixes[0].Edits)
				require.NoError(t, err)
				assert.Contains(t, text, c.becomes)
				return
			}
			t.Error("nothing found")
		})
	}
	jar := lines(paraffin, `container "jar" {}`, `step "set wick" { with = "cool-glue" }`, melt, pour)
	assert.Equal(t, []string{"hold the wick's tab with sticker", "hold the wick's tab with putty"}, titles(report(t, jar), setting.SealTooWeak))
}

// titles are those of all fixes that a rule offers.
func titles(r *lint.Report, rule *lint.Rule) []string {
	var all []string
	for _, f := range r.Findings {
		if f.Rule == rule {
			for _, fix := range f.Repairs() {
				all = append(all, fix.Title)
			}
		}
	}
	return all
}

// A pour that only makes sense in the other scale is that finding and no
// other, where that rule is in force.
func TestAPourInTheWrongScale(t *testing.T) {
	doubtful := &lint.Rule{Name: "temperature-scale-doubtful", Levels: lint.Every(lint.Must), Check: func(*lint.Pass) {}}
	body := func(first, second, more string) string {
		return "recipe \"it\" {\n" + poured(`"putty"`, `step "pour" { at = "`+first+`" }`, `step "second pour" { at = "`+second+`" }`) + more + "\n}\n"
	}
	found := func(rules []*lint.Rule, text string) []string {
		shop := lint.NewShop(".", []*schema.File{schema.Read("shelf.candle.hcl", []byte(shelf)), schema.Read("recipe.candle.hcl", []byte(text))})
		r := lint.Run(shop, rules, today)
		require.Empty(t, r.Faults)
		return append(said(r, "seal-too-weak"), said(r, "second-pour-too-cool")...)
	}
	with := append([]*lint.Rule{doubtful}, setting.Rules()...)
	// What is left is the second pour over what the putty holds.
	assert.Equal(t, []string{`should "putty"`}, found(with, body("176 °C", "182 °F", "")))
	both := []string{`must "putty"`, `should "182 °F"`}
	assert.Equal(t, both, found(setting.Rules(), body("176 °C", "182 °F", "")))
	assert.Equal(t, both, found(with, body("176 °C", "182 °F", "\nconcession \"temperature-scale-doubtful\" { reason = \"Meant\" }")), "conceded: meant as written")

	// 82 °F is colder than where the wax sets, and 82 °C is 180 °F.
	assert.Empty(t, found(with, body("176 °F", "82 °F", "")))
	assert.Equal(t, []string{`should "82 °F"`}, found(setting.Rules(), body("176 °F", "82 °F", "")))
	// 150 °F is cool, and makes sense; 150 °C does not.
	assert.Equal(t, []string{`should "150 °F"`}, found(with, body("176 °F", "150 °F", "")))
	// 60 °F is colder than where the wax sets, and 60 °C does not suit it either.
	assert.Equal(t, []string{`should "60 °F"`}, found(with, body("176 °F", "60 °F", "")))
}
