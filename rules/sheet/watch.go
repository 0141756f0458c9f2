package sheet

import "wickrule/rules/batch"

// watch is what to watch for at each kind of step: common practice, in our own
// words.
var watch = map[string]string{
	"release":        "Thin and even: a thick coat leaves pits. Silicone molds need none.",
	"warm mold":      "Dry inside, with no drop of water left.",
	"warm container": "Dry inside, warm to the hand all round. A cracked or chipped one goes out.",
	"prime wick":     "Until no more bubbles rise.",
	"seal wick hole": "Press it onto dry, clean metal, and check it again before the pour: what gives way drains onto the bench.",
	"set wick":       "Upright, in the middle, its tab down flat.",
	"melt":           "Thermometer in the wax, not on the wall of the pot. Stay with it. If it smokes: heat off, lid on, never water.",
	"add dye":        "Until no streak is left; a drop on white paper shows the color when it has set.",
	"add fragrance":  "Away from any flame, gloves on, window open. Stir slowly, without whipping air in.",
	"add additive":   "Until nothing is left at the bottom.",
	"pour":           "Slowly and in one go, without bubbles.",
	"relief holes":   "Beside the wick, through the skin and not through the base. Hot wax can spurt: sleeves down.",
	"second pour":    "Not over the line the first pour left.",
	"dip":            "In and out without a stop, and hang straight.",
	"overdip":        "In and out without a stop, and hang straight.",
	"cool":           "Still, and out of drafts.",
	"unmold":         "Cold to the hand all round. Do not pull at the wick.",
	"trim base":      "It stands without rocking.",
	"trim wick":      "Before every burn too.",
	"cure":           "Covered, away from sun and heat.",
	"attach label":   "Where whoever buys it reads it before lighting it.",
}

// watched is what to watch for at a step, by what it is done to.
func watched(b *batch.Batch, step *batch.Step) string {
	text := watch[step.Kind]
	mold, glass := false, false
	for _, i := range step.Vessels {
		v := &b.Vessels[i]
		mold = mold || v.Kind == "mold" && v.Stock != nil && !v.Stock.Get("wick_hole").No()
		glass = glass || v.Kind == "container" && v.Stock != nil && v.Stock.Get("material").Text() == "glass"
	}
	switch {
	case step.Kind == "pour" && mold:
		text += " If it drips from below: stop, let it set there, and seal again."
	case step.Kind == "second pour" && mold:
		text += " Over it, wax runs down between candle and mold and leaves a ridge."
	case step.Kind == "cool" && glass:
		text += " Hot glass stands on wood or cork, not on stone, and never in cold water."
	}
	return text
}
