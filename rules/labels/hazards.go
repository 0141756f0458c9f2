package labels

import (
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/hazard"
	"wickrule/schema"
)

// decides stands under every text that offers what a label carries.
const decides = hazard.Decides

// classified are the markets that classify a candle as a mixture, with how
// they are spoken of.
func classified(p *lint.Pass) []string {
	var markets []string
	for _, m := range p.Markets() {
		if m.Text == "EU" || m.Text == "UK" {
			markets = append(markets, m.Text)
		}
	}
	return markets
}

// hazards is the classification of the recipe's candle, where a market asks for
// it and the rule speaks at all.
func hazards(p *lint.Pass) (c *hazard.Classification, markets []string, ok bool) {
	markets = classified(p)
	if len(markets) == 0 || !p.Loud(lint.Levels{}) {
		return nil, nil, false
	}
	c = hazard.Of.In(p.View)
	return c, markets, !c.Broken
}

// elements are what the labels on a vessel carry for a market.
func (on *attached) elements(c *hazard.Classification, market string) hazard.Elements {
	if on.vessel == nil {
		return c.Label(market, batch.Figure{})
	}
	return c.Label(market, on.vessel.Fill)
}

// warnsEnough says whether one label by itself carries what the candle's
// hazards call for in each of its markets, and nothing that speaks of another
// scent.
func (on *attached) warnsEnough(p *lint.Pass, l *schema.Block) bool {
	markets := classified(p)
	if len(markets) == 0 {
		return true
	}
	c := hazard.Of.In(p.View)
	for _, market := range markets {
		e := on.elements(c, market)
		lacks := e.Lacks(texts(l, "signal"), texts(l, "pictograms"), texts(l, "hazards"), texts(l, "names"))
		extra := e.Extra(texts(l, "pictograms"), texts(l, "hazards"))
		if !lacks.None() || !extra.None() || e.UFI != l.Get("ufi").Known() && market == "EU" {
			return false
		}
		for _, name := range texts(l, "names") {
			if !slices.ContainsFunc(e.Names, func(s *hazard.Substance) bool { return s.GoesBy(name) }) {
				return false
			}
		}
	}
	return true
}

// texts are the words of an attribute of a label, a list or not.
func texts(l *schema.Block, attr string) []string {
	var words []string
	for _, item := range l.Get(attr).Items() {
		words = append(words, item.Text)
	}
	return words
}

// signals are the signal words on all labels.
func (on *attached) signals() (words []string, whole bool) { return on.says("signal") }

// banned says whether the candle may not be sold at all, which another rule
// says; what its label lacks is of no interest then.
func banned(c *hazard.Classification) bool { return slices.ContainsFunc(c.Results, isBanned) }

func isBanned(r hazard.Result) bool {
	return r.Cat == 1 && (r.Class == hazard.Carc || r.Class == hazard.Muta || r.Class == hazard.Repr)
}

// listed names what a label lacks: "the pictogram GHS07, the signal word
// Warning, H317 and the name linalool".
func listed(e *hazard.Elements) string {
	var parts []string
	if e.Signal != "" {
		parts = append(parts, "the signal word "+e.Signal)
	}
	if n := len(e.Pictograms); n > 0 {
		parts = append(parts, verb(n, "the pictogram ", "the pictograms ")+joined(e.Pictograms))
	}
	if len(e.Statements) > 0 {
		parts = append(parts, joined(e.Statements))
	}
	if n := len(e.Names); n > 0 {
		names := make([]string, n)
		for i, s := range e.Names {
			names[i] = s.Name
		}
		parts = append(parts, verb(n, "the name ", "the names ")+joined(names))
	}
	return joined(parts)
}

func joined(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

// reasons are the steps that what is lacking rests on, the ones that decide it.
func reasons(c *hazard.Classification, lacks *hazard.Elements) []*hazard.Step {
	var steps []*hazard.Step
	for i := range c.Steps {
		s := &c.Steps[i]
		if !s.Reached {
			continue
		}
		about := slices.ContainsFunc(lacks.Statements, func(code string) bool { return s.Into.Code != "" && strings.HasPrefix(s.Into.Code, code) }) ||
			slices.ContainsFunc(lacks.Names, func(n *hazard.Substance) bool { return slices.Contains(s.Counted(), n) })
		if about {
			steps = append(steps, s)
		}
	}
	for i := range c.Steps { // a sign or signal word alone: whatever calls for any
		if s := &c.Steps[i]; len(steps) == 0 && s.Reached {
			return []*hazard.Step{s}
		}
	}
	return steps
}

// shown are the steps as notes at the components that they are about.
func shown(steps []*hazard.Step) []lint.Note {
	var notes []lint.Note
	for _, s := range steps {
		if counted := s.Counted(); len(counted) > 0 {
			notes = append(notes, lint.Note{Place: lint.AtHeader(counted[0].Parts[0].Component), Message: s.String()})
		}
	}
	return notes
}

// askFigures has the pass say what the classification waits for.
func askFigures(p *lint.Pass, c *hazard.Classification) {
	for _, f := range c.Waits {
		f.Ask(p)
	}
	for _, component := range c.NoM {
		p.CannotCheck(component, "m_factor")
	}
}
