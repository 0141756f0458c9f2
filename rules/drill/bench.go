package drill

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Bench is a recipe with its figures, ready for slips to be planted in it.
type Bench struct {
	*batch.Batch
	View *lint.View
}

// NewBench is the bench of a view's recipe.
func NewBench(view *lint.View) *Bench { return &Bench{batch.Of.In(view), view} }

// StepsOf are the steps of a kind.
func (b *Bench) StepsOf(kind string) []*batch.Step {
	var steps []*batch.Step
	for i := range b.Steps {
		if b.Steps[i].Kind == kind {
			steps = append(steps, &b.Steps[i])
		}
	}
	return steps
}

// FirstPours are the pours that are no second pours.
func (b *Bench) FirstPours() []*batch.Pour {
	var pours []*batch.Pour
	for i := range b.Pours {
		if !b.Pours[i].Second {
			pours = append(pours, &b.Pours[i])
		}
	}
	return pours
}

// Layered says whether the recipe melts several times, each with waxes of its
// own.
func (b *Bench) Layered() bool { return len(b.StepsOf("melt")) > 1 }

// flame says whether what is made is lit.
func (b *Bench) flame() bool { return b.Makes != "melt" }

func (b *Bench) vessels(kind string) []*batch.Vessel {
	var list []*batch.Vessel
	for i := range b.Vessels {
		if b.Vessels[i].Kind == kind && b.Vessels[i].Stock != nil {
			list = append(list, &b.Vessels[i])
		}
	}
	return list
}

func (b *Bench) molds() []*batch.Vessel      { return b.vessels("mold") }
func (b *Bench) containers() []*batch.Vessel { return b.vessels("container") }

// oneWax is the recipe's only wax; nil where there are several, or it is not
// in stock.
func (b *Bench) oneWax() *batch.Ingredient {
	if len(b.Waxes) != 1 || b.Waxes[0].Stock == nil {
		return nil
	}
	return &b.Waxes[0]
}

// belowCeiling says whether a temperature leaves the rules about danger alone:
// a few degrees under the ceiling and well under the flash point.
func (b *Bench) belowCeiling(celsius quantity.Rat) bool {
	ceiling, flash := b.NeverAbove(), b.FlashPoint()
	return ceiling.Known() && flash.Known() && celsius.Add(kelvin(2)).Less(ceiling.AtLow().Low()) && celsius.Add(kelvin(32)).Less(flash.AtLow().Low())
}

// shelf is the stock of a kind that fits.
func (b *Bench) shelf(kind string, fits func(*schema.Block) bool) []*schema.Block {
	var list []*schema.Block
	for _, item := range b.View.Shop().Shelf(kind) {
		if fits(item) {
			list = append(list, item)
		}
	}
	return list
}

// hasHole says whether the first mold has a wick hole.
func (b *Bench) hasHole() bool {
	return len(b.molds()) > 0 && b.molds()[0].Stock.Get("wick_hole").Yes()
}

// shrinks says whether the recipe is one that the second pour is for.
func (b *Bench) shrinks() bool {
	if len(b.molds()) == 0 {
		return false
	}
	mold := b.molds()[0]
	return !b.Layered() && b.Shrinkage().Known() && quantity.NewRat(6, 100).Less(b.Shrinkage().AtLow().Low()) &&
		mold.Diameter.Known() && mold.Height.Known() && quantity.Int(50).Less(mold.Diameter.Value) && quantity.Int(50).Less(mold.Height.Value)
}

// has says whether a list names something.
func has(v schema.Value, text string) bool {
	for _, item := range v.Items() {
		if item.Text == text {
			return true
		}
	}
	return false
}
