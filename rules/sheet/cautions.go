package sheet

import "slices"

// Bench are the usual cautions for whoever melts wax, in our own words: what
// fire services, first aid and the trade agree on.
func Bench() []string { return slices.Clone(bench) }

// Burning are those for test burns.
func Burning() []string { return slices.Clone(burning) }

// BurningWax is the one caution that stands on every page for people.
const BurningWax = "Burning wax: heat off, lid on, never water."

// Deferral says what a page made for people may not be taken for. What is how
// the page calls itself: "sheet", "handbook".
func Deferral(what string) string { return "This " + what + deferral }

var bench = []string{
	"Never put water on burning or overheated wax: it boils at once and throws the wax about. Heat off, lid or fire blanket on; a dry-powder or CO₂ extinguisher stands at hand. Bigger than the pot: leave, and call the fire brigade.",
	"Keep water out of hot wax: pots, molds and tools are dry.",
	"Melt over a water bath or in a thermostatic melter, never over a bare flame. Check the thermometer in ice water and in boiling water now and then.",
	"Stay with wax that is being heated. Smoke says it is too hot: heat off, lid on.",
	"Long sleeves, gloves, glasses. Cool a burn for 20 minutes under running water, and leave the wax on the skin.",
	"Fragrance oils: gloves, fresh air, spills wiped up at once; keep them from children and pets. Read the supplier's safety data sheet first.",
	"No wax down the drain: let it set and bin it.",
}

var burning = []string{
	"Burn tests on a plate that cannot burn, 30 cm (12 in) from anything that can, out of drafts, with a working smoke alarm and somebody there all the time.",
	"Trim the wick before each burn; at most four hours on, at least one off. Stop for good at the last half inch (13 mm) of wax in a container, unless the burn to the end is the test.",
	"Put it out with a snuffer or a lid, never with water. If it flares, relights, cracks or tips: it has failed, whatever else went well.",
	"No plants, paper, ribbon or loose glitter where the flame or the pool can come.",
}

const deferral = " is an aid. It is not a test report, not a certificate and not legal advice; its figures can be out of date. Your suppliers' sheets, the standards themselves, local fire and product codes, your insurer and licensed practice go first."
