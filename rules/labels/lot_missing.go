package labels

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// LotMissing is a candle whose labels carry no lot, where a market asks for one.
var LotMissing = &lint.Rule{
	Name:   "lot-missing",
	Group:  Group,
	Title:  "labels without a lot or batch, where the market asks for one",
	Levels: lint.Levels{Sale: lint.Should},
	Why: "When one batch turns out bad, the lot on the label tells which candles to call back. Without it all of them have to come back, " +
		"or none do.",
	Remedy:   "Print or stamp a lot on the candle, a date of the pour for instance, and write it in the label's lot.",
	Source:   "EU: Regulation (EU) 2023/988, Article 9 (from memory). UK: General Product Safety Regulations 2005 (from memory)",
	Cautions: deferral,
	Bad: []lint.Example{{
		About:   "an EU label without a lot",
		Recipe:  "skerry-eu",
		Changes: []lint.Change{{From: "label = \"eu-kelp-jar\"", To: "label = \"eu-plain\""}},
		Stock: "label \"eu-plain\" {\n  markets     = [\"EU\"]\n  languages   = [\"en\"]\n  signal      = \"Warning\"\n" +
			"  cautions    = [\"general warning sign\", \"never leave unattended\", \"keep away from children and pets\", \"keep away from things that catch fire\"]\n" +
			"  net_weight  = \"190 g (6.7 oz)\"\n  pictograms  = [\"GHS07\"]\n  hazards     = [\"H317\"]\n  names       = [\"d-limonene\", \"linalool\", \"citral\"]\n" +
			"  precautions = [\"P101\", \"P102\", \"P280\", \"P302+P352\", \"P333+P313\", \"P501\"]\n  ufi         = \"UFI: K7C0-40W5-T00A-93GX\"\n  contact     = \"Larkspur Quay Candleworks, post@larkspur-quay.example\"\n}\n",
		Flags: []string{`"eu-plain"`},
	}},
	Good:  []lint.Example{{About: "with its lot", Recipe: "skerry-eu", Shelf: `label eu-kelp-jar`}, {About: "the US asks for none", Recipe: "tide-pillar"}},
	Check: checkLot,
}

func checkLot(p *lint.Pass) {
	if !p.SoldIn("EU") && !p.SoldIn("UK") {
		return
	}
	b := batch.Of.In(p.View)
	eachLabelled(p, b, func(on attached) {
		lot, whole := on.first("lot")
		if whole && strings.TrimSpace(lot.Text()) == "" {
			p.Report(lint.Finding{At: on.at(p.Recipe), Message: fmt.Sprintf("%s %s no lot or batch, which the EU and the UK ask for so that a bad batch can be called back",
				on.titles(), verb(len(on.labels), "carries", "carry"))})
		}
	})
}
