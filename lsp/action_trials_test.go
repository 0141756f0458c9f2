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

const trialFile = "trials/trials.candle.hcl"

func rewritingsAt(t *testing.T, s *snapshot, shop *lint.Shop, f *schema.File, piece string, further int32) []codeAction {
	t.Helper()
	span := at(t, f, piece)
	return ask(t, s, shop, f, schema.Span{Start: span.Start + further, End: span.Start + further}, "refactor")
}

func TestStartingATrial(t *testing.T) {
	shop := loaded(t, examples.Shop())
	f := shop.File(tideName)
	s := snapshotOf(t, shop)
	a := titled(rewritingsAt(t, s, shop, f, "recipe \"tide", 3), "start a trial with this recipe, in "+trialFile)
	require.NotNil(t, a)
	texts := after(t, shop, a.Edit)
	assert.Equal(t, shop.File(trialFile).Text.String()+`
trial "tide-pillar-trial" {
  question = "What do we want to know about Tide and thyme pillar?"
  date     = "2026-10-04"
  recipe   = "tide-pillar"
  outcome  = "open"
}
`, texts[trialFile])
	assert.Equal(t, f.Text.String(), texts[tideName])
	now := reread(shop, texts)
	assert.True(t, now.File(trialFile).Clean)
	// It asks for its outcome, and for nothing else. Started again, it is another.
	var said []string
	for _, finding := range lint.RunFile(now, rules.All(), today, trialFile).Findings {
		if strings.Contains(finding.Message, "tide-pillar-trial") {
			said = append(said, finding.Rule.Name)
		}
	}
	assert.Equal(t, []string{"trial-open"}, said)
	a = titled(rewritingsAt(t, snapshotOf(t, now), now, now.File(tideName), "recipe \"tide", 3), "start a trial with this recipe, in "+trialFile)
	assert.Contains(t, after(t, now, a.Edit)[trialFile], `trial "tide-pillar-trial-2" {`)
}

// On what the recipe names from the shelves, it is about that.
func TestStartingATrialOfStock(t *testing.T) {
	shop := loaded(t, examples.Shop())
	f := shop.File(tideName)
	s := snapshotOf(t, shop)
	for _, c := range []struct {
		piece   string
		further int32
		key     string
		asked   string
	}{
		{`"rubber-plug"`, 3, "rubber-plug", "What do we want to know about Silicone rubber plug in Tide and thyme pillar?"},
		{`wax "northlight`, 6, "northlight-pillar", "What do we want to know about Northlight paraffin, pillar grade in Tide and thyme pillar?"},
	} {
		a := titled(rewritingsAt(t, s, shop, f, c.piece, c.further), "start a trial of "+c.key+" with this recipe, in "+trialFile)
		require.NotNil(t, a, "%q", titles(rewritingsAt(t, s, shop, f, c.piece, c.further)))
		trial := reread(shop, after(t, shop, a.Edit)).Find("trial", c.key+"-trial")
		require.NotNil(t, trial)
		assert.Equal(t, c.key, trial.Get("tried").Text())
		assert.Equal(t, "tide-pillar", trial.Get("recipe").Text())
		assert.Equal(t, c.asked, trial.Get("question").Text())
	}
	for _, action := range rewritingsAt(t, s, shop, f, `at   = "183`, 10) {
		assert.NotContains(t, action.Title, "trial")
	}
}

// Where no file has trials yet, one is made; for a client that makes no files
// the trial stands behind the recipe.
func TestTheFirstTrial(t *testing.T) {
	shop := loaded(t, examples.Shop()).Edit(nil, []string{trialFile})
	f := shop.File(tideName)
	s := snapshotOf(t, shop)
	a := titled(rewritingsAt(t, s, shop, f, "recipe \"tide", 3), "start a trial with this recipe, in a new file "+trialFile)
	require.NotNil(t, a, "%q", titles(rewritingsAt(t, s, shop, f, "recipe \"tide", 3)))
	texts := after(t, shop, a.Edit)
	assert.True(t, strings.HasPrefix(texts[trialFile], "trial \"tide-pillar-trial\" {\n"), texts[trialFile])
	s.can.Workspace.WorkspaceEdit.ResourceOperations = nil
	a = titled(rewritingsAt(t, s, shop, f, "recipe \"tide", 3), "start a trial with this recipe, in "+tideName)
	require.NotNil(t, a)
	now := reread(shop, after(t, shop, a.Edit))
	assert.True(t, now.File(tideName).Clean)
	assert.NotNil(t, now.Find("trial", "tide-pillar-trial"))
}

// A rule without examples is given them from recipes of the shop: cut down to
// what matters, and proved by them.
func TestExamplesFromRecipes(t *testing.T) {
	const name = "rules/new.candle.hcl"
	const bare = `rule "cool-pours" {
  title    = "Pillars are poured below 178 °F"
  about    = "pour"
  when     = recipe.makes == "pillar"
  require  = pour.at <= amount("178 °F")
  message  = "The pour is ${show(pour.at)}."
  rests_on = ["putty-reuse"]
}
`
	shop := loaded(t, examples.Shop())
	shop = shop.With(schema.Read(name, []byte(bare)))
	for range 2 {
		s := snapshotOf(t, shop)
		for _, a := range fixesAt(t, s, shop, shop.File(name), `"cool-pours"`) {
			if strings.HasPrefix(a.Title, "add a sound example from ") || strings.HasPrefix(a.Title, "add a faulty example from ") {
				require.Len(t, a.Diagnostics, 1)
				shop = reread(shop, after(t, shop, a.Edit))
				break
			}
		}
	}
	text := shop.File(name).Text.String()
	assert.Equal(t, strings.TrimSuffix(bare, "}\n")+`
  sound {
    recipe "like-breakwater-block" {
      makes = "pillar"
      step "pour" {
        at = "170 °F"
      }
    }
  }

  faulty {
    recipe "like-slipway-pillar" {
      makes = "pillar"
      step "pour" {
        at = "197 °F"
      }
    }
  }
}
`, text)
	for _, f := range lint.RunFile(shop, rules.All(), today, name).Findings {
		assert.Fail(t, "found", "%s: %s", f.Rule.Name, f.Message)
	}
}
