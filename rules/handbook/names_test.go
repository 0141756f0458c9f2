package handbook

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

var safe = regexp.MustCompile(`^[a-z0-9_-]{0,100}$`)

func TestPlainNames(t *testing.T) {
	for key, want := range map[string]string{
		"stir-too-short": "stir-too-short",
		"":               "",
		"Größe":          "_47r_c3_b6_c3_9fe",
		"größe":          "gr_c3_b6_c3_9fe",
		"a_b":            "a_5fb",
		"../etc":         "_2e_2e_2fetc",
		"a b":            "a_20b",
		"con":            "con",
		"\xff":           "_ff",
	} {
		assert.Equal(t, want, plain(key))
	}
	assert.Len(t, plain(strings.Repeat("x", 500)), longestName)
	assert.NotEqual(t, plain(strings.Repeat("x", 500)), plain(strings.Repeat("x", 501)))
}

// Whatever a key is, its file has a name that every file system takes, and no
// other key has the same, capitals and small letters taken for one.
func FuzzPlain(f *testing.F) {
	f.Add("größe", "GRÖSSE")
	f.Add("a_", "a_5f")
	f.Add("é", "e\u0301")
	f.Add(strings.Repeat("a", 120), strings.Repeat("a", 121))
	f.Add(strings.Repeat("ä", 40), strings.Repeat("ä", 41))
	f.Fuzz(func(t *testing.T, a, b string) {
		for _, key := range []string{a, b} {
			if !safe.MatchString(plain(key)) {
				t.Fatalf("%q becomes %q", key, plain(key))
			}
		}
		if a != b && plain(a) == plain(b) {
			t.Fatalf("%q and %q become %q", a, b, plain(a))
		}
		if RulePage(a, true) == RulePage(b, false) {
			t.Fatalf("an own rule %q and a built-in one %q share a page", a, b)
		}
	})
}

// A key is part of addresses and anchors as it is.
func FuzzProse(f *testing.F) {
	f.Add("Wax <b>sweats</b> & the flash point's melt-pool; stir-too-short")
	f.Add("of wax of total")
	l := newLinker(glossary(), nil, nil)
	f.Fuzz(func(t *testing.T, text string) {
		html := string(l.prose().line(text))
		// Without its links the text is what it was, with its signs written out.
		html = regexp.MustCompile(`<a href="[a-z0-9_.#-]*">|</a>`).ReplaceAllString(html, "")
		if strings.ContainsAny(html, `<>"`) {
			t.Fatalf("%q becomes %q", text, html)
		}
		back := strings.NewReplacer("&lt;", "<", "&gt;", ">", "&#34;", `"`, "&#39;", "'", "\uFFFD", "\x00", "&amp;", "&").Replace(html)
		if want := strings.ReplaceAll(text, "\uFFFD", "\x00"); back != want {
			t.Fatalf("%q becomes %q", text, back)
		}
	})
}
