package heat

import (
	"slices"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// limits are the temperatures that the wax in the pot is held to.
type limits struct {
	melt, fragrance, pour batch.Stated // of a loose blend the ranges its waxes have in common
	congeals              batch.Stated
	waxes                 []waxLimits // each wax by itself, so that one sheet's silence hides nothing another sheet says
	single                [1]waxLimits
}

// waxLimits are what one wax must stay below.
type waxLimits struct {
	ceiling, flash batch.Stated
	top            quantity.Rat // °C, the upper end of the hottest range its sheet states, where it is sound; else absolute zero
}

var (
	absoluteZero = quantity.NewRat(-27315, 100)
	// margin is how far below the wax's flash point every step stays: 30 °C,
	// which is 54 °F. Common practice.
	margin = quantity.Int(30)
	// hardStop is as hot as wax is ever made where no flash point is stated:
	// 121 °C, 250 °F. Common practice.
	hardStop = quantity.Int(121)
)

// limitsOf are the limits of the batch's waxes, or where only is not nil of
// those whose keys it lists. A figure that is doubtful in its scale counts as
// not stated: the stock's own finding says so.
func limitsOf(whole *batch.Batch, only []string) *limits {
	b := *whole
	if only != nil {
		b.Waxes = nil
		for i := range whole.Waxes {
			if slices.Contains(only, whole.Waxes[i].Block.Label) {
				b.Waxes = append(b.Waxes, whole.Waxes[i])
			}
		}
	}
	l := &limits{
		melt:      sound(b.MeltTo()),
		fragrance: sound(b.AddFragranceAt()),
		pour:      sound(b.PourAt()),
		congeals:  b.CongealsAt(),
	}
	l.waxes = l.single[:]
	if len(b.Waxes) != 1 {
		l.waxes = make([]waxLimits, len(b.Waxes))
	}
	all := b.Waxes
	for i := range l.waxes {
		b.Waxes = all[i : i+1]
		l.waxes[i] = waxLimits{ceiling: sound(b.NeverAbove()), flash: sound(b.FlashPoint()), top: statedTop(all[i].Stock)}
	}
	return l
}

// sound is a figure, or none where its scale is doubtful.
func sound(s batch.Stated) batch.Stated {
	if stockDoubtful(s.Value) || s.Blend && stockDoubtful(s.AtLow().Value) {
		return batch.Stated{Wax: s.Wax, Attr: s.Attr}
	}
	return s
}

// statedTop is the upper end of the hottest range on the wax's sheet. What
// lies beyond the hard stop does not count: no range is a reason to go there.
func statedTop(wax *schema.Block) quantity.Rat {
	top := absoluteZero
	for _, attr := range [...]string{"melt_to", "add_fragrance_at", "pour_at"} {
		if v := wax.Get(attr); v.IsAmount() {
			if high := v.Amount().High().Base(); high.Less(hardStop) {
				top = quantity.Max(top, high)
			}
		}
	}
	return top
}

// own is the range that a kind of step is held to; nil: it has none.
func (l *limits) own(kind string) *batch.Stated {
	switch kind {
	case "melt":
		return &l.melt
	case "add fragrance":
		return &l.fragrance
	case "pour":
		return &l.pour
	}
	return nil
}

// worked is the range from the lowest end of the wax's ranges to the highest,
// and whether any of them is stated. Within: none is known.
func (l *limits) worked() (low, high quantity.Rat, by excess) {
	for _, s := range [...]*batch.Stated{&l.melt, &l.fragrance, &l.pour} {
		if !s.Known() {
			continue
		}
		if by == within {
			low, high = s.Low(), s.High()
		}
		low = quantity.Min(low, quantity.Min(s.Low(), s.High()))
		high = quantity.Max(high, quantity.Max(s.Low(), s.High()))
		by = max(by, excessOf(*s))
	}
	return low, high, by
}

// pot follows the steps and knows which limits hold for what is in the pot.
type pot struct {
	batch  *batch.Batch
	all    *limits // of all the recipe's waxes
	now    *limits
	only   []string // the waxes melted since the last pour; nil: all
	poured bool
}

// take follows one step. A melt that names its waxes starts a new layer after
// a pour, and adds to the pot before one.
func (p *pot) take(step *batch.Step) {
	switch step.Kind {
	case "pour":
		p.poured = true
	case "melt":
		named := step.Block.Get("wax")
		if !named.Known() {
			p.now, p.only, p.poured = p.all, nil, false
			return
		}
		if p.poured {
			p.only = nil
		}
		p.poured = false
		for _, item := range named.Items() {
			if !slices.Contains(p.only, item.Text) {
				p.only = append(p.only, item.Text)
			}
		}
		p.now = limitsOf(p.batch, p.only)
	}
}
