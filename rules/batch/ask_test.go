package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// A figure that is asked for and is not there is reported as not checked, by
// the attribute that would tell it; one that is broken is not.
func TestAskSaysWhatIsMissing(t *testing.T) {
	asked := func(body string, ask func(*lint.Pass, *batch.Batch) bool) (needs []string, known bool) {
		_, view := viewed(t, body)
		rule := &lint.Rule{Name: "asking", Levels: lint.Every(lint.Should), About: lint.AboutRecipe,
			Check: func(p *lint.Pass) { known = ask(p, batch.Of.In(p.View)) }}
		for _, u := range lint.Run(view.Shop(), []*lint.Rule{rule}, "2026-10-20").Unchecked {
			needs = append(needs, u.Needs)
		}
		return needs, known
	}
	takes := func(p *lint.Pass, b *batch.Batch) bool { return b.Takes.Ask(p) }
	ceiling := func(p *lint.Pass, b *batch.Batch) bool { return b.NeverAbove().Ask(p) }

	needs, known := asked(oneWax+pourPool, takes)
	assert.Empty(t, needs)
	assert.True(t, known)

	needs, known = asked(oneWax+"mold \"unmeasured\" { }", takes)
	assert.Equal(t, []string{"mold.height"}, needs)
	assert.False(t, known)

	needs, known = asked(oneWax+"mold \"unknown\" { }", takes)
	assert.Empty(t, needs)
	assert.False(t, known)

	needs, known = asked("wax \"no-family\" { weight = \"1 kg\" }", ceiling)
	assert.Equal(t, []string{"wax.never_above"}, needs)
	assert.False(t, known)

	needs, known = asked(oneWax+"wax \"no-family\" { weight = \"1 kg\" }", ceiling)
	assert.Equal(t, []string{"wax.never_above"}, needs, "what the others say is judged, what is missing is said")
	assert.True(t, known)

	needs, known = asked("wax \"silent-pillar\" { weight = \"1 kg\" }", ceiling)
	assert.Empty(t, needs, "the family stands in")
	assert.True(t, known)

	needs, known = asked("wax \"no-family\" { weight = \"1 kg\" }", func(p *lint.Pass, b *batch.Batch) bool { return b.FragranceLimit().Ask(p) })
	assert.Equal(t, []string{"wax.fragrance_limit"}, needs)
	assert.False(t, known)

	needs, known = asked("wax \"no-family\" { weight = \"1 kg\" }", func(p *lint.Pass, b *batch.Batch) bool { return b.Suits("pillar").Ask(p) })
	assert.Equal(t, []string{"wax.suits"}, needs)
	assert.False(t, known)
}
