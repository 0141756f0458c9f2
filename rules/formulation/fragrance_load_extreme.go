package formulation

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

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
		About:   "two ounces too many to the pound, in a wax that states no limit",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "2.5 oz per lb"`}, {From: `wax "northlight-pillar"`, To: `wax "sponge"`}},
		Stock:   strings.Replace(sponge, "  fragrance_limit  = \"20 % of wax\"\n", "", 1),
		Flags:   []string{`"2.5 oz per lb"`},
	}, {
		About:   "a limit that covers it, which is unheard of",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "16 % of wax"`}, {From: `wax "northlight-pillar"`, To: `wax "sponge"`}},
		Stock:   sponge,
		Flags:   []string{`"16 % of wax"`},
		Level:   lint.Should,
	}},
	Also: []string{"batch-left-over", "test-burn-missing", "fragrance-limit-unknown"},
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
		if stated && verdict == overStrict {
			f.Message = fmt.Sprintf("%s over 15 %% of wax, which hardly any wax holds, and over what %s; what the blend as a whole holds%s nobody has tested: is it a slip?", extremeText(b), heldBy(l), average(l))
		}
		if verdict != unjudged {
			f.Fixes = func() []schema.Fix { return lowerTo(b, l) }
		}
	}
	p.Report(f)
}

// average is what the sheets of a blend come to, where the weights say it.
func average(l batch.Limit) string {
	if !l.Average.Known() {
		return ""
	}
	return ", " + batch.Percent(l.Average.Value, l.Basis) + " on the average of its waxes by weight,"
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
