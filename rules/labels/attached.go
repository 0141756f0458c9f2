package labels

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// attached are the labels that the steps put on the candles of one vessel;
// together they speak for the candle.
type attached struct {
	vessel *batch.Vessel // nil: the recipe names no vessel
	steps  []*schema.Block
	labels []label
	// broken: a step names its label in a way that cannot be read, or a label
	// that is not in stock. Another rule says so, and nothing is missed here.
	broken bool
}

// label is one attached label, with the value in the recipe that names it.
type label struct {
	stock *schema.Block
	said  schema.Value
	item  schema.Item
}

// at is where the recipe names the label.
func (l label) at() lint.Place { return lint.AtItem(l.said, l.item) }

// labelsOf lists the labels on each vessel of the recipe, in the order
// written.
func labelsOf(p *lint.Pass, b *batch.Batch) []attached {
	if len(b.Vessels) == 0 {
		return []attached{gather(p, b, nil, -1)}
	}
	all := make([]attached, len(b.Vessels))
	for i := range b.Vessels {
		all[i] = gather(p, b, &b.Vessels[i], i)
	}
	return all
}

func gather(p *lint.Pass, b *batch.Batch, vessel *batch.Vessel, index int) attached {
	on := attached{vessel: vessel}
	for i := range b.Steps {
		step := &b.Steps[i]
		if step.Kind != "attach label" || index >= 0 && !step.Is(index) {
			continue
		}
		on.steps = append(on.steps, step.Block)
		said := step.Block.Get("label")
		if said.Broken() {
			on.broken = true
		}
		for _, item := range said.Items() {
			stock, ok := p.Stock("label", item.Text)
			if !ok {
				on.broken = true
				continue
			}
			on.labels = append(on.labels, label{stock, said, item})
		}
	}
	return on
}

// at is where a finding about the labels together points: the last label
// named, else the last step that attaches one, else the vessel, else the
// recipe.
func (on *attached) at(recipe *schema.Block) lint.Place {
	switch {
	case len(on.labels) > 0:
		return on.labels[len(on.labels)-1].at()
	case len(on.steps) > 0:
		return lint.AtHeader(on.steps[len(on.steps)-1])
	case on.vessel != nil:
		return lint.AtHeader(on.vessel.Block)
	}
	return lint.AtHeader(recipe)
}

// titles names the labels: "Base label, US and Lid sticker".
func (on *attached) titles() string {
	names := make([]string, len(on.labels))
	for i, l := range on.labels {
		names[i] = l.stock.Title()
	}
	return strings.Join(names, " and ")
}

// says lists the words of a list attribute over all labels together. whole is
// false where a label's list cannot be read.
func (on *attached) says(attr string) (words []string, whole bool) {
	whole = !on.broken
	for _, l := range on.labels {
		v := l.stock.Get(attr)
		if v.Broken() {
			whole = false
		}
		for _, item := range v.Items() {
			words = append(words, item.Text)
		}
	}
	return words, whole
}

// first is the first known value of an attribute among the labels. whole is
// false where one cannot be read.
func (on *attached) first(attr string) (v schema.Value, whole bool) {
	whole = !on.broken
	for _, l := range on.labels {
		got := l.stock.Get(attr)
		if got.Broken() {
			whole = false
		}
		if got.Known() && !v.Known() {
			v = got
		}
	}
	return v, whole
}

// covers says whether a label is made for the market. stated is false where
// it does not say what it is made for.
func covers(l *schema.Block, market string) (yes, stated bool) {
	v := l.Get("markets")
	if !v.Known() {
		return false, false
	}
	return slices.ContainsFunc(v.Items(), func(i schema.Item) bool { return i.Text == market }), true
}

// suitable lists the stock labels that are made for every market of the recipe,
// carry what its candles must be warned of, their hazards included, and promise
// no more than one of them holds; those that come nearest to it first, at most most.
func suitable(p *lint.Pass, on attached, candle schema.CandleType, most int) []*schema.Block {
	var fit []*schema.Block
	for _, l := range p.Shop().Shelf("label") {
		if fits(p, l, candle) && !on.lessThan(promised(l)) && on.warnsEnough(p, l) {
			fit = append(fit, l)
		}
	}
	slices.SortStableFunc(fit, func(a, b *schema.Block) int { return promised(b).Cmp(promised(a)) })
	return fit[:min(most, len(fit))]
}

// promised is the net weight printed on a label, in g; zero where none is.
func promised(l *schema.Block) quantity.Rat {
	net := parseNet(l.Get("net_weight").Text(), quantity.Weight)
	if !net.hasUS() && !net.hasMetric() {
		return quantity.Int(0)
	}
	return net.most().Base()
}

// lessThan says whether one candle is known to hold less than a weight in g.
func (on *attached) lessThan(g quantity.Rat) bool {
	return on.vessel != nil && on.vessel.Mass.Known() && on.vessel.Mass.Value.Less(g)
}

func fits(p *lint.Pass, l *schema.Block, candle schema.CandleType) bool {
	var has []string
	for _, item := range l.Get("cautions").Items() {
		has = append(has, item.Text)
	}
	for _, market := range p.Markets() {
		if yes, _ := covers(l, market.Text); !yes || len(missing(has, market.Text, candle)) > 0 {
			return false
		}
	}
	return true
}

// missing lists the cautions a market requires that are not among has.
func missing(has []string, market string, candle schema.CandleType) []string {
	var lacking []string
	for _, wanted := range schema.RequiredCautions(market, candle) {
		if !slices.ContainsFunc(has, func(h string) bool { return schema.CautionCovers(h, wanted) }) {
			lacking = append(lacking, wanted)
		}
	}
	return lacking
}

// isMelt says whether what is made in the vessel has no flame to be warned of.
func isMelt(b *batch.Batch, vessel *batch.Vessel) bool {
	if vessel == nil {
		return b.Makes == "melt"
	}
	return b.MadeIn(vessel) == "melt"
}

// candleType is what the cautions of a vessel's candle depend on.
func candleType(b *batch.Batch, vessel *batch.Vessel) schema.CandleType {
	return schema.CandleType{
		Melt:      isMelt(b, vessel),
		Container: vessel != nil && vessel.Kind == "container" || vessel == nil && b.Makes == "jar",
		Floats:    b.Recipe.Get("floats").Yes(),
	}
}

// swaps offers to name another label where the last one stands.
func swaps(p *lint.Pass, on attached, candle schema.CandleType) []schema.Fix {
	l := on.labels[len(on.labels)-1]
	var fixes []schema.Fix
	for _, other := range suitable(p, on, candle, 4) {
		if other != l.stock {
			fixes = append(fixes, schema.Fix{
				Title: fmt.Sprintf("attach %s in its place", other.Label),
				Edits: []schema.Edit{{File: l.at().File, Span: l.item.Span, Text: schema.Quote(other.Label)}},
			})
		}
	}
	return fixes
}

// attachments offers to attach a label where none is: one fix for each label
// that suits.
func attachments(p *lint.Pass, on attached, candle schema.CandleType, several bool) []schema.Fix {
	var fixes []schema.Fix
	for _, l := range suitable(p, on, candle, 4) {
		title := fmt.Sprintf("attach the label %s", l.Label)
		if n := len(on.steps); n > 0 {
			fixes = append(fixes, repair.Rewrite(title, on.steps[n-1].Get("label"), schema.Quote(l.Label)))
			continue
		}
		attrs := []repair.Attr{repair.Text("label", l.Label)}
		if several && on.vessel != nil {
			attrs = append(attrs, repair.Text("vessel", on.vessel.Block.Label))
		}
		fixes = append(fixes, repair.LastStep(title, p.Recipe, repair.Step("attach label", attrs...)))
	}
	return fixes
}

// marketList names the recipe's markets: "the US", "the US and the EU".
func marketList(items []schema.Item) string {
	names := make([]string, len(items))
	for i, item := range items {
		names[i] = "the " + item.Text
	}
	return strings.Join(names, " and ")
}
