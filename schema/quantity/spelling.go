package quantity

import (
	"strings"
	"unicode/utf8"
)

// longestSpelling bounds what is looked up at all; the longest spelling of the table is well below it.
const longestSpelling = 40

// spelled maps each spelling, folded, to its unit; and each symbol as it is, since most amounts are written with them.
var spelled = spellings()

func spellings() map[string]uint8 {
	m := make(map[string]uint8, 256)
	for id, u := range table {
		for _, s := range u.Spellings {
			m[s] = uint8(id)
		}
	}
	for id, u := range table {
		if _, taken := m[u.Symbol]; !taken && u.Symbol != "" {
			m[u.Symbol] = uint8(id)
		}
	}
	return m
}

// unitSpelled is the number of the unit that text spells, noUnit where it spells none.
func unitSpelled(text string) uint8 {
	if id, ok := spelled[text]; ok {
		return id
	}
	var room [longestSpelling]byte
	folded, ok := fold(room[:0], text)
	if !ok {
		return noUnit
	}
	return spelled[string(folded)]
}

// fold brings a spelling to the form the table has: lower case, one space between words, none around a slash or
// after a degree sign, one after a percent sign, no dot after a letter, superscripts and look-alikes made plain.
// It is false where the text is too long to be a unit.
func fold(dst []byte, text string) ([]byte, bool) {
	space := false
	for i := 0; i < len(text); {
		c := rune(text[i])
		size := 1
		if c >= utf8.RuneSelf {
			c, size = utf8.DecodeRuneInString(text[i:])
		}
		i += size
		if isSpace(c) {
			space = true
			continue
		}
		var last byte
		if len(dst) > 0 {
			last = dst[len(dst)-1]
		}
		if c == '.' && isLetter(rune(last)) {
			space = true // "fl.oz" is two words; a dot at the end leaves nothing behind
			continue
		}
		afterDegree := last == 0xb0 // the last byte of "°"
		afterPercent := last == '%'
		if len(dst) > 0 && c != '/' && last != '/' && (space && !afterDegree || afterPercent) {
			dst = append(dst, ' ')
		}
		space = false
		switch c {
		case 'º', '˚':
			dst = append(dst, "°"...)
		case '℉':
			dst = append(dst, "°f"...)
		case '℃':
			dst = append(dst, "°c"...)
		case '³':
			dst = append(dst, '3')
		case '^':
		default:
			if 'A' <= c && c <= 'Z' {
				c += 'a' - 'A'
			}
			dst = utf8.AppendRune(dst, c)
		}
		if len(dst) > longestSpelling-4 {
			return dst, false
		}
	}
	for _, word := range [...]string{"percent", "per cent"} {
		if len(dst) >= len(word) && string(dst[:len(word)]) == word {
			dst = append(dst[:1], dst[len(word):]...) // "percent of wax" is "% of wax"
			dst[0] = '%'
		}
	}
	return dst, true
}

// isSpace says whether c separates words: plain, non-breaking and narrow spaces alike.
func isSpace(c rune) bool {
	switch c {
	case ' ', '\t', '\n', '\r', 0xa0, 0x202f, 0x2009, 0x200a, 0x2007, 0x2008, 0x205f, 0x3000:
		return true
	}
	return 0x2000 <= c && c <= 0x2006
}

// isLetter is about the letters units are spelled with.
func isLetter(c rune) bool { return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' }

// trim takes spaces off both ends.
func trim(text string) string { return strings.TrimFunc(text, isSpace) }
