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
func (h *here) ruleLenses(ctx context.Context, b *schema.Block) []protocol.CodeLens {
	if !h.file.Whole {
		return nil
	}
	proof := shoprule.Prove(lint.NewFileView(h.shop, h.file, h.today), b)
	lenses := []protocol.CodeLens{h.lens(b, proofText(&proof), nil)}
	if rule := shoprule.Named(h.shop, b.Label); rule != nil && h.shop.Find("rule", b.Label) == b {
		if text := h.speaksText(ctx, rule); text != "" {
			lenses = append(lenses, h.lens(b, text, nil))
		}
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

// speaksText is in how many recipes of the shop a rule speaks, those that it is
// conceded in told apart; "" in a large shop.
func (h *here) speaksText(ctx context.Context, rule *lint.Rule) string {
	recipes := h.shop.Recipes()
	if len(recipes) > mostAsked {
		return ""
	}
	speaks, conceded := map[*schema.Block]bool{}, map[*schema.Block]bool{}
	var last *schema.File
	for _, recipe := range recipes {
		if recipe.File == last {
			continue
		}
		if last = recipe.File; ctx.Err() != nil {
			return ""
		}
		report := lint.RunFile(h.shop, []*lint.Rule{rule}, h.today, last.Name)
		for i := range report.Findings {
			if f := &report.Findings[i]; f.Rule == rule && f.Recipe != nil {
				speaks[f.Recipe] = true
			}
		}
		for i := range report.Conceded {
			if c := &report.Conceded[i]; c.Rule == rule && c.Recipe != nil {
				conceded[c.Recipe] = true
			}
		}
	}
	text := "speaks in no recipe"
	if n := len(speaks); n > 0 {
		text = "speaks in " + countedRecipes(n)
	}
	if n := len(conceded); n > 0 {
		text += ", conceded in " + countedRecipes(n)
	}
	return text
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
