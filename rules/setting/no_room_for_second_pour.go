package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// NoRoomForSecondPour is a first pour that fills the mold, with a second one
// planned.
var NoRoomForSecondPour = &lint.Rule{
	Name:   "no-room-for-second-pour",
	Group:  group,
	Title:  "a first pour that leaves a second no room below the rim",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Should},
	Why: "The second pour should melt into the first below the rim and stay below the line the first has left on the wall. " +
		"Where the mold is full already, it runs over, or down between the wall and the candle that has shrunk from it, " +
		"and leaves a ridge that shows.",
	Remedy: "Stop the first pour 6 to 12 mm (1/4 to 1/2 in) below the rim and keep that much of the batch for the second.",
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "an eighth of an inch",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `leave = "3/8 in"`, To: `leave = "1/8 in"`}},
			Flags:   []string{`"1/8 in"`},
		},
		{
			About:  "a range that may leave too little",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: `"sale"`, To: `"own use"`},
				{From: `leave = "3/8 in"`, To: `leave = "5 to 10 mm"`},
			},
			Flags: []string{`"5 to 10 mm"`},
			Level: lint.Consider,
		},
	},
	Good: []lint.Example{
		{About: "just 6 mm", Recipe: "tide-pillar", Changes: []lint.Change{{From: `leave = "3/8 in"`, To: `leave = "6 mm"`}}},
		{About: "a votive 2 in tall", Recipe: "lantern-votive", Changes: []lint.Change{{From: `leave = "1/4 in"`, To: `leave = "1/8 in"`}}},
	},
	Also:  []string{"net-weight-overstated"},
	Check: checkNoRoomForSecondPour,
}

// Common practice, in mm: a mold taller than this wants this much room.
var (
	shortMold  = quantity.Int(60)
	leastLeave = quantity.Int(6)
)

func checkNoRoomForSecondPour(p *lint.Pass) {
	b := batch.Of.In(p.View)
	var said *batch.Step
	for i := range b.Vessels {
		v := &b.Vessels[i]
		second := secondPour(b, i)
		if v.Kind != "mold" || v.Stock == nil || second == nil {
			continue
		}
		first := fills(b, second, i)
		if first == nil || first == said || !tall(p, v) {
			continue
		}
		leave := first.Block.Get("leave")
		if leave.Absent() {
			p.CannotCheck(first.Block, "leave")
		}
		if !leave.IsAmount() || !leave.Amount().Base().Less(leastLeave) {
			continue
		}
		said = first
		left := leave.Amount().Low()
		reach := left.Both(p.Units())
		if leave.Amount().IsRange() {
			reach = leave.Amount().String() + " may be no more than " + reach
		}
		p.Report(lint.Finding{
			At: lint.AtValue(leave),
			Message: fmt.Sprintf("%s below the rim: the second pour in %s wants 6 mm (1/4 in) of room at least (common practice), so %s is missing, and it runs over, or down beside the candle",
				reach, place(second), quantity.FromBase(leastLeave.Sub(left.Base()), quantity.Millimeter).Show(quantity.Metric)),
			Notes: []lint.Note{{Place: lint.AtHeader(second.Block), Message: "the second pour"}},
		})
	}
}

func tall(p *lint.Pass, v *batch.Vessel) bool {
	return v.Height.Ask(p) && shortMold.Less(v.Height.Value)
}
