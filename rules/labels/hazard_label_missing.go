package labels

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/hazard"
	"wickrule/schema"
)

// HazardLabelMissing compares what the labels on a candle carry with what its
// classification calls for.
var HazardLabelMissing = &lint.Rule{
	Name:   "hazard-label-missing",
	Group:  Group,
	Title:  "labels that leave out a hazard the candle is classified for in the EU or the UK",
	Levels: lint.Levels{Sale: lint.Must},
	Why: "In the EU and the UK a scented candle is a mixture of chemicals before the law. What its fragrance brings is reckoned out of everything weighed in, wax and all, " +
		"and from certain shares on the label carries a sign, a signal word, a statement and names. Most often it is skin sensitization: whoever is allergic to a substance looks " +
		"for its name, and a tenth of what classifies the candle is enough to have to name it. What is hazardous of the neat oil alone, that it burns or harms when swallowed into the lungs, " +
		"does not pass to a solid candle. The wax is taken as not classified.",
	Remedy: "Have the label printed anew with what is lacking, or lower the load. Where an identifier (UFI) is due, make one with the agency's free generator and send the notice to the poison " +
		"centers before the first candle is sold.",
	Card: lint.Card{
		Question: "Why is there a hazard sign on a scented candle?",
		Answer: "Because of what is in the fragrance. From certain shares on it must stand on the label in the EU and the UK; most often it says that " +
			"the candle may cause an allergic skin reaction.",
		AllRight: "Many candles stay below those shares, and some need only a name on the label, for those who are allergic to that substance.",
		Do: "If you have an allergy, look for its name on the label before you buy. If you make candles, have the classification worked out " +
			"before you sell one.",
	},
	Source: "Regulation (EC) No 1272/2008: Annex I, Tables 1.1, 3.1.1 to 3.9.4, 4.1.1 and 4.1.2, 1.5.2 for small packs; Annex II, 2.8; Articles 17, 18, 20, 26 to 29; Annex VIII and Article 45 (EU only). " +
		"Great Britain has retained the same tables. From memory, and so no louder than should: the figures of Table 3.1.2 that stand for a category, harm to organs (3.8.3, Tables 3.8.3 and 3.9.4), the ozone layer, the classes of Regulation (EU) 2023/707, and the usual precautions",
	Cautions: deferral + " Tests of the candle itself, where there are any, come before this arithmetic (Article 9).",
	Bad: []lint.Example{
		{
			About:   "a sensitizer at a tenth of a per cent is not named",
			Recipe:  "skerry-eu",
			Changes: []lint.Change{{From: "label = \"eu-kelp-jar\"", To: "label = \"eu-short\""}},
			Stock:   euLabel("eu-short", "  signal     = \"Warning\"\n  pictograms = [\"GHS07\"]\n  hazards    = [\"H317\"]\n  names      = [\"d-limonene\", \"linalool\"]\n"+precautionsAndUFI),
			Flags:   []string{`"eu-short"`},
		},
		{
			About:   "a label that says nothing of hazards",
			Recipe:  "skerry-eu",
			Changes: []lint.Change{{From: "label = \"eu-kelp-jar\"", To: "label = \"eu-short\""}},
			Stock:   euLabel("eu-short", precautionsAndUFI),
			Flags:   []string{`"eu-short"`},
		},
		{
			About:   "EUH208 left out, in the UK",
			Recipe:  "firth-uk",
			Changes: []lint.Change{{From: "label = \"uk-amber-jar\"", To: "label = \"uk-short\""}},
			Stock:   ukLabel("uk-short", ""),
			Flags:   []string{`"uk-short"`},
		},
		{
			About:   "no unique formula identifier",
			Recipe:  "skerry-eu",
			Changes: []lint.Change{{From: "label = \"eu-kelp-jar\"", To: "label = \"eu-short\""}},
			Stock:   euLabel("eu-short", strings.Split(wholeHazards+precautionsAndUFI, "  ufi")[0]),
			Flags:   []string{`"eu-short"`},
		},
		{
			About:   "no word on how to dispose of it",
			Recipe:  "skerry-eu",
			Changes: []lint.Change{{From: "label = \"eu-kelp-jar\"", To: "label = \"eu-short\""}},
			Stock:   euLabel("eu-short", wholeHazards+strings.Replace(precautionsAndUFI, ", \"P501\"", "", 1)),
			Flags:   []string{`"eu-short"`},
			Level:   lint.Should,
		},
	},
	Good: []lint.Example{
		{About: "H317 with all names", Recipe: "skerry-eu", Shelf: `label eu-kelp-jar`},
		{About: "EUH208 alone, under the limit for H317", Recipe: "firth-uk", Shelf: `label uk-amber-jar`},
		{About: "the words of the statement printed behind its code, names as the register has them", Recipe: "skerry-eu",
			Changes: []lint.Change{{From: "label = \"eu-kelp-jar\"", To: "label = \"eu-long\""}},
			Stock: euLabel("eu-long", "  signal     = \"Warning\"\n  pictograms = [\"GHS07\"]\n  hazards    = [\"H317 May cause an allergic skin reaction.\"]\n"+
				"  names      = [\"Limonene\", \"Linalool\", \"Citral\"]\n"+precautionsAndUFI)},
		{About: "no classification in the US", Recipe: "tide-pillar", Shelf: `label us-base`},
	},
	Check: checkHazardLabel,
}

const (
	wholeHazards      = "  signal     = \"Warning\"\n  pictograms = [\"GHS07\"]\n  hazards    = [\"H317\"]\n  names      = [\"d-limonene\", \"linalool\", \"citral\"]\n"
	precautionsAndUFI = "  precautions = [\"P102\", \"P280\", \"P302+P352\", \"P333+P313\", \"P501\"]\n  ufi         = \"UFI: K7C0-40W5-T00A-93GX\"\n"
)

// euLabel is an example's label for the EU, sound but for its hazards.
func euLabel(key, hazards string) string {
	return "label \"" + key + "\" {\n  markets    = [\"EU\"]\n  languages  = [\"en\"]\n" +
		"  cautions   = [\"general warning sign\", \"never leave unattended\", \"keep away from children and pets\", \"keep away from things that catch fire\"]\n" +
		"  net_weight = \"190 g (6.7 oz)\"\n  contact    = \"Larkspur Quay Candleworks, post@larkspur-quay.example\"\n  lot        = \"date of the pour\"\n" + hazards + "}\n"
}

// ukLabel is the same for the UK.
func ukLabel(key, hazards string) string { return without(euLabel(key, hazards), "\"EU\"", "\"UK\"") }

func checkHazardLabel(p *lint.Pass) {
	c, markets, ok := hazards(p)
	if !ok || banned(c) {
		return
	}
	askFigures(p, c)
	b := batch.Of.In(p.View)
	all := labelsOf(p, b)
	for i := range all {
		on := &all[i]
		if on.broken || len(on.labels) == 0 && !isMelt(b, on.vessel) {
			continue // a candle without any label is warning-label-missing's
		}
		for _, market := range markets {
			if len(on.labels) > 0 && on.madeFor(market) == madeForOthers {
				continue // label-not-for-market's
			}
			judgeHazards(p, b, c, on, market, len(all) > 1)
		}
	}
}

// judgeHazards is one market's look at the labels on one vessel.
func judgeHazards(p *lint.Pass, b *batch.Batch, c *hazard.Classification, on *attached, market string, several bool) {
	signals, readSignals := on.signals()
	pictograms, readPictograms := on.says("pictograms")
	statements, readStatements := on.says("hazards")
	names, readNames := on.says("names")
	if !readSignals || !readPictograms || !readStatements || !readNames {
		return
	}
	due := on.elements(c, market)
	lacks := due.Lacks(signals, pictograms, statements, names)
	if !lacks.None() {
		p.Missing(lackFinding(p, b, c, on, &due, &lacks, several))
	}
	if len(on.labels) == 0 {
		return
	}
	judgeUFI(p, c, on, &due)
	if len(lacks.Statements) == 0 { // else the text offered has them too
		judgePrecautions(p, on, &due)
	}
}

func lackFinding(p *lint.Pass, b *batch.Batch, c *hazard.Classification, on *attached, due, lacks *hazard.Elements, several bool) lint.Finding {
	candle := candleType(b, on.vessel)
	steps := reasons(c, lacks)
	who := fmt.Sprintf("%s %s", on.titles(), verb(len(on.labels), "does not carry", "do not carry"))
	if len(on.labels) == 0 {
		who = p.Recipe.Title() + " gets no label and must carry"
	}
	least := ""
	if !c.Whole() {
		least = " at least"
	}
	f := lint.Finding{
		At:     on.at(p.Recipe),
		Levels: byMemory(c, on, due.Market, lacks),
		Message: fmt.Sprintf("%s %s, which the %s asks for%s: %s. Worked out from what the stock states; %s",
			who, listed(lacks), due.Market, least, steps[0].String(), decides),
		Notes: shown(steps[1:]),
	}
	if len(on.labels) == 0 {
		f.Notes = append(f.Notes, lint.Note{Place: lint.AtHeader(p.Recipe), Message: due.Offer()})
		f.Fixes = func() []schema.Fix { return attachments(p, *on, candle, several) }
		return f
	}
	stock := on.stockFor(due.Market)
	f.Notes = append(f.Notes, lint.Note{Place: lint.AtHeader(stock), Message: due.Offer()})
	f.Fixes = func() []schema.Fix { return append(swaps(p, *on, candle), hazardPrint(stock, lacks)...) }
	return f
}

// byMemory is how loud a lack is that rests on figures from memory alone: a
// should. Zero, the rule's own level, where something of it does not.
func byMemory(c *hazard.Classification, on *attached, market string, lacks *hazard.Elements) lint.Levels {
	sure := on.elements(c.Checked(), market)
	if sure.Signal != "" && sure.Signal == lacks.Signal || common(sure.Pictograms, lacks.Pictograms) || common(sure.Statements, lacks.Statements) || common(sure.Names, lacks.Names) {
		return lint.Levels{}
	}
	return lint.Levels{Sale: lint.Should}
}

func common[T comparable](a, b []T) bool {
	return slices.ContainsFunc(a, func(x T) bool { return slices.Contains(b, x) })
}

// stockFor is the last label made for a market, else the last that does not
// say what it is made for.
func (on *attached) stockFor(market string) *schema.Block {
	var stock *schema.Block
	for _, l := range on.labels {
		if yes, stated := covers(l.stock, market); yes || !stated && stock == nil {
			stock = l.stock
		}
	}
	return stock
}

// hazardPrint offers to write what is lacking into the stock label. A signal
// word that another market wants in its place is left to a person.
func hazardPrint(stock *schema.Block, lacks *hazard.Elements) []schema.Fix {
	var edits []schema.Edit
	if lacks.Signal != "" {
		if us, _ := covers(stock, "US"); us && stock.Get("signal").Known() {
			return nil
		}
		edits = append(edits, schema.SetValue(stock.Get("signal"), schema.Quote(lacks.Signal)))
	}
	names := make([]string, len(lacks.Names))
	for i, s := range lacks.Names {
		names[i] = s.Name
	}
	for _, list := range []struct {
		attr string
		add  []string
	}{{"pictograms", lacks.Pictograms}, {"hazards", lacks.Statements}, {"names", names}} {
		if len(list.add) == 0 {
			continue
		}
		quoted := make([]string, 0, len(list.add))
		for _, word := range append(kept(stock, list.attr, list.add), list.add...) {
			quoted = append(quoted, schema.Quote(word))
		}
		edits = append(edits, schema.SetValue(stock.Get(list.attr), "["+strings.Join(quoted, ", ")+"]"))
	}
	return []schema.Fix{{Title: fmt.Sprintf("add %s to the stock label %s (and print it anew)", listed(lacks), stock.Label), Edits: edits}}
}

// kept are the words of a list that what is added does not say already.
func kept(stock *schema.Block, attr string, add []string) []string {
	return slices.DeleteFunc(texts(stock, attr), func(word string) bool { return attr == "hazards" && hazard.Carries(add, word) })
}

// judgeUFI asks for the identifier of candles that are classified for health.
func judgeUFI(p *lint.Pass, c *hazard.Classification, on *attached, due *hazard.Elements) {
	ufi, whole := on.first("ufi")
	if !due.UFI || !whole {
		return
	}
	var why string
	levels := lint.Levels{Sale: lint.Should} // where all that asks for one is from memory
	for _, r := range c.Results {
		memory := c.Steps[r.Step].Memory
		if r.Class.Health() && (why == "" || !memory && levels != lint.Levels{}) {
			why = r.String()
			if !memory {
				levels = lint.Levels{}
			}
		}
	}
	switch {
	case ufi.Absent():
		p.Missing(lint.Finding{At: on.at(p.Recipe), Levels: levels, Message: fmt.Sprintf("%s %s no unique formula identifier (UFI), which the EU asks for on a candle classified for health (%s), with a notice to the poison centers "+
			"before it is sold (Article 45 and Annex VIII); %s", on.titles(), verb(len(on.labels), "carries", "carry"), why, decides)})
	case !isUFI(ufi.Text()):
		p.Report(lint.Finding{At: lint.AtValue(ufi), Message: fmt.Sprintf("%q is no unique formula identifier: that is UFI: and four blocks of four letters or digits, such as UFI: XXXX-XXXX-XXXX-XXXX", ufi.Text()),
			Notes: usedIn(p)})
	}
}

// isUFI says whether a text has the form of an identifier (Annex VIII, part A,
// 5): four blocks of four. Whether it belongs to this formulation is not told.
func isUFI(text string) bool {
	blocks := strings.Split(strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(text), "UFI:")), "-")
	if len(blocks) != 4 {
		return false
	}
	for _, b := range blocks {
		if len(b) != 4 || strings.Trim(b, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789") != "" {
			return false
		}
	}
	return true
}

// judgePrecautions asks for precautionary statements where hazard statements
// are due, one of them about disposal. Which others, is the seller's choice.
func judgePrecautions(p *lint.Pass, on *attached, due *hazard.Elements) {
	has, whole := on.says("precautions")
	if len(due.Precautions) == 0 || !whole {
		return
	}
	f := lint.Finding{At: on.at(p.Recipe), Levels: lint.Levels{Sale: lint.Should}}
	switch {
	case len(has) == 0:
		f.Message = fmt.Sprintf("%s %s no precautionary statements beside %s; usual for this classification, from memory: %s (Articles 22 and 28); %s",
			on.titles(), verb(len(on.labels), "carries", "carry"), joined(due.Statements), strings.Join(due.Precautions, ", "), decides)
	case !slices.ContainsFunc(has, func(code string) bool { return strings.HasPrefix(code, "P50") }):
		f.Message = fmt.Sprintf("%s %s not say how to dispose of the candle or its pack (P501): the public needs one such statement beside %s (Article 28(2)); %s",
			on.titles(), verb(len(on.labels), "does", "do"), joined(due.Statements), decides)
	case len(has) > 6:
		f.Levels = lint.Levels{Sale: lint.Consider}
		f.Message = fmt.Sprintf("%s %s %d precautionary statements, and six are enough unless the hazard needs more (Article 28(3)): the few that matter are read sooner",
			on.titles(), verb(len(on.labels), "carries", "carry"), len(has))
	default:
		return
	}
	p.Missing(f)
}
