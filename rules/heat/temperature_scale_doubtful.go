package heat

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// ScaleDoubtful is a figure that makes sense only in the other scale.
var ScaleDoubtful = &lint.Rule{
	Name:   scaleDoubtful,
	Group:  group,
	Title:  "a temperature that makes no sense as written and fits the wax in the other scale",
	Levels: lint.Every(lint.Must),
	Why: "176 °F is a warm pour; 176 °C is 349 °F and sets wax smoking. Whoever stands at the pot does what the sheet says, so one letter decides. " +
		"The figure is taken to be in the wrong scale where it is hotter than the wax bears, or colder than where it sets, " +
		"and the same number in the other scale lies where the wax is worked. Figures of a wax in stock are looked at too: a ceiling or a range in the wrong scale " +
		"would let everything through.",
	Remedy:   "Look at the supplier's sheet, decide which scale is meant, and write that one.",
	Cautions: "Heat nothing until it is settled. Correcting °F to °C makes the figure hotter, so nobody but you can do it.",
	Card: lint.Card{
		Question: "Is 176 degrees meant in Fahrenheit or in Celsius?",
		Answer:   "For wax, in Fahrenheit: 176 °F is a warm pour, 176 °C is 349 °F and sets wax smoking.",
		AllRight: "Either scale is right where it stands beside the figure, and the figure fits the wax's sheet.",
		Do:       "Write °F or °C behind every temperature, and look at the sheet wherever one is missing.",
	},
	Source: "common practice; conversion after NIST SP 811 (2008), B.8",
	Bad: []lint.Example{
		{
			About:   "Celsius where Fahrenheit is meant: far too hot",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `at    = "176 °F"`, To: `at    = "176 °C"`}},
			Flags:   []string{`"176 °C"`},
		},
		{
			About:   "Fahrenheit where Celsius is meant: set solid",
			Recipe:  "firth-uk",
			Changes: []lint.Change{{From: `at = "60 °C"`, To: `at = "60 °F"`}},
			Flags:   []string{`"60 °F"`},
		},
		{
			About:  "a range of the stock in the wrong scale",
			Recipe: "gorse-melt",
			Changes: []lint.Change{
				{From: `wax "millrace-pillar"`, To: `wax "spindrift-soy"`},
			},
			Stock: `wax "spindrift-soy" {
  title            = "Spindrift soy, pillar blend"
  family           = "soy"
  suits            = ["pillar", "votive", "melt"]
  melt_to          = "175 to 188 °F"
  pour_at          = "160 to 174 °C"
  add_fragrance_at = "170 to 184 °F"
  congeals_at      = "138 °F"
  never_above      = "194 °F"
  flash_point      = "430 °F"
  fragrance_limit  = "6 % of wax"
  density          = "0.92 g/mL"
  shrinkage        = "5 %"
  cure             = "7 to 14 days"
  conductivity     = "0.22 W/(m K)"
  heat_capacity    = "2.0 kJ/(kg K)"
  latent_heat      = "130 kJ/kg"
}
`,
			Flags: []string{`"160 to 174 °C"`},
			Level: lint.Should,
		},
	},
	Good: []lint.Example{
		{
			About:   "the same heat, written in Celsius",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `at    = "176 °F"`, To: `at    = "80 °C"`}},
		},
		{
			About:   "too cool, but not a matter of the scale",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `at    = "176 °F"`, To: `at    = "150 °F"`}},
		},
	},
	Also:  []string{"test-burn-missing"}, // the burns are of another wax
	Check: checkScale,
}

func checkScale(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Waxes {
		checkStockScale(p, b.Waxes[i].Stock)
	}
	list := heats.In(p.View)
	for i := range list {
		if list[i].doubt != within {
			reportScale(p, &list[i])
		}
	}
}

// doubtful says whether the figure is hotter than the wax bears, or colder
// than where it sets, from end to end, while the same number in the other
// scale lies where the wax is worked.
func (j *judged) doubtful() excess {
	written := j.value.Amount()
	other, ok := otherScale(written)
	if !ok {
		return within
	}
	if other == quantity.Fahrenheit {
		if j.low.Less(hardStop) && j.limits.allows(j.low) {
			return within
		}
	} else if !j.high.Less(j.limits.setAt()) {
		return within
	}
	low, high, by := j.limits.worked()
	if by == within || inOther(written.Low(), other).Less(low) || high.Less(inOther(written.High(), other)) {
		return within
	}
	if j.flash == stated || j.ceiling == stated {
		return stated // however it is known that the other scale fits: as written it is dangerous
	}
	return by
}

// setAt is where the wax sets, and 100 °F where that is not known: no candle
// wax is worked below.
func (l *limits) setAt() quantity.Rat {
	if l.congeals.Known() {
		return l.congeals.Low()
	}
	return coldest
}

var coldest = quantity.Of(quantity.Int(100), quantity.Fahrenheit).Base()

// otherScale is the scale that the figure is not written in; false where it is
// no temperature or its ends are in different ones.
func otherScale(q quantity.Quantity) (*quantity.Unit, bool) {
	switch unit := q.Unit(); {
	case q.High().Unit() != unit:
		return nil, false
	case unit == quantity.Celsius:
		return quantity.Fahrenheit, true
	case unit == quantity.Fahrenheit:
		return quantity.Celsius, true
	}
	return nil, false
}

// inOther is °C of the same number in another scale.
func inOther(q quantity.Quantity, other *quantity.Unit) quantity.Rat {
	return quantity.Of(q.Number(), other).Base()
}

// rewritten is the figure with its number kept and its scale changed.
func rewritten(q quantity.Quantity, other *quantity.Unit) string {
	if !q.IsRange() {
		return quantity.Of(q.Number(), other).String()
	}
	return quantity.Of(q.Low().Number(), other).Number().Decimal(6) + " to " + quantity.Of(q.High().Number(), other).String()
}

func reportScale(p *lint.Pass, j *judged) {
	written := j.value.Amount()
	other, _ := otherScale(written)
	meant := rewritten(written, other)
	f := lint.Finding{At: lint.AtValue(j.value), Levels: j.doubt.levels()}
	if other == quantity.Celsius {
		f.Message = fmt.Sprintf("%s is %s below where %s sets, %s, while %s suits it: which scale is meant?",
			batch.Both(p.View, written.High()), batch.ApartLike(j.limits.setAt().Sub(j.high), written), titles(j.limits.waxes), batch.DegreesLike(j.limits.setAt(), written), meant)
		p.Report(f)
		return
	}
	f.Message = fmt.Sprintf("%s, while %s suits it: which scale is meant? Heat nothing until that is settled", j.danger(p.View), meant)
	f.Notes = j.dangerNotes()
	f.Fixes = func() []schema.Fix { return cooler(j.value, meant) }
	p.Report(f)
}

// danger says what a figure that is too hot as written does, the gravest first.
func (j *judged) danger(view *lint.View) string {
	written := j.value.Amount().High()
	said := batch.Both(view, written)
	switch {
	case j.flash == stated:
		w := &j.limits.waxes[j.flashOf]
		return fmt.Sprintf("%s is near enough to the flash point of %s, %s, for its vapor to be lit", said, whose(w.flash), batch.Both(view, w.flash.Amount))
	case j.ceiling != within:
		c := &j.limits.waxes[j.ceilingOf].ceiling
		return fmt.Sprintf("%s is %s over the ceiling of %s, %s", said, batch.ApartLike(j.high.Sub(c.High()), written), whose(*c), batch.Both(view, c.Amount))
	}
	return fmt.Sprintf("%s is hotter than %s is ever worked", said, titles(j.limits.waxes))
}

func (j *judged) dangerNotes() []lint.Note {
	switch {
	case j.flash == stated:
		return batch.NoteAt("flash point stated here", j.limits.waxes[j.flashOf].flash.Value)
	case j.ceiling != within:
		return batch.NoteAt(limitHere, j.limits.waxes[j.ceilingOf].ceiling.Value)
	}
	return nil
}

// cooler is the fix that writes the same number in Fahrenheit.
func cooler(v schema.Value, meant string) []schema.Fix {
	return []schema.Fix{repair.Rewrite("write "+meant, v, schema.Quote(meant))}
}

// The bounds of what a sheet can mean, in °C, wide enough that no wax falls
// out of them. From memory, of open literature on candle waxes: they set
// between 36 and 90 °C, are worked up to 121 °C, bear at most 160 °C, and
// their flash points lie between 130 and 320 °C.
var (
	softest       = quantity.Int(36)
	hottestBorne  = quantity.Int(160)
	lowestCeiling = quantity.Int(60)
	lowestFlash   = quantity.Int(130)
	highestFlash  = quantity.Int(320)
)

// stockDoubtful says whether a figure of a wax in stock makes sense only in
// the other scale: a range that no wax is worked in, or a ceiling or flash
// point too high for any.
func stockDoubtful(v schema.Value) bool {
	if !v.IsAmount() {
		return false
	}
	written := v.Amount()
	other, ok := otherScale(written)
	if !ok {
		return false
	}
	low, high := written.Base(), written.High().Base()
	from, to := softest, hardStop
	switch v.Spec.Name {
	case "never_above":
		if other != quantity.Fahrenheit || !hottestBorne.Less(low) {
			return false
		}
		from = lowestCeiling
	case "flash_point":
		if other != quantity.Fahrenheit || !highestFlash.Less(low) {
			return false
		}
		from, to = lowestFlash, highestFlash
	default:
		if !high.Less(softest) && !hardStop.Less(low) {
			return false
		}
	}
	return !inOther(written.Low(), other).Less(from) && !to.Less(inOther(written.High(), other))
}

// checkStockScale looks at the figures of one wax in stock. What is usual for
// waxes decides, so it is a should.
func checkStockScale(p *lint.Pass, wax *schema.Block) {
	for _, attr := range [...]string{"melt_to", "add_fragrance_at", "pour_at", "never_above", "flash_point"} {
		v := wax.Get(attr)
		if !stockDoubtful(v) {
			continue
		}
		written := v.Amount()
		other, _ := otherScale(written)
		meant := rewritten(written, other)
		f := lint.Finding{
			At:     lint.AtValue(v),
			Levels: lint.Every(lint.Should),
			Message: fmt.Sprintf("%s states %s %s, which no candle wax has, and %s would be likely: which scale does the sheet mean? The figure is not used until that is settled",
				wax.Title(), attr, written, meant),
		}
		if other == quantity.Fahrenheit {
			f.Fixes = func() []schema.Fix { return cooler(v, meant) }
		}
		p.Report(f)
	}
}
