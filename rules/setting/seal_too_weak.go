package setting

import (
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// SealTooWeak is a seal that softens at the heat of a pour over it.
var SealTooWeak = &lint.Rule{
	Name:   "seal-too-weak",
	Group:  group,
	Title:  "a seal that does not hold to the heat of the pour",
	Levels: lint.Every(lint.Must),
	Why: "A seal that softens under the wax lets go minutes after the pour, when you have turned away, and the mold drains over the bench. " +
		"Hot-melt glue is the usual culprit: it is put on hot, sets hard and looks safe, and gives way near 60 °C (140 °F), below almost every pour. " +
		"At a second pour, or a second layer, set wax stands over the hole already, so a weak seal weeps rather than bursts. " +
		"Glue under a wick's tab that softens lets the wick float to the glass.",
	Remedy: "Take a seal whose maker states that it holds to the hottest pour: a silicone plug, or putty or a screw in putty rated for it.",
	Cautions: "A trial of your own shows that it held that time. It never takes the place of a figure the maker states, " +
		"and glue that held once may not hold on a warm day.",
	Card: lint.Card{
		Question: "Can I seal the mold with hot glue or with tape?",
		Answer: "Not with hot-melt glue or masking tape. They look safe and let go near 60 °C (140 °F), below almost every pour, and the mold " +
			"drains over the bench.",
		AllRight: "With any seal whose maker states more than the heat of your hottest pour.",
		Do:       "Take a silicone plug, or putty or a screw in putty rated for that heat.",
	},
	Source: "the limit that the seal's maker states; hot-melt glue with none: common practice, from its usual softening range",
	Bad: []lint.Example{
		{
			About:   "a stated limit below the first pour",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"rubber-plug"`, To: `"tab-glue"`}},
			Flags:   []string{`"tab-glue"`},
		},
		{
			About:   "the weakest of several, one degree short",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"rubber-plug"`, To: `["rubber-plug", "cellar-putty"]`}},
			Stock:   "seal \"cellar-putty\" {\n  title    = \"Cellar putty\"\n  kind     = \"putty\"\n  holds_to = \"175 °F\"\n}\n",
			Flags:   []string{`"cellar-putty"`},
		},
		{
			About:   "enough for the first pour and not for the second",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"rubber-plug"`, To: `"soft-plug"`}},
			Stock:   "seal \"soft-plug\" {\n  title    = \"Natural rubber plug\"\n  kind     = \"plug\"\n  holds_to = \"180 °F\"\n}\n",
			Flags:   []string{`"soft-plug"`},
			Level:   lint.Should,
		},
		{
			About:   "hot-melt glue with no figure",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"rubber-plug"`, To: `"craft-glue"`}},
			Stock:   "seal \"craft-glue\" {\n  title = \"Craft glue sticks\"\n  kind  = \"hot-melt glue\"\n}\n",
			Flags:   []string{`"craft-glue"`},
			Level:   lint.Should,
		},
		{
			About:   "the same, with a trial in which it held",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"rubber-plug"`, To: `"craft-glue"`}},
			Stock: "seal \"craft-glue\" {\n  title = \"Craft glue sticks\"\n  kind  = \"hot-melt glue\"\n}\n\n" +
				"trial \"glue-on-tin\" {\n  question = \"Does a bead of glue hold a pillar pour?\"\n  date     = \"2026-09-12\"\n  tried    = \"craft-glue\"\n  up_to    = \"185 °F\"\n  outcome  = \"held\"\n}\n",
			Flags: []string{`"craft-glue"`},
			Level: lint.Consider,
		},
		{
			About:   "glue under a wick's tab",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `"tab-sticker"`, To: `"tab-glue"`}},
			Flags:   []string{`"tab-glue"`},
			Level:   lint.Should,
		},
	},
	Good: []lint.Example{
		{
			About:   "a limit that is just the second pour, and the hotter of the two",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"rubber-plug"`, To: `"exact-plug"`}},
			Stock:   "seal \"exact-plug\" {\n  title    = \"Plug\"\n  kind     = \"plug\"\n  holds_to = \"182 °F\"\n}\n",
		},
		{About: "glue rated to 150 °F under a pour at 138 °F", Recipe: "fogbank-soy", Shows: `step "pour"`, Shelf: `seal tab-glue`},
	},
	Check: checkSealTooWeak,
}

// glueHolds is what hot-melt glue, and masking tape, count as holding to where
// their maker states nothing: 60 °C (140 °F). Common practice.
var glueHolds = quantity.Int(60)

func checkSealTooWeak(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Steps {
		s := &b.Steps[i]
		switch s.Kind {
		case sealStep:
			if !sealsNothing(p, s) { // wick-hole-unsealed says that it is no seal
				checkSeals(p, b, s)
			}
		case wickStep:
			if !s.Block.Get("with").Absent() {
				checkSeals(p, b, s)
			}
		}
	}
}

// strain is the heat that comes over what one step seals with.
type strain struct {
	step         *batch.Step
	first, later *batch.Step // the hottest first pour into a mold, and the hottest after that; nil: none says how hot
	poured       bool        // there is a pour at all
}

func strainOn(p *lint.Pass, b *batch.Batch, step *batch.Step) strain {
	st := strain{step: step}
	for _, v := range step.Vessels {
		if step.Kind == sealStep && !mayHaveHole(&b.Vessels[v]) {
			continue
		}
		first := true
		for i := range b.Pours {
			pour := b.Pours[i].Step
			if !pour.Is(v) {
				continue
			}
			if step.Kind == wickStep && pour.Index < step.Index {
				first = false
				continue // the wick is set into poured wax: how hot that still is, nothing says
			}
			st.poured = true
			if first {
				st.first = hotter(st.first, pour)
			} else {
				st.later = hotter(st.later, pour)
			}
			first = false
		}
	}
	return st
}

// mayHaveHole says whether a sealing step can be about the vessel: a mold
// whose stock does not deny a wick hole.
func mayHaveHole(v *batch.Vessel) bool {
	return v.Kind == "mold" && (v.Stock == nil || !v.Stock.Get("wick_hole").No())
}

func hotter(a, b *batch.Step) *batch.Step {
	switch {
	case !b.Heat.IsAmount():
		return a
	case a == nil || a.Heat.Amount().High().Base().Less(b.Heat.Amount().High().Base()):
		return b
	}
	return a
}

// weakness is one seal that a pour is too hot for.
type weakness struct {
	item    schema.Item
	seal    *schema.Block
	limit   quantity.Rat // °C
	usual   bool         // the seal states none
	pour    *batch.Step
	first   bool
	hottest *batch.Step // of all pours that are too hot
}

// graver says whether w weighs more than o: a stated limit more than a usual
// one, a first pour more than a later one, then the lower limit.
func (w *weakness) graver(o *weakness) bool {
	switch {
	case o.pour == nil:
		return true
	case w.usual != o.usual:
		return o.usual
	case w.first != o.first:
		return w.first
	}
	return w.limit.Less(o.limit)
}

func checkSeals(p *lint.Pass, b *batch.Batch, step *batch.Step) {
	st := strainOn(p, b, step)
	if !st.poured {
		return
	}
	with := step.Block.Get("with")
	if with.Absent() {
		p.CannotCheck(step.Block, "with")
		return
	}
	items := with.Items()
	var worst weakness
	for _, item := range items {
		seal, ok := p.Stock("seal", item.Text)
		if !ok {
			continue
		}
		w := weakness{item: item, seal: seal}
		if !w.measure(p, len(items) > 1) || !w.gives(p, b, &st) {
			continue
		}
		if w.graver(&worst) {
			worst = w
		}
	}
	if worst.pour != nil {
		reportWeak(p, b, step, worst, len(items) > 1)
	}
}

// measure finds what the seal holds to. A metal screw holds any heat: where it
// stands beside another seal, that one governs.
func (w *weakness) measure(p *lint.Pass, beside bool) bool {
	holds, kind := w.seal.Get("holds_to"), w.seal.Get("kind")
	switch {
	case holds.IsAmount():
		w.limit = holds.Amount().Base()
		return true
	case !holds.Absent() || kind.Broken():
		return false
	case kind.Text() == "hot-melt glue" || noSeal(w.seal):
		w.limit, w.usual = glueHolds, true
		return true
	case kind.Text() == "screw" && beside:
		return false
	}
	p.CannotCheck(w.seal, "holds_to")
	return false
}

// gives finds the pour that is too hot for the seal, a first one before a
// later one.
func (w *weakness) gives(p *lint.Pass, b *batch.Batch, st *strain) bool {
	first, later := w.under(p, b, st.first), w.under(p, b, st.later)
	if !first && !later {
		return false
	}
	w.pour, w.first = st.later, first
	if first {
		w.pour = st.first
	}
	w.hottest = w.pour
	if first && later {
		w.hottest = hotter(st.first, st.later)
	}
	return true
}

func (w *weakness) under(p *lint.Pass, b *batch.Batch, pour *batch.Step) bool {
	return pour != nil && w.limit.Less(pour.Heat.Amount().High().Base()) && !doubted(p, b, pour)
}

func reportWeak(p *lint.Pass, b *batch.Batch, step *batch.Step, w weakness, several bool) {
	whole := w.pour.Heat.Amount()
	hot := whole.High()
	f := lint.Finding{At: lint.AtItem(step.Block.Get("with"), w.item)}
	tab := step.Kind == wickStep
	switch {
	case tab && w.usual:
		f.Levels = lint.Every(lint.Consider)
	case tab || w.usual || !w.first:
		f.Levels = lint.Every(lint.Should)
	}
	name := w.seal.Title()
	if several {
		name += ", the weakest here,"
	}
	over := batch.ApartLike(hot.Base().Sub(w.limit), hot)
	if w.usual {
		f.Message = fmt.Sprintf("%s states no holds_to, and such a seal counts as holding to %s (common practice): the %s at %s is %s over that. %s",
			name, batch.DegreesLike(w.limit, hot), w.pour.Kind, at(p.View, hot, whole), over, w.danger(tab))
		w.weigh(p, &f, w.hottest.Heat.Amount().High().Base())
	} else {
		f.Message = fmt.Sprintf("%s holds to %s: the %s at %s is %s over that. %s",
			name, batch.Both(p.View, w.seal.Get("holds_to").Amount()), w.pour.Kind, at(p.View, hot, whole), over, w.danger(tab))
		f.Notes = batch.NoteAt(limitHere, w.seal.Get("holds_to"))
	}
	f.Fixes = func() []schema.Fix {
		need, ok := hottest(p, b, step.Vessels)
		if !ok {
			return nil
		}
		return swapSeal(p, step, w.item, need)
	}
	p.Report(f)
}

func (w *weakness) danger(tab bool) string {
	switch {
	case tab:
		return "A tab that comes loose lets the wick float to the wall"
	case w.first:
		return "A seal that softens lets the mold drain over the bench"
	}
	return "Set wax stands over the hole by then, but a seal that softens can weep"
}

// weigh quotes the shop's own trials of a seal whose maker states nothing. One
// that held at this heat quietens the finding, unless another did not.
func (w *weakness) weigh(p *lint.Pass, f *lint.Finding, heat quantity.Rat) {
	var held, against *schema.Block
	for _, t := range p.Trials(w.seal.Label) {
		upTo := t.Get("up_to")
		switch t.Get("outcome").Text() {
		case "held":
			if upTo.IsAmount() && !upTo.Amount().Base().Less(heat) {
				held = t
			}
		case "failed", "mixed":
			if !upTo.IsAmount() || !heat.Less(upTo.Amount().Base()) {
				against = t
			}
		}
	}
	switch {
	case against != nil:
		f.Message += fmt.Sprintf("; the trial %s ended %s", against.Label, against.Get("outcome").Text())
		f.Notes = append(f.Notes, lint.Note{Place: lint.AtHeader(against), Message: "the trial"})
	case held != nil:
		f.Message += fmt.Sprintf("; in the trial %s it held up to %s", held.Label, batch.Both(p.View, held.Get("up_to").Amount()))
		f.Notes = append(f.Notes, lint.Note{Place: lint.AtHeader(held), Message: "the trial"})
		f.Levels = lint.Every(lint.Consider)
	}
}

// holdsAll says whether every sealing of a vessel states that it holds to a
// temperature in °C.
func holdsAll(p *lint.Pass, b *batch.Batch, vessel int, heat quantity.Rat) bool {
	for i := range b.Steps {
		s := &b.Steps[i]
		if s.Kind != sealStep || !s.Is(vessel) {
			continue
		}
		if slices.ContainsFunc(s.Block.Get("with").Items(), func(item schema.Item) bool {
			seal, ok := p.Stock("seal", item.Text)
			return !ok || seal.Get("holds_to").IsAmount() && seal.Get("holds_to").Amount().Base().Less(heat)
		}) {
			return false
		}
	}
	return true
}
