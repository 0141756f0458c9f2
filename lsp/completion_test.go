package lsp

import (
	"encoding/json"
	"fmt"
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

// lookingAt is a file laid over the demo shop, as a client sees it that can do
// what the capabilities say.
func lookingAt(t testing.TB, capabilities, name, text string) *here {
	t.Helper()
	var can client
	require.NoError(t, json.Unmarshal([]byte(capabilities), &can))
	all := rules.All()
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

func TestTry(t *testing.T) {
	base := exampleShop().File("recipes/tide-pillar.candle.hcl").Text.String()
	jar := exampleShop().File("recipes/harbor-jar.candle.hcl").Text.String()
	show := func(text, from, to string) {
		require.Contains(t, text, from)
		_, plain, items := completing(t, "recipes/x.candle.hcl", strings.Replace(text, from, to, 1))
		fmt.Printf("\n---- %s (%d)\n", to, len(items))
		for i, item := range items {
			if i == 9 {
				break
			}
			why, detail := "", ""
			if item.LabelDetails != nil {
				why = item.LabelDetails.Description
			}
			if item.Detail != nil {
				detail = *item.Detail
			}
			edit := item.TextEdit.(protocol.TextEdit)
			_ = plain
			fmt.Printf("%-28s| %q %v | %s | %s\n", item.Label, edit.NewText, edit.Range, detail, why)
		}
	}
	show(base, `wick  = "flat-braid-24"`, `wick  = "‸"`)
	show(jar, `wick  = "cored-cotton-44"`, `wick  = "co‸`)
	show(base, `wax "northlight-pillar" {`, `wax "‸" {`)
	show(base, `wax "northlight-pillar" {`, `wax "‸ {`)
	show(base, `at   = "183 °F"`, `at   = "183 ‸"`)
	show(base, `at   = "183 °F"`, `at   = "183‸"`)
	show(base, `at   = "183 °F"`, `at   = "‸`)
	show(base, `"5 % of wax"`, `"5 %‸`)
	show(base, `"5 % of wax"`, `"5 % of ‸wax"`)
	show(base, `  step "unmold"`, "  ‸\n  step \"unmold\"")
	show(base, `  step "unmold"`, "  step \"‸\n  step \"unmold\"")
	show(base, `  step "melt"`, "  step ‸\n  step \"melt\"")
	show(base, `with = "rubber-plug"`, `with = "‸"`)
	show(base, `label = "us-base"`, `label = ‸`)
	show(base, `dye = "madder"`, `dye = "‸`)
	show(base, `mold "pillar-3x6" {`, `mold "‸"`)
	show(jar, `pot      = "pitcher-4"`, `pot      = "‸"`)
	show(jar, `test_burn "2026-09-14" {`, "concession \"‸\"\n  test_burn \"2026-09-14\" {")
	show("label \"x\" {\n  cautions = []\n}\n", `[]`, `["keep away from children", "‸`)
	show("label \"x\" {\n  markets = [\"EU\"]\n  cautions = []\n}\n", `[]`, "[\n    \"general warning sign\",\n    \"‸\",\n  ]")
	show("‸", `‸`, `‸`)
	show("\n", "\n", "wax \"x\" {\n  ‸\n}\n")
	show("\n", "\n", "recipe \"x\" {\n  ‸")
	show("\n", "\n", "recipe \"x\" {\n  title = \"a\"\n  ma‸rk\n}\n")
}
