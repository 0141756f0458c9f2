package heat

import (
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// FragranceAboveItsFlash explains a fragrance that goes into wax hotter than
// the fragrance's own flash point: usual in the trade and often misread. Only
// beside direct heat is it more than worth knowing.
var FragranceAboveItsFlash = &lint.Rule{
	Name:   "fragrance-above-its-flash",
	Group:  group,
	Title:  "fragrance added to wax hotter than the fragrance's flash point",
	Levels: lint.Every(lint.Consider),
	Why: "A flash point is the lowest temperature at which the vapor over the neat oil can be lit by a flame held to it. " +
		"It is not where the oil lights by itself, boils, or loses its scent: stirred into wax it is thinned, and gives off less. " +
		"So adding it above its flash point is common and no fault of the recipe. What it does mean is that neat oil, a spill or the vapor over an open bottle " +
		"can be lit at this heat: where the pot stands over a flame or a glowing plate, that flame is there.",
	Remedy:   "Keep flames and glowing plates away while fragrance is handled, never heat the oil by itself, and close the bottle.",
	Cautions: "Oil spilled on a burner can catch fire. The safety data sheet of the fragrance goes before anything here.",
	Card: lint.Card{
		Question: "Is it dangerous to add fragrance to wax hotter than its flash point?",
		Answer: "Not by itself. The flash point says when the vapor over the neat oil can be lit by a flame that is held to it; stirred into wax " +
			"the oil is thinned and gives off less.",
		AllRight: "Over a water bath or in a thermostatic melter, with no flame and no glowing plate near.",
		Do:       "Close the bottle and keep it away from the heat, never heat the oil by itself, and wipe up spills at once.",
	},
	Source: "what the closed-cup tests measure, ISO 2719 and ASTM D93 (from memory); the advice is common practice",
	Bad: []lint.Example{
		{
			About:  "over a water bath: worth knowing",
			Recipe: "saltmarsh-tealight",
			Changes: []lint.Change{
				{From: `to   = "176 °F"`, To: `to   = "182 °F"`},
				{From: `at   = "170 °F"`, To: `at   = "180 °F"`},
			},
			Flags: []string{`"180 °F"`},
		},
		{
			About:  "over direct heat: a flame is there",
			Recipe: "saltmarsh-tealight",
			Changes: []lint.Change{
				{From: `to   = "176 °F"`, To: `to   = "182 °F"`},
				{From: `over = "water bath"`, To: `over = "direct heat"`},
				{From: `at   = "170 °F"`, To: `at   = "180 °F"`},
			},
			Flags: []string{`"180 °F"`},
			Level: lint.Must,
		},
	},
	Good: []lint.Example{{
		About:  "just its flash point",
		Recipe: "saltmarsh-tealight",
		Changes: []lint.Change{
			{From: `to   = "176 °F"`, To: `to   = "182 °F"`},
			{From: `at   = "170 °F"`, To: `at   = "178 °F"`},
		},
	}},
	Also:  []string{"open-heat"},
	Check: checkFragranceAboveItsFlash,
}

func checkFragranceAboveItsFlash(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Steps {
		s := &b.Steps[i]
		if s.Kind != "add fragrance" {
			continue
		}
		if s.Heat.Absent() {
			p.CannotCheck(s.Block, "at")
		}
		if !s.Heat.IsAmount() || doubtfulStep(p, s) {
			continue
		}
		checkAdding(p, b, s)
	}
}

// doubtfulStep says whether the step's temperature is in doubt as to its scale.
func doubtfulStep(p *lint.Pass, s *batch.Step) bool {
	list := heats.In(p.View)
	for i := range list {
		if list[i].step == s {
			return list[i].doubted(p)
		}
	}
	return false
}

// checkAdding holds one step against the flash points of what it adds, and
// says one finding for all of them.
func checkAdding(p *lint.Pass, b *batch.Batch, s *batch.Step) {
	at := s.Heat.Amount().High()
	var lowest schema.Value
	var above int
	for i := range b.Fragrances {
		stock := b.Fragrances[i].Stock
		if stock == nil || !adds(b, s, b.Fragrances[i].Block.Label) {
			continue
		}
		flash := stock.Get("flash_point")
		if flash.Absent() {
			p.CannotCheck(stock, "flash_point")
		}
		if !flash.IsAmount() || !flash.Amount().Base().Less(at.Base()) {
			continue
		}
		above++
		if !lowest.Known() || flash.Amount().Base().Less(lowest.Amount().Base()) {
			lowest = flash
		}
	}
	if above == 0 {
		return
	}
	f := lint.Finding{At: lint.AtValue(s.Heat), Notes: batch.NoteAt("flash point stated here", lowest)}
	direct := false
	if melt := lastMelt(b, s.Index); melt != nil {
		source := sourceOf(p, melt)
		direct = source.source == directHeat
	}
	if direct {
		f.Levels = lint.Levels{OwnUse: lint.Should, Class: lint.Should, Sale: lint.Must}
	}
	f.Message = aboveItsFlash(p, s.Heat.Amount(), lowest, above, direct)
	p.Report(f)
}

func aboveItsFlash(p *lint.Pass, at quantity.Quantity, flash schema.Value, above int, direct bool) string {
	end, point := at.High(), flash.Amount()
	others := ""
	if above > 1 {
		others = fmt.Sprintf(" (the lowest of %d here)", above)
	}
	message := fmt.Sprintf("%s is %s above the flash point of %s, %s%s",
		reached(p.View, end, at), batch.ApartLike(end.Base().Sub(point.Base()), end), flash.Block.Title(), batch.Both(p.View, point), others)
	if direct {
		return message + ". The pot stands over direct heat: a spill or the vapor over the open bottle can be lit there. Take the pot off the heat before the bottle is opened"
	}
	return message + ". That neither lights it nor burns the scent off; it means that a flame held over the neat oil would light it at this heat, so keep flames away and never heat the oil by itself"
}

// adds says whether a step adds a fragrance: it names it, or names none and no
// step before did. Where nothing would be left, a step that names none is
// taken to add all, so that nothing is missed.
func adds(b *batch.Batch, s *batch.Step, key string) bool {
	if named := s.Block.Get("fragrance"); !named.Absent() {
		return mentions(named, key)
	}
	left := false
	for i := range b.Fragrances {
		label := b.Fragrances[i].Block.Label
		if addedBefore(b, s, label) {
			continue
		}
		if label == key {
			return true
		}
		left = true
	}
	return !left
}

func addedBefore(b *batch.Batch, s *batch.Step, key string) bool {
	for i := range b.Steps[:s.Index] {
		if o := &b.Steps[i]; o.Kind == "add fragrance" {
			if named := o.Block.Get("fragrance"); named.Absent() || mentions(named, key) {
				return true
			}
		}
	}
	return false
}

func mentions(v schema.Value, key string) bool {
	return slices.ContainsFunc(v.Items(), func(item schema.Item) bool { return item.Text == key })
}
