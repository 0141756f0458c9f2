package report_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/lint/report"
)

func markdownOf(t *testing.T, d *report.Document) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, report.Markdown(&b, d))
	return b.String()
}

func TestMarkdown(t *testing.T) {
	text := markdownOf(t, full(t))
	same(t, "summary.md", text)
	assert.Less(t, strings.Index(text, "| Tide and thyme pillar"), strings.Index(text, "| Skerry jar"), "the most serious first")
	assert.Less(t, strings.Index(text, "7 % of wax is over"), strings.Index(text, "186 °F"))
}

// What a file says is no markup, and a great many recipes make no page that no
// host shows.
func TestMarkdownOfWildTexts(t *testing.T) {
	files := map[string]string{}
	for i := range 150 {
		files[fmt.Sprintf("%03d.candle.hcl", i)] = fmt.Sprintf("recipe \"r%d\" {\n  title = \"<b>*R*|%d`\"\n}\n", i, i)
	}
	text := markdownOf(t, &report.Document{Shops: []*lint.Report{lint.Run(load(t, ".", files), testRules()[2:3], today)}})
	assert.Contains(t, text, "| \\<b\\>\\*R\\*\\|7\\` |  |  | 1 |\n")
	assert.NotContains(t, text, "R\\*\\|100")
	assert.Contains(t, text, "…and 50 recipes with less. `wickrule check` tells of all.")
}
