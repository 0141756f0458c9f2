package shoprule

import (
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wickrule/schema"
)

// Spot is what stands before a place in an expression as it is typed. A
// half-typed expression has no tree, so the lexer's tokens are looked at, and
// only those before the place: what stands behind it may belong to anything.
type Spot struct {
	Word   schema.Span // what is typed at the place so far: the start of a name, or of a text within its quotes
	Quoted bool        // in a text, outside of ${ }
	Open   bool        // a name, a figure or a text may start here
	Dotted bool        // something is asked for of Base
	Base   string      // "mold.seal" in "mold.seal.ho"
	Left   string      // what stands before Sign: "mold.seal.kind"
	Sign   string      // the sign before the place: "=="; "" for none
	Calls  []Call      // the functions in whose brackets it stands, innermost last
}

// Call is a function in whose brackets a place stands.
type Call struct {
	Name   string
	Before []string // the arguments before the one in which the place stands
	Left   string   // what stands before Sign, before the function
	Sign   string
	At     int32 // where its name starts
}

// Around is what stands before at in the expression that starts at start.
// False: the expression has ended before.
func Around(text string, start, at int32) (Spot, bool) {
	if start > at || at-start > mostSource || int(at) > len(text) {
		return Spot{}, false
	}
	w := &walk{source: text[start:at]}
	w.push(hclsyntax.TokenNil, 0)
	tokens := lex(w.source)
	for i, token := range tokens {
		if ended := w.take(token, tokens[i+1:]); ended {
			return Spot{}, false
		}
	}
	return w.spot(start), true
}

// lex is the tokens of a source, without the end.
func lex(source string) hclsyntax.Tokens {
	tokens, _ := hclsyntax.LexExpression([]byte(source), "", hcl.InitialPos)
	if n := len(tokens); n > 0 && tokens[n-1].Type == hclsyntax.TokenEOF {
		tokens = tokens[:n-1]
	}
	return tokens
}

// frame is one bracket, text or ${ that is open.
type frame struct {
	opener  hclsyntax.TokenType // TokenNil: the expression itself
	call    string              // of a bracket: the function before it
	name    int                 // where that is written
	before  []string            // the arguments of the call that are written
	from    int                 // where its content starts
	clause  int                 // where what a comparison would take starts
	operand int                 // where the name, figure or call before the place starts; -1: none does
	end     int                 // where that ends
	dotted  bool                // a dot stands behind that
	dot     int                 // where it stands
	word    int                 // where the word starts that was read last; -1: none was
	left    string
	sign    string
}

func (f *frame) next(at int) {
	f.operand, f.dotted, f.word = -1, false, -1
	f.end = at
}

// walk goes through tokens and keeps what is open.
type walk struct {
	source string
	frames []frame
}

func (w *walk) top() *frame { return &w.frames[len(w.frames)-1] }

func (w *walk) push(opener hclsyntax.TokenType, at int) {
	w.frames = append(w.frames, frame{opener: opener, from: at, clause: at, operand: -1, word: -1, end: at})
}

// pop closes the innermost frame: what it held ends an operand.
func (w *walk) pop(at int) {
	if len(w.frames) > 1 {
		w.frames = w.frames[:len(w.frames)-1]
	}
	f := w.top()
	f.end, f.dotted, f.word = at, false, -1
}

// take takes one token. True: the expression has ended with it.
func (w *walk) take(token hclsyntax.Token, rest hclsyntax.Tokens) bool {
	f := w.top()
	from, to := token.Range.Start.Byte, token.Range.End.Byte
	if f.operand < 0 {
		switch token.Type {
		case hclsyntax.TokenIdent, hclsyntax.TokenNumberLit, hclsyntax.TokenOParen, hclsyntax.TokenOQuote, hclsyntax.TokenOHeredoc, hclsyntax.TokenOBrack, hclsyntax.TokenOBrace:
			f.operand = from
		}
	}
	switch token.Type {
	case hclsyntax.TokenIdent, hclsyntax.TokenNumberLit:
		f.word, f.end = from, to
	case hclsyntax.TokenDot:
		f.dotted, f.dot, f.word = true, from, -1
	case hclsyntax.TokenOParen, hclsyntax.TokenOBrack, hclsyntax.TokenOBrace:
		call, name := "", f.word
		if token.Type == hclsyntax.TokenOParen && name >= 0 && !f.dotted {
			call = w.source[name:f.end]
		}
		w.push(token.Type, to)
		w.top().call, w.top().name = call, name
	case hclsyntax.TokenCBrace:
		if len(w.frames) == 1 {
			return true // of the block
		}
		w.pop(to)
	case hclsyntax.TokenCParen, hclsyntax.TokenCBrack, hclsyntax.TokenTemplateSeqEnd, hclsyntax.TokenCQuote, hclsyntax.TokenCHeredoc:
		w.pop(to)
	case hclsyntax.TokenOQuote, hclsyntax.TokenOHeredoc, hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl:
		w.push(token.Type, to)
	case hclsyntax.TokenQuotedNewline:
		return true // the text was not closed on its line
	case hclsyntax.TokenNewline, hclsyntax.TokenComment:
		if token.Type == hclsyntax.TokenComment && (len(token.Bytes) == 0 || token.Bytes[len(token.Bytes)-1] != '\n') {
			return false
		}
		return len(w.frames) == 1 || begins(rest)
	case hclsyntax.TokenQuotedLit, hclsyntax.TokenStringLit:
	case hclsyntax.TokenComma:
		f.before = append(f.before, strings.TrimSpace(w.source[f.from:from]))
		f.from, f.clause, f.left, f.sign = to, to, "", ""
		f.next(to)
	default:
		w.sign(string(token.Bytes), token.Type, to)
	}
	return false
}

// sign takes a sign. What stands before it is what it is about: a comparison
// takes all since the last && || ? or :, any other the operand before it.
func (w *walk) sign(sign string, kind hclsyntax.TokenType, to int) {
	f := w.top()
	switch kind {
	case hclsyntax.TokenEqualOp, hclsyntax.TokenNotEqual, hclsyntax.TokenLessThan, hclsyntax.TokenLessThanEq, hclsyntax.TokenGreaterThan, hclsyntax.TokenGreaterThanEq:
		f.left, f.sign = strings.TrimSpace(w.source[f.clause:max(f.end, f.clause)]), sign
	case hclsyntax.TokenPlus, hclsyntax.TokenMinus, hclsyntax.TokenStar, hclsyntax.TokenSlash:
		f.left, f.sign = "", sign
		if f.operand >= 0 {
			f.left = strings.TrimSpace(w.source[f.operand:max(f.end, f.operand)])
		}
	default:
		f.clause, f.left, f.sign = to, "", sign
	}
	f.next(to)
}

// begins says whether tokens behind a line end look like the next attribute or
// block: then the bracket before them was never closed.
func begins(rest hclsyntax.Tokens) bool {
	if len(rest) > 0 && rest[0].Type == hclsyntax.TokenCBrace {
		return true
	}
	if len(rest) < 2 || rest[0].Type != hclsyntax.TokenIdent {
		return false
	}
	switch rest[1].Type {
	case hclsyntax.TokenEqual, hclsyntax.TokenOBrace, hclsyntax.TokenOQuote:
		return true
	}
	return false
}

// spot is what the place at the end of the source stands in.
func (w *walk) spot(start int32) Spot {
	f := w.top()
	at := len(w.source)
	s := Spot{Word: schema.Span{Start: start + int32(at), End: start + int32(at)}}
	for i, frame := range w.frames {
		if frame.opener == hclsyntax.TokenTemplateInterp || frame.opener == hclsyntax.TokenOBrack || frame.opener == hclsyntax.TokenOBrace {
			s.Calls = nil // a new beginning
		}
		if frame.call != "" {
			outer := w.frames[i-1]
			s.Calls = append(s.Calls, Call{frame.call, frame.before, outer.left, outer.sign, start + int32(frame.name)})
		}
	}
	if f.opener == hclsyntax.TokenOQuote || f.opener == hclsyntax.TokenOHeredoc {
		s.Quoted, s.Word.Start = true, start+int32(f.from)
		outer := w.frames[len(w.frames)-2]
		s.Left, s.Sign = outer.left, outer.sign
		return s
	}
	s.Left, s.Sign = f.left, f.sign
	if f.word >= 0 && f.end == at && isLetter(w.source[f.word]) {
		s.Word.Start = start + int32(f.word)
	} else if f.word >= 0 || f.operand >= 0 && !f.dotted {
		return s // behind a figure, a text or a name
	}
	s.Open = !f.dotted
	if s.Dotted = f.dotted; s.Dotted && f.operand >= 0 && f.operand < f.dot {
		s.Base = strings.TrimSpace(w.source[f.operand:f.dot])
	}
	return s
}

func isLetter(c byte) bool {
	return c == '_' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || c >= 0x80
}
