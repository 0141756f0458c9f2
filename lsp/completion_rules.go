package lsp

import (
	"slices"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/schema"
)

// ruleNames offers rules: in a concession those first that speak on this
// recipe now, last those that cannot be conceded; in a tune last those that
// cannot be turned down.
func (a *asked) ruleNames(spec *schema.BlockSpec) []offer {
	type ranked struct {
		offer
		rank int
	}
	conceding := spec.Name == "concession"
	var speaking map[string]bool
	if conceding && a.recipe != nil {
		speaking = a.speaking()
	}
	var list []ranked
	for _, r := range a.rules(a.shop) {
		o := ranked{offer{label: r.Name, kind: protocol.CompletionItemKindEvent, detail: fullSentence(r.Title), of: described{What: "rule", Name: r.Name}}, 1}
		switch {
		case a.ruleNamed(spec.Name, r.Name):
			o.rank, o.why = 4, "named already"
		case r.About == lint.AboutFormat && conceding:
			o.rank, o.why = 3, "cannot be conceded: put the text right"
		case r.About == lint.AboutFormat && r.Binding:
			o.rank, o.why = 3, "cannot be turned down: what cannot be read cannot be judged"
		case conceding && r.Binding && a.look != nil && a.look.MadeFor == lint.Sale:
			o.rank, o.why = 2, "cannot be conceded in a recipe made for sale"
		case !conceding && r.Binding:
			o.rank, o.why = 2, "cannot be turned down for what is made for sale"
		case speaking[r.Name]:
			o.rank, o.why = 0, "speaks on this recipe"
		case speaking != nil:
			o.why = "does not speak here"
		}
		list = append(list, o)
	}
	slices.SortStableFunc(list, func(x, y ranked) int { return x.rank - y.rank })
	offers := make([]offer, len(list))
	for i := range list {
		offers[i] = list[i].offer
	}
	return offers
}

// speaking are the rules that have something to say of the recipe as it
// stands.
func (a *asked) speaking() map[string]bool {
	names := map[string]bool{}
	for _, f := range a.check().Findings {
		if f.Recipe == a.recipe {
			names[f.Rule.Name] = true
		}
	}
	return names
}

// ruleNamed says whether another block of the kind names the rule already.
func (a *asked) ruleNamed(block, rule string) bool {
	for other := range a.block.Each(block) {
		if other != a.own && other.Label == rule {
			return true
		}
	}
	return false
}
