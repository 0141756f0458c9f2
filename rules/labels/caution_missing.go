package labels

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// CautionMissing is about labels that lack a caution a market requires. A
// market that no label is made for is label-not-for-market's.
var CautionMissing = &lint.Rule{
	Name:   "caution-missing",
	Group:  Group,
	Title:  "labels that leave out a caution the market requires",
	Levels: lint.Levels{OwnUse: lint.Silent, Class: lint.Should, Sale: lint.Must}, Binding: true,
	Why: "Each market has a short list of cautions that belong on every candle, because each of them stands for fires that happened: a candle " +
		"left alone, a curtain, a child. All labels on one candle count together, so a caution may stand on the lid and the rest on the base.",
	Remedy: "Attach a label that has all of them, or add the missing ones to the label in stock and have it printed anew.",
	Source: "US: the three core statements of ASTM F2058, as publicly known. EU and UK: the general warning sign and the three core cautions of " +
		"EN 15494:2019, as publicly known; those that depend on the type of candle are from memory",
	Cautions: deferral,
	Bad: []lint.Example{
		{
			About:   "a US label without the caution about children",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "label = \"us-base\"", To: "label = \"plain-base\""}},
			Stock: "label \"plain-base\" {\n  markets    = [\"US\"]\n  languages  = [\"en\"]\n  signal     = \"WARNING\"\n  cautions   = [\"burn within sight\", \"keep away from things that catch fire\"]\n" +
				"  net_weight = \"1 lb 5 oz (595 g)\"\n  contact    = \"Larkspur Quay Candleworks\"\n  lot        = \"date of the pour\"\n}\n",
			Flags: []string{`"plain-base"`},
		},
	},
	Good: []lint.Example{
		{About: "all three core cautions", Recipe: "tide-pillar", Shelf: `label us-base`},
		{
			About:   "the third caution on a second label",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "label = \"us-base\"", To: "label = [\"plain-base\", \"lid\"]"}},
			Stock: "label \"plain-base\" {\n  markets    = [\"US\"]\n  languages  = [\"en\"]\n  signal     = \"WARNING\"\n  cautions   = [\"burn within sight\", \"keep away from things that catch fire\"]\n" +
				"  net_weight = \"1 lb 5 oz (595 g)\"\n  contact    = \"Larkspur Quay Candleworks\"\n}\nlabel \"lid\" {\n  markets  = [\"US\"]\n  cautions = [\"keep away from children and pets\"]\n}\n",
		},
	},
	Check: checkCautions,
}

func checkCautions(p *lint.Pass) {
	b := batch.Of.In(p.View)
	if !p.Loud(lint.Levels{}) {
		return
	}
	for _, on := range labelsOf(p, b) {
		has, whole := on.says("cautions")
		if !whole || len(on.labels) == 0 || isMelt(b, on.vessel) {
			continue
		}
		for _, market := range p.Markets() {
			if on.madeFor(market.Text) == madeForOthers {
				continue
			}
			candle := candleType(b, on.vessel)
			if lacking := missing(has, market.Text, candle); len(lacking) > 0 {
				p.Report(cautionFinding(p, on, market.Text, lacking, candle))
			}
		}
	}
}

func cautionFinding(p *lint.Pass, on attached, market string, lacking []string, candle schema.CandleType) lint.Finding {
	last := on.labels[len(on.labels)-1]
	f := lint.Finding{
		At: last.at(),
		Message: fmt.Sprintf("%s %s not say %s, which %s asks for on every candle of this kind sold in the %s",
			on.titles(), verb(len(on.labels), "does", "do"), quoted(lacking), schema.CautionsIn(market).Standard, market),
		Fixes: func() []schema.Fix { return append(swaps(p, on, candle), additions(last.stock, lacking)...) },
	}
	if v := last.stock.Get("cautions"); v.Known() {
		f.Notes = []lint.Note{{Place: lint.AtValue(v), Message: "its cautions are listed here"}}
	}
	return f
}

// additions offers to write the cautions into the stock label's list.
func additions(stock *schema.Block, lacking []string) []schema.Fix {
	v := stock.Get("cautions")
	words := make([]string, 0, len(lacking))
	for _, item := range v.Items() {
		words = append(words, schema.Quote(item.Text))
	}
	for _, w := range lacking {
		words = append(words, schema.Quote(w))
	}
	return []schema.Fix{{
		Title: fmt.Sprintf("add %s to the stock label %s (and print it anew)", quoted(lacking), stock.Label),
		Edits: []schema.Edit{schema.SetValue(v, "["+strings.Join(words, ", ")+"]")},
	}}
}

type madeFor uint8

const (
	madeForIt     madeFor = iota // one of the labels is made for the market
	madeForOthers                // all of them say what they are made for, and it is not this
	notSaid                      // some label does not say
)

func (on *attached) madeFor(market string) madeFor {
	result := madeForOthers
	for _, l := range on.labels {
		yes, stated := covers(l.stock, market)
		if yes {
			return madeForIt
		}
		if !stated {
			result = notSaid
		}
	}
	return result
}

func verb(n int, one, several string) string {
	if n == 1 {
		return one
	}
	return several
}

// quoted lists words for a message: “burn within sight” and “burn upright”.
func quoted(words []string) string {
	marked := make([]string, len(words))
	for i, w := range words {
		marked[i] = "“" + w + "”"
	}
	if n := len(marked); n > 1 {
		return strings.Join(slices.Concat(marked[:n-2], []string{marked[n-2] + " and " + marked[n-1]}), ", ")
	}
	return marked[0]
}
