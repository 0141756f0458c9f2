package sheet

import (
	"wickrule/lint"
	"wickrule/rules/batch"
)

// Window is from when to when a step makes sense, as modeled for one pour.
type Window struct {
	Pour string `json:"pour"` // which pour it counts from
	What string `json:"what"` // "relief holes"
	From string `json:"from"`
	To   string `json:"to"`
	Note string `json:"note,omitempty"`
}

// windows is where modeled times of setting go.
func (s *Sheet) windows(view *lint.View, b *batch.Batch) {}
