package schema

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"wickrule/examples"
)

// planted is one slip of the keys in a sound file.
type planted struct {
	what string
	text string
	line int    // where it has to be told, 1-based
	rule string // the rule that tells it

	breaks int // how many values it makes unreadable
}

// everySlip is every way to make one of six slips in the text, one at a time.
func everySlip(f *File) []planted {
	text := f.Text.String()
	var slips []planted
	slip := func(what, rule string, breaks int, at int32, edits ...Edit) {
		out, err := Apply(text, edits)
		if err != nil {
			panic(err)
		}
		slips = append(slips, planted{what, out, f.Text.Line(at), rule, breaks})
	}
	cut := func(start, end int32, with string) Edit { return Edit{f, Span{start, end}, with} }
	var walk func(blocks []*Block)
	walk = func(blocks []*Block) {
		for _, b := range blocks {
			if b.Is("rule") {
				continue // its lines are read otherwise
			}
			slip("closing brace", ruleSyntax, 0, b.Span.Start, cut(b.Span.End-1, b.Span.End, ""))
			below := f.lineEndAfter(b.Span.End)
			slip("closing brace twice", ruleSyntax, 0, below+1, cut(below, below, "\n"+f.indentOf(b.Span.Start)+"}"))
			if below+1 < int32(len(text)) && text[below+1] != '}' { // else either of the two may be the one too many
				slip("closing brace twice, set out", ruleSyntax, 0, below+1, cut(below, below, "\n}"))
			}
			slip("opening brace", ruleSyntax, 0, b.Span.Start, cut(b.Body.Start-1, b.Body.Start, ""))
			if b.LabelSpan.Start > b.Span.Start {
				slip("opening quote of label", ruleSyntax, 0, b.Span.Start, cut(b.LabelSpan.Start, b.LabelSpan.Start+1, ""))
				slip("closing quote of label", ruleSyntax, 0, b.Span.Start, cut(b.LabelSpan.End-1, b.LabelSpan.End, ""))
				slip("curly label", ruleSyntax, 0, b.Span.Start, cut(b.LabelSpan.Start, b.LabelSpan.Start+1, "“"), cut(b.LabelSpan.End-1, b.LabelSpan.End, "”"))
			}
			for v := range b.Attrs() {
				name, value := v.NameSpan(), v.Span()
				equals := name.End + int32(strings.IndexByte(text[name.End:], '='))
				slip("colon", ruleSyntax, 0, name.Start, cut(equals, equals+1, ":"))
				quoted := func(s Span) { // of a list over several lines the list as a whole is told
					slip("opening quote", ruleSyntax, 1, value.Start, cut(s.Start, s.Start+1, ""))
					slip("closing quote", ruleSyntax, 1, value.Start, cut(s.End-1, s.End, ""))
					slip("curly quotes", ruleSyntax, 1, value.Start, cut(s.Start, s.Start+1, "“"), cut(s.End-1, s.End, "”"))
				}
				if strings.HasPrefix(v.Written(), `"`) {
					quoted(value)
				}
				slip("no equals sign", ruleSyntax, 0, name.Start, cut(equals, equals+1, ""))
				slip("no value", ruleSyntax, 1, name.Start, cut(value.Start, value.End, ""))
				slip("name in quotes", ruleSyntax, 0, name.Start, cut(name.Start, name.Start, `"`), cut(name.End, name.End, `"`))
				slip("semicolon", ruleSyntax, 0, name.Start, cut(value.End, value.End, ";"))
				slip("comma", ruleSyntax, 0, name.Start, cut(value.End, value.End, ","))
				slip("no-break space", ruleSyntax, 0, name.Start, cut(name.End, name.End+1, "\u00a0"))
				if items := v.Items(); strings.HasPrefix(v.Written(), "[") && len(items) > 1 {
					slip("no comma in a list", ruleSyntax, 1, value.Start, cut(items[0].Span.End, items[1].Span.Start, " "))
				}
				if strings.HasPrefix(v.Written(), "[") {
					slip("list not closed", ruleSyntax, 1, value.Start, cut(value.End-1, value.End, ""))
				}
				if strings.HasPrefix(v.Written(), "[") && len(v.Items()) > 0 {
					quoted(v.Items()[0].Span)
				}
			}
			for _, between := range []string{", ", " ", "; "} {
				if line := onOneLine(b, between); line != "" {
					slip("all on one line", ruleTwoOnOneLine, 0, b.Span.Start, cut(b.Body.Start, b.Body.End, line))
				}
			}
			walk(b.Blocks())
		}
	}
	walk(f.Blocks)
	return slips
}

// onOneLine is what stands in a block as it is typed by those who put all on
// one line; "" where it holds no two attributes, or more than those.
func onOneLine(b *Block, between string) string {
	body := b.File.Text.Slice(b.Body)
	if len(b.written()) < 2 || len(b.Blocks()) > 0 || strings.ContainsAny(body, "#") || strings.Contains(body, "<<") {
		return ""
	}
	lines := strings.Split(strings.TrimSpace(body), "\n")
	for i, line := range lines {
		lines[i] = strings.TrimSpace(line)
	}
	return " " + strings.Join(lines, between) + " "
}

// outline lists the blocks of a file, each with what it stands in, and the
// values that are known of each.
func outline(f *File) []string {
	var list []string
	var walk func(blocks []*Block, within string)
	walk = func(blocks []*Block, within string) {
		for _, b := range blocks {
			here := within + "/" + b.Spec.ID + " " + b.Label
			list = append(list, here)
			for v := range b.Attrs() {
				if v.Known() {
					list = append(list, here+" "+v.Spec.Name+" = "+strings.ReplaceAll(v.Written(), "\r\n", "\n"))
				}
			}
			walk(b.Blocks(), here)
		}
	}
	walk(f.Blocks, "")
	return list
}

// onlyLayout are the slips that leave nothing to guess.
var onlyLayout = []string{"all on one line", "colon", "comma", "semicolon", "name in quotes", "no-break space"}

// lost is what the first list has and the second has not.
func lost(list, other []string) []string {
	has := map[string]bool{}
	for _, line := range other {
		has[line] = true
	}
	return slices.DeleteFunc(slices.Clone(list), func(line string) bool { return has[line] })
}

// TestOneSlipIsToldOnceAndHidesNothing makes one slip at a time in the files of
// the example shops: it is told once, on its line, and every block is read.
func TestOneSlipIsToldOnceAndHidesNothing(t *testing.T) {
	made, wrong := map[string]int{}, 0
	const stride = 37 // one slip in so many is tried: all of them, which hold too, take a minute or two
	n := 0
	for _, shop := range []fs.FS{examples.Shop(), examples.Faulty()} {
		require.NoError(t, fs.WalkDir(shop, ".", func(path string, d fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".candle.hcl") {
				return err
			}
			src, err := fs.ReadFile(shop, path)
			require.NoError(t, err)
			whole := Read(path, src)
			if !whole.Clean {
				return nil
			}
			want := outline(whole)
			for _, s := range everySlip(whole) {
				if n++; n%stride != 0 && made[s.what] > 0 { // the first of each kind always
					continue
				}
				made[s.what]++
				if n/stride%2 == 1 {
					s.text = strings.ReplaceAll(s.text, "\n", "\r\n")
				}
				f := Read(path, []byte(s.text))
				bad := ""
				switch {
				case len(f.Problems) != 1:
					bad = fmt.Sprintf("told %d times", len(f.Problems))
				case f.Text.Line(f.Problems[0].Span.Start) != s.line:
					bad = "told on another line"
				case f.Problems[0].Rule != s.rule && !(f.Problems[0].Rule == ruleNotALiteral || f.Problems[0].Rule == ruleKeyForm):
					bad = "told as another thing"
				case len(lost(want, outline(f))) > s.breaks:
					bad = "lost:\n" + strings.Join(lost(want, outline(f)), "\n")
				case len(lost(outline(f), want)) > 0:
					bad = "made up:\n" + strings.Join(lost(outline(f), want), "\n")
				case f.Whole != slices.Contains(onlyLayout, s.what):
					bad = fmt.Sprintf("whole: %v", f.Whole)
				}
				if bad == "" {
					continue
				}
				if wrong++; wrong <= 20 {
					lines := strings.Split(s.text, "\n")
					from, to := max(s.line-2, 0), min(s.line+2, len(lines))
					t.Errorf("%s: %s missing or wrong on line %d: %s\n%s\n%s", path, s.what, s.line, bad, strings.Join(lines[from:to], "\n"), says(f))
				}
			}
			return nil
		}))
	}
	t.Logf("%v, %d wrong", made, wrong)
	require.Len(t, made, 20, "every kind of slip is tried")
}

// Two slips that the stride above may step over.
func TestNamesAndBracesThatMeanAnotherThingElsewhere(t *testing.T) {
	f := read("recipe \"a\" {\n  title = \"A\"\n  pot     \"melter-8\"\n}\n")
	require.Len(t, f.Problems, 1, says(f))
	require.Equal(t, "pot", f.Text.Slice(f.Problems[0].Span), "a pot is a block only at the top of a file")
	require.Equal(t, "melter-8", f.Blocks[0].Get("pot").Text())

	f = read("recipe \"a\" {\n  title = \"A\"\n  step \"melt\" { to = \"186 °F\" }\n}\n  step \"pour\" {}\n}\n")
	require.Len(t, f.Problems, 1, says(f))
	require.Equal(t, 4, f.Text.Line(f.Problems[0].Span.Start))
	require.Len(t, f.Blocks, 1)
	require.Len(t, f.Blocks[0].Blocks(), 2)
}
