package sheet

import (
	"slices"

	"wickrule/lint"
	"wickrule/schema"
)

// Finding is what the rules say of this batch.
type Finding struct {
	Level    string `json:"level"`
	Rule     string `json:"rule"`
	Message  string `json:"message"`
	Conceded string `json:"conceded,omitempty"` // the reason of the concession
}

// burnGroup is the handbook heading of the rules about test burns. They are
// asked of the recipe as it is written: putting weights on the scale's step
// makes no other candle.
const burnGroup = "Burn tests"

// check checks the batch as it is weighed for the largest pot.
func (s *Sheet) check(shop *lint.Shop, recipe *schema.Block, scaled made, o Options) {
	if o.Rules == nil {
		s.Verdict = "not checked"
		return
	}
	var r *lint.Report
	for _, at := range []made{scaled, {shop, recipe}} {
		if at.shop == shop && r != nil && scaled.shop == shop {
			break
		}
		r = lint.RunFor(at.shop, o.Rules(at.shop), o.Today, func(file string) bool { return file == recipe.File.Name })
		s.take(r, at.recipe, func(group string) bool {
			return scaled.shop == shop || (group == burnGroup) == (at.shop == shop)
		})
		if at.shop == scaled.shop {
			for _, u := range r.Unchecked {
				s.Unchecked = append(s.Unchecked, u.Message)
			}
		}
	}
	slices.SortStableFunc(s.Findings, func(a, b Finding) int { return loud(b) - loud(a) })
	switch {
	case s.must > 0:
		s.Verdict = "do not pour" + map[string]string{"sale": " or sell", "class": " or teach"}[s.MadeFor] + " it like this"
	case s.should > 0:
		s.Verdict = "put right first, or note a concession"
	default:
		s.Verdict = "nothing found that must or should be put right"
	}
}

// take takes over what a report says of the recipe, by the rules' groups.
func (s *Sheet) take(r *lint.Report, recipe *schema.Block, wants func(group string) bool) {
	for _, f := range r.Findings {
		if f.Recipe != recipe && f.At.File.Name != recipe.File.Name || f.Recipe != nil && f.Recipe != recipe || !wants(f.Rule.Group) {
			continue
		}
		s.Findings = append(s.Findings, Finding{Level: f.Level.String(), Rule: f.Rule.Name, Message: f.Message})
		switch f.Level {
		case lint.Must:
			s.must++
		case lint.Should:
			s.should++
		}
	}
	for _, c := range r.Conceded {
		if c.Recipe == recipe && wants(c.Rule.Group) {
			s.Findings = append(s.Findings, Finding{Level: c.Level.String(), Rule: c.Rule.Name, Message: c.Message, Conceded: oneLine(c.Concession.Get("reason").Text())})
		}
	}
}

// loud sorts findings: the loudest first, what is conceded last.
func loud(f Finding) int {
	if f.Conceded != "" {
		return 0
	}
	level, _ := lint.ParseLevel(f.Level)
	return int(level)
}

// Musts is how many findings say not to pour.
func (s *Sheet) Musts() int { return s.must }
