package formula

import (
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// Rate is what burns away in an hour.
type Rate struct {
	PerHour quantity.Rat // g/h, of the candle that burned fastest
	Candles int          // how many were weighed
}

// Rate is the burn rate from the weights recorded before and after burns of
// this formulation: (before - after) / time, all burns of a candle together.
// Of several candles the fastest counts, so that no promise rests on the
// slowest. False: none was weighed.
func (t *Tested) Rate() (Rate, bool) {
	type burned struct{ grams, seconds quantity.Rat }
	of := map[string]burned{}
	for _, burn := range t.Current {
		before, after, time := burn.Get("weight_before"), burn.Get("weight_after"), burn.Get("burned_for")
		if !before.IsAmount() || !after.IsAmount() || !time.IsAmount() {
			continue
		}
		lost := before.Amount().Base().Sub(after.Amount().Base())
		if lost.Sign() <= 0 || time.Amount().Base().Sign() <= 0 {
			continue // no candle grows heavier: a slip of the pen
		}
		name := burn.Get("candle").Text()
		sum := of[name]
		of[name] = burned{sum.grams.Add(lost), sum.seconds.Add(time.Amount().High().Base())}
	}
	r := Rate{Candles: len(of)}
	for _, one := range of {
		perHour, _ := one.grams.Mul(quantity.Int(3600)).Quo(one.seconds)
		r.PerHour = quantity.Max(r.PerHour, perHour)
	}
	return r, len(of) > 0
}

// unburned is what is left in a container at its end, mm: half an inch, common
// practice.
var unburned = quantity.Int(13)

// Hours is how long such a candle may be said to burn at most: the wax that
// may be burned over the burn rate, rounded down to hours. Of a container the
// last 13 mm are not burned. False: not known.
func (t *Tested) Hours(b *batch.Batch) (quantity.Rat, bool) {
	rate, ok := t.Rate()
	if !ok || t.Vessel >= len(b.Vessels) {
		return quantity.Rat{}, false
	}
	v := &b.Vessels[t.Vessel]
	if !v.Mass.Known() {
		return quantity.Rat{}, false
	}
	usable := v.Mass.Value
	if v.Kind == "container" {
		if !v.Height.Known() || !v.Headspace.Known() {
			return quantity.Rat{}, false
		}
		height := v.Height.Value.Sub(v.Headspace.Value)
		part, ok := height.Sub(unburned).Quo(height)
		if !ok || part.Sign() <= 0 {
			return quantity.Rat{}, false
		}
		usable = usable.Mul(part)
	}
	hours, ok := usable.Quo(rate.PerHour)
	return hours.Floor(quantity.Int(1)), ok && hours.Sign() > 0
}
