package lsp

import (
	"slices"

	"wickrule/lint"
	"wickrule/schema"
)

// foundAt is what is found at an offset: what it says, why the rules ask for
// it, and where it stands.
func (h *here) foundAt(at int32) (says, why []string, where schema.Span) {
	report := h.check()
	var rules []*lint.Rule
	add := func(lead, text string, at schema.Span, r *lint.Rule) {
		if says == nil {
			where = at
		}
		says = append(says, lead+h.plain(text))
		if r != nil && !slices.Contains(rules, r) {
			rules = append(rules, r)
		}
	}
	for i := range report.Findings {
		if f := &report.Findings[i]; f.At.File == h.file && f.At.Span.Touches(at) && f.Level >= h.wants.softest() {
			add("**"+f.Level.String()+"** ", f.Message, f.At.Span, f.Rule)
		}
	}
	for i := range report.Conceded {
		c := &report.Conceded[i]
		if c.At.File == h.file && c.At.Span.Touches(at) {
			lead := "**conceded** "
			if until := c.Concession.Get("until").Text(); until != "" {
				lead = "**conceded until " + until + "** "
			}
			add(lead, c.Message+" (the reason given: "+c.Concession.Get("reason").Text()+")", c.At.Span, c.Rule)
		}
	}
	for _, u := range report.Unchecked {
		if u.At.File == h.file && u.At.Span.Touches(at) && u.Level >= h.wants.softest() {
			add("**not checked** ", u.Message, u.At.Span, nil)
		}
	}
	for _, r := range rules {
		why = append(why, h.explained(r)...)
	}
	return says, why, where
}

// rule is the rule of that name that is in force, or nil.
func (h *here) rule(name string) *lint.Rule {
	for _, r := range h.rules(h.shop) {
		if r.Name == name {
			return r
		}
	}
	return nil
}

// explained is a rule in a maker's words.
func (h *here) explained(r *lint.Rule) []string {
	says := []string{"**" + r.Name + "** " + h.plain(fullStop(r.Title))}
	for _, part := range [...]struct{ lead, text string }{
		{"", r.Why}, {"To put it right: ", r.Remedy}, {"Mind: ", r.Cautions}, {"Source: ", r.Source},
	} {
		if part.text != "" {
			says = append(says, part.lead+h.plain(fullStop(part.text)))
		}
	}
	for _, o := range optionsOf(h.shop, r) {
		says = append(says, "Option "+h.plain(fullStop(o.Name+": "+o.String())))
	}
	for _, trial := range trialsBehind(h.shop, r) {
		says = append(says, "- "+h.plain(trialSays(&trial)))
	}
	if r.Binding && r.About != lint.AboutFormat {
		says = append(says, "In what is made for sale it can be neither conceded nor turned down.")
	}
	return says
}
