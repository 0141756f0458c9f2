// Package sheet makes the batch sheet of a recipe: what to weigh, what to do
// in which order and how hot, what to watch for, what is found wrong, and what
// has been burned. A Sheet is made once; Markdown, text, HTML and JSON are
// written from it.
package sheet

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Sheet is one batch as it lies on the bench. Texts are ready to be read;
// weights come with their grams.
type Sheet struct {
	Wickrule  int       `json:"wickrule"` // the version of this form: 1
	Title     string    `json:"title"`
	Recipe    string    `json:"recipe"` // its key
	Shop      string    `json:"shop"`
	Date      string    `json:"date"`              // the day the sheet was made, "2026-10-04"
	Makes     string    `json:"makes,omitempty"`   // "pillar"
	MadeFor   string    `json:"made_for"`          // "sale"
	Markets   []string  `json:"markets"`           // where it is sold
	Formula   string    `json:"formula,omitempty"` // the fingerprint of the formulation
	Order     string    `json:"order"`             // "24 candles", "as written"
	Step      string    `json:"scale_step"`        // what weights are rounded to
	Verdict   string    `json:"verdict"`           // "do not pour", "put right first", "nothing found"
	Vessels   []Vessel  `json:"vessels"`
	Pots      []Pot     `json:"pots"` // what is melted at once, the largest first
	Steps     []Step    `json:"steps"`
	Windows   []Window  `json:"windows"` // modeled times, each for a pour
	Curves    []Curve   `json:"curves"`
	Sections  []Section `json:"sections"`
	Findings  []Finding `json:"findings"`
	Unchecked []string  `json:"unchecked"`
	Burns     []Burned  `json:"burns"`
	Labels    []Label   `json:"labels"`
	Hazards   []Hazards `json:"hazards"` // of each market that asks for it
	Remarks   []string  `json:"remarks"` // what the sheet itself has to say of this batch
	Bench     []string  `json:"bench"`   // the usual cautions at the bench
	Burning   []string  `json:"burning"` // … and with test burns
	Deferral  string    `json:"deferral"`

	must, should int
}

// Weight is a weight as it is put on the scale, in both systems.
type Weight struct {
	Grams float64 `json:"grams"` // to the milligram
	Text  string  `json:"text"`  // in the shop's units
	Other string  `json:"other"` // in the other system
}

// Vessel is what the candles are formed in.
type Vessel struct {
	Title     string  `json:"title"`
	Count     int     `json:"count"`
	Wick      string  `json:"wick,omitempty"`
	Each      *Weight `json:"each,omitempty"`       // one finished candle, at solid density
	FirstPour *Weight `json:"first_pour,omitempty"` // into each
	TopUp     *Weight `json:"second_pour,omitempty"`
}

// Pot is what is melted at once.
type Pot struct {
	Times   int     `json:"times"`   // how many such pots
	Candles int     `json:"candles"` // from each
	Pot     string  `json:"pot,omitempty"`
	Full    string  `json:"full,omitempty"` // "1.4 L molten, 48 % of the pot"
	Weigh   []Weigh `json:"weigh"`
	Total   *Weight `json:"total,omitempty"`
	Spare   *Weight `json:"spare,omitempty"` // of the total, for what stays in the pot
}

// Weigh is one line of what is weighed.
type Weigh struct {
	Kind   string  `json:"kind"` // wax, fragrance, dye, additive
	Title  string  `json:"title"`
	Weight *Weight `json:"weight,omitempty"`
	Said   string  `json:"said,omitempty"` // the number or volume that is written: "3 drops"
	Share  string  `json:"share,omitempty"`
	Note   string  `json:"note,omitempty"`
}

// Options are what a sheet is made for.
type Options struct {
	Today string                        // "2026-10-04"
	Order Order                         // zero: the batch as it is written
	Scale quantity.Rat                  // the step of the scale in g; zero: the shop's, else 1 g
	Rules func(*lint.Shop) []*lint.Rule // what the batch is checked by
}

// Make makes the sheet of a recipe of the shop. It is an error when the order
// cannot be worked out, in words for the maker.
func Make(shop *lint.Shop, recipe *schema.Block, o Options) (*Sheet, error) {
	view := lint.NewView(shop, recipe, o.Today)
	step := scaleStep(view, o.Scale)
	p, err := planned(view, o.Order, step)
	if err != nil {
		return nil, err
	}
	scaled, err := p.over(shop, recipe, p.shares[0].size)
	if err != nil {
		return nil, err
	}
	now := lint.NewView(scaled.shop, scaled.recipe, o.Today)
	b := batch.Of.In(now)
	f := formula.Of.In(view)
	s := &Sheet{
		Wickrule: 1, Title: recipe.Title(), Recipe: recipe.Label, Shop: shopTitle(view), Date: o.Today,
		Makes: b.Makes, MadeFor: view.MadeFor.String(), Formula: f.Code, Order: p.order,
		Step:    quantity.FromBase(step, quantity.Gram).Show(quantity.Metric),
		Markets: []string{}, Vessels: []Vessel{}, Windows: []Window{}, Curves: []Curve{}, Sections: []Section{}, Findings: []Finding{}, Unchecked: []string{},
		Burns: []Burned{}, Labels: []Label{}, Hazards: []Hazards{}, Remarks: append([]string{}, p.remarks...),
		Bench: bench, Burning: burning, Deferral: Deferral("sheet"),
	}
	for _, m := range view.Markets() {
		s.Markets = append(s.Markets, m.Text)
	}
	for i, share := range p.shares {
		at := scaled
		if i > 0 {
			if at, err = p.over(shop, recipe, share.size); err != nil {
				return nil, err
			}
		}
		s.Pots = append(s.Pots, s.pot(lint.NewView(at.shop, at.recipe, o.Today), share, step))
	}
	s.vessels(now, b, p)
	s.steps(now, b)
	s.windows(now, b)
	s.sections(now, b)
	s.labels(now, b)
	s.hazards(now, b)
	s.burns(view)
	s.check(shop, recipe, scaled, o)
	return s, nil
}

func shopTitle(view *lint.View) string {
	if c := view.Shop().Config; c != nil {
		return c.Title()
	}
	return ""
}

// scaleStep is what weights are rounded to, in g.
func scaleStep(view *lint.View, asked quantity.Rat) quantity.Rat {
	if asked.Sign() > 0 {
		return asked
	}
	if c := view.Shop().Config; c != nil {
		if v := c.Get("scale"); v.IsAmount() && v.Amount().Base().Sign() > 0 {
			return v.Amount().Base()
		}
	}
	return quantity.Int(1)
}
