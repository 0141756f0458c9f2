package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/rules"
	"wickrule/schema"
)

// The figures are those of the examples of the rule and of the demo shop's
// putty, which holds to 220 °F: (220 - 32) x 5/9 is 104.4 °C (NIST SP 811, B.8).
func TestHoverInExpressions(t *testing.T) {
	for _, c := range []struct {
		about, from, to string // a change, with a mark where the mouse is
		on              string
		says            []string // in this order
	}{
		{"a name", "require  = pour.at <=", "require  = pour.a‸t <=", "at", []string{
			"**pour.at** A temperature, as the recipe says.", "How hot the wax is as it is poured.",
			"In the rule's examples:\n\n- cool-pour, sound: 170 °F (76.7 °C)\n- hot-pour, faulty: 212 °F (100 °C)"}},
		{"a kind of block", "require  = pour.at <=", "require  = p‸our.at <=", "pour", []string{
			"**pour** Each `pour` step.", `- cool-pour, sound: step "pour" { at = "170 °F" }`}},
		{"a name that leads on", "<= mold.seal.holds_to", "<= mold.se‸al.holds_to", "seal", []string{
			"**mold.seal** A seal, reckoned.", "of several the weakest.", "- cool-pour, sound: Wick putty\n- hot-pour, faulty: Wick putty"}},
		{"what it leads to", "<= mold.seal.holds_to", "<= mold.seal.‸holds_to", "holds_to", []string{
			"**mold.seal.holds_to** A temperature, as its item on the shelf says.", "- cool-pour, sound: 220 °F (104.4 °C)"}},
		{"a minus", "holds_to - option", "holds_to ‸- option", "-", []string{
			"`mold.seal.holds_to - option.in_hand`", "- cool-pour, sound: 210 °F (98.9 °C)\n- hot-pour, faulty: 210 °F (98.9 °C)"}},
		{"a comparison", "pour.at <=", "pour.at ‸<=", "<=", []string{
			"`pour.at <= mold.seal.holds_to - option.in_hand`", "- cool-pour, sound: yes\n- hot-pour, faulty: no"}},
		{"an option", "- option.in_hand", "- option.in_‸hand", "in_hand", []string{
			"**option.in_hand** A temperature difference. What we keep in hand.", "Here it is 10 °F (5.6 °C)."}},
		{"an amount", "require  = pour.at <=", `require  = fragrance.weight < amou‸nt("0.2 g") || pour.at <=`, "amount", []string{"**amount**", "Here it is 0.2 g (0.007 oz)."}},
		{"what there is one of", "require  = pour.at <=", `require  = bat‸ch.total < amount("0.2 g") || pour.at <=`, "batch", []string{"**batch** The figures of the whole batch"}},
		{"a function", "${show(pour.at)}", "${sho‸w(pour.at)}", "show", []string{
			"**show** `show(an amount)` gives a text.", "- cool-pour, sound: 170 °F\n- hot-pour, faulty: 212 °F"}},
		{"a function around others", "require  = pour.at <=", `require  = le‸ast(pour.at, amount("80 °C")) <=`, "least", []string{
			"**least**", "- cool-pour, sound: 170 °F (76.7 °C)\n- hot-pour, faulty: 176 °F (80 °C)"}},
		{"words", "mold.seal.kind ==", "mold.seal.kin‸d ==", "kind", []string{
			"**mold.seal.kind** A text,", "One of: plug, putty,", "- cool-pour, sound: putty\n- hot-pour, faulty: putty"}},
		{"the end of a range", "require  = pour.at <=", "require  = pour.at <= batch.pour_at.hi‸gh && pour.at <=", "high", []string{
			"**batch.pour_at.high** A temperature.", "The upper end of a range"}},
		{"where when does not hold", `when     = mold.seal.kind == "putty"`, `when     = mold.seal.k‸ind == "plug"`, "kind", []string{"sound: putty"}},
		{"what is not written", "require  = pour.at <=", "require  = pour.‸after < amount(\"1 h\") && pour.at <=", "after", []string{"- cool-pour, sound: pour does not state after"}},
		{"no such block", "require  = pour.at <=", "require  = container.holds > amount(\"3 g\") && po‸ur.at <=", "pour", []string{"- cool-pour, sound: there is no container"}},
		{"a key", `mold.seal.kind == "putty"`, `mold.seal.key == "wick-‸putty"`, `"wick-putty"`, []string{"**Wick putty**, a putty.", "Holds to 220 °F (104.4 °C)."}},
		{"in an expression that cannot be read", "holds_to - option.in_hand", "hol‸ds_to - (", "holds_to", []string{"**mold.seal.holds_to** A temperature,"}},
		{"a sound example", "sound {", "so‸und {", "sound", []string{
			"**sound** An example that the rule must pass", "As it should be:\n\n- cool-pour: checked, and nothing found"}},
		{"a recipe of a faulty example", `recipe "hot-pour"`, `recipe "hot-‸pour"`, `"hot-pour"`, []string{
			"**hot-pour**, a pillar for sale in the US.", "This rule: A pour at 212 °F (°F); putty holds to 220 °F."}},
		{"a recipe of a sound one", `recipe "cool-pour"`, `recipe "cool-‸pour"`, `"cool-pour"`, []string{"This rule: checked, and nothing found."}},
		{"a faulty example", "faulty {", "fau‸lty {", "faulty", []string{
			"**faulty** An example in which the rule must speak", "As it should be:\n\n- hot-pour: A pour at 212 °F (°F); putty holds to 220 °F"}},
	} {
		t.Run(c.about, func(t *testing.T) {
			text := strings.Replace(putty, c.from, c.to, 1)
			at := strings.Index(text, mark)
			h := lookingAt(t, able, puttyFile, strings.Replace(text, mark, "", 1))
			s := h.subjectAt(int32(at))
			said := strings.Join(s.says, "\n\n")
			assert.Equal(t, c.on, h.text.Slice(s.span))
			rest := said
			for _, part := range c.says {
				at := strings.Index(rest, part)
				if !assert.GreaterOrEqual(t, at, 0, "%q is not in %q", part, said) {
					return
				}
				rest = rest[at+len(part):]
			}
		})
	}
}

// Where when does not hold, require is not asked.
func TestHoverWhereNothingIsAsked(t *testing.T) {
	h := lookingAt(t, able, puttyFile, strings.Replace(putty, `== "putty"`, `== "plug"`, 1))
	says, _ := hovered(t, h, "pour.at <=", 6)
	assert.Contains(t, says, "- cool-pour, sound: not asked: the rule's when does not hold\n- hot-pour, faulty: not asked: the rule's when does not hold")
	says, _ = hovered(t, h, "faulty {", 2)
	assert.Contains(t, says, "hot-pour is meant to be faulty, and the rule does not apply to it: it needs mold, pour, and its when must hold.")
}

const sealing = "rules/sealing.candle.hcl"

// A rule is told with what bears it out, where it is written and where it is
// named; a trial with the rules that rest on it.
func TestHoverOfRulesAndTrials(t *testing.T) {
	const tried = "- putty-reuse (2026-09-12, mixed): How many pours does a ball of wick putty seal before it weeps? Wick putty, up to 212 °F. Clean for six pours; wept at the seventh."
	h := looking(t, sealing, able, nil)
	h.rules = rules.For
	says, on := hovered(t, h, `"fresh-putty`, 3)
	assert.Equal(t, `"fresh-putty-for-hot-pours"`, on)
	assert.Equal(t, "**Putty only well below the temperature it holds to**, a rule.\n\n"+
		"Putty that softens lets the mold drain onto the bench, and a ball that has been used before softens sooner.\n\n"+
		"Examples: 1 sound, 1 faulty, all as said.\n\nIt rests on:\n\n"+tried, says)
	says, _ = hovered(t, h, `["putty-reuse"]`, 4)
	assert.True(t, strings.HasPrefix(says, "**putty-reuse**, a trial.\n\nHow many pours does a ball of wick putty seal before it weeps? Tried 2026-09-12,"), says)
	assert.True(t, strings.HasSuffix(says, "\n\nOne rule rests on it: fresh-putty-for-hot-pours."), says)
	r := h.rule("fresh-putty-for-hot-pours")
	require.NotNil(t, r)
	assert.Contains(t, strings.Join(h.explained(r), "\n\n"), tried)
	assert.Contains(t, explanation(h.shop, r), "\n"+tried+"\n")
	assert.NotContains(t, explanation(h.shop, h.rule("seal-too-weak")), "- ")
}

// What a keyword means is told in a few lines.
func TestHoverOfWordsIsShort(t *testing.T) {
	h := looking(t, tideFile, able, nil)
	for _, spec := range schema.AllSpecs() {
		says := strings.Join(h.blockWord(spec), "\n\n")
		assert.LessOrEqual(t, strings.Count(says, "\n")+1, 20, spec.ID)
		read := schema.Read("a.candle.hcl", []byte(shortened(spec.Example)))
		if schema.Top(spec.ID) != nil {
			assert.Empty(t, read.Problems, "%s: %s", spec.ID, shortened(spec.Example))
		}
	}
}
