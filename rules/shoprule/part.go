package shoprule

import (
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wickrule/schema"
)

// word is one name in a source, by its bytes.
type word struct {
	from, to int
	base     int // where what it is asked of starts; -1: it stands first
	dot      int // where the dot before it stands
	call     bool
	end      int // of a call: behind its closing bracket; 0: it is not closed
}

func (w *word) text(source string) string { return source[w.from:w.to] }

// asked is what the word is asked of; "" where it stands first.
func (w *word) asked(source string) string {
	if w.base < 0 {
		return ""
	}
	return strings.TrimSpace(source[w.base:w.dot])
}

// whole is the source from what the word is asked of to its own end.
func (w *word) whole(source string) string {
	from, to := w.from, w.to
	if w.base >= 0 {
		from = w.base
	}
	if w.call {
		to = max(to, w.end)
	}
	return source[from:to]
}

// wordsIn are the names of a source, in order, whether it can be parsed or not.
func wordsIn(tokens hclsyntax.Tokens) []word {
	var words []word
	type open struct{ operand, call int }
	var stack []open
	operand, dot, last := -1, -1, -1 // where the operand in hand starts, its last dot, its last name
	for _, token := range tokens {
		from, to := token.Range.Start.Byte, token.Range.End.Byte
		switch token.Type {
		case hclsyntax.TokenIdent:
			w := word{from: from, to: to, base: -1, dot: dot}
			if operand >= 0 && dot >= 0 {
				w.base = operand
			} else {
				operand = from
			}
			dot, last = -1, len(words)
			words = append(words, w)
			continue
		case hclsyntax.TokenDot:
			dot = from
		case hclsyntax.TokenOParen:
			o := open{operand, -1}
			switch {
			case last >= 0 && words[last].base < 0:
				words[last].call, o.call = true, last
			default:
				o.operand = from
			}
			stack = append(stack, o)
			operand, dot = -1, -1
		case hclsyntax.TokenCParen:
			operand, dot = -1, -1
			if n := len(stack); n > 0 {
				operand = stack[n-1].operand
				if call := stack[n-1].call; call >= 0 {
					words[call].end = to
				}
				stack = stack[:n-1]
			}
		case hclsyntax.TokenNewline, hclsyntax.TokenComment:
			continue
		default:
			operand, dot = -1, -1
		}
		last = -1
	}
	return words
}

// Sort is what sort of part of an expression something is.
type Sort uint8

const (
	KindPart Sort = iota // a kind of block: pour
	AttributePart
	OptionPart // one of the rule's own figures
	FunctionPart
	SignPart    // <=, &&: what the whole comes to
	UnknownPart // a name that there is not
)

// Part is a part of an expression that something can be told of.
type Part struct {
	Sort   Sort
	Span   schema.Span // where its word or sign stands in the file
	Source string      // the part with what belongs to it: pour.at, least(a, b), a <= b
	Name   Name        // not of a function, nor of a sign
	Of     string      // of an attribute: what it is asked of
}

// PartAt is the part of an expression at a place of its file. False: nothing
// can be told of what stands there.
func (d *Draft) PartAt(v schema.Value, at int32) (Part, bool) {
	source, start := sourceOf(v)
	place := int(at - start)
	words := wordsIn(lex(source))
	var found *word
	for i := range words {
		if w := &words[i]; w.from <= place && place <= w.to && (found == nil || place < w.to) {
			found = w
		}
	}
	if found == nil {
		return d.signAt(source, start, place)
	}
	text := found.text(source)
	part := Part{Span: schema.Span{Start: start + int32(found.from), End: start + int32(found.to)}, Source: found.whole(source), Sort: UnknownPart}
	base := found.asked(source)
	switch {
	case found.call:
		part.Sort = FunctionPart
		part.Name.Word = text
		_, known := FunctionNamed(text)
		return part, known
	case base == "" && text == "option":
		return part, false
	case base == "":
		if k := table.byName[text]; k != nil {
			part.Sort, part.Name = KindPart, k.told()
		}
		return part, part.Sort == KindPart
	}
	names, of := d.Asked(base)
	for _, n := range names {
		if n.Word == text {
			part.Sort, part.Name, part.Of = AttributePart, n, of
			if base == "option" {
				part.Sort = OptionPart
			}
		}
	}
	return part, part.Sort != UnknownPart
}

// signAt is the innermost operation whose sign stands at a place.
func (d *Draft) signAt(source string, start int32, place int) (Part, bool) {
	if len(source) > mostSource {
		return Part{}, false
	}
	tree, complaints := hclsyntax.ParseExpression([]byte(source), "", hcl.InitialPos)
	if complaints.HasErrors() {
		return Part{}, false
	}
	part, found := Part{Sort: SignPart}, false
	hclsyntax.VisitAll(tree, func(node hclsyntax.Node) hcl.Diagnostics {
		t, ok := node.(*hclsyntax.BinaryOpExpr)
		if !ok {
			return nil
		}
		from, to := t.LHS.Range().End.Byte, t.RHS.Range().Start.Byte
		if from > to || to > len(source) || place < from || place > to {
			return nil
		}
		// Brackets around a side are no part of its range.
		gap := source[from:to]
		sign := strings.Trim(gap, " \t\r\n()")
		if at := from + strings.Index(gap, sign); sign != "" && at <= place && place <= at+len(sign) {
			part.Span = schema.Span{Start: start + int32(at), End: start + int32(at+len(sign))}
			part.Source = source[t.SrcRange.Start.Byte:t.SrcRange.End.Byte]
			found = true
		}
		return nil
	})
	return part, found
}

// sourceOf is the text of an expression, read or not, and where it starts.
func sourceOf(v schema.Value) (string, int32) { return v.Written(), v.Span().Start }
