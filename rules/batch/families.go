package batch

import (
	"slices"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// family is what is usual for a family of waxes, of one grade where the grade
// matters. It stands in where a supplier's sheet is silent, and says so. Zero
// quantities: nothing is usual.
//
// Sources. Congealing and pouring temperatures, working ceilings, fragrance
// loads, temperatures for adding fragrance and cures: common practice.
// Flash points, densities and shrinkage: from memory, of open literature on
// paraffins and vegetable waxes; flash points are the low end of what is
// found. A supplier's figure always takes their place.
type family struct {
	name, grade    string
	congealsAt     quantity.Quantity // temperature
	neverAbove     quantity.Quantity // temperature
	flashPoint     quantity.Quantity // temperature
	pourAt         quantity.Quantity // temperature; of a dipping wax the bath
	addFragranceAt quantity.Quantity // temperature
	fragranceLimit quantity.Quantity // proportion; what the grades of the family hold, so at most the upper end
	density        quantity.Quantity // solid, 20 °C
	shrinkage      quantity.Quantity // share of the volume, from the pour to 20 °C
	cure           quantity.Quantity // time
}

// families lists each grade, and under no grade what holds whatever it is:
// of several, the lowest ceiling and flash point, so that nothing is allowed
// that one of them would not bear.
var families = []family{
	{name: "paraffin", grade: "container", congealsAt: degrees("46 to 57 °C"), neverAbove: degrees("93 °C"), flashPoint: degrees("199 °C"),
		pourAt: degrees("71 to 82 °C"), addFragranceAt: degrees("80 to 88 °C"), fragranceLimit: load("6 to 10 % of wax"),
		density: density("0.88 to 0.93 g/mL"), shrinkage: share("10 to 16 %"), cure: days("1 to 3 d")},
	{name: "paraffin", grade: "pillar", congealsAt: degrees("58 to 65 °C"), neverAbove: degrees("100 °C"), flashPoint: degrees("199 °C"),
		pourAt: degrees("80 to 91 °C"), addFragranceAt: degrees("80 to 88 °C"), fragranceLimit: load("3 to 6 % of wax"),
		density: density("0.88 to 0.93 g/mL"), shrinkage: share("10 to 16 %"), cure: days("1 to 3 d")},
	{name: "paraffin", grade: "taper", congealsAt: degrees("57 to 63 °C"), neverAbove: degrees("93 °C"), flashPoint: degrees("199 °C"),
		pourAt: degrees("68 to 74 °C"), fragranceLimit: load("0 to 3 % of wax"),
		density: density("0.88 to 0.93 g/mL"), shrinkage: share("10 to 16 %"), cure: days("1 to 3 d")},
	{name: "paraffin", neverAbove: degrees("93 °C"), flashPoint: degrees("199 °C"),
		density: density("0.88 to 0.93 g/mL"), shrinkage: share("10 to 16 %"), cure: days("1 to 3 d")},

	// Most container soys are poured at 49 to 63 °C, some at 70 to 77 °C.
	{name: "soy", grade: "container", congealsAt: degrees("48 to 54 °C"), neverAbove: degrees("85 °C"), flashPoint: degrees("200 °C"),
		pourAt: degrees("49 to 77 °C"), addFragranceAt: degrees("74 to 85 °C"), fragranceLimit: load("6 to 10 % of wax"),
		density: density("0.90 to 0.93 g/mL"), shrinkage: share("4 to 8 %"), cure: days("7 to 14 d")},
	{name: "soy", grade: "pillar", congealsAt: degrees("54 to 62 °C"), neverAbove: degrees("90 °C"), flashPoint: degrees("200 °C"),
		pourAt: degrees("68 to 80 °C"), addFragranceAt: degrees("74 to 85 °C"), fragranceLimit: load("5 to 7 % of wax"),
		density: density("0.90 to 0.93 g/mL"), shrinkage: share("4 to 8 %"), cure: days("7 to 14 d")},
	{name: "soy", neverAbove: degrees("85 °C"), flashPoint: degrees("200 °C"),
		density: density("0.90 to 0.93 g/mL"), shrinkage: share("4 to 8 %"), cure: days("7 to 14 d")},

	{name: "palm", grade: "pillar", congealsAt: degrees("54 to 63 °C"), neverAbove: degrees("100 °C"), flashPoint: degrees("200 °C"),
		pourAt: degrees("88 to 96 °C"), fragranceLimit: load("5 to 6 % of wax"),
		density: density("0.91 to 0.95 g/mL"), shrinkage: share("5 to 9 %"), cure: days("3 to 7 d")},
	{name: "palm", grade: "container", neverAbove: degrees("100 °C"), flashPoint: degrees("200 °C"), fragranceLimit: load("7 to 10 % of wax"),
		density: density("0.91 to 0.95 g/mL"), shrinkage: share("5 to 9 %"), cure: days("3 to 7 d")},
	{name: "palm", neverAbove: degrees("100 °C"), flashPoint: degrees("200 °C"),
		density: density("0.91 to 0.95 g/mL"), shrinkage: share("5 to 9 %"), cure: days("3 to 7 d")},

	// Fragrance goes into beeswax at 75 °C at most; the low end is that of its pour.
	{name: "beeswax", congealsAt: degrees("62 to 64 °C"), neverAbove: degrees("85 °C"), flashPoint: degrees("204 °C"),
		pourAt: degrees("65 to 75 °C"), addFragranceAt: degrees("65 to 75 °C"), fragranceLimit: load("0 to 5 % of wax"),
		density: density("0.958 to 0.975 g/mL"), shrinkage: share("10 to 15 %"), cure: days("0 to 3 d")},

	{name: "coconut", congealsAt: degrees("36 to 52 °C"), neverAbove: degrees("85 °C"), flashPoint: degrees("200 °C"),
		pourAt: degrees("52 to 68 °C"), addFragranceAt: degrees("65 to 80 °C"), fragranceLimit: load("8 to 12 % of wax"), cure: days("7 to 14 d")},
	{name: "rapeseed", congealsAt: degrees("42 to 56 °C"), neverAbove: degrees("85 °C"), flashPoint: degrees("200 °C"),
		pourAt: degrees("50 to 65 °C"), fragranceLimit: load("6 to 10 % of wax"), cure: days("7 to 14 d")},

	// Gel has no sharp point where it sets. The flash point is the base oil's.
	{name: "gel", neverAbove: degrees("105 °C"), flashPoint: degrees("170 °C"),
		pourAt: degrees("85 to 100 °C"), fragranceLimit: load("3 to 5 % of wax")},

	{name: "stearin", congealsAt: degrees("54 to 70 °C"), neverAbove: degrees("95 °C"), flashPoint: degrees("196 °C"),
		pourAt: degrees("70 to 85 °C"), fragranceLimit: load("2 to 5 % of wax"), density: density("0.94 to 0.98 g/mL"), shrinkage: share("10 %")},
}

// usualSource is where the usual figures for an attribute come from.
func usualSource(attr string) string {
	switch attr {
	case "flash_point", "density", "shrinkage":
		return "from memory"
	}
	return "common practice"
}

func degrees(text string) quantity.Quantity { return figure(text, quantity.Temperature) }
func load(text string) quantity.Quantity    { return figure(text, quantity.Proportion) }
func density(text string) quantity.Quantity { return figure(text, quantity.Density) }
func share(text string) quantity.Quantity   { return figure(text, quantity.Share) }
func days(text string) quantity.Quantity    { return figure(text, quantity.Time) }

// figure reads an entry of the table; one that cannot be read is a mistake in
// the program.
func figure(text string, dim quantity.Dimension) quantity.Quantity {
	q, err := quantity.Parse(text, dim)
	if err != nil {
		panic("batch: " + text + ": " + err.Message)
	}
	return q
}

// of is the family's figure for an attribute of a wax; false: nothing is usual.
func (f *family) of(attr string) (quantity.Quantity, bool) {
	var q quantity.Quantity
	switch attr {
	case "congeals_at":
		q = f.congealsAt
	case "never_above":
		q = f.neverAbove
	case "flash_point":
		q = f.flashPoint
	case "pour_at":
		q = f.pourAt
	case "add_fragrance_at":
		q = f.addFragranceAt
	case "fragrance_limit":
		q = f.fragranceLimit
	case "density":
		q = f.density
	case "shrinkage":
		q = f.shrinkage
	case "cure":
		q = f.cure
	}
	return q, q.Dim() != quantity.None
}

// usual is the family's row for the wax: of the grade it is sold for, else
// what holds for all grades, else nil. Where it is sold for several uses, the
// one this recipe asks for counts.
func (b *Batch) usual(wax *schema.Block) *family {
	name, grade := wax.Get("family").Text(), ""
	for i, use := range wax.Get("suits").Items() {
		if wanted := slices.Contains(Uses(b.Makes), use.Text); i == 0 || wanted {
			grade = gradeFor(use.Text)
			if wanted {
				break
			}
		}
	}
	var all *family
	for i := range families {
		f := &families[i]
		if f.name != name {
			continue
		}
		if f.grade == grade {
			return f
		}
		if f.grade == "" {
			all = f
		}
	}
	return all
}

// gradeFor is the grade of wax that a use takes.
func gradeFor(use string) string {
	switch use {
	case "pillar", "votive":
		return "pillar"
	case "container", "tealight", "melt":
		return "container"
	}
	return use
}
