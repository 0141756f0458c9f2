package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// FragranceNearLimit is a load within the limit, by little.
var FragranceNearLimit = &lint.Rule{
	Name:   "fragrance-near-limit",
	Group:  group,
	Title:  "a load within a twentieth of what the wax holds",
	Levels: lint.Every(lint.Consider),
	Why: "It is allowed, and leaves nothing for a scale that is a gram off or wax that stays in the pot. " +
		"Loads this high also take the most testing.",
	Remedy: "Weigh exactly, or stay a little lower.",
	Source: "common practice",
	Bad: []lint.Example{{
		About:   "exactly at the limit",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "6 % of wax"`}},
		Flags:   []string{`"6 % of wax"`},
	}},
	Good: []lint.Example{{About: "95 % of the limit", Recipe: "tide-pillar", Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "5.7 % of wax"`}}}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		l, verdict := judge(b)
		if verdict != near || isExtreme(b) {
			return
		}
		at, notes := atMain(b)
		load := loadText(b, l.Load.Value, l.Strictest.Value, l.Basis)
		message := fmt.Sprintf("%s is all that %s holds (%s): weigh exactly", load, l.At.Whose(), l.At.Amount.String())
		if under := b.Over(l, l.Strictest.Value); l.Load.Value.Less(l.Strictest.Value) {
			room := batch.Percent(l.Strictest.Value.Sub(l.Load.Value), l.Basis)
			if under.Known() {
				room = weight(p, b, main(b).Said, under.Value.Neg())
			}
			message = fmt.Sprintf("%s is only %s under what %s holds (%s): weigh exactly", load, room, l.At.Whose(), l.At.Amount.String())
		}
		p.Report(lint.Finding{At: at, Notes: append(limitNote(l.At), notes...), Message: message})
	},
}

// FragranceLoadExtreme is a load no candle should need, whatever a sheet says.
var FragranceLoadExtreme = &lint.Rule{
	Name:   "fragrance-load-extreme",
	Group:  group,
	Title:  "more than 15 % of fragrance, whatever the wax",
	Levels: lint.Every(lint.Must),
	Why: "Hardly any wax holds so much. A figure like this is nearly always a slip: a gram for an ounce, a comma in the wrong place, the weight of another batch. " +
		"Oil that wax cannot hold burns on top of it.",
	Remedy:   "Look the figure up again. If the supplier really states so high a limit, test small and burn under watch.",
	Source:   "common practice",
	Cautions: "Do not light a candle that was made like this by mistake.",
	Bad: []lint.Example{{
		About:   "a limit that covers it, which is unheard of",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "16 % of wax"`}, {From: `wax "northlight-pillar"`, To: `wax "sponge"`}},
		Stock:   sponge,
		Flags:   []string{`"16 % of wax"`},
		Level:   lint.Should,
	}},
	Also: []string{"batch-left-over", "test-burn-missing"},
	Good: []lint.Example{{
		About:   "15 % of wax in such a wax",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "15 % of wax"`}, {From: `wax "northlight-pillar"`, To: `wax "sponge"`}},
		Stock:   sponge,
	}},
	Check: checkExtreme,
}

const sponge = `wax "sponge" {
  title            = "Trial wax, porous"
  family           = "paraffin"
  suits            = ["pillar"]
  melt_to          = "180 to 190 °F"
  pour_at          = "168 to 182 °F"
  add_fragrance_at = "175 to 188 °F"
  congeals_at      = "140 °F"
  never_above      = "240 °F"
  flash_point      = "450 °F"
  fragrance_limit  = "20 % of wax"
  density          = "0.91 g/mL"
  shrinkage        = "12 %"
  cure             = "1 to 3 days"
}
`

// checkExtreme is silent over a stated limit, which fragrance-over-limit says,
// and where the wax or its limit cannot be read, which another rule says.
func checkExtreme(p *lint.Pass) {
	b := batch.Of.In(p.View)
	if len(b.Fragrances) == 0 || !isExtreme(b) {
		return
	}
	l, verdict := judge(b)
	stated := l.State == schema.Known && l.Family == ""
	if l.State == schema.Broken || stated && verdict == over {
		return
	}
	at, notes := atMain(b)
	f := lint.Finding{At: at, Notes: append(limitNote(l.At), notes...)}
	if stated && (verdict == within || verdict == near) {
		f.Levels = lint.Every(lint.Should)
		f.Message = fmt.Sprintf("%s over 15 %% of wax, which hardly any wax holds; %s states %s: make sure of both figures", extremeText(b), l.At.Whose(), l.At.Amount.String())
	} else {
		f.Message = fmt.Sprintf("%s over 15 %% of wax, which hardly any wax holds, and no sheet here says that this one does: is it a slip?", extremeText(b))
		if verdict != unjudged {
			f.Fixes = func() []schema.Fix { return lowerTo(b, l) }
		}
	}
	p.Report(f)
}

// extremeText is all fragrances together, to stand before the 15 %.
func extremeText(b *batch.Batch) string {
	if b.FragranceOfWax.Known() {
		return loadText(b, b.FragranceOfWax.Value, extreme, quantity.OfWax) + " is"
	}
	load := loadText(b, b.FragranceOfTotal.Value, extremeOfTotal, quantity.OfTotal)
	if !b.FragranceOfTotal.Value.Less(one) {
		return load + " leaves no room for wax and is"
	}
	return load + " is, whatever else goes in,"
}

// FragranceLimitUnknown is a scented recipe whose wax states no limit, so that
// what is usual for its family stands in.
var FragranceLimitUnknown = &lint.Rule{
	Name:   "fragrance-limit-unknown",
	Group:  group,
	Title:  "a scented recipe whose wax does not state how much fragrance it holds",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Should, Sale: lint.Should},
	Why: "What is usual for a family of waxes is a guess about this grade: two paraffins on one shelf can differ by half. " +
		"Until the sheet's own limit is written down, the recipe is only checked against that guess.",
	Remedy: "Look up the limit on the wax's data sheet and write it in its stock item: fragrance_limit = \"6 % of wax\", with the basis the sheet uses.",
	Source: "common practice",
	Bad: []lint.Example{{
		About:   "a wax written down without its limit",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `wax "northlight-pillar"`, To: `wax "sack"`}},
		Stock:   withoutLimit,
		Flags:   []string{`"sack"`},
	}},
	Also: []string{"test-burn-missing"},
	Good: []lint.Example{{About: "the limit stated", Recipe: "tide-pillar"}, {About: "an unscented candle needs none", Recipe: "quayside-taper"}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		if len(b.Fragrances) == 0 {
			return
		}
		for i := range b.Waxes {
			in := &b.Waxes[i]
			if in.Stock == nil || !in.Stock.Get("fragrance_limit").Absent() {
				continue
			}
			usual := b.FragranceLimitOf(in.Stock)
			if usual.Family == "" {
				continue // nothing stands in: fragrance-over-limit says what it waits for
			}
			p.Missing(lint.Finding{
				At: lint.AtLabel(in.Block),
				Message: fmt.Sprintf("%s does not state how much fragrance it holds; it is judged by what is usual for %s (%s, common practice), which is only a guess about this grade",
					in.Stock.Title(), usual.Family, usual.Amount.String()),
				Notes: []lint.Note{{Place: lint.AtHeader(in.Stock), Message: "its fragrance_limit belongs here"}},
			})
		}
	},
}

const withoutLimit = `wax "sack" {
  title            = "Paraffin from the unlabelled sack"
  family           = "paraffin"
  suits            = ["pillar"]
  melt_to          = "180 to 190 °F"
  pour_at          = "168 to 182 °F"
  add_fragrance_at = "175 to 188 °F"
  congeals_at      = "140 °F"
  never_above      = "240 °F"
  flash_point      = "450 °F"
  density          = "0.91 g/mL"
  shrinkage        = "12 %"
  cure             = "1 to 3 days"
}
`
