package vessel_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func mold(lines string) string {
	return "mold \"m\" {\n  title = \"Mold M\"\n  shape = \"cylinder\"\n  diameter = \"75 mm\"\n  height = \"100 mm\"\n" + lines + "\n}\n"
}

func container(lines string) string {
	return "container \"c\" {\n  title = \"Container C\"\n  diameter = \"75 mm\"\n" + lines + "\n}\n"
}

// A pour stays 5 °C (9 °F) below where the mold softens: common practice. What
// a material bears where its maker states nothing is from polymer handbooks,
// from memory, and at most a should.
func TestSoftMolds(t *testing.T) {
	for _, c := range []struct {
		lines, pour string
		want        []string
	}{
		{`  softens_at = "85 °C"`, "80 °C", []string{}},
		{`  softens_at = "85 °C"`, "80.1 °C", []string{`must "m"`}},
		{`  softens_at = "189 °F"`, "180 °F", []string{}},
		{`  softens_at = "189 °F"`, "181 °F", []string{`must "m"`}},
		{`  softens_at = "185 °F"`, "80 °C", []string{}}, // 85 °C
		{`  softens_at = "85 °C"`, "78 to 80 °C", []string{}},
		{`  softens_at = "85 °C"`, "78 to 81 °C", []string{`must "m"`}}, // its hot end
		{`  material = "printed PLA"`, "50 °C", []string{}},             // softens at 55 °C
		{`  material = "printed PLA"`, "51 °C", []string{`should "m"`}},
		{"  material = \"printed PLA\"\n  softens_at = \"90 °C\"", "70 °C", []string{}}, // its maker knows better
		{"  material = \"silicone\"\n  softens_at = \"60 °C\"", "70 °C", []string{`must "m"`}},
		{`  material = "printed PETG"`, "70 °C", []string{`should "m"`}},
		{`  material = "polycarbonate"`, "90 °C", []string{}},
		{`  material = "silicone"`, "100 °C", []string{}},
		{`  material = "metal"`, "100 °C", []string{}},
		{`  material = "glass"`, "100 °C", []string{}},
		{`  softens_at = "soon"`, "100 °C", []string{}},
		{`  material = "cardboard"`, "100 °C", []string{}},
		{`  material = "printed PLA"`, "hot", []string{}},
	} {
		assert.Equal(t, c.want, check(t, "mold-softens", mold(c.lines), wax("pillar", "300 g")+in("mold", "m")+pour(c.pour)), "%s, %s", c.lines, c.pour)
	}
	body := in("mold", "m") + pour("70 °C")
	assert.Equal(t, []string{`must "m"`}, check(t, "mold-softens", mold(`  softens_at = "80 °C"`), body+step("second pour", `at = "76 °C"`)), "the hottest pour")
	assert.Empty(t, check(t, "mold-softens", mold(`  softens_at = "80 °C"`), in("mold", "m")), "nothing poured yet")
	assert.Equal(t, []string{"mold.material"}, needs(run(t, mold(""), body), "mold-softens"))
	assert.Equal(t, []string{"mold.softens_at"}, needs(run(t, mold(`  material = "other"`), body), "mold-softens"))
	assert.Equal(t, []string{`must "c"`}, check(t, "mold-softens", container("  kind = \"clamshell\"\n  softens_at = \"70 °C\""), vesselOf("container", "c")+pour("70 °C")), "a clamshell as well")
	two := in("mold", "m") + in("mold", "round") + "  step \"pour\" {\n    at     = \"90 °C\"\n    vessel = \"round\"\n  }\n  step \"pour\" {\n    at     = \"70 °C\"\n    vessel = \"m\"\n  }\n"
	assert.Empty(t, check(t, "mold-softens", mold(`  softens_at = "80 °C"`), two), "the hot pour goes into the other")
	assert.Equal(t, "Mold M softens at 85 °C (185 °F): the pour at 82 °C (179.6 °F) is only 3 °C below that, where 5 °C is wanted. It gives way and lets the hot wax run out",
		message(run(t, mold(`  softens_at = "85 °C"`), in("mold", "m")+pour("82 °C")), "mold-softens"))
}

// 50 °C (90 °F) apart at most where the glass states nothing: common practice,
// after ASTM F2179. The shop of these tests is at 70 °F, 21.1 °C.
func TestColdGlass(t *testing.T) {
	glass := "  kind = \"jar\"\n  material = \"glass\"\n"
	for _, c := range []struct {
		lines, steps string
		want         []string
	}{
		{glass, pour("160 °F"), []string{}}, // just 90 °F
		{glass, pour("161 °F"), []string{`should "161 °F"`}},
		{glass, pour("71 °C"), []string{}}, // 49.9 K
		{glass, pour("71.2 °C"), []string{`should "71.2 °C"`}},
		{glass, pour("150 to 161 °F"), []string{`should "150 to 161 °F"`}},
		{glass, step("warm container", `to = "100 °F"`) + pour("190 °F"), []string{}},
		{glass, step("warm container", `to = "99 °F"`) + pour("190 °F"), []string{`should "190 °F"`}},
		{glass, step("warm container", `to = "95 to 110 °F"`) + pour("190 °F"), []string{`should "190 °F"`}}, // its cold end
		{glass, step("warm container", `to = "40 °C"`) + pour("90 °C"), []string{}},
		{glass, pour("190 °F") + step("warm container", `to = "110 °F"`), []string{`should "190 °F"`}}, // too late
		{glass, "  room = \"60 °F\"\n" + pour("151 °F"), []string{`should "151 °F"`}},
		{glass, "  room = \"80 °F\"\n" + pour("170 °F"), []string{}},
		{glass, "  room = \"warm\"\n" + pour("190 °F"), []string{}},
		{glass + "  thermal_shock = \"60 °F\"", pour("130 °F"), []string{}},
		{glass + "  thermal_shock = \"60 °F\"", pour("131 °F"), []string{`should "131 °F"`}},
		{glass + "  thermal_shock = \"70 °C\"", pour("91 °C"), []string{}}, // a difference: 126 °F
		{glass + "  thermal_shock = \"some\"", pour("190 °F"), []string{}},
		{"  kind = \"tin\"\n  material = \"tin\"\n", pour("190 °F"), []string{}},
		{"  kind = \"bowl\"\n  material = \"ceramic\"\n", pour("190 °F"), []string{`should "190 °F"`}},
		{glass, pour("150 °F") + step("second pour", `at = "170 °F"`), []string{}}, // by then there is wax on the wall
		{glass, pour("150 °F") + step("melt", `to = "190 °F"`) + pour("170 °F"), []string{}},
	} {
		assert.Equal(t, c.want, check(t, "glass-too-cold-for-pour", container(c.lines), wax("container", "300 g")+in("container", "c")+c.steps), "%s%s", c.lines, c.steps)
	}
	report := run(t, container(glass), in("container", "c")+step("warm container", `say = "in the oven"`)+pour("190 °F"))
	assert.Empty(t, message(report, "glass-too-cold-for-pour"))
	assert.Equal(t, []string{"step.to"}, needs(report, "glass-too-cold-for-pour"), "warmed, but nobody says how far")
	assert.Zero(t, count(runText(t, container(glass), "recipe \"try\" {\n"+in("container", "c")+pour("190 °F")+"  step \"cu"), "glass-too-cold-for-pour"), "the warming may be typed yet")
	assert.Equal(t, "the pour at 161 °F (71.7 °C) strikes Container C at the room's 70 °F (21.1 °C): 91 °F apart, 1 °F over the 90 °F that such a wall is taken to stand (it states no thermal_shock; common practice). It can crack; warm it to at least 71 °F (21.7 °C) first",
		message(run(t, container(glass), in("container", "c")+pour("161 °F")), "glass-too-cold-for-pour"))
}

// 1350 g of wax of 0.9 g/mL is 1500 mL; it was shrunk by 10 %, so molten it is
// 1500 / 0.9 = 1666.7 mL. A pot of 2 L is three quarters full at 1500 mL,
// 1215 g, and nine tenths full at 1800 mL, 1458 g. Common practice.
func TestThePot(t *testing.T) {
	pot := func(weight string) []string {
		return check(t, "pot-overfull", "", "  pot = \"pot\"\n"+wax("pillar", weight)+in("mold", "round")+step("melt", `to = "85 °C"`)+pour("75 °C"))
	}
	assert.Empty(t, pot("1215 g"))
	assert.Equal(t, []string{`should "pot"`}, pot("1215.1 g"))
	assert.Equal(t, []string{`should "pot"`}, pot("1458 g"))
	assert.Equal(t, []string{`must "pot"`}, pot("1458.1 g"))
	assert.Equal(t, []string{`should "pot"`}, check(t, "pot-overfull", "", "  pot = \"pot\"\n"+wax("pillar", "1200 g")+"  fragrance \"thyme\" {\n    load = \"6 % of wax\"\n  }\n"), "with all that goes in")
	assert.Empty(t, check(t, "pot-overfull", "", "  pot = \"nowhere\"\n"+wax("pillar", "9 kg")))
	assert.Equal(t, []string{"recipe.pot"}, needs(run(t, "", wax("pillar", "9 kg")), "pot-overfull"))
	assert.Equal(t, []string{`should "pot"`}, check(t, "pot-overfull", "", "  pot = \"pot\"\n"+wax("plain-paraffin", "2 kg")+in("mold", "round")), "a family's density is never a must")
	layers := "  pot = \"pot\"\n" + wax("pillar", "1 kg") + wax("container", "1 kg") + in("container", "jar") +
		"  step \"melt\" {\n    to  = \"80 °C\"\n    wax = \"pillar\"\n  }\n" + pour("70 °C") + "  step \"melt\" {\n    to  = \"80 °C\"\n    wax = \"container\"\n  }\n" + pour("70 °C")
	assert.Empty(t, check(t, "pot-overfull", "", layers), "one kilogram at a time")
	assert.Equal(t, "1.35 kg takes up 1.67 L once molten and fills pot (2 L (67.6 fl oz)) to 83.33 %, over the 75 % of it that is safe by 167 mL: melt it as 2 batches of 675 g",
		message(run(t, "", "  pot = \"pot\"\n"+wax("pillar", "1350 g")), "pot-overfull"))
}

func TestContainersThatAreNotForCandles(t *testing.T) {
	of := func(lines, body string) []string {
		return check(t, "container-not-for-candles", container(lines), body+in("container", "c"))
	}
	for _, c := range []struct {
		lines string
		want  []string
	}{
		{"  kind = \"jar\"\n  material = \"glass\"\n  made_for_candles = true", []string{}},
		{"  kind = \"jar\"\n  material = \"glass\"\n  made_for_candles = false", []string{`must "c"`}},
		{"  kind = \"jar\"\n  material = \"wood\"\n  made_for_candles = true", []string{`must "c"`}},
		{"  kind = \"bowl\"\n  material = \"shell\"\n  made_for_candles = true", []string{`must "c"`}},
		{"  kind = \"jar\"\n  material = \"concrete\"\n  finish = \"plain\"\n  made_for_candles = true", []string{`must "c"`}},
		{"  kind = \"jar\"\n  material = \"concrete\"\n  finish = \"sealed\"\n  made_for_candles = true", []string{}},
		{"  kind = \"jar\"\n  material = \"concrete\"\n  finish = \"sealed\"\n  made_for_candles = false", []string{`must "c"`}},
		{"  kind = \"jar\"\n  material = \"other plastic\"\n  made_for_candles = true", []string{`must "c"`}},
		{"  kind = \"jar\"\n  material = \"polycarbonate\"\n  made_for_candles = true", []string{`must "c"`}},
		{"  kind = \"tealight cup\"\n  material = \"polycarbonate\"\n  made_for_candles = true", []string{}},
		{"  kind = \"tealight cup\"\n  material = \"polycarbonate\"\n  made_for_candles = false", []string{`must "c"`}},
		{"  kind = \"tin\"\n  material = \"tin\"\n  made_for_candles = true", []string{}},
	} {
		for _, what := range []string{"own use", "class", "sale"} {
			assert.Equal(t, c.want, of(c.lines, made(what)), "%s, %s", c.lines, what)
		}
	}
	assert.Empty(t, check(t, "container-not-for-candles", "", vesselOf("container", "clamshell")), "melts")
	assert.Empty(t, check(t, "container-not-for-candles", "", in("container", "jar")+vesselOf("container", "clamshell")), "melts beside jars")
	assert.Equal(t, []string{`must "c"`}, check(t, "container-not-for-candles", container("  kind = \"jar\"\n  material = \"wood\""), vesselOf("container", "clamshell")+in("container", "c")), "a jar beside melts")
	assert.ElementsMatch(t, []string{"container.made_for_candles", "container.material"}, needs(run(t, container("  kind = \"jar\""), in("container", "c")), "container-not-for-candles"))
	assert.Equal(t, []string{"container.finish"}, needs(run(t, container("  kind = \"jar\"\n  material = \"concrete\"\n  made_for_candles = true"), in("container", "c")), "container-not-for-candles"))
}

// The jar holds 380 mL of its 441.8 mL to the rim (a circle of 75 mm, 100 mm
// high). Headspace: 10 mm in a jar, 6 mm in a tin, 1 mm in a tealight cup,
// common practice. A second jar is measured to the brim.
func TestOverfilled(t *testing.T) {
	brim := func(kind, height string) string {
		return container("  kind = \"" + kind + "\"\n  height = \"" + height + "\"\n  holds = \"442 mL\"\n  material = \"glass\"\n  made_for_candles = true")
	}
	fill := func(more, key, fill string) []string {
		return check(t, "container-overfilled", more, wax("container", "300 g")+in("container", key, "fill = \""+fill+"\""))
	}
	assert.Empty(t, fill("", "jar", "380 mL"))
	assert.Equal(t, []string{`must "380.1 mL"`}, fill("", "jar", "380.1 mL"))
	assert.Empty(t, fill("", "jar", "100 %"))
	assert.Equal(t, []string{`must "101 %"`}, fill("", "jar", "101 %"))
	assert.Empty(t, fill("", "jar", "342 g")) // 380 mL at 0.9 g/mL
	assert.Equal(t, []string{`must "360 g"`}, fill("", "jar", "360 g"))
	assert.Equal(t, []string{`must "9 mm below rim"`}, fill("", "jar", "9 mm below rim"))
	for kind, c := range map[string][2]string{"jar": {"90 mm", "90.1 mm"}, "tin": {"94 mm", "94.1 mm"}, "tealight cup": {"99 mm", "99.1 mm"}} {
		assert.Empty(t, fill(brim(kind, "100 mm"), "c", c[0]), kind)
		assert.Equal(t, []string{`should "` + c[1] + `"`}, fill(brim(kind, "100 mm"), "c", c[1]), kind)
	}
	assert.Empty(t, fill(brim("jar", "100 mm"), "c", "10 mm below rim"))
	assert.Equal(t, []string{`should "9.9 mm below rim"`}, fill(brim("jar", "100 mm"), "c", "9.9 mm below rim"))
	assert.Equal(t, []string{`should "3/8 in below rim"`}, fill(brim("jar", "100 mm"), "c", "3/8 in below rim"), "9.525 mm")
	assert.Empty(t, fill(brim("bowl", "100 mm"), "c", "5 mm below rim"), "nothing is usual in a bowl")
	assert.Empty(t, fill("", "jar", "to the brim"), "unreadable: another rule's")
	assert.Equal(t, []string{`should container "c"`}, check(t, "container-overfilled", brim("jar", "100 mm"), in("container", "c")), "not said: all that it holds, to the brim")
	assert.Equal(t, []string{`must "101 mm"`}, fill(brim("jar", "100 mm"), "c", "101 mm"), "above the rim")
	assert.Equal(t, []string{`must container "c"`}, check(t, "container-overfilled", brim("jar", "90 mm"), in("container", "c")), "442 mL stand at 100 mm")
	assert.Equal(t, []string{"container.height"}, needs(run(t, container("  kind = \"jar\"\n  holds = \"400 mL\""), in("container", "c")), "container-overfilled"))
	assert.Equal(t, []string{`should "90 mL"`}, check(t, "container-overfilled", "", vesselOf("container", "clamshell", `fill = "90 mL"`)), "no flame, but it runs over")
	assert.Empty(t, check(t, "container-overfilled", "", in("mold", "round", `fill = "2 mm below rim"`)), "a mold may be full")
}

func TestToppings(t *testing.T) {
	topping := func(kind, lines, body string) []string {
		return check(t, "burnable-topping", "topping \"t\" {\n  kind = \""+kind+"\"\n}\n", "  topping \"t\" {\n"+lines+"  }\n"+body)
	}
	jar := in("container", "jar")
	for _, kind := range []string{"botanical", "paper", "ribbon", "glitter", "crystal"} {
		for what, want := range map[string]string{"own use": "should", "class": "must", "sale": "must"} {
			assert.Equal(t, []string{want + ` "t"`}, topping(kind, "", made(what)+jar), "%s, %s", kind, what)
		}
		assert.Equal(t, []string{`must "t"`}, topping(kind, "    in_reach = true\n", jar), kind)
		assert.Empty(t, topping(kind, "    in_reach = false\n", jar), kind)
		assert.Empty(t, topping(kind, "", vesselOf("container", "clamshell")), "a melt has no flame")
		assert.Equal(t, []string{`must "t"`}, topping(kind, "", vesselOf("container", "clamshell")+jar), "the jar has one")
		assert.Empty(t, topping(kind, "    vessel = \"clamshell\"\n", vesselOf("container", "clamshell")+jar))
	}
	assert.Empty(t, topping("wax embed", "", jar))
	assert.Empty(t, check(t, "burnable-topping", "", "  topping \"nowhere\" {}\n"+jar))
	assert.Equal(t, []string{"topping.kind"}, needs(run(t, "topping \"t\" {}\n", "  topping \"t\" {}\n"+jar), "burnable-topping"))
}
