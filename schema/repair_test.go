package schema

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// twoRecipes is what each half-typed state is made from: a change in the first
// recipe must not touch what stands around it.
const twoRecipes = `recipe "a-pillar" {
  title = "A pillar"
  wax "soy-wax" {
    weight = "40 oz"
  }
  step "melt" { to = "186 °F" }
  step "pour" {
    at = "176 °F"
  }
}

recipe "b-pillar" {
  title = "B pillar"
}
`

// state is a text as it is while someone types, or after a slip: what is
// written in place of what, and all that is said of it, with the characters
// flagged between backquotes.
type state struct {
	name     string
	from, to string
	said     []string
	text     string
}

var halfTyped = states(
	state{name: "closing quote missing", from: "weight = \"40 oz\"", to: "weight = \"40 oz",
		said: []string{"4:14 syntax `\"40 oz`"}},
	state{name: "opening quote missing", from: "weight = \"40 oz\"", to: "weight = 40 oz\"",
		said: []string{"4:14 syntax `40 oz\"`"}},
	state{name: "a quote too many", from: "weight = \"40 oz\"", to: "weight = \"40 \"oz\"",
		said: []string{"4:14 syntax `\"40 \"oz\"`"}},
	state{name: "closing quote missing before a remark", from: "weight = \"40 oz\"", to: "weight = \"40 oz # as usual",
		said: []string{"4:14 syntax `\"40 oz`"}},
	state{name: "template opened", from: "weight = \"40 oz\"", to: "weight = \"${",
		said: []string{"4:14 not-a-literal `\"${`"}},
	state{name: "template opened with a name", from: "weight = \"40 oz\"", to: "weight = \"${x",
		said: []string{"4:14 not-a-literal `\"${x`"}},
	state{name: "directive opened", from: "weight = \"40 oz\"", to: "weight = \"100%{ load\"",
		said: []string{"4:14 not-a-literal `\"100%{ load\"`"}},
	state{name: "template", from: "weight = \"40 oz\"", to: "weight = \"${x}\"",
		said: []string{"4:14 not-a-literal `\"${x}\"`"}},
	state{name: "no value", from: "weight = \"40 oz\"", to: "weight = ",
		said: []string{"4:5 syntax `weight =`"}},
	state{name: "amount without quotes and space", from: "weight = \"40 oz\"", to: "weight = 20g",
		said: []string{"4:14 syntax `20g`"}},
	state{name: "amount without quotes", from: "weight = \"40 oz\"", to: "weight = 40 oz",
		said: []string{"4:14 syntax `40 oz`"}},
	state{name: "compound without quotes", from: "weight = \"40 oz\"", to: "weight = 2 lb 8 oz",
		said: []string{"4:14 syntax `2 lb 8 oz`"}},
	state{name: "another kind without quotes", from: "weight = \"40 oz\"", to: "weight = 200 °F",
		said: []string{"4:14 unit-wrong-kind `200 °F`"}},
	state{name: "percent without quotes", from: "weight = \"40 oz\"", to: "weight = 20 %",
		said: []string{"4:14 unit-wrong-kind `20 %`"}},
	state{name: "curly quotes", from: "weight = \"40 oz\"", to: "weight = “40 oz”",
		said: []string{"4:14 syntax `“40 oz”`"}},
	state{name: "single quotes", from: "weight = \"40 oz\"", to: "weight = '40 oz'",
		said: []string{"4:14 syntax `'40 oz'`"}},
	state{name: "semicolon", from: "weight = \"40 oz\"", to: "weight = \"40 oz\";",
		said: []string{"4:21 syntax `;`"}},
	state{name: "comma", from: "weight = \"40 oz\"", to: "weight = \"40 oz\",",
		said: []string{"4:21 syntax `,`"}},
	state{name: "list not closed", from: "weight = \"40 oz\"", to: "weight = [1, 2",
		said: []string{"4:14 syntax `[1, 2`"}},
	state{name: "call not closed", from: "weight = \"40 oz\"", to: "weight = max(1, ",
		said: []string{"4:14 syntax `max(1`"}},
	state{name: "heredoc not closed", from: "weight = \"40 oz\"", to: "weight = <<EOT",
		said: []string{"4:14 syntax `<<EOT`"}},
	state{name: "name with a dot", from: "weight = \"40 oz\"", to: "weight = wax.",
		said: []string{"4:14 syntax `wax.`"}},
	state{name: "call", from: "weight = \"40 oz\"", to: "weight = max(1, 2)",
		said: []string{"4:14 not-a-literal `max(1, 2)`"}},
	state{name: "sum", from: "weight = \"40 oz\"", to: "weight = 20 - 5",
		said: []string{"4:14 not-a-literal `20 - 5`"}},
	state{name: "minus", from: "weight = \"40 oz\"", to: "weight = -5",
		said: []string{"4:14 unit-missing `-5`"}},
	state{name: "null", from: "weight = \"40 oz\"", to: "weight = null",
		said: []string{"4:14 not-a-literal `null`"}},
	state{name: "object", from: "weight = \"40 oz\"", to: "weight = { a = 1 }",
		said: []string{"4:14 not-a-literal `{ a = 1 }`"}},
	state{name: "brackets", from: "weight = \"40 oz\"", to: "weight = (\"40 oz\")",
		said: []string{"4:14 not-a-literal `(\"40 oz\")`"}},
	state{name: "wrong escape", from: "weight = \"40 oz\"", to: "weight = \"1\\q oz\"",
		said: []string{"4:14 syntax `\"1\\q oz\"`"}},
	state{name: "text behind the quotes", from: "weight = \"40 oz\"", to: "weight = \"40\" oz",
		said: []string{"4:14 syntax `\"40\" oz`"}},
	state{name: "two points in a number", from: "weight = \"40 oz\"", to: "weight = 1.2.3",
		said: []string{"4:14 syntax `1.2.3`"}},
	state{name: "bare number", from: "weight = \"40 oz\"", to: "weight = 40",
		said: []string{"4:14 unit-missing `40`"}},
	state{name: "number in quotes", from: "weight = \"40 oz\"", to: "weight = \"40\"",
		said: []string{"4:15 unit-missing `40`"}},
	state{name: "unknown unit", from: "weight = \"40 oz\"", to: "weight = \"40 ounzes\"",
		said: []string{"4:18 quantity-unreadable `ounzes`"}},
	state{name: "unit behind an escape", from: "weight = \"40 oz\"", to: "weight = \"40\\u0020ounzes\"",
		said: []string{"4:23 quantity-unreadable `ounzes`"}},
	state{name: "range where one amount stands", from: "weight = \"40 oz\"", to: "weight = \"40 to 50 oz\"",
		said: []string{"4:14 quantity-unreadable `\"40 to 50 oz\"`"}},
	state{name: "yes or no for an amount", from: "weight = \"40 oz\"", to: "weight = true",
		said: []string{"4:14 value-wrong-kind `true`"}},
	state{name: "NUL", from: "weight = \"40 oz\"", to: "weight = \"40 oz\x00\"",
		said: []string{"4:20 syntax `\x00`"}},
	state{name: "byte that is no text", from: "weight = \"40 oz\"", to: "weight = \"40 \xff oz\"",
		said: []string{"4:18 syntax `\xff`"}},
	state{name: "second attribute on the line", from: "weight = \"40 oz\"", to: "weight = \"40 oz\" weight = \"41 oz\"",
		said: []string{"4:22 two-on-one-line `weight = \"41 oz\"`", "4:22 attribute-repeated `weight`"}},
	state{name: "attribute twice", from: "weight = \"40 oz\"", to: "weight = \"40 oz\"\n    weight = \"41 oz\"",
		said: []string{"5:5 attribute-repeated `weight`"}},
	state{name: "stray sign", from: "weight = \"40 oz\"", to: "weight = \"40 oz\"\n    @",
		said: []string{"5:5 syntax `@`"}},
	state{name: "half a name", from: "weight = \"40 oz\"", to: "weight = \"40 oz\"\n    wei",
		said: []string{"5:5 syntax `wei`"}},
	state{name: "prose", from: "weight = \"40 oz\"", to: "weight = \"40 oz\"\n    weigh it twice",
		said: []string{"5:5 syntax `weigh it twice`"}},
	state{name: "name misspelt", from: "weight = \"40 oz\"", to: "weight = \"40 oz\"\n    wieght = \"1 oz\"",
		said: []string{"5:5 unknown-attribute `wieght`"}},
	state{name: "colon", from: "weight =", to: "weight:",
		said: []string{"4:11 syntax `:`"}},
	state{name: "no equals sign", from: "weight =", to: "weight",
		said: []string{"4:5 syntax `weight`"}},
	state{name: "name in quotes", from: "weight =", to: "\"weight\" =",
		said: []string{"4:5 syntax `\"weight\"`"}},
	state{name: "no-break space", from: "    weight", to: "\u00a0   weight",
		said: []string{"4:1 syntax `\u00a0`"}},
	state{name: "label without closing quote", from: "\"soy-wax\" {", to: "\"soy-wax {",
		said: []string{"3:7 syntax `\"soy-wax`"}},
	state{name: "label without opening quote", from: "\"soy-wax\" {", to: "soy-wax\" {",
		said: []string{"3:7 syntax `soy-wax\"`"}},
	state{name: "half a label", from: "\"soy-wax\" {", to: "\"soy-wax",
		said: []string{"3:7 syntax `\"soy-wax`"}},
	state{name: "no opening brace", from: "\"soy-wax\" {", to: "\"soy-wax\"",
		said: []string{"3:3 syntax `wax \"soy-wax\"`"}},
	state{name: "opening brace below", from: "\"soy-wax\" {", to: "\"soy-wax\"\n  {",
		said: []string{"3:3 syntax `wax \"soy-wax\"`"}},
	state{name: "bare label", from: "\"soy-wax\" {", to: "soy-wax {",
		said: []string{"3:7 not-a-literal `soy-wax`"}},
	state{name: "bare words for a label", from: "\"soy-wax\" {", to: "soy 2 wax {",
		said: []string{"3:7 not-a-literal `soy 2 wax`"}},
	state{name: "curly label", from: "\"soy-wax\" {", to: "“soy-wax” {",
		said: []string{"3:7 syntax `“soy-wax”`"}},
	state{name: "two labels", from: "\"soy-wax\" {", to: "\"soy-wax\" \"b\" {",
		said: []string{"3:7 key-form `\"soy-wax\" \"b\"`"}},
	state{name: "no label", from: "\"soy-wax\" {", to: "{",
		said: []string{"3:3 key-form `wax`"}},
	state{name: "block name in quotes", from: "wax \"soy-wax\" {", to: "\"wax\" \"soy-wax\" {",
		said: []string{"3:3 syntax `\"wax\"`"}},
	state{name: "inner brace missing", from: "oz\"\n  }", to: "oz\"",
		said: []string{"3:3 syntax `wax \"soy-wax\"`"}},
	state{name: "last brace missing", from: "°F\"\n  }\n}", to: "°F\"\n  }",
		said: []string{"1:1 syntax `recipe \"a-pillar\"`"}},
	state{name: "step brace missing", from: "°F\"\n  }\n}", to: "°F\"\n}",
		said: []string{"7:3 syntax `step \"pour\"`"}},
	state{name: "two braces missing", from: "°F\"\n  }\n}", to: "°F\"",
		said: []string{"1:1 syntax `recipe \"a-pillar\"`", "7:3 syntax `step \"pour\"`"}},
	state{name: "brace too many", from: "°F\"\n  }\n}", to: "°F\"\n  }\n  }\n}",
		said: []string{"10:3 syntax `}`"}},
	state{name: "inner brace too many", from: "oz\"\n  }", to: "oz\"\n  }\n  }",
		said: []string{"6:3 syntax `}`"}},
	state{name: "brace too many on a line", from: "weight = \"40 oz\"", to: "weight = \"40 oz\" }",
		said: []string{"4:22 syntax `}`"}},
	state{name: "half a step", from: "oz\"\n  }", to: "oz\"\n  }\n  step \"add dye\"",
		said: []string{"6:3 syntax `step \"add dye\"`"}},
	state{name: "half a word", from: "oz\"\n  }", to: "oz\"\n  }\n  ste",
		said: []string{"6:3 syntax `ste`"}},
	state{name: "step begun", from: "oz\"\n  }", to: "oz\"\n  }\n  step \"add dye\" {",
		said: []string{"6:3 syntax `step \"add dye\"`"}},
	state{name: "comma in one line", from: "{ to = \"186 °F\" }", to: "{ to = \"186 °F\", hold = \"2 min\" }",
		said: []string{"6:32 two-on-one-line `hold = \"2 min\"`"}},
	state{name: "two in one line", from: "{ to = \"186 °F\" }", to: "{ to = \"186 °F\" hold = \"2 min\" }",
		said: []string{"6:31 two-on-one-line `hold = \"2 min\"`"}},
	state{name: "three in one line", from: "{ to = \"186 °F\" }", to: "{ to = \"186 °F\"; hold = \"2 min\"; over = \"water bath\" }",
		said: []string{"6:32 two-on-one-line `hold = \"2 min\"`"}},
	state{name: "no quotes in one line", from: "{ to = \"186 °F\" }", to: "{ to = 186 °F }",
		said: []string{"6:22 syntax `186 °F`"}},
	state{name: "closing quote missing in one line", from: "{ to = \"186 °F\" }", to: "{ to = \"186 °F }",
		said: []string{"6:22 syntax `\"186 °F`"}},
	state{name: "no value in one line", from: "{ to = \"186 °F\" }", to: "{ to = }",
		said: []string{"6:17 syntax `to =`"}},
	state{name: "name alone in one line", from: "{ to = \"186 °F\" }", to: "{ to }",
		said: []string{"6:17 syntax `to`"}},
	state{name: "one line not closed", from: "{ to = \"186 °F\" }", to: "{ to = \"186 °F\"",
		said: []string{"6:3 syntax `step \"melt\"`"}},
	state{name: "first line too high", from: "{ to = \"186 °F\" }", to: "{ to = \"186 °F\"\n    hold = \"2 min\"\n  }",
		said: []string{"6:17 two-on-one-line `to = \"186 °F\"`"}},
	state{name: "two blocks on a line", from: "{ to = \"186 °F\" }", to: "{ to = \"186 °F\" } step \"cool\" { for = \"1 h\" }",
		said: []string{"6:33 two-on-one-line `step \"cool\" { for = \"1 h\" }`"}},
	state{name: "comment not closed", from: "  wax \"soy", to: "  /* note\n  wax \"soy",
		said: []string{"3:3 syntax `/*`"}},
	state{name: "bare words", from: "\"A pillar\"", to: "A pillar",
		said: []string{"2:11 not-a-literal `A pillar`"}},
	state{name: "step misspelt", from: "step \"melt\"", to: "step \"mlet\"",
		said: []string{"6:8 unknown-step `\"mlet\"`"}},
	state{name: "bare step", from: "step \"melt\"", to: "step melt",
		said: []string{"6:8 not-a-literal `melt`"}},
	state{name: "block misspelt", from: "recipe \"a", to: "recipy \"a",
		said: []string{"1:1 unknown-block `recipy`"}},
)

func states(list ...state) []state {
	for i, s := range list {
		if !strings.Contains(twoRecipes, s.from) {
			panic(s.name + " changes nothing")
		}
		list[i].text = strings.Replace(twoRecipes, s.from, s.to, 1)
	}
	return list
}

func TestHalfTypedStates(t *testing.T) {
	for _, s := range halfTyped {
		t.Run(s.name, func(t *testing.T) {
			f := read(s.text)
			assertSound(t, f)
			var said []string
			for _, p := range f.Problems {
				line, column := f.Text.Position(p.Span.Start)
				said = append(said, fmt.Sprintf("%d:%d %s `%s`", line, column, p.Rule, f.Text.Slice(p.Span)))
			}
			assert.ElementsMatch(t, s.said, said, says(f))

			// What stands around the slip is read.
			require.Len(t, f.Blocks, 2)
			assert.Equal(t, "B pillar", f.Blocks[1].Title())
			first := f.Blocks[0]
			assert.Equal(t, "recipe", first.Name())
			assert.Equal(t, "a-pillar", first.Label)
			if s.name != "bare words" {
				assert.Equal(t, "A pillar", first.Get("title").Text())
			}
			assert.Equal(t, "176 °F", find(t, f, "step", "pour").Get("at").Amount().String())
			melt := find(t, f, "step", "melt").Get("to")
			assert.Equal(t, !strings.Contains(s.to, "to =") || strings.Contains(s.to, `"186 °F"`) || s.name == "no value in one line", !melt.Broken() || s.name == "no value in one line")
		})
	}
}

// Every fix that is called safe leaves a text with fewer problems, and one
// that changes nothing but what it is about.
func TestSafeFixesOfHalfTypedStates(t *testing.T) {
	fixed := 0
	for _, s := range halfTyped {
		f := read(s.text)
		for _, p := range f.Problems {
			for _, fix := range p.Fixes {
				if !fix.Safe {
					continue
				}
				fixed++
				out, err := Apply(s.text, fix.Edits)
				require.NoError(t, err, s.name)
				g := read(out)
				assert.Less(t, len(g.Problems), len(f.Problems), "%s: %s\n%s\n%s", s.name, fix.Title, out, says(g))
			}
		}
	}
	assert.Greater(t, fixed, 30)
}

// In a rule's expressions a slip is told once, and the rest of the rule and of
// the file is read.
func TestHalfTypedExpressions(t *testing.T) {
	const good = `pour.at <= mold.seal.holds_to - degrees("10 °F")`
	for _, slip := range []string{"pour.at <= ", "pour.at <= mold.", "(pour.at <= 5", `pour.at <= degrees("10 °F)`, "pour.at =< mold.x", "pour.at <= 10 °F", "",
		`"${show(pour.at)`, "[1, 2", "max(1, ", "a ? b", "a &&", "<<EOT"} {
		f := read(strings.Replace(sample, good, slip, 1))
		assertSound(t, f)
		require.Len(t, f.Problems, 1, "%s\n%s", slip, says(f))
		assert.Equal(t, ruleSyntax, f.Problems[0].Rule, slip)
		rule := f.Blocks[2]
		assert.True(t, rule.Get("require").Broken(), slip)
		assert.Equal(t, "mold", rule.Get("about").Text(), slip)
		assert.Equal(t, `"The pour is ${show(pour.at)}."`, rule.Get("message").Text(), slip)
		assert.Equal(t, "Cool", find(t, f, "recipe", "cool-pour").Title(), slip)
		assert.Same(t, rule, f.Problems[0].Block, slip)
	}
}
