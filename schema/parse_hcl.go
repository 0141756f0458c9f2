package schema

import (
	"cmp"
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// complaint is what HCL's parser says is wrong, and where.
type complaint struct {
	summary string
	span    Span
}

// parseHCL reads any text. The parser's rare panics are made into complaints,
// for reading must survive any bytes.
func parseHCL(src []byte) (t *tree, complaints []complaint) {
	defer func() {
		if recover() != nil {
			t, complaints = &tree{}, []complaint{{}}
		}
	}()
	file, diagnostics := hclsyntax.ParseConfig(src, "", hcl.InitialPos)
	for _, d := range diagnostics {
		complaints = append(complaints, complaint{d.Summary, place(*d.Subject)})
	}
	t = &tree{}
	t.top = t.bodyOf(file.Body.(*hclsyntax.Body))
	return t, complaints
}

// place is a range without its lines and columns. Some ranges that the parser
// gives end before they start.
func place(r hcl.Range) Span { return Span{int32(r.Start.Byte), int32(r.End.Byte)} }

func (t *tree) bodyOf(from *hclsyntax.Body) body {
	var lines []line
	for _, a := range from.Attributes {
		lines = append(lines, line{place(a.NameRange), t.exprOf(a.Expr)})
	}
	slices.SortFunc(lines, func(a, b line) int { return cmp.Compare(a.name.Start, b.name.Start) })
	var blocks []blockSyntax
	for _, inner := range from.Blocks {
		syntax := blockSyntax{name: place(inner.TypeRange), open: place(inner.OpenBraceRange), shut: place(inner.CloseBraceRange)}
		var labels []Span
		for _, label := range inner.LabelRanges {
			labels = append(labels, place(label))
		}
		syntax.labels = add(&t.labels, labels)
		syntax.body = t.bodyOf(inner.Body)
		blocks = append(blocks, syntax)
	}
	return body{add(&t.lines, lines), add(&t.blocks, blocks)}
}

func (t *tree) exprOf(from hclsyntax.Expression) expr {
	e := expr{span: place(from.Range())}
	switch from := from.(type) {
	case *hclsyntax.TemplateExpr:
		e.kind = filledText
		if onlyLiterals(from) {
			e.kind = plainText
		}
	case *hclsyntax.TemplateWrapExpr:
		e.kind = filledText
	case *hclsyntax.LiteralValueExpr:
		e.kind = unquoted
	case *hclsyntax.TupleConsExpr:
		e.kind = list
		var elements []expr
		for _, element := range from.Exprs {
			elements = append(elements, t.exprOf(element))
		}
		e.of = add(&t.elements, elements)
	case *hclsyntax.ObjectConsExpr:
		e.kind = braces
	case *hclsyntax.ScopeTraversalExpr:
		e.kind = bareName
	case *hclsyntax.ParenthesesExpr:
		e.kind = inBrackets
		if text, ok := from.Expression.(*hclsyntax.TemplateExpr); ok && onlyLiterals(text) {
			e.kind = textInBrackets
		}
	case *hclsyntax.UnaryOpExpr:
		e.kind = signed
		if _, ok := from.Val.(*hclsyntax.LiteralValueExpr); ok {
			e.kind = signedNumber
		}
	}
	return e
}

func onlyLiterals(t *hclsyntax.TemplateExpr) bool {
	for _, part := range t.Parts {
		if _, ok := part.(*hclsyntax.LiteralValueExpr); !ok {
			return false
		}
	}
	return true
}
