package schema

import (
	"io/fs"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
)

// TestEditsOfTheExampleShop makes every kind of edit at every place of example
// recipes, in all line ends, with tabs, and with blocks on one line: what comes
// out reads without a problem that was not there, keeps its line ends, and
// stays in the house layout where it was in it.
// That is one edit in seven; all of them, which hold too, take half a minute.
func TestEditsOfTheExampleShop(t *testing.T) {
	made := map[string]int{}
	for _, path := range []string{"recipes/tide-pillar.candle.hcl", "recipes/tideline-layers.candle.hcl", "stock/fragrances.candle.hcl"} {
		src, err := fs.ReadFile(examples.Shop(), path)
		require.NoError(t, err)
		for kind, text := range variants(string(src)) {
			f := read(text)
			require.Empty(t, f.Problems, "%s, %s:\n%s", path, kind, says(f))
			laid, err := Format(f)
			require.NoError(t, err)
			everyEdit(f, func(what string, edits ...Edit) {
				if made[what]++; made[what]%7 != 0 {
					return
				}
				edits = Laid(f, edits)
				out, err := Apply(text, edits)
				require.NoError(t, err, "%s, %s: %s", path, kind, what)
				g := read(out)
				where := func() string {
					return path + ", " + kind + ": " + what + "\n" + around(out, edits[0]) + "\n" + says(g)
				}
				for _, p := range g.Problems {
					if p.Rule != ruleAttrMissing && p.Rule != ruleBlockTwice {
						t.Fatal(where())
					}
				}
				if !sameLineEnds(text, out) {
					t.Fatal(where())
				}
				if more, err := Format(g); len(laid) == 0 {
					require.NoError(t, err)
					assert.Empty(t, more, where())
				}
			})
		}
	}
	assert.Len(t, made, 9)
}

// variants are the same text as others would type it.
func variants(text string) map[string]string {
	var tabs []string
	for _, line := range strings.SplitAfter(text, "\n") {
		body := strings.TrimLeft(line, " ")
		tabs = append(tabs, strings.Repeat("\t", (len(line)-len(body))/2)+body)
	}
	return map[string]string{
		"LF":       text,
		"CRLF":     strings.ReplaceAll(text, "\n", "\r\n"),
		"lone CR":  strings.ReplaceAll(text, "\n", "\r"),
		"tabs":     strings.Join(tabs, ""),
		"one line": onOneLineEach(text),
	}
}

// onOneLineEach puts each block that holds one attribute on one line.
func onOneLineEach(text string) string {
	var edits []Edit
	f := read(text)
	var walk func(blocks []*Block)
	walk = func(blocks []*Block) {
		for _, b := range blocks {
			body := f.Text.Slice(b.Body)
			if len(b.written()) == 1 && len(b.Blocks()) == 0 && !strings.ContainsAny(body, "#[") && !strings.Contains(body, "<<") {
				edits = append(edits, Edit{f, b.Body, " " + strings.TrimSpace(body) + " "})
			}
			walk(b.Blocks())
		}
	}
	walk(f.Blocks)
	out, err := Apply(text, edits)
	if err != nil {
		panic(err)
	}
	return out
}

// everyEdit makes each constructor's edit wherever it applies.
func everyEdit(f *File, try func(what string, edits ...Edit)) {
	var walk func(blocks []*Block)
	walk = func(blocks []*Block) {
		for i, b := range blocks {
			for v := range b.Attrs() {
				try("set a value", SetValue(v, v.Written()))
				if !v.Spec.Required && len(b.written()) < 3 {
					try("remove a value", RemoveAttr(v))
				}
				if v.Spec.Type == Texts {
					try("append an item", AppendItem(v, `"another"`))
				}
			}
			for _, spec := range b.Spec.Attrs {
				if v := b.Get(spec.Name); v.Absent() && spec.Example != "" {
					try("set an absent value", SetValue(v, spec.Example))
					break
				}
			}
			if b.Is("step") {
				try("insert before", InsertBlockBefore(b, "step \"note\" {\n  say = \"Wait.\"\n}"))
				try("insert behind", InsertBlockAfter(b, `step "note" {}`))
				try("remove a block", RemoveBlock(b))
			}
			if b.Is("recipe") {
				try("append a block", AppendBlock(b, "step \"note\" {\n  say = \"Wait.\"\n}"))
			}
			if i > 0 && b.Is("step") && blocks[i-1].Is("step") {
				try("move a block", MoveBlock(b, blocks[i-1])...)
			}
			walk(b.Blocks())
		}
	}
	walk(f.Blocks)
}

// sameLineEnds says whether a text uses no line end that the other does not.
func sameLineEnds(text, other string) bool {
	kinds := func(s string) [3]bool {
		crlf := strings.Count(s, "\r\n")
		return [3]bool{strings.Count(s, "\n") > crlf, strings.Count(s, "\r") > crlf, crlf > 0}
	}
	return kinds(text) == kinds(other)
}

// around is the text near an edit.
func around(text string, e Edit) string {
	from := max(0, int(e.Span.Start)-200)
	return text[from:min(len(text), max(from, int(e.Span.End)+200))]
}
