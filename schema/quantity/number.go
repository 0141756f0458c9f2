package quantity

import (
	"math/big"
	"strings"
	"unicode/utf8"
)

// Limits before any arithmetic: no figure of the trade comes near them.
const (
	longestText = 200 // bytes
	mostDigits  = 30
)

// number is one number as written: a whole number, a decimal, a fraction or a mixed number.
type number struct {
	value      Rat
	start, end int
	places     uint8 // decimal places, or exact for fractions
	negative   bool
}

// readNumber reads the number that starts at a place where startsNumber holds.
func readNumber(text string, at int) (number, *Error) {
	n := number{start: at}
	i := at
	if w := minus(text, i); w > 0 {
		n.negative = true
		i += w
	}
	whole := text[i:digitsEnd(text, i)]
	i += len(whole)
	ok := true
	if i < len(text) && text[i] == '.' && isDigit(text, i+1) {
		decimals := text[i+1 : digitsEnd(text, i+1)]
		i += 1 + len(decimals)
		if len(whole)+len(decimals) > mostDigits {
			return n, &Error{Kind: TooLong, Start: at, End: i}
		}
		n.value, n.places = decimal(whole, decimals), uint8(len(decimals))
	} else {
		n.value, n.places, i, ok = wholeOrFraction(text, whole, i)
		if !ok && i-at > mostDigits {
			return n, &Error{Kind: TooLong, Start: at, End: i}
		}
	}
	n.end = i
	if stop := strayEnd(text, i); stop > i || !ok {
		return n, &Error{Kind: NumberUnreadable, Start: at, End: stop}
	}
	if n.negative {
		n.value = n.value.Neg()
	}
	return n, nil
}

// wholeOrFraction reads on behind whole digits (possibly none) that end at i: "2", "1/4", "½", "2 1/2", "2½".
func wholeOrFraction(text, whole string, i int) (value Rat, places uint8, end int, ok bool) {
	if len(whole) > mostDigits {
		return Rat{}, 0, i, false
	}
	if w := slash(text, i); w > 0 && whole != "" && isDigit(text, i+w) {
		below := text[i+w : digitsEnd(text, i+w)]
		value, ok = fraction(whole, below)
		return value, exact, i + w + len(below), ok
	}
	next := skipSpaces(text, i)
	if above, below, w := vulgar(text, next); w > 0 {
		return decimal(whole, "").Add(NewRat(above, below)), exact, next + w, true
	}
	if next > i && isDigit(text, next) && whole != "" {
		above := text[next:digitsEnd(text, next)]
		if w := slash(text, next+len(above)); w > 0 && isDigit(text, next+len(above)+w) {
			start := next + len(above) + w
			below := text[start:digitsEnd(text, start)]
			end = start + len(below)
			part, good := fraction(above, below)
			proper := part.Less(one)
			return decimal(whole, "").Add(part), exact, end, good && proper && len(whole)+len(above)+len(below) <= mostDigits
		}
	}
	return decimal(whole, ""), 0, i, whole != ""
}

// fraction is above over below; false where below is 0 or the two are too long.
func fraction(above, below string) (Rat, bool) {
	if len(above)+len(below) > mostDigits {
		return Rat{}, false
	}
	return decimal(above, "").Quo(decimal(below, ""))
}

// decimal is the number of the digits before and after a decimal point, exactly.
func decimal(whole, decimals string) Rat {
	if len(whole)+len(decimals) > 18 { // 10^18 is the largest power of ten an int64 holds
		r, _ := new(big.Rat).SetString("0" + whole + "." + decimals + "0")
		return fromBig(r)
	}
	v := uint64(0)
	for i := 0; i < len(whole); i++ {
		v = v*10 + uint64(whole[i]-'0')
	}
	if decimals == "" {
		return Int(int64(v))
	}
	for i := 0; i < len(decimals); i++ {
		v = v*10 + uint64(decimals[i]-'0')
	}
	return fromParts(false, v, tens[len(decimals)])
}

// tens are the powers of ten that an int64 holds.
var tens = [19]uint64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18}

// powerOfTen is 10 to the n, n from 0 to mostDigits.
func powerOfTen(n int) Rat {
	if n < len(tens) {
		return Int(int64(tens[n]))
	}
	return powerOfTen(18).Mul(powerOfTen(n - 18))
}

// strayEnd is i where a number that ends there ends for good, and else the end of what stands on it and makes it
// unreadable: a decimal comma, a second point, an exponent, digits in groups.
func strayEnd(text string, i int) int {
	end := i
	for end < len(text) {
		c := text[end]
		_, _, w := vulgar(text, end)
		switch {
		case isDigit(text, end) || w > 0:
			end += max(w, 1)
		case c == '.' || c == ',' && isDigit(text, end+1):
			end++
		case (c == '/' || c == '\'') && isDigit(text, end+1):
			end++
		case (c == 'e' || c == 'E') && (isDigit(text, end+1) || end+2 < len(text) && (text[end+1] == '-' || text[end+1] == '+') && isDigit(text, end+2)):
			end += 2
		default:
			next := skipSpaces(text, end)
			if next == end || !startsUnsigned(text, next) {
				return end
			}
			end = next // a number right behind a number
		}
	}
	return end
}

// startsNumber says whether a number, with its sign if any, starts at i.
func startsNumber(text string, i int) bool {
	return startsUnsigned(text, i+minus(text, i))
}

// startsUnsigned says whether a number without sign starts at i.
func startsUnsigned(text string, i int) bool {
	if isDigit(text, i) || i < len(text) && text[i] == '.' && isDigit(text, i+1) {
		return true
	}
	_, _, w := vulgar(text, i)
	return w > 0
}

// minus is the width of a minus sign at i, 0 where there is none.
func minus(text string, i int) int {
	if i < len(text) && text[i] == '-' {
		return 1
	}
	if strings.HasPrefix(text[min(i, len(text)):], "−") {
		return len("−")
	}
	return 0
}

// slash is the width of a fraction's stroke at i, 0 where there is none.
func slash(text string, i int) int {
	if i < len(text) && text[i] == '/' {
		return 1
	}
	if strings.HasPrefix(text[min(i, len(text)):], "⁄") {
		return len("⁄")
	}
	return 0
}

// vulgar is the fraction a single character at i stands for, with its width; 0 where it is none.
func vulgar(text string, i int) (above, below int64, width int) {
	if i >= len(text) || text[i] < utf8.RuneSelf {
		return 0, 1, 0
	}
	c, width := utf8.DecodeRuneInString(text[i:])
	switch c {
	case '½':
		return 1, 2, width
	case '¼':
		return 1, 4, width
	case '¾':
		return 3, 4, width
	case '⅓':
		return 1, 3, width
	case '⅔':
		return 2, 3, width
	case '⅛':
		return 1, 8, width
	case '⅜':
		return 3, 8, width
	case '⅝':
		return 5, 8, width
	case '⅞':
		return 7, 8, width
	case '⅕':
		return 1, 5, width
	case '⅖':
		return 2, 5, width
	case '⅗':
		return 3, 5, width
	case '⅘':
		return 4, 5, width
	case '⅙':
		return 1, 6, width
	case '⅚':
		return 5, 6, width
	case '⅐':
		return 1, 7, width
	case '⅑':
		return 1, 9, width
	case '⅒':
		return 1, 10, width
	}
	return 0, 1, 0
}

func isDigit(text string, i int) bool { return i < len(text) && '0' <= text[i] && text[i] <= '9' }

func digitsEnd(text string, i int) int {
	for isDigit(text, i) {
		i++
	}
	return i
}

// skipSpaces is the next place from i on that is no space.
func skipSpaces(text string, i int) int {
	for i < len(text) {
		c, w := rune(text[i]), 1
		if c >= utf8.RuneSelf {
			c, w = utf8.DecodeRuneInString(text[i:])
		}
		if !isSpace(c) {
			break
		}
		i += w
	}
	return i
}

// trimEnd takes spaces off the end.
func trimEnd(text string) string { return strings.TrimRightFunc(text, isSpace) }
