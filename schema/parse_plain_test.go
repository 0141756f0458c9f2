package schema

import (
	"fmt"
	"io/fs"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
)

// The outside source of every test here is HCL's own parser: what the quick
// one takes must come out as that has it.

// examplesOf are the texts of a shop by their names.
func examplesOf(t testing.TB, shop fs.FS) map[string]string {
	texts := map[string]string{}
	require.NoError(t, fs.WalkDir(shop, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".candle.hcl") {
			return err
		}
		src, err := fs.ReadFile(shop, name)
		texts[name] = string(src)
		return err
	}))
	return texts
}

// taken says whether reading a text is left to the quick parser.
func taken(text string) (*tree, bool) {
	src := []byte(text)
	s := look(src)
	if why, _, _ := s.refusal(src); why != "" || !s.plain || s.longDigit {
		return nil, false
	}
	return parsePlain(text)
}

// readByHCL is Read without the quick parser.
func readByHCL(text string) *File {
	src := []byte(text)
	f := &File{Name: "test.candle.hcl", Text: NewText(text), Whole: true}
	r := &reader{file: f, seen: text}
	s := look(src)
	if why, start, end := s.refusal(src); why != "" {
		r.refuse(why, start, end)
	} else if why, start, end := s.tooDeep(src); why != "" {
		r.refuse(why, start, end)
	} else {
		r.readAny(s, src)
	}
	r.finish()
	return f
}

// agree checks that a text which the quick parser takes reads as by HCL's: the
// same syntax with every place, and the same file with every problem and fix.
func agree(t testing.TB, text string) (quick bool) {
	t.Helper()
	plain, quick := taken(text)
	if !quick {
		return false
	}
	full, complaints := parseHCL([]byte(text))
	if len(complaints) > 0 {
		t.Fatalf("taken, but HCL says %q at %v of %q", complaints[0].summary, complaints[0].span, text)
	}
	if got, want := spelled(plain, plain.top), spelled(full, full.top); got != want {
		t.Fatalf("other syntax than HCL's\n%s\n%s\nof %q", got, want, text)
	}
	got, want := read(text), readByHCL(text)
	got.Text = want.Text // which has lines that are made at first use
	if !reflect.DeepEqual(got, want) {
		t.Fatalf("another file than by HCL\n%s\n---\n%s\nof %q", says(got), says(want), text)
	}
	return true
}

// spelled is all that a tree says of a body, whatever the order of its lists.
func spelled(t *tree, b body) string {
	var out strings.Builder
	for _, l := range of(t.lines, b.lines) {
		fmt.Fprint(&out, l.name, l.value.kind, l.value.span)
		for _, element := range of(t.elements, l.value.of) {
			fmt.Fprint(&out, ",", element.kind, element.span, element.of)
		}
		out.WriteString("; ")
	}
	for _, inner := range of(t.blocks, b.blocks) {
		fmt.Fprint(&out, inner.name, of(t.labels, inner.labels), inner.open, inner.shut, "{ ", spelled(t, inner.body), "} ")
	}
	return out.String()
}

func TestQuickParserTakesTheDemoShop(t *testing.T) {
	declined := []string{}
	for name, text := range examplesOf(t, examples.Shop()) {
		if strings.HasPrefix(name, "rules/") { // what computes is HCL's to read
			assert.False(t, agree(t, text), name)
			continue
		}
		assert.True(t, agree(t, text), name)
		assert.True(t, agree(t, strings.ReplaceAll(text, "\n", "\r\n")), "%s with CRLF", name)
	}
	for name, text := range examplesOf(t, examples.Faulty()) {
		if !agree(t, text) {
			declined = append(declined, name)
		}
	}
	assert.Equal(t, []string{"recipes/half-typed.candle.hcl"}, declined, "the one that does not parse")
}

// What is plain and what is not, each as HCL has it.
func TestPlainTexts(t *testing.T) {
	for text, plain := range map[string]bool{
		"": true, "\n": true, " \t\r\n": true, "# remark": true, "// remark\n": true, "#\r\n": true,
		"a = 1": true, "a=\"x\"": true, "a\t=\ttrue# c": true, "a = 1.5 // c": true, "a = false": true, "a-b_ = 007\n": true,
		"a = []": true, "a = [ # c\n 1,\n\n\"x\" // c\n, true,]": true,
		"wax {}": true, "wax { a = 1 }": true, "wax\"x\"{a=\"}\"}": true, "wax {# c\n}\n": true, "w { a = [\n1\n] }": true,
		"a = \"50 % $5 %$ #\"": true, "a = \"\\\"\\\\\\n\\r\\t\"": true, "a = \"%\"": true, "a = \"$\"": true, "a = \"° \u0065\u0301 🕯\"": true,
		"# ° \u0065\u0301 🕯\n": true,
		"a = \"${x}\"":         false, "a = \"%{x}\"": false, "a = \"$${x}\"": false, "a = \"%%\"": false, "a = \"\\u00b0\"": false, "a = \"\\x\"": false,
		"a = -1": false, "a = 1e5": false, "a = 1.": false, "a = .5": false, "a = 1.2.3": false, "a = 1 + 1": false, "a == 1": false, "a => 1": false,
		"a = b": false, "a = null": false, "a = truer": false, "a = true.x": false, "a = (1)": false, "a = {}": false, "a = [[1]]": false, "a = [1 2]": false, "a = [,]": false,
		"a = [for x in y : x]": false, "a = \"x\"[0]": false, "a = \"x": false, "a = \"x\ny\"": false, "a =\n1": false, "a\n= 1": false, "a = 1, b = 2": false,
		"a = 1\na = 2": false, "wax { a = 1\n}": false, "wax {\na = 1 }": false, "wax { a = 1 b = 2 }": false, "wax { b {} }": false, "wax \"a\" \"b\" {}": false, "wax a {}": false,
		"wax {": false, "}": false, "wax {}}": false, "wax {} a = 1": false, "wax \"x\"\n{}": false, "wax = {": false, "a": false, "\"a\" = 1": false,
		"/* c */": false, "a = 1 /* c */": false, "a = 1 /": false, "a = <<X\nX\n": false, "a: 1": false, "a = 1;": false, "é = 1": false, "aé = 1": false, "a = 1é": false,
		byteOrderMark + "a = 1": false, "a = 1\r": false, "a = \"x\x00\"": false, "a = \"\xb0\"": false, "# \xff": false, "a\u00a0= 1": false,
		"a = " + strings.Repeat("1", 31): false, "a = " + strings.Repeat("1", 30): true,
	} {
		_, quick := taken(text)
		assert.Equal(t, plain, quick, "%q", text)
		agree(t, text)
	}
}

func TestPlainTextsKeepTheGuards(t *testing.T) {
	nest := func(deep int, inside string) string {
		return strings.Repeat("a {\n", deep) + inside + strings.Repeat("}\n", deep)
	}
	assert.True(t, agree(t, nest(deepestNest, "")))
	assert.True(t, agree(t, nest(deepestNest-1, "a = []\n")))
	assert.False(t, agree(t, nest(deepestNest, "a = []\n")))
	assert.False(t, agree(t, nest(deepestNest+1, "")))
	assert.False(t, agree(t, nest(100_000, "")))
	assert.Len(t, read(nest(deepestNest+3, "")).Blocks, 0, "nothing so deep is read")

	var lines strings.Builder
	for i := range mostPlainLines {
		fmt.Fprintf(&lines, "a%d = 1\n", i)
	}
	assert.True(t, agree(t, lines.String()))
	assert.False(t, agree(t, lines.String()+"more = 1\n"))
}

// Texts as long as any that is read take the quick parser no time to speak of,
// whatever they are made of. A 1 MiB text takes it some ten milliseconds; what
// is asked here is only that nothing grows with the square.
func TestQuickParserIsLinear(t *testing.T) {
	for _, piece := range []string{"a {}\n", "a { a = 1 }\n", "#\n", "\n", "\r\n", "/", "a", "a = 1\n", "a {\n", "\"", "a = [", "a = [1,1,1,1]\n", "b {\na = 1\nb = 2\nc = 3\n}\n", "1", "\\", "%", "a = \"", "// \r"} {
		text := strings.Repeat(piece, longestFile/len(piece))
		for _, text := range []string{text, "a {\n" + text, "a = [" + text, "a = \"" + text} {
			start := time.Now()
			parsePlain(text)
			assert.Less(t, time.Since(start), 2*time.Second, "%.20q", text)
		}
	}
}

// nasty is what a byte of a plain text is replaced with.
var nasty = []string{"", "\"", "\\", "$", "%", "{", "}", "[", "]", "=", "#", "/", "/*", "\n", "\r", "\r\n", "\t", " ", ",", ".", "-", "0", "a", "<<", "${", "%{", "$$", "\\u", "\x00", "\x7f", "\xff", "\xb0", "°", "\u0301", byteOrderMark, "\u00a0", "🕯", "(", "!", ":", "?", "'", "~", "\u2028", "e", "_"}

// Every prefix of every example, every line left out of it and, for some, every
// byte replaced by what may hurt.
func TestQuickParserOnBrokenTexts(t *testing.T) {
	texts, step := 0, 1
	if testing.Short() {
		step = 7
	}
	try := func(text string) {
		if agree(t, text) {
			texts++
		}
	}
	for _, shop := range []fs.FS{examples.Shop(), examples.Faulty()} {
		for _, text := range examplesOf(t, shop) {
			for at := 0; at < len(text); at += step {
				try(text[:at])
			}
			lines := strings.SplitAfter(text, "\n")
			for i := 0; i < len(lines); i += step {
				try(strings.Join(lines[:i], "") + strings.Join(lines[i+1:], ""))
			}
		}
	}
	for _, text := range []string{plainSample, strings.ReplaceAll(plainSample, "\n", "\r\n")} {
		for at := 0; at < len(text); at += step {
			for _, hurt := range nasty {
				try(text[:at] + hurt + text[at+1:])
				try(text[:at] + hurt + text[at:])
			}
		}
	}
	t.Logf("%d such texts are taken", texts)
}

const plainSample = `# What it is poured from.
wax "a-b" {
  title = "12 % $5 \" °"
  suits = ["pillar", # c
    "votive",
  ]
}
step "melt" { to = "86 °C" } // hot
mold "m" {
  count = 2
  flat  = true
  fill  = 1.5
  in {}
}
`

// FuzzPlain compares the two parsers on a text, and on another that is put
// together of the pieces that texts are made of, one for each of its bytes.
func FuzzPlain(f *testing.F) {
	for _, shop := range []fs.FS{examples.Shop(), examples.Faulty()} {
		for _, text := range examplesOf(f, shop) {
			f.Add(text)
		}
	}
	f.Add(plainSample)
	for _, state := range halfTyped {
		f.Add(state.text)
	}
	for _, text := range []string{"wax \"a\" {\n}\n", "a = [1,\n2]\n", "step \"x\" { a = \"b\" }", "a = \"%$\"", "\x00\x02\x0d\x03\x01\x04\x06\x01"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		agree(t, text)
		if len(text) < 200 {
			var put strings.Builder
			for _, b := range []byte(text) {
				put.WriteString(pieces[int(b)%len(pieces)])
			}
			agree(t, put.String())
		}
	})
}

var pieces = []string{
	"wax", " \"a-b\" ", "{\n", "}\n", " = ", "\"8 % of wax\"", "\n", "{ ", " }\n", "[", "]", ", ", "1", "2.5", "true", "title", "step \"melt\" { to = \"86 °C\" }\n", "weight = \"1 kg\"\n", "wax \"b\" {\n",
	"recipe \"c\" {\n", "a = ", "b = [", "\"", "\\\"", "$", "%", "{", "}", "#", "//", "\r\n", "\t", " ", ".", "-", "e", "_", "°", "\u0301", "/*", "*/", "<<X\n", "X\n", "null", "(", ")", "=", "==", "!", "\\n", "\\u00b0",
	"false", "count = 2\n", "load = 5\n", "# remark\n", "// remark\r\n", "suits = [\"pillar\", \"votive\"]\n", "seen = []\n", "mold \"m\" {\n  count = 2\n}\n", "'", ":", ";", "~", "\ufeff",
}
