package cooling

import (
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// family is what is usual for a family of waxes where a sheet is silent, and
// what no sheet states: the figures of the liquid, and how many degrees the
// wax takes to set in. Zero: nothing is usual.
//
// From memory, of open literature on paraffins, fatty acids and hydrogenated
// vegetable oils: middles of what is found. Conductivities are good to a
// fifth, latent heats to a fifth and of vegetable waxes to a third, since their
// crystals take several forms.
type family struct {
	name            string
	kSolid, kLiquid float64 // W/mK
	cSolid, cLiquid float64 // kJ/kgK
	latent          float64 // kJ/kg
	width           float64 // K
}

var families = []family{
	{"paraffin", 0.24, 0.15, 2.2, 2.3, 200, 4},
	{"soy", 0.22, 0.16, 2.0, 2.1, 120, 8},
	{"palm", 0.22, 0.165, 2.0, 2.1, 140, 8},
	{"beeswax", 0.25, 0.16, 2.5, 2.4, 170, 6},
	{"coconut", 0.21, 0.16, 2.1, 2.1, 115, 8},
	{"rapeseed", 0.21, 0.16, 2.0, 2.1, 120, 8},
	{"stearin", 0.29, 0.17, 1.8, 2.2, 200, 3},
	// Of a house blend its own figures count; of the liquid they differ little.
	{"blend", 0, 0.16, 0, 2.2, 0, 6},
}

func usual(wax *schema.Block) *family {
	name := wax.Get("family").Text()
	for i := range families {
		if families[i].name == name {
			return &families[i]
		}
	}
	return nil
}

// Assumed is a figure that nobody has stated and that what is usual stands in
// for.
type Assumed struct {
	Block *schema.Block // the stock item that is silent
	Attr  string
	As    string // what it is usual for: a family of waxes, or a kind of wall
}

// missing is why something cannot be modeled: State Absent with what would
// help, or with nothing where the model does not apply; or Broken. Known:
// nothing is missing.
type missing struct {
	State schema.State
	Lacks *schema.Block
	Attr  string
}

var (
	nothing       = missing{State: schema.Known}
	notApplicable = missing{}
	brokenValue   = missing{State: schema.Broken}
)

func waiting(f batch.Figure) missing { return missing{f.State, f.Lacks, f.Attr()} }

// mediumOf gathers the figures of the recipe's wax: of several waxes the
// average by weight, set at the temperature at which the first begins to.
func mediumOf(b *batch.Batch) (medium, []Assumed, missing) {
	var m medium
	if len(b.Waxes) == 0 {
		return m, nil, notApplicable
	}
	var assumed []Assumed
	var figures [3]float64
	for i, s := range [3]batch.Stated{b.CongealsAt(), b.Density(), b.Shrinkage()} {
		f := s.Middle()
		if !f.Known() {
			return m, nil, waiting(f)
		}
		if s.Family != "" {
			assumed = append(assumed, Assumed{s.Lacks, s.Attr, s.Family})
		}
		figures[i] = f.Value.Float64()
	}
	m.liquidus, m.density = figures[0], 1000*figures[1]*(1-figures[2])
	for i := range b.Waxes {
		in := &b.Waxes[i]
		part := 1.0
		if len(b.Waxes) > 1 {
			if !in.OfWax.Known() {
				return m, nil, waiting(in.OfWax)
			}
			part = in.OfWax.Value.Float64()
		}
		why := m.add(in.Stock, part, &assumed)
		if why != nothing {
			return m, nil, why
		}
	}
	if !m.sensible() {
		return m, nil, notApplicable
	}
	return m, assumed, nothing
}

// add puts a wax's figures in, weighed by its part.
func (m *medium) add(wax *schema.Block, part float64, assumed *[]Assumed) missing {
	if wax == nil || wax.Get("family").Broken() {
		return brokenValue
	}
	f := usual(wax)
	if f == nil {
		if wax.Get("family").Absent() {
			return missing{Lacks: wax, Attr: "family"}
		}
		return notApplicable // gel has no point where it sets
	}
	why := nothing
	stated := func(attr string, usual float64) float64 {
		v := wax.Get(attr)
		switch {
		case v.Known():
			return v.Figure().Float64()
		case v.Broken():
			why = brokenValue
		case usual == 0:
			if why == nothing {
				why = missing{Lacks: wax, Attr: attr}
			}
		default:
			*assumed = append(*assumed, Assumed{wax, attr, f.name})
		}
		return usual
	}
	m.kSolid += part * stated("conductivity", f.kSolid)
	m.cSolid += part * 1000 * stated("heat_capacity", f.cSolid)
	m.latent += part * 1000 * stated("latent_heat", f.latent)
	m.kLiquid += part * f.kLiquid
	m.cLiquid += part * 1000 * f.cLiquid
	m.width += part * f.width
	return why
}

// sensible says whether the figures are such as a wax can have: a slip of a
// decimal point is not modeled.
func (m *medium) sensible() bool {
	return within(m.kSolid, 0.05, 1) && within(m.cSolid, 800, 6000) && within(m.latent, 20_000, 400_000) &&
		within(m.density, 500, 1300) && within(m.liquidus, 25, 100)
}

func within(x, low, high float64) bool { return low <= x && x <= high }

func celsius(q quantity.Quantity) float64 {
	return q.Low().Base().Add(q.High().Base()).Float64() / 2
}
