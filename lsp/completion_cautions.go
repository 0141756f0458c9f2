package lsp

import (
	"slices"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// cautions offers what is not on the label yet: first what its markets require
// of every candle, then what they require of some kinds, then the rest. A
// label that does not say its markets is taken to be for the shop's.
func (a *asked) cautions() []offer {
	var markets []string
	if a.block.Is("label") {
		markets = itemTexts(a.block.Get("markets"))
	}
	if len(markets) == 0 && a.shop.Config != nil {
		markets = itemTexts(a.shop.Config.Get("markets"))
	}
	if len(markets) == 0 {
		markets = []string{"US"}
	}
	var offers []offer
	add := func(name, why string) {
		if slices.ContainsFunc(offers, func(o offer) bool { return o.label == name }) {
			return
		}
		o := offer{label: name, kind: protocol.CompletionItemKindEnumMember, why: why, of: described{What: "caution", Name: name}}
		if c := schema.CautionNamed(name); c != nil {
			o.detail = c.Words
		}
		offers = append(offers, o)
	}
	covered := func(name string) bool {
		return slices.ContainsFunc(a.others, func(has string) bool { return schema.CautionCovers(has, name) })
	}
	for _, market := range markets {
		if in := schema.CautionsIn(market); in != nil {
			for _, name := range in.Core {
				if !covered(name) {
					add(name, "required in the "+market+" ("+in.Standard+")")
				}
			}
		}
	}
	for _, market := range markets {
		if in := schema.CautionsIn(market); in != nil {
			for _, t := range in.ByType {
				add(t.Name, "required in the "+market+" on "+t.Which)
			}
		}
	}
	for _, name := range a.attr.Choices {
		add(name, "")
	}
	return offers
}

func itemTexts(list schema.Value) []string {
	var all []string
	for _, item := range list.Items() {
		all = append(all, item.Text)
	}
	return all
}
