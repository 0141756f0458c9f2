package schema

import (
	"strings"

	"github.com/agext/levenshtein"
)

// mostNamed is how many known names a message lists.
const mostNamed = 7

// Nearest is the known name that is spelled most like the word. Sure means
// that it is the only one so near (one or two letters off) that a slip of the
// keys explains it. "" where none comes near.
func Nearest(word string, known []string) (name string, sure bool) {
	word = plainSpelling(word)
	limit := 2
	if len(word) < 5 {
		limit = 1
	}
	best, near := limit+2, 0
	own, countable := lettersOf(word)
	for _, k := range known {
		if countable {
			if apart := own.apart(k); apart >= best && apart > limit {
				continue
			}
		}
		plain := plainSpelling(k)
		d := levenshtein.Distance(word, plain, nil)
		if d == 2 && swapped(word, plain) {
			d = 1 // "mlet" for "melt" is one slip
		}
		if d <= limit {
			near++
		}
		if d < best {
			best, name = d, k
		}
	}
	if best > limit && best*2 > len(word) {
		return "", false
	}
	return name, near == 1 || best == 0
}

// letters counts the letters and digits of a word, capitals as small ones.
type letters struct {
	of    [128]int16
	total int
}

// lettersOf counts what is ASCII in a word of ordinary length; known is false
// where there is more to it.
func lettersOf(word string) (n letters, known bool) {
	if len(word) > 1000 {
		return n, false
	}
	for i := range len(word) {
		if word[i] >= 128 {
			return n, false
		}
		if c := letterOf[word[i]]; c != 0 {
			n.of[c]++
			n.total++
		}
	}
	return n, true
}

// apart is a distance that two words are at least apart, found without
// comparing their spelling: each letter that one of them has more of costs a
// slip. Among thousands of keys nearly all are too far away by that alone.
func (n *letters) apart(word string) int {
	other, known := lettersOf(word)
	if !known {
		return 0
	}
	shared := 0
	for c := '0'; c <= 'z'; c++ {
		shared += int(min(n.of[c], other.of[c]))
	}
	return max(n.total, other.total) - shared
}

// letterOf makes capitals small; what is no letter and no digit is 0.
var letterOf = func() (table [128]byte) {
	for c := range table {
		switch {
		case 'a' <= c && c <= 'z', '0' <= c && c <= '9':
			table[c] = byte(c)
		case 'A' <= c && c <= 'Z':
			table[c] = byte(c) + 'a' - 'A'
		}
	}
	return table
}()

// swapped says whether the words differ by two neighboring letters that
// changed places.
func swapped(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	i := 0
	for i < len(a)-1 && a[i] == b[i] {
		i++
	}
	return i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}

// plainSpelling leaves out what people mix up: capitals, and how words are
// joined.
func plainSpelling(word string) string {
	return joiners.Replace(strings.ToLower(strings.TrimSpace(word)))
}

var joiners = strings.NewReplacer("_", " ", "-", " ")

// NearestOrKnown ends a message about a name that is not known: with the
// nearest by spelling, else with up to seven that are known. Each is shown
// between the marks (a quote, a backquote).
func NearestOrKnown(word string, known []string, mark string) string {
	if name, _ := Nearest(word, known); name != "" {
		return "the nearest is " + mark + name + mark
	}
	if len(known) == 0 {
		return "none is known"
	}
	shown := known[:min(len(known), mostNamed)]
	list := mark + strings.Join(shown, mark+", "+mark) + mark
	if more := len(known) - len(shown); more > 0 {
		return "known are " + list + " and " + count(more, "more", "more")
	}
	return "known are " + list
}
