package schema

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A problem with part of an amount points at that part, however its characters
// are typed.
func TestProblemsPointIntoAmounts(t *testing.T) {
	for value, flagged := range map[string]string{
		`"200 °X"`:                 `°X`,
		`"200 \u00B0X"`:            `\u00B0X`,
		`"2\u00300 °X"`:            `°X`,
		`"\u0032\u0030\u0030 °F"`:  "", // reads
		`"180 °F to 200 °X"`:       `°X`,
		`"180 to 2oo °F"`:          `oo °F`,
		`"200"`:                    `200`,
		`"\u0032\u0030\u0030"`:     `\u0032\u0030\u0030`,
		`"200 oz"`:                 `200 oz`,
		`"200 \"X"`:                `\"X`,
		`"½½ °F"`:                  `½½`,
		`"200 °F and a little \\"`: `°F and a little \\`,
	} {
		f := read("wax \"soy\" {\n  title   = \"Soy\"\n  family  = \"soy\"\n  melt_to = " + value + " # °\n}\n")
		if flagged == "" {
			assert.Empty(t, f.Problems, value)
			continue
		}
		if assert.Len(t, f.Problems, 1, "%s\n%s", value, says(f)) {
			assert.Equal(t, flagged, f.Text.Slice(f.Problems[0].Span), "%s: %s", value, f.Problems[0].Message)
		}
	}
}

// The half-typed states say the same, at the same characters, in every line
// end and behind a byte order mark.
func TestHalfTypedStatesInEveryLineEnd(t *testing.T) {
	told := func(f *File) (list []string) {
		for _, p := range f.Problems {
			line, column := f.Text.Position(p.Span.Start)
			list = append(list, fmt.Sprintf("%d:%d %s %q %s", line, column, p.Rule, f.Text.Slice(p.Span), p.Message))
		}
		return list
	}
	for _, s := range halfTyped {
		want := read(s.text)
		for kind, text := range map[string]string{
			"CRLF":            strings.ReplaceAll(s.text, "\n", "\r\n"),
			"lone CR":         strings.ReplaceAll(s.text, "\n", "\r"),
			"byte order mark": byteOrderMark + s.text,
			"all at once":     byteOrderMark + strings.ReplaceAll(s.text, "\n", "\r\n") + "\r\n\r\n",
			"no line end":     strings.TrimSuffix(s.text, "\n"),
		} {
			f := read(text)
			assertSound(t, f)
			require.Equal(t, told(want), told(f), "%s, %s", s.name, kind)
			assert.Equal(t, want.Whole, f.Whole, "%s, %s", s.name, kind)
			assertSame(t, s.name+", "+kind, want.Blocks, f.Blocks)
		}
	}
}
