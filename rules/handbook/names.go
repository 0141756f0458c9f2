package handbook

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
)

// longestName is how long a key may be in a file's name; longer ones are cut
// and told apart by a sum.
const longestName = 100

// plain is a key as a piece of a file's name, an anchor or an address: small
// letters, digits and hyphens stay as they are, and everything else becomes
// its number between underscores. Two keys never become one, on file systems
// that take capitals for small letters neither.
func plain(key string) string {
	var b strings.Builder
	for i := range len(key) {
		switch c := key[i]; {
		case 'a' <= c && c <= 'z', '0' <= c && c <= '9', c == '-':
			b.WriteByte(c)
		default: // by bytes: what is no valid text has numbers too
			b.WriteByte('_')
			b.WriteString(hex.EncodeToString([]byte{c}))
		}
	}
	name := b.String()
	if len(name) > longestName {
		sum := sha256.Sum256([]byte(key))
		name = name[:longestName-34] + "__" + hex.EncodeToString(sum[:16])
	}
	return name
}

// RulePage is the file of a rule's page. A shop may call a rule of its own
// like a built-in one, so the two have files of different names.
func RulePage(name string, own bool) string {
	if own {
		return "own-" + plain(name) + ".html"
	}
	return "rule-" + plain(name) + ".html"
}

// stockAnchor is where an item of the shelves stands on the stock page.
func stockAnchor(kind, key string) string { return kind + "-" + plain(key) }

func stockAddress(kind, key string) string { return "stock.html#" + stockAnchor(kind, key) }

// The other pages have one sort of thing each.
func trialAnchor(key string) string  { return "trial-" + plain(key) }
func trialAddress(key string) string { return "trials.html#" + trialAnchor(key) }
func termAnchor(term string) string {
	return "term-" + plain(strings.ReplaceAll(strings.ToLower(term), " ", "-"))
}
func termAddress(term string) string { return "words.html#" + termAnchor(term) }
func groupAnchor(group string) string {
	return "group-" + plain(strings.ReplaceAll(strings.ToLower(strings.NewReplacer(",", "", "'", "").Replace(group)), " ", "-"))
}
