package handbook

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/lint"
	"wickrule/rules"
)

// The words of the trade stand in order, lead to what is there, and no two of
// them are said alike.
func TestGlossary(t *testing.T) {
	all := glossary().all
	assert.GreaterOrEqual(t, len(all), 60)
	names := map[string]bool{}
	for _, x := range all {
		names[x.Name] = true
	}
	known := map[string]bool{}
	for _, r := range rules.All() {
		known[r.Name] = true
	}
	said := map[string]string{}
	for _, x := range all {
		for _, word := range slices.Concat([]string{x.Name}, x.Also, x.Forms) {
			folded := strings.ToLower(word)
			assert.Emptyf(t, said[folded], "%q is said of %s too", word, x.Name)
			said[folded] = x.Name
		}
		for _, name := range x.Rules {
			assert.Truef(t, known[name], "%s: there is no rule %s", x.Name, name)
		}
		for _, see := range x.See {
			assert.Truef(t, names[see], "%s: there is no term %s", x.Name, see)
			assert.NotEqual(t, x.Name, see)
		}
		assert.Truef(t, strings.HasSuffix(x.Means, "."), "%s ends without a full stop", x.Name)
		assert.Greater(t, len(x.Means), 40, x.Name)
	}
	assert.True(t, slices.IsSortedFunc(all, func(a, b *term) int { return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) }))
}

// A word leads somewhere the first time only, the longest phrase first, never
// to its own page, and never out of the middle of another word.
func TestProseLinks(t *testing.T) {
	l := newLinker(glossary(), rules.All(), func(*lint.Rule) bool { return false })
	p := l.prose("rule-stir-too-short.html")
	assert.Equal(t, `Keep the <a href="words.html#term-flash-point">flash point</a> in mind; a flash point is no <a href="words.html#term-ceiling">ceiling</a>.`,
		string(p.line("Keep the flash point in mind; a flash point is no ceiling.")))
	assert.Equal(t, "stir-too-short", string(p.line("stir-too-short")))
	assert.Equal(t, `<a href="rule-cure-too-short.html">cure-too-short</a>: <a href="words.html#term-second-pour">second pour</a>`, string(p.line("cure-too-short: second pour")))
	assert.Equal(t, "sootless &lt;b&gt; pour", string(p.line("sootless <b> pour")))
	assert.Equal(t, `Ask for a <a href="words.html#term-safety-data-sheet">safety data sheet</a>; the safety data sheet is made for that.`,
		string(p.line("Ask for a safety data sheet; the safety data sheet is made for that.")))
	assert.Equal(t, `<a href="format.html">The house format</a> and <a href="names.html">the names a rule can ask for</a>.`,
		string(p.line("The house format, schema/FORMAT.md and rules/shoprule/NAMES.md.")))
	assert.Equal(t, `8 <a href="words.html#term-of-wax">% of wax</a>`, string(p.line("8 % of wax")))
}
