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

// ofEachKind is a rule with an option of each kind.
const ofEachKind = `rule "tried" {
  title   = "A rule"
  about   = "pour"
  when    = option.strict && wax.family != option.family && pour.number >= option.from
  require = pour.at <= amount("190 °F") - option.in_hand - option.more || wax.weight > option.most || fragrance.of_wax > option.load
  message = "${show(option.in_hand)} and ${show(option.more)}"
  set "as it should be" {
    what = recipe.makes
    to   = option.makes
  }
  option "strict" {
    is = true
  }
  option "family" {
    is = "gel"
  }
  option "makes" {
    is = "pillar"
  }
  option "from" {
    is = 1
  }
  option "in_hand" {
    is    = degrees("10 °F")
    title = "What we keep in hand"
  }
  option "more" {
    is = option.in_hand * 2
  }
  option "most" {
    is = amount("20 kg")
  }
  option "load" {
    is = amount("5 % of wax")
  }
  option "window" {
    is = amount("170 to 180 °F")
  }
  option "share" {
    is = 10 / option.from
  }
}
`

// tunedShop is the demo shop with that rule, and what stands in a tune of it.
func tunedShop(t *testing.T, tune string) *lint.Shop {
	require.Empty(t, compileWritten(ofEachKind).problems)
	return demo(t).With(
		schema.Read("rules/tried.candle.hcl", []byte(ofEachKind)),
		schema.Read(lint.ShopFileName, []byte("shop \"quay\" {\n  tune \"tried\" {\n"+tune+"\n  }\n}\n")),
	)
}

// Each is what stands in a tune, what is said of it at which characters, and
// the characters as the first fix leaves them.
func TestWhatIsSaidOfATune(t *testing.T) {
	set := func(name, is string) string { return fmt.Sprintf("    option %q {\n      is = %s\n    }", name, is) }
	for _, c := range []struct{ tune, message, at, mended string }{
		{set("in_hnd", `"5 °F"`), "tried has no option in_hnd; the nearest is in_hand", `"in_hnd"`, `"in_hand"`},
		{set("colors", `"5 °F"`), "tried has no option colors; known are strict, family, makes, from, in_hand, more, most and 3 more", `"colors"`, ""},
		{set("in_hand", `"5 g"`), `in_hand is a temperature difference: "5 g" is a weight; what belongs here is a temperature difference, for instance "10 °F" or "5 °C"`, `"5 g"`, ""},
		{set("most", `"5 °F"`), `most is a weight: "5 °F" is a temperature; what belongs here is a weight, for instance "36 oz" or "1.13 kg"`, `"5 °F"`, ""},
		{set("load", `"5 % of total"`), `load is a proportion of wax, and "5 % of total" is a proportion of total`, `"5 % of total"`, ""},
		{set("in_hand", `"5 to 6 °F"`), `in_hand is one figure, and "5 to 6 °F" is a range`, `"5 to 6 °F"`, ""},
		{set("in_hand", `5`), "in_hand is a temperature difference, and 5 is none: write it in quotes, with its unit", "5", ""},
		{set("in_hand", `true`), "in_hand is a temperature difference, and true is none: write it in quotes, with its unit", "true", ""},
		{set("in_hand", `"5"`), `in_hand is a temperature difference: 5 needs its unit: write "5 °F" or "5 °C"`, `"5"`, ""},
		{set("strict", `"true"`), `strict is yes or no, and "true" is none: write it without quotes`, `"true"`, "true"},
		{set("strict", `"yes"`), `strict is yes or no, and "yes" is none: write true or false`, `"yes"`, ""},
		{set("strict", `1`), "strict is yes or no, and 1 is none: write true or false", "1", ""},
		{set("from", `"2"`), `from is a number, and "2" is none: write it without quotes`, `"2"`, "2"},
		{set("from", `"2 g"`), `from is a number, and "2 g" is none: write a number, such as 1`, `"2 g"`, ""},
		{set("from", `0`), "with this tried cannot be read, and goes on as it is written: this cannot be reckoned: it divides by nothing", "0", ""},
		{set("family", `3`), "family is a text, and 3 is none: write it in quotes", "3", `"3"`},
		{set("family", `"parafin"`), `with this tried cannot be read, and goes on as it is written: option.family is "parafin", which is not among what this can be; the nearest is "paraffin"`, `"parafin"`, `"paraffin"`},
		{set("makes", `"nothing"`), `with this tried cannot be read, and goes on as it is written: "nothing" is not among what it can be; known are "pillar", "jar", "tealight", "votive", "taper", "melt"`, `"nothing"`, ""},
		{set("in_hand", `"5 °F"`) + "\n" + set("in_hand", `"6 °F"`), "there is already an option in_hand in this tune, and the first one counts", `"in_hand"`, ""},
		{`    reason = "why"`, "this tune of tried changes nothing: it has neither a level nor an option", `tune "tried"`, ""},
		{set("in_hand", `"5 °C"`) + "\n" + set("strict", "false") + "\n" + set("family", `"soy"`) + "\n" + set("from", "2.5") + "\n" + set("window", `"160 °F"`) + "\n" + set("load", `"6 % of wax"`), "", "", ""},
		{`    level = "must"`, "", "", ""},
		{`    in_hand = "5 °F"`, "", "", ""},              // told as what a tune does not have
		{"    option \"in_hand\" {\n    }", "", "", ""},   // told as missing
		{set("in_hand", `degrees("5 °F")`), "", "", ""},   // told as no plain value
		{"    option {\n      is = 5\n    }", "", "", ""}, // told as a label that is missing
	} {
		t.Run(strings.Join(strings.Fields(c.tune), " "), func(t *testing.T) {
			shop := tunedShop(t, c.tune)
			found := lint.RunFile(shop, []*lint.Rule{TuneWithoutEffect}, today, lint.ShopFileName).Findings
			if c.message == "" {
				require.Empty(t, found)
				return
			}
			require.Len(t, found, 1)
			f := &found[0]
			assert.Equal(t, c.message, f.Message)
			text := f.At.File.Text.Slice(f.At.Span)
			assert.Equal(t, c.at, text)
			if strings.Count(c.tune, "in_hand") > 1 {
				fixes := f.Repairs()
				require.Len(t, fixes, 1)
				mended, err := schema.Apply(f.At.File.Text.String(), fixes[0].Edits)
				require.NoError(t, err)
				assert.Contains(t, mended, "5 °F")
				assert.NotContains(t, mended, "6 °F")
				return
			}
			if c.mended == "" {
				assert.Empty(t, f.Repairs())
				return
			}
			fixes := f.Repairs()
			require.Len(t, fixes, 1)
			mended, err := schema.Apply(f.At.File.Text.String(), fixes[0].Edits)
			require.NoError(t, err)
			assert.Equal(t, strings.Replace(f.At.File.Text.String(), text, c.mended, 1), mended)
			again := shop.With(schema.Read(lint.ShopFileName, []byte(mended)))
			if c.mended != `"3"` { // which is a text, and no family
				assert.Empty(t, lint.RunFile(again, []*lint.Rule{TuneWithoutEffect}, today, lint.ShopFileName).Findings)
			}
		})
	}
}

// What an option is here, also of one that is made of another.
func TestOptionsOfAShop(t *testing.T) {
	lines := func(shop *lint.Shop) (all []string) {
		for _, o := range OptionsOf(shop, shop.Find("rule", "tried")) {
			all = append(all, o.Name+", "+o.Type.String()+": "+o.String()+" "+o.Literal())
		}
		return all
	}
	asWritten := []string{
		"strict, yes or no: yes true", `family, a text: gel "gel"`, `makes, a text: pillar "pillar"`, "from, a number: 1 1",
		`in_hand, a temperature difference: What we keep in hand: 10 °F "10 °F"`, `more, a temperature difference: 20 °F "20 °F"`,
		`most, a weight: 20 kg "20 kg"`, `load, a proportion of wax: 5 % of wax "5 % of wax"`, `window, a temperature: 170 to 180 °F "170 to 180 °F"`, "share, a number: 10 10",
	}
	assert.Equal(t, asWritten, lines(tunedShop(t, "")))
	here := lines(tunedShop(t, `    option "in_hand" { is = "5 °C" }
    option "strict" { is = false }
    option "from" { is = 4 }
    option "family" { is = "gel" }
    option "window" { is = "1 g" }`))
	assert.Equal(t, "strict, yes or no: yes; in this shop no true", here[0])
	assert.Equal(t, asWritten[1:3], here[1:3])
	assert.Equal(t, "from, a number: 1; in this shop 4 1", here[3])
	assert.Equal(t, `in_hand, a temperature difference: What we keep in hand: 10 °F; in this shop 5 °C "10 °F"`, here[4])
	assert.Equal(t, `more, a temperature difference: 20 °F; in this shop 18 °F "20 °F"`, here[5]) // 5 °C are 9 °F (NIST SP 811, B.8)
	assert.Equal(t, asWritten[6:9], here[6:9])
	assert.Equal(t, "share, a number: 10; in this shop 2.5 10", here[9])
}

// The rules of the program have no options, nor does a shop's rule of such a
// name give them any.
func TestATuneOfARuleOfTheProgram(t *testing.T) {
	for _, more := range []string{"", strings.Replace(ofEachKind, `"tried"`, `"rule-untested"`, 1)} {
		shop := demo(t).With(schema.Read(lint.ShopFileName, []byte("shop \"quay\" {\n  tune \"rule-untested\" {\n    option \"in_hand\" {\n      is = \"5 °F\"\n    }\n  }\n}\n")),
			schema.Read("rules/tried.candle.hcl", []byte(more)))
		found := lint.RunFile(shop, Rules(), today, lint.ShopFileName).Findings
		require.Len(t, found, 1)
		assert.Equal(t, "rule-untested has no options: only rules of the shop's own have", found[0].Message)
		assert.Equal(t, `"in_hand"`, found[0].At.File.Text.Slice(found[0].At.Span))
	}
}
