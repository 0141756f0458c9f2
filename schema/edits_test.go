package schema

import (
	"strings"
	"testing"

	"github.com/agext/levenshtein"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const shelf = `# The shelf.
wax "soy" {
  title  = "Soy"
  family = "soy" # a remark
  suits  = ["container"]
}

# How it is made.
recipe "jar" {
  title = "Jar"

  wax "soy" {
    weight = "300 g"
  }

  step "melt" { to = "180 °F" }
  # Slowly.
  step "pour" {
    at = "150 °F" # warm
  }
  step "note" {}
}
`

func TestEdits(t *testing.T) {
	block := func(f *File, name, label string) *Block { return find(t, f, name, label) }
	tests := map[string]struct {
		edit     func(f *File) []Edit
		from, to string // what changes in the text
	}{
		"set a value": {func(f *File) []Edit { return []Edit{SetValue(block(f, "step", "pour").Get("at"), `"145 °F"`)} },
			`at = "150 °F"`, `at = "145 °F"`},
		"set a value that is absent": {func(f *File) []Edit { return []Edit{SetValue(block(f, "step", "pour").Get("leave"), `"1/4 in"`)} },
			"at = \"150 °F\" # warm\n", "at = \"150 °F\" # warm\n    leave = \"1/4 in\"\n"},
		"set in a one-line block": {func(f *File) []Edit { return []Edit{SetValue(block(f, "step", "melt").Get("hold"), `"2 min"`)} },
			`{ to = "180 °F" }`, "{\n    to = \"180 °F\"\n    hold = \"2 min\"\n  }"},
		"set in an empty block": {func(f *File) []Edit { return []Edit{SetValue(block(f, "step", "note").Get("say"), `"Wait."`)} },
			`{}`, "{\n    say = \"Wait.\"\n  }"},
		"remove an attribute": {func(f *File) []Edit { return []Edit{RemoveAttr(f.Blocks[0].Get("family"))} },
			"  family = \"soy\" # a remark\n", ""},
		"remove from a one-line block": {func(f *File) []Edit { return []Edit{RemoveAttr(block(f, "step", "melt").Get("to"))} },
			`{ to = "180 °F" }`, "{}"},
		"insert before": {func(f *File) []Edit {
			return []Edit{InsertBlockBefore(block(f, "step", "pour"), "step \"add dye\" {\n  at = \"170 °F\"\n}")}
		}, "  # Slowly.\n", "  step \"add dye\" {\n    at = \"170 °F\"\n  }\n  # Slowly.\n"},
		"insert after": {func(f *File) []Edit { return []Edit{InsertBlockAfter(block(f, "step", "melt"), `step "set wick" {}`)} },
			"step \"melt\" { to = \"180 °F\" }\n", "step \"melt\" { to = \"180 °F\" }\n  step \"set wick\" {}\n"},
		"append to a recipe": {func(f *File) []Edit { return []Edit{AppendBlock(f.Blocks[1], "step \"cure\" { for = \"3 d\" }")} },
			"  step \"note\" {}\n", "  step \"note\" {}\n  step \"cure\" { for = \"3 d\" }\n"},
		"remove a block": {func(f *File) []Edit { return []Edit{RemoveBlock(block(f, "step", "melt"))} },
			"  step \"melt\" { to = \"180 °F\" }\n", ""},
		"move a block": {func(f *File) []Edit { return MoveBlock(block(f, "step", "note"), block(f, "step", "melt")) },
			"  step \"melt\" { to = \"180 °F\" }\n  # Slowly.\n  step \"pour\" {\n    at = \"150 °F\" # warm\n  }\n  step \"note\" {}\n",
			"  step \"note\" {}\n  step \"melt\" { to = \"180 °F\" }\n  # Slowly.\n  step \"pour\" {\n    at = \"150 °F\" # warm\n  }\n"},
		"move a block with lines": {func(f *File) []Edit { return MoveBlock(block(f, "step", "pour"), block(f, "step", "melt")) },
			"  step \"melt\" { to = \"180 °F\" }\n  # Slowly.\n  step \"pour\" {\n    at = \"150 °F\" # warm\n  }\n",
			"  # Slowly.\n  step \"pour\" {\n    at = \"150 °F\" # warm\n  }\n  step \"melt\" { to = \"180 °F\" }\n"},
		"append an item": {func(f *File) []Edit { return []Edit{AppendItem(f.Blocks[0].Get("suits"), `"melt"`)} },
			`["container"]`, `["container", "melt"]`},
		"append to an absent list": {func(f *File) []Edit { return []Edit{AppendItem(f.Blocks[1].Get("markets"), `"US"`)} },
			"  title = \"Jar\"\n", "  title = \"Jar\"\n  markets = [\"US\"]\n"},
	}
	for name, test := range tests {
		for kind, end := range map[string]string{"LF": "\n", "CRLF": "\r\n", "lone CR": "\r"} {
			require.Equal(t, 1, strings.Count(shelf, test.from), name)
			text := strings.ReplaceAll(shelf, "\n", end)
			want := strings.ReplaceAll(strings.Replace(shelf, test.from, test.to, 1), "\n", end)
			got, err := Apply(text, test.edit(read(text)))
			require.NoError(t, err, "%s, %s", name, kind)
			assert.Equal(t, want, got, "%s, %s", name, kind)
			for _, p := range read(got).Problems {
				assert.Equal(t, ruleAttrMissing, p.Rule, "%s, %s: %s", name, kind, p.Message)
			}
		}
	}
}

func TestEditsInAFileOfOneLine(t *testing.T) {
	text := `wax "soy" { title = "Soy" }`
	out, err := Apply(text, []Edit{SetValue(read(text).Blocks[0].Get("family"), `"soy"`)})
	require.NoError(t, err)
	assert.Equal(t, "wax \"soy\" {\n  title = \"Soy\"\n  family = \"soy\"\n}", out)
	out, err = Apply(text, []Edit{InsertBlockAfter(read(text).Blocks[0], "wax \"palm\" {}"), InsertBlockBefore(read(text).Blocks[0], "pot \"big\" {}")})
	require.NoError(t, err)
	assert.Equal(t, "pot \"big\" {}\nwax \"soy\" { title = \"Soy\" }\nwax \"palm\" {}", out)
}

func TestApplyRefusesWhatOverlaps(t *testing.T) {
	for _, edits := range [][]Edit{
		{{Span: Span{0, 3}}, {Span: Span{2, 4}}},
		{{Span: Span{5, 4}}},
		{{Span: Span{-1, 2}}},
		{{Span: Span{9, 12}}},
	} {
		_, err := Apply("0123456789", edits)
		assert.Error(t, err)
	}
	out, err := Apply("0123", []Edit{{Span: Span{3, 4}, Text: "c"}, {Span: Span{1, 1}, Text: "a"}, {Span: Span{1, 2}, Text: "b"}})
	require.NoError(t, err)
	assert.Equal(t, "0ab2c", out)
}

func TestQuoteReadsBack(t *testing.T) {
	for _, text := range []string{"", "plain", `"q" \ back`, "two\nlines\ttab\r", "${x} %{y} $ % $${z}", "200 °F", "\\u00B0"} {
		f := read("wax \"a\" {\n  notes = " + Quote(text) + "\n}\n")
		require.Empty(t, f.Problems, text)
		assert.Equal(t, text, f.Blocks[0].Get("notes").Text())
	}
}

func TestNearest(t *testing.T) {
	known := []string{"weight", "title", "pour", "second pour", "melt", "at"}
	for word, want := range map[string]string{"weigth": "weight", "Title": "title", "second-pour": "second pour", "mlet": "melt", "zzzzzz": "", "pourr": "pour"} {
		name, sure := Nearest(word, known)
		assert.Equal(t, want, name, word)
		assert.Equal(t, want != "", sure, word)
	}
	for _, word := range []string{"weight", "tiel", "POUR", "s_pour", "meelt", "gweith", "²pour", "", "p", "1 pour"} {
		for _, k := range known {
			own, countable := lettersOf(plainSpelling(word))
			assert.Equal(t, word != "²pour", countable)
			assert.True(t, !countable || own.apart(k) <= levenshtein.Distance(plainSpelling(word), plainSpelling(k), nil), "%s, %s", word, k)
		}
	}
	_, sure := Nearest("cat", []string{"bat", "hat"})
	assert.False(t, sure, "two are as near")
	assert.Equal(t, "the nearest is `weight`", NearestOrKnown("weigth", known, "`"))
	assert.Equal(t, "known are 1, 2, 3, 4, 5, 6, 7 and 2 more", NearestOrKnown("wick", strings.Split("123456789", ""), ""))
}
