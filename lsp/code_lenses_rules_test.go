package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLensesOfRules(t *testing.T) {
	lenses := func(text string) []string { return lensesOf(t, lookingAt(t, able, puttyFile, text)) }
	const on = `rule "putty-in-hand": `
	assert.Equal(t, []string{on + "1 sound, 1 faulty, all as said", on + "speaks in no recipe"}, lenses(putty))
	// One recipe of the demo shop is sealed with putty: it is poured at 176 °F.
	cool := strings.NewReplacer("holds_to - option.in_hand", `holds_to - degrees("60 °F")`, `"170 °F"`, `"150 °F"`).Replace(putty)
	assert.Equal(t, []string{on + "1 sound, 1 faulty, all as said", on + "speaks in 2 recipes"}, lenses(cool))
	assert.Equal(t, []string{on + "1 sound, 1 faulty, one not as said", on + "speaks in no recipe"}, lenses(strings.Replace(putty, "212", "205", 1)))
	assert.Equal(t, []string{on + "cannot be read"}, lenses(strings.Replace(putty, "pour.at", "pour.att", 1)))
	bare, _, _ := strings.Cut(putty, "  sound {")
	assert.Equal(t, []string{on + "untested", on + "speaks in no recipe"}, lenses(bare+"}\n"))
	half, _, _ := strings.Cut(putty, "  faulty {")
	assert.Equal(t, []string{on + "untested: no faulty example", on + "speaks in no recipe"}, lenses(half+"}\n"))
	assert.Empty(t, lenses(half), "half typed")
}

func TestLensesOfTrials(t *testing.T) {
	texts := lensesOf(t, looking(t, trialFile, able, nil))
	assert.Contains(t, texts, `trial "glass-in-winter": one rule rests on it`)
	t.Log(strings.Join(texts, "\n"))
}
