package hazard

import (
	"fmt"
	"strings"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Substance is one classified substance in the candle. What several oils
// bring of it counts together: the limits are those of the whole candle.
type Substance struct {
	Name     string // as the first component that brings it is called
	CAS      string // "" where none is stated
	Parts    []Part
	InCandle quantity.Rat // ratio: of everything weighed in
	Hazards  []Hazard
	Limit    quantity.Rat // ratio: its specific concentration limit, where HasLimit
	HasLimit bool
	M        int64 // for short-term harm to water; 0 where none is stated
	MChronic int64 // for long-term harm
	ATEs     []ATE
}

// Part is what one ingredient brings of a substance.
type Part struct {
	Ingredient *batch.Ingredient
	Component  *schema.Block
	InOil      quantity.Rat // ratio; a range at its upper end
	InCandle   quantity.Rat // ratio
	Range      bool         // the share is a range: the true figure is not higher
}

// ATE is a stated acute toxicity estimate: mg/kg by mouth and skin, mg/L
// inhaled; a range at its lower end, where it is worst.
type ATE struct {
	Route Route
	Value quantity.Rat
}

// most is the gravest entry of a class: the lowest category, A before the rest.
func (s *Substance) most(c Class) (Hazard, bool) {
	best, found := Hazard{}, false
	for _, h := range s.Hazards {
		if h.Class == c && (!found || h.Cat < best.Cat || h.Cat == best.Cat && h.Sub == 'A') {
			best, found = h, true
		}
	}
	return best, found
}

// is says whether it is classified in a category of a class.
func (s *Substance) is(c Class, cat int8) bool {
	h, ok := s.most(c)
	return ok && h.Cat == cat
}

// limitFor is the class that the specific concentration limit is for. A sheet
// that gives one for a sensitizer means the sensitization; for other
// substances it is only sure where there is one class it can mean.
func (s *Substance) limitFor() Class {
	if !s.HasLimit {
		return NoClass
	}
	only := NoClass
	for _, h := range s.Hazards {
		switch {
		case !h.Class.Health() || h.Class == only:
		case h.Class == SkinSens:
			return SkinSens
		case only == NoClass:
			only = h.Class
		case only != RespSens:
			only = Outside // two, and nothing tells which
		}
		if h.Class == RespSens {
			only = RespSens
		}
	}
	switch only {
	case RespSens, Muta, Carc, Repr:
		return only
	}
	return NoClass // a limit of another class is not put to use here
}

// limit is the share from which it counts for a class: its own limit, else the
// general one.
func (s *Substance) limit(c Class, general quantity.Rat) (limit quantity.Rat, own bool) {
	if s.limitFor() == c {
		return s.Limit, true
	}
	return general, false
}

// gather lists the substances of the candle, in the order written.
func (c *Classification) gather(b *batch.Batch) {
	for _, list := range [][]batch.Ingredient{b.Fragrances, b.Dyes, b.Additives} {
		for i := range list {
			c.ingredient(&list[i])
		}
	}
}

func (c *Classification) ingredient(in *batch.Ingredient) {
	if in.Stock == nil {
		c.Broken = true // the key is unknown, which another rule says
		return
	}
	listed := false
	for component := range in.Stock.Each("component") {
		listed = true
		c.component(in, component)
	}
	if listed {
		return
	}
	switch said := in.Stock.Get("components"); {
	case said.Broken():
		c.Broken = true
	case said.Absent():
		c.Unknown = append(c.Unknown, in)
	}
}

func (c *Classification) component(in *batch.Ingredient, component *schema.Block) {
	share, hazards := component.Get("share"), component.Get("hazards")
	if !share.IsAmount() || !hazards.Known() || component.Get("limit").Broken() || component.Get("m_factor").Broken() ||
		component.Get("m_factor_chronic").Broken() || component.Get("ate").Broken() || component.Get("cas").Broken() {
		c.Broken = true
		return
	}
	switch {
	case in.ByEye:
		c.doubt(component, fmt.Sprintf("how much %s goes in is left to the eye, so what it brings of %s is not counted", in.Stock.Title(), component.Label))
		return
	case in.OfTotal.State == schema.Broken:
		c.Broken = true
		return
	case !in.OfTotal.Known():
		c.Waits = append(c.Waits, in.OfTotal)
		return
	}
	p := Part{Ingredient: in, Component: component, InOil: share.Amount().High().Base(), Range: share.Amount().IsRange()}
	p.InCandle = p.InOil.Mul(in.OfTotal.Value)
	s := c.substance(component)
	s.Parts = append(s.Parts, p)
	s.InCandle = s.InCandle.Add(p.InCandle)
	s.figures(component)
	c.readHazards(s, component)
	c.readATEs(s, component)
}

// substance finds the substance of a component: by its CAS number, else by its
// name.
func (c *Classification) substance(component *schema.Block) *Substance {
	cas := strings.TrimSpace(component.Get("cas").Text())
	for _, s := range c.Substances {
		if cas != "" && s.CAS == cas || (cas == "" || s.CAS == "") && strings.EqualFold(s.Name, component.Label) {
			if s.CAS == "" {
				s.CAS = cas
			}
			return s
		}
	}
	s := &Substance{Name: component.Label, CAS: cas}
	c.Substances = append(c.Substances, s)
	return s
}

// figures takes over what a component states, the graver of two sheets.
func (s *Substance) figures(component *schema.Block) {
	if limit := component.Get("limit"); limit.IsAmount() {
		if own := limit.Amount().Base(); !s.HasLimit || own.Less(s.Limit) {
			s.Limit, s.HasLimit = own, true
		}
	}
	m := int64(component.Get("m_factor").Whole(0))
	s.M = max(s.M, m)
	s.MChronic = max(s.MChronic, int64(component.Get("m_factor_chronic").Whole(int(m))))
}

func (c *Classification) readHazards(s *Substance, component *schema.Block) {
	said := component.Get("hazards")
	for _, item := range said.Items() {
		h, ok := Parse(item.Text)
		if !ok {
			c.Unread = append(c.Unread, Unread{said, item, fmt.Sprintf("%q of %s cannot be read as a classification: write class, category and statement as section 3 of the sheet gives them, "+
				"such as \"Skin Sens. 1B H317\"", item.Text, component.Label)})
			continue
		}
		s.Hazards = append(s.Hazards, h)
	}
}

func (c *Classification) readATEs(s *Substance, component *schema.Block) {
	said := component.Get("ate")
	for _, item := range said.Items() {
		ate, ok := ParseATE(item.Text)
		if !ok {
			c.Unread = append(c.Unread, Unread{said, item, fmt.Sprintf("%q of %s cannot be read as an acute toxicity estimate: write its route and figure, "+
				"such as \"oral 500 mg/kg\", \"dermal 1100 mg/kg\", \"vapor 3 mg/L\" or \"dust 1.5 mg/L\"", item.Text, component.Label)})
			continue
		}
		s.ATEs = append(s.ATEs, ate)
	}
}

// ParseATE reads "oral 500 mg/kg" or "vapor 3 mg/L", a range at its lower end.
func ParseATE(text string) (ATE, bool) {
	word, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	route := routeNamed(strings.ToLower(strings.Trim(word, ":,")))
	if lead, _, several := strings.Cut(word, "/"); several { // dust/mist
		route = routeNamed(strings.ToLower(lead))
	}
	unit := "mg/kg"
	if route == Vapor || route == Dust {
		unit = "mg/l"
	}
	if len(rest) < len(unit) || route == NoRoute || route == Inhaled || strings.ToLower(rest[len(rest)-len(unit):]) != unit {
		return ATE{}, false
	}
	// The number is read as a per cent is, so that it is exact and may be a range.
	q, err := quantity.Parse(rest[:len(rest)-len(unit)]+"%", quantity.Share)
	if err != nil || q.Low().Number().Sign() <= 0 {
		return ATE{}, false
	}
	return ATE{route, q.Low().Number()}, true
}
