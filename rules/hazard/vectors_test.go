package hazard_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/hazard"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// candle classifies a kilogram of wax with one oil of these components at a
// load.
func candle(t *testing.T, load string, components ...string) *hazard.Classification {
	t.Helper()
	return recipe(t, "fragrance \"oil\" {\n  title = \"The oil\"\n"+strings.Join(components, "")+"}\n",
		"  fragrance \"oil\" {\n    load = \""+load+"\"\n  }\n")
}

func recipe(t *testing.T, stock, ingredients string) *hazard.Classification {
	t.Helper()
	text := "wax \"plain\" {\n  family = \"soy\"\n}\n" + stock + "recipe \"r\" {\n  wax \"plain\" {\n    weight = \"1 kg\"\n  }\n" + ingredients + "}\n"
	f := schema.Read("r.candle.hcl", []byte(text))
	require.Emptyf(t, f.Problems, "%s", text)
	shop := lint.NewShop(".", []*schema.File{f})
	return hazard.Of.In(lint.NewView(shop, shop.Find("recipe", "r"), "2026-11-25"))
}

// part is a component block.
func part(name, share, hazards string, more ...string) string {
	quoted := "\"" + strings.ReplaceAll(hazards, ", ", "\", \"") + "\""
	if hazards == "" {
		quoted = ""
	}
	return "  component \"" + name + "\" {\n    share = \"" + share + "\"\n    hazards = [" + quoted + "]\n" + strings.Join(more, "") + "  }\n"
}

func m(acute string) string { return "    m_factor = " + acute + "\n" }

// results are the classes the candle falls into: "Skin Sens. 1 H317".
func results(c *hazard.Classification) string {
	var all []string
	for _, r := range c.Results {
		all = append(all, r.String())
	}
	return strings.Join(all, ", ")
}

// steps are all steps as they are shown.
func steps(c *hazard.Classification) string {
	var all []string
	for i := range c.Steps {
		all = append(all, c.Steps[i].String())
	}
	return strings.Join(all, "\n")
}

func names(all []*hazard.Substance) string { return hazard.NamesOf(all) }

// estimate is the estimate of a mixture from pairs of share and figure.
func estimate(t *testing.T, unknown string, pairs ...string) quantity.Rat {
	t.Helper()
	var terms []hazard.Term
	for i := 0; i < len(pairs); i += 2 {
		terms = append(terms, hazard.Term{Substance: &hazard.Substance{InCandle: share(t, pairs[i])}, Counted: true, ATE: share(t, pairs[i+1]).Mul(quantity.Int(100))})
	}
	ate, ok := hazard.Estimate(terms, share(t, unknown))
	require.True(t, ok)
	return ate
}

func share(t *testing.T, percent string) quantity.Rat {
	t.Helper()
	q, err := quantity.Parse(percent+" %", quantity.Share)
	require.Nil(t, err)
	return q.Base()
}

// The acute toxicity estimates worked in the UN Sub-Committee's guidance on
// the GHS (ST/SG/AC.10/C.4/2008/23 and ST/SG/AC.10/C.4/2012/25), to the digit.
// There category 5 counts as well; under Regulation (EC) No 1272/2008 only
// what falls into categories 1 to 4 does.
func TestEstimatesPublishedByTheUN(t *testing.T) {
	// oral: 16 % at 1600, 4 % known only as 200 to 2000, 80 % at 3450
	assert.Equal(t, "1880", estimate(t, "0", "16", "1600", "4", "200", "80", "3450").Decimal(0))
	assert.Equal(t, "1880.11", estimate(t, "0", "16", "1600", "4", "200", "80", "3450").Decimal(2))
	// 4 % at 1737, the rest in no category
	assert.Equal(t, "43425", estimate(t, "0", "4", "1737").Decimal(2))
	// oral: 26 % at 2737, 23 % at 4500, 40 % at 400, the rest over 5000
	assert.Equal(t, "873", estimate(t, "0", "26", "2737", "23", "4500", "40", "400").Decimal(0))
	assert.Equal(t, "872.52", estimate(t, "0", "26", "2737", "23", "4500", "40", "400").Decimal(2))
	// vapor: 11 % of the mixture is of unknown toxicity, more than a tenth
	assert.Equal(t, "6.5566", estimate(t, "11", "26", "11", "23", "19", "40", "4").Decimal(4))
	// a tenth or less does not count
	assert.Equal(t, estimate(t, "0", "26", "11").Decimal(4), estimate(t, "10", "26", "11").Decimal(4))
}

// The same mixtures as candles under the regulation, where what is in no
// category is left out: worked by hand from Annex I, 3.1.3.6.1 and Table 3.1.1.
func TestEstimatesWithoutTheUNsFifthCategory(t *testing.T) {
	one := candle(t, "80 % of total",
		part("a", "20 %", "Acute Tox. 4 H302", "    ate = \"oral 1600 mg/kg\"\n"),       // 16 % of the candle
		part("b", "5 %", "Acute Tox. 4 H302", "    ate = \"oral 200 to 2000 mg/kg\"\n"), // 4 %, at its worst
		part("c", "75 %", "", "    ate = \"oral 3450 mg/kg\"\n"))                        // in no category
	assert.Equal(t, "", results(one)) // 100 / (16/1600 + 4/200) = 3333 mg/kg, over 2000
	assert.Contains(t, steps(one), "= 3333.33 mg/kg, over the limit of 2000 mg/kg for Acute Tox. 4 H302 by mouth")
	three := candle(t, "50 % of total", part("d", "80 %", "Acute Tox. 4 H302", "    ate = \"oral 400 mg/kg\"\n"))
	assert.Equal(t, "Acute Tox. 4 H302", results(three)) // 100 / (40/400) = 1000
	assert.Contains(t, steps(three), "100 % / (d 40 % / 400) = 1000 mg/kg, at or under the limit of 2000 mg/kg for Acute Tox. 4 H302 by mouth (Annex I, 3.1.3.6 and Table 3.1.1)")
}

// The example of the UN Sub-Committee's guidance on harm to water: 0.01 %
// Acute 1 and Chronic 1 with factors of 10, 1 % Chronic 2, 25 % Chronic 4.
func TestWaterPublishedByTheUN(t *testing.T) {
	c := candle(t, "50 % of total",
		part("a", "0.02 %", "Aquatic Acute 1 H400, Aquatic Chronic 1 H410", m("10")),
		part("b", "2 %", "Aquatic Acute 2 H401, Aquatic Chronic 2 H411"),
		part("c", "50 %", "Aquatic Chronic 4 H413"))
	assert.Equal(t, "Aquatic Chronic 4 H413", results(c))
	shown := steps(c)
	for _, sum := range []string{
		"10 × a 0.01 % = 0.1 % of the candle, under the limit of 25 % for Aquatic Acute 1 H400 (Annex I, Table 4.1.1)",
		"10 × a 0.01 % = 0.1 % of the candle, under the limit of 25 % for Aquatic Chronic 1 H410 (Annex I, Table 4.1.2)",
		"100 × a 0.01 % + b 1 % = 2 % of the candle, under the limit of 25 % for Aquatic Chronic 2 H411",
		"1000 × a 0.01 % + 10 × b 1 % = 20 % of the candle, under the limit of 25 % for Aquatic Chronic 3 H412",
		"a 0.01 % + b 1 % + c 25 % = 26.01 % of the candle, at or over the limit of 25 % for Aquatic Chronic 4 H413",
	} {
		assert.Contains(t, shown, sum)
	}
	e := c.Label("EU", batch.Figure{})
	assert.Empty(t, e.Signal)
	assert.Empty(t, e.Pictograms)
	assert.False(t, e.UFI, "harm to water alone calls for no notice to the poison centers")
}

// An irritant under 1 % does not count (example in the European Chemicals
// Agency's helpdesk slides on mixtures): 0.8 % and 1.8 % of Skin Irrit. 2.
func TestIrritantPublishedByTheAgency(t *testing.T) {
	under := candle(t, "8 % of total", part("a", "10 %", "Skin Irrit. 2 H315"))
	assert.Equal(t, "", results(under))
	assert.Contains(t, steps(under), "nothing that counts = 0 % of the candle; left out: a 0.8 % (counts from 1 %), under the limit of 10 % for Skin Irrit. 2 H315 (Annex I, Table 3.2.3)")
	over := candle(t, "18 % of total", part("a", "10 %", "Skin Irrit. 2 H315"))
	assert.Equal(t, "", results(over))
	assert.Contains(t, steps(over), "makes 1.8 % of the candle, under the limit of 10 % for Skin Irrit. 2 H315")
}

// The oil of the first vectors: worked by hand from Annex I.
func citrus() []string {
	return []string{
		part("d-limonene", "20 %", "Skin Irrit. 2 H315, Skin Sens. 1B H317, Aquatic Acute 1 H400, Aquatic Chronic 3 H412", m("1")),
		part("linalool", "15 %", "Skin Sens. 1B H317, Skin Irrit. 2 H315, Eye Irrit. 2 H319"),
		part("citral", "4 %", "Skin Irrit. 2 H315, Skin Sens. 1 H317, Eye Irrit. 2 H319"),
		part("eugenol", "3 %", "Skin Sens. 1B H317, Eye Irrit. 2 H319"),
	}
}

// Worked by hand from Annex I: 2.0, 1.5, 0.4 and 0.3 % of the candle.
func TestSensitizersAtTenPercent(t *testing.T) {
	c := candle(t, "10 % of total", citrus()...)
	assert.Equal(t, "Skin Sens. 1 H317, Skin Sens. 1 H317", results(c))
	shown := steps(c)
	assert.Contains(t, shown, "d-limonene: 20 % of The oil, which is 10 % of total, makes 2 % of the candle, at or over the limit of 1 % for Skin Sens. 1 H317 (Annex I, Table 3.4.5)")
	assert.Contains(t, shown, "d-limonene 2 % + linalool 1.5 % = 3.5 % of the candle; left out: citral 0.4 % (counts from 1 %), under the limit of 10 % for Skin Irrit. 2 H315")
	assert.Contains(t, shown, "linalool 1.5 % = 1.5 % of the candle; left out: citral 0.4 % (counts from 1 %), eugenol 0.3 % (counts from 1 %), under the limit of 10 % for Eye Irrit. 2 H319")
	e := c.Label("EU", batch.Figure{})
	assert.Equal(t, "Warning", e.Signal)
	assert.Equal(t, []string{"GHS07"}, e.Pictograms)
	assert.Equal(t, []string{"H317"}, e.Statements)
	assert.Equal(t, "d-limonene, linalool, citral, eugenol", names(e.Names))
	assert.True(t, e.UFI)
	gb := c.Label("UK", batch.Figure{})
	assert.False(t, gb.UFI, "no formula identifier is asked for in Great Britain")
	assert.Equal(t, e.Statements, gb.Statements)
	assert.Equal(t, "[GHS07] Warning. H317 May cause an allergic skin reaction. Contains d-limonene, linalool, citral, eugenol. P102, P280, P302+P352, P333+P313, P501.", e.String())
}

// Worked by hand from Annex I: 5 % of total times 20 % is exactly 1 %, and a
// hair less is not.
func TestTheLimitIsReachedExactly(t *testing.T) {
	at := candle(t, "5 % of total", citrus()...)
	assert.Equal(t, "Skin Sens. 1 H317", results(at))
	assert.Contains(t, steps(at), "makes 1 % of the candle, at or over the limit of 1 % for Skin Sens. 1 H317")

	below := candle(t, "4.99 % of total", citrus()...)
	assert.Equal(t, "", results(below))
	assert.Contains(t, steps(below), "makes 0.998 % of the candle, under the limit of 1 %")
	e := below.Label("EU", batch.Figure{})
	assert.Equal(t, []string{"EUH208"}, e.Statements)
	assert.Empty(t, e.Pictograms)
	assert.Empty(t, e.Signal)
	assert.False(t, e.UFI)
	assert.Equal(t, "EUH208 Contains d-limonene, linalool, citral, eugenol. May produce an allergic reaction.", e.String())

	by := candle(t, "10 % of wax", part("d-limonene", "11 %", "Skin Sens. 1B H317")) // 10/110 of 11 % is 1 %
	assert.Equal(t, "Skin Sens. 1 H317", results(by))
	assert.Contains(t, steps(by), "11 % of The oil, which is 9.09 % of total, makes 1 % of the candle")
	total := candle(t, "10 % of total", part("d-limonene", "11 %", "Skin Sens. 1B H317"))
	assert.Contains(t, steps(total), "makes 1.1 % of the candle")
}

// Worked by hand from Annex I: 1A with a limit of its own of 0.01 %, named
// from 0.001 %.
func TestOwnLimits(t *testing.T) {
	iso := part("isoeugenol", "0.15 %", "Skin Sens. 1A H317", "    limit = \"0.01 %\"\n")
	named := candle(t, "6 % of total", iso)
	assert.Equal(t, "", results(named))
	assert.Equal(t, "isoeugenol", names(named.Elicits))
	assert.Contains(t, steps(named), "makes 0.009 % of the candle, under its own limit of 0.01 % for Skin Sens. 1 H317")
	assert.Contains(t, steps(named), "makes 0.009 % of the candle, at or over its own limit of 0.001 % for naming it on the label (Annex I, Table 3.4.6 and Annex II, 2.8)")

	over := candle(t, "8 % of total", iso)
	assert.Equal(t, "Skin Sens. 1 H317", results(over))
	assert.Contains(t, steps(over), "0.15 % of The oil, which is 8 % of total, makes 0.012 % of the candle, at or over its own limit of 0.01 %")

	none := candle(t, "0.6 % of total", iso)
	assert.Equal(t, "", results(none))
	assert.Empty(t, none.Elicits)
	assert.True(t, func() bool { e := none.Label("EU", batch.Figure{}); return e.None() }())
}

// Worked by hand from Annex I: the M-factors, and the load at which long-term
// harm turns from category 3 to category 2 (25 / 2.45 %).
func TestWaterBySums(t *testing.T) {
	oil := []string{
		part("hexyl cinnamal", "25 %", "Skin Sens. 1B H317, Aquatic Acute 1 H400, Aquatic Chronic 2 H411", m("1")),
		part("musk", "12 %", "Aquatic Acute 1 H400, Aquatic Chronic 1 H410", m("1")),
		part("ketone", "10 %", "Skin Sens. 1B H317, Aquatic Chronic 1 H410", m("1")),
	}
	c := candle(t, "10 % of total", oil...)
	assert.Equal(t, "Skin Sens. 1 H317, Skin Sens. 1 H317, Aquatic Chronic 3 H412", results(c))
	assert.Contains(t, steps(c), "10 × musk 1.2 % + 10 × ketone 1 % = 24.5 % of the candle, under the limit of 25 % for Aquatic Chronic 2 H411")
	assert.Contains(t, steps(c), "= 245 % of the candle, at or over the limit of 25 % for Aquatic Chronic 3 H412")
	assert.Contains(t, steps(c), "hexyl cinnamal 2.5 % + musk 1.2 % = 3.7 % of the candle, under the limit of 25 % for Aquatic Acute 1 H400")
	assert.Equal(t, []string{"GHS07"}, c.Label("EU", batch.Figure{}).Pictograms)

	more := candle(t, "10.3 % of total", oil...)
	assert.Contains(t, results(more), "Aquatic Chronic 2 H411")
	assert.Contains(t, steps(more), "= 25.24 % of the candle, at or over the limit of 25 % for Aquatic Chronic 2 H411") // 25.235
	e := more.Label("EU", batch.Figure{})
	assert.Equal(t, []string{"GHS07", "GHS09"}, e.Pictograms)
	assert.Equal(t, "Warning", e.Signal)

	assert.Contains(t, results(candle(t, "10.2040816 % of total", oil...)), "Aquatic Chronic 3 H412")
	assert.Contains(t, results(candle(t, "10.2040817 % of total", oil...)), "Aquatic Chronic 2 H411")

	ten := candle(t, "3 % of total", part("x", "10 %", "Aquatic Acute 1 H400, Aquatic Chronic 1 H410", m("10")))
	assert.Equal(t, "Aquatic Chronic 2 H411", results(ten))
	assert.Contains(t, steps(ten), "10 × x 0.3 % = 3 % of the candle, under the limit of 25 % for Aquatic Acute 1 H400")
	assert.Contains(t, steps(ten), "100 × x 0.3 % = 30 % of the candle, at or over the limit of 25 % for Aquatic Chronic 2 H411")
	alone := ten.Label("EU", batch.Figure{})
	assert.Empty(t, alone.Signal)
	assert.Equal(t, []string{"GHS09"}, alone.Pictograms)
	assert.False(t, alone.UFI)
}

// Worked by hand from Annex I: 3.0, 2.4 and 0.9 % of what damages eyes.
func TestEyesBySums(t *testing.T) {
	damaging := part("geraniol", "30 %", "Skin Irrit. 2 H315, Eye Dam. 1 H318, Skin Sens. 1 H317")
	three := candle(t, "10 % of total", damaging)
	e := three.Label("EU", batch.Figure{})
	assert.Equal(t, "Danger", e.Signal)
	assert.Equal(t, []string{"GHS05", "GHS07"}, e.Pictograms)
	assert.ElementsMatch(t, []string{"H318", "H317"}, e.Statements)
	assert.Contains(t, steps(three), "makes 3 % of the candle, at or over the limit of 3 % for Eye Dam. 1 H318 (Annex I, Table 3.3.3)")

	two := candle(t, "8 % of total", damaging).Label("EU", batch.Figure{})
	assert.Equal(t, "Warning", two.Signal)
	assert.Equal(t, []string{"GHS07"}, two.Pictograms)
	assert.ElementsMatch(t, []string{"H319", "H317"}, two.Statements)

	below := candle(t, "3 % of total", damaging).Label("EU", batch.Figure{})
	assert.Equal(t, []string{"EUH208"}, below.Statements)
}

// Worked by hand from Annex I: a range counts at its upper end, and acute
// toxicity by mouth.
func TestRangesAndEstimates(t *testing.T) {
	c := candle(t, "6 % of total", part("a", "10 to 25 %", "Skin Sens. 1B H317"))
	assert.Equal(t, "Skin Sens. 1 H317", results(c))
	assert.Contains(t, steps(c), "up to 25 % of The oil, which is 6 % of total, makes 1.5 % of the candle")

	mouth := candle(t, "10 % of total", part("a", "15 %", "Acute Tox. 4 H302", "    ate = \"oral 500 mg/kg\"\n"))
	assert.Equal(t, "", results(mouth))
	assert.Contains(t, steps(mouth), "100 % / (a 1.5 % / 500) = 33333.33 mg/kg, over the limit of 2000 mg/kg for Acute Tox. 4 H302 by mouth")
	converted := candle(t, "10 % of total", part("a", "15 %", "Acute Tox. 4 H302"))
	assert.Contains(t, steps(converted), "a 1.5 % / 500 (its category's figure, Table 3.1.2, from memory)")
}
