package lsp

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/formula"
	"wickrule/schema"
)

// rested is a shop in which every sort of mention stands: labels, values,
// lists, parts of a blend, burns and trials elsewhere, the examples of a rule.
var rested = map[string]string{
	"shop.candle.hcl": "shop \"quay\" {\n  tune \"putty-cool\" {\n    level = \"should\"\n  }\n  tune \"unused-stock\" {\n    level = \"off\"\n  }\n}\n",
	"stock.candle.hcl": `wax "north" {
  title = "north °🕯 north"
}
wax "house" {
  part "north" {
    share = "70 %"
  }
  part "stearin" {
    share = "30 %"
  }
}
wax "stearin" {}
additive "stearin" {}
seal "plug" {}
seal "putty" {}
mold "round" {}
wick "braid" {}
`,
	"recipe.candle.hcl": `recipe "tide" {
  wax "north" {
    weight = "1 kg"
  }
  additive "stearin" {
    load = "5 % of wax"
  }
  mold "round" {
    wick = "braid"
  }
  step "seal wick hole" { with = ["plug", "putty"] }
  step "melt" { wax = "north" }
  step "pour" { vessel = "round" }
  concession "putty-cool" {
    reason = "tried"
  }
}
`,
	"logs/burns.candle.hcl": "test_burn \"2026-10-01\" {\n  recipe = \"tide\"\n  vessel = \"round\"\n}\n",
	"logs/trials.candle.hcl": `trial "warm" {
  recipe = "tide"
  tried  = "putty"
}
rule "putty-cool" {
  about    = "mold"
  require  = pour.at <= amount("180 °F")
  rests_on = ["warm"]
  sound {
    recipe "cool" {
      wax "north" {
        weight = "1 kg"
      }
      mold "round" {
        wick = "own"
      }
    }
    wick "own" {}
  }
  faulty {
    recipe "hot" {
      mold "round" {
        wick = "braid"
      }
    }
  }
}
`,
}

// renames asks for a rename where piece stands, further bytes in, in an open
// file of the shop, and gives the texts that come of it.
func renames(t *testing.T, disk fstest.MapFS, file, piece string, further int, key string) map[string]string {
	t.Helper()
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, file)[0]
	var edit protocol.WorkspaceEdit
	e.call("textDocument/rename", with(e.about(uri, piece, further), "newName", key), &edit)
	return editedTexts(t, disk, edit.Changes)
}

// changedLines is the lines that differ between a shop's texts and what came of
// them, as "file:line".
func changedLines(t *testing.T, disk fstest.MapFS, texts map[string]string) (lines []string) {
	for _, name := range []string{"logs/burns.candle.hcl", "logs/trials.candle.hcl", "recipe.candle.hcl", "shop.candle.hcl", "stock.candle.hcl"} {
		now, ok := texts[name]
		if !ok {
			continue
		}
		before := strings.Split(string(disk["shop/"+name].Data), "\n")
		after := strings.Split(now, "\n")
		require.Equal(t, len(before), len(after))
		for i := range before {
			if before[i] != after[i] {
				lines = append(lines, strings.TrimSuffix(name, ".candle.hcl")+": "+strings.TrimSpace(after[i]))
			}
		}
	}
	return lines
}

func TestRenameGoesEverywhere(t *testing.T) {
	disk := smallShop(rested)
	for _, c := range []struct {
		about, file, piece string
		further            int
		lines              []string
	}{
		{"a wax, in parts and in the examples of rules", "recipe.candle.hcl", `"north"`, 1, []string{
			`logs/trials: wax "new-1" {`, `recipe: wax "new-1" {`, `recipe: step "melt" { wax = "new-1" }`, `stock: wax "new-1" {`, `stock: part "new-1" {`}},
		{"from its definition", "stock.candle.hcl", `"braid"`, 6, []string{
			`logs/trials: wick = "new-1"`, `recipe: wick = "new-1"`, `stock: wick "new-1" {}`}},
		{"one item of a list, and what a trial tried", "recipe.candle.hcl", `putty`, 2, []string{
			`logs/trials: tried  = "new-1"`, `recipe: step "seal wick hole" { with = ["plug", "new-1"] }`, `stock: seal "new-1" {}`}},
		{"a vessel, in steps and burns", "stock.candle.hcl", `"round"`, 3, []string{
			`logs/burns: vessel = "new-1"`, `logs/trials: mold "new-1" {`, `logs/trials: mold "new-1" {`, `recipe: mold "new-1" {`, `recipe: step "pour" { vessel = "new-1" }`, `stock: mold "new-1" {}`}},
		{"a recipe, in its log", "recipe.candle.hcl", `"tide"`, 1, []string{
			`logs/burns: recipe = "new-1"`, `logs/trials: recipe = "new-1"`, `recipe: recipe "new-1" {`}},
		{"a trial, in the rule that rests on it", "logs/trials.candle.hcl", `["warm"]`, 3, []string{
			`logs/trials: trial "new-1" {`, `logs/trials: rests_on = ["new-1"]`}},
		{"a rule of the shop, in tunes and concessions", "recipe.candle.hcl", `"putty-cool"`, 3, []string{
			`logs/trials: rule "new-1" {`, `recipe: concession "new-1" {`, `shop: tune "new-1" {`}},
		{"of two kinds with one key only the one meant: the wax", "stock.candle.hcl", "wax \"stearin\"", 6, []string{
			`stock: part "new-1" {`, `stock: wax "new-1" {}`}},
		{"of two kinds with one key only the one meant: the additive", "recipe.candle.hcl", `"stearin"`, 6, []string{
			`recipe: additive "new-1" {`, `stock: additive "new-1" {}`}},
		{"what an example has of its own stays there", "logs/trials.candle.hcl", `"own"`, 1, []string{
			`logs/trials: wick = "new-1"`, `logs/trials: wick "new-1" {}`}},
		{"the shop", "shop.candle.hcl", `"quay"`, 1, []string{`shop: shop "new-1" {`}},
	} {
		t.Run(c.about, func(t *testing.T) {
			require.Equal(t, c.lines, changedLines(t, disk, renames(t, disk, c.file, c.piece, c.further, "new-1")))
		})
	}
}

func TestRenameIsRefused(t *testing.T) {
	for _, c := range []struct {
		about          string
		change         [3]string // file, from, to
		file, piece    string
		further        int
		key, says      string
		alreadyOnceAsk bool // refused before a name is asked for
	}{
		{about: "a key that is not well formed", file: "stock.candle.hcl", piece: `"north"`, key: "North Wax",
			says: `"North Wax" cannot be a key: write small letters, digits and hyphens, such as "north-wax"`},
		{about: "nothing", file: "stock.candle.hcl", piece: `"north"`, key: "",
			says: `"" cannot be a key: write small letters, digits and hyphens, such as "north"`},
		{about: "a key that is taken", file: "stock.candle.hcl", piece: `"north"`, key: "house",
			says: `there is already a wax called house (line 4 of stock.candle.hcl): choose another key`},
		{about: "no key at all", file: "stock.candle.hcl", piece: `title`, key: "new",
			says: `no key stands here: a rename starts on the key of a stock item, a recipe, a trial or a rule`},
		{about: "a rule of the program", file: "shop.candle.hcl", piece: `"unused-stock"`, further: 1, key: "new", alreadyOnceAsk: true,
			says: `unused-stock is a rule that comes with the program: its name cannot be changed`},
		{about: "a rule of the shop, to one of the program", file: "shop.candle.hcl", piece: `"putty-cool"`, further: 1, key: "heat-near-flash",
			says: `heat-near-flash is already a rule that comes with the program: choose another key`},
		{about: "a name that leads nowhere", change: [3]string{"recipe.candle.hcl", `"braid"`, `"brade"`}, file: "recipe.candle.hcl", piece: `"brade"`, key: "new", alreadyOnceAsk: true,
			says: `no wick here is called brade: write it down first, then it can be renamed`},
		{about: "a key given twice", change: [3]string{"stock.candle.hcl", "wick \"braid\" {}", "wick \"braid\" {}\nwick \"braid\" {}"}, file: "recipe.candle.hcl", piece: `"braid"`, key: "new", alreadyOnceAsk: true,
			says: `there are 2 wick blocks called braid (line 17 of stock.candle.hcl, line 18 of stock.candle.hcl): give all but one another key by hand first, so that it is plain which one the recipes mean`},
		{about: "a wax that would take an additive's name in a blend", change: [3]string{"stock.candle.hcl", `wax "stearin" {}`, ``}, file: "stock.candle.hcl", piece: `"house"`, key: "stearin",
			says: `line 8 of stock.candle.hcl means the additive called stearin, and would mean this wax after the rename: choose another key`},
		{about: "an additive whose parts would become a wax", change: [3]string{"stock.candle.hcl", `wax "stearin" {}`, ``}, file: "stock.candle.hcl", piece: `additive "stearin"`, further: 12, key: "north",
			says: `line 8 of stock.candle.hcl would mean the wax called north (line 1 of stock.candle.hcl) after the rename: choose another key`},
		{about: "a key that a recipe waits for", change: [3]string{"recipe.candle.hcl", `"braid"`, `"brade"`}, file: "stock.candle.hcl", piece: `"braid"`, key: "brade",
			says: `line 9 of recipe.candle.hcl names a wick called brade that nobody has written down yet, and would mean this one after the rename: put that right first`},
		{about: "a key that an example has of its own", file: "stock.candle.hcl", piece: `"braid"`, key: "own", change: [3]string{"logs/trials.candle.hcl", `    wick "own" {}`, "    wick \"own\" {}\n    recipe \"cool-2\" {\n      mold \"round\" {\n        wick = \"braid\"\n      }\n    }"},
			says: `line 21 of logs/trials.candle.hcl would mean the wick called own (line 18 of logs/trials.candle.hcl) after the rename: choose another key`},
		{about: "a name in a rule's expression", change: [3]string{"logs/trials.candle.hcl", `pour.at <= amount("180 °F")`, `mold.seal.title == "putty"`}, file: "stock.candle.hcl", piece: `"putty"`, key: "new",
			says: `line 7 of logs/trials.candle.hcl says putty in an expression of a rule, where it may mean this key or not: see to that by hand first, so that nothing is left behind under the wrong key`},
		{about: "a key in a rule's expression that an example has of its own", change: [3]string{"logs/trials.candle.hcl", `pour.at <= amount("180 °F")`, `mold.wick.key != "braid" && mold.wick.key != "own"`}, file: "logs/trials.candle.hcl", piece: `wick "own"`, further: 6, key: "new",
			says: `line 7 of logs/trials.candle.hcl means whatever is called own, also the wick of an example of that rule (line 18 of logs/trials.candle.hcl): see to that by hand first`},
		{about: "a name in a text that cannot be read", change: [3]string{"recipe.candle.hcl", `wick = "braid"`, `wick = "braid`}, file: "stock.candle.hcl", piece: `"braid"`, key: "new",
			says: `line 9 of recipe.candle.hcl says braid where the text cannot be read: see to that by hand first, so that nothing is left behind under the wrong key`},
		{about: "the new key in a block that is not known", change: [3]string{"stock.candle.hcl", `mold "round" {}`, "mold \"round\" {}\nwickk_x \"new\" {}"}, file: "stock.candle.hcl", piece: `"braid"`, key: "new",
			says: `line 17 of stock.candle.hcl says new where the text cannot be read: see to that by hand first, so that nothing is left behind under the wrong key`},
	} {
		t.Run(c.about, func(t *testing.T) {
			disk := smallShop(rested)
			if c.change[0] != "" {
				text := string(disk["shop/"+c.change[0]].Data)
				require.Contains(t, text, c.change[1])
				disk["shop/"+c.change[0]] = &fstest.MapFile{Data: []byte(strings.Replace(text, c.change[1], c.change[2], 1))}
			}
			e := connect(t, disk, "shop", able)
			uri := e.openAll(disk, c.file)[0]
			// LSP 3.17, Rename Request: "error: code and message set in case
			// when rename could not be performed for any reason".
			message, code := e.refusal("textDocument/rename", with(e.about(uri, c.piece, c.further), "newName", c.key))
			require.Equal(t, c.says, message)
			require.EqualValues(t, requestFailed, code)
			if c.alreadyOnceAsk {
				message, _ = e.refusal("textDocument/prepareRename", e.about(uri, c.piece, c.further))
				require.Equal(t, c.says, message)
			}
		})
	}
}

// A file with a fault does not stop a rename that has nothing to do with it.
func TestRenameBesideAFault(t *testing.T) {
	disk := smallShop(rested)
	broken := strings.Replace(rested["recipe.candle.hcl"], `wick = "braid"`, `wick = "braid`, 1)
	disk["shop/recipe.candle.hcl"] = &fstest.MapFile{Data: []byte("# putty is left alone here\n" + broken)}
	texts := renames(t, disk, "stock.candle.hcl", `"putty"`, 1, "clay")
	require.Equal(t, strings.Replace(string(disk["shop/recipe.candle.hcl"].Data), `["plug", "putty"]`, `["plug", "clay"]`, 1), texts["recipe.candle.hcl"])
}

func TestPrepareRename(t *testing.T) {
	disk := smallShop(rested)
	e := connect(t, disk, "shop", able)
	uri := e.openAll(disk, "recipe.candle.hcl")[0]
	var there protocol.RangeWithPlaceholder
	e.call("textDocument/prepareRename", e.about(uri, `"putty"`, 0), &there)
	require.Equal(t, "putty", there.Placeholder)
	require.Equal(t, "putty", e.textAt(uri, there.Range))
	// LSP 3.17, Prepare Rename Request: "If null is returned then it is deemed
	// that a 'textDocument/rename' request is not valid at the given position."
	var none *protocol.RangeWithPlaceholder
	e.call("textDocument/prepareRename", e.about(uri, `weight`, 0), &none)
	require.Nil(t, none)
	e.call("textDocument/prepareRename", e.about(uri, `"pour"`, 1), &none)
	require.Nil(t, none)
}

// The versions of open documents go with the edits, and none for those that
// are not open (LSP 3.17, OptionalVersionedTextDocumentIdentifier).
func TestRenameSaysVersions(t *testing.T) {
	disk := smallShop(rested)
	e := connect(t, disk, "shop", able)
	uri := e.openAll(disk, "recipe.candle.hcl")[0]
	e.replace(uri, `"1 kg"`, `"2 kg"`)
	var edit protocol.WorkspaceEdit
	e.call("textDocument/rename", with(e.about(uri, `"braid"`, 1), "newName", "flat"), &edit)
	versions := map[string]*int32{}
	for _, change := range edit.DocumentChanges {
		document := change.(protocol.TextDocumentEdit).TextDocument
		versions[document.URI] = document.Version
	}
	two := int32(2)
	require.Equal(t, map[string]*int32{uri: &two, fileURI("shop/stock.candle.hcl"): nil, fileURI("shop/logs/trials.candle.hcl"): nil}, versions)
}

// Every key of the demo shop can be renamed, after which the shop is as sound as
// before: burns of renamed stock are burns of it still, and keep of what.
func TestRenameEveryKey(t *testing.T) {
	disk := demoShop(t)
	files := filesOf(t, disk, "shop")
	now := standing(t, files, `{}`, utf16)
	shop := now.shops["shop"]
	renamed := 0
	for _, f := range files {
		for _, b := range f.Blocks {
			if b.Spec.Label != schema.Defines {
				continue
			}
			h := now.of(shop, f)
			edit, err := h.rename(t.Context(), &protocol.RenameParams{
				TextDocumentPositionParams: protocol.TextDocumentPositionParams{Position: h.position(b.LabelSpan.Start + 1)}, NewName: "quite-another"})
			require.NoError(t, err, b.Label)
			texts := editedTexts(t, disk, edit.Changes)
			var put []*schema.File
			for name, text := range texts {
				put = append(put, schema.Read(name, []byte(text)))
			}
			after := shop.Edit(put, nil)
			require.Empty(t, after.Same(b.Name(), b.Label), b.Label)
			for _, found := range lint.Run(after, rules.All(), today).Findings {
				t.Errorf("after %s: %s: %s", b.Label, found.Rule.Name, found.Message)
			}
			require.Equal(t, keeping(shop), keeping(after), b.Label)
			renamed++
		}
	}
	require.Greater(t, renamed, 80)
}

// keeping counts the burns of a shop whose code rests on what is kept with it or
// with another of the same candle.
func keeping(shop *lint.Shop) (n int) {
	for _, recipe := range shop.Recipes() {
		view := lint.NewView(shop, recipe, today)
		for _, burn := range view.TestBurns() {
			if _, ok := formula.Kept(view, burn.Get("formula").Text()); ok {
				n++
			}
		}
	}
	return n
}

// A burn of what the candle was before stays one, and is told of under the new
// name.
func TestRenameAfterAChange(t *testing.T) {
	disk := demoShop(t)
	name := "recipes/tide-pillar.candle.hcl"
	file := disk["shop/"+name]
	file.Data = []byte(strings.Replace(string(file.Data), `load = "5 % of wax"`, `load = "5.5 % of wax"`, 1))
	files := filesOf(t, disk, "shop")
	now := standing(t, files, `{}`, utf16)
	shop := now.shops["shop"]
	h := now.of(shop, shop.File(name))
	edit, err := h.rename(t.Context(), &protocol.RenameParams{
		TextDocumentPositionParams: protocol.TextDocumentPositionParams{Position: h.position(int32(strings.Index(string(file.Data), `"northlight-pillar"`) + 1))}, NewName: "quay-wax"})
	require.NoError(t, err)
	texts := editedTexts(t, disk, edit.Changes)
	require.Contains(t, texts[name], `"wax quay-wax: 100 % of wax",`)
	require.NotContains(t, texts[name], "northlight-pillar")
	var put []*schema.File
	for name, text := range texts {
		put = append(put, schema.Read(name, []byte(text)))
	}
	var stale []string
	for _, found := range lint.Run(shop.Edit(put, nil), rules.All(), today).Findings {
		if found.Rule.Name == "test-burn-stale" {
			stale = append(stale, found.Message)
		}
	}
	require.Len(t, stale, 1)
	require.Contains(t, stale[0], "fragrance tide-and-thyme was changed (5 % of wax then, 5.5 % of wax now)")
	require.NotContains(t, stale[0], "quay-wax", "the wax is the same")
}
