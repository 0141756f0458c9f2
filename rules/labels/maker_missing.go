package labels

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// MakerMissing is a candle whose labels do not say who made it.
var MakerMissing = &lint.Rule{
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
	Good:  []lint.Example{{About: "the shop's name and place", Recipe: "tide-pillar", Shelf: `label us-base`}, {About: "an electronic address, for the EU", Recipe: "skerry-eu", Shelf: `label eu-kelp-jar`}},
	Check: checkMaker,
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
