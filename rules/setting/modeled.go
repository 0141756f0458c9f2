package setting

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/cooling"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// since is how long after another step one is done, in s: as early and as
// late as the waits that are written let it be. A step whose wait is not
// written is lacking, and the pass says so where it is asked.
func since(s, first *batch.Step) (early, late batch.Figure) {
	return between(s.FromPour, first.FromPour), between(s.FromPourLatest, first.FromPourLatest)
}

func between(from, to batch.Figure) batch.Figure {
	switch {
	case !from.Known():
		return from
	case !to.Known():
		return to
	}
	return batch.Figure{Value: from.Value.Sub(to.Value), State: schema.Known}
}

// waitOf is where the wait of a step is written; absent: nowhere.
func waitOf(s *batch.Step) schema.Value {
	if v := s.Block.Get("from_pour"); !v.Absent() {
		return v
	}
	return s.Block.Get("after")
}

// atWait is the place of a step's wait, else of its header.
func atWait(s *batch.Step) lint.Place {
	if v := waitOf(s); v.Known() {
		return lint.AtValue(v)
	}
	return lint.AtHeader(s.Block)
}

// long says a time of the recipe in s.
func long(seconds quantity.Rat) string { return batch.Time(seconds) }

// spread says how good a modeled time is: "about 4 h (2 h 30 min to 5 h 30 min:
// ±40 %, since …)".
func spread(e cooling.Estimate) string {
	return "about " + e.String() + " (" + e.Span() + ": ±40 %, " + cooling.Because + ")"
}

// reckoned adds to a message which figures nobody has stated.
func reckoned(message string, pour *cooling.Pour) string {
	if basis := pour.Basis(); basis != "" {
		return message + ". " + basis
	}
	return message
}
