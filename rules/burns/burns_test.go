package burns_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/burns"
	"wickrule/rules/formula"
	"wickrule/schema"
)

const stock = `
wax "plain" {
  family = "paraffin"
}
wick "braid" {
  burns = "2 to 4 in"
}
mold "round" {
  title    = "Round mold"
  shape    = "cylinder"
  diameter = "3 in"
  height   = "6 in"
}
container "jar" {
  title = "Jar"
  kind  = "jar"
}
container "clamshell" {
  kind = "clamshell"
}
`

// run checks a recipe "try". "@" in it stands for its fingerprint, "@0" and
// "@1" for those of its vessels.
func run(t testing.TB, text string) *lint.Report {
	t.Helper()
	shop := lint.NewShop(".", []*schema.File{schema.Read("try.candle.hcl", []byte(stock+text))})
	if recipe := shop.Find("recipe", "try"); recipe != nil {
		f := formula.Of.In(lint.NewView(shop, recipe, "2026-10-20"))
		text = strings.ReplaceAll(text, `"@"`, `"`+f.Code+`"`)
		for i, one := range f.Each {
			text = strings.ReplaceAll(text, fmt.Sprintf(`"@%d"`, i), `"`+one.Code+`"`)
		}
	}
	file := schema.Read("try.candle.hcl", []byte(stock+text))
	report := lint.Run(lint.NewShop(".", []*schema.File{file}), burns.Rules(), "2026-10-20")
	require.Empty(t, report.Faults)
	return report
}

func check(t testing.TB, text string) []string {
	t.Helper()
	found := []string{}
	for _, f := range run(t, text).Findings {
		found = append(found, fmt.Sprintf("%s %s on %s", f.Level, f.Rule.Name, f.At.File.Text.Slice(f.At.Span)))
	}
	return found
}

func recipe(body string) string {
	return "recipe \"try\" {\n  wax \"plain\" {\n    weight = \"300 g\"\n  }\n" + body + "}\n"
}

func burn(candle, result string, lines ...string) string {
	return burnOf("@", candle, result, lines...)
}

func burnOf(code, candle, result string, lines ...string) string {
	text := "  test_burn \"2026-10-01\" {\n    formula = \"" + code + "\"\n    candle = \"" + candle + "\"\n    to_end = true\n    result = \"" + result + "\"\n"
	for _, line := range lines {
		text += "    " + line + "\n"
	}
	return text + "  }\n"
}

const mold = "  mold \"round\" {\n    wick = \"braid\"\n  }\n"

// Three candles that passed: common practice, after ASTM F2417 (from memory).
func TestThreeCandles(t *testing.T) {
	missing := []string{`must test-burn-missing on recipe "try"`}
	three := burn("A", "pass") + burn("B", "pass") + burn("C", "pass")
	assert.Empty(t, check(t, recipe(mold+three)))
	assert.Equal(t, missing, check(t, recipe(mold)))
	assert.Equal(t, missing, check(t, recipe(mold+burn("A", "pass")+burn("B", "pass"))))
	assert.Equal(t, missing, check(t, recipe(mold+burn("A", "pass")+burn("A", "pass")+burn("A", "pass"))), "one candle, burned three times")
	failed := append(missing, `must test-burn-unsafe on "fail"`)
	assert.Equal(t, failed, check(t, recipe(mold+burn("A", "pass")+burn("B", "pass")+burn("C", "fail"))))
	assert.Equal(t, failed, check(t, recipe(mold+three+burn("C", "fail"))), "a candle that failed once has not passed")
	assert.Equal(t, missing, check(t, recipe(mold+burn("A", "pass")+burn("B", "pass")+"  test_burn \"2026-10-01\" {\n    formula = \"@\"\n    candle = \"C\"\n  }\n")), "no verdict is no pass")
	assert.Equal(t, missing, check(t, recipe(mold+burn("A", "pass")+burn("B", "pass")+"  test_burn \"2026-10-01\" {\n    formula = \"@\"\n    result = \"pass\"\n  }\n")), "which candle was it?")
	assert.Equal(t, failed[1:], check(t, recipe(mold+three+burn("D", "fail"))), "three of four passed, and what failed is another rule's")

	log := "test_burn \"2026-10-02\" {\n  recipe = \"try\"\n  formula = \"@\"\n  candle = \"C\"\n  result = \"pass\"\n}\n"
	assert.Empty(t, check(t, recipe(mold+burn("A", "pass")+burn("B", "pass"))+log), "a burn in the log counts")
}

func TestHowLoudByWhatItIsMadeFor(t *testing.T) {
	assert.Equal(t, []string{`must test-burn-missing on recipe "try"`}, check(t, recipe("  made_for = \"sale\"\n"+mold)))
	assert.Equal(t, []string{`consider test-burn-missing on recipe "try"`}, check(t, recipe("  made_for = \"class\"\n"+mold)))
	assert.Empty(t, check(t, recipe("  made_for = \"own use\"\n"+mold)))
	assert.Equal(t, "only one candle of try has burned and passed (A), and B did not pass; three are wanted before it is sold",
		run(t, recipe(mold+burn("A", "pass")+burn("B", "fail"))).Findings[0].Message)
}

func TestWhatHasNoFlame(t *testing.T) {
	assert.Empty(t, check(t, recipe("  container \"clamshell\" {}\n")))
	assert.Empty(t, check(t, recipe("  makes = \"melt\"\n"+mold)))
	assert.Empty(t, check(t, "recipe \"try\" {\n"+mold), "still being typed")
}

// A jar that was burned says nothing of a pillar.
func TestEachVessel(t *testing.T) {
	both := mold + "  container \"jar\" {}\n"
	in := func(key string) string {
		line := "vessel = \"" + key + "\""
		return burn("A", "pass", line) + burn("B", "pass", line) + burn("C", "pass", line)
	}
	assert.Equal(t, []string{`must test-burn-missing on container "jar"`}, check(t, recipe(both+in("round"))))
	assert.Equal(t, []string{`must test-burn-missing on mold "round"`}, check(t, recipe(both+in("jar"))))
	assert.Empty(t, check(t, recipe(both+burn("A", "pass")+burn("B", "pass")+burn("C", "pass"))), "not said which: all of them")
	// Melts beside jars have no flame; jars beside melts have one.
	assert.Empty(t, check(t, recipe("  container \"jar\" {}\n  container \"clamshell\" {}\n"+in("jar"))))
	assert.Equal(t, []string{`must test-burn-missing on container "jar"`}, check(t, recipe("  container \"clamshell\" {}\n  container \"jar\" {}\n")))
}

// A burn counts for what was burned and for nothing else.
func TestOnlyBurnsOfThisFormulationCount(t *testing.T) {
	three := func(code string) string {
		return burnOf(code, "A", "pass") + burnOf(code, "B", "pass") + burnOf(code, "C", "pass")
	}
	assert.Empty(t, check(t, recipe(mold+three("@"))))
	for _, other := range []string{"4g0w0vn-3e195k", "not-yet-computed", "q7-3f9a2c"} {
		assert.Equal(t, []string{`must test-burn-stale on "` + other + `"`}, check(t, recipe(mold+three(other))), other)
		assert.Equal(t, []string{`must test-burn-missing on recipe "try"`}, check(t, recipe(mold+burnOf(other, "A", "pass")+burn("B", "pass"))), "too few of either")
		assert.Empty(t, check(t, recipe(mold+three(other)+three("@"))), "burned again since")
		assert.Equal(t, []string{`must test-burn-stale on "` + other + `"`}, check(t, recipe(mold+three(other)+burn("A", "pass")+burn("B", "pass"))), "not yet three again")
	}
	unsaid := strings.ReplaceAll(three("@"), "    formula = \"@\"\n", "")
	assert.Equal(t, []string{`must test-burn-stale on test_burn "2026-10-01"`}, check(t, recipe(mold+unsaid)))
	assert.Equal(t, []string{`consider test-burn-stale on "q7-3f9a2c"`}, check(t, recipe("  made_for = \"own use\"\n"+mold+three("q7-3f9a2c"))))

	// What goes in is not all written: no burn can be held against it.
	report := run(t, "fragrance \"oil\" {}\n"+recipe("  fragrance \"oil\" {}\n"+mold+three("4g0w0vn-3e195k")))
	require.Len(t, report.Findings, 1)
	assert.Equal(t, "test-burn-stale", report.Findings[0].Rule.Name)
	assert.Contains(t, report.Findings[0].Message, "not all written down")
}

// Turned down by the shop, test-burn-stale leaves what it would say to
// test-burn-missing: the three candles are asked for either way.
func TestTuningStaleDownDoesNotCountOldBurns(t *testing.T) {
	tune := "shop \"try\" {\n  tune \"test-burn-stale\" {\n    level = \"off\"\n  }\n}\n"
	old := burnOf("q7-3f9a2c", "A", "pass") + burnOf("q7-3f9a2c", "B", "pass") + burnOf("q7-3f9a2c", "C", "pass")
	assert.Equal(t, []string{`must test-burn-missing on recipe "try"`}, check(t, tune+recipe(mold+old)))
}

// The message names what was changed.
func TestWhatWasChanged(t *testing.T) {
	file := schema.Read("try.candle.hcl", []byte(stock+recipe(mold)))
	shop := lint.NewShop(".", []*schema.File{file})
	was := formula.Of.In(lint.NewView(shop, shop.Find("recipe", "try"), "2026-10-20")).Code
	three := burnOf(was, "A", "pass") + burnOf(was, "B", "pass") + burnOf(was, "C", "pass")
	message := func(body string) string {
		found := run(t, "dye \"red\" {}\nwick \"thick\" {}\n"+recipe(body+three)).Findings
		require.Len(t, found, 1)
		require.Equal(t, "test-burn-stale", found[0].Rule.Name)
		return found[0].Message
	}
	assert.Equal(t, "candles A, B and C of try burned well, but since 2026-10-01 the wick was changed (now wick thick, 1 to a candle); what it was before is not written down; three candles as it is now are wanted before it is sold",
		message("  mold \"round\" {\n    wick = \"thick\"\n  }\n"))
	assert.Contains(t, message(mold+"  dye \"red\" {\n    weight = \"0.6 g\"\n  }\n"), "since 2026-10-01 the dye was added (dye red, 0.2 % of wax); ")
	assert.Contains(t, message("  mold \"round\" {}\n"), "since 2026-10-01 the wick was left out; ")
}

// EN 15493 as publicly described: no flame over 75 mm, on tealights over 30 mm.
func TestFlames(t *testing.T) {
	three := burn("A", "pass") + burn("B", "pass") + burn("C", "pass")
	flame := func(makes, height string) []string {
		return check(t, recipe("  makes = \""+makes+"\"\n"+mold+three+burn("D", "pass", "flame = \""+height+"\"")))
	}
	assert.Empty(t, flame("pillar", "75 mm"))
	assert.Equal(t, []string{`must test-burn-unsafe on "76 mm"`}, flame("pillar", "76 mm"))
	assert.Equal(t, []string{`must test-burn-unsafe on "3 in"`}, flame("pillar", "3 in"), "76.2 mm")
	cup := "container \"cup\" {\n  kind = \"tealight cup\"\n}\n"
	tealight := func(height string) []string {
		return check(t, cup+recipe("  container \"cup\" {\n    wick = \"braid\"\n  }\n"+three+burn("D", "pass", "flame = \""+height+"\"")))
	}
	assert.Empty(t, tealight("30 mm"))
	assert.Equal(t, []string{`must test-burn-unsafe on "31 mm"`}, tealight("31 mm"))

	old := recipe(mold + three + burnOf("4g0w0vn-3e195k", "D", "fail", "flame = \"90 mm\"", "seen = [\"flare\"]"))
	assert.Empty(t, check(t, old), "another formulation: it was changed since")
	unsaid := recipe(mold + three + burnOf("", "D", "pass", "flame = \"90 mm\""))
	assert.Equal(t, []string{`must test-burn-unsafe on "90 mm"`}, check(t, unsaid), "it may be of this one")
}

func TestDoubts(t *testing.T) {
	three := burn("A", "pass") + burn("B", "pass") + burn("C", "pass")
	jar := "container \"wide\" {\n  kind     = \"jar\"\n  diameter = \"80 mm\"\n}\n"
	in := func(wicks string, lines ...string) []string {
		return check(t, jar+recipe("  container \"wide\" {\n    wick = \"braid\"\n"+wicks+"  }\n"+three+burn("D", "pass", lines...)))
	}
	assert.Empty(t, in("", `melt_pool = "60 mm"`, `burned_for = "4 h"`), "three quarters")
	assert.Equal(t, []string{`should test-burn-doubtful on "59 mm"`}, in("", `melt_pool = "59 mm"`, `burned_for = "4 h"`))
	assert.Empty(t, in("", `melt_pool = "59 mm"`, `burned_for = "3 h 59 min"`), "it may still widen")
	assert.Empty(t, in("    wicks = 2\n", `melt_pool = "59 mm"`, `burned_for = "4 h"`), "two pools")
	assert.Empty(t, in("", `pool_depth = "13 mm"`, `wall = "79 °C"`, `seen = ["drip"]`, `soot = "light"`))
	assert.Equal(t, []string{`should test-burn-doubtful on "14 mm"`}, in("", `pool_depth = "14 mm"`))
	assert.Equal(t, []string{`consider test-burn-doubtful on "80 °C"`}, in("", `wall = "80 °C"`))
	assert.Equal(t, []string{`should test-burn-doubtful on "drowned"`}, in("", `seen = ["drowned"]`))
}

func TestToTheEnd(t *testing.T) {
	three := burn("A", "pass") + burn("B", "pass") + burn("C", "pass")
	none := strings.ReplaceAll(three, "to_end = true", "to_end = false")
	assert.Equal(t, []string{`should test-burn-not-to-the-end on recipe "try"`}, check(t, recipe(mold+none)))
	assert.Empty(t, check(t, recipe(mold+none+burn("A", "pass"))), "A ended later")
	assert.Empty(t, check(t, recipe("  made_for = \"own use\"\n"+mold+none)))
}
