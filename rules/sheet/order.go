package sheet

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Order is how much is to be made: so many candles, or what so much wax makes.
// Zero is the batch as it is written.
type Order struct {
	Candles int
	Wax     quantity.Rat // g
}

// ParseOrder reads "24 candles", "24", "2 kg of wax", "2 kg" or "as much as 2 kg
// of wax makes". The error is a sentence without a full stop.
func ParseOrder(asked string) (Order, error) {
	text := trimWax(asked)
	var n int
	if _, err := fmt.Sscanf(text+" |", "%d |", &n); err == nil && n > 0 {
		return Order{Candles: n}, nil
	}
	q, err := quantity.Parse(text, quantity.Weight, quantity.Count)
	switch {
	case err != nil || q.IsRange() || q.Base().Sign() <= 0:
	case q.Dim() == quantity.Weight:
		return Order{Wax: q.Base()}, nil
	case q.Unit().Symbol == "candle" && q.Base().Equal(q.Base().Floor(quantity.Int(1))):
		return Order{Candles: int(q.Base().Float64())}, nil
	}
	return Order{}, fmt.Errorf("%q is no order: write a number of candles (\"24 candles\") or a weight of wax (\"as much as 2 kg of wax makes\")", asked)
}

// trimWax leaves out the words around a weight of wax.
func trimWax(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if rest, ok := strings.CutPrefix(text, "as much as "); ok {
		text = strings.TrimSuffix(rest, " makes")
	}
	for _, end := range []string{" of wax", " wax"} {
		if n := len(text) - len(end); n > 0 && text[n:] == end {
			return text[:n]
		}
	}
	return text
}

// plan is how an order is shared out over the pot.
type plan struct {
	view    *lint.View
	b       *batch.Batch
	step    quantity.Rat
	order   string
	shares  []share      // the largest first; one as written
	sets    int          // how many sets of the recipe's vessels in all
	set     []int        // how many of each vessel a set has
	perSet  quantity.Rat // what to multiply the recipe's weights by for one set
	written bool         // nothing is scaled
	remarks []string
}

// share is what one pot takes: so many sets, so many times.
type share struct{ size, times int }

const most = 100_000 // candles of an order

// planned works out how often the recipe is made, in how many pots.
func planned(view *lint.View, o Order, step quantity.Rat) (*plan, error) {
	b := batch.Of.In(view)
	p := &plan{view: view, b: b, step: step, order: "as written", shares: []share{{1, 1}}, sets: 1, written: true, perSet: quantity.Int(1)}
	if o == (Order{}) {
		return p, nil
	}
	p.written = false
	if b.WaxWeight.State != schema.Known || b.WaxWeight.Value.Sign() <= 0 {
		return nil, fmt.Errorf("%s cannot be made to order: the weight of its wax is not known", view.Recipe.Title())
	}
	in, each := p.sharedSet()
	if o.Candles > 0 {
		if err := p.forCandles(o.Candles, in, each); err != nil {
			return nil, err
		}
	} else if err := p.forWax(o.Wax, in, each); err != nil {
		return nil, err
	}
	if p.sets*each > most {
		return nil, fmt.Errorf("an order is at most %d candles", most)
	}
	p.share()
	return p, nil
}

// sharedSet is the smallest set of vessels in the proportion of the recipe:
// how many sets the recipe makes, and how many candles a set is.
func (p *plan) sharedSet() (in, each int) {
	for i := range p.b.Vessels {
		in = gcd(in, p.b.Vessels[i].Count)
	}
	in = max(1, in)
	for i := range p.b.Vessels {
		p.set = append(p.set, p.b.Vessels[i].Count/in)
		each += p.b.Vessels[i].Count / in
	}
	return in, each
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func (p *plan) forCandles(candles, in, each int) error {
	if each == 0 {
		return fmt.Errorf("%s names nothing to pour into, so it cannot be made by number: order it by weight of wax", p.view.Recipe.Title())
	}
	if candles%each != 0 {
		return fmt.Errorf("%d candles cannot be shared out as the recipe has its vessels: order a multiple of %d", candles, each)
	}
	p.order = count(candles, "candle", "candles")
	p.sets = candles / each
	p.perSet, _ = quantity.Int(1).Quo(quantity.Int(int64(in)))
	if s := p.b.Spare; s.Known() {
		switch {
		case s.Value.Sign() < 0:
			p.remarks = append(p.remarks, "The recipe as it is written does not fill its vessels, and so does this batch not: weigh more of everything, in proportion.")
		case s.Value.Less(quantity.NewRat(2, 100)):
			p.remarks = append(p.remarks, "Little is spare for what stays in the pot: 3 to 5 % is usual (common practice). Weigh more of everything, in proportion, where your pot holds back more.")
		}
	}
	return nil
}

func (p *plan) forWax(wax quantity.Rat, in, each int) error {
	p.order = quantity.FromBase(wax, quantity.Gram).Both(p.view.Units()) + " of wax"
	times, _ := wax.Quo(p.b.WaxWeight.Value)
	if each == 0 || !p.b.Takes.Known() || !p.b.Total.Known() {
		p.perSet = times
		p.remarks = append(p.remarks, "How many candles this fills is not known, since the recipe's vessels do not say what they take.")
		p.set = nil
		return nil
	}
	perSet, _ := p.b.Takes.Value.Quo(quantity.Int(int64(in)))
	fits, ok := p.b.Total.Value.Mul(times).Quo(perSet)
	if !ok || fits.Less(quantity.Int(1)) {
		return fmt.Errorf("%s is too little wax: it does not fill %s", p.order, count(each, "candle", "candles"))
	}
	if quantity.Int(most).Less(fits) {
		return fmt.Errorf("an order is at most %d candles", most)
	}
	p.sets = int(fits.Floor(quantity.Int(1)).Float64())
	p.perSet, _ = times.Quo(quantity.Int(int64(p.sets)))
	return nil
}

// fullEnough is how full of molten wax a pot may stand: three quarters, and
// nine tenths for a vat that is dipped into (common practice).
func fullEnough(b *batch.Batch) quantity.Rat {
	if b.Makes == "taper" {
		return quantity.NewRat(9, 10)
	}
	return quantity.NewRat(3, 4)
}

// share divides the sets over as few pots as hold them, as evenly as can be.
func (p *plan) share() {
	p.shares = []share{{p.sets, 1}}
	pot := potOf(p.view)
	molten := p.b.Molten()
	if pot == nil || !pot.Get("holds").IsAmount() || !molten.Known() {
		p.remarks = append(p.remarks, "Whether it all goes into the pot at once is not known: the recipe's pot, or what it holds, is not written down.")
		return
	}
	room := pot.Get("holds").Amount().Base().Mul(fullEnough(p.b))
	fits, ok := room.Quo(molten.Value.Mul(p.b.AtOnce()).Mul(p.perSet))
	if !ok || !fits.Less(quantity.Int(int64(p.sets))) {
		return
	}
	atOnce := int(fits.Floor(quantity.Int(1)).Float64())
	if atOnce < 1 {
		p.remarks = append(p.remarks, "Even one candle's wax is more than the pot may hold: take a larger pot.")
		return
	}
	pots := (p.sets + atOnce - 1) / atOnce
	size, more := p.sets/pots, p.sets%pots
	p.shares = nil
	if more > 0 {
		p.shares = append(p.shares, share{size + 1, more})
	}
	p.shares = append(p.shares, share{size, pots - more})
}

func potOf(view *lint.View) *schema.Block {
	said := view.Recipe.Get("pot")
	if !said.Known() {
		return nil
	}
	pot, _ := view.Stock("pot", said.Text())
	return pot
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
