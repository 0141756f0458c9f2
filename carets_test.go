package main

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

var update = flag.Bool("update", false, "write the mended files of testdata/carets anew")

// caretLine stands under a line of a recipe: carets under the very characters
// that must be flagged, the rule, how loud.
var caretLine = regexp.MustCompile(`^#( *)(\^+) ([a-z-]+) (must|should|consider)$`)

// mark is a finding, or what is wanted of one. Columns count code points.
type mark struct {
	line, column, length int
	rule, level          string
}

// Recipes with carets under what must be flagged, laid over the example shop;
// a line without carets must be silent. Beside each stands the file as it is
// when everything that has a fix was mended.
func TestCarets(t *testing.T) {
	names, err := filepath.Glob("testdata/carets/*.candle.hcl")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(names), 6)
	base, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	for _, name := range names {
		if strings.HasSuffix(name, ".fixed.candle.hcl") {
			continue
		}
		t.Run(filepath.Base(name), func(t *testing.T) {
			src, err := os.ReadFile(name)
			require.NoError(t, err)
			text, wanted := withoutCarets(string(src))
			require.NotEmpty(t, wanted, "no carets in it")
			file := schema.Read("caret.candle.hcl", []byte(text))
			shop := base.With(file)
			report := lint.Run(shop, rules.For(shop), today)
			require.Empty(t, report.Faults)
			assert.ElementsMatch(t, wanted, marks(t, report, file))
			compareMended(t, shop, strings.TrimSuffix(name, ".candle.hcl")+".fixed.candle.hcl")
		})
	}
}

const today = "2026-10-20"

// withoutCarets takes the caret lines out and says what they want.
func withoutCarets(src string) (text string, wanted []mark) {
	var kept []string
	for _, line := range strings.SplitAfter(src, "\n") {
		m := caretLine.FindStringSubmatch(strings.TrimRight(line, "\r\n"))
		if m == nil {
			kept = append(kept, line)
			continue
		}
		wanted = append(wanted, mark{len(kept), len(m[1]) + 2, len(m[2]), m[3], m[4]})
	}
	return strings.Join(kept, ""), wanted
}

// marks are the findings, all of which must be about the file: the example
// shop below it is sound.
func marks(t *testing.T, report *lint.Report, file *schema.File) []mark {
	t.Helper()
	var found []mark
	for _, f := range report.Findings {
		require.Samef(t, file, f.At.File, "%s is flagged: %s", f.At.File.Name, f.Message)
		line, column := file.Text.Position(f.At.Span.Start)
		length := utf8.RuneCountInString(file.Text.Slice(f.At.Span))
		found = append(found, mark{line, column, length, f.Rule.Name, f.Level.String()})
	}
	return found
}

func compareMended(t *testing.T, shop *lint.Shop, name string) {
	t.Helper()
	all := rules.For
	mended := lint.Mend(shop, all, today, lint.MendOptions{All: true, Covers: func(file string) bool { return file == "caret.candle.hcl" }})
	i := slices.IndexFunc(mended.Shop.Files(), func(f *schema.File) bool { return f.Name == "caret.candle.hcl" })
	got := mended.Shop.Files()[i].Text.String()
	if *update {
		require.NoError(t, os.WriteFile(name, []byte(got), 0o644))
	}
	want, err := os.ReadFile(name)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, "after mending")
}

// Every group of rules has a place under carets, and so has each of the rules
// that weigh most.
func TestCaretsForEveryGroup(t *testing.T) {
	names, err := filepath.Glob("testdata/carets/*.candle.hcl")
	require.NoError(t, err)
	marked := map[string]bool{}
	for _, name := range names {
		src, err := os.ReadFile(name)
		require.NoError(t, err)
		_, wanted := withoutCarets(string(src))
		for _, m := range wanted {
			marked[m.rule] = true
		}
	}
	groups := map[string]bool{}
	for _, r := range rules.All() {
		groups[r.Group] = groups[r.Group] || marked[r.Name]
	}
	for group, shown := range groups {
		assert.Truef(t, shown, "no rule of %q stands under carets", group)
	}
	for _, rule := range []string{
		"fragrance-over-limit", "wax-not-for-container", "pour-too-hot", "pour-too-cool",
		"wick-hole-unsealed", "wick-hole-sealed-late", "seal-too-weak", "warning-label-missing", "caution-missing",
	} {
		assert.Truef(t, marked[rule], "%s stands nowhere under carets", rule)
	}
}
