package cooling

import (
	"math"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// Newton is a thing that cools all through alike: each minute it loses the
// same share of what it is hotter than the room. Not good below the
// temperature at which the wax begins to set.
type Newton struct {
	Tau float64 // s, until a third (1/e) of the difference is left
	Air float64 // °C
}

// After is the temperature in °C so many seconds after another.
func (n Newton) After(from, seconds float64) float64 {
	return n.Air + (from-n.Air)*math.Exp(-seconds/n.Tau)
}

// Until is how many seconds it takes from one temperature in °C to another;
// +Inf where it does not get that cool.
func (n Newton) Until(from, to float64) float64 {
	switch {
	case to >= from:
		return 0
	case to <= n.Air:
		return math.Inf(1)
	}
	return n.Tau * math.Log((from-n.Air)/(to-n.Air))
}

// offThePot is what a pot gives off from its side and from the wax, in W/m2K,
// by radiation and free convection: 8 to 12, from memory.
const offThePot = 10

// usualLiquid is what a kilogram of liquid wax takes per degree, in J, where
// its family does not say.
const usualLiquid = 2200

// PotOf is how the batch cools in its pot, off the heat: all of the wax in a
// pot as wide as tall, that loses heat from the wax and from the side as far
// up as the wax stands, and none downwards. Where the recipe names no pot, it
// is taken to be full. False: a weight or the density it rests on is not
// known.
func PotOf(view *lint.View) (Newton, bool) {
	b := batch.Of.In(view)
	molten := b.Molten()
	if !molten.Known() || molten.Value.Sign() <= 0 {
		return Newton{}, false
	}
	volume := molten.Value.Float64() * 1e-6 // m3
	holds := volume
	if key := view.Recipe.Get("pot"); key.Known() {
		if pot, ok := view.Stock("pot", key.Text()); ok {
			if v := pot.Get("holds"); v.IsAmount() {
				holds = max(v.Amount().Base().Float64()*1e-6, volume)
			}
		}
	}
	width := math.Cbrt(4 * holds / math.Pi)
	top := math.Pi * width * width / 4
	side := math.Pi * width * (volume / top)
	kilograms := b.Total.Value.Float64() / 1000
	return Newton{Tau: kilograms * liquidHeat(b) / (offThePot * (top + side)), Air: celsius(roomOf(view))}, true
}

// liquidHeat is J/kgK, of several waxes that of the first.
func liquidHeat(b *batch.Batch) float64 {
	if stock := b.Waxes[0].Stock; stock != nil {
		if f := usual(stock); f != nil {
			return 1000 * f.cLiquid
		}
	}
	return usualLiquid
}
