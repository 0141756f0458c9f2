package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// FragranceOverLimit compares all fragrances together with what the wax
// holds, exactly, on the basis the limit is stated on.
var FragranceOverLimit = &lint.Rule{
	Name:   "fragrance-over-limit",
	Group:  group,
	Title:  "more fragrance than the wax holds",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "Wax holds only so much oil. What it cannot hold sweats out onto the surface and gathers in the pool, where the flame finds it: the candle " +
		"flares, soots, or burns over its whole top. It does not even smell stronger, for a wick clogged with oil burns poorly. All fragrances count together.",
	Remedy: "Lower the load to the limit or below. If the scent is too weak, try another fragrance or wax; the limit is the supplier's and is not stretched.",
	Card: lint.Card{
		Question: "Can I put in more fragrance, so that it smells stronger?",
		Answer:   "Not more than the wax holds. Its supplier states how much, most often between 3 and 10 % of the weight of the wax.",
		AllRight: "Up to the stated limit, all fragrances counted together and on the basis that the limit is stated on: 8 % of the wax is 7.41 % of " +
			"the whole.",
		Do: "Look the limit up on the wax's sheet and weigh both, wax and oil. Where the scent is too weak, let the candle cure longer, or try " +
			"another oil or another wax.",
	},
	Source: "the limit is the supplier's, from the wax's data sheet; of wax and of total are turned into each other by arithmetic (8 % of wax is 7.41 % of total). " +
		"Where the sheet is silent, what is usual for the family: common practice",
	Cautions: "Fragrance oils are strong stuff: gloves and fresh air. Never pour what has sweated out down a drain.",
	Bad: []lint.Example{
		{
			About:   "a load over the limit",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "7 % of wax"`}},
			Flags:   []string{`"7 % of wax"`},
		},
		{
			About:   "an ounce to the pound is 6.25 % of wax",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "1 oz per lb"`}},
			Flags:   []string{`"1 oz per lb"`},
		},
		{
			About:   "of total: of the wax it is more",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "6 % of total"`}},
			Flags:   []string{`"6 % of total"`},
		},
		{
			About:   "by weight",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `weight = "80 g"`}},
			Flags:   []string{`"80 g"`},
		},
		{
			About:   "two fragrances, each within the limit",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "  dye \"madder\" {\n", To: "  fragrance \"clove-bell\" {\n    load = \"2 % of wax\"\n  }\n  dye \"madder\" {\n"}},
			Flags:   []string{`"5 % of wax"`},
		},
		{
			About:   "a loose blend: over its strictest wax, though not over the average",
			Recipe:  "winter-blend",
			Changes: []lint.Change{{From: `load = "3 % of wax"`, To: `load = "5.2 % of wax"`}},
			Flags:   []string{`"5.2 % of wax"`},
			Level:   lint.Should,
		},
	},
	Good: []lint.Example{
		{About: "exactly at the limit", Recipe: "tide-pillar", Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "6 % of wax"`}}},
		{About: "5.65 % of total is just under 6 % of wax", Recipe: "tide-pillar", Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "5.65 % of total"`}}},
	},
	Also:  []string{"fragrance-near-limit", "batch-left-over"},
	Check: checkOverLimit,
}

func checkOverLimit(p *lint.Pass) {
	b := batch.Of.In(p.View)
	l, verdict := judge(b)
	if least, most, sure := surelyOver(b); sure && (verdict == unjudged || l.Family != "") {
		if !isExtreme(b) {
			reportSurelyOver(p, b, least, most)
		}
		return
	}
	switch verdict {
	case unjudged:
		if l.Ask(p) && l.Load.Ask(p) {
			l.Strictest.Ask(p)
		}
	case over:
		if l.Family == "" || !isExtreme(b) {
			reportOver(p, b, l)
		}
	case overStrict:
		if !isExtreme(b) {
			reportOverStrict(p, b, l)
		}
	}
}

// surelyOver says whether the load is over the limit whatever the figures that
// are missing may be: least is what the fragrances whose amount is known come
// to, most what the waxes would hold if every one that states no limit held
// its own weight. Both are ratios to the wax; of a limit of total it is not
// sure.
func surelyOver(b *batch.Batch) (least, most quantity.Rat, sure bool) {
	for i := range b.Fragrances {
		if in := &b.Fragrances[i]; in.OfWax.Known() {
			least = least.Add(in.OfWax.Value)
		}
	}
	for i := range b.Waxes {
		in := &b.Waxes[i]
		if !in.OfWax.Known() {
			return least, most, false
		}
		limit := one
		if stated := in.Stock.Get("fragrance_limit"); stated.Known() {
			if stated.Amount().Basis() == quantity.OfTotal {
				return least, most, false
			}
			limit = stated.Amount().High().Base()
		}
		most = most.Add(in.OfWax.Value.Mul(limit))
	}
	return least, most, len(b.Waxes) > 0 && most.Less(least)
}

func reportSurelyOver(p *lint.Pass, b *batch.Batch, least, most quantity.Rat) {
	at, notes := atMain(b)
	p.Report(lint.Finding{
		At:    at,
		Notes: notes,
		Message: fmt.Sprintf("the fragrances whose amount is known come to %s, over the %s that the wax here could hold at the most, whatever the figures that are missing may be",
			batch.PercentBeside(least, most, quantity.OfWax), batch.Percent(most, quantity.OfWax)),
	})
}

func reportOver(p *lint.Pass, b *batch.Batch, l batch.Limit) {
	limit := l.Average.Value
	at, notes := atMain(b)
	f := lint.Finding{At: at, Notes: append(limitNote(l.At), notes...)}
	whose := fmt.Sprintf("what %s holds (%s)", l.At.Whose(), l.At.Amount.String())
	guess := ""
	if l.Family != "" {
		f.Levels = lint.Every(lint.Should)
		usual := b.FragranceLimitOf(l.Lacks)
		whose = fmt.Sprintf("what %s usually holds (%s; %s does not state its own: common practice)", l.Family, usual.Amount.String(), l.Lacks.Title())
		guess = fmt.Sprintf("; for %s, which states none, what is usual for %s: common practice", l.Lacks.Title(), l.Family)
	}
	switch {
	case l.Blend && l.Average.Known():
		whose = fmt.Sprintf("what the blend holds (%s, the average of its waxes by weight%s)", batch.PercentBeside(limit, l.Load.Value, l.Basis), guess)
	case l.Blend:
		limit = l.Loosest.Value
		whose = fmt.Sprintf("what any wax of the blend holds (%s at the most%s)", batch.PercentBeside(limit, l.Load.Value, l.Basis), guess)
	}
	f.Message = fmt.Sprintf("%s is over %s by %s", loadText(b, l.Load.Value, limit, l.Basis), whose, excess(p, b, l, limit))
	f.Fixes = func() []schema.Fix { return lowerTo(b, l) }
	p.Report(f)
}

func reportOverStrict(p *lint.Pass, b *batch.Batch, l batch.Limit) {
	at, notes := atMain(b)
	limit := l.Strictest.Value
	whole := "how much of each wax goes in decides what the blend holds"
	if l.Average.Ask(p) {
		whole = fmt.Sprintf("the blend as a whole may hold %s, the average of its waxes by weight, but nobody has tested that", batch.Percent(l.Average.Value, l.Basis))
	}
	p.Report(lint.Finding{
		At:     at,
		Levels: lint.Every(lint.Should),
		Notes:  append(limitNote(l.At), notes...),
		Message: fmt.Sprintf("%s is over what %s by %s; %s: try it, and give a blend that proves itself its own stock item with its own limit",
			loadText(b, l.Load.Value, limit, l.Basis), heldBy(l), excess(p, b, l, limit), whole),
		Fixes: func() []schema.Fix { return lowerTo(b, l) },
	})
}

// lowerTo offers the strictest limit, which is right for a blend too. Where a
// wax holds none at all, only leaving the fragrance out is below it: that makes
// another candle, so a person decides it.
func lowerTo(b *batch.Batch, l batch.Limit) []schema.Fix {
	if l.Strictest.Value.IsZero() {
		fix := schema.Fix{Title: "leave the fragrance out", Guess: true}
		for i := range b.Fragrances {
			fix.Edits = append(fix.Edits, schema.RemoveBlock(b.Fragrances[i].Block))
		}
		for i := range b.Steps {
			if s := &b.Steps[i]; s.Kind == "add fragrance" {
				fix.Edits = append(fix.Edits, schema.RemoveBlock(s.Block))
			}
		}
		return []schema.Fix{fix}
	}
	title, edits := lowered(b, l.Strictest.Value, l.Basis)
	if edits == nil {
		return nil
	}
	return []schema.Fix{{Title: title, Edits: edits}}
}
