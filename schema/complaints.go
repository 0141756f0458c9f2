package schema

import "strings"

// repeated is what the parser says of a second attribute of one name; the
// text is whole all the same.
const repeated = "Attribute redefined"

// failures counts the complaints that mean the text did not parse.
func failures(complaints []complaint) int {
	n := 0
	for _, c := range complaints {
		if c.summary != repeated {
			n++
		}
	}
	return n
}

// complain turns what the parser said into problems in the maker's words. One
// open quote or bracket makes it complain about line after line, so a line
// that is told of already is not told of again, and the rest of a text that
// was swallowed not at all.
func (r *reader) complain(complaints []complaint) {
	text := NewText(r.file.Text.content)
	told := map[int]bool{}
	for _, p := range r.file.Problems {
		told[text.Line(p.Span.Start)] = true
	}
	for i, c := range complaints {
		if r.full() {
			r.untold += len(complaints) - i
			r.file.Whole = false
			r.hurt = append(r.hurt, Span{r.span(c.span).Start, int32(text.Len())})
			return
		}
		span := r.span(c.span)
		if c.summary == repeated {
			r.attrRepeated(span)
			continue
		}
		r.file.Whole = false
		span = trimLineEnd(text, span)
		r.hurt = append(r.hurt, span)
		if line := text.Line(span.Start); told[line] {
			continue
		} else {
			told[line] = true
		}
		r.report(Problem{Rule: ruleSyntax, Span: span, Message: inOurWords(c.summary)})
		if swallows[c.summary] {
			return
		}
	}
}

// attrRepeated tells of an attribute that its block has twice.
func (r *reader) attrRepeated(span Span) {
	name := r.file.Text.Slice(span)
	r.report(Problem{Rule: ruleAttrRepeated, Span: span, Message: "a second `" + name + "` stands in this block: the first counts, take one of them out"})
}

// trimLineEnd keeps a span from reaching into the next line where the parser
// points at a line end.
func trimLineEnd(text *Text, span Span) Span {
	end := text.LineSpan(text.Line(span.Start)).End
	span.End = max(span.Start, min(span.End, end))
	return span
}

// swallows are the complaints after which the rest of the text was taken for
// something it is not.
var swallows = map[string]bool{
	"Invalid multi-line string":                  true,
	"Unterminated template string":               true,
	"Unterminated string literal":                true,
	"Unclosed template interpolation sequence":   true,
	"Unterminated tuple constructor expression":  true,
	"Unterminated object constructor expression": true,
	"Unterminated function call":                 true,
	"Unbalanced parentheses":                     true,
	"Unclosed configuration block":               true,
	"Unexpected end of template":                 true,
	"":                                           true,
}

// inOurWords says what one of the parser's complaints means for a maker.
func inOurWords(summary string) string {
	if words := ourWords[summary]; words != "" {
		return words
	}
	if strings.Contains(summary, "template") || strings.Contains(summary, "directive") {
		return "this ${ or %{ is not used right: write the text out, or double the $ or % where those very characters are meant"
	}
	return `this cannot be read: a line is name = value, a block is name "label" { and, at its end, }`
}

var ourWords = map[string]string{
	"Argument or block definition required":           `this cannot be read: a line is name = value, a block is name "label" { and, at its end, }`,
	"Argument definition required":                    "a block on one line holds one name = value: give each its own line",
	"Invalid argument name":                           "a name stands without quotes: write name = value",
	"Invalid block definition":                        `this block needs an opening brace: write name "label" {`,
	"Invalid single-argument block definition":        "a block on one line holds one name = value: give each its own line",
	"Missing newline after argument":                  "something stands behind the value: give it a line of its own, or put the whole value in quotes",
	"Unexpected comma after argument":                 "no comma stands at the end of a line: take it out",
	"Missing newline after block definition":          "something stands behind the closing brace: give it a line of its own",
	"Unclosed configuration block":                    "this block is never closed: write } where it ends",
	"Unclosed configuration body":                     "the text ends too soon: write what is missing at its end",
	"Invalid expression":                              `this is no value: write text in quotes, a number, true or false, or a list such as ["a", "b"]`,
	"Missing expression":                              `a value is missing here: write text in quotes, a number, true or false, or a list such as ["a", "b"]`,
	"Invalid number literal":                          "this number cannot be read: write digits, and a point before decimals",
	"Invalid multi-line string":                       `the closing quote of this line is missing: write " where the text ends`,
	"Unterminated template string":                    `the closing quote of this text is missing: write " where it ends`,
	"Unterminated string literal":                     `the closing quote of this label is missing: write " where it ends`,
	"Invalid string literal":                          "a label is plain text in quotes, with nothing to fill in",
	"Invalid escape sequence":                         `a backslash stands only before ", another backslash, n, t, r or u with four digits: write two backslashes for one`,
	"Invalid character":                               "this character has no meaning here: take it out, or put the text it belongs to in quotes",
	"Invalid character encoding":                      "this is not UTF-8 text: save the file as UTF-8 and type the character again",
	"Unsupported operator":                            "this sign has no meaning here: take it out",
	"Missing item separator":                          `a comma is missing in this list: write ["a", "b"]`,
	"Unterminated tuple constructor expression":       "this list is never closed: write ] where it ends",
	"Unterminated object constructor expression":      "this brace is never closed: write } where it ends",
	"Missing attribute value":                         "a value is missing in these braces",
	"Missing attribute separator":                     "a comma is missing in these braces",
	"Missing key/value separator":                     "an equals sign is missing in these braces",
	"Unbalanced parentheses":                          "a bracket is not closed: write ) where it ends",
	"Missing closing parenthesis":                     "a bracket is not closed: write ) where it ends",
	"Unterminated function call":                      "a bracket is not closed: write ) where it ends",
	"Missing argument separator":                      "a comma is missing between what stands in these brackets",
	"Missing open parenthesis":                        "a bracket is missing: write ( after the name of the function",
	"Missing function name":                           "the name of a function is missing here",
	"Missing false expression in conditional":         "the other value is missing: write condition ? value : other value",
	"Attribute name required":                         "a name is missing after the dot",
	"Variable name required":                          "a name is missing here",
	"Invalid attribute name":                          "a name is missing after the dot",
	"Index value required":                            "nothing stands between these brackets",
	"Unclosed index brackets":                         "a bracket is not closed: write ] where it ends",
	"Missing close bracket on index":                  "a bracket is not closed: write ] where it ends",
	"Missing close bracket on splat index":            "a bracket is not closed: write ] where it ends",
	"Nested splat expression not allowed":             "one * is enough here",
	"Invalid legacy index syntax":                     "write an index between [ and ]",
	"Invalid 'for' expression":                        "a for expression is not part of the format",
	"Invalid 'for' directive":                         "a for directive is not part of the format",
	"Extra characters after expression":               "something stands behind the value: take it out",
	"Unclosed template interpolation sequence":        "a ${ is not closed: write } where it ends, or $${ where those very characters are meant",
	"Extra characters after interpolation expression": "something stands behind the value in this ${ }: take it out, or write $${ where those very characters are meant",
}
