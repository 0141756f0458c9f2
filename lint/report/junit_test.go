package report_test

import (
	"bytes"
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/lint/report"
)

func junitOf(t *testing.T, d *report.Document) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, report.JUnit(&b, d))
	return b.String()
}

// The schema that Jenkins publishes for this form (testdata/junit, under the
// MIT licence) allows what is written, but for the attribute "file": GitLab's
// documentation of its reports has that one.
func TestJUnitSchema(t *testing.T) {
	xmllint, err := exec.LookPath("xmllint")
	if err != nil {
		t.Skip("no xmllint here (Debian's libxml2-utils)")
	}
	valid := func(text string) (string, error) {
		name := filepath.Join(t.TempDir(), "report.xml")
		require.NoError(t, os.WriteFile(name, []byte(text), 0o600))
		out, err := exec.Command(xmllint, "--noout", "--nonet", "--schema", "testdata/junit/jenkins-junit.xsd", name).CombinedOutput()
		return string(out), err
	}
	file := regexp.MustCompile(` file="[^"]*"`)
	for _, d := range []*report.Document{full(t), document(t), {}} {
		out, err := valid(file.ReplaceAllString(junitOf(t, d), ""))
		assert.NoError(t, err, out)
	}
	text := file.ReplaceAllString(junitOf(t, full(t)), "")
	for _, name := range []string{"testsuite", "testcase", "failure", "error", "system-out"} {
		spoilt := regexp.MustCompile("(</?)"+name+"\\b").ReplaceAllString(text, "${1}x"+name)
		require.NotEqual(t, text, spoilt)
		_, err := valid(spoilt)
		assert.Error(t, err, "element %s misspelt", name)
	}
	for _, name := range []string{"name", "tests", "failures", "classname", "type", "message"} {
		_, err := valid(strings.ReplaceAll(text, " "+name+"=", " x"+name+"="))
		assert.Error(t, err, "attribute %s misspelt", name)
	}
}

type junitRead struct {
	Tests    int `xml:"tests,attr"`
	Failures int `xml:"failures,attr"`
	Errors   int `xml:"errors,attr"`
	Suites   []struct {
		Name     string          `xml:"name,attr"`
		Tests    int             `xml:"tests,attr"`
		Failures int             `xml:"failures,attr"`
		Errors   int             `xml:"errors,attr"`
		Cases    []junitReadCase `xml:"testcase"`
		Out      string          `xml:"system-out"`
	} `xml:"testsuite"`
}

type junitReadCase struct {
	Name     string           `xml:"name,attr"`
	Class    string           `xml:"classname,attr"`
	File     string           `xml:"file,attr"`
	Errors   []junitReadFault `xml:"error"`
	Failures []junitReadFault `xml:"failure"`
	Out      string           `xml:"system-out"`
}

type junitReadFault struct {
	Type    string `xml:"type,attr"`
	Message string `xml:"message,attr"`
	Text    string `xml:",chardata"`
}

func readJUnit(t *testing.T, d *report.Document) (all junitRead, cases map[string]junitReadCase) {
	t.Helper()
	require.NoError(t, xml.Unmarshal([]byte(junitOf(t, d)), &all))
	cases = map[string]junitReadCase{}
	var tests, failures, errors int
	for _, s := range all.Suites {
		assert.Len(t, s.Cases, s.Tests)
		tests, failures, errors = tests+s.Tests, failures+s.Failures, errors+s.Errors
		failed, erred := 0, 0
		for _, c := range s.Cases {
			assert.NotContains(t, cases, c.Name)
			cases[c.Name] = c
			failed += len(c.Failures)
			erred += len(c.Errors)
		}
		assert.GreaterOrEqual(t, failed, s.Failures)
		assert.Equal(t, erred, s.Errors)
	}
	assert.Equal(t, []int{tests, failures, errors}, []int{all.Tests, all.Failures, all.Errors})
	return all, cases
}

// A case is a recipe, and fails once, by what speaks at the level asked for;
// what is softer, conceded or left out is its output.
func TestJUnit(t *testing.T) {
	d := full(t)
	same(t, "report.xml", junitOf(t, d))
	all, cases := readJUnit(t, d)
	assert.Equal(t, "Larkspur Quay Candleworks", all.Suites[0].Name)
	tide := cases["Tide and thyme pillar"]
	assert.Equal(t, "larkspur/recipes/tide-pillar", tide.Class)
	assert.Equal(t, "larkspur/recipes/tide-pillar.candle.hcl", tide.File)
	require.Len(t, tide.Failures, 1)
	assert.Equal(t, "fragrance-over-limit", tide.Failures[0].Type, "the loudest")
	assert.Equal(t, "7 % of wax is over what Northlight paraffin holds (6 % of wax) by 13 g (and 1 more)", tide.Failures[0].Message)
	assert.Contains(t, tide.Failures[0].Text, "larkspur/recipes/tide-pillar.candle.hcl:8:12: 7 % of wax is over what")
	assert.Contains(t, tide.Failures[0].Text, "lower the load to 6 % of wax")
	assert.Contains(t, tide.Failures[0].Text, "186 °F (85.6 °C) is hotter")
	assert.Contains(t, tide.Out, "nothing says whom")
	assert.Contains(t, tide.Out, "known from known.json: the old molds")

	skerry := cases["Skerry jar"]
	assert.Empty(t, skerry.Failures)
	assert.Contains(t, skerry.Out, "The spare goes into tealights the same day")
	require.Len(t, skerry.Errors, 1, "a check of it stopped")
	assert.Contains(t, cases["stock/waxes.candle.hcl"].Failures[0].Message, "does not state flash_point")
	assert.Len(t, cases["larkspur/closed.candle.hcl"].Errors, 1)
	assert.Equal(t, d.LeftOut[0], all.Suites[len(all.Suites)-1].Out)

	d.Level = lint.Must
	_, cases = readJUnit(t, d)
	assert.Equal(t, "7 % of wax is over what Northlight paraffin holds (6 % of wax) by 13 g", cases["Tide and thyme pillar"].Failures[0].Message)
	assert.Contains(t, cases["Tide and thyme pillar"].Out, "186 °F (85.6 °C) is hotter")
	assert.Empty(t, cases["stock/waxes.candle.hcl"].Failures)
}

// XML 1.0 cannot hold most control characters, not even written as references.
func TestJUnitHoldsWhatXMLCan(t *testing.T) {
	rule := &lint.Rule{Name: "control", Levels: lint.Every(lint.Must), Check: func(p *lint.Pass) {
		p.Report(lint.Finding{At: lint.AtHeader(p.Recipe), Message: "a\x00b\x1b[31m\x07 \ufffe \xff & <b> \"]]>"})
	}}
	shop := load(t, ".", map[string]string{"a.candle.hcl": "recipe \"a\" {\n}\n"})
	text := junitOf(t, &report.Document{Level: lint.Must, Shops: []*lint.Report{lint.Run(shop, []*lint.Rule{rule}, today)}})
	assert.False(t, bytes.ContainsAny([]byte(text), "\x00\x1b\x07"))
	decoder := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := decoder.Token(); err != nil {
			assert.EqualError(t, err, "EOF")
			break
		}
	}
	if xmllint, err := exec.LookPath("xmllint"); err == nil {
		c := exec.Command(xmllint, "--noout", "-")
		c.Stdin = strings.NewReader(text)
		out, err := c.CombinedOutput()
		assert.NoError(t, err, string(out))
	}
}
