package lsp

import (
	"strings"

	"wickrule/rules/batch"
	"wickrule/rules/cooling"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// stepDangers is the usual caution for steps that can hurt somebody.
var stepDangers = map[string]string{
	"melt":           "Hot wax burns the skin and can catch fire: stay with it, have a lid at hand, and never put water on it.",
	"pour":           "Hot wax burns the skin: sleeves and gloves, and a level bench that nobody leans over.",
	"second pour":    "Hot wax burns the skin: sleeves and gloves, and a level bench that nobody leans over.",
	"add fragrance":  "Gloves and fresh air, and no open flame near the oil.",
	"dip":            "Hot wax burns the skin and can catch fire: do not leave the vat alone.",
	"overdip":        "Hot wax burns the skin and can catch fire: do not leave the vat alone.",
	"warm container": "Warm glass in still air; a flame or a hot plate cracks it.",
}

// step tells why a step is done, when, and within what.
func (h *here) step(b *schema.Block) []string {
	says := []string{"**" + b.Label + "** " + b.Spec.Doc}
	if f, ok := h.figuresOf(b); ok {
		if s := f.stepOf(b); s != nil {
			says = append(says, f.window(f.potAt(s), s.Kind, nil), f.stepWindow(s), f.when(s))
		}
	}
	if b.Spec.Kind == "" {
		return append(says, h.blockWord(b.Spec)...)
	}
	return append(says, stepDangers[b.Spec.Kind])
}

// stepWindow is when a step makes sense, or what it is held to, beside the
// range of the wax.
func (f figures) stepWindow(s *batch.Step) string {
	switch s.Kind {
	case "relief holes":
		return spaced(f.modeled(s, func(w *cooling.Windows) string {
			return "For this candle the cooling model gives about " + w.ReliefHoles.From.String() + " to " + w.ReliefHoles.To.String() + " after the pour (±40 %)."
		}), "Once the skin is firm and while the middle is still liquid; 2 to 3 h after the pour is a rule of thumb (common practice).")
	case "second pour":
		return spaced(f.topUp(s), f.modeled(s, func(w *cooling.Windows) string {
			return "For this candle the cooling model gives about " + w.SecondPour.From.String() + " to " + w.SecondPour.To.String() + " after the pour (±40 %)."
		}), "5 to 10 °F (3 to 6 °C) hotter than the first pour is common practice, and never above what the wax, the seal and the mold bear.")
	case "unmold":
		return spaced(f.modeled(s, func(w *cooling.Windows) string {
			if w.Unmold.Never() {
				return ""
			}
			return "For this candle the cooling model gives about " + w.Unmold.String() + " after the pour at the soonest (±40 %)."
		}), "Once it is firm and cool to the core: 86 °F (30 °C) or less is common practice.")
	case "pour":
		return f.firstPour(s)
	case "cure":
		if c := f.batch.Cure(); c.Known() {
			text := f.owner(c) + " rests " + c.Amount.String()
			if c.Family != "" {
				text += " as a rule (" + c.Source() + ")"
			}
			return text + " before a scented candle of it is burned or sold."
		}
	case "trim wick":
		for _, i := range s.Vessels {
			if wick := f.batch.Vessels[i].Wick; wick != nil && wick.Get("trim").IsAmount() {
				return f.title(wick) + " is trimmed to " + wick.Get("trim").Amount().Both(f.view.Units()) + "."
			}
		}
		return "The wick's maker does not say how long; 1/4 in (6 mm) is common practice."
	case "seal wick hole":
		if seal := f.weakest(s); seal != nil {
			return f.sealBears(s, seal)
		}
	case "attach label":
		return f.cautionsWanted()
	}
	return ""
}

// modeled is a text made of the windows of the first pour into the first
// vessel a step is about that is modeled; "" where none is.
func (f figures) modeled(s *batch.Step, text func(*cooling.Windows) string) string {
	c := cooling.Of.In(f.view)
	for i := range c.Pours {
		p := &c.Pours[i]
		if p.Second || !s.Is(p.Vessel) || p.Step.Index > s.Index {
			continue
		}
		if w := p.Windows(f.view); w != nil {
			return spaced(text(w), fullStop(f.plain(p.Basis())))
		}
	}
	return ""
}

// topUp is what a second pour takes, for the vessels it is about.
func (f figures) topUp(s *batch.Step) string {
	each, all, ok := f.toppedUp(s)
	switch {
	case !ok:
		return ""
	case each.Equal(all):
		return "It takes about " + f.grams(all) + "."
	}
	return "It takes about " + f.grams(all) + " in all."
}

// toppedUp is g that a second pour takes, of the first vessel each and of all
// together. False: not known, or nothing.
func (f figures) toppedUp(s *batch.Step) (each, all quantity.Rat, ok bool) {
	for n, i := range s.Vessels {
		v := &f.batch.Vessels[i]
		if !v.TopUp.Known() || v.TopUp.Value.Sign() <= 0 {
			return each, all, false
		}
		if n == 0 {
			each = v.TopUp.Value
		}
		all = all.Add(v.TopUp.Value.Mul(quantity.Int(int64(v.Count))))
	}
	return each, all, len(s.Vessels) > 0
}

// firstPour is what a pour puts into each of its vessels, where it is the only
// one.
func (f figures) firstPour(s *batch.Step) string {
	var parts []string
	for _, i := range s.Vessels {
		v := &f.batch.Vessels[i]
		if v.Stock == nil || !v.FirstFill.Known() || !v.TopUp.Known() {
			return ""
		}
		if v.TopUp.Value.Sign() > 0 {
			parts = append(parts, f.grams(v.FirstFill.Value)+" into "+f.title(v.Stock))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "It puts about " + strings.Join(parts, ", ") + " each; the second pour fills the rest."
}

// when is how long after the first pour, or after the start, a step begins.
func (f figures) when(s *batch.Step) string {
	switch {
	case s.FromPour.Known() && s.FromPour.Value.Sign() > 0:
		text := batch.Time(s.FromPour.Value)
		if s.FromPourLatest.Known() && !s.FromPourLatest.Value.Equal(s.FromPour.Value) {
			text += " to " + batch.Time(s.FromPourLatest.Value)
		}
		return "By the times written, " + text + " after the first pour."
	case s.FromStart.Known() && s.FromStart.Value.Sign() > 0:
		return "By the times written, " + batch.Time(s.FromStart.Value) + " after the start."
	}
	return ""
}

// cautionsWanted is what the markets of the recipe want on its labels.
func (f figures) cautionsWanted() string {
	if len(f.batch.Vessels) == 0 {
		return ""
	}
	v := &f.batch.Vessels[0]
	candle := schema.CandleType{Melt: f.batch.MadeIn(v) == "melt", Container: v.Kind == "container", Floats: f.batch.Recipe.Get("floats").Yes()}
	var says []string
	for _, market := range f.view.Markets() {
		if names := schema.RequiredCautions(market.Text, candle); len(names) > 0 {
			says = append(says, "For the "+market.Text+" ("+schema.CautionsIn(market.Text).Standard+") the labels must say: "+strings.Join(names, "; ")+".")
		}
	}
	return spaced(says...)
}
