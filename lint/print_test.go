package lint_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/schema"
)

const pours = `recipe "tide" {
  title = "Tide"
  step "pour" { at = "186 °F" }
  step "cool" { for = "2 h" }
  step "pour" { at = "186 °F" }
}
`

// hot flags every pour, and the recipe's title.
func hot() []*lint.Rule {
	return []*lint.Rule{{Name: "pour-too-hot", Levels: lint.Every(lint.Should), Check: func(p *lint.Pass) {
		for step := range p.Recipe.Each("step") {
			if step.Label == "pour" {
				p.Report(lint.Finding{At: lint.AtValue(step.Get("at")), Message: step.Get("at").Written() + " is too hot"})
			}
		}
		p.Report(lint.Finding{At: lint.AtHeader(p.Recipe), Message: "a pour is too hot"})
		p.CannotCheck(p.Recipe, "pot")
	}}}
}

func printsOf(t *testing.T, name, text string) (found, unchecked []string) {
	t.Helper()
	shop := lint.NewShop(".", []*schema.File{schema.Read(name, []byte(text))})
	r := lint.Run(shop, hot(), "2026-10-20")
	require.Len(t, r.Unchecked, 1)
	return lint.Prints(r.Findings), lint.UncheckedPrints(r.Unchecked)
}

// A print stays with its finding while the text around it changes, and goes
// with what the finding says.
func TestPrints(t *testing.T) {
	found, unchecked := printsOf(t, "a.candle.hcl", pours)
	require.Len(t, found, 3)
	for i, a := range found {
		assert.NotContains(t, found[i+1:], a, "equal findings have prints of their own")
	}
	for change, text := range map[string]string{
		"lines above":      "# a\n\nwax \"north\" {\n}\n" + pours,
		"a line inside":    strings.Replace(pours, "title", "notes = \"new\"\n  title", 1),
		"layout":           strings.NewReplacer(" = ", "   =  ", "\n  ", "\n\t\t").Replace(pours),
		"CRLF":             strings.ReplaceAll(pours, "\n", "\r\n"),
		"byte order print": "\uFEFF" + pours,
		"another title":    strings.Replace(pours, `"Tide"`, `"Low tide"`, 1),
	} {
		again, still := printsOf(t, "a.candle.hcl", text)
		assert.Equal(t, found, again, change)
		assert.Equal(t, unchecked, still, change)
	}
	again, still := printsOf(t, "b/c.candle.hcl", pours)
	assert.Equal(t, found, again, "another file")
	assert.Equal(t, unchecked, still)

	hotter, _ := printsOf(t, "a.candle.hcl", strings.Replace(pours, "186 °F", "196 °F", 1))
	assert.NotContains(t, found, hotter[1], "another temperature is another finding")
	assert.Equal(t, found[0], hotter[0])
	assert.Equal(t, found[1], hotter[2], "the one that is left is the first of its kind now")

	other, elsewhere := printsOf(t, "a.candle.hcl", strings.Replace(pours, `"tide"`, `"ebb"`, 1))
	for _, print := range other {
		assert.NotContains(t, found, print, "another recipe")
	}
	assert.NotEqual(t, unchecked, elsewhere)
}

// Where nothing could be read as a block, the file stands in its place.
func TestPrintsOfAFile(t *testing.T) {
	rule := &lint.Rule{Name: "syntax", Levels: lint.Every(lint.Must), About: lint.AboutFormat}
	print := func(name string) string {
		shop := lint.NewShop(".", []*schema.File{schema.Read(name, []byte("= 3\n"))})
		r := lint.Run(shop, []*lint.Rule{rule}, "2026-10-20")
		require.NotEmpty(t, r.Findings)
		return lint.Prints(r.Findings)[0]
	}
	assert.Equal(t, print("a.candle.hcl"), print("a.candle.hcl"))
	assert.NotEqual(t, print("a.candle.hcl"), print("b.candle.hcl"))
}
