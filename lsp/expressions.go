package lsp

import (
	"strings"
	"unicode/utf8"

	"wickrule/rules/shoprule"
	"wickrule/schema"
)

// deepestTemplate is how deep texts are followed that fill in texts.
const deepestTemplate = 32

// expression gathers the tokens of an expression of a shop rule: names, what
// they are asked for, functions, signs, numbers, texts with what they fill in,
// and keys of the shelves.
func (c *colorer) expression(v schema.Value) {
	for _, m := range shoprule.Mentions(v) {
		if m.Kinds[0] != "option" {
			c.quoted(m.Span, keyKind(m.Kinds[0]), 0)
		}
	}
	span := v.Span()
	c.terms(int(span.Start), int(span.End), 0)
}

func (c *colorer) terms(i, end, deep int) {
	text := c.text.String()[:end]
	before := "" // the word or sign before
	for i < end {
		rest := text[i:]
		next := i + 1
		switch ch := rest[0]; {
		case ch == ' ' || ch == '\t' || ch == '\r' || ch == '\n':
			i = next
			continue
		case ch == '#' || strings.HasPrefix(rest, "//"):
			next = lineEnd(text, i) // told with the comments
		case strings.HasPrefix(rest, "/*"):
			if n := strings.Index(rest[2:], "*/"); n >= 0 {
				next = i + 2 + n + 2
			}
		case strings.HasPrefix(rest, "<<"):
			next = heredocEnd(text, i)
			c.add(spanOf(i, next), stringToken, 0)
		case ch == '"':
			next = quoteEnd(text, i)
			if before == "amount(" || before == "degrees(" {
				c.amount(spanOf(i, next), false)
			} else {
				c.template(i, next, deep)
			}
		case '0' <= ch && ch <= '9':
			for next < end && (isDigitOrDot(text[next])) {
				next++
			}
			c.add(spanOf(i, next), numberToken, 0)
		case isNameByte(ch):
			for next < end && (isNameByte(text[next]) || '0' <= text[next] && text[next] <= '9') {
				next++
			}
			c.add(spanOf(i, next), nameKind(text[i:next], before, text[next:]), 0)
		case strings.IndexByte("+-*/!&|?:=<>", ch) >= 0:
			for next < end && strings.IndexByte("&|=", text[next]) >= 0 {
				next++
			}
			c.add(spanOf(i, next), operatorToken, 0)
		default:
			_, size := utf8.DecodeRuneInString(rest)
			next = i + size
		}
		if text[i:next] == "(" {
			before += "("
		} else {
			before = text[i:next]
		}
		i = next
	}
}

// template gathers the pieces of a text in quotes, and what stands in them
// between ${ and }.
func (c *colorer) template(i, end, deep int) {
	text := c.text.String()[:end]
	from := i
	for at := i + 1; at < end; at++ {
		switch {
		case text[at] == '\\':
			at++
		case strings.HasPrefix(text[at:], "$${"):
			at += 2
		case strings.HasPrefix(text[at:], "${") && deep < deepestTemplate:
			shut := fillEnd(text, at+2)
			c.add(spanOf(from, at), stringToken, 0)
			c.add(spanOf(at, at+2), operatorToken, 0)
			c.terms(at+2, shut, deep+1)
			from = shut
			if shut < end && text[shut] == '}' {
				c.add(spanOf(shut, shut+1), operatorToken, 0)
				from = shut + 1
			}
			at = max(at, from-1)
		}
	}
	c.add(spanOf(from, end), stringToken, 0)
}

// fillEnd is where the brace stands that closes what a text fills in, or the
// end of the text.
func fillEnd(text string, i int) int {
	for depth := 1; i < len(text); {
		switch text[i] {
		case '"':
			i = quoteEnd(text, i)
			continue
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return i
			}
		}
		i++
	}
	return len(text)
}

// nameKind is what a name is by what stands before and behind it.
func nameKind(name, before, behind string) tokenKind {
	switch {
	case name == "true", name == "false":
		return keywordToken
	case before == ".":
		return propertyToken
	case strings.HasPrefix(strings.TrimLeft(behind, " \t"), "("):
		return functionToken
	}
	return nameToken
}

func isNameByte(c byte) bool {
	return c == '_' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || c >= utf8.RuneSelf
}

func isDigitOrDot(c byte) bool { return c == '.' || '0' <= c && c <= '9' }

func spanOf(from, to int) schema.Span { return schema.Span{Start: int32(from), End: int32(to)} }
