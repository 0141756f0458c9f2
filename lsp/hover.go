package lsp

import (
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// subject is what a hover is about: the characters, and what there is to say
// of them, a paragraph each.
type subject struct {
	span schema.Span
	says []string
}

// about is a subject of these paragraphs; those that are empty are left out.
func about(span schema.Span, says ...string) *subject {
	s := &subject{span: span}
	for _, text := range says {
		if text != "" {
			s.says = append(s.says, text)
		}
	}
	return s
}

// hover tells what stands at the cursor. Where something is found there, that
// comes first, and at the end why the rule asks for it.
func (h *here) hover(at int32) *protocol.Hover {
	first, last, where := h.foundAt(at)
	s := h.subjectAt(at)
	switch {
	case s == nil && first == nil:
		return nil
	case s == nil:
		s = &subject{span: where}
	}
	var text []string
	text = append(append(append(text, first...), s.says...), last...)
	if len(text) == 0 {
		return nil
	}
	r := h.rangeOf(s.span)
	return &protocol.Hover{Contents: h.markup(strings.Join(text, "\n\n")), Range: &r}
}

// subjectAt is what stands at an offset, or nil where there is nothing to say.
func (h *here) subjectAt(at int32) *subject {
	b := h.blockAt(at)
	if b == nil {
		return nil
	}
	if v, ok := valueAt(b, at); ok {
		if v.NameSpan().Touches(at) {
			return about(v.NameSpan(), h.attribute(v.Spec)...)
		}
		if v.Spec.Type == schema.Expression {
			return h.expressionSubject(v, at)
		}
		return h.valueSubject(v, at)
	}
	hasLabel := b.LabelSpan.Start > b.Header().Start
	switch {
	case hasLabel && b.LabelSpan.Touches(at):
		return h.labelSubject(b)
	case b.Header().Touches(at):
		name := schema.Span{Start: b.Header().Start, End: b.Header().Start + int32(len(b.Name()))}
		if b.Is("sound") || b.Is("faulty") {
			return about(name, h.exampleSays(b)...)
		}
		return about(name, h.blockWord(b.Spec)...)
	}
	return nil
}

// labelSubject is about the label of a block.
func (h *here) labelSubject(b *schema.Block) *subject {
	switch b.Spec.Label {
	case schema.Defines:
		if b.Is("recipe") && b.Parent != nil {
			return about(b.LabelSpan, append(h.card(b), h.ruleSays(b))...)
		}
		return about(b.LabelSpan, h.card(b)...)
	case schema.Refers:
		for _, kind := range b.Spec.LabelRefers {
			if stock := h.shop.Find(kind, b.Label); stock != nil {
				return about(b.LabelSpan, append(h.card(stock), h.inRecipe(b)...)...)
			}
		}
	case schema.DateLabel:
		return about(b.LabelSpan, h.burn(b)...)
	case schema.StepKind:
		return about(b.LabelSpan, h.step(b)...)
	case schema.FreeLabel:
		if b.Spec.ID == tuneOption {
			if s := h.tunedSubject(b, b.LabelSpan); s != nil {
				return s
			}
		} else if b.Is("option") {
			if says := h.optionSays(b.Parent, b.Label); says != nil {
				return about(b.LabelSpan, says...)
			}
		}
	case schema.RuleName:
		if r := h.rule(b.Label); r != nil {
			return about(b.LabelSpan, h.explained(r)...)
		}
	}
	return about(b.LabelSpan, h.blockWord(b.Spec)...)
}

// valueSubject is about a value, or about the element of a list at the offset.
func (h *here) valueSubject(v schema.Value, at int32) *subject {
	attribute := h.attribute(v.Spec)
	if !v.Known() {
		return about(v.Span(), attribute...)
	}
	item := itemAt(v, at)
	switch v.Spec.Type {
	case schema.Key, schema.Keys:
		for _, kind := range v.Spec.Refers {
			if b := h.shop.Find(kind, item.Text); b != nil {
				return about(item.Span, append(h.card(b), h.named(v, b)...)...)
			}
		}
	case schema.Choice, schema.Choices:
		return about(item.Span, h.wordMeans(v.Spec, item.Text)...)
	case schema.Amount:
		return about(v.Span(), h.amount(v)...)
	case schema.Whole:
		return about(v.Span(), append(h.number(v), attribute...)...)
	case schema.Literal:
		if s := h.tunedSubject(v.Block, v.Span()); s != nil {
			return s
		}
	case schema.Line:
		if v.Spec.Name == "formula" {
			return about(v.Span(), append(h.fingerprint(v), attribute...)...)
		}
	}
	return about(item.Span, attribute...)
}

// itemAt is the element of a list at an offset; of anything else, and between
// elements, the whole value.
func itemAt(v schema.Value, at int32) schema.Item {
	whole := schema.Item{Text: v.Text(), Span: v.Span()}
	found := whole
	for _, item := range v.Items() {
		if item.Span.Touches(at) {
			found = item
			if at < item.Span.End {
				return item
			}
		}
	}
	return found
}
