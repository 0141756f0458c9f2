package schema

import (
	"bytes"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// What the parser is spared. Deep nesting overflows its stack, which cannot
// be caught, so these are counted before it sees a file.
const (
	longestFile   = 1 << 20 // bytes
	deepestNest   = 100     // brackets open at once
	longestNumber = 30      // digits in a row
	longestChain  = 1000    // signs such as ! and - in a row
	longestText   = 5000    // pieces of one text, such as the lines of a heredoc
	smallFile     = 1 << 16 // bytes in which no text can be too long
	mostProblems  = 50      // told of one file
)

// survey is what one look at the bytes tells.
type survey struct {
	brackets  int  // opening ones, wherever they stand
	signs     int  // wherever they stand
	plain     bool // only the bytes a well-kept file holds: nothing to replace
	longDigit bool // some run of digits is too long for a number
}

// Classes of bytes, for survey.
const (
	usual = iota
	digit
	opening
	sign
	carriageReturn
	control
	beyondASCII
)

var byteClass = classifyBytes()

func classifyBytes() (class [256]uint8) {
	for b := range class {
		switch {
		case b >= utf8.RuneSelf:
			class[b] = beyondASCII
		case b >= '0' && b <= '9':
			class[b] = digit
		case b == '{' || b == '[' || b == '(':
			class[b] = opening
		case b == '!' || b == '-':
			class[b] = sign
		case b == '\r':
			class[b] = carriageReturn
		case b < ' ' && b != '\n' && b != '\t' || b == 0x7f:
			class[b] = control
		}
	}
	return class
}

func look(src []byte) survey {
	s := survey{plain: true}
	beyond := false
	digits, lastDigit := 0, -1
	for i, b := range src {
		class := byteClass[b]
		if class == usual { // nearly all are
			continue
		}
		switch class {
		case digit:
			if i != lastDigit+1 {
				digits = 0
			}
			digits++
			lastDigit = i
			s.longDigit = s.longDigit || digits > longestNumber
		case opening:
			s.brackets++
		case sign:
			s.signs++
		case carriageReturn:
			if i+1 == len(src) || src[i+1] != '\n' {
				s.plain = false
			}
		case control:
			s.plain = false
		case beyondASCII:
			beyond = true
		}
	}
	if beyond && !utf8.Valid(src) {
		s.plain = false
	}
	return s
}

// refusal says why a file must not reach a parser, and what to do; "" where it
// may. Start and end are the bytes to point at.
func (s survey) refusal(src []byte) (why string, start, end int) {
	if len(src) > longestFile {
		return "this file is larger than 1 MiB, more than is read at once: keep recipes and stock in several smaller files", 0, 0
	}
	if at := openComments(src); at >= 0 {
		return "this comment never ends: write */ where it does", at, at + 2
	}
	if s.signs > longestChain {
		if at := tooManySigns(src); at >= 0 {
			return "a row of over 1000 signs starts here, which no recipe needs: take them out", at, at + 1
		}
	}
	if len(src) > smallFile {
		if at := tooLong(src); at >= 0 {
			return "this text has over 5000 lines, more than is read: cut it, or close it with its marker or quote", at, at + 1
		}
	}
	return "", 0, 0
}

// tooDeep says why a file must not reach HCL's parser, as refusal does. The
// quick parser counts for itself.
func (s survey) tooDeep(src []byte) (why string, start, end int) {
	// Most files have few brackets, and then no depth needs to be measured.
	if s.brackets <= 2*deepestNest {
		return "", 0, 0
	}
	if at := deepBracket(src); at >= 0 {
		return "over 100 brackets are open at once here, more than is read: close them, or take out the text that opens them", at, at + 1
	}
	return "", 0, 0
}

// tooManySigns is where a row of signs starts that is too long for any
// expression, -1 where none does. What may stand between signs does not end it.
func tooManySigns(src []byte) int {
	tokens, _ := hclsyntax.LexConfig(src, "", hcl.InitialPos)
	start, signs := -1, 0
	for _, t := range tokens {
		switch t.Type {
		case hclsyntax.TokenBang, hclsyntax.TokenMinus:
			if signs == 0 {
				start = t.Range.Start.Byte
			}
			if signs++; signs > longestChain {
				return start
			}
		case hclsyntax.TokenNewline, hclsyntax.TokenComment, hclsyntax.TokenOParen:
		default:
			signs = 0
		}
	}
	return -1
}

// deepBracket is where the bracket stands that nests too deep, -1 where none does.
func deepBracket(src []byte) int {
	// Lexing keeps no stack of its own on ours, whatever the text.
	tokens, _ := hclsyntax.LexConfig(src, "", hcl.InitialPos)
	depth := 0
	for _, t := range tokens {
		switch t.Type {
		case hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen, hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl:
			depth++
			if depth > deepestNest {
				return t.Range.Start.Byte
			}
		case hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenTemplateSeqEnd:
			depth = max(depth-1, 0)
		}
	}
	return -1
}

// openComments is where the first of many comments starts that never end, -1
// where there are few: for each, the parser reads all the rest of the text.
func openComments(src []byte) int {
	if bytes.Count(src, []byte("/*")) <= mostProblems {
		return -1
	}
	after := max(bytes.LastIndex(src, []byte("*/")), 0)
	if bytes.Count(src[after:], []byte("/*")) <= mostProblems {
		return -1
	}
	return after + bytes.Index(src[after:], []byte("/*"))
}

// tooLong is where a text of too many pieces starts, -1 where none does: the
// parser joins them one by one, and each time copies what it has.
func tooLong(src []byte) int {
	tokens, _ := hclsyntax.LexConfig(src, "", hcl.InitialPos)
	start, pieces := -1, 0
	for _, t := range tokens {
		switch t.Type {
		case hclsyntax.TokenOHeredoc, hclsyntax.TokenOQuote:
			start, pieces = t.Range.Start.Byte, 0
		case hclsyntax.TokenStringLit, hclsyntax.TokenQuotedLit, hclsyntax.TokenQuotedNewline:
			if pieces++; pieces > longestText {
				return start
			}
		}
	}
	return -1
}

// longNumbers are the places of unquoted numbers with too many digits.
func longNumbers(src []byte) []Span {
	var places []Span
	tokens, _ := hclsyntax.LexConfig(src, "", hcl.InitialPos)
	for _, t := range tokens {
		if t.Type == hclsyntax.TokenNumberLit && len(t.Bytes) > longestNumber {
			places = append(places, Span{int32(t.Range.Start.Byte), int32(t.Range.End.Byte)})
		}
	}
	return places
}
