package lsp

import (
	"context"
	"fmt"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/rules/explained"
	"wickrule/rules/shoprule"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// mostAsked is how many recipes are asked whether a rule speaks of them. In a
// larger shop that would take longer than a lens is worth.
const mostAsked = 400

// ruleLenses are how a rule of the shop's own is proved, and in how many
// recipes it speaks. While its text is half typed nothing is said of it.
func (h *here) ruleLenses(b *schema.Block, speaking map[string]spoken) []protocol.CodeLens {
	if !h.file.Whole {
		return nil
	}
	proof := shoprule.Prove(lint.NewFileView(h.shop, h.file, h.today), b)
	lenses := []protocol.CodeLens{h.lens(b, proofText(&proof), nil)}
	if told, ok := speaking[b.Label]; ok && h.shop.Find("rule", b.Label) == b {
		lenses = append(lenses, h.lens(b, told.text(), nil))
	}
	return lenses
}

// proofText is what came of a rule's examples.
func proofText(p *shoprule.Proof) string {
	counted := fmt.Sprintf("%d sound, %d faulty", p.Sound, p.Faulty)
	wrong := 0
	for _, e := range p.Examples {
		if e.Says != "" {
			wrong++
		}
	}
	switch {
	case !p.Readable:
		return "cannot be read"
	case p.Sound+p.Faulty == 0:
		return "untested"
	case wrong > 0:
		return counted + ", " + inWords(wrong) + " not as said"
	case p.Sound == 0:
		return "untested: no sound example"
	case p.Faulty == 0:
		return "untested: no faulty example"
	}
	return counted + ", all as said"
}

// spoken is in how many recipes a rule speaks, and in how many of them that is
// conceded.
type spoken struct{ of, conceded int }

func (s spoken) text() string {
	text := "speaks in no recipe"
	if s.of > 0 {
		text = "speaks in " + countedRecipes(s.of)
	}
	if s.conceded > 0 {
		text += ", conceded in " + countedRecipes(s.conceded)
	}
	return text
}

// speaking is what each rule of this file that can be read says of the shop's
// recipes. It is never nil, and empty in a large shop.
func (h *here) speaking(ctx context.Context) map[string]spoken {
	counts := map[string]spoken{}
	recipes := h.shop.Recipes()
	if len(recipes) > mostAsked {
		return counts
	}
	var own []*lint.Rule
	for _, b := range h.file.Blocks {
		if rule := shoprule.Named(h.shop, b.Label); b.Is("rule") && rule != nil {
			own = append(own, rule)
			counts[b.Label] = spoken{}
		}
	}
	type told struct {
		rule   string
		recipe *schema.Block
	}
	seen := map[told]bool{}
	var last *schema.File
	for _, recipe := range recipes {
		if recipe.File == last {
			continue
		}
		if last = recipe.File; ctx.Err() != nil {
			return map[string]spoken{}
		}
		report := lint.RunFile(h.shop, own, h.today, last.Name)
		first := func(f *lint.Found) bool {
			t := told{f.Rule.Name, f.Recipe}
			if _, own := counts[t.rule]; !own || f.Recipe == nil || seen[t] {
				return false
			}
			seen[t] = true
			return true
		}
		for i := range report.Findings {
			if f := &report.Findings[i]; first(f) {
				counts[f.Rule.Name] = spoken{counts[f.Rule.Name].of + 1, counts[f.Rule.Name].conceded}
			}
		}
		for i := range report.Conceded {
			if f := &report.Conceded[i].Found; first(f) {
				counts[f.Rule.Name] = spoken{counts[f.Rule.Name].of, counts[f.Rule.Name].conceded + 1}
			}
		}
	}
	return counts
}

func countedRecipes(n int) string {
	if n == 1 {
		return "1 recipe"
	}
	return quantity.Int(int64(n)).Decimal(0) + " recipes"
}

// trialText is how many rules rest on a trial, and whether it is still open.
func (h *here) trialText(b *schema.Block) string {
	t := explained.TrialOf(h.shop, b)
	text := "no rule rests on it"
	switch n := len(t.Bears); {
	case n == 1:
		text = "one rule rests on it"
	case n > 1:
		text = things(n, "rule") + " rest on it"
	}
	if t.Open() {
		text = "still open, " + text
	}
	return text
}
