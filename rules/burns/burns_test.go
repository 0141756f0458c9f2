package burns_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/burns"
	"wickrule/schema"
)

const stock = `
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

func run(t testing.TB, text string) *lint.Report {
	t.Helper()
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

func recipe(body string) string { return "recipe \"try\" {\n" + body + "}\n" }

func burn(candle, result string, lines ...string) string {
	text := "  test_burn \"2026-10-01\" {\n    candle = \"" + candle + "\"\n    result = \"" + result + "\"\n"
	for _, line := range lines {
		text += "    " + line + "\n"
	}
	return text + "  }\n"
}

const mold = "  mold \"round\" {}\n"

// Three candles that passed: common practice, after ASTM F2417 (from memory).
func TestThreeCandles(t *testing.T) {
	missing := []string{`must test-burn-missing on recipe "try"`}
	three := burn("A", "pass") + burn("B", "pass") + burn("C", "pass")
	assert.Empty(t, check(t, recipe(mold+three)))
	assert.Equal(t, missing, check(t, recipe(mold)))
	assert.Equal(t, missing, check(t, recipe(mold+burn("A", "pass")+burn("B", "pass"))))
	assert.Equal(t, missing, check(t, recipe(mold+burn("A", "pass")+burn("A", "pass")+burn("A", "pass"))), "one candle, burned three times")
	assert.Equal(t, missing, check(t, recipe(mold+burn("A", "pass")+burn("B", "pass")+burn("C", "fail"))))
	assert.Equal(t, missing, check(t, recipe(mold+three+burn("C", "fail"))), "a candle that failed once has not passed")
	assert.Equal(t, missing, check(t, recipe(mold+burn("A", "pass")+burn("B", "pass")+"  test_burn \"2026-10-01\" {\n    candle = \"C\"\n  }\n")), "no verdict is no pass")
	assert.Equal(t, missing, check(t, recipe(mold+burn("A", "pass")+burn("B", "pass")+"  test_burn \"2026-10-01\" {\n    result = \"pass\"\n  }\n")), "which candle was it?")
	assert.Empty(t, check(t, recipe(mold+three+burn("D", "fail"))), "three of four passed, and what failed is another rule's")

	log := "test_burn \"2026-10-02\" {\n  recipe = \"try\"\n  candle = \"C\"\n  result = \"pass\"\n}\n"
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
