package shoprule

import (
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wickrule/lint"
	"wickrule/schema"
)

// Mention is a place in an expression that says the name of an option, or a
// text that is the key of something.
type Mention struct {
	Kinds []string // what it may name: names of blocks
	Key   string
	Span  schema.Span // in the file; of a text with its quotes
}

// option is the block that gives an option its name.
const option = "option"

// Mentions are those of an expression, in order, whether it can be read or
// not. A text is a key where it is compared with one, or looked for among
// some.
func Mentions(v schema.Value) []Mention {
	source, start := sourceOf(v)
	if len(source) > mostSource {
		return nil
	}
	at := func(from, to int) schema.Span { return schema.Span{Start: start + int32(from), End: start + int32(to)} }
	tokens := lex(source)
	var all []Mention
	words := wordsIn(tokens)
	for i := range words {
		if w := &words[i]; w.asked(source) == option {
			all = append(all, Mention{[]string{option}, w.text(source), at(w.from, w.to)})
		}
	}
	d := &Draft{&program{options: map[string]*expr{}, rule: &lint.Rule{}}}
	w := &walk{source: source}
	w.push(hclsyntax.TokenNil, 0)
	for i, token := range tokens {
		if text, end, ok := plainText(tokens[i:]); ok {
			if kinds := d.keysBeside(v, w.top(), len(tokens) == 3, words, end.Range.End.Byte, source); len(kinds) > 0 {
				all = append(all, Mention{kinds, text, at(token.Range.Start.Byte, end.Range.End.Byte)})
			}
		}
		if w.take(token, tokens[i+1:]) {
			break
		}
	}
	return all
}

// plainText is the text in quotes that tokens start with, where nothing is
// filled in and nothing escaped.
func plainText(tokens hclsyntax.Tokens) (text string, end hclsyntax.Token, ok bool) {
	if len(tokens) < 3 || tokens[0].Type != hclsyntax.TokenOQuote || tokens[1].Type != hclsyntax.TokenQuotedLit || tokens[2].Type != hclsyntax.TokenCQuote {
		return "", hclsyntax.Token{}, false
	}
	text = string(tokens[1].Bytes)
	return text, tokens[2], schema.IsKey(text)
}

// keysBeside are the kinds of blocks whose key the other side of a sign gives,
// a list is of, or a set rewrites.
func (d *Draft) keysBeside(v schema.Value, f *frame, alone bool, words []word, end int, source string) []string {
	switch {
	case alone && v.Block.Is("set") && v.Spec.Name == "to":
		what, _ := sourceOf(v.Block.Get("what"))
		return d.keysOf(what)
	case f.call == "includes" && len(f.before) == 1:
		return d.keysOf(f.before[0])
	case f.sign == "==" || f.sign == "!=":
		return d.keysOf(f.left)
	}
	// "putty" == mold.seal.key
	for i := range words {
		w := &words[i]
		if w.from < end {
			continue
		}
		from := w.from
		if w.base >= 0 {
			from = w.base
		}
		if sign := between(source, end, from); sign == "==" || sign == "!=" {
			if i+1 < len(words) && words[i+1].base == from {
				continue // the name goes on
			}
			return d.keysOf(w.whole(source))
		}
	}
	return nil
}

func (d *Draft) keysOf(source string) []string {
	if e := d.part(source); e != nil {
		return e.keysOf()
	}
	return nil
}

// between is what stands between two places, without spaces around it.
func between(source string, from, to int) string {
	if from > to {
		return ""
	}
	return strings.TrimSpace(source[from:to])
}
