package shoprule

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/schema"
)

// cursor is where the cursor stands in the texts of these tests.
const cursor = "‸"

// spotIn is what stands before the cursor in what is typed behind an =, in one
// line: the word typed, what it is asked of, what stands before the sign, the
// functions with how many arguments are written.
func spotIn(typed string) string {
	const before = "require ="
	text := before + strings.Replace(typed, cursor, "", 1)
	at := len(before) + strings.Index(typed, cursor)
	s, ok := Around(text, int32(len(before)), int32(at))
	if !ok {
		return "left"
	}
	said := fmt.Sprintf("%q", text[s.Word.Start:min(int(s.Word.End), at)])
	switch {
	case s.Quoted:
		said += " in quotes"
	case s.Dotted:
		said += " of " + s.Base
	case s.Open:
		said += " open"
	default:
		said += " behind"
	}
	if s.Sign != "" {
		said += ", " + strings.TrimSpace(s.Left+" "+s.Sign)
	}
	for _, c := range s.Calls {
		said += fmt.Sprintf(", %s %d", c.Name, len(c.Before))
	}
	return said
}

func TestWhatStandsAround(t *testing.T) {
	for typed, want := range map[string]string{
		` ‸`:                                `"" open`,
		` po‸`:                              `"po" open`,
		` pour.‸`:                           `"" of pour`,
		` pour.a‸t <= wax.pour_at`:          `"a" of pour`,
		` pour.at ‸`:                        `"" behind`,
		` pour.at <= ‸`:                     `"" open, pour.at <=`,
		` pour.at <= mold.seal.ho‸`:         `"ho" of mold.seal, pour.at <=`,
		` a.b + c.d <= ‸`:                   `"" open, a.b + c.d <=`,
		` a.b <= c.d - ‸`:                   `"" open, c.d -`,
		` a.b <= c.d && e.‸`:                `"" of e, &&`,
		` !‸`:                               `"" open, !`,
		` a.b == "x‸`:                       `"x" in quotes, a.b ==`,
		` a.b == "x" ‸`:                     `"" behind, a.b ==`,
		` (a.b == "x‸y")`:                   `"x" in quotes, a.b ==`,
		` includes(a.b, "‸`:                 `"" in quotes, includes 1`,
		` least(a.b, ‸`:                     `"" open, least 1`,
		` least(a.b, abs(‸`:                 `"" open, least 1, abs 0`,
		` least(a.b, c.d).‸`:                `"" of least(a.b, c.d)`,
		` amount("10 °F‸`:                   `"10 °F" in quotes, amount 0`,
		` "${show(a.‸`:                      `"" of a, show 0`,
		` "${show(a.b)} and ‸`:              `"${show(a.b)} and " in quotes`,
		` "${a.b ? "x" : "‸`:                `"" in quotes, :`,
		" (a.b <=\n    c.‸":                 `"" of c, a.b <=`,
		" least(a.b,\n  level = ‸":          "left",
		" least(a.b,\n  option \"x\" {‸":    "left",
		" a.b\n  ‸":                         "left",
		" a.b # c.‸":                        `"" behind`,
		" a.b == \"x\n‸":                    "left",
		" a.b }\n‸":                         "left",
		" <<EOT\n text ${a.‸":               `"" of a`,
		" 3.‸":                              `"" of 3`,
		" 3 ‸":                              `"" behind`,
		` a.b == "x" && "°" != "y" || c.d‸`: `"d" of c, ||`,
	} {
		assert.Equal(t, want, spotIn(typed), "%q", typed)
	}
}

// Every beginning of what can be typed, and every place in it.
func TestAroundEveryPlace(t *testing.T) {
	d := DraftOf(lint.NewShop(".", nil), nil)
	for _, source := range []string{
		`pour.at <= least(mold.seal.holds_to, amount("180 °F")).low - option.in_hand && includes(wax.suits, "pillar") || !(3 / 2 > 1.5)`,
		`"a ${show(pour.at)} °F ${a ? "b ${c.d}" : "e"} %{ if x } $${y}"`,
		"<<-EOT\n  a ${show(pour.at)}\n  EOT\n",
		`[for a in b : a.c[0].*.d] == { a = 1 }`,
		`)))]]]}}}"${"${"${`,
		"\"\x00\xff${\xc2", "°.°(°", "a.b.c.d.(.).e",
	} {
		for at := 0; at <= len(source); at++ {
			s, ok := Around(source, 0, int32(at))
			if ok {
				require.True(t, 0 <= s.Word.Start && s.Word.Start <= s.Word.End && int(s.Word.End) <= at, "%q at %d: %v", source, at, s.Word)
			}
			text := "rule \"a\" {\n  require = " + source[:at] + "\n}\n"
			for _, b := range schema.Read("a.candle.hcl", []byte(text)).Blocks {
				v := b.Get("require")
				if v.Absent() {
					continue
				}
				for place := v.Span().Start; place <= v.Span().End; place++ {
					if p, ok := d.PartAt(v, place); ok {
						require.True(t, p.Span.Touches(place), "%q at %d: %v", text, place, p.Span)
					}
				}
				for _, m := range Mentions(v) {
					require.True(t, v.Span().Contains(m.Span), "%q: %v", text, m.Span)
				}
			}
		}
	}
}

// A text is a key where it is held against one.
func TestMentions(t *testing.T) {
	for source, want := range map[string][]string{
		`mold.seal.key == "wick-putty"`:               {`seal "wick-putty"`},
		`"wick-putty" != mold.seal.key`:               {`seal "wick-putty"`},
		`recipe.key == "tide" && wax.key != "north"`:  {`recipe "tide"`, `wax "north"`},
		`mold.seal.title == "wick-putty"`:             nil,
		`mold.seal.kind == "putty"`:                   nil,
		`"wick-putty" == mold.seal.holds_to`:          nil,
		`pour.at <= option.in_hand`:                   {"option in_hand"},
		`pour.at <= option.in_hand - option.`:         {"option in_hand"}, // half typed
		`"${show(option.in_hand)} ${option.spare}"`:   {"option in_hand", "option spare"},
		`count("step", "cure") > 1`:                   nil,
		`(wax.key) == "north"`:                        {`wax "north"`},
		`wax.key == (true ? "north" : "south")`:       nil,
		`wax.key == "north${option.x}"`:               {"option x"},
		`includes(recipe.markets, "us")`:              nil,
		`wax.key == "North"`:                          nil, // no key
		`wax.key == "north" && "plug" == seal.key`:    {`wax "north"`, `seal "plug"`},
		`"plug" == container.seal.key || batch.total`: {`seal "plug"`},
	} {
		text := ruleOf(source)
		v := schema.Read("a.candle.hcl", []byte(text)).Blocks[0].Get("require")
		var got []string
		for _, m := range Mentions(v) {
			got = append(got, strings.Join(m.Kinds, ",")+" "+text[m.Span.Start:m.Span.End])
		}
		assert.ElementsMatch(t, want, got, source)
	}
}

// A set that puts another item of the shelves in its place names it by its key.
func TestMentionInASet(t *testing.T) {
	text := ruleText("a", `"mold"`, "mold.count > 1", "  set \"another wick\" {\n    what = mold.wick\n    to   = \"flat-braid-30\"\n  }\n")
	for b := range schema.Read("a.candle.hcl", []byte(text)).Blocks[0].Each("set") {
		got := Mentions(b.Get("to"))
		require.Len(t, got, 1)
		assert.Equal(t, []string{"wick"}, got[0].Kinds)
		assert.Equal(t, `"flat-braid-30"`, text[got[0].Span.Start:got[0].Span.End])
	}
}
