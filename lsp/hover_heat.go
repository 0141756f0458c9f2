package lsp

import (
	"slices"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// heat tells what a step's temperature is held to, and what is left up to it.
func (f figures) heat(s *batch.Step, v schema.Value) []string {
	pot := f.potAt(s)
	low, high := v.Amount().Base(), v.Amount().High().Base()
	says := []string{f.window(pot, s.Kind, &v)}
	if ceiling := pot.NeverAbove(); ceiling.Known() {
		says = append(says, f.owner(ceiling)+" is never made hotter than "+f.stated(ceiling)+"; "+f.left(ceiling.High(), high)+".")
	}
	if s.Kind == "melt" {
		if flash := pot.FlashPoint(); flash.Known() {
			says = append(says, "Its vapor can be lit from "+f.stated(flash)+": every step stays far below that.")
		}
	}
	switch s.Kind {
	case "pour", "second pour":
		says = append(says, f.bears(s, high)...)
	case "add fragrance":
		says = append(says, f.flashOf(s))
	}
	if s.Kind == "second pour" {
		for i := range f.batch.Pours {
			p := &f.batch.Pours[i]
			if p.Step == s && p.First != nil && p.First.Heat.IsAmount() {
				first := p.First.Heat.Amount().High().Base()
				text := "It is as hot as the first pour"
				if diff := low.Sub(first); diff.Sign() > 0 {
					text = "It is " + f.apart(diff) + " hotter than the first pour"
				} else if diff.Sign() < 0 {
					text = "It is " + f.apart(diff.Neg()) + " cooler than the first pour"
				}
				says = append(says, text+"; 5 to 10 °F (3 to 6 °C) hotter is common practice.")
			}
		}
	}
	return says
}

// potAt is the batch with only the waxes that are in the pot at a step: those
// that melts since the last pour name, else all.
func (f figures) potAt(step *batch.Step) *batch.Batch {
	var only []string
	poured := false
	for i := range f.batch.Steps[:step.Index+1] {
		s := &f.batch.Steps[i]
		switch s.Kind {
		case "pour":
			poured = true
		case "melt":
			named := s.Block.Get("wax")
			if poured || !named.Known() {
				only = nil
			}
			poured = false
			for _, item := range named.Items() {
				only = append(only, item.Text)
			}
		}
	}
	if only == nil {
		return f.batch
	}
	pot := *f.batch
	pot.Waxes = slices.DeleteFunc(slices.Clone(pot.Waxes), func(in batch.Ingredient) bool { return !slices.Contains(only, in.Block.Label) })
	return &pot
}

// window is the range that a kind of step is held to, and where a temperature
// lies in it; nil: only the range.
func (f figures) window(pot *batch.Batch, kind string, v *schema.Value) string {
	var s batch.Stated
	done := ""
	switch kind {
	case "melt":
		s, done = pot.MeltTo(), "melted to"
	case "pour":
		s, done = pot.PourAt(), "poured at"
	case "add fragrance":
		s, done = pot.AddFragranceAt(), "given its fragrance at"
	}
	switch {
	case done == "" || !s.Known():
		return ""
	case s.Empty:
		return "No temperature suits all waxes of this blend: they have no range in common."
	}
	text := f.owner(s) + " is " + done + " " + s.Range(f.view)
	if s.Family != "" {
		text += " as a rule (" + s.Source() + "; the sheet does not say)"
	}
	if v == nil {
		return text + "."
	}
	low, high := v.Amount().Base(), v.Amount().High().Base()
	switch {
	case s.High().Less(high):
		return text + "; this is " + f.apart(high.Sub(s.High())) + " over the top."
	case low.Less(s.Low()):
		return text + "; this is " + f.apart(s.Low().Sub(low)) + " under the bottom."
	case high.Equal(s.High()):
		return text + "; this is its top."
	}
	return text + "; this is " + f.apart(s.High().Sub(high)) + " under the top."
}

// owner is whose figure it is, to begin a sentence.
func (f figures) owner(s batch.Stated) string {
	switch {
	case s.Family != "":
		return schema.Capital(s.Family)
	case s.Blend:
		return "This blend"
	}
	return f.title(s.Wax)
}

// stated is a single figure of the stock in both systems, and where it is a
// family's, that it is.
func (f figures) stated(s batch.Stated) string {
	text := s.Amount.High().Both(f.view.Units())
	switch {
	case s.Family != "":
		text += " as a rule (" + s.Source() + "; " + f.title(s.Lacks) + " does not say)"
	case s.Blend:
		text += " (" + f.title(s.Wax) + ")"
	}
	return text
}

// left is what is in hand up to a limit in °C, or by how much it is passed.
func (f figures) left(limit, is quantity.Rat) string {
	switch diff := limit.Sub(is); diff.Sign() {
	case 0:
		return "this is just that"
	case -1:
		return "this is " + f.apart(diff.Neg()) + " over that"
	default:
		return f.apart(diff) + " in hand"
	}
}

// bears tells what a pour's heat is held to beside the wax: seals, molds and
// glass.
func (f figures) bears(s *batch.Step, high quantity.Rat) []string {
	var says []string
	add := func(text string) {
		if !slices.Contains(says, text) {
			says = append(says, text)
		}
	}
	for i := range f.batch.Steps[:s.Index] {
		seal := &f.batch.Steps[i]
		if seal.Kind != "seal wick hole" || !slices.ContainsFunc(s.Vessels, seal.Is) {
			continue
		}
		for _, item := range seal.Block.Get("with").Items() {
			if stock, ok := f.view.Stock("seal", item.Text); ok && stock.Get("holds_to").IsAmount() {
				holds := stock.Get("holds_to").Amount()
				add(f.title(stock) + " holds to " + holds.Both(f.view.Units()) + "; " + f.left(holds.Base(), high) + ".")
			}
		}
	}
	for _, i := range s.Vessels {
		v := &f.batch.Vessels[i]
		if v.Stock == nil || v.Stock.Spec.Attr("softens_at") == nil {
			continue
		}
		if soft := v.Stock.Get("softens_at"); soft.IsAmount() {
			add(f.title(v.Stock) + " softens at " + soft.Amount().Both(f.view.Units()) + "; " + f.left(soft.Amount().Base(), high) + ".")
		}
		if v.Kind == "container" && s.Kind == "pour" {
			add(f.shock(s, i, high))
		}
	}
	return says
}

// shock is how much hotter a pour is than the container it meets.
func (f figures) shock(pour *batch.Step, vessel int, high quantity.Rat) string {
	wall, how := f.view.Room(), "as the room is"
	for i := range f.batch.Steps[:pour.Index] {
		s := &f.batch.Steps[i]
		switch {
		case s.Kind == "pour" && s.Is(vessel):
			return "" // wax stands in it by now
		case s.Kind == "warm container" && s.Is(vessel):
			to := s.Block.Get("to")
			if !to.IsAmount() {
				return ""
			}
			wall, how = to.Amount(), "as it was warmed"
		}
	}
	text := "It meets the container at " + wall.Low().Both(f.view.Units()) + ", " + how + ": " + f.apart(high.Sub(wall.Base())) + " between them"
	if shock := f.batch.Vessels[vessel].Stock.Get("thermal_shock"); shock.IsAmount() {
		return text + "; " + f.title(f.batch.Vessels[vessel].Stock) + " withstands " + shock.Amount().Both(f.view.Units()) + "."
	}
	return text + "; its maker does not say what it withstands, and 90 °F (50 °C) is common practice for glass."
}

// flashOf tells what the flash points of the fragrances mean that a step adds.
func (f figures) flashOf(s *batch.Step) string {
	named := s.Block.Get("fragrance").Items()
	for i := range f.batch.Fragrances {
		in := &f.batch.Fragrances[i]
		asked := len(named) == 0 || slices.ContainsFunc(named, func(item schema.Item) bool { return item.Text == in.Block.Label })
		if asked && in.Stock != nil && in.Stock.Get("flash_point").IsAmount() {
			return "The flash point of " + f.title(in.Stock) + ", " + in.Stock.Get("flash_point").Amount().Both(f.view.Units()) +
				", is about the neat oil near a flame and not what the wax is held to; keep flames away from both."
		}
	}
	return ""
}

// weakest is the seal of a step that holds to the least heat, or the first
// that does not say; nil: none is known.
func (f figures) weakest(s *batch.Step) *schema.Block {
	var found *schema.Block
	for _, item := range s.Block.Get("with").Items() {
		seal, ok := f.view.Stock("seal", item.Text)
		switch {
		case !ok:
		case !seal.Get("holds_to").IsAmount():
			return seal
		case found == nil || seal.Get("holds_to").Amount().Base().Less(found.Get("holds_to").Amount().Base()):
			found = seal
		}
	}
	return found
}

// sealBears is the hottest pour that a seal has to bear in a step.
func (f figures) sealBears(s *batch.Step, seal *schema.Block) string {
	var top quantity.Rat
	found := false
	for i := range f.batch.Pours {
		p := f.batch.Pours[i].Step
		if p.Heat.IsAmount() && slices.ContainsFunc(p.Vessels, s.Is) {
			if high := p.Heat.Amount().High().Base(); !found || top.Less(high) {
				top, found = high, true
			}
		}
	}
	if !found {
		return ""
	}
	text := "Here the hottest pour is at " + f.degrees(top)
	if holds := seal.Get("holds_to"); holds.IsAmount() {
		return text + "; " + f.left(holds.Amount().Base(), top) + "."
	}
	return text + ", and what this seal holds to is not written down."
}
