package lsp

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// LSP 3.17, Semantic Tokens: "Predefined token types" and "modifiers".
var (
	standardTypes = strings.Fields(`namespace type class enum interface struct typeParameter parameter variable property enumMember event
		function method macro keyword modifier comment string number regexp operator decorator`)
	standardModifiers = strings.Fields(`declaration definition readonly static deprecated abstract async modification documentation defaultLibrary`)
)

func TestTokenLegendIsStandard(t *testing.T) {
	for _, kind := range tokenLegend.TokenTypes {
		require.Contains(t, standardTypes, kind)
	}
	for _, modifier := range tokenLegend.TokenModifiers {
		require.Contains(t, standardModifiers, modifier)
	}
	require.Len(t, tokenLegend.TokenTypes, int(operatorToken)+1)
}

// decodedTokens reads the five numbers of each token back as the specification
// says (Semantic Tokens, "Integer Encoding for Tokens"): the line and start
// count from the token before, the start only on the same line. Each comes out
// as "text type modifiers".
func decodedTokens(t *testing.T, text *schema.Text, enc encoding, data []uint32) (list []string) {
	require.Zero(t, len(data)%5)
	m := mapper{text, enc}
	var line, start uint32
	end := int32(0)
	for five := range slices.Chunk(data, 5) {
		if five[0] > 0 {
			start = 0
		}
		line, start = line+five[0], start+five[1]
		require.Positive(t, five[2])
		require.Less(t, int(line), text.Lines())
		span := m.span(protocol.Range{Start: protocol.Position{Line: line, Character: start}, End: protocol.Position{Line: line, Character: start + five[2]}})
		require.Equal(t, protocol.Position{Line: line, Character: start + five[2]}, m.position(span.End), "a token reaches over its line")
		require.GreaterOrEqual(t, span.Start, end, "tokens overlap or are out of order")
		end = span.End
		require.Less(t, int(five[3]), len(tokenLegend.TokenTypes))
		require.Less(t, int(five[4]), 1<<len(tokenLegend.TokenModifiers))
		said := text.Slice(span) + "  " + tokenLegend.TokenTypes[five[3]]
		for i, modifier := range tokenLegend.TokenModifiers {
			if five[4]>>i&1 == 1 {
				said += " " + modifier
			}
		}
		list = append(list, said)
	}
	return list
}

// tokensOf asks for the tokens of a text, the whole or a part of it.
func tokensOf(t *testing.T, text, enc string, part *protocol.Range) []string {
	disk := smallShop(map[string]string{"a.candle.hcl": text})
	e := connect(t, disk, "shop", fmt.Sprintf(`{"general": {"positionEncodings": [%q]}}`, enc))
	uri := e.openAll(disk, "a.candle.hcl")[0]
	params := map[string]any{"textDocument": map[string]any{"uri": uri}}
	var tokens protocol.SemanticTokens
	if part == nil {
		e.call("textDocument/semanticTokens/full", params, &tokens)
	} else {
		e.call("textDocument/semanticTokens/range", with(params, "range", part), &tokens)
	}
	return decodedTokens(t, schema.NewText(text), encoding(enc), tokens.Data)
}

const colored = `/* 🕯 two
   lines */
recipe "tide" {
  title    = "🕯 °" // said
  makes    = "pillar"
  markets  = ["US", "EU"]
  floats   = true
  wax "north" {
    weight = "2 lb 8 oz"
  }
  dye "madder" {
    amount = "to shade"
  }
  mold "round" {
    count = 2
    fill  = "12 mm below rim"
  }
  step "melt" {
    to = "180 to 190 °F"
    hold = "soon"
  }
  concession "unused-stock" {
    reason = <<EOT
so it # is
EOT
    until = "2027-03-31"
  }
}
`

var coloredTokens = []string{
	"/* 🕯 two  comment", "   lines */  comment",
	"recipe  keyword", "\"  string", "tide  struct definition", "\"  string",
	"title  property", "\"🕯 °\"  string", "// said  comment",
	"makes  property", "\"  string", "pillar  enumMember", "\"  string",
	"markets  property", "\"  string", "US  enumMember", "\"  string", "\"  string", "EU  enumMember", "\"  string",
	"floats  property", "true  keyword",
	"wax  keyword", "\"  string", "north  class", "\"  string",
	"weight  property", "\"  string", "2  number", "lb  type", "8  number", "oz  type", "\"  string",
	"dye  keyword", "\"  string", "madder  class", "\"  string",
	"amount  property", "\"  string", "to shade  enumMember", "\"  string",
	"mold  keyword", "\"  string", "round  class", "\"  string",
	"count  property", "2  number",
	"fill  property", "\"  string", "12  number", "mm  type", " below rim\"  string",
	"step  keyword", "\"  string", "melt  method", "\"  string",
	"to  property", "\"  string", "180  number", " to   string", "190  number", "°F  type", "\"  string",
	"hold  property", "\"soon\"  string",
	"concession  keyword", "\"  string", "unused-stock  macro defaultLibrary", "\"  string",
	"reason  property", "<<EOT  string", "so it # is  string", "EOT  string",
	"until  property", "\"  string", "2027-03-31  number", "\"  string",
}

func TestTokens(t *testing.T) {
	for _, enc := range []string{"utf-16", "utf-8", "utf-32"} {
		require.Equal(t, coloredTokens, tokensOf(t, colored, enc, nil), enc)
	}
	require.Equal(t, coloredTokens, tokensOf(t, strings.ReplaceAll(colored, "\n", "\r\n"), "utf-16", nil))
}

func TestTokensOfARange(t *testing.T) {
	part := protocol.Range{Start: protocol.Position{Line: 3, Character: 12}, End: protocol.Position{Line: 4, Character: 3}}
	require.Equal(t, []string{"\"🕯 °\"  string", "// said  comment", "makes  property"}, tokensOf(t, colored, "utf-16", &part))
}

func TestTokensOfAShopRule(t *testing.T) {
	text := "rule \"cool\" {\n  require = pour.at <= amount(\"180 °F\") - 2.5 * abs(mold.seal) # why\n  message = \"It is ${show(pour.at)}, $${no} \\\" ${count(\"step\", \"cure\")}.\"\n  rests_on = [\"putty\"]\n}\ntrial \"putty\" {\n  tried = \"clay\"\n}\n"
	require.Equal(t, []string{
		"rule  keyword", "\"  string", "cool  macro definition", "\"  string",
		"require  property", "pour  variable", "at  property", "<=  operator", "amount  function", "\"  string", "180  number", "°F  type", "\"  string",
		"-  operator", "2.5  number", "*  operator", "abs  function", "mold  variable", "seal  property", "# why  comment",
		"message  property", "\"It is   string", "${  operator", "show  function", "pour  variable", "at  property", "}  operator", ", $${no} \\\"   string",
		"${  operator", "count  function", "\"step\"  string", "\"cure\"  string", "}  operator", ".\"  string",
		"rests_on  property", "\"  string", "putty  event", "\"  string",
		"trial  keyword", "\"  string", "putty  event definition", "\"  string",
		"tried  property", "\"  string", "clay  class", "\"  string",
	}, tokensOf(t, text, "utf-16", nil))
}

func TestTokensOfABrokenText(t *testing.T) {
	require.Equal(t, []string{
		"# one  comment", "wax  keyword", "\"  string", "north  class definition", "\"  string", "title  property", "\"North  string", "# two  comment",
	}, tokensOf(t, "# one\nwax \"north\" {\n  title = \"North # no comment\n  # two\n", "utf-16", nil))
	require.Equal(t, []string{"# alone  comment"}, tokensOf(t, strings.Repeat("[", 200)+"\n# alone\n", "utf-16", nil))
}

// Keys of the shelves that an expression says are told as such; an option by
// its name where it is given and where it is asked for.
func TestTokensOfRules(t *testing.T) {
	tokens := tokensOf(t, "rule \"a\" {\n  when = mold.seal.key == \"wick-putty\" && \"°\" != mold.seal.title\n  option \"in_hand\" {\n    is = degrees(\"10 °F\")\n  }\n  require = pour.at <= option.in_hand\n}\n", "utf-16", nil)
	require.Equal(t, []string{
		"rule  keyword", "\"  string", "a  macro definition", "\"  string",
		"when  property", "mold  variable", "seal  property", "key  property", "==  operator", "\"  string", "wick-putty  class", "\"  string", "&&  operator",
		"\"°\"  string", "!=  operator", "mold  variable", "seal  property", "title  property",
		"option  keyword", "\"  string", "in_hand  property definition", "\"  string",
		"is  property", "degrees  function", "\"  string", "10  number", "°F  type", "\"  string",
		"require  property", "pour  variable", "at  property", "<=  operator", "option  variable", "in_hand  property",
	}, tokens)
}
