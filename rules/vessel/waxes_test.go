package vessel_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a wax is sold for is its supplier's word; which uses a vessel asks for
// is common practice: a jar, a tin or a bowl container wax, a tealight cup
// tealight or container, a clamshell melt or container.
func TestEachKindOfContainerAsksForItsWax(t *testing.T) {
	must := func(key string) []string { return []string{`must "` + key + `"`} }
	for _, c := range []struct {
		wax, container string
		want           []string
	}{
		{"container", "jar", []string{}},
		{"container", "tin", []string{}},
		{"container", "bowl", []string{}},
		{"container", "cup", []string{}},
		{"container", "clamshell", []string{}},
		{"container", "glass-votive", []string{`consider "container"`}}, // it stays in the glass
		{"soy", "clamshell", []string{}},
		{"tealight", "cup", []string{}},
		{"tealight", "jar", must("tealight")},
		{"votive", "glass-votive", []string{}},
		{"votive", "jar", must("votive")},
		{"pillar", "jar", must("pillar")},
		{"pillar", "tin", must("pillar")},
		{"pillar", "bowl", must("pillar")},
		{"pillar", "cup", must("pillar")},
		{"pillar", "glass-votive", []string{}}, // it suits votives
		{"pillar", "clamshell", []string{`should "pillar"`}},
		{"house", "jar", []string{}},  // its own word, though stearin is in it
		{"tested", "jar", []string{}}, // the shop's own tests
		{"tested", "cup", []string{}},
		{"broken", "jar", []string{}},
		{"nowhere", "jar", []string{}},
	} {
		assert.Equal(t, c.want, check(t, "wax-not-for-container", "", wax(c.wax, "300 g")+vesselOf("container", c.container)), "%s in %s", c.wax, c.container)
	}
	assert.Empty(t, check(t, "wax-not-for-container", "container \"odd\" {\n  kind = \"bucket\"\n}\n", wax("tealight", "300 g")+in("container", "odd")), "what it is cannot be read")
}

func TestPillarWaxInAJarByWhoLightsIt(t *testing.T) {
	for what, want := range map[string]string{"own use": "consider", "class": "should", "sale": "must"} {
		assert.Equal(t, []string{want + ` "pillar"`}, check(t, "wax-not-for-container", "", made(what)+wax("pillar", "300 g")+in("container", "jar")), what)
	}
	assert.Equal(t, []string{`must "pillar"`}, check(t, "wax-not-for-container", "", wax("pillar", "300 g")+in("container", "jar")), "not said: as for sale")
	said := message(run(t, "", wax("pillar", "300 g")+in("container", "jar")), "wax-not-for-container")
	for _, danger := range []string{"10 %", "pulls away from the glass of Jar", "rattles", "crack"} {
		assert.Contains(t, said, danger)
	}
	assert.NotContains(t, message(run(t, "", wax("pillar", "300 g")+in("container", "tin")), "wax-not-for-container"), "crack", "a tin does not")
}

// A quarter or more of a loose blend decides; less is softer, since a little
// stearin hardens container wax (common practice).
func TestALooseBlendInAJar(t *testing.T) {
	blend := func(container, stearin string) []string {
		return check(t, "wax-not-for-container", "", wax("container", container)+wax("stearin", stearin)+in("container", "jar"))
	}
	assert.Equal(t, []string{`should "stearin"`}, blend("85 g", "15 g"))
	assert.Equal(t, []string{`should "stearin"`}, blend("76 oz", "24 oz"))
	assert.Equal(t, []string{`must "stearin"`}, blend("75 g", "25 g"))
	assert.Equal(t, []string{`must "stearin"`}, blend("51 g", "49 g"))
	assert.Equal(t, []string{`must "stearin"`}, check(t, "wax-not-for-container", "", "  wax \"container\" {}\n  wax \"stearin\" {}\n"+in("container", "jar")), "weights not known")
	assert.Contains(t, message(run(t, "", wax("container", "85 g")+wax("stearin", "15 g")+in("container", "jar")), "wax-not-for-container"), "15 % of the wax")
	assert.Equal(t, []string{`consider "stearin"`}, check(t, "wax-not-for-container", "", made("own use")+wax("container", "85 g")+wax("stearin", "15 g")+in("container", "jar")))
}

// A family's usual uses are common practice: at most a should.
func TestFamilies(t *testing.T) {
	assert.Empty(t, check(t, "wax-not-for-container", "", wax("plain-beeswax", "300 g")+in("container", "jar")))
	assert.Empty(t, check(t, "wax-not-for-mold", "", wax("plain-beeswax", "300 g")+in("mold", "round")))
	assert.Empty(t, check(t, "wax-not-for-container", "", wax("plain-coconut", "300 g")+in("container", "jar")))
	assert.Equal(t, []string{`should "plain-coconut"`}, check(t, "wax-not-for-mold", "", wax("plain-coconut", "300 g")+in("mold", "round")))
	report := run(t, "", wax("plain-paraffin", "300 g")+in("container", "jar"))
	assert.Empty(t, message(report, "wax-not-for-container"))
	assert.Equal(t, []string{"wax.suits"}, needs(report, "wax-not-for-container"), "paraffin is sold for everything, each grade for something")
	assert.Equal(t, []string{"wax.suits"}, needs(run(t, "", wax("plain-paraffin", "300 g")+in("mold", "round")), "wax-not-for-mold"))
}

func TestContainerWaxThatShouldStand(t *testing.T) {
	for _, what := range []string{"own use", "class", "sale"} {
		assert.Equal(t, []string{`must "container"`}, check(t, "wax-not-for-mold", "", made(what)+wax("container", "300 g")+in("mold", "round")), what)
	}
	assert.Equal(t, []string{`must "container"`}, check(t, "wax-not-for-mold", "", wax("container", "300 g")+in("mold", "votive-cup")))
	assert.Equal(t, []string{`must "container"`}, check(t, "wax-not-for-mold", "", wax("container", "300 g")+in("taper", "dipped")))
	assert.Equal(t, []string{`should "container"`}, check(t, "wax-not-for-mold", "", wax("pillar", "240 g")+wax("container", "60 g")+in("mold", "round")), "a fifth of it")
	assert.Empty(t, check(t, "wax-not-for-mold", "", wax("container", "300 g")+vesselOf("mold", "melt-tray")), "a melt need not stand")
	assert.Empty(t, check(t, "wax-not-for-mold", "", wax("pillar", "300 g")+in("mold", "votive-cup")))
	assert.Empty(t, check(t, "wax-not-for-mold", "", wax("container", "300 g")+in("container", "jar")))
}

// Each vessel is asked for itself, and each wax is told of once.
func TestSeveralVessels(t *testing.T) {
	both := in("container", "jar") + in("mold", "round") + in("mold", "other-round")
	assert.Equal(t, []string{`must "container"`}, check(t, "wax-not-for-mold", "", wax("container", "900 g")+both))
	assert.Empty(t, check(t, "wax-not-for-container", "", wax("container", "900 g")+both))
	assert.Equal(t, []string{`must "pillar"`}, check(t, "wax-not-for-container", "", wax("pillar", "900 g")+in("container", "tin")+both))
	assert.Equal(t, []string{`must "pillar"`}, check(t, "wax-not-for-container", "", wax("pillar", "900 g")+vesselOf("container", "clamshell")+in("container", "jar")), "the louder of the two")
	assert.Empty(t, check(t, "wax-not-for-container", "", wax("soy", "900 g")+in("container", "jar")+vesselOf("container", "clamshell")))
}

// What is offered suits, holds the load, and is worked at the recipe's
// temperatures.
func TestASwapOffersOnlyWhatFits(t *testing.T) {
	load := func(load string) string { return "  fragrance \"thyme\" {\n    load = \"" + load + "\"\n  }\n" }
	jar := func(more string) []string {
		return titles(run(t, "", wax("pillar", "300 g")+in("container", "jar")+more), "wax-not-for-container")
	}
	cool := step("melt", `to = "80 °C"`) + pour("72 °C")
	assert.Contains(t, jar(cool), "swap to container, which suits containers")
	assert.Contains(t, jar(cool+load("10 % of wax")), "swap to container, which suits containers", "exactly its limit")
	assert.NotContains(t, jar(cool+load("10.1 % of wax")), "swap to container, which suits containers")
	assert.NotContains(t, jar(step("melt", `to = "86 °C"`)+pour("72 °C")), "swap to container, which suits containers", "melted hotter than its sheet says")
	assert.NotContains(t, jar(step("melt", `to = "80 °C"`)+pour("76 °C")), "swap to container, which suits containers", "poured hotter than its sheet says")
	for _, title := range jar(cool) {
		assert.NotContains(t, title, "tested")
		assert.NotContains(t, title, "plain-")
	}
	assert.Empty(t, titles(run(t, "", wax("container", "85 g")+wax("pillar", "300 g")+in("container", "jar")+cool), "wax-not-for-container"), "the wax that fits is in the blend already")
}

// A wax sold for cups only may be hard or soft: nobody says, and it is a must
// all the same.
func TestATealightWaxInAMold(t *testing.T) {
	report := run(t, "", wax("tealight", "300 g")+in("mold", "round"))
	assert.Contains(t, message(report, "wax-not-for-mold"), "for tealights, not for pillars: nobody says that it leaves Round mold whole or stands by itself")
	assert.Equal(t, []string{`must "tealight"`}, check(t, "wax-not-for-mold", "", wax("tealight", "300 g")+in("mold", "round")))
}
