package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/schema"
)

func TestLensesOfRules(t *testing.T) {
	lenses := func(text string) []string { return lensesOf(t, lookingAt(t, able, puttyFile, text)) }
	const on = `rule "putty-in-hand": `
	assert.Equal(t, []string{on + "1 sound, 1 faulty, all as said", on + "speaks in no recipe"}, lenses(putty))
	// One recipe of the demo shop is sealed with putty: it is poured at 176 °F.
	cool := strings.NewReplacer("holds_to - option.in_hand", `holds_to - degrees("60 °F")`, `"170 °F"`, `"150 °F"`).Replace(putty)
	assert.Equal(t, []string{on + "1 sound, 1 faulty, all as said", on + "speaks in 2 recipes"}, lenses(cool))
	// Where it is conceded, that is told apart.
	h := lookingAt(t, able, puttyFile, cool)
	name := h.shop.Find("recipe", "tideline-layers").File.Name
	text := h.shop.Find("recipe", "tideline-layers").File.Text.String()
	text = text[:strings.LastIndex(text, "}")] + "  concession \"putty-in-hand\" {\n    reason = \"The bench is warm\"\n  }\n}\n"
	h.shop = h.shop.With(schema.Read(name, []byte(text)))
	assert.Equal(t, []string{on + "1 sound, 1 faulty, all as said", on + "speaks in 1 recipe, conceded in 1 recipe"}, lensesOf(t, h))
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
