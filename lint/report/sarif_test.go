package report_test

import (
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

func sarifOf(t *testing.T, d *report.Document) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, report.SARIF(&b, d))
	return b.String()
}

// published is the standard's own JSON Schema (testdata/sarif/NOTICE), with
// its formats held to.
func published(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := os.ReadFile("testdata/sarif/sarif-schema-2.1.0.json")
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(string(text)))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	require.NoError(t, c.AddResource("sarif.json", doc))
	s, err := c.Compile("sarif.json")
	require.NoError(t, err)
	return s
}

// full is a document with something of everything.
func full(t *testing.T) *report.Document {
	t.Helper()
	d := document(t, faulty())
	d.Unread = []report.Unread{{Shop: "larkspur", ReadError: lint.ReadError{Name: "closed.candle.hcl", Err: errors.New("it may not be read")}}}
	d.Origin = report.Origin{Version: "1.0.0", Base: "/home/quay/our shops", Here: "."}
	d.Level = lint.Should
	d.LeftOut = []string{"Left out, since known.json lists it: 1 finding in 1 recipe (1 must)."}
	for _, f := range d.Shops[0].Findings {
		if f.Level == lint.Must {
			f.Message = "7 % of wax was over the limit {before}"
			d.Standing = []report.Standing{{Shop: d.Shops[0].Shop, Found: f, Print: "5f1c", Why: "known from known.json: the old molds"}}
		}
	}
	return d
}

// What is written keeps to the schema that OASIS publishes with the standard,
// and each of its keys matters to it: misspelt, it is noticed.
func TestSARIFSchema(t *testing.T) {
	schema := published(t)
	text := sarifOf(t, full(t))
	same(t, "report.sarif", text)
	for _, text := range []string{text, sarifOf(t, &report.Document{})} {
		value, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		require.NoError(t, err)
		assert.NoError(t, schema.Validate(value))
	}
	for _, key := range []string{"version", "runs", "tool", "driver", "name", "rules", "notifications", "id", "shortDescription", "defaultConfiguration",
		"help", "markdown", "invocations", "executionSuccessful", "toolExecutionNotifications", "descriptor", "originalUriBaseIds", "columnKind", "newlineSequences",
		"results", "ruleId", "ruleIndex", "level", "message", "locations", "physicalLocation", "artifactLocation", "uri", "uriBaseId", "region", "startLine",
		"endColumn", "snippet", "relatedLocations", "logicalLocations", "partialFingerprints", "suppressions", "kind", "status", "justification",
		"fixes", "artifactChanges", "replacements", "deletedRegion", "insertedContent"} {
		misspelt := strings.Replace(text, `"`+key+`":`, `"`+key+`x":`, 1)
		require.NotEqual(t, text, misspelt, key)
		value, err := jsonschema.UnmarshalJSON(strings.NewReader(misspelt))
		require.NoError(t, err)
		assert.Error(t, schema.Validate(value), "%s misspelt", key)
	}
}

// sarifRead is what a reader of the form needs of it.
type sarifRead struct {
	Runs []struct {
		ColumnKind         string
		OriginalURIBaseIDs map[string]struct{ URI string }
		Tool               struct {
			Driver struct {
				Rules []struct {
					ID                   string
					DefaultConfiguration struct{ Level string }
				}
			}
		}
		Invocations []struct {
			ExecutionSuccessful        bool
			ToolExecutionNotifications []struct {
				Descriptor struct{ ID string }
				Level      string
				Message    struct{ Text string }
			}
		}
		Results []sarifReadResult
	}
}

type sarifReadResult struct {
	RuleID              string
	RuleIndex           int
	Level               string
	Message             struct{ Text string }
	Locations           []sarifReadLocation
	RelatedLocations    []sarifReadLocation
	PartialFingerprints map[string]string
	Properties          struct{ LeftOut string }
	Suppressions        []struct{ Kind, Status, Justification string }
	Fixes               []struct {
		ArtifactChanges []struct {
			ArtifactLocation struct{ URI string }
			Replacements     []struct {
				DeletedRegion   sarifReadRegion
				InsertedContent struct{ Text string }
			}
		}
	}
}

type sarifReadLocation struct {
	PhysicalLocation struct {
		ArtifactLocation struct{ URI, URIBaseID string }
		Region           sarifReadRegion
	}
}

type sarifReadRegion struct{ StartLine, StartColumn, EndLine, EndColumn int }

func readSARIF(t *testing.T, d *report.Document) sarifRead {
	t.Helper()
	var log sarifRead
	require.NoError(t, json.Unmarshal([]byte(sarifOf(t, d)), &log))
	require.Len(t, log.Runs, 1)
	return log
}

// offset is the byte at a line and a column, counted in code points as the
// standard says (3.30, with the run's columnKind and newlineSequences): found
// by walking along, unlike in the program.
func offset(text string, line, column int) int {
	atLine, atColumn := 1, 1
	for i, r := range text {
		if r == '\uFEFF' && i == 0 {
			continue // a byte order mark is no part of the text
		}
		if atLine == line && atColumn == column {
			return i
		}
		switch {
		case r == '\r' && strings.HasPrefix(text[i:], "\r\n"):
			atColumn++
		case r == '\n' || r == '\r':
			atLine, atColumn = atLine+1, 1
		default:
			atColumn++
		}
	}
	return len(text)
}

func (r sarifReadRegion) of(text string) string {
	return text[offset(text, r.StartLine, r.StartColumn):offset(text, r.EndLine, r.EndColumn)]
}

// A reader that makes a fix by the standard's words gets what mend writes, and
// the regions cover the characters that are meant, whatever the lines end with
// and however many bytes and UTF-16 units the signs before them take.
func TestSARIFFixesAndRegions(t *testing.T) {
	plain := "recipe \"tide\" {\n  step \"pour\" {\n    at = \"186 °F\" # 🕯°\n  }\n  /* 🕯 */ title = \"°🕯 teh tide\"\n}\n"
	rule := &lint.Rule{Name: "heat", Levels: lint.Every(lint.Should), Check: func(p *lint.Pass) {
		step, title := inner(p.Recipe, "step"), p.Recipe.Get("title")
		p.Report(lint.Finding{At: lint.AtValue(title), Message: "spelling", Fixes: func() []schema.Fix {
			return []schema.Fix{{Title: "put two things right", Edits: []schema.Edit{
				rewrite("", true, title, "\"°🕯 the tide\"").Edits[0],
				schema.SetValue(step.Get("leave"), `"3/8 in"`),
				rewrite("", true, step.Get("at"), `"182 °F"`).Edits[0],
			}}}
		}})
	}}
	for name, text := range map[string]string{
		"LF": plain, "CRLF": strings.ReplaceAll(plain, "\n", "\r\n"), "CR": strings.ReplaceAll(plain, "\n", "\r"), "byte order mark": "\uFEFF" + plain,
	} {
		shop := load(t, "quay", map[string]string{"tide.candle.hcl": text})
		rules := []*lint.Rule{rule}
		d := &report.Document{Shops: []*lint.Report{lint.Run(shop, rules, today)}}
		run := readSARIF(t, d).Runs[0]
		require.Len(t, run.Results, 1, name)
		result := run.Results[0]
		assert.Equal(t, `"°🕯 teh tide"`, result.Locations[0].PhysicalLocation.Region.of(text), name)

		require.Len(t, result.Fixes, 1, name)
		require.Len(t, result.Fixes[0].ArtifactChanges, 1)
		change := result.Fixes[0].ArtifactChanges[0]
		assert.Equal(t, "quay/tide.candle.hcl", change.ArtifactLocation.URI)
		fixed := text
		for i := len(change.Replacements) - 1; i >= 0; i-- {
			r := change.Replacements[i]
			from, to := offset(text, r.DeletedRegion.StartLine, r.DeletedRegion.StartColumn), offset(text, r.DeletedRegion.EndLine, r.DeletedRegion.EndColumn)
			fixed = fixed[:from] + r.InsertedContent.Text + fixed[to:]
		}
		made := &lint.Rule{Name: "heat", Levels: rule.Levels, Check: func(p *lint.Pass) {
			if strings.Contains(p.Recipe.Get("title").Text(), "teh") {
				rule.Check(p)
			}
		}}
		mended := lint.Mend(shop, func(*lint.Shop) []*lint.Rule { return []*lint.Rule{made} }, today, lint.MendOptions{All: true, Covers: func(string) bool { return true }})
		require.Len(t, mended.Changed, 1, name)
		assert.Equal(t, mended.Changed[0].Text, fixed, name)
		assert.Contains(t, fixed, `leave = "3/8 in"`)
	}
}

// Results point at a rule of theirs, conceded ones are suppressed in the
// source with their reason, and what could not be checked is told.
func TestSARIFResults(t *testing.T) {
	run := readSARIF(t, full(t)).Runs[0]
	assert.Equal(t, "unicodeCodePoints", run.ColumnKind)
	assert.Equal(t, "file:///home/quay/our%20shops/", run.OriginalURIBaseIDs["RECIPES"].URI)
	suppressed, fingerprints := 0, map[string]bool{}
	for _, r := range run.Results {
		assert.Equal(t, r.RuleID, run.Tool.Driver.Rules[r.RuleIndex].ID)
		assert.Equal(t, "RECIPES", r.Locations[0].PhysicalLocation.ArtifactLocation.URIBaseID)
		fingerprints[r.PartialFingerprints["wickrulePrint/v1"]] = true
		if len(r.Suppressions) > 0 {
			suppressed++
			assert.Equal(t, "batch-left-over", r.RuleID)
			assert.Equal(t, "inSource", r.Suppressions[0].Kind)
			assert.Equal(t, "accepted", r.Suppressions[0].Status)
			assert.Equal(t, "The spare goes into tealights the same day", r.Suppressions[0].Justification)
		}
	}
	assert.Equal(t, 1, suppressed)
	assert.Len(t, fingerprints, len(run.Results), "each result has its own")

	levels := map[string]string{"fragrance-over-limit": "error", "pour-too-hot": "warning", "made-for-missing": "note"}
	standing := 0
	for _, r := range run.Results {
		if r.Properties.LeftOut != "" {
			standing++
			assert.Equal(t, "error", r.Level, "what must be put right is hidden by nothing")
			assert.Empty(t, r.Suppressions)
			assert.Equal(t, "known from known.json: the old molds", r.Properties.LeftOut)
			assert.Equal(t, "5f1c", r.PartialFingerprints["wickrulePrint/v1"])
		}
	}
	assert.Equal(t, 1, standing)
	for _, r := range run.Results {
		if level, ok := levels[r.RuleID]; ok {
			assert.Equal(t, level, r.Level)
			assert.Equal(t, level, run.Tool.Driver.Rules[r.RuleIndex].DefaultConfiguration.Level)
		}
	}
	assert.Equal(t, "fragrance_limit = \"6 % of wax\"", "fragrance_limit = "+findSARIF(t, run.Results, "fragrance-over-limit").RelatedLocations[0].PhysicalLocation.Region.of(shopFiles["stock/waxes.candle.hcl"]))

	invocation := run.Invocations[0]
	assert.False(t, invocation.ExecutionSuccessful)
	told := map[string]string{}
	for _, n := range invocation.ToolExecutionNotifications {
		told[n.Descriptor.ID] = n.Level + ": " + n.Message.Text
	}
	assert.Equal(t, map[string]string{
		"left-out":     "note: Left out, since known.json lists it: 1 finding in 1 recipe (1 must).",
		"cannot-check": "warning: Northlight paraffin does not state flash_point, so this could not be checked: fragrance-over-limit",
		"cannot-read":  "error: larkspur/closed.candle.hcl: it may not be read",
		"fault":        "error: The check never-ends-well stopped, the others went on: nil wax. It was looking at recipes/skerry.candle.hcl, line 1.",
	}, told)
	assert.True(t, readSARIF(t, document(t)).Runs[0].Invocations[0].ExecutionSuccessful)
}

func findSARIF(t *testing.T, results []sarifReadResult, rule string) sarifReadResult {
	t.Helper()
	for _, r := range results {
		if r.RuleID == rule {
			return r
		}
	}
	require.Fail(t, rule)
	return sarifReadResult{}
}

// Braces hold places for arguments in the standard's messages (3.11.5), and
// [..](..) is a link (3.11.6): what a message says is neither.
func TestSARIFMessages(t *testing.T) {
	rule := &lint.Rule{Name: "braces", Levels: lint.Every(lint.Must), Check: func(p *lint.Pass) {
		p.Report(lint.Finding{At: lint.AtHeader(p.Recipe), Message: "step \"pour\" { at = {0} } and [here](1)"})
	}}
	shop := load(t, ".", map[string]string{"a.candle.hcl": "recipe \"a\" {\n}\n"})
	run := readSARIF(t, &report.Document{Shops: []*lint.Report{lint.Run(shop, []*lint.Rule{rule}, today)}}).Runs[0]
	assert.Equal(t, "step \"pour\" {{ at = {{0}} }} and [here] (1)", run.Results[0].Message.Text)
}

// Addresses are relative to the top of the repository wherever the check was
// made from, and absolute for what lies elsewhere; RFC 3986 and RFC 8089 say
// how they are written.
func TestSARIFAddresses(t *testing.T) {
	for _, c := range []struct{ base, here, root, name, want string }{
		{"/home/quay", ".", "shop", "recipes/a b.candle.hcl", "shop/recipes/a%20b.candle.hcl"},
		{"/home/quay", ".", ".", "recipes/100 %.candle.hcl", "recipes/100%20%25.candle.hcl"},
		{"/home/quay", "shop/recipes", "..", "recipes/a.candle.hcl", "shop/recipes/a.candle.hcl"},
		{"/home/quay", "shop", ".", "../house-rules/a.candle.hcl", "house-rules/a.candle.hcl"},
		{"/home/quay", ".", ".", "c:a.candle.hcl", "./c:a.candle.hcl"},
		{"/home/quay", ".", ".", "Kerzen für Öl.candle.hcl", "Kerzen%20f%C3%BCr%20%C3%96l.candle.hcl"},
		{"/home/quay", ".", "../other", "a.candle.hcl", "file:///home/other/a.candle.hcl"},
		{"/home/quay", "x", "/srv/shop", "a.candle.hcl", "file:///srv/shop/a.candle.hcl"},
		{"C:/quay", ".", "shop", "a.candle.hcl", "shop/a.candle.hcl"},
		{"C:/quay", ".", "D:/shop", "a b.candle.hcl", "file:///D:/shop/a%20b.candle.hcl"},
		{"C:/quay", ".", "../other", "a.candle.hcl", "file:///C:/other/a.candle.hcl"},
		{"C:/quay", ".", "//nas/wax/shop", "a.candle.hcl", "file://nas/wax/shop/a.candle.hcl"},
		{"//nas/wax/quay", ".", "../other", "a.candle.hcl", "file://nas/wax/other/a.candle.hcl"},
	} {
		shop := load(t, c.root, map[string]string{"a.candle.hcl": "recipe \"a\" {\n}\n"})
		file := schema.Read(c.name, []byte("recipe \"b\" {\n}\n"))
		r := lint.Run(shop.With(file), testRules()[2:3], today)
		run := readSARIF(t, &report.Document{Shops: []*lint.Report{r}, Origin: report.Origin{Base: c.base, Here: c.here}}).Runs[0]
		var got []string
		for _, result := range run.Results {
			at := result.Locations[0].PhysicalLocation.ArtifactLocation
			got = append(got, at.URI)
			assert.Equal(t, strings.HasPrefix(at.URI, "file:"), at.URIBaseID == "")
		}
		assert.Contains(t, got, c.want)
	}
	for base, want := range map[string]string{"/": "file:///", "/a b": "file:///a%20b/", "C:/": "file:///C:/", "c:/a": "file:///c:/a/", "//nas/wax": "file://nas/wax/", "": ""} {
		run := readSARIF(t, &report.Document{Origin: report.Origin{Base: base, Here: "."}}).Runs[0]
		assert.Equal(t, want, run.OriginalURIBaseIDs["RECIPES"].URI)
	}
}
