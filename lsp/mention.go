package lsp

import (
	"iter"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

// mention is a place that says a key: where a block gets it, or where a block
// is named by it.
type mention struct {
	kinds   []string      // what it may name: names of top-level blocks
	key     string        // as it reads
	span    schema.Span   // quotes included
	block   *schema.Block // that it is the label of, or that its attribute stands in
	defines bool          // the block gets its key here
	reckons bool          // it stands in an expression of a shop rule
	example *schema.Block // the example of a shop rule it stands in, for an option the rule; nil: none
	tune    *schema.Block // of an option that it sets; else nil
}

// tuneOption is the block that sets an option of a rule.
const tuneOption = "tune option"

// mentionsOf yields every mention of a file that could be read: those of each
// block before those of the blocks inside it.
//
// The examples of a shop rule count too. They are read as if laid over the
// shop, so they name its stock, and a rename that left them out would break
// the proof of the rule.
func mentionsOf(f *schema.File) iter.Seq[mention] {
	return func(yield func(mention) bool) {
		for _, b := range f.Blocks {
			if !mentionsIn(b, nil, yield) {
				return
			}
		}
	}
}

func mentionsIn(b, example *schema.Block, yield func(mention) bool) bool {
	if m, ok := labelMention(b); ok {
		if m.example == nil {
			m.example = example
		}
		if !yield(m) {
			return false
		}
	}
	for v := range b.Attrs() {
		if v.Spec.Type == schema.Expression {
			for _, said := range shoprule.Mentions(v) {
				if !yield(expressionMention(b, said)) {
					return false
				}
			}
		}
		if v.Spec.Type != schema.Key && v.Spec.Type != schema.Keys {
			continue
		}
		for _, item := range v.Items() {
			if item.Text != "" && !yield(mention{kinds: v.Spec.Refers, key: item.Text, span: item.Span, block: b, example: example}) {
				return false
			}
		}
	}
	if b.Is("sound") || b.Is("faulty") {
		example = b
	}
	for _, inner := range b.Blocks() {
		if !mentionsIn(inner, example, yield) {
			return false
		}
	}
	return true
}

// expressionMention is what an expression of a shop rule says: an option of
// the rule, or a key of the shop. Examples are no part of the rule's own sight.
func expressionMention(b *schema.Block, said shoprule.Mention) mention {
	m := mention{kinds: said.Kinds, key: said.Key, span: said.Span, block: b, reckons: true}
	if m.isOption() {
		m.example = topOf(b)
	}
	return m
}

func (m *mention) isOption() bool { return m.kinds[0] == "option" }

// aboutRules is what the label of a concession or a tune names.
var aboutRules = []string{"rule"}

// labelMention is what the label of a block says. False: it is no key, or
// there is none.
func labelMention(b *schema.Block) (mention, bool) {
	m := mention{key: b.Label, span: b.LabelSpan, block: b}
	switch b.Spec.Label {
	case schema.Defines:
		m.kinds, m.defines = []string{b.Name()}, true
	case schema.Refers:
		m.kinds = b.Spec.LabelRefers
	case schema.RuleName:
		m.kinds = aboutRules
	case schema.FreeLabel:
		switch {
		case b.Spec.ID == tuneOption:
			m.kinds, m.tune = []string{b.Name()}, b.Parent
		case b.Is("option"):
			m.kinds, m.defines, m.example = []string{b.Name()}, true, b.Parent
		}
	}
	return m, m.kinds != nil && b.Label != "" && b.LabelSpan.Start > b.Span.Start
}

// inside is the mention without its quotes.
func (m *mention) inside() schema.Span { return unquoted(m.block.File, m.span) }

// plain says whether the text between the quotes is the key itself: then it
// can be replaced.
func (m *mention) plain() bool { return m.block.File.Text.Slice(m.inside()) == m.key }

// scopes is where what is mentioned is looked for, one after the other: in the
// example of a shop rule that it stands in, and (nil) in the shop. An option
// that a tune sets is one of the rule that the tune is of.
func (h *here) scopes(m *mention) []*schema.Block {
	if m.tune != nil {
		if rule := h.shop.Find("rule", m.tune.Label); rule != nil {
			return []*schema.Block{rule}
		}
		return nil
	}
	if m.example == nil {
		return []*schema.Block{nil}
	}
	if m.isOption() {
		return []*schema.Block{m.example}
	}
	return []*schema.Block{m.example, nil}
}

// unquoted is a span without the quotes it starts and ends with. One that is
// still to be closed has none at its end.
func unquoted(f *schema.File, s schema.Span) schema.Span {
	text := f.Text.Slice(s)
	if text == "" || text[0] != '"' {
		return s
	}
	s.Start++
	if len(text) > 1 && text[len(text)-1] == '"' {
		s.End--
	}
	return s
}

// mentionAt is the mention at an offset of the document.
func (h *here) mentionAt(at int32) (mention, bool) {
	for m := range mentionsOf(h.file) {
		if m.span.Touches(at) {
			return m, true
		}
	}
	return mention{}, false
}

// named is what a mention leads to: all blocks of one kind and key within the
// shop, or within one example of a shop rule, or one option of a rule. Where nothing has that key it is
// known by the kinds it might have been.
type named struct {
	key     string
	kinds   []string // one, if it was found
	found   bool
	example *schema.Block
}

// resolve is what a mention leads to. What an example defines itself comes
// before what the shop has.
func (h *here) resolve(m *mention) named {
	if m.defines {
		return named{m.key, m.kinds, true, m.example}
	}
	for _, example := range h.scopes(m) {
		for i, kind := range m.kinds {
			if len(h.defined(kind, m.key, example)) > 0 {
				return named{m.key, m.kinds[i : i+1], true, example}
			}
		}
	}
	return named{m.key, m.kinds, false, m.tune} // the options of two rules have nothing to do with each other
}

// defined lists the blocks of a kind that have a key, in an example or, with
// nil, in the shop: the first is the one that counts.
func (h *here) defined(kind, key string, example *schema.Block) []*schema.Block {
	if example == nil {
		return h.shop.Same(kind, key)
	}
	var same []*schema.Block
	for b := range example.Each(kind) {
		if b.Label == key {
			same = append(same, b)
		}
	}
	return same
}

// leadsTo says whether a mention leads to what another leads to.
func (h *here) leadsTo(m *mention, to *named) bool {
	if m.key != to.key {
		return false
	}
	n := h.resolve(m)
	return n.found == to.found && n.example == to.example && slices.Equal(n.kinds, to.kinds)
}

// ownRule says whether a rule comes with the program, so that no block of the
// shop defines it.
func (h *here) ownRule(name string) bool {
	return h.shop.Find("rule", name) == nil && slices.ContainsFunc(h.rules(h.shop), func(r *lint.Rule) bool { return r.Name == name })
}

// kindWords is the kinds as a sentence names them: "wax or additive".
func kindWords(kinds []string) string {
	words := slices.Clone(kinds)
	for i, w := range words {
		words[i] = strings.ReplaceAll(w, "_", " ")
	}
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " or " + words[n-1]
	}
	return strings.Join(words, "")
}
