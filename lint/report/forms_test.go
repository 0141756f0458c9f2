package report_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/lint/report"
)

func forms(t *testing.T) *report.Document {
	d := document(t, faulty())
	d.Version, d.Level = "1.2.3", lint.Must
	d.Unread = []report.Unread{{Shop: "quay", ReadError: lint.ReadError{Name: "closed {1}.candle.hcl", Err: errors.New("it may not be read")}}}
	return d
}

// The schema is that of the OASIS standard SARIF 2.1.0 with errata 01, as
// published at docs.oasis-open.org.
func TestSARIFIsTheStandards(t *testing.T) {
	compiler := jsonschema.NewCompiler()
	file, err := os.Open("testdata/sarif-schema-2.1.0.json")
	require.NoError(t, err)
	defer file.Close()
	doc, err := jsonschema.UnmarshalJSON(file)
	require.NoError(t, err)
	require.NoError(t, compiler.AddResource("sarif.json", doc))
	compiler.AssertFormat()
	standard, err := compiler.Compile("sarif.json")
	require.NoError(t, err)
	valid := func(text string) error {
		value, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
		require.NoError(t, err)
		return standard.Validate(value)
	}
	for _, d := range []*report.Document{forms(t), {}, document(t)} {
		var out bytes.Buffer
		require.NoError(t, report.SARIF(&out, d))
		require.NoError(t, valid(out.String()))
	}
	var out bytes.Buffer
	require.NoError(t, report.SARIF(&out, forms(t)))
	require.Error(t, valid(strings.Replace(out.String(), `"columnKind": "unicodeCodePoints"`, `"columnKind": "bytes"`, 1)), "the schema sees to something")
	require.Error(t, valid(strings.Replace(out.String(), `"startLine": `, `"startLine": -`, 1)))
}

// sarifLog is what a reader of the standard's form looks at.
type sarifLog struct {
	Runs []struct {
		Tool struct {
			Driver struct{ Rules []struct{ ID string } }
		}
		Results []struct {
			RuleID              string
			RuleIndex           int
			Level               string
			Message             struct{ Text string }
			PartialFingerprints map[string]string
			Locations           []struct {
				PhysicalLocation struct {
					ArtifactLocation struct{ URI, URIBaseID string }
					Region           region
				}
			}
			Fixes []struct {
				ArtifactChanges []struct {
					ArtifactLocation struct{ URI string }
					Replacements     []struct {
						DeletedRegion   region
						InsertedContent struct{ Text string }
					}
				}
			}
			Suppressions []struct{ Kind, Status, Justification string }
		}
		Invocations []struct {
			ExecutionSuccessful                                        bool
			ToolExecutionNotifications, ToolConfigurationNotifications []struct {
				Level   string
				Message struct{ Text string }
			}
		}
	}
}

type region struct{ StartLine, StartColumn, EndLine, EndColumn int }

// at is the bytes of a text between two places whose columns count code points.
func (r region) at(text string) (from, to int) {
	offset := func(line, column int) int {
		at := 0
		for range line - 1 {
			at += strings.IndexByte(text[at:], '\n') + 1
		}
		runes := []rune(text[at:])
		return at + len(string(runes[:column-1]))
	}
	return offset(r.StartLine, r.StartColumn), offset(r.EndLine, r.EndColumn)
}

func TestSARIFSaysWhatWasFound(t *testing.T) {
	d := forms(t)
	var out bytes.Buffer
	require.NoError(t, report.SARIF(&out, d))
	var log sarifLog
	require.NoError(t, json.Unmarshal(out.Bytes(), &log))
	require.Len(t, log.Runs, 1)
	run := log.Runs[0]
	shop := d.Shops[0]
	require.Len(t, run.Results, len(shop.Findings)+len(shop.Conceded))
	fixes := 0
	for i := range shop.Findings {
		f, r := &shop.Findings[i], run.Results[i]
		assert.Equal(t, f.Rule.Name, r.RuleID)
		assert.Equal(t, r.RuleID, run.Tool.Driver.Rules[r.RuleIndex].ID)
		assert.Equal(t, map[lint.Level]string{lint.Must: "error", lint.Should: "warning", lint.Consider: "note"}[f.Level], r.Level)
		place := r.Locations[0].PhysicalLocation
		text := f.At.File.Text.String()
		from, to := place.Region.at(text)
		assert.Equal(t, f.At.Span, f.At.Span)
		assert.Equal(t, []int{int(f.At.Span.Start), int(f.At.Span.End)}, []int{from, to}, r.Message.Text)
		assert.Equal(t, "STARTFOLDER", place.ArtifactLocation.URIBaseID)
		for j, fix := range f.Repairs() {
			for k, e := range fix.Edits {
				change := r.Fixes[j].ArtifactChanges[0].Replacements[k]
				from, to := change.DeletedRegion.at(e.File.Text.String())
				assert.Equal(t, []int{int(e.Span.Start), int(e.Span.End)}, []int{from, to})
				assert.Equal(t, e.Text, change.InsertedContent.Text)
				fixes++
			}
		}
	}
	assert.Positive(t, fixes)
	require.NotEmpty(t, shop.Conceded)
	last := run.Results[len(shop.Findings)]
	require.Len(t, last.Suppressions, 1)
	assert.Equal(t, "inSource", last.Suppressions[0].Kind)
	assert.NotEmpty(t, last.Suppressions[0].Justification)
	call := run.Invocations[0]
	assert.False(t, call.ExecutionSuccessful)
	assert.Len(t, call.ToolExecutionNotifications, len(shop.Unchecked)+len(shop.Faults))
	require.Len(t, call.ToolConfigurationNotifications, 1)
	assert.Contains(t, call.ToolConfigurationNotifications[0].Message.Text, "closed {{1}}.candle.hcl", "braces would be places to be filled in")
}

// A print outlasts moved lines and another layout, and tells apart what only
// its place tells apart.
func TestPrintsLast(t *testing.T) {
	prints := func(text string) []string {
		shop := load(t, "quay", map[string]string{"a.candle.hcl": text})
		found := lint.Run(shop, testRules(), today).Findings
		require.NotEmpty(t, found)
		return lint.Prints(found)
	}
	text := "recipe \"one\" {\n  step \"pour\" {\n    at = \"200 °F\"\n  }\n  step \"pour\" {\n    at = \"200 °F\"\n  }\n}\n"
	was := prints(text)
	assert.Equal(t, was, prints("# above\n\n"+strings.ReplaceAll(text, "  ", "\t")))
	seen := map[string]bool{}
	for _, p := range was {
		assert.False(t, seen[p], "two findings have one print")
		seen[p] = true
	}
	assert.NotEqual(t, was, prints(strings.Replace(text, "one", "two", 1)), "of another recipe")
}

func TestJUnit(t *testing.T) {
	d := forms(t)
	var out bytes.Buffer
	require.NoError(t, report.JUnit(&out, d))
	type testcase struct {
		Name     string `xml:"name,attr"`
		Class    string `xml:"classname,attr"`
		Failures []struct {
			Type    string `xml:"type,attr"`
			Message string `xml:"message,attr"`
		} `xml:"failure"`
		Errors []struct{} `xml:"error"`
		Out    string     `xml:"system-out"`
	}
	var suites struct {
		Tests    int `xml:"tests,attr"`
		Failures int `xml:"failures,attr"`
		Errors   int `xml:"errors,attr"`
		Suites   []struct {
			Tests int        `xml:"tests,attr"`
			Cases []testcase `xml:"testcase"`
		} `xml:"testsuite"`
	}
	require.NoError(t, xml.Unmarshal(out.Bytes(), &suites))
	cases, failing, erring, failures := 0, 0, 0, 0
	for _, s := range suites.Suites {
		assert.Equal(t, len(s.Cases), s.Tests)
		for _, c := range s.Cases {
			cases++
			failures += len(c.Failures)
			switch {
			case len(c.Errors) > 0:
				erring++
			case len(c.Failures) > 0:
				failing++
			}
		}
	}
	assert.Equal(t, []int{cases, failing, erring}, []int{suites.Tests, suites.Failures, suites.Errors})
	assert.Equal(t, d.Count(lint.Must), failures, "a failure for each finding at the level asked for")
	assert.GreaterOrEqual(t, cases, d.Recipes())
	d.Level = lint.Consider
	out.Reset()
	require.NoError(t, report.JUnit(&out, d))
	assert.Equal(t, d.Count(lint.Must)+d.Count(lint.Should)+d.Count(lint.Consider)+len(d.Shops[0].Unchecked), strings.Count(out.String(), "<failure "))
}

func TestMarkdown(t *testing.T) {
	d := forms(t)
	d.LeftOut = []string{"3 findings are known."}
	var out bytes.Buffer
	require.NoError(t, report.Markdown(&out, d))
	same(t, "summary.md", out.String())
}
