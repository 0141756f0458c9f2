package handbook

import (
	"wickrule/lint/report"
	"wickrule/rules/explained"
	"wickrule/schema"
)

// trialsPage is what the shop tried.
type trialsPage struct{ Open, Known []trialView }

// trialView is a trial with where it leads.
type trialView struct {
	explained.Trial
	Anchor, Address string
	Heading         string
	Means           string // what its outcome means
	Rules           []neighbor
}

func (b *book) trialsPage() {
	var p trialsPage
	for _, t := range b.Shop.Trials() {
		if t.Label == "" || b.Shop.Find("trial", t.Label) != t {
			continue
		}
		v := b.trialOf(t)
		if v.Open() {
			p.Open = append(p.Open, v)
		} else {
			p.Known = append(p.Known, v)
		}
		b.index.add("trial", v.Key, v.Heading, v.Address, "", v.Noted, v.Tried+" "+v.Outcome)
	}
	b.page("trials.html", "trials", "Trials", "What was tried", p)
}

func (b *book) trialOf(t *schema.Block) trialView { return b.trialView(explained.TrialOf(b.Shop, t)) }

func (b *book) trialView(t explained.Trial) trialView {
	t.Asked, t.Noted, t.Tried = report.Clean(t.Asked), report.Clean(t.Noted), report.Clean(t.Tried)
	v := trialView{Trial: t, Anchor: trialAnchor(t.Key), Address: trialAddress(t.Key), Heading: t.Asked,
		Means: schema.WordMeans(schema.Top("trial").Attr("outcome"), t.Outcome)}
	if v.Heading == "" {
		v.Heading = t.Key
	}
	for _, name := range t.Bears {
		n := neighbor{Title: name}
		for _, r := range b.rules {
			if r.Name == name && b.own(r) {
				n = neighbor{schema.Capital(r.Title), RulePage(name, true)}
			}
		}
		v.Rules = append(v.Rules, n)
	}
	return v
}
