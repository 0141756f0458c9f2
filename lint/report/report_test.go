package report_test

import (
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/lint/report"
)

// same compares with a file of testdata.
func same(t *testing.T, file, got string) {
	t.Helper()
	want, err := os.ReadFile("testdata/" + file)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, "testdata/%s", file)
}

func text(t *testing.T, d *report.Document, look report.Look) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, report.Text(&b, d, look))
	return b.String()
}

func faulty() *lint.Rule {
	return &lint.Rule{Name: "never-ends-well", Levels: lint.Every(lint.Must), Check: func(p *lint.Pass) {
		if p.Recipe.Label == "skerry" {
			panic("nil wax")
		}
	}}
}

func TestText(t *testing.T) {
	same(t, "text.txt", text(t, document(t), report.Look{}))
	same(t, "fault.txt", text(t, document(t, faulty()), report.Look{Width: 100}))
}

func TestTextOfSeveralShops(t *testing.T) {
	d := document(t)
	second := load(t, "annex", map[string]string{"loose.candle.hcl": "recipe \"loose\" {\n}\n"})
	d.Shops = append(d.Shops, lint.Run(second, testRules()[2:3], today))
	d.Unread = []report.Unread{{Shop: "annex", ReadError: lint.ReadError{Name: "closed.candle.hcl", Err: errors.New("it may not be read")}}}
	same(t, "several.txt", text(t, d, report.Look{Width: 72}))
}

// Whatever the width, no line is wider, and no word of a message is lost.
func TestTextFitsTheWidth(t *testing.T) {
	for _, width := range []int{1, 40, 57, 80, 100, 300} {
		out := text(t, document(t), report.Look{Width: width})
		for line := range strings.Lines(out) {
			assert.LessOrEqual(t, uniseg.StringWidth(strings.TrimRight(line, "\n")), min(max(width, 40), 100), "%q", line)
		}
		plain := strings.Join(strings.Fields(out), " ")
		assert.Contains(t, plain, "7 % of wax is over what Northlight paraffin holds (6 % of wax) by 13 g")
		assert.Contains(t, plain, "limit stated in stock/waxes.candle.hcl, line 4")
	}
}

// Color changes nothing but color, and what a file holds cannot steer the
// terminal.
func TestTextColor(t *testing.T) {
	plain := text(t, document(t), report.Look{})
	assert.NotContains(t, plain, "\x1b", "the escape in the comment of the flagged line is taken out")
	color := text(t, document(t), report.Look{Color: true})
	assert.Contains(t, color, "\x1b[1;31mmust\x1b[0m")
	for _, code := range []string{"\x1b[1m", "\x1b[2m", "\x1b[1;31m", "\x1b[33m", "\x1b[36m", "\x1b[0m"} {
		color = strings.ReplaceAll(color, code, "")
	}
	assert.Equal(t, plain, color)
}

func TestVerdictWhereAllIsWell(t *testing.T) {
	d := &report.Document{Shops: []*lint.Report{lint.Run(load(t, ".", shopFiles), nil, today)}}
	out := text(t, d, report.Look{})
	assert.True(t, strings.HasPrefix(out, "2 recipes checked: nothing found that must or should be put right.\n"), out)
	assert.Contains(t, strings.Join(strings.Fields(out), " "), report.Caution)
}

func TestLines(t *testing.T) {
	var b strings.Builder
	require.NoError(t, report.Lines(&b, document(t)))
	same(t, "lines.txt", b.String())
}

func TestLoudest(t *testing.T) {
	d := document(t)
	assert.Equal(t, lint.Must, d.Loudest())
	assert.True(t, d.Complete())
	assert.False(t, document(t, faulty()).Complete())

	rules := testRules()[3:4] // the one finding is conceded
	d = &report.Document{Shops: []*lint.Report{lint.Run(load(t, ".", shopFiles), rules, today)}}
	require.Len(t, d.Shops[0].Conceded, 1)
	assert.Equal(t, lint.Silent, d.Loudest(), "what is conceded does not count")
}

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(report.Schema))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	c.AssertFormat()
	require.NoError(t, c.AddResource("report.schema.json", doc))
	s, err := c.Compile("report.schema.json")
	require.NoError(t, err)
	return s
}

func jsonOf(t *testing.T, d *report.Document) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, report.JSON(&b, d))
	return b.String()
}

// The published schema holds for what is written, and for nothing less:
// leaving out or misspelling any one key of the report is noticed.
func TestJSONSchema(t *testing.T) {
	schema := compiled(t)
	d := full(t)
	for _, doc := range []*report.Document{{}, d} {
		value, err := jsonschema.UnmarshalJSON(strings.NewReader(jsonOf(t, doc)))
		require.NoError(t, err)
		assert.NoError(t, schema.Validate(value))
	}

	full := jsonOf(t, d)
	for _, key := range []string{"wickrule", "checked", "files", "recipes", "findings", "conceded", "unchecked", "faults",
		"level", "column", "line", "byte", "start", "end", "notes", "fixes", "title", "safe", "edits", "text", "needs", "rules", "concession", "reason", "until", "left_out", "standing", "why"} {
		misspelt := strings.Replace(full, `"`+key+`":`, `"`+key+`x":`, 1)
		require.NotEqual(t, full, misspelt, key)
		value, err := jsonschema.UnmarshalJSON(strings.NewReader(misspelt))
		require.NoError(t, err)
		assert.Error(t, schema.Validate(value), "%s misspelt", key)
	}
}

func TestJSON(t *testing.T) {
	out := jsonOf(t, document(t))
	same(t, "report.json", out)
	assert.Equal(t, out, jsonOf(t, document(t)), "the same input gives the same bytes")
}

// Lines and columns count from 1, columns in Unicode code points; byte is the
// exact offset (UTF-8, RFC 3629: the degree sign takes two bytes, the candle
// four).
func TestJSONPositions(t *testing.T) {
	source := "recipe \"°🕯\" {\n}\n"
	shop := load(t, ".", map[string]string{"a.candle.hcl": source})
	rule := &lint.Rule{Name: "r", Levels: lint.Every(lint.Must), Check: func(p *lint.Pass) {
		p.Report(lint.Finding{At: lint.AtLabel(p.Recipe), Message: "m"})
	}}
	var got struct {
		Findings []struct {
			Span struct {
				Start, End struct{ Line, Column, Byte int }
			}
		}
	}
	out := jsonOf(t, &report.Document{Shops: []*lint.Report{lint.Run(shop, []*lint.Rule{rule}, today)}})
	require.NoError(t, json.Unmarshal([]byte(out), &got))
	require.Len(t, got.Findings, 1)
	span := got.Findings[0].Span
	assert.Equal(t, [6]int{1, 8, 7, 1, 12, 15}, [6]int{span.Start.Line, span.Start.Column, span.Start.Byte, span.End.Line, span.End.Column, span.End.Byte})
	assert.Equal(t, `"°🕯"`, source[span.Start.Byte:span.End.Byte])
}

// A line of a file stands as it is, its spaces too; one that is too wide goes
// on below, indented under itself.
func TestWrittenLines(t *testing.T) {
	p := report.NewPage(report.Look{Width: 40})
	p.Written("  12  ", "  to   = \"186 °F\"\n")
	p.Written("  13  ", "  say = \"Slowly, down the side, so that no air goes with it.\"")
	assert.Equal(t, `  12    to   = "186 °F"
  13    say = "Slowly, down the side,
          so that no air goes with it."
`, p.String())
}
