package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// PotOverfull is a batch that fills its pot too far once it is molten.
var PotOverfull = &lint.Rule{
	Name:   "pot-overfull",
	Group:  group,
	Title:  "a pot too full of molten wax",
	Levels: lint.Every(lint.Should),
	Why: "Wax swells by a tenth and more as it melts, and what goes over the rim runs down to the heat: that is how wax fires begin. A full pot cannot be stirred or carried without spilling either. " +
		"Three quarters is as full as it should stand.",
	Remedy: "Melt in two or more batches, or in a larger pot.",
	Card: lint.Card{
		Question: "How full may the melting pot be?",
		Answer:   "Three quarters. Wax swells by a tenth and more as it melts, and what runs over the rim runs down to the heat.",
		AllRight: "Up to that line, with room to stir and to carry it.",
		Do:       "Melt in two goes or in a larger pot. If it runs over: heat off, let it cool, no water.",
	},
	Source:   "arithmetic from the wax's density and shrinkage; three quarters full at most: common practice",
	Cautions: "Never carry a pot that is more than three quarters full. If wax runs over, turn off the heat and let it cool; never water.",
	Bad: []lint.Example{
		{
			About:   "over three quarters",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `weight = "1.24 kg"`, To: `weight = "2.25 kg"`}},
			Flags:   []string{`"pitcher-4"`},
		},
		{
			About:   "over nine tenths",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `weight = "1.24 kg"`, To: `weight = "2.7 kg"`}},
			Flags:   []string{`"pitcher-4"`},
			Level:   lint.Must,
		},
	},
	Good: []lint.Example{
		{About: "half full", Recipe: "tide-pillar", Shows: `pot      = "pitcher-4"

  wax "northlight-pillar" {
    weight = "1.24 kg"`, Shelf: `pot pitcher-4`},
		{About: "just below three quarters", Recipe: "tide-pillar", Changes: []lint.Change{{From: `weight = "1.24 kg"`, To: `weight = "2.16 kg"`}}},
		{About: "a dipping vat is deep on purpose", Recipe: "quayside-taper", Changes: []lint.Change{{From: `weight = "6 lb 8 oz"`, To: `weight = "7 lb 12 oz"`}}},
	},
	Also:  []string{"batch-left-over"},
	Check: checkPot,
}

// How full a pot may stand. Common practice.
var (
	fullEnough = quantity.NewRat(3, 4)
	fullToRim  = quantity.NewRat(9, 10)
)

func checkPot(p *lint.Pass) {
	said := p.Recipe.Get("pot")
	b := batch.Of.In(p.View)
	if len(b.Waxes) == 0 {
		return
	}
	if said.Absent() {
		p.CannotCheck(p.Recipe, "pot")
	}
	if !said.Known() {
		return
	}
	pot, ok := p.Stock("pot", said.Text())
	if !ok {
		return
	}
	holds := pot.Get("holds")
	if holds.Absent() {
		p.CannotCheck(pot, "holds")
	}
	molten := b.Molten()
	if !holds.IsAmount() || !molten.Ask(p) {
		return
	}
	volume := molten.Value.Mul(b.AtOnce())
	full, ok := volume.Quo(holds.Amount().Base())
	limit := fullEnough
	if b.Makes == "taper" {
		limit = fullToRim // a vat is dipped into, and deep on purpose
	}
	if !ok || !limit.Less(full) {
		return
	}
	f := lint.Finding{At: lint.AtValue(said), Notes: batch.NoteAt("what it holds is stated here", holds)}
	usual := b.Density().Family != "" || b.Shrinkage().Family != ""
	if fullToRim.Less(full) && b.Makes != "taper" && !usual {
		f.Levels = lint.Every(lint.Must)
	}
	share := batch.PercentBeside(full, limit, quantity.NoBasis)
	weight := b.Total.Value.Mul(b.AtOnce())
	f.Message = fmt.Sprintf("%s takes up %s once molten and fills %s (%s) to %s, over the %s of it that is safe by %s%s",
		batch.Grams(p.View, weight), batch.Milliliters(p.View, volume), pot.Title(), batch.Both(p.View, holds.Amount()), share,
		batch.Percent(limit, quantity.NoBasis), batch.Milliliters(p.View, volume.Sub(holds.Amount().Base().Mul(limit))), split(p, full, limit, weight))
	if usual {
		f.Message += ". It is reckoned with what is usual for the family of wax (from memory): its sheet states no density or shrinkage"
	}
	p.Missing(f)
}

// split says how many batches of what weight stay within the limit.
func split(p *lint.Pass, full, limit, weight quantity.Rat) string {
	parts, ok := full.Quo(limit)
	if !ok {
		return ""
	}
	parts = parts.Ceil(quantity.Int(1))
	each, ok := weight.Quo(parts)
	if !ok {
		return ""
	}
	return fmt.Sprintf(": melt it as %s batches of %s", parts.Decimal(0), batch.Grams(p.View, each))
}
