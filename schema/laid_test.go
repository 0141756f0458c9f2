package schema

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLaidMovesTheEqualsSignsAround(t *testing.T) {
	const text = "wax \"soy\" {\n  title  = \"Soy\"\n  family = \"soy\" # flakes\n}\n\nwax \"palm\" {\n  title     = \"Palm\"\n  never_above = \"200 °F\"\n}\n"
	tests := map[string]struct {
		text  string
		edits func(f *File) []Edit
		want  string
		count int
	}{
		"a longer name": {"wax \"soy\" {\n  title  = \"Soy\"\n  family = \"soy\" # flakes\n}\n",
			func(f *File) []Edit { return []Edit{SetValue(f.Blocks[0].Get("pour_at"), `"140 °F"`)} },
			"wax \"soy\" {\n  title   = \"Soy\"\n  family  = \"soy\" # flakes\n  pour_at = \"140 °F\"\n}\n", 3},
		"the longest name gone": {"wax \"soy\" {\n  title  = \"Soy\"\n  family = \"soy\" # flakes\n}\n",
			func(f *File) []Edit { return []Edit{RemoveAttr(f.Blocks[0].Get("family"))} },
			"wax \"soy\" {\n  title = \"Soy\"\n}\n", 2},
		"two values at once": {"wax \"soy\" {\n  title = \"Soy\"\n}\n",
			func(f *File) []Edit {
				b := f.Blocks[0]
				return []Edit{SetValue(b.Get("title"), `"Soy wax"`), SetValue(b.Get("family"), `"soy"`), SetValue(b.Get("never_above"), `"200 °F"`)}
			},
			"wax \"soy\" {\n  title       = \"Soy wax\"\n  family      = \"soy\"\n  never_above = \"200 °F\"\n}\n", 2},
		"a text that is laid out otherwise stays so": {text,
			func(f *File) []Edit { return []Edit{SetValue(f.Blocks[0].Get("pour_at"), `"140 °F"`)} },
			"wax \"soy\" {\n  title  = \"Soy\"\n  family = \"soy\" # flakes\n  pour_at = \"140 °F\"\n}\n\nwax \"palm\" {\n  title     = \"Palm\"\n  never_above = \"200 °F\"\n}\n", 1},
	}
	for name, test := range tests {
		f := read(test.text)
		edits := Laid(f, test.edits(f))
		out, err := Apply(test.text, edits)
		require.NoError(t, err, name)
		assert.Equal(t, test.want, out, name)
		assert.Len(t, edits, test.count, "%s: only what changes is touched", name)
	}
}
