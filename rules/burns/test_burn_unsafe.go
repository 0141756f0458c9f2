package burns

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// The tallest flame that a candle may burn with, mm.
var (
	tallest         = quantity.Int(75)
	tallestTealight = quantity.Int(30)
)

// TestBurnUnsafe finds what no candle may do.
var TestBurnUnsafe = &lint.Rule{
	Name:    "test-burn-unsafe",
	Group:   Group,
	Title:   "a test burn of this formulation was not safe",
	Levels:  lint.Every(lint.Must),
	Binding: true,
	Why: "A flame over 75 mm (30 mm on a tealight) lights what is above it and cracks its glass. A candle that flares, lights again after it was put out, cracks its vessel or tips over has " +
		"done once, under your eyes, what it will do again in a room where nobody looks.",
	Remedy: "Make no more of it. Find the cause (mostly too large a wick, too much oil, something that burns in the wax, too narrow or too thin a vessel), change it, and burn three of the changed " +
		"recipe: the old burns then belong to the old formulation and are kept as they are.",
	Card: lint.Card{
		Question: "The flame is very tall. Is that all right?",
		Answer: "No. Over 75 mm (3 in), or 30 mm (1.2 in) on a tealight, it can light what is above it and crack its glass. So can one that flares " +
			"or lights again by itself.",
		AllRight: "A flame well below that, which stands still and does not soot.",
		Do: "Put it out with a lid or a snuffer, never with water. Let it cool, trim the wick to 6 mm (1/4 in), try once more in sight, and " +
			"give it up if it does it again.",
	},
	Source: "EN 15493 and ASTM F2417 (both as publicly described: flame height, secondary ignition, re-ignition, breakage and stability)",
	Cautions: "Never put water on burning wax: smother it with a lid or a fire blanket. If it is bigger than the vessel, leave and call the fire brigade. A candle that failed is not " +
		"burned up at home: let it cool and take it apart.",
	Bad: []lint.Example{
		{
			About:   "a flame of over 75 mm",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `flame      = "1.35 in"`, To: `flame      = "3 in"`}},
			Flags:   []string{`"3 in"`},
		},
		{
			About:  "it flared, and was noted as a failure",
			Recipe: "tide-pillar",
			Changes: []lint.Change{{
				From: "    flame      = \"1.35 in\"\n    soot       = \"none\"\n    seen       = []\n    result     = \"pass\"",
				To:   "    flame      = \"1.35 in\"\n    soot       = \"none\"\n    seen       = [\"mushroom\", \"flare\"]\n    result     = \"fail\"",
			}},
			Flags: []string{`"flare"`, `"fail"`},
		},
	},
	Good: []lint.Example{
		{About: "flames of little over an inch", Recipe: "tide-pillar"},
		{About: "75 mm is the limit, and within it", Recipe: "tide-pillar", Changes: []lint.Change{{From: `flame      = "1.35 in"`, To: `flame      = "75 mm"`}}},
	},
	Also:  []string{"test-burn-missing"},
	Check: checkUnsafe,
}

func checkUnsafe(p *lint.Pass) {
	if len(p.TestBurns()) == 0 {
		return
	}
	b := batch.Of.In(p.View)
	for _, burn := range mayBeCurrent(p) {
		flameTooTall(p, b, burn)
		for _, item := range burn.Get("seen").Items() {
			if what := danger(item.Text); what != "" {
				p.Report(lint.Finding{At: lint.AtItem(burn.Get("seen"), item), Message: fmt.Sprintf("%s %s: whatever else went well, this candle is not safe to burn", whichBurn(burn), what)})
			}
		}
		if result := burn.Get("result"); result.Text() == "fail" {
			p.Report(lint.Finding{At: lint.AtValue(result), Message: whichBurn(burn) + " failed its test, and the recipe is still what was burned: change it before another is made"})
		}
	}
}

func flameTooTall(p *lint.Pass, b *batch.Batch, burn *schema.Block) {
	flame := burn.Get("flame")
	if !flame.IsAmount() {
		return
	}
	limit, kind := tallest, ""
	if v := vesselOf(b, burn); v != nil && b.MadeIn(v) == "tealight" || v == nil && b.Makes == "tealight" {
		limit, kind = tallestTealight, " on a tealight"
	}
	if height := flame.Amount().High(); limit.Less(height.Base()) {
		p.Report(lint.Finding{
			At: lint.AtValue(flame),
			Message: fmt.Sprintf("the flame of %s stood %s high, %s over the %s that is safe%s", whichBurn(burn), batch.Both(p.View, height),
				batch.Millimeters(p.View, height.Base().Sub(limit)), quantity.FromBase(limit, quantity.Millimeter).Both(quantity.Metric), kind),
		})
	}
}

// danger is what the candle did, "" where it is no danger by itself.
func danger(seen string) string {
	switch seen {
	case "flare":
		return "flared: the pool or something in it caught fire"
	case "relight":
		return "lit again after it was put out"
	case "crack":
		return "cracked its vessel"
	case "tip":
		return "tipped over"
	}
	return ""
}
