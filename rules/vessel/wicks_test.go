package vessel_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// wick is a further wick for the shelf, key "w", with these lines.
func wick(lines string) string { return "wick \"w\" {\n  title = \"Wick W\"\n" + lines + "\n}\n" }

func with(kind, key string, lines ...string) string {
	return vesselOf(kind, key, append([]string{"wick = \"w\""}, lines...)...)
}

// n wicks share the area, so each has the diameter over the square root of n:
// geometry. 5 in is 127 mm; over √2 89.803 mm, over √3 73.324 mm. Over 20 % too
// large is a level louder (common practice): 90 mm beside 75 mm is just 20 %.
func TestTheWidthOfAWick(t *testing.T) {
	for _, c := range []struct {
		burns, kind, key, wicks string
		want                    []string
	}{
		{"70 to 75 mm", "mold", "round", "", []string{}},
		{"75 to 80 mm", "mold", "round", "", []string{}},
		{"2.9 to 2.96 in", "mold", "round", "", []string{}},              // 73.7 to 75.2 mm
		{"2.7 to 2.95 in", "mold", "round", "", []string{`should "w"`}},  // to 74.93 mm
		{"75.01 to 80 mm", "mold", "round", "", []string{`should "w"`}},  // a little too large
		{"60 to 74.99 mm", "mold", "round", "", []string{`should "w"`}},  // a little too small
		{"20 to 30 mm", "mold", "round", "", []string{`should "w"`}},     // far too small: it drowns
		{"90 to 95 mm", "mold", "round", "", []string{`should "w"`}},     // exactly 20 % too large
		{"90.01 to 95 mm", "mold", "round", "", []string{`must "w"`}},    // and over
		{"73 to 73.33 mm", "container", "bowl", "wicks = 3", []string{}}, // 73.324
		{"73 to 73.32 mm", "container", "bowl", "wicks = 3", []string{`should "w"`}},
		{"73.32 to 80 mm", "container", "bowl", "wicks = 3", []string{}},
		{"73.33 to 80 mm", "container", "bowl", "wicks = 3", []string{`should "w"`}},
		{"87.98 to 95 mm", "container", "bowl", "wicks = 3", []string{`should "w"`}}, // 1.2 x 73.324 = 87.988
		{"87.99 to 95 mm", "container", "bowl", "wicks = 3", []string{`must "w"`}},
		{"63.5 mm", "container", "bowl", "wicks = 4", []string{}}, // 127 / 2, exactly
		{"89.8 to 89.81 mm", "container", "bowl", "wicks = 2", []string{}},
		{"127 mm", "container", "bowl", "", []string{}},
		{"60 mm", "mold", "slab", "", []string{}}, // a block by its smaller side
		{"61 mm", "mold", "slab", "", []string{`should "w"`}},
		{"20 to 25 mm", "taper", "dipped", "", []string{}}, // 22 mm
		{"25 to 26 mm", "taper", "dipped", "", []string{`should "w"`}},
		{"38 mm", "container", "cup", "", []string{}},
		{"10 mm", "mold", "melt-tray", "", []string{`should "w"`}}, // what has a wick is lit, whatever is said of melts
		{"10 mm", "mold", "melt-tray", "wicks = 0", []string{}},
		{"10 mm", "mold", "round", "wicks = 0", []string{}}, // wick-missing says it
		{"10 mm", "mold", "nowhere", "", []string{}},
		{"wide", "mold", "round", "", []string{}},
	} {
		assert.Equal(t, c.want, check(t, "wick-outside-diameter", wick("  burns = \""+c.burns+"\""), wax("pillar", "300 g")+with(c.kind, c.key, c.wicks)), "%s in %s %s", c.burns, c.key, c.wicks)
	}
	assert.Equal(t, []string{"wick.burns"}, needs(run(t, wick(""), with("mold", "round")), "wick-outside-diameter"))
	assert.Equal(t, []string{"mold.diameter"}, needs(run(t, "mold \"odd\" {\n  shape = \"other\"\n  holds = \"100 mL\"\n}\n", in("mold", "odd")), "wick-outside-diameter"))
	assert.Equal(t, "Wick W burns candles of 90 to 95 mm (3.54 to 3 3/4 in): Round mold is 75 mm (2.95 in) across, 15 mm too narrow, so the wick is 20 % too large. It soots and overheats the wall",
		message(run(t, wick("  burns = \"90 to 95 mm\""), with("mold", "round")), "wick-outside-diameter"))
}

func TestNoWick(t *testing.T) {
	assert.Equal(t, []string{`must mold "round"`}, check(t, "wick-missing", "", vesselOf("mold", "round")))
	assert.Equal(t, []string{`must container "jar"`}, check(t, "wick-missing", "", vesselOf("container", "jar")))
	assert.Equal(t, []string{`must taper "dipped"`}, check(t, "wick-missing", "", vesselOf("taper", "dipped")))
	assert.Equal(t, []string{"must 0"}, check(t, "wick-missing", "", in("mold", "round", "wicks = 0")))
	assert.Equal(t, []string{"must 0"}, check(t, "wick-missing", "", vesselOf("mold", "round", "wicks = 0")), "one finding")
	assert.Empty(t, check(t, "wick-missing", "", vesselOf("mold", "round")+step("set wick", `wick = "w75"`)), "a step names it")
	assert.Empty(t, check(t, "wick-missing", "", in("mold", "round", `wick = "nowhere"`)))
	assert.Empty(t, check(t, "wick-missing", "", vesselOf("mold", "melt-tray")+vesselOf("container", "clamshell")))
	assert.Empty(t, check(t, "wick-missing", "", "  makes = \"melt\"\n"+vesselOf("container", "tin")), "melts may be poured into tins")
	assert.Empty(t, check(t, "wick-missing", "", "  makes = \"melt\"\n"+vesselOf("container", "tin")+vesselOf("container", "jar")+vesselOf("mold", "votive-cup")), "and into several kinds")
	assert.Equal(t, []string{`must container "jar"`}, check(t, "wick-missing", "", vesselOf("container", "clamshell")+vesselOf("container", "jar")), "the first vessel says nothing of the second")
	assert.Zero(t, count(runText(t, "", "recipe \"try\" {\n  mold \"round\" {\n"), "wick-missing"), "still being typed")
}

// 4 in is 101.6 mm: common practice.
func TestOneWick(t *testing.T) {
	mold := func(diameter string) string {
		return "mold \"wide\" {\n  shape = \"cylinder\"\n  diameter = \"" + diameter + "\"\n  height = \"50 mm\"\n}\n"
	}
	assert.Empty(t, check(t, "one-wick-too-wide", mold("4 in"), in("mold", "wide")))
	assert.Empty(t, check(t, "one-wick-too-wide", mold("101.6 mm"), in("mold", "wide")))
	assert.Equal(t, []string{`should mold "wide"`}, check(t, "one-wick-too-wide", mold("101.7 mm"), in("mold", "wide")))
	assert.Equal(t, []string{"should 1"}, check(t, "one-wick-too-wide", mold("101.7 mm"), in("mold", "wide", "wicks = 1")))
	assert.Empty(t, check(t, "one-wick-too-wide", mold("5 in"), in("mold", "wide", "wicks = 2")))
	assert.Empty(t, check(t, "one-wick-too-wide", mold("5 in"), vesselOf("mold", "wide")), "wick-missing says it")
	assert.Empty(t, check(t, "one-wick-too-wide", mold("5 in"), "  makes = \"melt\"\n"+vesselOf("mold", "wide")))

	burned := func(candles ...string) string {
		text := wax("pillar", "300 g") + in("mold", "wide")
		code := fingerprint(t, mold("5 in"), text)
		for _, c := range candles {
			text += "  test_burn \"2026-10-01\" {\n    formula = \"" + code + "\"\n    candle = \"" + c + "\"\n    result = \"pass\"\n  }\n"
		}
		return text
	}
	assert.Equal(t, []string{`consider mold "wide"`}, check(t, "one-wick-too-wide", mold("5 in"), burned("A", "B", "C")))
	assert.Equal(t, []string{`should mold "wide"`}, check(t, "one-wick-too-wide", mold("5 in"), burned("A", "B", "B")), "two candles")
	assert.Equal(t, []string{`should mold "wide"`}, check(t, "one-wick-too-wide", mold("5.1 in"), burned("A", "B", "C")), "another mold was burned")
	failed := burned("A", "B", "C") + "  test_burn \"2026-10-02\" {\n    formula = \"" + fingerprint(t, mold("5 in"), wax("pillar", "300 g")+in("mold", "wide")) + "\"\n    candle = \"C\"\n    result = \"fail\"\n  }\n"
	assert.Equal(t, []string{`should mold "wide"`}, check(t, "one-wick-too-wide", mold("5 in"), failed))
}

func TestTheFamilyOfAWick(t *testing.T) {
	of := func(families, body string) []string {
		return check(t, "wick-not-for-wax", wick("  families = ["+families+"]"), body+with("mold", "round"))
	}
	assert.Empty(t, of(`"paraffin"`, wax("pillar", "300 g")))
	assert.Equal(t, []string{`should "w"`}, of(`"soy", "beeswax"`, wax("pillar", "300 g")))
	assert.Equal(t, []string{`consider "w"`}, of(`"paraffin"`, wax("pillar", "255 g")+wax("stearin", "45 g")), "a little of it")
	assert.Equal(t, []string{`should "w"`}, of(`"paraffin"`, wax("pillar", "100 g")+wax("stearin", "100 g")))
	assert.Empty(t, of(`"paraffin", "stearin"`, wax("house", "300 g")), "all its parts are named")
	assert.Equal(t, []string{`consider "w"`}, of(`"soy"`, wax("house", "300 g")), "only its burns tell")
	assert.Empty(t, of(`"soy"`, wax("nowhere", "300 g")))
	assert.Equal(t, []string{"wick.families"}, needs(run(t, wick(""), wax("pillar", "300 g")+with("mold", "round")), "wick-not-for-wax"))
	assert.Equal(t, []string{"wax.family"}, needs(run(t, "wax \"what\" {\n  suits = [\"pillar\"]\n}\n", wax("what", "300 g")+in("mold", "round")), "wick-not-for-wax"))
}

// 16 CFR 1500.17(a)(13)(i): a metal-cored wick is banned where the metal holds
// more than 0.06 percent of lead by weight.
func TestLead(t *testing.T) {
	core := func(lines, body string) []string {
		return check(t, "lead-core", wick(lines), body+with("mold", "round"))
	}
	for _, c := range []struct {
		lines string
		want  []string
	}{
		{"  core = \"lead\"", []string{`must "w"`}},
		{"  core = \"lead\"\n  lead_at_most = \"0.01 %\"", []string{`must "w"`}},
		{"  core = \"zinc\"\n  lead_at_most = \"0.06 %\"", []string{}},
		{"  core = \"zinc\"\n  lead_at_most = \"0.060 %\"", []string{}},
		{"  core = \"zinc\"\n  lead_at_most = \"0.061 %\"", []string{`must "w"`}},
		{"  core = \"tin\"\n  lead_at_most = \"0.0600001 %\"", []string{`must "w"`}},
		{"  core = \"zinc\"\n  lead_at_most = \"little\"", []string{}}, // unreadable: another rule's
		{"  core = \"zinc\"\n  conformity = \"Conforms to 16 CFR 1500.17(a)(13)\"", []string{}},
		{"  core = \"cotton\"", []string{}},
		{"  core = \"paper\"", []string{}},
		{"  core = \"none\"", []string{}},
	} {
		for _, what := range []string{"own use", "class", "sale"} {
			assert.Equal(t, c.want, core(c.lines, made(what)), "%s, %s", c.lines, what)
		}
	}
	for what, want := range map[string]string{"own use": "should", "class": "should", "sale": "must"} {
		assert.Equal(t, []string{want + ` "w"`}, core("  core = \"zinc\"", made(what)), what)
	}
	assert.Equal(t, []string{"wick.core"}, needs(run(t, wick("  construction = \"cored\""), with("mold", "round")), "lead-core"))
	assert.Empty(t, needs(run(t, wick("  construction = \"square braid\""), with("mold", "round")), "lead-core"), "a braid has no core")
	assert.Equal(t, []string{`must "w"`}, check(t, "lead-core", wick("  core = \"lead\""), vesselOf("mold", "round")+step("set wick", `wick = "w"`)), "set by a step")

	// A wick that is offered for its width has no lead.
	bad := "wick \"leaded\" {\n  core = \"lead\"\n  burns = \"70 to 80 mm\"\n  families = [\"paraffin\"]\n}\nwick \"unstated\" {\n  core = \"zinc\"\n  burns = \"70 to 80 mm\"\n  families = [\"paraffin\"]\n}\n"
	offered := titles(run(t, bad+wick("  burns = \"10 mm\"\n  tab = true"), wax("pillar", "300 g")+with("mold", "round")), "wick-outside-diameter")
	assert.Equal(t, []string{"wick it with w75, which burns 70 to 80 mm"}, offered)
}

func TestTabs(t *testing.T) {
	jar := func(lines, steps string) []string {
		return check(t, "wick-tab-missing", wick(lines), wax("container", "300 g")+with("container", "jar")+steps+pour("70 °C"))
	}
	set := step("set wick", `with = "sticker"`)
	assert.Empty(t, jar("  tab = true", set))
	assert.Equal(t, []string{`must "w"`}, jar("  tab = false\n  burns = \"75 mm\"", set))
	assert.Equal(t, []string{`must container "jar"`}, jar("  tab = true", ""))
	for what, want := range map[string]string{"own use": "should", "class": "should", "sale": "must"} {
		assert.Equal(t, []string{want + ` container "jar"`}, jar("  tab = true", made(what)), what)
	}
	assert.Equal(t, []string{"set the wick with sticker"}, titles(run(t, "", in("container", "jar")+pour("100 °C")), "wick-tab-missing"), "holds to just 100 °C")
	assert.Empty(t, titles(run(t, "", in("container", "jar")+pour("100.1 °C")), "wick-tab-missing"))
	assert.Equal(t, []string{"wick.tab"}, needs(run(t, wick(""), with("container", "jar")+set), "wick-tab-missing"))

	cup := in("container", "cup") + pour("70 °C")
	assert.Empty(t, check(t, "wick-tab-missing", "", cup+set), "a tealight's wick may be set after the pour")
	assert.Equal(t, []string{`must container "cup"`}, check(t, "wick-tab-missing", "", cup))
	assert.Equal(t, []string{`must container "jar"`}, check(t, "wick-tab-missing", "", in("container", "jar")+in("container", "tin")+"  step \"set wick\" {\n    with   = \"sticker\"\n    vessel = \"tin\"\n  }\n"+pour("70 °C")), "the other one is set")
	assert.Empty(t, check(t, "wick-tab-missing", wick("  tab = false"), with("mold", "round")), "threaded")
	assert.Empty(t, check(t, "wick-tab-missing", "", vesselOf("container", "clamshell")))
	assert.Empty(t, check(t, "wick-tab-missing", "", vesselOf("container", "jar")), "wick-missing says it")
	assert.Empty(t, check(t, "wick-tab-missing", "", in("container", "jar", "wicks = 0")))
}

func TestAWickInAMelt(t *testing.T) {
	melt := "  makes = \"melt\"\n"
	for text, want := range map[string][]string{
		melt + in("container", "jar"):                                          {`must "w75"`},
		melt + in("mold", "round"):                                             {`must "w75"`},
		melt + vesselOf("container", "jar"):                                    {},
		melt + vesselOf("container", "jar") + step("set wick", `wick = "w75"`): {`must "w75"`},
		melt + in("container", "jar", "wicks = 0"):                             {}, // none after all
		melt + vesselOf("container", "tin") + in("container", "jar"):           {}, // a candle beside melts
		in("mold", "melt-tray"):                                                {`must "w75"`},
		in("container", "clamshell"):                                           {`must "w75"`},
		in("container", "jar"):                                                 {},
		"  makes = \"jar\"\n" + in("container", "clamshell"):                   {}, // said to be a candle: other rules judge it
	} {
		assert.Equal(t, want, check(t, "wick-in-melt", "", text), text)
	}
	found := run(t, "", melt+in("container", "jar"))
	assert.Equal(t, "Wick 75 is a wick, and what is made in Jar is said to be a melt, which has no flame: with a wick it will be lit, so it is judged as a jar. Leave the wick out, or say which candle it is",
		message(found, "wick-in-melt"))
	// Plastic beside a flame is what the word would have hidden.
	assert.Equal(t, []string{`must "clamshell"`}, check(t, "container-not-for-candles", "", in("container", "clamshell")))
}
