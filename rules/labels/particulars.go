package labels

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// SignalMissing, MakerMissing and LotMissing are about single lines that a
// market asks of a label. A candle with no label at all has another finding.
var (
	SignalMissing = &lint.Rule{
		Name:   "signal-missing",
		Group:  Group,
		Title:  "a US label without the word WARNING",
		Levels: lint.Levels{Sale: lint.Should},
		Why: "In the US the cautions on a candle follow the triangle with the exclamation mark and the word WARNING in capitals, so that " +
			"they are found at a glance. Elsewhere the triangle is one of the cautions, and a signal word comes from the hazard classification.",
		Remedy:   "State signal = \"WARNING\" on a label whose print really has it.",
		Source:   "ASTM F2058-07(2021), as publicly known",
		Cautions: deferral,
		Bad: []lint.Example{{
			About:   "cautions without the word before them",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "label = \"us-base\"", To: "label = \"quiet-base\""}},
			Stock:   strings.ReplaceAll(exampleLabel, "  signal     = \"WARNING\"\n", ""),
			Flags:   []string{`"quiet-base"`},
		}},
		Good:  []lint.Example{{About: "the word in capitals", Recipe: "tide-pillar"}},
		Check: checkSignal,
	}

	MakerMissing = &lint.Rule{
		Name:   "maker-missing",
		Group:  Group,
		Title:  "labels that do not say who made the candle",
		Levels: lint.Levels{Sale: lint.Should},
		Why: "Whoever buys the candle must be able to reach you, if only to be told that a batch is called back. The law of every market asks for your " +
			"name and place; in the EU for a postal and an electronic address.",
		Remedy:   "Put your name and address on a label and write them in its contact; for the EU with an e-mail address or a web page.",
		Source:   "US: 16 CFR 500.5. EU: Regulation (EU) 2023/988, Article 9 (from memory). UK: General Product Safety Regulations 2005 (from memory)",
		Cautions: deferral,
		Bad: []lint.Example{
			{
				About:   "no name on the label",
				Recipe:  "tide-pillar",
				Changes: []lint.Change{{From: "label = \"us-base\"", To: "label = \"quiet-base\""}},
				Stock:   strings.ReplaceAll(exampleLabel, "  contact    = \"Larkspur Quay Candleworks\"\n", ""),
				Flags:   []string{`"quiet-base"`},
			},
		},
		Good:  []lint.Example{{About: "the shop's name and place", Recipe: "tide-pillar"}, {About: "an electronic address, for the EU", Recipe: "skerry-eu"}},
		Check: checkMaker,
	}

	LotMissing = &lint.Rule{
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
				"  precautions = [\"P101\", \"P102\", \"P280\", \"P302+P352\", \"P333+P313\", \"P501\"]\n  contact     = \"Larkspur Quay Candleworks, post@larkspur-quay.example\"\n}\n",
			Flags: []string{`"eu-plain"`},
		}},
		Good:  []lint.Example{{About: "with its lot", Recipe: "skerry-eu"}, {About: "the US asks for none", Recipe: "tide-pillar"}},
		Check: checkLot,
	}
)

const exampleLabel = "label \"quiet-base\" {\n  markets    = [\"US\"]\n  languages  = [\"en\"]\n  signal     = \"WARNING\"\n" +
	"  cautions   = [\"burn within sight\", \"keep away from things that catch fire\", \"keep away from children\"]\n" +
	"  net_weight = \"1 lb 5 oz (595 g)\"\n  contact    = \"Larkspur Quay Candleworks\"\n  lot        = \"date of the pour\"\n}\n"

func checkSignal(p *lint.Pass) {
	if !p.SoldIn("US") {
		return
	}
	b := batch.Of.In(p.View)
	if b.Makes == "melt" {
		return
	}
	eachLabelled(p, b, func(on attached) {
		signal, whole := on.first("signal")
		if !whole || signal.Text() == "WARNING" {
			return
		}
		f := lint.Finding{At: on.at(p.Recipe), Message: fmt.Sprintf("%s %s the word WARNING in capitals before the cautions, as sold in the US", on.titles(), verb(len(on.labels), "lacks", "lack"))}
		if signal.Known() {
			f.Message += fmt.Sprintf(": it says %q", signal.Text())
			f.Notes = []lint.Note{{Place: lint.AtValue(signal), Message: "its signal word stands here"}}
		}
		p.Report(f)
	})
}

func checkMaker(p *lint.Pass) {
	b := batch.Of.In(p.View)
	eachLabelled(p, b, func(on attached) {
		contact, whole := on.first("contact")
		switch {
		case !whole:
		case strings.TrimSpace(contact.Text()) == "":
			p.Report(lint.Finding{At: on.at(p.Recipe), Message: fmt.Sprintf("%s %s not say who made the candle and where to reach them, which %s asks for",
				on.titles(), verb(len(on.labels), "does", "do"), marketList(p.Markets()))})
		case p.SoldIn("EU") && !electronic(contact.Text()):
			p.Report(lint.Finding{
				At:      on.at(p.Recipe),
				Message: fmt.Sprintf("the contact on %s has no e-mail address or web page, which the EU asks for beside the postal address", on.titles()),
				Notes:   []lint.Note{{Place: lint.AtValue(contact), Message: "the contact stands here"}},
			})
		}
	})
}

// electronic says whether a contact holds something that looks like an e-mail
// address or a web page.
func electronic(contact string) bool {
	for word := range strings.FieldsSeq(contact) {
		word = strings.Trim(word, ".,;()<>")
		host := word[strings.LastIndexAny(word, "@/")+1:]
		if strings.Contains(word, "@") && strings.Contains(host, ".") || strings.HasPrefix(word, "www.") || strings.Contains(word, "://") {
			return true
		}
		if i := strings.LastIndex(word, "."); i > 0 && len(word)-i > 2 && word == strings.ToLower(word) && !strings.ContainsAny(word[i:], "0123456789") {
			return true // shop.example
		}
	}
	return false
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

// eachLabelled calls the check for the labels on each vessel that has any.
func eachLabelled(p *lint.Pass, b *batch.Batch, check func(attached)) {
	if !p.Loud(lint.Levels{}) {
		return
	}
	for _, on := range labelsOf(p, b) {
		if !on.broken && len(on.labels) > 0 {
			check(on)
		}
	}
}

// without is an example's text with one part written another way.
func without(text, part, instead string) string { return strings.Replace(text, part, instead, 1) }
