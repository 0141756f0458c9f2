package heat_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNeverSaid(t *testing.T) {
	assert.Equal(t, []string{`temperature-never-said should step "melt"`, `temperature-never-said should step "pour"`, `temperature-never-said should step "second pour"`},
		check(t, recipeOf("soy", "step \"melt\" { over = \"water bath\" }\n  step \"pour\" {}\n  step \"second pour\" {}\n")))
	assert.Empty(t, check(t, recipeOf("soy", "step \"melt\" { over = \"water bath\" }\n  step \"pour\" {\n")), "half typed")
	assert.NotContains(t, check(t, recipeOf("soy", "step \"pour\" { at = 140 }\n")), `temperature-never-said should step "pour"`, "written, and unreadable")
}

func TestFragranceAboveItsFlash(t *testing.T) {
	two := func(steps string) string {
		return "recipe \"r\" {\n  made_for = \"class\"\n  wax \"soy\" {\n    weight = \"1 kg\"\n  }\n  fragrance \"oil\" {\n    load = \"3 % of wax\"\n  }\n  fragrance \"other-oil\" {\n    load = \"1 % of wax\"\n  }\n  " + steps + "\n}\n"
	}
	named := func(at, which string) string {
		return "step \"add fragrance\" {\n    at = \"" + at + "\"\n    fragrance = \"" + which + "\"\n  }\n  "
	}
	for _, c := range []struct {
		about, recipe string
		want          []string
	}{
		{"just its flash point", recipeOf("soy", melt("182 °F")+add("180 °F")), nil},
		{"over that of one of two", two(melt("182 °F") + add("175 °F")), []string{`fragrance-above-its-flash consider "175 °F"`}},
		{"the step names the other", two(melt("182 °F") + named("175 °F", "oil")), nil},
		{"the step names it", two(melt("182 °F") + named("175 °F", "other-oil")), []string{`fragrance-above-its-flash consider "175 °F"`}},
		{"it is in already, at less heat", two(melt("182 °F") + named("168 °F", "other-oil") + add("175 °F")), nil},
		{"over direct heat, in a class", two("step \"melt\" {\n    to = \"178 °F\"\n    over = \"direct heat\"\n  }\n  " + add("175 °F")),
			[]string{`open-heat must "direct heat"`, `fragrance-above-its-flash should "175 °F"`}},
	} {
		t.Run(c.about, func(t *testing.T) { assert.Equal(t, c.want, check(t, c.recipe)) })
	}
	silent := "recipe \"r\" {\n  wax \"soy\" {\n    weight = \"1 kg\"\n  }\n  fragrance \"silent-oil\" {\n    load = \"3 % of wax\"\n  }\n  " + melt("178 °F") + add("175 °F") + "\n}\n"
	assert.Equal(t, []string{"should fragrance.flash_point: fragrance-above-its-flash"}, unchecked(run(t, stock, silent)))
}

func TestOpenHeat(t *testing.T) {
	recipe := func(madeFor, pot, steps string) string {
		return "recipe \"r\" {\n  made_for = \"" + madeFor + "\"\n" + pot + "  wax \"soy\" {\n    weight = \"1 kg\"\n  }\n  " + steps + "\n}\n"
	}
	on := "  pot = \"plate\"\n"
	bare := "step \"melt\" { to = \"178 °F\" }\n  "
	over := func(what string) string {
		return "step \"melt\" {\n    to = \"178 °F\"\n    over = \"" + what + "\"\n  }\n  "
	}
	for _, c := range []struct {
		about, recipe string
		want          []string
	}{
		{"for sale", recipe("sale", "", over("direct heat")), []string{`open-heat must "direct heat"`}},
		{"for a class", recipe("class", "", over("microwave")), []string{`open-heat must "microwave"`}},
		{"on one's own shelf", recipe("own use", "", over("microwave")), []string{`open-heat should "microwave"`}},
		{"a water bath", recipe("sale", "", over("water bath")), nil},
		{"two melts in one pot: once", recipe("sale", on, bare+bare), []string{`open-heat must "plate"`}},
		{"the melt's own word wins", recipe("sale", on, over("water bath")), nil},
		{"a pot nobody knows", recipe("sale", "  pot = \"nothing\"\n", bare), nil},
	} {
		t.Run(c.about, func(t *testing.T) { assert.Equal(t, c.want, check(t, c.recipe)) })
	}
	assert.Equal(t, []string{"should step.over: open-heat"}, unchecked(run(t, stock, recipe("sale", "", bare))))
	assert.Equal(t, []string{"should pot.heat: open-heat"}, unchecked(run(t, stock, recipe("sale", "  pot = \"silent-pot\"\n", bare))))
}

func TestHeatLeftOn(t *testing.T) {
	held := func(more string) string {
		return recipeOf("soy", "step \"melt\" {\n    to = \"178 °F\"\n    over = \"water bath\"\n    "+more+"\n  }\n")
	}
	assert.Empty(t, check(t, held(`hold = "2 h"`)))
	assert.Empty(t, check(t, held(`hold = "7200 s"`)))
	assert.Equal(t, []string{`heat-left-on should "1 to 3 h"`}, check(t, held(`hold = "1 to 3 h"`)))
	assert.Equal(t, []string{`heat-left-on should "121 min"`, `heat-left-on should true`}, check(t, held("hold = \"121 min\"\n    unattended = true")))
	assert.Equal(t, []string{"the wax is kept hot for 121 min, 1 min longer than the 2 h that is common practice: melt what will be poured soon"}, messages(run(t, stock, held(`hold = "121 min"`))))
}
