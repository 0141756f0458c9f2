package schema

import (
	"io/fs"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
)

const untidy = "wax   \"soy\"  {\n\ttitle=\"Soy ° wax\"   # a remark\n      family   =    \"soy\"\n  suits = [ \"container\",\"melt\" ]\n\n\n  notes = <<EOT\n   as   it   stands\nEOT\n}\n\nrecipe \"a\" {\nstep   \"melt\"  {  to=\"186 °F\"  }\n  step \"pour\" { at = \"176 °F\" }\n}\n\n\n"

const tidy = "wax \"soy\" {\n  title  = \"Soy ° wax\" # a remark\n  family = \"soy\"\n  suits  = [\"container\", \"melt\"]\n\n\n  notes = <<EOT\n   as   it   stands\nEOT\n}\n\nrecipe \"a\" {\n  step \"melt\" { to = \"186 °F\" }\n  step \"pour\" { at = \"176 °F\" }\n}\n"

func formatted(t *testing.T, text string) string {
	t.Helper()
	edits, err := Format(read(text))
	require.NoError(t, err)
	out, err := Apply(text, edits)
	require.NoError(t, err)
	return out
}

func TestFormat(t *testing.T) {
	for name, end := range map[string]string{"LF": "\n", "CRLF": "\r\n", "lone CR": "\r"} {
		for _, mark := range []string{"", byteOrderMark} {
			from := mark + strings.ReplaceAll(untidy, "\n", end)
			want := mark + strings.ReplaceAll(tidy, "\n", end)
			got := formatted(t, from)
			assert.Equal(t, want, got, name)
			edits, err := Format(read(got))
			require.NoError(t, err)
			assert.Empty(t, edits, "%s: laid out twice", name)
			assertSame(t, name, read(from).Blocks, read(got).Blocks)
		}
	}
	assert.Equal(t, "wax \"a\" {\n}\n", formatted(t, "wax \"a\" {\n}"))
	assert.Equal(t, "# b\n", formatted(t, "# b"))
	assert.Equal(t, "", formatted(t, ""))
}

func TestFormatTouchesOnlyWhatChanges(t *testing.T) {
	text := "wax \"a\" {\n  title = \"A\"\n  family =  \"soy\"\n}\n"
	edits, err := Format(read(text))
	require.NoError(t, err)
	require.Len(t, edits, 2)
	assert.Equal(t, int32(strings.Index(text, "= \"A\"")), edits[0].Span.Start)
	assert.Equal(t, Span{edits[0].Span.Start, edits[0].Span.Start}, edits[0].Span)
	assert.Equal(t, " ", edits[0].Text)
	assert.Equal(t, 1, edits[1].Span.Len())
}

func TestFormatLeavesWhatDoesNotReadAlone(t *testing.T) {
	for _, s := range halfTyped {
		f := read(s.text)
		_, err := Format(f)
		if err == nil {
			continue // only its values are wrong, not its form
		}
		assert.ErrorIs(t, err, ErrNotReadable, s.name)
		assert.NotEmpty(t, f.Problems, s.name)
	}
	_, err := Format(read("wax \"a\" {\n  title = \"A\n}\n"))
	assert.ErrorIs(t, err, ErrNotReadable)
	_, err = Format(read("wax \"a\" { title = \"A\", family = \"soy\" }\n"))
	assert.ErrorIs(t, err, ErrNotReadable)
	_, err = Format(read("wax \"a\" {\n  weigth = 5\n}\n"))
	assert.NoError(t, err, "a wrong value does not stand in the way of the layout")
}

func TestTheDemoShopIsLaidOut(t *testing.T) {
	shop := examples.Shop()
	paths, err := fs.Glob(shop, "*/*.candle.hcl")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		src, err := fs.ReadFile(shop, path)
		require.NoError(t, err)
		edits, err := Format(Read(path, src))
		require.NoError(t, err, path)
		assert.Empty(t, edits, path)
	}
}

func FuzzFormat(f *testing.F) {
	f.Add(untidy)
	f.Add(sample)
	f.Add(strings.ReplaceAll(untidy, "\n", "\r"))
	f.Add(byteOrderMark + "a=1")
	f.Add("a \"b\" {\nc=<<-X\n   d\n  X\n}\n \t\n")
	for _, s := range halfTyped {
		f.Add(s.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		file := read(text)
		edits, err := Format(file)
		if err != nil {
			return
		}
		out, err := Apply(text, edits)
		if err != nil {
			t.Fatalf("%v in %q", err, text)
		}
		again := read(out)
		assertSame(t, "laid out", file.Blocks, again.Blocks)
		if len(again.Problems) != len(file.Problems) {
			t.Fatalf("%q reads with other problems than %q:\n%s\n%s", out, text, says(again), says(file))
		}
		more, err := Format(again)
		if err != nil || len(more) > 0 {
			t.Fatalf("%q is not stable: %v %v", out, more, err)
		}
	})
}
