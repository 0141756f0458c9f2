package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// PotOverfull is more molten wax than the pot should hold.
var PotOverfull = &lint.Rule{
	Name:   "pot-overfull",
	Group:  group,
	Title:  "a batch that fills its pot too full when it is melted",
	Levels: lint.Every(lint.Should),
	Why: "Wax takes up more room melted than solid, and stirring and pouring need some more. A pot that is too full slops over its rim onto the heat, " +
		"and burning wax runs where it likes.",
	Remedy:   "Melt it in several pots or one after the other, or take a larger pot.",
	Source:   "arithmetic, at the density of the molten wax; common practice: three quarters full at the most",
	Cautions: "If wax catches fire: heat off, put a lid on it. Never water. Leave and call the fire brigade if it is more than the pot.",
	Bad: []lint.Example{
		{
			About:   "a pot of a liter and a half for a kilo and a quarter",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `pot      = "pitcher-4"`, To: `pot      = "can"`}},
			Stock:   "pot \"can\" {\n  title = \"The small can\"\n  holds = \"1.5 L\"\n  heat  = \"water bath\"\n}\n",
			Flags:   []string{`"can"`},
			Level:   lint.Must,
		},
		{
			About:   "two liters",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `pot      = "pitcher-4"`, To: `pot      = "can"`}},
			Stock:   "pot \"can\" {\n  title = \"The small can\"\n  holds = \"2 L\"\n  heat  = \"water bath\"\n}\n",
			Flags:   []string{`"can"`},
		},
	},
	Good:  []lint.Example{{About: "a pot with room to stir", Recipe: "tide-pillar"}},
	Check: checkPot,
}

var (
	threeQuarters = quantity.NewRat(75, 100)
	nineTenths    = quantity.NewRat(90, 100)
)

// checkPot looks at batches that are melted at one time; of one that is melted
// in several steps it is not known how much is in the pot.
func checkPot(p *lint.Pass) {
	b := batch.Of.In(p.View)
	melts := 0
	for i := range b.Steps {
		if b.Steps[i].Kind == "melt" {
			melts++
		}
	}
	if melts != 1 {
		return
	}
	p.CannotCheck(p.Recipe, "pot")
	said := p.Recipe.Get("pot")
	if !said.Known() {
		return
	}
	pot, ok := p.Stock("pot", said.Text())
	if !ok {
		return
	}
	holds := pot.Get("holds")
	p.CannotCheck(pot, "holds")
	density, shrinks := b.Density(), b.Shrinkage()
	if !holds.Known() || !b.Total.Ask(p) || !density.Ask(p) || !shrinks.Ask(p) {
		return
	}
	molten := density.Low().Mul(quantity.Int(1).Sub(shrinks.AtHigh().High())) // g/mL
	volume, ok := b.Total.Value.Quo(molten)
	if !ok {
		return
	}
	full, ok := volume.Quo(holds.Amount().Low().Base())
	if !ok || !threeQuarters.Less(full) {
		return
	}
	p.Missing(potFinding(p, said, pot, holds, volume, full))
}

func potFinding(p *lint.Pass, said schema.Value, pot *schema.Block, holds schema.Value, volume, full quantity.Rat) lint.Finding {
	room := holds.Amount().Low().Base().Mul(threeQuarters)
	parts, _ := volume.Quo(room)
	f := lint.Finding{
		At: lint.AtValue(said),
		Message: fmt.Sprintf("the batch is %s when it is melted and fills %s (%s) to %s, over the three quarters that leave room to stir (common practice): melt it in %s parts",
			batch.Milliliters(p.View, volume), pot.Title(), holds.Amount().String(), batch.Percent(full, quantity.NoBasis), parts.Ceil(quantity.Int(1)).Decimal(0)),
		Notes: []lint.Note{{Place: lint.AtValue(holds), Message: "what it holds is stated here"}},
	}
	if nineTenths.Less(full) {
		f.Levels = lint.Every(lint.Must)
	}
	return f
}
