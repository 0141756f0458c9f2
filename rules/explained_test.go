package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/rules"
	"wickrule/rules/explained"
)

// What an explanation says of an example is what a check of the whole shop
// says of it, by the same rule.
func TestExamplesAreExplainedAsChecked(t *testing.T) {
	base := exampleShop(t)
	all := rules.All()
	if testing.Short() {
		all = all[:20]
	}
	for _, r := range all {
		for _, e := range append(r.Bad[:len(r.Bad):len(r.Bad)], r.Good...) {
			tried, err := explained.Try(base, rules.For, r, e, today)
			require.NoError(t, err)
			var checked, said []string
			for _, f := range findingsOf(t, base, e) {
				if f.Rule.Name == r.Name {
					checked = append(checked, f.Message)
				}
			}
			for _, f := range tried.Said {
				said = append(said, f.Message)
			}
			assert.Equalf(t, checked, said, "%s: %s", r.Name, e.About)
			assert.NotEmptyf(t, tried.Excerpt, "%s: %s", r.Name, e.About)
		}
	}
}
