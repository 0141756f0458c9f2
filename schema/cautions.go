package schema

import "slices"

// Caution is one thing a candle's label tells whoever burns it.
type Caution struct {
	Name  string // as a label block lists it
	Words string // a plain sentence that says it, our own wording and not the standard's
}

// MarketCautions is what one market asks of a candle's label.
type MarketCautions struct {
	Market   string
	Standard string   // the standard that lists the cautions
	Source   string   // how far that was checked
	Core     []string // wanted on every candle
	ByType   []TypeCaution
	Further  []string // good to have, none of them required
}

// TypeCaution is a caution that some kinds of candle need in a market.
type TypeCaution struct {
	Name    string
	Which   string // the kinds, as a maker calls them
	Because string // why, to end a sentence about one candle
	needs   func(CandleType) bool
}

// CandleType is what decides which cautions a candle needs besides the core.
type CandleType struct {
	Melt      bool // a wax melt: it has no flame, and no caution is required
	Container bool // it burns in the vessel it was poured into
	Floats    bool
}

// CautionNames is the closed list, in the order a label shows them.
func CautionNames() []string {
	names := make([]string, len(cautions))
	for i := range cautions {
		names[i] = cautions[i].Name
	}
	return names
}

// CautionNamed is the caution of that name, or nil.
func CautionNamed(name string) *Caution {
	for i := range cautions {
		if cautions[i].Name == name {
			return &cautions[i]
		}
	}
	return nil
}

// Markets are the markets the format knows: US, EU, UK.
func Markets() []string { return slices.Clone(marketNames) }

// CautionsIn is what the market asks of a candle's label, or nil for a market
// the format does not know. Must not be changed.
func CautionsIn(market string) *MarketCautions {
	for i := range marketCautions {
		if marketCautions[i].Market == market {
			return &marketCautions[i]
		}
	}
	return nil
}

// RequiredCautions are the names of the cautions a candle of that type needs
// in a market, those every candle needs first.
func RequiredCautions(market string, candle CandleType) []string {
	in := CautionsIn(market)
	if in == nil || candle.Melt {
		return nil
	}
	names := slices.Clone(in.Core)
	for _, t := range in.ByType {
		if t.needs(candle) {
			names = append(names, t.Name)
		}
	}
	return names
}

// CautionCovers says whether a label that has one caution needs no other for
// the wanted one: children and pets includes children.
func CautionCovers(has, wanted string) bool {
	return has == wanted || has == childrenAndPets && wanted == children
}

const (
	withinSight     = "burn within sight"
	thingsThatCatch = "keep away from things that catch fire"
	children        = "keep away from children"
	childrenAndPets = "keep away from children and pets"
	warningSign     = "general warning sign"
	neverUnattended = "never leave unattended"
	holder          = "heat-resistant holder"
	bowl            = "float in a suitable bowl"
)

var cautions = []Caution{
	{withinSight, "Keep the burning candle where you can see it."},
	{neverUnattended, "Never leave a burning candle alone."},
	{thingsThatCatch, "Burn it away from anything that can catch fire."},
	{children, "Keep it out of the reach of children."},
	{childrenAndPets, "Keep it out of the reach of children and pets."},
	{warningSign, "The triangle with the exclamation mark, printed above the other signs."},
	{holder, "Stand it in a holder that withstands heat."},
	{bowl, "Float it in a suitable bowl filled with water."},
	{"trim the wick", "Cut the wick short before each burn."},
	{"burn at most four hours", "Put it out after four hours and let it set before you light it again."},
	{"stop at the last half inch", "Stop burning it when half an inch of wax is left."},
	{"keep out of draughts", "Burn it where the air is still."},
	{"keep the pool clear", "Keep the melted wax free of matches and bits of wick."},
	{"do not move when lit", "Do not carry it while it burns or while the wax is liquid."},
	{"keep candles apart", "Leave a good space between burning candles."},
	{"snuff, do not blow", "Put the flame out with a snuffer; do not blow it out."},
	{"no liquid to put it out", "Never put it out with water or another liquid."},
	{"burn upright", "Burn it standing upright."},
	{"remove packaging", "Take all packaging off before you light it."},
	{"away from heat", "Keep it away from heaters and other sources of heat."},
}

var supplementary = []string{"trim the wick", "burn at most four hours", "stop at the last half inch", "keep out of draughts",
	"keep the pool clear", "do not move when lit", "keep candles apart", "snuff, do not blow", "no liquid to put it out", "burn upright",
	"remove packaging", "away from heat"}

var enByType = []TypeCaution{
	{Name: holder, Which: "candles without a container", Because: "it stands on its own, and its flame ends at whatever is under it",
		needs: func(c CandleType) bool { return !c.Container && !c.Floats }},
	{Name: bowl, Which: "floating candles", Because: "it floats",
		needs: func(c CandleType) bool { return c.Floats }},
}

// The texts of the standards are sold and were not at hand. The three US
// statements and the EN core set agree in several published summaries; what
// rests on less says so.
var marketCautions = []MarketCautions{
	{
		Market: "US", Standard: "ASTM F2058",
		Source:  "three core statements: ASTM F2058-07(2021), published abstract and summaries; the others: common practice",
		Core:    []string{withinSight, thingsThatCatch, children},
		Further: supplementary,
	},
	{
		Market: "EU", Standard: "EN 15494",
		Source: "sign and three core cautions: EN 15494:2019, published summaries; by type of candle and the others: from memory",
		Core:   []string{warningSign, neverUnattended, childrenAndPets, thingsThatCatch},
		ByType: enByType, Further: supplementary,
	},
	{
		Market: "UK", Standard: "EN 15494",
		Source: "as for the EU, the standard being published as BS EN 15494: from memory",
		Core:   []string{warningSign, neverUnattended, childrenAndPets, thingsThatCatch},
		ByType: enByType, Further: supplementary,
	},
}
