package lsp

import (
	"cmp"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// candidate is a block whose key may be written, with how well it suits.
type candidate struct {
	block *schema.Block
	rank  int          // 0 suits; then what is not known to; then what does not, by how much speaks against it
	off   quantity.Rat // of those that suit alike: how far from the middle
	why   []string
	has   bool // why says what speaks for it, and not yet against
}

// suits notes what speaks for a candidate. Nothing else has been said of it yet.
func (c *candidate) suits(why string) {
	if len(c.why) == 0 {
		c.why, c.has = []string{why}, true
	}
}

// doubt notes what is not known of a candidate.
func (c *candidate) doubt(why string) {
	if c.add(why) {
		c.rank = max(c.rank, 1)
	}
}

// against notes what speaks against a candidate.
func (c *candidate) against(why string) {
	if c.add(why) {
		c.rank = max(c.rank, 1) + 1
	}
}

// add notes a reason, in place of what spoke for the candidate. False: it is
// noted already, of another vessel.
func (c *candidate) add(why string) bool {
	if c.has {
		c.why, c.has = nil, false
	}
	if slices.Contains(c.why, why) {
		return false
	}
	c.why = append(c.why, why)
	return true
}

// keys offers the keys of some kinds, those that suit first, each with the
// reason.
func (a *asked) keys(kinds []string) []offer {
	list := a.candidates(kinds)
	offers := make([]offer, 0, len(list))
	for i := range list {
		c := &list[i]
		o := offer{label: c.block.Label, kind: protocol.CompletionItemKindReference, why: strings.Join(c.why, "; "),
			of: described{What: "key", In: c.block.Name(), Name: c.block.Label}}
		if title := c.block.Title(); title != c.block.Label {
			o.detail = title
		}
		if len(kinds) > 1 {
			o.detail = strings.TrimSuffix(c.block.Name()+", "+o.detail, ", ")
		}
		offers = append(offers, o)
	}
	return offers
}

func (a *asked) candidates(kinds []string) []candidate {
	if own := a.ofThisRecipe(kinds); own != nil {
		return own
	}
	var list []candidate
	for _, kind := range kinds {
		for _, b := range a.shop.Shelf(kind) {
			if b.Label == "" || a.defines(b) {
				continue
			}
			c := candidate{block: b}
			if a.made != nil {
				a.judge(&c, kind)
			}
			list = append(list, c)
		}
	}
	slices.SortStableFunc(list, func(x, y candidate) int { return cmp.Or(cmp.Compare(x.rank, y.rank), x.off.Cmp(y.off)) })
	return list
}

// defines says whether a block is the one the cursor stands in: it is not made
// of itself.
func (a *asked) defines(b *schema.Block) bool {
	return len(a.path) > 0 && b.File == a.file && b.Span.Start == a.path[0].start
}

// ofThisRecipe is what a step or a topping may name: not what is on the
// shelves, but what the recipe has of it. Nil: the shelves are meant.
func (a *asked) ofThisRecipe(kinds []string) []candidate {
	if a.made == nil || a.attr == nil || a.parent == nil {
		return nil
	}
	var list []candidate
	take := func(key string, stock *schema.Block) {
		if stock != nil && !slices.ContainsFunc(list, func(c candidate) bool { return c.block.Label == key && c.block.Name() == stock.Name() }) {
			list = append(list, candidate{block: stock})
		}
	}
	ingredients := func(of []batch.Ingredient) {
		for i := range of {
			take(of[i].Block.Label, of[i].Stock)
		}
	}
	switch a.attr.Name {
	case "vessel":
		for i := range a.made.Vessels {
			take(a.made.Vessels[i].Block.Label, a.made.Vessels[i].Stock)
		}
	case "wax":
		ingredients(a.made.Waxes)
	case "fragrance":
		ingredients(a.made.Fragrances)
	case "dye":
		ingredients(a.made.Dyes)
	case "additive":
		ingredients(a.made.Additives)
	default:
		return nil
	}
	for i := range list {
		if a.added(list[i].block.Label) {
			list[i].against("added in another step")
		}
	}
	slices.SortStableFunc(list, func(x, y candidate) int { return cmp.Compare(x.rank, y.rank) })
	return append([]candidate{}, list...)
}

// added says whether another step of the kind names the key.
func (a *asked) added(key string) bool {
	if a.attr.Name == "vessel" {
		return false
	}
	for step := range a.recipe.Each("step") {
		if step == a.block || step.Spec != a.parent {
			continue
		}
		for _, item := range step.Get(a.attr.Name).Items() {
			if item.Text == key {
				return true
			}
		}
	}
	return false
}

// judge weighs an item of the shelves for this place of the recipe.
func (a *asked) judge(c *candidate, kind string) {
	if a.place == inLabel {
		for inner := range a.recipe.Each(kind) {
			if inner.Label == c.block.Label && inner != a.own {
				c.against("in this recipe already")
			}
		}
	}
	switch kind {
	case "wick":
		a.judgeWick(c)
	case "wax":
		a.judgeWax(c)
	case "fragrance", "dye", "additive":
		a.judgeMixed(c, kind)
	case "mold", "container", "taper":
		a.judgeVessel(c, kind)
	case "seal":
		a.judgeSeal(c)
	case "label":
		a.judgeLabel(c)
	case "pot":
		a.judgePot(c)
	}
}

// vesselsHere are the vessels that the block the cursor stands in is about.
func (a *asked) vesselsHere() []*batch.Vessel {
	var all, here []*batch.Vessel
	for i := range a.made.Vessels {
		v := &a.made.Vessels[i]
		if v.Block == a.block {
			return []*batch.Vessel{v}
		}
		all = append(all, v)
	}
	for i := range a.made.Steps {
		if s := &a.made.Steps[i]; s.Block == a.block {
			for _, at := range s.Vessels {
				here = append(here, &a.made.Vessels[at])
			}
			return here
		}
	}
	return all
}

// judgeWick: a wick burns a diameter, is made for families of wax, and in a
// container stands on a tab. Several wicks share the area between them, so
// that diameters are compared by their squares.
func (a *asked) judgeWick(c *candidate) {
	wick := c.block
	switch most := wick.Get("lead_at_most"); {
	case wick.Get("core").Text() == "lead", most.IsAmount() && leadBan.Less(most.Amount().Base()):
		c.against("its core is banned in the United States: lead")
	}
	burns := wick.Get("burns")
	for _, v := range a.vesselsHere() {
		if v.Stock == nil {
			continue
		}
		switch {
		case !burns.IsAmount():
			c.doubt("does not say what it burns")
		case v.Diameter.Known() && v.Wicks > 0:
			a.judgeSize(c, v, burns.Amount())
		}
		made := a.made.MadeIn(v)
		switch tab := wick.Get("tab"); {
		case v.Kind == "container" && tab.No():
			c.against("has no tab to stand on")
		case v.Kind == "container" && !tab.Known():
			c.doubt("does not say whether it has a tab")
		case v.Kind != "container" && tab.Yes() && (made == "pillar" || made == "taper"):
			c.doubt("has a tab, for containers")
		}
	}
	for i := range a.made.Waxes {
		if wax := a.made.Waxes[i].Stock; wax != nil && !a.burnsIn(wick, wax) {
			switch {
			case !wick.Get("families").Known() || !wax.Get("family").Known():
				c.doubt("not known to be made for " + wax.Title())
			case a.layered(): // that wax may be in another vessel, or another layer
				c.doubt("not made for " + wax.Get("family").Text() + ", which some layer is of")
			default:
				c.against("not made for " + wax.Get("family").Text())
			}
		}
	}
}

// layered says whether a melt names its waxes, so that not all go everywhere.
func (a *asked) layered() bool {
	return slices.ContainsFunc(a.made.Steps, func(s batch.Step) bool { return s.Kind == "melt" && !s.Block.Get("wax").Absent() })
}

// leadBan is 0.06 % of lead by weight of the core (16 CFR 1500.17(a)(13)).
var leadBan = quantity.NewRat(6, 10_000)

func (a *asked) judgeSize(c *candidate, v *batch.Vessel, burns quantity.Quantity) {
	square, wicks := v.Diameter.Value.Mul(v.Diameter.Value), quantity.Int(int64(v.Wicks))
	across := batch.Millimeters(a.look, v.Diameter.Value) + " across"
	if v.Wicks > 1 {
		across += " for " + quantity.Int(int64(v.Wicks)).Decimal(0) + " wicks"
	}
	compare := func(end quantity.Rat) int { return end.Mul(end).Mul(wicks).Cmp(square) }
	switch {
	case compare(burns.Base()) > 0:
		c.against("too large: burns " + burns.String() + ", not " + across)
	case compare(burns.High().Base()) < 0:
		c.against("too small: burns " + burns.String() + ", not " + across)
	default:
		c.suits("burns " + burns.String() + ", here " + across)
		middle := burns.Base().Add(burns.High().Base()).Mul(quantity.NewRat(1, 2))
		c.off = c.off.Add(middle.Mul(middle).Mul(wicks).Sub(square).Abs())
	}
}

// burnsIn says whether a wick's families take in a wax, or all the waxes of a
// house blend.
func (a *asked) burnsIn(wick, wax *schema.Block) bool {
	families := wick.Get("families")
	family := wax.Get("family").Text()
	if mentions(families, family) || family != "blend" {
		return mentions(families, family)
	}
	parts := 0
	for part := range wax.Each("part") {
		if of := a.shop.Find("wax", part.Label); of != nil {
			if !mentions(families, of.Get("family").Text()) {
				return false
			}
			parts++
		}
	}
	return parts > 0
}

func mentions(list schema.Value, word string) bool {
	return slices.ContainsFunc(list.Items(), func(i schema.Item) bool { return i.Text == word })
}

// judgeWax: a wax is sold for uses, its wicks for families, and it holds so
// much fragrance.
func (a *asked) judgeWax(c *candidate) {
	wax := c.block
	uses := func(makes string) {
		if len(batch.Uses(makes)) == 0 {
			return
		}
		switch s := batch.SuitedFor(wax, batch.Uses(makes)...); {
		case s.State == schema.Absent:
			c.doubt("does not say what it suits")
		case s.State == schema.Known && !s.Yes:
			c.against("not sold for " + manyOf(batch.Uses(makes)[0]))
		case s.Yes && s.Tested:
			c.doubt("tested here for " + manyOf(batch.Uses(makes)[0]) + ", not sold for it")
		case s.Yes:
			c.suits("suits " + manyOf(batch.Uses(makes)[0]))
		}
	}
	if len(a.made.Vessels) == 0 {
		uses(a.made.Makes)
	}
	var asked []string
	for i := range a.made.Vessels {
		v := &a.made.Vessels[i]
		if makes := a.made.MadeIn(v); !slices.Contains(asked, makes) {
			asked = append(asked, makes)
			uses(makes)
		}
		if v.Wick != nil && v.Wick.Get("families").Known() && wax.Get("family").Known() && !a.burnsIn(v.Wick, wax) {
			c.against(v.Wick.Label + " is not made for " + wax.Get("family").Text())
		}
	}
	if limit := wax.Get("fragrance_limit"); limit.IsAmount() && len(a.made.Fragrances) > 0 {
		load := a.made.FragranceOfWax
		if limit.Amount().Basis() == quantity.OfTotal {
			load = a.made.FragranceOfTotal
		}
		if load.Known() && limit.Amount().High().Base().Less(load.Value) {
			c.against("holds " + limit.Amount().String() + ", and " + batch.PercentBeside(load.Value, limit.Amount().High().Base(), limit.Amount().Basis()) + " goes in")
		}
	}
}

// judgeMixed: what goes into gel has to be declared fit for it, and water has
// no place in hot wax.
func (a *asked) judgeMixed(c *candidate, kind string) {
	if c.block.Get("water_based").Yes() {
		c.against("carries water, which boils in hot wax")
	}
	gel := slices.ContainsFunc(a.made.Waxes, func(in batch.Ingredient) bool { return in.Stock.Get("family").Text() == "gel" })
	if !gel {
		return
	}
	switch safe := c.block.Get("gel_safe"); {
	case safe.Yes():
		c.suits("declared fit for gel")
	case safe.No():
		c.against("not fit for gel: it can gather and flash over")
	default:
		c.doubt("does not say whether it is fit for gel")
	}
}

// judgeVessel: a vessel is for one kind of candle, the wax has to suit that,
// and the vessel the heat.
func (a *asked) judgeVessel(c *candidate, kind string) {
	stock := c.block
	v := batch.Vessel{Stock: stock, Kind: kind}
	alone := batch.Batch{Recipe: a.recipe}
	made := alone.MadeIn(&v) // what this vessel is for
	said := a.recipe.Get("makes").Text()
	switch {
	case made == "":
	case said != "" && said != made && (kind != "mold" || stock.Get("makes").Known()) && !(said == "melt" && kind == "container"):
		c.against("for a " + made + ", and the recipe makes a " + said)
	default:
		if said == "melt" {
			made = said
		}
		if across, ok := diameterOf(stock); ok && made != "melt" {
			c.suits("for a " + made + ", " + across.String() + " across")
			a.judgeWickIn(c, across)
		}
		c.suits("for a " + made)
		if uses := batch.Uses(made); len(uses) > 0 && len(a.made.Waxes) > 0 {
			if s := a.made.Suits(uses...); s.State == schema.Known && !s.Yes {
				c.against(s.Wax.Title() + " is not sold for " + manyOf(uses[0]))
			}
		}
	}
	if kind == "container" && said != "melt" {
		switch rated := stock.Get("made_for_candles"); {
		case rated.No():
			c.against("not made for candles")
		case rated.Absent():
			c.doubt("does not say whether it is made for candles")
		}
	}
	if hot, ok := a.hottest(nil); ok && kind != "taper" {
		if softens := stock.Get("softens_at"); softens.IsAmount() && !hot.Less(softens.Amount().Base()) {
			c.against("softens at " + softens.Amount().Both(a.units()) + "; the pour is " + batch.Degrees(a.look, hot))
		}
	}
}

// diameterOf is the width that a vessel's wick is chosen by, where it is
// stated: of a block its shorter side.
func diameterOf(vessel *schema.Block) (quantity.Quantity, bool) {
	v := vessel.Get("diameter")
	if vessel.Is("mold") && vessel.Get("width").IsAmount() {
		v = vessel.Get("width")
	}
	return v.Amount(), v.IsAmount()
}

// judgeWickIn holds a vessel against the wick that its block names already.
func (a *asked) judgeWickIn(c *candidate, across quantity.Quantity) {
	if a.own == nil || a.own.Spec.Attr("wick") == nil {
		return
	}
	wick := a.shop.Find("wick", a.own.Get("wick").Text())
	burns := wick.Get("burns")
	if !burns.IsAmount() {
		return
	}
	square, wicks := across.Base().Mul(across.Base()), quantity.Int(int64(a.own.Get("wicks").Whole(1)))
	compare := func(end quantity.Rat) int { return end.Mul(end).Mul(wicks).Cmp(square) }
	if compare(burns.Amount().Base()) > 0 || compare(burns.Amount().High().Base()) < 0 {
		c.against(wick.Label + " burns " + burns.Amount().String() + ", not " + across.String())
	}
}

// hottest is the hottest pour into some vessels, in °C: of all where none are
// named. Where no pour says, it is the top of what the wax is poured at.
func (a *asked) hottest(vessels []int) (top quantity.Rat, found bool) {
	for i := range a.made.Pours {
		s := a.made.Pours[i].Step
		if !s.Heat.IsAmount() || vessels != nil && !slices.ContainsFunc(vessels, s.Is) {
			continue
		}
		if high := s.Heat.Amount().High().Base(); !found || top.Less(high) {
			top, found = high, true
		}
	}
	if usual := a.made.PourAt(); !found && usual.Known() {
		return quantity.Max(usual.Low(), usual.High()), true
	}
	return top, found
}

// judgeSeal: what closes a wick hole has to bear the hottest pour over it;
// what is sold for wick tabs is another thing.
func (a *asked) judgeSeal(c *candidate) {
	kind := c.block.Get("kind").Text()
	switch {
	case kind == "":
		c.doubt("does not say what it is")
	case a.parent.Kind == "seal wick hole" && !slices.Contains([]string{"plug", "putty", "screw", "silicone", "tape"}, kind):
		c.against("a " + kind + " is not for wick holes")
	case a.parent.Kind == "set wick" && !slices.Contains([]string{"sticker", "hot-melt glue", "silicone", "putty"}, kind):
		c.against("a " + kind + " is not for wick tabs")
	case kind == "tape" && c.block.Get("holds_to").Absent():
		c.against("tape lets go in the heat of a pour, unless its maker says otherwise")
		return
	}
	var vessels []int
	for i := range a.made.Steps {
		if s := &a.made.Steps[i]; s.Block == a.block {
			vessels = s.Vessels
		}
	}
	holds := c.block.Get("holds_to")
	hot, known := a.hottest(vessels)
	switch {
	case !holds.IsAmount():
		c.doubt("does not say what it holds to")
	case !known:
		c.suits("holds to " + holds.Amount().Both(a.units()))
	case holds.Amount().Base().Less(hot):
		c.against("holds only to " + holds.Amount().Both(a.units()) + "; the hottest pour is " + batch.Degrees(a.look, hot))
	default:
		c.suits("holds to " + holds.Amount().Both(a.units()) + "; the hottest pour is " + batch.Degrees(a.look, hot))
		c.off = quantity.Int(0).Sub(holds.Amount().Base()) // with most in hand first
	}
}

// judgeLabel: a label has to be for the recipe's markets and say what they
// require of this candle.
func (a *asked) judgeLabel(c *candidate) {
	markets := c.block.Get("markets")
	var forThem []string
	for _, m := range a.look.Markets() {
		switch {
		case !markets.Known():
			c.doubt("does not say which market it is for")
		case !mentions(markets, m.Text):
			c.against("not for the market " + m.Text)
		default:
			forThem = append(forThem, m.Text)
		}
		for _, wanted := range a.required(m.Text) {
			if !slices.ContainsFunc(c.block.Get("cautions").Items(), func(i schema.Item) bool { return schema.CautionCovers(i.Text, wanted) }) {
				c.against("lacks " + wanted)
			}
		}
	}
	if promised, ok := netWeight(c.block); ok {
		for _, v := range a.vesselsHere() {
			switch {
			case v.Kind == "taper" || !v.Mass.Known():
			case v.Mass.Value.Less(promised.Base()):
				c.against("promises " + promised.String() + ", and a candle here weighs " + batch.Grams(a.look, v.Mass.Value))
			default:
				c.off = c.off.Add(v.Mass.Value.Sub(promised.Base()))
			}
		}
	}
	if len(forThem) > 0 {
		c.suits("for " + strings.Join(forThem, ", ") + ", with the cautions required there")
	}
}

// netWeight is the weight that a label promises: of "1 lb 5 oz (595 g)" the
// greater of the two.
func netWeight(label *schema.Block) (most quantity.Quantity, found bool) {
	parts := strings.FieldsFunc(label.Get("net_weight").Text(), func(r rune) bool { return strings.ContainsRune("()/,", r) })
	for _, part := range parts {
		if w, problem := quantity.Parse(strings.TrimSpace(part), quantity.Weight); problem == nil && (!found || most.Base().Less(w.Base())) {
			most, found = w, true
		}
	}
	return most, found
}

// required are the cautions that a market asks for on some candle of the
// recipe.
func (a *asked) required(market string) []string {
	var names []string
	for _, v := range a.vesselsHere() {
		candle := schema.CandleType{Melt: a.made.MadeIn(v) == "melt", Container: v.Kind == "container", Floats: a.recipe.Get("floats").Yes()}
		for _, name := range schema.RequiredCautions(market, candle) {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}

// judgePot: melted wax fills three quarters of a pot at most.
func (a *asked) judgePot(c *candidate) {
	holds, molten := c.block.Get("holds"), a.made.Molten()
	switch {
	case !holds.IsAmount():
		c.doubt("does not say what it holds")
	case !molten.Known():
	case holds.Amount().Base().Mul(quantity.NewRat(3, 4)).Less(molten.Value):
		c.against("too small: holds " + holds.Amount().String() + ", and the batch is " + batch.Milliliters(a.look, molten.Value))
	default:
		c.suits("holds " + holds.Amount().String() + "; the batch is " + batch.Milliliters(a.look, molten.Value))
		c.off = holds.Amount().Base() // the smallest that will do
	}
}

func manyOf(use string) string { return use + "s" }
