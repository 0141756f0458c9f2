package examples_test

import (
	"io/fs"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
)

// today lies after the last test burn and before the first concession that is
// meant to hold runs out.
const today = "2026-11-25"

// finding is one line of expected.txt.
type finding struct {
	file string
	line int
	rule string
	text string
}

// Every recipe of the demo shop is sound.
func TestTheShopHasNoFindings(t *testing.T) {
	for _, f := range findings(t, examples.Shop()) {
		t.Errorf("%s:%d: %s flags %s", f.file, f.line, f.rule, f.text)
	}
}

// In the faulty shop all that was planted is found, at the very characters,
// and nothing else is.
func TestTheFaultsAreFound(t *testing.T) {
	assert.ElementsMatch(t, expected(t), findings(t, examples.Faulty()))
}

// expected is what expected.txt lists.
func expected(t *testing.T) []finding {
	t.Helper()
	src, err := fs.ReadFile(examples.Faulty(), "expected.txt")
	require.NoError(t, err)
	var all []finding
	for line := range strings.Lines(string(src)) {
		line = strings.TrimSuffix(line, "\n")
		if strings.HasPrefix(line, "#") {
			continue
		}
		place, rest, _ := strings.Cut(line, " ")
		rule, text, _ := strings.Cut(rest, " ")
		file, number, _ := strings.Cut(place, ":")
		n, err := strconv.Atoi(number)
		require.NoError(t, err, line)
		all = append(all, finding{file, n, rule, text})
	}
	return all
}

// findings is what the rules say of a shop at should or must.
func findings(t *testing.T, fsys fs.FS) []finding {
	t.Helper()
	if len(rules.All()) == 0 {
		t.Skip("no rule is listed yet")
	}
	shop, errs := lint.Load(fsys, ".", nil)
	require.Empty(t, errs)
	report := lint.Run(shop, rules.All(), today)
	require.Empty(t, report.Faults)
	var all []finding
	for _, f := range report.Findings {
		if f.Level >= lint.Should {
			text := f.At.File.Text
			line := 1 + strings.Count(text.String()[:f.At.Span.Start], "\n")
			all = append(all, finding{f.At.File.Name, line, f.Rule.Name, text.Slice(f.At.Span)})
		}
	}
	return all
}
