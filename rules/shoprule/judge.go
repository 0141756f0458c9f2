package shoprule

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// mostCombinations is how many combinations of blocks one rule looks at in one
// recipe.
const mostCombinations = 256

// round goes through the combinations of the blocks that a rule names.
type round struct {
	s     *scene
	lists [mostNamed][]thing
	at    [mostNamed]int
	n     int // how many kinds it names
	left  int // combinations still to come
	begun bool
}

// begin is the round of a program in a scene. Over says that there are too
// many combinations.
func (p *program) begin(s *scene) (r *round, over bool) {
	r = &s.round // one rule goes round at a time
	r.s, r.n, r.left, r.begun = s, len(p.slots), 1, false
	for i, k := range p.slots {
		r.lists[i], r.at[i] = s.of(k.at), 0
		if r.left *= len(r.lists[i]); r.left == 0 {
			return r, false
		}
		if r.left > mostCombinations {
			over = true
			r.left = mostCombinations + 1
		}
	}
	if len(s.led) < p.leads {
		s.led = make([]thing, p.leads)
	}
	return r, over
}

// next sets the scene for the next combination of blocks that go together.
func (r *round) next() bool {
	for r.left > 0 {
		if r.begun {
			for i := r.n - 1; i >= 0; i-- {
				if r.at[i]++; r.at[i] < len(r.lists[i]) {
					break
				}
				r.at[i] = 0
			}
		}
		r.begun = true
		r.left--
		for i := range r.n {
			r.s.now[i] = &r.lists[i][r.at[i]]
		}
		if r.together() {
			return true
		}
	}
	return false
}

func (r *round) together() bool {
	for i := 1; i < r.n; i++ {
		for j := range i {
			if !r.s.goTogether(r.s.now[j], r.s.now[i]) {
				return false
			}
		}
	}
	return true
}

// verdict is what a rule says of one combination.
type verdict uint8

const (
	notMeant verdict = iota // its when does not hold
	holds
	fails
	unknown // a value is not written; or it is broken, and another rule speaks
)

// judge is what the rule says of the combination in hand, and the value that
// is not known.
func (p *program) judge(s *scene) (verdict, value) {
	if p.when != nil {
		v := p.when.eval(s)
		switch {
		case !v.known():
			return unknown, v
		case !v.yes:
			return notMeant, v
		}
	}
	v := p.require.eval(s)
	switch {
	case !v.known():
		return unknown, v
	case v.yes:
		return holds, v
	}
	return fails, v
}

// check is the rule looking at one recipe.
func (p *program) check(pass *lint.Pass) {
	s := sceneOf.In(pass.View)
	if len(p.slots) == 1 && p.leads == 0 { // the usual case needs no round
		if list := s.of(p.slots[0].at); len(list) <= mostCombinations {
			for i := range list {
				s.now[0] = &list[i]
				p.look(pass, s)
			}
			return
		}
	}
	r, over := p.begin(s)
	if over {
		if pass.Loud(lint.Levels{}) {
			pass.ReportAs(unreadable, lint.Finding{At: lint.AtLabel(pass.Recipe),
				Message: fmt.Sprintf("the rule %s names %s, and here they can be combined in more than the %d ways that are checked: let it name fewer", p.rule.Name, p.named(), mostCombinations)})
		}
		return
	}
	for r.next() {
		p.look(pass, s)
	}
}

// look says what there is to say of the combination in hand.
func (p *program) look(pass *lint.Pass, s *scene) {
	if p.holdsQuickly(s) || !pass.Loud(lint.Levels{}) {
		return
	}
	switch verdict, v := p.judge(s); verdict {
	case fails:
		f := p.finding(s)
		f.Notes = p.tunedNotes(pass)
		pass.Report(f)
	case unknown:
		if v.byZero {
			pass.ReportAs(unreadable, lint.Finding{At: lint.AtLabel(pass.Recipe),
				Message: fmt.Sprintf("the rule %s divides by nothing here: let its when say where it does not apply", p.rule.Name)})
		}
		v.ask(pass)
	}
}

func (p *program) named() string {
	var names []string
	for _, k := range p.slots {
		names = append(names, k.Name)
	}
	return strings.Join(names, ", ")
}

// finding is what the rule says where its require fails.
func (p *program) finding(s *scene) lint.Finding {
	message := p.rule.Title
	if p.message != nil {
		v := p.message.eval(s)
		message = strings.Join(strings.Fields(v.text), " ")
	}
	f := lint.Finding{At: p.at(s), Message: strings.TrimSuffix(message, ".")}
	if len(p.fixes) > 0 {
		// Fixes are made later, when the scene has moved on: the combination is kept.
		var now [mostNamed]*thing
		copy(now[:], s.now[:])
		f.Fixes = func() []schema.Fix { return p.repairs(s, now) }
	}
	return f
}

// at is where a finding points: at the value that point_at names, else at the
// block that the rule is about.
func (p *program) at(s *scene) lint.Place {
	e := p.pointAt
	if e == nil {
		return s.now[0].place(s)
	}
	if e.thing != nil {
		t := e.thing(s)
		if t.state == schema.Known && (t.block != nil || t.said.Block != nil) {
			return t.place(s)
		}
		return s.now[e.slot].place(s)
	}
	if v := e.eval(s); v.said.Block != nil {
		return lint.AtValue(v.said)
	}
	return s.now[e.slot].place(s)
}
