package rules_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/formula"
	"wickrule/schema"
)

// today is the day the examples are judged on.
const today = "2026-10-20"

func exampleShop(t testing.TB) *lint.Shop {
	t.Helper()
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	return shop
}

// Every rule is named, explained and sourced, and shows itself at work.
func TestEveryRuleIsComplete(t *testing.T) {
	name := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	seen := map[string]bool{}
	for _, r := range rules.All() {
		assert.Regexp(t, name, r.Name)
		assert.Falsef(t, seen[r.Name], "%s stands twice in the list", r.Name)
		seen[r.Name] = true
		for field, text := range map[string]string{"Group": r.Group, "Title": r.Title, "Why": r.Why, "Remedy": r.Remedy, "Source": r.Source} {
			assert.NotEmptyf(t, strings.TrimSpace(text), "%s has no %s", r.Name, field)
		}
		assert.NotContainsf(t, r.Title, "\n", "%s: the title is one line", r.Name)
		assert.Falsef(t, strings.HasSuffix(r.Title, "."), "%s: the title has no full stop", r.Name)
		assert.NotEqualf(t, lint.Levels{}, r.Levels, "%s never speaks", r.Name)
		assert.NotEmptyf(t, r.Bad, "%s has no bad example", r.Name)
		assert.NotEmptyf(t, r.Good, "%s has no good example", r.Name)
		if r.About == lint.AboutFormat {
			assert.Nilf(t, r.Check, "%s: the reader finds it, it has no check", r.Name)
		} else {
			assert.NotNilf(t, r.Check, "%s has no check", r.Name)
		}
		for _, other := range r.Also {
			assert.Truef(t, slices.ContainsFunc(rules.All(), func(r *lint.Rule) bool { return r.Name == other }), "%s: no rule %s", r.Name, other)
		}
	}
}

// ofChange are the rules that speak of every example in which another candle
// is made than the one that was burned: that is no fault of the example.
var ofChange = []string{"test-burn-stale", "test-burn-missing"}

// changesTheCandle says whether an example makes another candle of a recipe
// than the example shop does.
func changesTheCandle(t *testing.T, base *lint.Shop, e lint.Example, recipe *schema.Block) bool {
	t.Helper()
	shop, _, err := e.Over(base)
	require.NoError(t, err)
	if recipe == nil {
		return false
	}
	was, is := base.Find("recipe", recipe.Label), shop.Find("recipe", recipe.Label)
	if was == nil || is == nil {
		return true // a recipe of its own has no burns of that formulation
	}
	return formula.Of.In(lint.NewView(base, was, today)).Code != formula.Of.In(lint.NewView(shop, is, today)).Code
}

// The bad example is flagged by its rule, on the very characters, at its
// level, and by no other rule but those it names and those about changed
// recipes; the good one is not flagged at all by the rule.
func TestEveryExample(t *testing.T) {
	base := exampleShop(t)
	for _, r := range rules.All() {
		t.Run(r.Name, func(t *testing.T) {
			for _, e := range r.Bad {
				checkBad(t, base, r, e)
			}
			for _, e := range r.Good {
				for _, f := range findingsOf(t, base, e) {
					assert.NotEqualf(t, r.Name, f.Rule.Name, "good example (%s) is flagged: %s", e.About, f.Message)
				}
			}
		})
	}
}

func checkBad(t *testing.T, base *lint.Shop, r *lint.Rule, e lint.Example) {
	t.Helper()
	var flagged []string
	for _, f := range findingsOf(t, base, e) {
		if f.Rule.Name != r.Name {
			also := r.Also
			if slices.Contains(ofChange, f.Rule.Name) && changesTheCandle(t, base, e, f.Recipe) {
				also = ofChange
			}
			assert.Containsf(t, also, f.Rule.Name, "bad example (%s) also breaks %s: %s", e.About, f.Rule.Name, f.Message)
			continue
		}
		flagged = append(flagged, f.At.File.Text.Slice(f.At.Span))
		if len(flagged) == 1 {
			want := e.Level
			if want == lint.Silent {
				want = r.Levels.Sale
				if f.Recipe != nil {
					want = r.Levels.For(lint.NewView(base, f.Recipe, today).MadeFor)
				}
			}
			assert.Equalf(t, want, f.Level, "bad example (%s): %s", e.About, f.Message)
		}
		assert.NotEmpty(t, f.Message)
	}
	require.NotEmptyf(t, e.Flags, "bad example (%s) does not say what must be flagged", e.About)
	assert.Equalf(t, e.Flags, flagged, "bad example (%s)", e.About)
}

// findingsOf checks the example and returns what is found about its own files.
func findingsOf(t *testing.T, base *lint.Shop, e lint.Example) []lint.Found {
	t.Helper()
	shop, about, err := e.Over(base)
	require.NoError(t, err)
	report := lint.Run(shop, rules.All(), today)
	require.Empty(t, report.Faults)
	var found []lint.Found
	for _, f := range report.Findings {
		if slices.Contains(about, f.At.File) || f.Recipe != nil && slices.Contains(about, f.Recipe.File) {
			found = append(found, f)
		}
	}
	return found
}

// Fixes of the bad examples: each is applied alone, reads cleanly, and never
// adds a finding at must.
func TestEveryFix(t *testing.T) {
	base := exampleShop(t)
	for _, r := range rules.All() {
		t.Run(r.Name, func(t *testing.T) {
			for _, e := range r.Bad {
				shop, _, err := e.Over(base)
				require.NoError(t, err)
				before := lint.Run(shop, rules.All(), today)
				for _, f := range before.Findings {
					if f.Rule != r {
						continue
					}
					for _, fix := range f.Repairs() {
						after := lint.Run(applied(t, shop, fix), rules.All(), today)
						assert.LessOrEqualf(t, musts(after), musts(before), "%s (%s): %q makes it worse:\n%s", r.Name, e.About, fix.Title, describe(after))
						assert.Lessf(t, count(after, r.Name), count(before, r.Name), "%s (%s): %q does not put it right:\n%s", r.Name, e.About, fix.Title, describe(after))
					}
				}
			}
		})
	}
}

func applied(t *testing.T, shop *lint.Shop, fix schema.Fix) *lint.Shop {
	t.Helper()
	require.NotEmpty(t, fix.Edits, fix.Title)
	byFile := map[*schema.File][]schema.Edit{}
	for _, e := range fix.Edits {
		byFile[e.File] = append(byFile[e.File], e)
	}
	var files []*schema.File
	for _, f := range shop.Files() {
		if edits := byFile[f]; edits != nil {
			text, err := schema.Apply(f.Text.String(), edits)
			require.NoError(t, err, fix.Title)
			f = schema.Read(f.Name, []byte(text))
		}
		files = append(files, f)
	}
	return lint.NewShop(shop.Root, files)
}

func musts(r *lint.Report) int {
	n := 0
	for _, f := range r.Findings {
		if f.Level == lint.Must {
			n++
		}
	}
	return n
}

func count(r *lint.Report, rule string) int {
	n := 0
	for _, f := range r.Findings {
		if f.Rule.Name == rule {
			n++
		}
	}
	return n
}

func describe(r *lint.Report) string {
	var lines []string
	for _, f := range r.Findings {
		lines = append(lines, f.At.File.Name+": "+f.Level.String()+" "+f.Rule.Name+": "+f.Message)
	}
	return strings.Join(lines, "\n")
}

func TestRulebookIsCurrent(t *testing.T) {
	have, err := os.ReadFile("RULEBOOK.md")
	require.NoError(t, err)
	assert.True(t, rules.Rulebook(rules.All()) == string(have), "rules/RULEBOOK.md needs updating: run go generate ./rules")
}
