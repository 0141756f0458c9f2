package rules_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/batch"
	"wickrule/rules/drill"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// furtherMutations are faults that are no exercise for a learner: what they
// plant is no slip in a recipe, or is only worth knowing, or would be put right
// by writing down another burn than was seen.
var furtherMutations = []drill.Kind{
	{Slip: "hardly a drop to the pour", Rule: "narrow-pour-window", Plant: func(b *drill.Bench) []drill.Fault {
		top := b.PourAt().AtHigh().High()
		if b.Layered() || len(b.FirstPours()) != 1 || top.Less(b.MeltTo().AtLow().Low()) {
			return nil // the ranges do not meet
		}
		pour, melt := b.FirstPours()[0], b.FirstPours()[0].Melt
		m := rewrite(pour.Step.Heat, degrees(pour.Step.Heat.Amount(), top.Sub(quantity.NewRat(2, 5))))
		m.Edits = append(m.Edits, schema.SetValue(melt.Heat, degrees(melt.Heat.Amount(), top)))
		return []drill.Fault{m}
	}},
	{Slip: "stirred for half a minute", Rule: "stir-too-short", Plant: func(b *drill.Bench) []drill.Fault {
		return everyStep(b, "add fragrance", func(s *batch.Step) []drill.Fault { return []drill.Fault{rewrite(s.Block.Get("stir"), `"30 s"`)} })
	}},
	{Slip: "a label without its hazards", Rule: "hazard-label-missing", Plant: func(b *drill.Bench) []drill.Fault {
		return otherLabel(b, "names", func(line string) bool { return strings.HasPrefix(line, "hazards") || strings.HasPrefix(line, "names") })
	}},
	{Slip: "a label without the substances it must name", Rule: "hazard-label-missing", Plant: func(b *drill.Bench) []drill.Fault {
		return otherLabel(b, "names", func(line string) bool { return strings.HasPrefix(line, "names") })
	}},
	{Slip: "a load at which a sensitizer reaches 1 % of the candle", Rule: "hazard-label-missing", Plant: func(b *drill.Bench) []drill.Fault {
		var all []drill.Fault
		for i := range b.Fragrances {
			in := &b.Fragrances[i]
			for component := range in.Stock.Each("component") {
				text := component.File.Text.Slice(component.Span)
				share := component.Get("share").Amount().High().Base()
				load, _ := quantity.Int(1).Quo(share.Mul(quantity.Int(100))) // a ratio of the total
				if !strings.Contains(text, "Skin Sens. 1B") || !in.OfTotal.Value.Less(load) || !soldAbroad(b) || labelHas(b, "H317") {
					continue
				}
				m := rewrite(in.Block.Get("load"), schema.Quote(load.Mul(quantity.Int(100)).Decimal(6)+" % of total"))
				m.Flag = b.StepsOf("attach label")[0].Block.Get("label").Written()
				all = append(all, m)
			}
		}
		return all
	}},
	{Slip: "an oil without its safety data sheet", Rule: "hazard-unknown", Plant: func(b *drill.Bench) []drill.Fault { return otherOil(b, "") }},
	{Slip: "an oil that may not be sold", Rule: "banned-ingredient", Plant: func(b *drill.Bench) []drill.Fault {
		return otherOil(b, "  component \"scent\" {\n    share   = \"20 %\"\n    hazards = [\"Repr. 1B H360FD\"]\n  }\n")
	}},
	{Slip: "a label without its weight, classified", Rule: "net-weight-missing", Plant: func(b *drill.Bench) []drill.Fault {
		if !soldIn(b, "EU") {
			return nil
		}
		return otherLabel(b, "hazards", func(line string) bool { return strings.HasPrefix(line, "net_weight") })
	}},
	{Slip: "a label without its identifier", Rule: "hazard-label-missing", Plant: func(b *drill.Bench) []drill.Fault {
		return otherLabel(b, "ufi", func(line string) bool { return strings.HasPrefix(line, "ufi") })
	}},
	{Slip: "declared to look like food", Rule: "looks-like-food", Plant: func(b *drill.Bench) []drill.Fault {
		if b.View.MadeFor == lint.OwnUse || !soldAbroad(b) {
			return nil
		}
		return []drill.Fault{rewrite(b.Recipe.Get("looks_like"), `"food"`)}
	}},
	{Slip: "a burn that failed", Rule: "test-burn-missing", Plant: func(b *drill.Bench) []drill.Fault {
		if b.View.MadeFor != lint.Sale {
			return nil
		}
		var all []drill.Fault
		for burn := range b.Recipe.Each("test_burn") {
			all = append(all, drill.Fault{Edits: []schema.Edit{schema.SetValue(burn.Get("result"), `"fail"`)}, Flag: drill.Header(b.Recipe)})
		}
		return all
	}},
	{Slip: "a burn that failed, and nothing changed since", Rule: "test-burn-unsafe", Plant: func(b *drill.Bench) []drill.Fault {
		var all []drill.Fault
		for burn := range b.Recipe.Each("test_burn") {
			all = append(all, rewrite(burn.Get("result"), `"fail"`))
		}
		return all
	}},
	{Slip: "a flame over 75 mm", Rule: "test-burn-unsafe", Plant: func(b *drill.Bench) []drill.Fault {
		var all []drill.Fault
		for burn := range b.Recipe.Each("test_burn") {
			all = append(all, rewrite(burn.Get("flame"), `"3.1 in"`))
		}
		return all
	}},
	{Slip: "heavy soot, noted as passed", Rule: "test-burn-doubtful", Plant: func(b *drill.Bench) []drill.Fault {
		var all []drill.Fault
		for burn := range b.Recipe.Each("test_burn") {
			all = append(all, rewrite(burn.Get("soot"), `"heavy"`))
		}
		return all
	}},
	{Slip: "burned for an evening and not to the end", Rule: "test-burn-not-to-the-end", Plant: func(b *drill.Bench) []drill.Fault {
		if len(b.Vessels) != 1 || b.View.MadeFor != lint.Sale || len(b.View.TestBurns()) == 0 {
			return nil
		}
		m := drill.Fault{Flag: drill.Header(b.Recipe)}
		for _, burn := range b.View.TestBurns() {
			m.Edits = append(m.Edits, schema.SetValue(burn.Get("to_end"), "false"))
		}
		return []drill.Fault{m}
	}},
	{Slip: "whom it is for left out", Rule: "made-for-missing", Plant: func(b *drill.Bench) []drill.Fault {
		return []drill.Fault{{Edits: []schema.Edit{schema.RemoveAttr(b.Recipe.Get("made_for"))}, Flag: drill.Header(b.Recipe)}}
	}},
}

func soldIn(b *drill.Bench, market string) bool {
	return b.View.MadeFor == lint.Sale && b.View.SoldIn(market)
}

// soldAbroad says whether the candle is sold where it is classified as a
// mixture.
func soldAbroad(b *drill.Bench) bool { return soldIn(b, "EU") || soldIn(b, "UK") }

// labelHas says whether the recipe's label carries a hazard statement.
func labelHas(b *drill.Bench, code string) bool {
	label, _ := b.View.Stock("label", b.StepsOf("attach label")[0].Block.Get("label").Text())
	return slices.ContainsFunc(label.Get("hazards").Items(), func(item schema.Item) bool { return item.Text == code })
}

// otherLabel attaches a copy of the recipe's label without some of its lines,
// where the label has the attribute.
func otherLabel(b *drill.Bench, attr string, drop func(line string) bool) []drill.Fault {
	if !soldAbroad(b) {
		return nil
	}
	said := b.StepsOf("attach label")[0].Block.Get("label")
	label, _ := b.View.Stock("label", said.Text())
	if label.Get(attr).Absent() {
		return nil
	}
	var kept []string
	for line := range strings.Lines(label.File.Text.Slice(label.Span)) {
		if !drop(strings.TrimSpace(line)) {
			kept = append(kept, line)
		}
	}
	text := strings.Replace(strings.Join(kept, ""), schema.Quote(said.Text()), `"copied"`, 1)
	return []drill.Fault{{Edits: []schema.Edit{schema.SetValue(said, `"copied"`), schema.InsertBlockBefore(b.Recipe, text)}, Flag: `"copied"`}}
}

// otherOil swaps the fragrance for one of which this is stated.
func otherOil(b *drill.Bench, components string) []drill.Fault {
	if !soldAbroad(b) {
		return nil
	}
	oil := "fragrance \"from-the-fair\" {\n  title = \"Oil from the fair\"\n" + components + "}"
	m := relabel(b.Fragrances[0].Block, "from-the-fair")
	m.Edits = append(m.Edits, schema.InsertBlockBefore(b.Recipe, oil))
	return []drill.Fault{m}
}

// rewrite plants a value and wants it flagged.
func rewrite(v schema.Value, literal string) drill.Fault {
	return drill.Fault{Edits: []schema.Edit{schema.SetValue(v, literal)}, Flag: literal}
}

func relabel(b *schema.Block, key string) drill.Fault {
	return drill.Fault{Edits: []schema.Edit{{File: b.File, Span: b.LabelSpan, Text: schema.Quote(key)}}, Flag: schema.Quote(key)}
}

// degrees is a temperature as it would be written on the scale of another,
// rounded to a tenth.
func degrees(like quantity.Quantity, celsius quantity.Rat) string {
	return schema.Quote(quantity.FromBase(celsius, like.Unit()).Number().Decimal(1) + " " + like.Unit().Symbol)
}

// everyStep plants in every step of a kind.
func everyStep(b *drill.Bench, kind string, plant func(*batch.Step) []drill.Fault) []drill.Fault {
	var all []drill.Fault
	for _, s := range b.StepsOf(kind) {
		all = append(all, plant(s)...)
	}
	return all
}

// Every slip that an exercise may plant, and every further fault, is caught by
// its rule on the very characters, in every demo recipe it applies to. common
// practice: a check that has never been seen to fail proves nothing.
func TestEveryMutationIsCaught(t *testing.T) {
	shop := exampleShop(t)
	kinds := append(drill.Kinds(), furtherMutations...)
	require.GreaterOrEqual(t, len(kinds), 25)
	planted := 0
	for _, k := range kinds {
		t.Run(k.Slip, func(t *testing.T) {
			n := 0
			for _, recipe := range shop.Recipes() {
				for _, fault := range k.In(drill.NewBench(lint.NewView(shop, recipe, today))) {
					caught, said := plantedIn(t, shop, recipe, fault)
					if caught {
						n++
					} else {
						assert.Failf(t, "survived", "%s, %s: wanted %s on %s; said was:\n%s", recipe.Label, k.Slip, fault.Rule, fault.Flag, strings.Join(said, "\n"))
					}
				}
			}
			assert.Positivef(t, n, "%q was planted nowhere", k.Slip)
			planted += n
		})
	}
	t.Logf("%d faults of %d kinds in %d recipes", planted, len(kinds), len(shop.Recipes()))
}

// A hunch plants a slip that its rule speaks of in some recipes: nowhere else
// does planting it stop, and the demo shop has such a recipe for most.
func TestHunches(t *testing.T) {
	shop := exampleShop(t)
	var idle []string
	for _, k := range drill.Hunches() {
		n := 0
		for _, recipe := range shop.Recipes() {
			for _, fault := range k.In(drill.NewBench(lint.NewView(shop, recipe, today))) {
				if caught, _ := plantedIn(t, shop, recipe, fault); caught {
					n++
				}
			}
		}
		if n == 0 {
			idle = append(idle, k.Slip)
		}
	}
	assert.Equal(t, []string{ // what the demo shop has not got
		"an ingredient with water in it",
		"a vessel that is not made for candles",
		"the label leaves out the hazards of this scent", // two labels for one market abroad
	}, idle)
}

// plantedIn says whether the fault was found by its rule on the characters it
// names, and all that was said.
func plantedIn(t *testing.T, shop *lint.Shop, recipe *schema.Block, fault drill.Fault) (caught bool, said []string) {
	t.Helper()
	text, err := schema.Apply(recipe.File.Text.String(), fault.Edits)
	require.NoError(t, err)
	report := lint.RunFile(shop.With(schema.Read(recipe.File.Name, []byte(text))), rules.All(), today, recipe.File.Name)
	require.Empty(t, report.Faults)
	for _, f := range report.Findings {
		flagged := f.At.File.Text.Slice(f.At.Span)
		if f.Rule.Name == fault.Rule && (fault.Flag == "" || flagged == fault.Flag) {
			return true, nil
		}
		said = append(said, fmt.Sprintf("%s on %s: %s", f.Rule.Name, flagged, f.Message))
	}
	return false, said
}
