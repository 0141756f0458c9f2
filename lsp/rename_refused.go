package lsp

import (
	"context"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

// free says whether a key may be given: it is well formed, and no other of its
// kind has it.
func (h *here) free(to *named, key string) error {
	kind := to.kinds[0]
	if kind == "option" && !shoprule.IsOptionName(key) {
		return refuse("%q cannot be the name of an option: write small letters, digits and _, such as in_hand", key)
	}
	if kind != "option" && !schema.IsKey(key) {
		if like := schema.AsKey(key); like != "" {
			return refuse("%q cannot be a key: write small letters, digits and hyphens, such as %q", key, like)
		}
		return refuse("%q cannot be a key: write small letters, digits and hyphens, such as %q", key, to.key)
	}
	if same := h.defined(kind, key, to.example); len(same) > 0 {
		return refuse("there is already %s called %s (%s): choose another key", aKind(kind), key, h.linesOf(same))
	}
	if kind == "rule" && h.ownRule(key) {
		return refuse("%s is already a rule that comes with the program: choose another key", key)
	}
	return nil
}

// keepsMeaning says whether a mention leads to the same block once the rename
// is made. It may not where a key can be of several kinds (the parts of a
// blend, what a trial tried, the vessel of a step): the first kind that has it
// counts, so that a key given to one kind can take a name away from another.
// Nor may it in the examples of a shop rule, which have stock of their own.
func (h *here) keepsMeaning(m *mention, to *named, key string) error {
	if m.defines || m.key != to.key && m.key != key {
		return nil
	}
	if own := h.examplesHave(m, key); own != nil && to.kinds[0] == own.Name() {
		return refuse("%s means whatever is called %s, also the %s of an example of that rule (%s): see to that by hand first", h.lineOf(m.block.File, m.span.Start), m.key, own.Name(), h.linesOf([]*schema.Block{own}))
	}
	defined := func(kind, key string, example *schema.Block) *schema.Block {
		return first(h.defined(kind, key, example))
	}
	self := defined(to.kinds[0], to.key, to.example)
	before := h.leads(m, m.key, defined)
	says := m.key
	if before == self {
		says = key
	}
	after := h.leads(m, says, func(kind, says string, example *schema.Block) *schema.Block {
		if kind == to.kinds[0] && example == to.example {
			switch says {
			case key:
				return self
			case to.key:
				return nil
			}
		}
		return defined(kind, says, example)
	})
	at := h.lineOf(m.block.File, m.span.Start)
	switch {
	case after == before:
		return nil
	case before == nil:
		return refuse("%s names %s called %s that nobody has written down yet, and would mean this one after the rename: put that right first", at, aKind(kindWords(m.kinds)), m.key)
	case before == self:
		return refuse("%s would mean the %s called %s (%s) after the rename: choose another key", at, after.Name(), key, h.linesOf([]*schema.Block{after}))
	}
	return refuse("%s means the %s called %s, and would mean this %s after the rename: choose another key", at, before.Name(), key, to.kinds[0])
}

// examplesHave is what an example of a rule has of its own under the key that
// one of the rule's expressions says, or would say. The expression means that
// too, where the rule is tried. Nil: nothing.
func (h *here) examplesHave(m *mention, key string) *schema.Block {
	if !m.reckons || m.isOption() {
		return nil
	}
	for _, b := range topOf(m.block).Blocks() {
		for _, kind := range m.kinds {
			if !b.Is("sound") && !b.Is("faulty") {
				continue
			}
			if own := first(append(h.defined(kind, m.key, b), h.defined(kind, key, b)...)); own != nil {
				return own
			}
		}
	}
	return nil
}

// leads is the block that a mention would lead to if it said that key, given
// who has which key.
func (h *here) leads(m *mention, key string, defined func(kind, key string, example *schema.Block) *schema.Block) *schema.Block {
	for _, example := range h.scopes(m) {
		for _, kind := range m.kinds {
			if b := defined(kind, key, example); b != nil {
				return b
			}
		}
	}
	return nil
}

func first(blocks []*schema.Block) *schema.Block {
	if len(blocks) == 0 {
		return nil
	}
	return blocks[0]
}

// noneUnread looks for either key in what could not be read, and in the
// expressions of shop rules: there it may be a name too, and would be left
// behind, or would come to mean something else, without a word. seen is what
// has been read, by file.
func (h *here) noneUnread(ctx context.Context, to *named, key string, seen map[*schema.File][]schema.Span) error {
	option := to.kinds[0] == "option"
	for i, f := range h.shop.Files() {
		if i%filesBetweenLooks == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		if option && (f.Clean || !sets(f)) {
			continue // it is known in its rule, where every use of it is seen, and in tunes
		}
		for _, word := range []string{to.key, key} {
			if at, why := unread(f, word, seen[f]); at >= 0 {
				return refuse("%s says %s %s: see to that by hand first, so that nothing is left behind under the wrong key", h.lineOf(f, at), word, why)
			}
		}
	}
	return nil
}

// sets says whether a file can have tunes, which set options.
func sets(f *schema.File) bool {
	return f.Name == lint.ShopFileName || slices.ContainsFunc(f.Blocks, func(b *schema.Block) bool { return b.Is("shop") })
}

// unread is where a file says a key in a place that is not known to be harmless,
// and why it is not. -1: nowhere.
func unread(f *schema.File, key string, seen []schema.Span) (at int32, why string) {
	text := f.Text.String()
	if !strings.Contains(text, key) {
		return -1, ""
	}
	var harmless []schema.Span
	if !f.Clean {
		harmless = append(comments(text), seen...)
		for _, b := range f.Blocks {
			harmless = readIn(b, harmless)
		}
	}
	for from := 0; ; {
		n := strings.Index(text[from:], key)
		if n < 0 {
			return -1, ""
		}
		start := from + n
		from = start + len(key)
		span := schema.Span{Start: int32(start), End: int32(from)}
		if start > 0 && isKeyByte(text[start-1]) || from < len(text) && isKeyByte(text[from]) {
			continue // a part of a longer word
		}
		if inExpression(f.Blocks, span) {
			quoted := start > 0 && from < len(text) && text[start-1] == '"' && text[from] == '"'
			if quoted && !slices.ContainsFunc(seen, func(s schema.Span) bool { return s.Contains(span) }) {
				return span.Start, "in an expression of a rule, where it may mean this key or not"
			}
			continue
		}
		if !f.Clean && !slices.ContainsFunc(harmless, func(s schema.Span) bool { return s.Contains(span) }) {
			return span.Start, "where the text cannot be read"
		}
	}
}

func isKeyByte(c byte) bool {
	return c == '-' || c == '_' || '0' <= c && c <= '9' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z'
}

// readIn adds what of a block has been read and is no name of anything: its
// word, a label that is no key, names of attributes, and known values.
func readIn(b *schema.Block, spans []schema.Span) []schema.Span {
	spans = append(spans, schema.Span{Start: b.Span.Start, End: b.Span.Start + int32(len(b.Name()))})
	if b.Spec.Label == schema.FreeLabel || b.Spec.Label == schema.StepKind || b.Spec.Label == schema.DateLabel {
		spans = append(spans, b.LabelSpan)
	}
	for v := range b.Attrs() {
		spans = append(spans, v.NameSpan())
		if v.Known() && v.Spec.Type != schema.Key && v.Spec.Type != schema.Keys {
			spans = append(spans, v.Span())
		}
	}
	for _, inner := range b.Blocks() {
		spans = readIn(inner, spans)
	}
	return spans
}

// inExpression says whether a span lies in an expression of a shop rule.
func inExpression(blocks []*schema.Block, span schema.Span) bool {
	for _, b := range blocks {
		if !topOf(b).Is("rule") || !b.Span.Contains(span) {
			continue
		}
		for v := range b.Attrs() {
			if v.Spec.Type == schema.Expression && v.Span().Contains(span) {
				return true
			}
		}
		if inExpression(b.Blocks(), span) {
			return true
		}
	}
	return false
}

// aKind is a kind as a sentence names one of it: "a wax", "an additive".
func aKind(word string) string {
	if strings.IndexByte("aeiou", word[0]) >= 0 {
		return "an " + word
	}
	return "a " + word
}
