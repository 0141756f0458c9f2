package schema

import (
	"fmt"
	"io/fs"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/schema/quantity"
)

// sample is a small recipe with something of everything in it.
const sample = `# A pillar, and what it is poured from.
wax "northlight-pillar" {
  title           = "Northlight paraffin, pillar grade"
  family          = "paraffin"
  suits           = ["pillar", "votive"]
  melt_to         = "180 to 190 °F"
  fragrance_limit = "6 % of wax"
  density         = "0.91 g/mL"
}

recipe "tide-pillar" {
  title    = "Tide \"and\" thyme \u00B0"
  made_for = "sale"

  wax "northlight-pillar" {
    weight = "1.45 kg"
  }
  mold "pillar-3x6" {
    count = 2
    wick  = "flat-braid-24"
    fill  = "12 mm below rim"
  }

  step "seal wick hole" { with = ["rubber-plug", "wick-putty"] }
  step "melt"           { to = "186 °F" }
  step "pour" {
    at  = "176 °F" # under the ceiling
    say = <<-EOT
      Pour slowly.
        Tap the mold.
    EOT
  }
  test_burn "2026-10-04" {
    candle = "A"
    to_end = false
    seen   = []
  }
}

rule "cool-putty" {
  about   = "mold"
  require = pour.at <= mold.seal.holds_to - degrees("10 °F")
  message = "The pour is ${show(pour.at)}."
  sound {
    recipe "cool-pour" {
      title = "Cool"
    }
  }
}
`

func read(text string) *File { return Read("test.candle.hcl", []byte(text)) }

// find is the first block of that name and label anywhere in the file.
func find(t *testing.T, f *File, name, label string) *Block {
	t.Helper()
	var look func(blocks []*Block) *Block
	look = func(blocks []*Block) *Block {
		for _, b := range blocks {
			if b.Name() == name && b.Label == label {
				return b
			}
			if inner := look(b.Blocks()); inner != nil {
				return inner
			}
		}
		return nil
	}
	b := look(f.Blocks)
	require.NotNil(t, b, "%s %q", name, label)
	return b
}

func says(f *File) string {
	var lines []string
	for _, p := range f.Problems {
		line, column := f.Text.Position(p.Span.Start)
		lines = append(lines, fmt.Sprintf("%d:%d %s %q %s", line, column, p.Rule, f.Text.Slice(p.Span), p.Message))
	}
	return strings.Join(lines, "\n")
}

func TestReadsValuesWithTheirPlaces(t *testing.T) {
	f := read(sample)
	require.True(t, f.Clean, says(f))
	require.Len(t, f.Blocks, 3)

	wax := f.Blocks[0]
	assert.Equal(t, "Northlight paraffin, pillar grade", wax.Title())
	assert.Equal(t, `wax "northlight-pillar"`, f.Text.Slice(wax.Header()))
	assert.Equal(t, `"northlight-pillar"`, f.Text.Slice(wax.LabelSpan))
	assert.True(t, strings.HasPrefix(f.Text.Slice(wax.Span), "wax ") && strings.HasSuffix(f.Text.Slice(wax.Span), "}"))
	assert.Equal(t, byte('{'), f.Text.String()[wax.Body.Start-1])
	assert.Equal(t, byte('}'), f.Text.String()[wax.Body.End])

	melt := wax.Get("melt_to")
	assert.Equal(t, `"180 to 190 °F"`, melt.Written())
	assert.Equal(t, "melt_to", f.Text.Slice(melt.NameSpan()))
	assert.True(t, melt.Amount().IsRange())
	assert.Equal(t, quantity.Temperature, melt.Amount().Dim())
	assert.Equal(t, []string{"title", "family", "suits", "melt_to", "fragrance_limit", "density"}, names(wax), "in the order written")
	suits := wax.Get("suits").Items()
	require.Len(t, suits, 2)
	assert.Equal(t, "votive", suits[1].Text)
	assert.Equal(t, `"votive"`, f.Text.Slice(suits[1].Span))
	assert.True(t, wax.Get("shrinkage").Absent())

	recipe := f.Blocks[1]
	assert.Equal(t, "Tide \"and\" thyme °", recipe.Get("title").Text())
	mold := find(t, f, "mold", "pillar-3x6")
	assert.Same(t, recipe, mold.Parent)
	assert.Equal(t, 2, mold.Get("count").Whole(0))
	assert.True(t, mold.Get("fill").BelowRim())
	assert.Equal(t, quantity.Length, mold.Get("fill").Amount().Dim())
	assert.Len(t, find(t, f, "step", "seal wick hole").Get("with").Items(), 2)
	assert.Equal(t, "Pour slowly.\n  Tap the mold.\n", find(t, f, "step", "pour").Get("say").Text())
	burn := find(t, f, "test_burn", "2026-10-04")
	assert.True(t, burn.Get("to_end").No())
	assert.True(t, burn.Get("seen").Known())
	assert.Empty(t, burn.Get("seen").Items())

	rule := f.Blocks[2]
	assert.Equal(t, `pour.at <= mold.seal.holds_to - degrees("10 °F")`, rule.Get("require").Text())
	assert.Equal(t, rule.Get("require").Text(), rule.Get("require").Written())
	assert.Equal(t, "Cool", find(t, f, "recipe", "cool-pour").Title())
}

func names(b *Block) []string {
	var names []string
	for a := range b.Attrs() {
		names = append(names, a.Spec.Name)
	}
	return names
}

// Decoding is compared with the language's reference implementation, which
// evaluates the same source: github.com/hashicorp/hcl, native syntax.
func TestTextsDecodeAsTheLanguageSays(t *testing.T) {
	for _, source := range []string{
		`""`, `"plain"`, `"200 °F"`, `"2\u00300 \u00B0F"`, `"\"q\" \\ \t\n\r"`, `"$${x} %%{y} $ % {"`, `"\U0001F56F"`, `"a$b%c$$d"`,
		"<<EOT\n  two\n    three\n\nEOT\n", "<<-EOT\n      six\n        eight\n\n      $${x}\n    EOT\n",
		"<<-EOT\n\ta\n\t\tb\n    \n\tc\n  EOT\n", "<<-EOT\nEOT\n", "<<-EOT\n    a\\n \"b\"\n  EOT\n", "<<-EOT\n\n  x\n\n  EOT\n",
	} {
		expr, diags := hclsyntax.ParseConfig([]byte("a = "+source), "", hcl.InitialPos)
		require.False(t, diags.HasErrors(), source)
		want, diags := expr.Body.(*hclsyntax.Body).Attributes["a"].Expr.Value(nil)
		require.False(t, diags.HasErrors(), source)
		f := read("wax \"a\" {\n  notes = " + strings.TrimSuffix(source, "\n") + "\n}\n")
		require.Empty(t, f.Problems, source)
		assert.Equal(t, want.AsString(), f.Blocks[0].Get("notes").Text(), source)
	}
}

func TestLineEndsDoNotMatter(t *testing.T) {
	want := read(sample)
	for name, end := range map[string]string{"CRLF": "\r\n", "lone CR": "\r"} {
		text := strings.ReplaceAll(sample, "\n", end)
		f := read(text)
		require.True(t, f.Clean, "%s\n%s", name, says(f))
		assert.Equal(t, text, f.Text.String())
		assertSame(t, name, want.Blocks, f.Blocks)
	}
	f := read(byteOrderMark + sample)
	require.True(t, f.Clean, says(f))
	assert.Equal(t, "wax", f.Text.Slice(Span{f.Blocks[0].Span.Start, f.Blocks[0].Span.Start + 3}))
	assertSame(t, "byte order mark", want.Blocks, f.Blocks)
	for _, nothing := range []string{"", "\n", byteOrderMark, "# only a remark"} {
		f := read(nothing)
		assert.True(t, f.Clean, "%q: %s", nothing, says(f))
		assert.Empty(t, f.Blocks)
	}
}

// assertSame compares what two files say, not where.
func assertSame(t *testing.T, what string, want, got []*Block) {
	t.Helper()
	require.Len(t, got, len(want), what)
	for i, w := range want {
		g := got[i]
		require.Equal(t, w.Spec.ID, g.Spec.ID, what)
		assert.Equal(t, w.Label, g.Label, what)
		require.Equal(t, names(w), names(g), what)
		for v := range w.Attrs() {
			a := v.Spec.Name
			assert.Equal(t, w.Get(a).State(), g.Get(a).State(), "%s: %s", what, a)
			assert.Equal(t, w.Get(a).Amount(), g.Get(a).Amount(), "%s: %s", what, a)
			assert.Equal(t, w.Get(a).Text(), g.Get(a).Text(), "%s: %s", what, a)
			assert.Equal(t, w.Get(a).Whole(-1), g.Get(a).Whole(-1), "%s: %s", what, a)
			assert.Equal(t, w.Get(a).Yes(), g.Get(a).Yes(), "%s: %s", what, a)
			texts := func(items []Item) (out []string) {
				for _, item := range items {
					out = append(out, item.Text)
				}
				return out
			}
			assert.Equal(t, texts(w.Get(a).Items()), texts(g.Get(a).Items()), "%s: %s", what, a)
		}
		assertSame(t, what, w.Blocks(), g.Blocks())
	}
}

// assertSound checks what must hold of any file that was read, whatever its
// bytes.
func assertSound(t *testing.T, f *File) {
	t.Helper()
	length := int32(f.Text.Len())
	inside := func(s Span, what string) {
		if s.Start < 0 || s.End < s.Start || s.End > length {
			t.Fatalf("%s: span %v outside the %d bytes of\n%s", what, s, length, f.Text.String())
		}
	}
	for i, p := range f.Problems {
		inside(p.Span, p.Rule)
		if p.Message == "" {
			t.Fatalf("a problem without words: %s", p.Rule)
		}
		if !knownRules[p.Rule] {
			t.Fatalf("a problem of an unlisted rule: %s", p.Rule)
		}
		if i > 0 && p.Span.Start < f.Problems[i-1].Span.Start {
			t.Fatalf("problems out of order in\n%s", f.Text.String())
		}
		if p.Rule == ruleAttrMissing && !f.Whole {
			t.Fatalf("said to be missing from a text that is not whole: %s\n%s", p.Message, f.Text.String())
		}
		for _, leak := range leaks {
			if strings.Contains(p.Message, leak) {
				t.Fatalf("the parser's own words in %q", p.Message)
			}
		}
		for _, fix := range p.Fixes {
			if _, err := Apply(f.Text.String(), fix.Edits); err != nil {
				t.Fatalf("%s: %v in\n%s", fix.Title, err, f.Text.String())
			}
		}
	}
	if len(f.Problems) > mostProblems+1 {
		t.Fatalf("%d problems", len(f.Problems))
	}
	if f.Clean != (f.Whole && len(f.Problems) == 0) {
		t.Fatal("clean means whole and without problems")
	}
	var walk func(blocks []*Block, parent *Block)
	walk = func(blocks []*Block, parent *Block) {
		for _, b := range blocks {
			for _, s := range []Span{b.Span, b.Header(), b.LabelSpan, b.Body} {
				inside(s, b.Spec.ID)
			}
			if b.Parent != parent || b.File != f {
				t.Fatal("a block that does not know where it stands")
			}
			for v := range b.Attrs() {
				if v != b.Get(v.Spec.Name) {
					t.Fatalf("%s is another when it is asked for by name", v.Spec.Name)
				}
				inside(v.Span(), v.Spec.Name)
				inside(v.NameSpan(), v.Spec.Name)
				for _, item := range v.Items() {
					inside(item.Span, v.Spec.Name)
				}
				if v.Known() && v.attr.held.form == nothing {
					t.Fatalf("%s is known and holds nothing", v.Spec.Name)
				}
			}
			walk(b.Blocks(), b)
		}
	}
	walk(f.Blocks, nil)
}

var knownRules = func() map[string]bool {
	known := map[string]bool{}
	for _, name := range ReadingRules() {
		known[name] = true
	}
	return known
}()

// leaks are words of the parser's messages that no maker should meet.
var leaks = []string{"argument", "Argument", "expression is required", "definition", "token", "Invalid", "Unterminated", "not valid", "identifier", "delimit", "configuration", "Unsupported", "literal string", "tuple", "newline"}

func TestEveryPrefixAndEveryLineLess(t *testing.T) {
	for end := range len(sample) {
		assertSound(t, read(sample[:end]))
	}
	lines := strings.SplitAfter(sample, "\n")
	for i := range lines {
		assertSound(t, read(strings.Join(lines[:i], "")+strings.Join(lines[i+1:], "")))
	}
	for i := range sample {
		if utf8.RuneStart(sample[i]) {
			assertSound(t, read(sample[:i]+sample[i+1:]))
		}
	}
}

func TestEveryDemoFileLessALine(t *testing.T) {
	for _, shop := range []fs.FS{examples.Shop(), examples.Faulty()} {
		require.NoError(t, fs.WalkDir(shop, ".", func(path string, d fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".candle.hcl") {
				return err
			}
			src, err := fs.ReadFile(shop, path)
			require.NoError(t, err)
			whole := Read(path, src)
			assertSound(t, whole)
			lines := strings.SplitAfter(string(src), "\n")
			if len(lines) > 150 {
				lines = lines[:150]
			}
			for i := range lines {
				assertSound(t, Read(path, []byte(strings.Join(lines[:i], "")+strings.Join(lines[i+1:], ""))))
			}
			return nil
		}))
	}
}

func TestWhatWouldOverwhelmTheParserIsRefused(t *testing.T) {
	deep := 50_000
	for name, text := range map[string]string{
		"templates":        "a = " + strings.Repeat(`"${`, deep),
		"closed templates": "a = " + strings.Repeat(`"${`, deep) + strings.Repeat(`}"`, deep),
		"lists":            "a = " + strings.Repeat("[", deep),
		"brackets":         "a = " + strings.Repeat("(", 200_000),
		"calls":            "a = " + strings.Repeat("f(", 200_000),
		"objects":          "a = " + strings.Repeat("{a=", 200_000),
		"blocks":           strings.Repeat("a {\n", 200_000),
		"behind a comment": "/*\n" + strings.Repeat("}\n", deep) + "*/ a = " + strings.Repeat("(", deep),
		"signs":            "a = " + strings.Repeat("!", 1_000_000),
		"minus signs":      "a = " + strings.Repeat("- ", 500_000),
		"signs and tabs":   "a = " + strings.Repeat("-\t", 500_000),
		"signs on lines":   "a = (" + strings.Repeat("-\n", 500_000) + "1)",
		"signs, remarks":   "a = " + strings.Repeat("-/**/", 200_000),
		"a large file":     strings.Repeat("# remark\n", 1<<17),
	} {
		f := read(text)
		assertSound(t, f)
		assert.False(t, f.Whole, name)
		require.Len(t, f.Problems, 1, name)
		assert.Equal(t, ruleSyntax, f.Problems[0].Rule, name)
	}
	long := read("wax \"a\" {\n  title = " + strings.Repeat("9", 100_000) + "\n  family = \"soy\"\n}\n")
	require.Len(t, long.Problems, 1, says(long))
	assert.Equal(t, "soy", long.Blocks[0].Get("family").Text(), "the rest of the file is read")
	assert.True(t, long.Blocks[0].Get("title").Broken())
	ruled := read("# " + strings.Repeat("-", 2000) + "\nwax \"a\" {\n  title  = \"" + strings.Repeat("-", 2000) + "\"\n  family = \"soy\"\n}\n")
	assert.Empty(t, ruled.Problems, "in texts and remarks they are no signs")
}

func TestLongTextsThatAreNotRecipesAreReadToTheirEnd(t *testing.T) {
	if testing.Short() {
		t.Skip("a megabyte of each is much for the race detector")
	}
	size := longestFile / 4
	for name, text := range map[string]string{
		"comments that never end": strings.Repeat("/*\n", size/3),
		"open heredocs":           strings.Repeat("a=<<A\n", size/6),
		"open quotes":             strings.Repeat("a=\"\n", size/4),
		"strays":                  strings.Repeat("@\n", size/2),
		"closing braces":          strings.Repeat("}", size),
		"closing brace lines":     strings.Repeat("}\n", size/2),
		"one long line":           strings.Repeat("a=1 ", size/4),
		"attributes in a row":     "wax \"a\" { " + strings.Repeat("a=1,", size/4) + "}",
		"words":                   strings.Repeat("word ", size/5),
		"conditions":              "a = " + strings.Repeat("x?1:", size/4),
		"sums":                    "a = " + strings.Repeat("1+", size/2),
		"no-break spaces":         strings.Repeat("\u00a0", size/2),
		"bad bytes":               strings.Repeat("\xff", size),
		"control characters":      strings.Repeat("\x01", size),
		"open lists":              strings.Repeat("a = [\"b\",\n", 20),
		"an open heredoc":         "a = <<A\n" + strings.Repeat("b\n", size/2),
		"dollar signs":            "a = \"" + strings.Repeat("$ ", size/2) + "\"",
		"doubled dollar signs":    "a = \"" + strings.Repeat("$${ ", size/4) + "\"",
		"a heredoc of templates":  "a = <<A\n" + strings.Repeat("${b}\n", size/5) + "A\n",
		"digits":                  strings.Repeat("1", size),
	} {
		start := time.Now()
		assertSound(t, read(text)) // one that never ends runs into the test's own limit
		t.Logf("%s: %v", name, time.Since(start).Round(time.Millisecond))
	}
}

// What a file keeps beyond its text: blocks, attributes, quantities. Nothing of
// the parser's tree may be among it.
func TestAFileKeepsLittleBeyondItsText(t *testing.T) {
	src, err := fs.ReadFile(examples.Shop(), "recipes/tide-pillar.candle.hcl")
	require.NoError(t, err)
	const files = 500
	all := make([]*File, files)
	before := heapAfterCollecting()
	for i := range all {
		all[i] = Read("a", src)
	}
	each := float64(heapAfterCollecting()-before) / files
	perKilobyte := (each - float64(len(src))) / float64(len(src)) * 1024
	runtime.KeepAlive(all)
	t.Logf("%d bytes of text keep %.0f bytes: %.0f beyond each KiB of text", len(src), each, perKilobyte)
	assert.Less(t, perKilobyte, 4096.0)
}

func heapAfterCollecting() int64 {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int64(m.HeapAlloc)
}

var kept *File

// BenchmarkRead measures reading beside the parser alone, turn by turn in the
// same run: times-parse is how many times as long reading takes. Both are
// medians, which a machine busy with other things disturbs least.
func BenchmarkRead(b *testing.B) {
	src, err := fs.ReadFile(examples.Shop(), "recipes/tide-pillar.candle.hcl")
	require.NoError(b, err)
	b.SetBytes(int64(len(src)))
	var parses, reads []time.Duration
	for b.Loop() {
		start := time.Now()
		_, _ = hclsyntax.ParseConfig(src, "", hcl.InitialPos)
		parsed := time.Now()
		kept = Read("a", src)
		parses = append(parses, parsed.Sub(start))
		reads = append(reads, time.Since(parsed))
	}
	slices.Sort(parses)
	slices.Sort(reads)
	parse, whole := parses[len(parses)/2], reads[len(reads)/2]
	b.ReportMetric(float64(parse.Microseconds()), "µs/parse")
	b.ReportMetric(float64(whole.Microseconds()), "µs/read")
	b.ReportMetric(float64(whole)/float64(parse), "times-parse")
}

// BenchmarkKept tells how many bytes a file keeps beyond its text, for each KiB
// of text.
func BenchmarkKept(b *testing.B) {
	src, err := fs.ReadFile(examples.Shop(), "recipes/tide-pillar.candle.hcl")
	require.NoError(b, err)
	const files = 500
	for b.Loop() {
		all := make([]*File, files)
		before := heapAfterCollecting()
		for i := range all {
			all[i] = Read("a", src)
		}
		each := float64(heapAfterCollecting()-before) / files
		runtime.KeepAlive(all)
		b.ReportMetric((each-float64(len(src)))/float64(len(src))*1024, "kept-B/KiB")
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(sample))
	for _, state := range halfTyped {
		f.Add([]byte(state.text))
	}
	f.Add([]byte("wax \"a\" { a = 1, b = \"${x\" } }\n\xff\u00a0b"))
	f.Fuzz(func(t *testing.T, src []byte) {
		file := Read("fuzz.candle.hcl", src)
		assertSound(t, file)
		if file.Text.String() != string(src) {
			t.Fatal("the text is not as given")
		}
	})
}
