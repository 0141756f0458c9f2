package lsp

import (
	"cmp"
	"context"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// tokenKind is a kind of token, by its place in the legend.
type tokenKind uint32

const (
	commentToken tokenKind = iota
	keywordToken           // the word of a block, true, false
	propertyToken
	stringToken // text, and what cannot be read
	numberToken
	unitToken
	choiceToken // a word of a closed list
	stockToken
	recipeToken
	ruleToken
	trialToken
	shopToken
	stepToken
	nameToken // in an expression
	functionToken
	operatorToken
)

// Modifiers, as bits.
const (
	definitionBit uint32 = 1 << iota // where a key is given
	programBit                       // comes with the program
)

// tokenLegend names the kinds of token, in the order of their numbers. All are
// names that the protocol knows, so that every theme has a color for them.
var tokenLegend = protocol.SemanticTokensLegend{
	TokenTypes: []string{
		string(protocol.SemanticTokenTypeComment), string(protocol.SemanticTokenTypeKeyword), string(protocol.SemanticTokenTypeProperty),
		string(protocol.SemanticTokenTypeString), string(protocol.SemanticTokenTypeNumber), string(protocol.SemanticTokenTypeType),
		string(protocol.SemanticTokenTypeEnumMember), string(protocol.SemanticTokenTypeClass), string(protocol.SemanticTokenTypeStruct),
		string(protocol.SemanticTokenTypeMacro), string(protocol.SemanticTokenTypeEvent), string(protocol.SemanticTokenTypeNamespace),
		string(protocol.SemanticTokenTypeMethod), string(protocol.SemanticTokenTypeVariable), string(protocol.SemanticTokenTypeFunction),
		string(protocol.SemanticTokenTypeOperator),
	},
	TokenModifiers: []string{string(protocol.SemanticTokenModifierDefinition), string(protocol.SemanticTokenModifierDefaultLibrary)},
}

// token is a stretch of text and what it is.
type token struct {
	span      schema.Span
	kind      tokenKind
	modifiers uint32
}

func (h *here) semanticTokens(_ context.Context, _ *protocol.SemanticTokensParams) (*protocol.SemanticTokens, error) {
	return &protocol.SemanticTokens{Data: h.encoded(h.tokens(), schema.Span{Start: 0, End: int32(h.text.Len())})}, nil
}

func (h *here) semanticTokensIn(_ context.Context, p *protocol.SemanticTokensRangeParams) (*protocol.SemanticTokens, error) {
	return &protocol.SemanticTokens{Data: h.encoded(h.tokens(), h.span(p.Range))}, nil
}

// tokens are those of the whole text, in order. None overlap.
func (h *here) tokens() []token {
	c := &colorer{here: h}
	for _, span := range comments(h.text.String()) {
		c.add(span, commentToken, 0)
	}
	for _, b := range h.file.Blocks {
		c.block(b)
	}
	slices.SortStableFunc(c.list, func(a, b token) int { return cmp.Compare(a.span.Start, b.span.Start) })
	kept, end := c.list[:0], int32(0)
	for _, t := range c.list {
		if t.span.Start >= end {
			kept, end = append(kept, t), t.span.End
		}
	}
	return kept
}

// encoded is tokens as the protocol wants them: five numbers each, of which the
// first two count from the start of the token before. A token of several lines
// is one for each line. Only what shares something with a part of the text is
// in it.
func (h *here) encoded(tokens []token, part schema.Span) []uint32 {
	data := []uint32{}
	var line, character uint32
	for _, t := range tokens {
		if t.span.End <= part.Start || t.span.Start >= part.End {
			continue
		}
		first, last := h.text.Line(t.span.Start), h.text.Line(t.span.End)
		for n := first; n <= last; n++ {
			row := h.text.LineSpan(n)
			piece := schema.Span{Start: max(row.Start, t.span.Start), End: min(row.End, t.span.End)}
			if piece.Start >= piece.End || strings.TrimSpace(h.text.Slice(piece)) == "" {
				continue
			}
			r := h.rangeOf(piece)
			if r.Start.Line != line {
				character = 0
			}
			data = append(data, r.Start.Line-line, r.Start.Character-character, r.End.Character-r.Start.Character, uint32(t.kind), t.modifiers)
			line, character = r.Start.Line, r.Start.Character
		}
	}
	return data
}

// colorer gathers tokens.
type colorer struct {
	*here
	list []token
}

func (c *colorer) add(span schema.Span, kind tokenKind, modifiers uint32) {
	if span.End > span.Start && strings.TrimSpace(c.text.Slice(span)) != "" {
		c.list = append(c.list, token{span, kind, modifiers})
	}
}

// word is the name that starts at an offset, as it is spelt there.
func (c *colorer) word(at int32) schema.Span {
	end := at
	for text := c.text.String(); int(end) < len(text) && isKeyByte(text[end]); end++ {
	}
	return schema.Span{Start: at, End: end}
}

// quoted is a text between quotes that is something else than text.
func (c *colorer) quoted(span schema.Span, kind tokenKind, modifiers uint32) {
	inner := unquoted(c.file, span)
	c.add(schema.Span{Start: span.Start, End: inner.Start}, stringToken, 0)
	c.add(inner, kind, modifiers)
	c.add(schema.Span{Start: inner.End, End: span.End}, stringToken, 0)
}

func (c *colorer) block(b *schema.Block) {
	c.add(c.word(b.Span.Start), keywordToken, 0)
	if b.LabelSpan.Start > b.Span.Start {
		kind, modifiers := c.labelKind(b)
		c.quoted(b.LabelSpan, kind, modifiers)
	}
	for v := range b.Attrs() {
		c.add(c.word(v.NameSpan().Start), propertyToken, 0)
		c.value(v)
	}
	for _, inner := range b.Blocks() {
		c.block(inner)
	}
}

func (c *colorer) labelKind(b *schema.Block) (tokenKind, uint32) {
	switch b.Spec.Label {
	case schema.Defines:
		return keyKind(b.Name()), definitionBit
	case schema.Refers:
		return stockToken, 0
	case schema.RuleName:
		if c.ownRule(b.Label) {
			return ruleToken, programBit
		}
		return ruleToken, 0
	case schema.StepKind:
		return stepToken, 0
	case schema.DateLabel:
		return numberToken, 0
	}
	switch {
	case b.Spec.ID == tuneOption:
		return propertyToken, 0
	case b.Is("option"):
		return propertyToken, definitionBit
	}
	return stringToken, 0
}

// keyKind is what a key of a kind of block is.
func keyKind(kind string) tokenKind {
	switch kind {
	case "recipe":
		return recipeToken
	case "rule":
		return ruleToken
	case "trial":
		return trialToken
	case "shop":
		return shopToken
	}
	return stockToken
}

func (c *colorer) value(v schema.Value) {
	switch {
	case v.Broken():
		c.add(v.Span(), stringToken, 0)
	case v.Spec.Type == schema.Expression:
		c.expression(v)
	case v.Spec.Type == schema.YesNo:
		c.add(v.Span(), keywordToken, 0)
	case v.Spec.Type == schema.Whole:
		c.add(v.Span(), numberToken, 0)
	case v.Spec.Type == schema.Literal:
		c.literal(v)
	case v.Spec.Type == schema.Date:
		c.quoted(v.Span(), numberToken, 0)
	case v.IsAmount(), v.Spec.Type == schema.Figure:
		c.amount(v.Span(), v.BelowRim())
	case v.Spec.Type == schema.Prose, v.Spec.Type == schema.Line, v.Spec.Type == schema.Color:
		c.add(v.Span(), stringToken, 0)
	default:
		for _, item := range v.Items() {
			switch v.Spec.Type {
			case schema.Key, schema.Keys:
				c.quoted(item.Span, keyKind(v.Spec.Refers[0]), 0)
			case schema.Texts:
				c.add(item.Span, stringToken, 0)
			default: // a word of a list, or one in the place of an amount
				c.quoted(item.Span, choiceToken, 0)
			}
		}
	}
}

// literal is whatever an option is set to.
func (c *colorer) literal(v schema.Value) {
	switch text := v.Text(); {
	case strings.HasPrefix(v.Written(), `"`):
		c.amount(v.Span(), false)
	case text == "true" || text == "false":
		c.add(v.Span(), keywordToken, 0)
	default:
		c.add(v.Span(), numberToken, 0)
	}
}

// amount is a text in quotes in which numbers and units stand.
func (c *colorer) amount(span schema.Span, belowRim bool) {
	inner := unquoted(c.file, span)
	text := c.text.Slice(inner)
	if strings.Contains(text, `\`) {
		c.add(span, stringToken, 0)
		return
	}
	at := span.Start
	take := func(from, to int, kind tokenKind) {
		piece := schema.Span{Start: inner.Start + int32(from), End: inner.Start + int32(to)}
		if piece.Start < at || piece.End <= piece.Start {
			return // a unit that both ends of a range share is told twice
		}
		c.add(schema.Span{Start: at, End: piece.Start}, stringToken, 0)
		c.add(piece, kind, 0)
		at = piece.End
	}
	if belowRim {
		text, _, _ = strings.Cut(text, "below") // those are words, and no unit
	}
	parts := quantity.Parts(text)
	for i, part := range parts {
		take(part.NumberStart, part.NumberEnd, numberToken)
		if i+1 == len(parts) || part.UnitEnd <= parts[i+1].NumberStart {
			take(part.UnitStart, part.UnitEnd, unitToken)
		}
	}
	c.add(schema.Span{Start: at, End: span.End}, stringToken, 0)
}
