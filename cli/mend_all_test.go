package cli_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// Mending by all built-in rules never leaves more at must than before, never
// spoils a text that read whole, and ends: on the shop that is wrong on
// purpose, and on each of its recipes cut off in the middle.
func TestMendingIsNeverWorse(t *testing.T) {
	shop, errs := lint.Load(examples.Faulty(), ".", nil)
	require.Empty(t, errs)
	neverWorse(t, "as it is", shop)
	if testing.Short() {
		return
	}
	for _, recipe := range shop.Recipes() {
		text := recipe.File.Text.String()
		for _, part := range []int{3, 6, 8} {
			cut := text[:len(text)*part/9]
			neverWorse(t, recipe.File.Name+" ending in "+cut[max(0, len(cut)-20):], shop.With(schema.Read(recipe.File.Name, []byte(cut))))
		}
	}
}

func neverWorse(t *testing.T, about string, shop *lint.Shop) {
	t.Helper()
	all := func(*lint.Shop) []*lint.Rule { return rules.All() }
	before := lint.Run(shop, rules.All(), "2026-10-20")
	for _, everything := range []bool{false, true} {
		done := lint.Mend(shop, all, "2026-10-20", lint.MendOptions{All: everything})
		assert.LessOrEqual(t, musts(done.Report), musts(before), "%s, all: %v", about, everything)
		for _, c := range done.Changed {
			if c.File.Whole {
				assert.True(t, schema.Read(c.File.Name, []byte(c.Text)).Whole, "%s: %s\n%s", about, c.File.Name, c.Text)
			}
		}
		for _, skipped := range done.Skipped {
			assert.NotContains(t, skipped.Why, "has no end", "%s: %s: %s", about, skipped.Rule.Name, skipped.Title)
		}
	}
}

func musts(r *lint.Report) int {
	n := 0
	for i := range r.Findings {
		if r.Findings[i].Level == lint.Must {
			n++
		}
	}
	return n
}
