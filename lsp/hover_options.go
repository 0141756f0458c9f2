package lsp

import (
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

// optionSays is what an option of a shop rule is: what it is for, what it takes,
// what the rule says and what this shop has in its place. Nil: the rule has
// none that can be read by that name.
func (h *here) optionSays(rule *schema.Block, name string) []string {
	o, ok := shoprule.OptionOf(h.shop, rule, name)
	if !ok {
		return nil
	}
	takes := o.Type.String()
	if o.Range {
		takes += ", which may be a range"
	}
	says := []string{spaced("**option."+h.plain(o.Name)+"** "+fullSentence(takes), h.plain(fullStop(o.Title)))}
	stands := "The rule " + h.plain(rule.Label) + " says " + h.plain(o.Is)
	if o.Here != "" && h.counts(rule) {
		stands += "; in this shop it is " + h.plain(o.Here)
	}
	return append(says, stands+".")
}

// counts says whether a rule is the first of its name, which is the one that a
// tune is of.
func (h *here) counts(rule *schema.Block) bool { return h.shop.Find("rule", rule.Label) == rule }

// tunedSubject is about an option that a tune sets, at its name or its value.
func (h *here) tunedSubject(option *schema.Block, span schema.Span) *subject {
	says := h.optionSays(h.shop.Find("rule", option.Parent.Label), option.Label)
	if says == nil {
		return nil
	}
	return about(span, append(says, "The examples of the rule are tried with what the rule says; the recipes of this shop with what this shop has.")...)
}
