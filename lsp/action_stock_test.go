package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

func fixesAt(t *testing.T, s *snapshot, shop *lint.Shop, f *schema.File, piece string) []codeAction {
	t.Helper()
	return ask(t, s, shop, f, at(t, f, piece), "quickfix")
}

func TestWritingDownMissingStock(t *testing.T) {
	shop, f := changedDemo(t, tideName, `"northlight-pillar"`, `"dawn-wax"`)
	a := titled(fixesAt(t, snapshotOf(t, shop), shop, f, "dawn-wax"), "write down the wax dawn-wax in stock/waxes.candle.hcl, with blanks to fill in")
	require.NotNil(t, a)
	assert.False(t, a.IsPreferred)
	assert.Len(t, a.Diagnostics, 1)
	texts := after(t, shop, a.Edit)
	assert.Equal(t, f.Text.String(), texts[tideName])
	was := shop.File("stock/waxes.candle.hcl").Text.String()
	assert.True(t, strings.HasPrefix(texts["stock/waxes.candle.hcl"], strings.TrimSuffix(was, "\n")))
	added := strings.TrimPrefix(texts["stock/waxes.candle.hcl"], strings.TrimSuffix(was, "\n"))
	assert.True(t, strings.HasPrefix(added, "\n\nwax \"dawn-wax\" {\n  family           = \"\"\n"), added)
	assert.Contains(t, added, "  flash_point      = \"\"\n")
	for line := range strings.Lines(strings.TrimSpace(added)) {
		assert.NotRegexp(t, `[0-9]`, line, "no figure is made up")
	}
	now := reread(shop, texts)
	item := now.Find("wax", "dawn-wax")
	require.NotNil(t, item)
	for v := range item.Attrs() {
		assert.True(t, v.Broken(), "%s is to be filled in", v.Spec.Name)
	}
	for _, finding := range lint.RunFile(now, rules.All(), today, tideName).Findings {
		assert.NotEqual(t, "unknown-key", finding.Rule.Name)
	}
}

// Every kind of stock that a recipe can name is written down in the file that
// holds most of its kind, and read back without the finding.
func TestEveryKindOfStock(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{`fragrance "tide-and-thyme"`, `fragrance "moss"`, "write down the fragrance moss in stock/fragrances.candle.hcl"},
		{`dye "madder"`, `dye "moss"`, "write down the dye moss in stock/dyes.candle.hcl"},
		{`mold "pillar-3x6"`, `mold "moss"`, "write down the mold moss in stock/molds.candle.hcl"},
		{`wick  = "flat-braid-24"`, `wick  = "moss"`, "write down the wick moss in stock/wicks.candle.hcl"},
		{`"rubber-plug"`, `"moss"`, "write down the seal moss in stock/seals.candle.hcl"},
		{`label = "us-base"`, `label = "moss"`, "write down the label moss in stock/labels.candle.hcl"},
		{`"pitcher-4"`, `"moss"`, "write down the pot moss in stock/pots.candle.hcl"},
	} {
		shop, f := changedDemo(t, tideName, c.from, c.to)
		a := titled(fixesAt(t, snapshotOf(t, shop), shop, f, `"moss"`), c.want+", with blanks to fill in")
		require.NotNil(t, a, c.want)
		now := reread(shop, after(t, shop, a.Edit))
		for _, finding := range lint.RunFile(now, rules.All(), today, tideName).Findings {
			assert.NotEqual(t, "unknown-key", finding.Rule.Name, c.want)
		}
	}
}

// A kind that no file holds gets a file of its own, beside the other stock, where
// the client can make files; else a place at the end of the document.
func TestANewFileForStock(t *testing.T) {
	shop, f := changedDemo(t, tideName, `  dye "madder" {`, "  topping \"sea-lavender\" {}\n  dye \"madder\" {")
	require.Empty(t, shop.Shelf("topping"))
	s := snapshotOf(t, shop)
	a := titled(fixesAt(t, s, shop, f, `"sea-lavender"`), "write down the topping sea-lavender in a new file stock/toppings.candle.hcl, with blanks to fill in")
	require.NotNil(t, a)
	texts := after(t, shop, a.Edit)
	assert.Equal(t, "topping \"sea-lavender\" {\n  kind = \"\"\n}\n", texts["stock/toppings.candle.hcl"])
	assert.NotNil(t, reread(shop, texts).Find("topping", "sea-lavender"))
	s.can.Workspace.WorkspaceEdit.ResourceOperations = nil
	a = titled(fixesAt(t, s, shop, f, `"sea-lavender"`), "write down the topping sea-lavender in "+tideName+", with blanks to fill in")
	require.NotNil(t, a)
	assert.True(t, strings.HasSuffix(after(t, shop, a.Edit)[tideName], "\n}\n\ntopping \"sea-lavender\" {\n  kind = \"\"\n}\n"))
}

func TestConcessions(t *testing.T) {
	shop, f := changedDemo(t, tideName, `"1.24 kg"`, `"1.1 kg"`)
	s := snapshotOf(t, shop)
	title := "write down why this is all right here: a concession for batch-does-not-fill"
	a := titled(fixesAt(t, s, shop, f, `"1.1 kg"`), title)
	require.NotNil(t, a)
	assert.False(t, a.IsPreferred)
	text := after(t, shop, a.Edit)[tideName]
	assert.True(t, strings.HasSuffix(text, "\n\n  concession \"batch-does-not-fill\" {\n    reason = \"\"\n  }\n}\n"))
	// without its reason it does not count
	now := shop.With(schema.Read(tideName, []byte(text)))
	var said []string
	for _, finding := range lint.RunFile(now, rules.All(), today, tideName).Findings {
		said = append(said, finding.Rule.Name)
	}
	assert.ElementsMatch(t, []string{"batch-does-not-fill", "concession-without-reason"}, said)
	// and is not offered a second time
	assert.Nil(t, titled(fixesAt(t, snapshotOf(t, now), now, now.File(tideName), `"1.1 kg"`), title))
	// with it, it does
	now = shop.With(schema.Read(tideName, []byte(strings.Replace(text, `reason = ""`, `reason = "The rest is in the pot"`, 1))))
	assert.Empty(t, lint.RunFile(now, rules.All(), today, tideName).Findings)
}

func TestNoConcession(t *testing.T) {
	title := "write down why this is all right here: a concession for "
	// a rule that binds what is for sale: told why, to a person that asks
	shop, f := changedDemo(t, tideName, `"5 % of wax"`, `"7 % of wax"`)
	s := snapshotOf(t, shop)
	a := titled(fixesAt(t, s, shop, f, `"7 % of wax"`), title+"fragrance-over-limit")
	require.NotNil(t, a)
	assert.Nil(t, a.Edit)
	assert.Equal(t, "fragrance-over-limit cannot be conceded in a recipe made for sale: somebody else lights this candle", a.Disabled.Reason)
	s.can.TextDocument.CodeAction.DisabledSupport = false
	assert.Nil(t, titled(fixesAt(t, s, shop, f, `"7 % of wax"`), title+"fragrance-over-limit"))
	// one about the format: never
	shop, f = changedDemo(t, tideName, `"5 % of wax"`, `"5 of wax"`)
	for _, got := range titles(fixesAt(t, snapshotOf(t, shop), shop, f, `"5 of wax"`)) {
		assert.NotContains(t, got, "concession")
	}
}

// The same rule may be conceded for one's own shelf.
func TestConcessionForOwnUse(t *testing.T) {
	shop := loaded(t, examples.Shop())
	text := strings.Replace(shop.File(tideName).Text.String(), `made_for = "sale"`, `made_for = "own use"`, 1)
	f := schema.Read(tideName, []byte(strings.Replace(text, `"5 % of wax"`, `"7 % of wax"`, 1)))
	shop = shop.With(f)
	a := titled(fixesAt(t, snapshotOf(t, shop), shop, f, `"7 % of wax"`), "write down why this is all right here: a concession for fragrance-over-limit")
	require.NotNil(t, a)
	assert.NotNil(t, a.Edit)
}

// A recipe that only melts, pours and unmolds gets every step that the rules
// miss, in working order, and nothing is missing after it.
func TestInsertingTheMissingSteps(t *testing.T) {
	shop := loaded(t, examples.Shop())
	text := shop.File(tideName).Text.String()
	start, end := strings.Index(text, `  step "seal`), strings.Index(text, "\n  test_burn")
	text = text[:start] + `  step "melt" {
    to = "186 °F"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "unmold" {
    after = "20 h"
  }
` + text[end:]
	f := schema.Read(tideName, []byte(text))
	shop = shop.With(f)
	s := snapshotOf(t, shop)
	a := titled(fixesAt(t, s, shop, f, "recipe"), "insert the steps this recipe still needs: seal wick hole, add dye, add fragrance, relief holes, second pour, trim wick and attach label")
	require.NotNil(t, a, titles(fixesAt(t, s, shop, f, "recipe")))
	assert.Len(t, a.Diagnostics, 6) // the relief holes are asked for once there is a second pour
	got := after(t, shop, a.Edit)[tideName]
	assert.Contains(t, got, `
  step "seal wick hole" { with = "rubber-plug" }
  step "melt" {
    to = "186 °F"
  }
  step "add dye" { dye = "madder" }
  step "add fragrance" {
    fragrance = "tide-and-thyme"
    at        = "186 °F"
    stir      = "2 min"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "relief holes" { after = "2 h" }
  step "second pour" {
    after = "1 h"
    at    = "181 °F"
  }
  step "unmold" {
    after = "20 h"
  }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
`)
	now := shop.With(schema.Read(tideName, []byte(got)))
	var said []string
	for _, finding := range lint.RunFile(now, rules.All(), today, tideName).Findings {
		said = append(said, finding.Rule.Name)
	}
	assert.Equal(t, []string{"cure-too-short"}, said, "which nobody can do for the maker")
	// where one step is missing its own fix is enough
	shop, f = changedDemo(t, tideName, "  step \"trim wick\" {\n    to = \"1/4 in\"\n  }\n", "")
	for _, title := range titles(fixesAt(t, snapshotOf(t, shop), shop, f, "recipe")) {
		assert.NotContains(t, title, "insert the steps")
	}
}

// Steps left out of demo recipes, two kinds at a time: what the rules miss comes back and
// nothing is worse than before.
func TestMissingStepsOfDemoRecipes(t *testing.T) {
	shop := loaded(t, examples.Shop())
	offered := 0
	for _, recipe := range shop.Recipes() {
		var steps []*schema.Block
		for step := range recipe.Each("step") {
			steps = append(steps, step)
		}
		for i := range steps {
			other := steps[(i+3)%len(steps)]
			if other == steps[i] {
				continue
			}
			text, err := schema.Apply(recipe.File.Text.String(), []schema.Edit{schema.RemoveBlock(steps[i]), schema.RemoveBlock(other)})
			require.NoError(t, err)
			f := schema.Read(recipe.File.Name, []byte(text))
			with := shop.With(f)
			for _, a := range fixesAt(t, snapshotOf(t, with), with, f, "recipe") {
				if !strings.HasPrefix(a.Title, "insert the steps") {
					continue
				}
				offered++
				now := with.With(schema.Read(f.Name, []byte(after(t, with, a.Edit)[f.Name])))
				before, after := lint.RunFile(with, rules.All(), today, f.Name), lint.RunFile(now, rules.All(), today, f.Name)
				assert.Less(t, len(after.Findings), len(before.Findings), "%s: %s", f.Name, a.Title)
				for _, finding := range after.Findings {
					assert.NotEqual(t, "steps-out-of-order", finding.Rule.Name, "%s: %s", f.Name, a.Title)
				}
			}
		}
	}
	require.Greater(t, offered, 20)
	t.Logf("%d offered", offered)
}
