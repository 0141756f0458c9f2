package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// mark is where the cursor stands in a text of these tests.
const mark = "‸"

// exampleShop is the demo shop, read once.
var exampleShop = sync.OnceValue(func() *lint.Shop {
	shop, errs := lint.Load(examples.Shop(), "shop", nil)
	if len(errs) > 0 {
		panic(errs[0])
	}
	return shop
})

var everyRule = sync.OnceValue(rules.All)

// lookingAt is a file laid over the demo shop, as a client sees it that can do
// what the capabilities say.
func lookingAt(t testing.TB, capabilities, name, text string) *here {
	t.Helper()
	var can client
	require.NoError(t, json.Unmarshal([]byte(capabilities), &can))
	all := everyRule()
	f := schema.Read(name, []byte(text))
	shop := exampleShop().With(f)
	s := &snapshot{enc: utf16, can: &can, today: today, rules: func(*lint.Shop) []*lint.Rule { return all },
		shops: map[string]*lint.Shop{"shop": shop}, docs: map[string]opened{}}
	return s.of(shop, f)
}

// completing is what is offered at the mark in a text, and the text without it.
func completing(t testing.TB, name, marked string) (*here, string, []completionItem) {
	t.Helper()
	text := strings.Replace(marked, mark, "", 1)
	require.NotEqual(t, text, marked, "no mark")
	h := lookingAt(t, able, name, text)
	return h, text, h.completion(int32(strings.Index(marked, mark))).Items
}

// afterTaking is a text after an item has been taken, the places of its snippet
// left empty or at their first choice.
func afterTaking(t testing.TB, h *here, text string, item completionItem) string {
	t.Helper()
	edit, ok := item.TextEdit.(protocol.TextEdit)
	require.True(t, ok)
	span := h.span(edit.Range)
	require.True(t, span.Start <= span.End && int(span.End) <= len(text), "%v is outside the text", span)
	return text[:span.Start] + filledIn(item) + text[span.End:]
}

func filledIn(item completionItem) string {
	text := item.TextEdit.(protocol.TextEdit).NewText
	if item.InsertTextFormat == nil || *item.InsertTextFormat != protocol.InsertTextFormatSnippet {
		return text
	}
	text = withDefault.ReplaceAllString(text, "$1")
	text = withChoice.ReplaceAllString(text, "$1")
	return tabStop.ReplaceAllString(text, "")
}

var (
	withDefault = regexp.MustCompile(`\$\{\d+:([^}]*)\}`)
	withChoice  = regexp.MustCompile(`\$\{\d+\|([^,|]*)[^}]*\}`)
	tabStop     = regexp.MustCompile(`\$\d+`)
)

func labelsOf(items []completionItem) []string {
	labels := make([]string, len(items))
	for i, item := range items {
		labels[i] = item.Label
	}
	return labels
}

func whyOf(item completionItem) string {
	if item.LabelDetails == nil {
		return ""
	}
	return item.LabelDetails.Description
}

// Each case is a change to a file of the demo shop, with a mark where the
// cursor stands, the items that come first, and the changed place after the
// first has been taken.
func TestCompletionPlaces(t *testing.T) {
	cases := []struct {
		about, file, from, to string
		first                 []string
		after                 string
	}{
		{"a wick by its width", "recipes/tide-pillar", `wick  = "flat-braid-24"`, `wick  = "‸"`, []string{"flat-braid-24"}, `wick  = "flat-braid-24"`},
		{"a wick, half typed", "recipes/tide-pillar", `wick  = "flat-braid-24"`, `wick  = "fl‸at"`, []string{"flat-braid-24"}, `wick  = "flat-braid-24"`},
		{"a wick, the quote open", "recipes/harbor-jar", `wick  = "cored-cotton-44"`, `wick  = "co‸`, []string{"cored-cotton-44"}, `wick  = "cored-cotton-44"`},
		{"a wick, no quote yet", "recipes/harbor-jar", `wick  = "cored-cotton-44"`, `wick  = ‸`, []string{"cored-cotton-44"}, `wick  = "cored-cotton-44"`},
		{"a wick, a word without quotes", "recipes/harbor-jar", `wick  = "cored-cotton-44"`, `wick  = cored‸`, []string{"cored-cotton-44"}, `wick  = "cored-cotton-44"`},
		{"three wicks share a bowl", "recipes/three-bells-bowl", `wick         = "cored-paper-36"`, `wick = "‸"`, []string{"cored-cotton-44", "wooden-half-inch", "cored-paper-36"}, `wick = "cored-cotton-44"`},
		{"a wax", "recipes/tide-pillar", `wax "northlight-pillar" {`, `wax "‸" {`, []string{"northlight-pillar", "quay-votive"}, `wax "northlight-pillar" {`},
		{"a wax, the quote open", "recipes/tide-pillar", `wax "northlight-pillar" {`, `wax "north‸ {`, []string{"northlight-pillar"}, `wax "northlight-pillar" {`},
		{"a wax, no quote yet", "recipes/tide-pillar", `wax "northlight-pillar" {`, `wax ‸ {`, []string{"northlight-pillar"}, `wax "northlight-pillar" {`},
		{"a seal with most in hand", "recipes/tide-pillar", `with = "rubber-plug"`, `with = "‸"`, []string{"rubber-plug", "foil-tape"}, `with = "rubber-plug"`},
		{"a seal in a list", "recipes/tide-pillar", `with = "rubber-plug"`, `with = ["rubber-plug", "‸"]`, []string{"foil-tape"}, `with = ["rubber-plug", "foil-tape"]`},
		{"the first of a list, its quote open", "recipes/tide-pillar", `with = "rubber-plug"`, `with = ["‸, "rubber-plug"]`, []string{"foil-tape"}, `with = ["foil-tape", "rubber-plug"]`},
		{"what holds a tab", "recipes/harbor-jar", `with = "tab-sticker"`, `with = "‸"`, []string{"tab-sticker"}, `with = "tab-sticker"`},
		{"a dye of this recipe", "recipes/tide-pillar", `dye = "madder"`, `dye = "‸`, []string{"madder"}, `dye = "madder"`},
		{"a pot that holds it", "recipes/harbor-jar", `pot      = "pitcher-4"`, `pot      = "‸"`, []string{"pitcher-4"}, `pot      = "pitcher-4"`},
		{"a unit", "recipes/tide-pillar", `at   = "183 °F"`, `at   = "183 ‸"`, []string{"°F", "°C"}, `at   = "183 °F"`},
		{"a unit behind the digits", "recipes/tide-pillar", `at   = "183 °F"`, `at   = "183‸"`, []string{"183 °F", "183 °C"}, `at   = "183 °F"`},
		{"a unit in place of another", "recipes/tide-pillar", `at   = "183 °F"`, `at   = "183 °‸C"`, []string{"°F", "°C"}, `at   = "183 °F"`},
		{"a unit in a range", "recipes/tide-pillar", `at   = "183 °F"`, `at   = "175 ‸ to 183 °F"`, []string{"°F", "°C"}, `at   = "175 °F to 183 °F"`},
		{"a number without quotes", "recipes/tide-pillar", `at   = "183 °F"`, `at   = 183‸`, []string{"183 °F", "183 °C"}, `at   = "183 °F"`},
		{"what a load is of", "recipes/tide-pillar", `load = "5 % of wax"`, `load = "5 %‸`, []string{"% of wax", "% of total", "oz per lb", "g per kg"}, `load = "5 % of wax"`},
		{"what a load is of, half typed", "recipes/tide-pillar", `load = "5 % of wax"`, `load = "5 % of ‸wax"`, []string{"% of wax", "% of total"}, `load = "5 % of wax"`},
		{"a fill", "recipes/harbor-jar", `fill  = "250 mL"`, `fill  = "12 ‸"`, []string{"in", "in below rim"}, `fill  = "12 in"`},
		{"the supplier's own range", "recipes/tide-pillar", `at   = "183 °F"`, `at   = "‸"`, []string{"175 to 188 °F"}, `at   = "175 to 188 °F"`},
		{"by eye", "recipes/harbor-jar", `amount = "1 piece"`, `amount = "‸`, []string{"to shade"}, `amount = "to shade"`},
		{"counted", "recipes/harbor-jar", `amount = "1 piece"`, `amount = "3 ‸"`, []string{"drops", "chips", "pieces", "blocks"}, `amount = "3 drops"`},
		{"whom it is for", "recipes/harbor-jar", `made_for = "sale"`, `made_for = "‸"`, []string{"sale", "own use", "class"}, `made_for = "sale"`},
		{"what the vessel is for", "recipes/harbor-jar", `makes    = "jar"`, `makes = "‸`, []string{"jar"}, `makes = "jar"`},
		{"markets, no list yet", "recipes/harbor-jar", `markets  = ["US"]`, `markets = ‸`, []string{"US", "EU", "UK"}, `markets = ["US"]`},
		{"another market", "recipes/harbor-jar", `markets  = ["US"]`, `markets = ["US", ‸]`, []string{"EU", "UK"}, `markets = ["US", "EU"]`},
		{"today", "recipes/harbor-jar", `test_burn "2026-09-22" {`, `test_burn "2‸" {`, []string{today}, `test_burn "2026-10-04" {`},
		{"the formulation", "recipes/harbor-jar", `formula    = "h9020gk-z45kd8"`, `formula = "‸"`, []string{"h9020gk-z45kd8"}, `formula = "h9020gk-z45kd8"`},
		{"yes or no", "recipes/harbor-jar", `to_end     = false`, `to_end = ‸`, []string{"true", "false"}, `to_end = true`},
		{"cautions still missing", "stock/labels", `"keep away from children"]`, `"‸"]`, []string{"keep away from children"}, `"keep away from children"]`},
		{"a step that is needed", "recipes/tide-pillar", `step "relief holes" {`, `step "‸" {`, []string{"relief holes"}, `step "relief holes" {`},
		{"an attribute", "recipes/tide-pillar", `    weight = "1.24 kg"`, `    w‸`, []string{"weight"}, `    weight = ""`},
		{"an attribute before its =", "recipes/tide-pillar", `    weight = "1.24 kg"`, `    wei‸ = "1.24 kg"`, []string{"weight"}, `    weight = "1.24 kg"`},
		{"in a block of one line", "recipes/tide-pillar", "  step \"unmold\" {\n", "  step \"note\" { ‸ }\n  step \"unmold\" {\n", []string{"say", "vessel", "after", "from_pour"}, `step "note" { say = "" }`},
	}
	for _, c := range cases {
		t.Run(c.about, func(t *testing.T) {
			before := exampleShop().File(c.file + ".candle.hcl").Text.String()
			require.Contains(t, before, c.from)
			h, text, items := completing(t, c.file+".candle.hcl", strings.Replace(before, c.from, c.to, 1))
			require.GreaterOrEqual(t, len(items), len(c.first), "%v", labelsOf(items))
			require.Equal(t, c.first, labelsOf(items)[:len(c.first)])
			after := afterTaking(t, h, text, items[0])
			require.Equal(t, strings.Replace(before, c.from, after[strings.Index(before, c.from):][:len(after)-len(before)+len(c.from)], 1), after, "the rest of the text")
			require.Contains(t, after, c.after)
		})
	}
}

// Places where nothing can be offered: prose, comments, what is whole already,
// what the format does not have.
func TestCompletionOffersNothing(t *testing.T) {
	for _, text := range []string{
		"# a comment ‸",
		"#‸",
		"// ‸",
		"/* ‸ */",
		"/* ‸",
		"recipe \"a\" { # ‸\n}\n",
		"recipe \"a\" {\n  title = \"‸\"\n}\n",
		"recipe \"a\" {\n  title = \"We ‸\n}\n",
		"recipe \"a\" {\n  notes = <<-END\n    step \"‸\n  END\n}\n",
		"recipe \"a\" {\n  notes = <<-END\n    step ‸",
		"recipe \"‸\" {\n}\n",
		"recipe \"a\" ‸{\n}\n",
		"recipe \"a\" {\n  pot = \"b\" ‸\n}\n",
		"recipe \"a\" {\n  pot = \"b\"‸\n}\n",
		"recipe \"a\" {\n  pot = ‸\"b\"\n}\n",
		"recipe \"a\" {\n  ‸ pot = \"b\"\n}\n",
		"recipe \"a\" {\n  floats = \"‸\"\n}\n",
		"recipe \"a\" {\n  pot = [\"‸\"]\n}\n",
		"recipe \"a\" {\n  step \"melt\" { to = \"186 °F\" ‸}\n}\n",
		"recipe \"a\" {\n  step \"melt\" { to = \"186 °F\" } ‸\n}\n",
		"nonsense \"a\" {\n  ‸\n}\n",
		"recipe \"a\" {\n  nonsense {\n    wick = \"‸\"\n  }\n}\n",
		"recipe \"a\" {\n  nonsense = \"‸\"\n}\n",
	} {
		_, _, items := completing(t, "recipes/new.candle.hcl", text)
		require.Empty(t, labelsOf(items), "%q", text)
	}
}

// Texts that stand by themselves: what comes first, and the whole text after
// the first has been taken.
func TestCompletionFromNothing(t *testing.T) {
	cases := []struct{ text, first, after string }{
		{"‸", "wax", "wax \"wax-key\" {\n  title           = \"\"\n"},
		{"recipe \"a\" {\n  wax ‸\n}\n", "clearwater-gel", "recipe \"a\" {\n  wax \"clearwater-gel\" {\n  weight = \"\"\n}\n}\n"},
		{"recipe \"a\" {\n  makes = \"taper\"\n  wax \"‸\n}\n", "clover-beeswax", "recipe \"a\" {\n  makes = \"taper\"\n  wax \"clover-beeswax\" {\n  weight = \"\"\n}\n}\n"},
		{"recipe \"a\" {\n  container \"tumbler-10\" {\n    wi‸", "count", "recipe \"a\" {\n  container \"tumbler-10\" {\n    count = "},
		{"recipe \"a\" {\n  container \"tumbler-10\" {\n    wick = \"‸", "cored-cotton-44", "recipe \"a\" {\n  container \"tumbler-10\" {\n    wick = \"cored-cotton-44\""},
		{"recipe \"a\" {\n  wax \"‸\"\n    weight = \"1 lb\"\n  }\n}\n", "clearwater-gel", "recipe \"a\" {\n  wax \"clearwater-gel\" {\n    weight = \"1 lb\"\n  }\n}\n"},
		{"recipe \"a\" {\n  title = \"A\n  made_for = ‸\n}\n", "sale", "recipe \"a\" {\n  title = \"A\n  made_for = \"sale\"\n}\n"},
		{"recipe \"a\" {\n  step \"melt { to = \"180 °F\" }\n  ma‸\n}\n", "step", "recipe \"a\" {\n  step \"melt { to = \"180 °F\" }\n  step \"\" {\n  \n}\n}\n"},
		{"trial \"a\" {\n  date = \"‸", today, "trial \"a\" {\n  date = \"2026-10-04\""},
		{"test_burn \"2026-10-04\" {\n  recipe  = \"harbor-jar\"\n  formula = \"‸\"\n}\n", "h9020gk-z45kd8", "test_burn \"2026-10-04\" {\n  recipe  = \"harbor-jar\"\n  formula = \"h9020gk-z45kd8\"\n}\n"},
		{"test_burn \"2026-10-04\" {\n  recipe = \"harbor-jar\"\n  vessel = ‸\n}\n", "tumbler-10", "test_burn \"2026-10-04\" {\n  recipe = \"harbor-jar\"\n  vessel = \"tumbler-10\"\n}\n"},
		{"recipe \"a\" {\n  wax \"northlight-pillar\" {\n    weight = \"1 lb\"\n  }\n  mold \"pillar-3x6\" {\n  }\n  step \"seal wick hole\" { with = \"rubber-plug\" }\n  ‸\n}\n", "step \"melt\"", ""},
		{"trial \"a\" {\r\n  tried = \"wick-p‸\"\r\n}\r\n", "clearwater-gel", "trial \"a\" {\r\n  tried = \"clearwater-gel\"\r\n}\r\n"},
		{"test_burn \"2026-10-04\" {\n  recipe = \"‸\"\n}\n", "bosun-tin", "test_burn \"2026-10-04\" {\n  recipe = \"bosun-tin\"\n}\n"},
		{"label \"a\" {\n  markets  = [\"US\"]\n  cautions = [\"🕯\", \"keep away from children\", \"‸\"]\n}\n", "burn within sight", "label \"a\" {\n  markets  = [\"US\"]\n  cautions = [\"🕯\", \"keep away from children\", \"burn within sight\"]\n}\n"},
		{"label \"a\" {\n  markets  = [\"EU\"]\n  cautions = [\n    \"general warning sign\",\n    \"‸\",\n    \"never leave unattended\",\n  ]\n}\n", "keep away from children and pets", "label \"a\" {\n  markets  = [\"EU\"]\n  cautions = [\n    \"general warning sign\",\n    \"keep away from children and pets\",\n    \"never leave unattended\",\n  ]\n}\n"},
		{"wax \"a\" {\n  heat_capacity = \"2.2 ‸\"\n}\n", "kJ/kgK", "wax \"a\" {\n  heat_capacity = \"2.2 kJ/kgK\"\n}\n"},
		{"wax \"a\" {\n  cure = \"1 ‸ 4 h\"\n}\n", "min", "wax \"a\" {\n  cure = \"1 min 4 h\"\n}\n"},
		{"rule \"a\" {\n  rests_on = [\"‸\"]\n  sound {\n    recipe \"b\" {\n    }\n  }\n}\n", "beeswax-color", "rule \"a\" {\n  rests_on = [\"beeswax-color\"]\n  sound {\n    recipe \"b\" {\n    }\n  }\n}\n"},
		{"rule \"a\" {\n  sound {\n    recipe \"b\" {\n      made_for = \"o‸\"\n    }\n  }\n}\n", "sale", "rule \"a\" {\n  sound {\n    recipe \"b\" {\n      made_for = \"sale\"\n    }\n  }\n}\n"},
	}
	for _, c := range cases {
		h, text, items := completing(t, "recipes/new.candle.hcl", c.text)
		if c.first == "" {
			require.Empty(t, items)
			continue
		}
		require.NotEmpty(t, items, "%q", c.text)
		require.Equal(t, c.first, items[0].Label, "%q", c.text)
		after := afterTaking(t, h, text, items[0])
		require.True(t, strings.HasPrefix(after, c.after), "%q gives %q", c.text, after)
	}
}

func TestCompletionOfRuleNames(t *testing.T) {
	over := func(text string) string {
		file := exampleShop().File("recipes/harbor-jar.candle.hcl").Text.String()
		file = strings.Replace(file, `load = "7 % of wax"`, `load = "8.8 % of wax"`, 1)
		return strings.Replace(file, "  test_burn", text+"\n  test_burn", 1)
	}
	_, _, items := completing(t, "recipes/harbor-jar.candle.hcl", over("  concession \"‸\""))
	require.Equal(t, "fragrance-near-limit", items[0].Label)
	require.Equal(t, "speaks on this recipe", whyOf(items[0]))
	labels := labelsOf(items)
	binding := slices.Index(labels, "lead-core")
	require.Greater(t, binding, slices.Index(labels, "dye-by-eye"))
	require.Equal(t, "cannot be conceded in a recipe made for sale", whyOf(items[binding]))
	require.Greater(t, slices.Index(labels, "syntax"), binding)

	_, _, items = completing(t, "recipes/harbor-jar.candle.hcl", over("  concession \"fragrance-near-limit\" {\n    reason = \"a\"\n  }\n  concession \"‸\""))
	require.Equal(t, "named already", whyOf(items[slices.Index(labelsOf(items), "fragrance-near-limit")]))

	_, _, items = completing(t, "shop.candle.hcl", "shop \"a\" {\n  tune \"‸\"\n}\n")
	require.NotContains(t, labelsOf(items)[:10], "lead-core")
	require.Equal(t, "cannot be turned down for what is made for sale", whyOf(items[slices.Index(labelsOf(items), "lead-core")]))
}

// Why an item suits, or does not, in the words the maker reads.
func TestCompletionSaysWhy(t *testing.T) {
	cases := []struct{ file, from, to, label, why string }{
		// One wick in 2.9 in; 16 CFR 1500.17(a)(13) bans lead cores.
		{"recipes/harbor-jar", `wick  = "cored-cotton-44"`, `wick  = "‸"`, "cored-cotton-44", "burns 2.6 to 3.1 in, here 2.9 in across"},
		{"recipes/harbor-jar", `wick  = "cored-cotton-44"`, `wick  = "‸"`, "cored-cotton-28", "too small: burns 1.75 to 2.25 in, not 2.9 in across; not made for paraffin"},
		{"recipes/harbor-jar", `wick  = "cored-cotton-44"`, `wick  = "‸"`, "flat-braid-24", "has no tab to stand on"},
		{"recipes/tide-pillar", `wax "northlight-pillar" {`, `wax "‸" {`, "pierhead-container", "not sold for pillars"},
		{"recipes/tide-pillar", `wax "northlight-pillar" {`, `wax "‸" {`, "frostfield-stearin", "holds 4 % of wax, and 5 % of wax goes in"},
		{"recipes/tide-pillar", `with = "rubber-plug"`, `with = "‸"`, "rubber-plug", "holds to 350 °F (176.7 °C); the hottest pour is 182 °F (83.3 °C)"},
		{"recipes/tide-pillar", `label = "us-base"`, `label = "‸"`, "eu-kelp-jar", "not for the market US; lacks burn within sight"},
		{"recipes/tide-pillar", `mold "pillar-3x6" {`, `mold "‸" {`, "pillar-2x5", "flat-braid-24 burns 2.75 to 3.25 in, not 2 1/4 in"},
		{"recipes/tide-pillar", `step "unmold" {`, `step "‸" {`, "unmold", "still to be done"},
		{"recipes/tide-pillar", `step "unmold" {`, `step "‸" {`, "dip", "there is no taper here"},
		{"stock/labels", `"keep away from children"]`, `"‸"]`, "keep away from children", "required in the US (ASTM F2058)"},
	}
	for _, c := range cases {
		before := exampleShop().File(c.file + ".candle.hcl").Text.String()
		_, _, items := completing(t, c.file+".candle.hcl", strings.Replace(before, c.from, c.to, 1))
		at := slices.Index(labelsOf(items), c.label)
		require.GreaterOrEqual(t, at, 0, c.label)
		require.Equal(t, c.why, whyOf(items[at]), c.label)
	}
}

// A client that can do little gets plain text, and no details beside labels.
func TestCompletionForAPlainClient(t *testing.T) {
	text := "recipe \"a\" {\n  wax \"\"\n  con\n}\n"
	h := lookingAt(t, editing, "recipes/new.candle.hcl", text)
	for _, at := range []int{strings.Index(text, `""`) + 1, strings.Index(text, "con") + 3} {
		items := h.completion(int32(at)).Items
		require.NotEmpty(t, items)
		for _, item := range items {
			require.Nil(t, item.InsertTextFormat)
			require.Nil(t, item.InsertTextMode)
			require.Nil(t, item.LabelDetails)
			require.NotContains(t, item.TextEdit.(protocol.TextEdit).NewText, "$")
		}
	}
	h = lookingAt(t, editing, "recipes/new.candle.hcl", "recipe \"a\" {\n  makes = \"pillar\"\n  wax \"\"\n}\n")
	items := h.completion(int32(strings.Index(h.text.String(), `""`) + 1)).Items
	require.Equal(t, "Clover beeswax, filtered: suits pillars", *items[0].Detail)
}

func TestCompletionOverThePipe(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	require.Equal(t, completionTriggers, e.result.Capabilities.CompletionProvider.TriggerCharacters)
	uri := e.open(tide, string(disk[tide].Data))
	e.replace(uri, `wick  = "flat-braid-24"`, `wick  = "`)
	ask := func(piece string, further int, trigger string) (list completionList) {
		params := e.about(uri, piece, further)
		params["context"] = map[string]any{"triggerKind": 1}
		if trigger != "" {
			params["context"] = map[string]any{"triggerKind": 2, "triggerCharacter": trigger}
		}
		e.call("textDocument/completion", params, &list)
		return list
	}
	list := ask(`wick  = "`, 9, `"`)
	require.Equal(t, "flat-braid-24", list.Items[0].Label)
	require.Nil(t, list.Items[0].Documentation)
	require.False(t, list.IsIncomplete)
	var full completionItem
	e.call("completionItem/resolve", list.Items[0], &full)
	require.Equal(t, list.Items[0].Label, full.Label)
	require.Equal(t, list.Items[0].TextEdit, full.TextEdit)
	doc, ok := full.Documentation.(protocol.MarkupContent)
	if !ok {
		doc.Value = full.Documentation.(map[string]any)["value"].(string)
	}
	require.Equal(t, "Burns 2.75 to 3.25 in, here 3 in across.\n\n```hcl\n"+exampleShop().Find("wick", "flat-braid-24").File.Text.Slice(exampleShop().Find("wick", "flat-braid-24").Span)+"\n```", doc.Value)

	// A space typed for its own sake opens nothing; one in an amount does.
	e.replace(uri, `wick  = "`, `wick  = "flat-braid-24"`)
	require.Empty(t, ask("  step \"unmold\"", 2, " ").Items)
	require.NotNil(t, ask("  step \"unmold\"", 2, " ").Items)
	e.replace(uri, `"183 °F"`, `"183 "`)
	units := ask(`"183 "`, 5, " ")
	require.Equal(t, []string{"°F", "°C"}, labelsOf(units.Items))
	require.True(t, units.IsIncomplete)
	e.replace(uri, `"183 "`, `"183 °F"`)
	e.replace(uri, `step "unmold"`, `step `)
	require.Equal(t, "unmold", ask("step  {", 5, " ").Items[0].Label)
}

func TestResolveEveryKindOfItem(t *testing.T) {
	for text, want := range map[string]string{
		"recipe \"a\" {\n  ma‸\n}\n": "The name people know it by",
		"‸":                          "A wax on the shelf, with its supplier's figures.",
		"label \"a\" {\n  cautions = [\"‸\"]\n}\n": "Keep the burning candle where you can see it.",
		"shop \"a\" {\n  tune \"‸\"\n}\n":          "A load within a twentieth of what the wax holds.",
		"recipe \"a\" {\n  step \"‸\"\n}\n":        "Treats the mold so that the candle comes out.",
		"recipe \"a\" {\n  made_for = \"‸\"\n}\n":  "Who will burn it.",
		"recipe \"a\" {\n  pot = \"‸\"\n}\n":       "```hcl\npot \"dipping-can\" {",
		"test_burn \"2026-10-04\" {\n  ca‸\n}\n":   "The recipe the candle was made from.",
	} {
		h, _, items := completing(t, "recipes/new.candle.hcl", text)
		require.NotEmpty(t, items, text)
		full, err := h.resolveCompletion(context.Background(), &items[0])
		require.NoError(t, err)
		require.NotNil(t, full.Documentation, text)
		require.Contains(t, full.Documentation.(protocol.MarkupContent).Value, want, text)
	}
	item := completionItem{CompletionItem: protocol.CompletionItem{Label: "a", Data: 7}}
	h, _, _ := completing(t, "recipes/new.candle.hcl", mark)
	same, err := h.resolveCompletion(context.Background(), &item)
	require.NoError(t, err)
	require.Equal(t, &item, same)
}

// In a shop of 10,000 recipes an answer is no more work than in a small one.
func TestCompletionInALargeShop(t *testing.T) {
	text := exampleShop().File("recipes/tide-pillar.candle.hcl").Text.String()
	small := lookingAt(t, able, "recipes/tide-pillar.candle.hcl", text)
	files := make([]*schema.File, 10_000)
	for i := range files {
		files[i] = schema.Read(fmt.Sprintf("many/%d.candle.hcl", i), []byte(fmt.Sprintf("recipe \"many-%d\" {\n  wax \"northlight-pillar\" {\n    weight = \"1 lb\"\n  }\n}\n", i)))
	}
	large := small.of(small.shop.With(files...), small.file)
	for _, piece := range []string{`wick  = "`, `wax "`, `step "`, `label = "`, `at   = "`, "title", `with = "`} {
		at := int32(strings.Index(text, piece) + len(piece))
		require.NotEmpty(t, small.completion(at).Items, piece)
		a := testing.AllocsPerRun(3, func() { small.completion(at) })
		b := testing.AllocsPerRun(3, func() { large.completion(at) })
		require.InDelta(t, a, b, a/10+20, piece)
	}
}

// completion is what is offered at an offset.
func (h *here) completion(at int32) completionList { return h.asked(at).answer() }
