package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

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
  title            = "Paraffin from the unlabeled sack"
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
