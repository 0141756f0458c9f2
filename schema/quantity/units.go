package quantity

// Unit is one unit of measure as makers write it. A number of units becomes base units as number × Factor + Offset;
// only the two temperature scales have an offset. Units are compared by pointer and never changed.
type Unit struct {
	Symbol    string
	Plural    string // counts only: "drops"; elsewhere the symbol serves for any number
	Dim       Dimension
	System    System
	Basis     Basis // proportions only
	Factor    Rat   // base units per unit, exact
	Offset    Rat   // base units at zero
	Source    string
	Spellings []string // every usual spelling, in lower case; reading ignores case, dots after letters and extra spaces
	id        uint8
}

// Where the factors are published.
const (
	sp811 = "NIST SP 811 (2008), Appendix B"
	hb44  = "NIST HB 44, Appendix C"
	own   = "by definition"
)

// Numbers of the units in the table, small enough to keep inside a Quantity.
const (
	noUnit uint8 = iota
	gram
	kilogram
	milligram
	ounce
	pound
	milliliter
	liter
	cubicCentimeter
	fluidOunce
	cubicInch
	cup
	pint
	quart
	millimeter
	centimeter
	inch
	celsius
	fahrenheit
	celsiusDegrees
	fahrenheitDegrees
	second
	minute
	hour
	day
	week
	percentOfWax
	percentOfTotal
	ouncesPerPound
	gramsPerKilogram
	percent
	gramPerMilliliter
	kilogramPerCubicMeter
	ouncePerCubicInch
	drop
	chip
	block
	piece
	candle
)

var one = Int(1)

// table holds every unit at its number. The inch (25.4 mm), the avoirdupois pound (453.592 37 g) and the US gallon
// (231 in³) are exact in SI, so every factor here is.
var table = numbered([candle + 1]Unit{
	noUnit: {Factor: one, Source: own},

	gram: {Symbol: "g", Dim: Weight, System: Metric, Factor: one, Source: own,
		Spellings: []string{"g", "gram", "grams", "gramme", "grammes", "gm", "gms"}},
	kilogram: {Symbol: "kg", Dim: Weight, System: Metric, Factor: Int(1000), Source: own,
		Spellings: []string{"kg", "kgs", "kilogram", "kilograms", "kilogramme", "kilogrammes", "kilo", "kilos"}},
	milligram: {Symbol: "mg", Dim: Weight, System: Metric, Factor: NewRat(1, 1000), Source: own,
		Spellings: []string{"mg", "milligram", "milligrams", "milligramme", "milligrammes"}},
	ounce: {Symbol: "oz", Dim: Weight, System: US, Factor: NewRat(28_349_523_125, 1_000_000_000), Source: sp811 + "; " + hb44,
		Spellings: []string{"oz", "ozs", "ounce", "ounces"}},
	pound: {Symbol: "lb", Dim: Weight, System: US, Factor: NewRat(45_359_237, 100_000), Source: sp811 + "; " + hb44,
		Spellings: []string{"lb", "lbs", "pound", "pounds"}},

	milliliter: {Symbol: "mL", Dim: Volume, System: Metric, Factor: one, Source: own,
		Spellings: []string{"ml", "mls", "milliliter", "milliliters", "millilitre", "millilitres"}},
	liter: {Symbol: "L", Dim: Volume, System: Metric, Factor: Int(1000), Source: own,
		Spellings: []string{"l", "liter", "liters", "litre", "litres"}},
	cubicCentimeter: {Symbol: "cm³", Dim: Volume, System: Metric, Factor: one, Source: sp811,
		Spellings: []string{"cm3", "cc", "ccm", "cu cm", "cubic cm", "cubic centimeter", "cubic centimeters", "cubic centimetre", "cubic centimetres"}},
	fluidOunce: {Symbol: "fl oz", Dim: Volume, System: US, Factor: NewRat(295_735_295_625, 10_000_000_000), Source: sp811 + "; " + hb44,
		Spellings: []string{"fl oz", "floz", "fl-oz", "fl ounce", "fl ounces", "fluid oz", "fluid ounce", "fluid ounces", "us fl oz", "us fluid ounce", "us fluid ounces"}},
	cubicInch: {Symbol: "in³", Dim: Volume, System: US, Factor: NewRat(16_387_064, 1_000_000), Source: sp811 + "; " + hb44,
		Spellings: []string{"in3", "cu in", "cubic in", "cubic inch", "cubic inches"}},
	cup: {Symbol: "cup", Dim: Volume, System: US, Factor: NewRat(2_365_882_365, 10_000_000), Source: sp811 + "; " + hb44,
		Spellings: []string{"cup", "cups", "us cup", "us cups"}},
	pint: {Symbol: "pt", Dim: Volume, System: US, Factor: NewRat(473_176_473, 1_000_000), Source: sp811 + "; " + hb44,
		Spellings: []string{"pt", "pts", "pint", "pints", "us pint", "us pints"}},
	quart: {Symbol: "qt", Dim: Volume, System: US, Factor: NewRat(946_352_946, 1_000_000), Source: sp811 + "; " + hb44,
		Spellings: []string{"qt", "qts", "quart", "quarts", "us quart", "us quarts"}},

	millimeter: {Symbol: "mm", Dim: Length, System: Metric, Factor: one, Source: own,
		Spellings: []string{"mm", "millimeter", "millimeters", "millimetre", "millimetres"}},
	centimeter: {Symbol: "cm", Dim: Length, System: Metric, Factor: Int(10), Source: own,
		Spellings: []string{"cm", "cms", "centimeter", "centimeters", "centimetre", "centimetres"}},
	inch: {Symbol: "in", Dim: Length, System: US, Factor: NewRat(254, 10), Source: sp811 + "; " + hb44,
		Spellings: []string{"in", "ins", "inch", "inches", `"`, "″", "”"}},

	celsius: {Symbol: "°C", Dim: Temperature, System: Metric, Factor: one, Source: own,
		Spellings: []string{"°c", "c", "deg c", "degc", "degree c", "degrees c", "celsius", "°celsius", "deg celsius", "degree celsius", "degrees celsius", "centigrade", "degrees centigrade"}},
	fahrenheit: {Symbol: "°F", Dim: Temperature, System: US, Factor: NewRat(5, 9), Offset: NewRat(-160, 9), Source: sp811 + ", B.8",
		Spellings: []string{"°f", "f", "deg f", "degf", "degree f", "degrees f", "fahrenheit", "°fahrenheit", "deg fahrenheit", "degree fahrenheit", "degrees fahrenheit"}},

	// The same spellings where a difference is meant; reading picks these by the place.
	celsiusDegrees:    {Symbol: "°C", Dim: Difference, System: Metric, Factor: one, Source: own},
	fahrenheitDegrees: {Symbol: "°F", Dim: Difference, System: US, Factor: NewRat(5, 9), Source: sp811 + ", B.8"},

	second: {Symbol: "s", Dim: Time, System: Metric, Factor: one, Source: own,
		Spellings: []string{"s", "sec", "secs", "second", "seconds"}},
	minute: {Symbol: "min", Dim: Time, System: Metric, Factor: Int(60), Source: sp811,
		Spellings: []string{"min", "mins", "minute", "minutes"}},
	hour: {Symbol: "h", Dim: Time, System: Metric, Factor: Int(3600), Source: sp811,
		Spellings: []string{"h", "hr", "hrs", "hour", "hours"}},
	day: {Symbol: "d", Dim: Time, System: Metric, Factor: Int(86_400), Source: sp811,
		Spellings: []string{"d", "day", "days"}},
	week: {Symbol: "wk", Dim: Time, System: Metric, Factor: Int(604_800), Source: "seven days",
		Spellings: []string{"wk", "wks", "week", "weeks"}},

	percentOfWax: {Symbol: "% of wax", Dim: Proportion, Basis: OfWax, Factor: NewRat(1, 100), Source: own,
		Spellings: []string{"% of wax", "% of the wax", "% wax"}},
	percentOfTotal: {Symbol: "% of total", Dim: Proportion, Basis: OfTotal, Factor: NewRat(1, 100), Source: own,
		Spellings: []string{"% of total", "% of the total", "% total"}},
	ouncesPerPound: {Symbol: "oz per lb", Dim: Proportion, System: US, Basis: OfWax, Factor: NewRat(1, 16), Source: hb44 + ": 16 oz in a pound",
		Spellings: []string{"oz per lb", "oz/lb", "oz per pound", "oz/pound", "ounce per lb", "ounces per lb", "ounce per pound", "ounces per pound",
			"oz per lb of wax", "oz/lb of wax", "oz per pound of wax", "ounce per pound of wax", "ounces per pound of wax"}},
	gramsPerKilogram: {Symbol: "g per kg", Dim: Proportion, System: Metric, Basis: OfWax, Factor: NewRat(1, 1000), Source: own,
		Spellings: []string{"g per kg", "g/kg", "gram per kilogram", "grams per kilogram", "gram per kilo", "grams per kilo", "grams per kg",
			"g per kg of wax", "g/kg of wax", "grams per kilogram of wax"}},
	percent: {Symbol: "%", Dim: Share, Factor: NewRat(1, 100), Source: own,
		Spellings: []string{"%"}},

	gramPerMilliliter: {Symbol: "g/mL", Dim: Density, System: Metric, Factor: one, Source: own,
		Spellings: []string{"g/ml", "g per ml", "g/cm3", "g per cm3", "g/cc", "grams per milliliter", "grams per millilitre"}},
	kilogramPerCubicMeter: {Symbol: "kg/m³", Dim: Density, System: Metric, Factor: NewRat(1, 1000), Source: sp811,
		Spellings: []string{"kg/m3", "kg per m3"}},
	ouncePerCubicInch: {Symbol: "oz/in³", Dim: Density, System: US, Factor: NewRat(28_349_523_125, 16_387_064_000), Source: sp811,
		Spellings: []string{"oz/in3", "oz per in3", "oz/cu in", "oz per cu in", "ounces per cubic inch"}},

	drop:   {Symbol: "drop", Plural: "drops", Dim: Count, Factor: one, Source: own, Spellings: []string{"drop", "drops"}},
	chip:   {Symbol: "chip", Plural: "chips", Dim: Count, Factor: one, Source: own, Spellings: []string{"chip", "chips"}},
	block:  {Symbol: "block", Plural: "blocks", Dim: Count, Factor: one, Source: own, Spellings: []string{"block", "blocks"}},
	piece:  {Symbol: "piece", Plural: "pieces", Dim: Count, Factor: one, Source: own, Spellings: []string{"piece", "pieces"}},
	candle: {Symbol: "candle", Plural: "candles", Dim: Count, Factor: one, Source: own, Spellings: []string{"candle", "candles"}},
})

// numbered writes each unit's number into it.
func numbered(units [candle + 1]Unit) [candle + 1]Unit {
	for i := range units {
		units[i].id = uint8(i)
	}
	return units
}

// The units by name, for rules and figures.
var (
	Gram                  = &table[gram]
	Kilogram              = &table[kilogram]
	Milligram             = &table[milligram]
	Ounce                 = &table[ounce]
	Pound                 = &table[pound]
	Milliliter            = &table[milliliter]
	Liter                 = &table[liter]
	CubicCentimeter       = &table[cubicCentimeter]
	FluidOunce            = &table[fluidOunce]
	CubicInch             = &table[cubicInch]
	Cup                   = &table[cup]
	Pint                  = &table[pint]
	Quart                 = &table[quart]
	Millimeter            = &table[millimeter]
	Centimeter            = &table[centimeter]
	Inch                  = &table[inch]
	Celsius               = &table[celsius]
	Fahrenheit            = &table[fahrenheit]
	CelsiusDegrees        = &table[celsiusDegrees] // a difference
	FahrenheitDegrees     = &table[fahrenheitDegrees]
	Second                = &table[second]
	Minute                = &table[minute]
	Hour                  = &table[hour]
	Day                   = &table[day]
	Week                  = &table[week]
	PercentOfWax          = &table[percentOfWax]
	PercentOfTotal        = &table[percentOfTotal]
	OuncesPerPound        = &table[ouncesPerPound]
	GramsPerKilogram      = &table[gramsPerKilogram]
	Percent               = &table[percent]
	GramPerMilliliter     = &table[gramPerMilliliter]
	KilogramPerCubicMeter = &table[kilogramPerCubicMeter]
	OuncePerCubicInch     = &table[ouncePerCubicInch]
	Drop                  = &table[drop]
	Chip                  = &table[chip]
	Block                 = &table[block]
	Piece                 = &table[piece]
	Candle                = &table[candle]
)

// Units are all the units, in the order of the dimensions.
func Units() []*Unit {
	all := make([]*Unit, 0, len(table)-1)
	for i := 1; i < len(table); i++ {
		all = append(all, &table[i])
	}
	return all
}

// UnitOf is the unit of a symbol or usual spelling, nil where there is none. A temperature symbol gives the scale;
// ask it for AsDifference where a difference is meant.
func UnitOf(symbol string) *Unit {
	if id := unitSpelled(symbol); id != noUnit {
		return &table[id]
	}
	return nil
}

// AsDifference is the unit for differences on a temperature scale; any other unit is itself.
func (u *Unit) AsDifference() *Unit {
	switch u.id {
	case celsius:
		return CelsiusDegrees
	case fahrenheit:
		return FahrenheitDegrees
	}
	return u
}
