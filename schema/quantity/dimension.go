// Package quantity reads, keeps, compares and prints amounts the way a candle maker writes them on paper:
// weights, volumes, lengths, temperatures, times, proportions, densities and counts. Numbers are exact
// rationals from the digits as written; nothing here rounds before it prints.
package quantity

// Dimension says what kind of thing a quantity measures. Two quantities are only ever compared within one.
type Dimension uint8

// The dimensions. A temperature and a temperature difference use the same symbols and are kept apart because
// 15 °F of difference is 25/3 K, while a bath at 15 °F is at -85/9 °C.
const (
	None        Dimension = iota
	Weight                // base unit g
	Volume                // base unit mL
	Length                // base unit mm
	Temperature           // base unit °C
	Difference            // base unit K
	Time                  // base unit s
	Proportion            // part over whole, on a stated basis: 8 % of wax is 2/25
	Share                 // part over whole where only one meaning exists: 12 % is 3/25
	Density               // base unit g/mL
	Count                 // a number of drops, chips, blocks, pieces or candles
)

// kind is what there is to say of one dimension.
type kind struct {
	name     string
	examples string
	units    []string
}

var kinds = [...]kind{
	None:        {"nothing", "", nil},
	Weight:      {"weight", `"36 oz" or "1.13 kg"`, []string{"oz", "g", "lb", "kg"}},
	Volume:      {"volume", `"300 mL" or "10 fl oz"`, []string{"fl oz", "mL", "cup", "L"}},
	Length:      {"length", `"3 in" or "76 mm"`, []string{"in", "mm", "cm"}},
	Temperature: {"temperature", `"176 °F" or "80 °C"`, []string{"°F", "°C"}},
	Difference:  {"temperature difference", `"10 °F" or "5 °C"`, []string{"°F", "°C"}},
	Time:        {"time", `"1 h 45 min" or "2 weeks"`, []string{"min", "h", "d", "wk", "s"}},
	Proportion:  {"proportion", `"8 % of wax" or "1 oz per lb"`, []string{"% of wax", "% of total", "oz per lb"}},
	Share:       {"share", `"12 %"`, []string{"%"}},
	Density:     {"density", `"0.90 g/mL"`, []string{"g/mL", "kg/m³", "oz/in³"}},
	Count:       {"count", `"3 drops" or "1/2 block"`, []string{"drops", "chips", "pieces", "blocks", "candles"}},
}

// String is the dimension's name in a maker's words, for instance "temperature difference".
func (d Dimension) String() string { return kinds[d].name }

// Examples is how such a quantity is written, quoted, for messages: `"36 oz" or "1.13 kg"`.
func (d Dimension) Examples() string { return kinds[d].examples }

// Units are the units to offer beside a bare number, commonest first.
func (d Dimension) Units() []string { return append([]string(nil), kinds[d].units...) }

// System is the set of units a shop shows first.
type System uint8

// The two systems a workshop uses.
const (
	US System = iota
	Metric
)

// other is the system a figure is repeated in.
func (s System) other() System {
	if s == US {
		return Metric
	}
	return US
}

// Basis says what a proportion is a proportion of.
type Basis uint8

// The bases. Of wax counts the wax alone; of total counts everything weighed in.
const (
	NoBasis Basis = iota
	OfWax
	OfTotal
)

// String is the basis as it stands after a percent sign: "of wax", "of total", or "".
func (b Basis) String() string {
	switch b {
	case OfWax:
		return "of wax"
	case OfTotal:
		return "of total"
	}
	return ""
}
