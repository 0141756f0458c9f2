package lsp

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"
)

// What two clients say: one that knows edits and no more, and one that says
// nothing of completion.
const (
	editing = `{"textDocument": {"completion": {}}}`
	wording = `{}`
)

var (
	wordBefore = regexp.MustCompile(`\w*$`)
	wordBehind = regexp.MustCompile(`^\w*`)
)

// afterWord is a text after a client has put what an item says in place of the
// word at the cursor.
func afterWord(t testing.TB, text string, at int, item completionItem) string {
	t.Helper()
	require.Nil(t, item.TextEdit)
	require.NotNil(t, item.InsertText)
	before, behind := text[:at], text[at:]
	return before[:len(before)-len(wordBefore.FindString(before))] + *item.InsertText + behind[len(wordBehind.FindString(behind)):]
}

// Each case is a line of the demo shop as it is, as it is typed, and as it is
// once the first offer has been taken; and that offer's label.
func TestCompletionOfWords(t *testing.T) {
	for _, c := range []struct{ file, is, typed, label, taken string }{
		{"recipes/tide-pillar", `load = "5 % of wax"`, `load = "7‸ % of wax"`, "7 % of wax", `load = "7 % of wax"`},
		{"recipes/tide-pillar", `load = "5 % of wax"`, `load = "7 % o‸"`, "of wax", `load = "7 % of wax"`},
		{"recipes/tide-pillar", `step "trim base" {}`, `step "trim b‸"`, "base", `step "trim base"`},
		{"recipes/tide-pillar", `step "trim base" {}`, `step "trim b‸`, `base`, `step "trim base" {}`},
		{"recipes/tide-pillar", `wax "northlight-pillar" {`, `wax "northlight-p‸" {`, "pillar", `wax "northlight-pillar" {`},
		{"recipes/tide-pillar", `wick  = "flat-braid-24"`, `wick  = "fl‸at-braid-24"`, "flat-braid-24", `wick  = "flat-braid-24"`},
		{"recipes/tide-pillar", `makes    = "pillar"`, `mak‸`, "makes", `makes = `},
		{"rules/mixing", `dye.weight >= amount("0.2 g")`, `dye.wei‸`, "weight", `dye.weight`},
		{"rules/mixing", `dye.weight >= amount("0.2 g")`, `dye.weight >= amo‸`, "amount", `dye.weight >= amount`}, // the brackets are the client's
		{"rules/mixing", `dye.weight >= amount("0.2 g")`, `dye.weight >= amo‸("0.2 g")`, "amount", `dye.weight >= amount("0.2 g")`},
	} {
		t.Run(c.typed, func(t *testing.T) {
			name := c.file + ".candle.hcl"
			was := exampleShop().File(name).Text.String()
			marked := strings.Replace(was, c.is, c.typed, 1)
			require.NotEqual(t, was, marked)
			at := strings.Index(marked, mark)
			text := strings.Replace(marked, mark, "", 1)
			word := wordBefore.FindString(text[:at])
			var first *completionItem
			items := lookingAt(t, wording, name, text).completion(int32(at)).Items
			for i := range items {
				if first == nil && strings.HasPrefix(items[i].Label, word) { // so such a client picks them
					first = &items[i]
				}
			}
			require.NotNil(t, first, "%q is not among %q", word, labelsOf(items))
			assert.Equal(t, c.label, first.Label)
			assert.Equal(t, strings.Replace(was, c.is, c.taken, 1), afterWord(t, text, at, *first))
			if strings.Contains(c.typed, "amo‸") {
				called := strings.Contains(c.typed, "(")
				assert.Equal(t, called, *first.Kind != protocol.CompletionItemKindFunction, "brackets are added to functions")
			}
		})
	}
}

// Wherever the cursor stands, what replaces a word makes the text that the edit
// makes; but that a block or a bracket may be left to be typed.
func TestWordsMakeWhatEditsMake(t *testing.T) {
	same, less := 0, 0
	for _, name := range []string{"recipes/tide-pillar.candle.hcl", "rules/mixing.candle.hcl", "stock/labels.candle.hcl"} {
		text := exampleShop().File(name).Text.String()
		edits, words := lookingAt(t, editing, name, text), lookingAt(t, wording, name, text)
		for at := int32(0); at <= int32(len(text)); at += stride(1, 7) {
			byPlace := map[string]completionItem{}
			for _, item := range edits.completion(at).Items {
				byPlace[*item.SortText] = item
			}
			for _, item := range words.completion(at).Items {
				want := afterTaking(t, edits, text, byPlace[*item.SortText])
				got := afterWord(t, text, int(at), item)
				if got == want {
					same++
					continue
				}
				for i := 0; i < len(got) && i < len(want); i++ {
					if got[i] == want[i] {
						continue
					}
					rest, _, _ := strings.Cut(want[i:], "\n")
					require.Regexp(t, `^( \{\}?|\()`, rest, "%s at %d: %s instead of %s", name, at, *item.InsertText, rest)
					break
				}
				less++
			}
		}
	}
	t.Logf("%d the same, %d with a block or a bracket left out", same, less)
	assert.Greater(t, same, 10*less)
	assert.Positive(t, less)
}
