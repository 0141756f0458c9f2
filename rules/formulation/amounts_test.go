package formulation_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func both(kind, key, load, attr, weight string) string {
	return "  " + kind + " \"" + key + "\" {\n    load   = \"" + load + "\"\n    " + attr + " = \"" + weight + "\"\n  }\n"
}

// Arithmetic: a figure written to a digit stands for half a digit either way.
// 5 % of 1000 g is 50 g; "5.00 %" is 49.95 to 50.05 g, and "50 g" 49.5 to 50.5.
func TestAWeightAndALoad(t *testing.T) {
	for _, c := range []struct {
		load, weight string
		agree        bool
	}{
		{"5.00 % of wax", "50 g", true},
		{"5.00 % of wax", "50.5 g", false}, // 50.5 is 0.5 off; 0.05 and 0.05 explain 0.1
		{"5.00 % of wax", "51 g", false},
		{"5.0 % of wax", "51 g", true},  // 0.5 and 0.5
		{"5.0 % of wax", "52 g", false}, // 2 off
		{"5 % of wax", "55 g", true},    // 5 and 0.5
		{"5 % of wax", "56 g", false},
		{"5.00 % of wax", "1.8 oz", true},        // 51.03 g; 0.05 oz are 1.42 g
		{"5.00 % of wax", "1.76 oz", true},       // 49.90 g
		{"5.00 % of wax", "1.85 oz", false},      // 52.45 g
		{"0.80 oz per lb", "50 g", true},         // 5 % of wax
		{"0.80 oz per lb", "53 g", false},        // 3 off; 0.31 and 0.5 explain 0.81
		{"4.76 % of total", "50 g", true},        // 50/1050 = 4.762 %
		{"5.00 % of total", "50.0 g", false},     // 5 % of 1050 g is 52.5 g
		{"5.00 % of wax", "0.05 kg", true},       // 45 to 55 g
		{"5.00 % of wax", "0.060 kg", false},     // 59.5 to 60.5 g
		{"5.00 % of wax", "2.20 fl oz", false},   // 62.46 g at 0.96 g/mL
		{"5.00 % of wax", "52.083333 mL", true},  // 50 g at 0.96 g/mL
		{"4 to 6 % of wax", "50 g", true},        // unreadable: another rule's
		{"100 % of nothing known", "50 g", true}, // unreadable
	} {
		found := check(t, kilo+both("fragrance", "thyme", c.load, "weight", c.weight))
		want := "should weight-and-load-disagree on \"" + c.load + "\""
		if c.agree {
			assert.NotContains(t, found, want, "%s and %s", c.load, c.weight)
		} else {
			assert.Contains(t, found, want, "%s and %s", c.load, c.weight)
		}
	}
	assert.Contains(t, messages(run(t, kilo+both("fragrance", "thyme", "5 % of wax", "weight", "70 g"))),
		"weight-and-load-disagree: 5 % of wax of Thyme is 50 g, and the weight beside it is 70 g: 20 g more. The weight is what is reckoned with")
	for _, fix := range []string{"remove the load and keep 70 g", "remove the weight and keep 5 % of wax"} {
		assert.Contains(t, titles(run(t, kilo+both("fragrance", "thyme", "5 % of wax", "weight", "70 g")), "weight-and-load-disagree"), fix)
	}
	// 20 drops of 0.05 g are 1 g, 0.1 % of wax.
	assert.Empty(t, check(t, kilo+both("dye", "madder", "0.10 % of wax", "amount", "20 drops")))
	assert.Equal(t, []string{`should weight-and-load-disagree on "0.05 % of wax"`}, check(t, kilo+both("dye", "madder", "0.05 % of wax", "amount", "20 drops")))
	assert.Empty(t, check(t, kilo+both("dye", "uncounted", "0.05 % of wax", "amount", "20 drops")), "the drop's weight is not known")
}

// 1 US fl oz is 29.573 529 562 5 mL (NIST HB 44, Appendix C): at 0.96 g/mL
// 28.390 g, 1.0014 oz.
func TestByVolume(t *testing.T) {
	report := run(t, kilo+fragrance("thyme", "weight", "1 fl oz"))
	assert.Equal(t, []string{`consider liquid-by-volume on "1 fl oz"`}, said(t, report))
	assert.Equal(t, []string{"liquid-by-volume: 1 fl oz of Thyme is measured by volume; at 0.96 g/mL it weighs 1 oz: weighing is exact"}, messages(report))
	assert.Equal(t, []string{"write it as 1 oz"}, titles(report, "liquid-by-volume"), "never rounded up, and in the units it was measured in")
	assert.Empty(t, said(t, mended(t, report, "liquid-by-volume")))

	// 40 mL are 38.4 g.
	assert.Equal(t, []string{"write it as 38.4 g"}, titles(run(t, kilo+fragrance("thyme", "weight", "40 mL")), "liquid-by-volume"))

	report = run(t, kilo+fragrance("musk", "weight", "30 mL"))
	assert.NotContains(t, needs(report), "fragrance.density", "said once, by the rule")
	assert.Equal(t, []string{`should liquid-by-volume on "30 mL"`}, said(t, report))
	assert.Empty(t, titles(report, "liquid-by-volume"))
	assert.Empty(t, check(t, kilo+fragrance("musk", "weight", "30 g")))
	assert.Empty(t, check(t, kilo+fragrance("nowhere", "weight", "30 mL")), "unknown-key says it")
	assert.Equal(t, []string{`consider liquid-by-volume on "30 mL"`}, check(t, unweighed("six")+fragrance("thyme", "weight", "30 mL")))
}

func TestABareLoad(t *testing.T) {
	assert.Equal(t, []string{`must load-basis-unstated on "5 %"`}, check(t, kilo+fragrance("thyme", "load", "5 %")))
	assert.Equal(t, []string{`must load-basis-unstated on "0.05 %"`}, check(t, kilo+ingredient("dye", "madder", "load", "0.05 %")))
	assert.Equal(t, []string{`must load-basis-unstated on "6 %"`}, check(t, kilo+ingredient("additive", "stearin", "load", "6 %")))
	// 8 % of wax is 8/108 = 7.407 % of total; 8 % of total is 8/92 = 8.696 % of wax.
	report := run(t, wax("ten", "1 kg")+fragrance("thyme", "load", "8 %"))
	assert.Equal(t, []string{"load-basis-unstated: 8 % does not say of what; it is read as 8 % of wax, which is 7.41 % of total. If 8 % of total is meant, that is 8.7 % of wax"}, messages(report))
	assert.Equal(t, []string{"write 8 % of wax, as it was read"}, titles(report, "load-basis-unstated"))
	assert.Empty(t, said(t, mended(t, report, "load-basis-unstated")))
}

// 0.1 % of 1000 g is 1 g: 20 drops of 0.05 g. A quarter of a block of 4 g is
// 1 g in 1001 g of total.
func TestDyes(t *testing.T) {
	dye := func(key, attr, amount string) []string { return check(t, kilo+ingredient("dye", key, attr, amount)) }
	assert.Empty(t, dye("madder", "weight", "1 g"))
	assert.Equal(t, []string{`should dye-over-limit on "1.001 g"`}, dye("madder", "weight", "1.001 g"))
	assert.Empty(t, dye("madder", "amount", "20 drops"))
	assert.Equal(t, []string{`should dye-over-limit on "21 drops"`}, dye("madder", "amount", "21 drops"))
	assert.Equal(t, []string{`should dye-over-limit on "21 drops"`}, dye("madder", "weight", "21 drops"), "a weight may be counted as well")
	assert.Empty(t, dye("block-red", "amount", "1/4 block"))
	assert.Equal(t, []string{`should dye-over-limit on "3/8 block"`}, dye("block-red", "amount", "3/8 block"))
	assert.Empty(t, dye("madder", "load", "0.1 % of wax"))
	assert.Equal(t, []string{`should dye-over-limit on "0.1 % of total"`}, dye("madder", "load", "0.1 % of total"), "1/999 of wax")
	assert.Equal(t, []string{`should dye-by-eye on "to shade"`}, dye("madder", "amount", "to shade"))

	for _, c := range []struct{ amount, needs string }{{"3 drops", "dye.drop"}, {"1 chip", "dye.piece"}} {
		report := run(t, kilo+ingredient("dye", "uncounted", "amount", c.amount))
		assert.Empty(t, said(t, report))
		assert.Equal(t, []string{c.needs}, needs(report))
	}
	for made, want := range map[string]string{"own use": "consider", "class": "consider", "sale": "should"} {
		assert.Equal(t, []string{want + ` dye-by-eye on "to shade"`}, check(t, "  made_for = \""+made+"\"\n"+kilo+ingredient("dye", "madder", "amount", "to shade")), made)
	}
}

// What is offered can be counted out or weighed, and is never nothing.
func TestADyeIsLoweredToWhatCanBeMeasured(t *testing.T) {
	for _, c := range []struct{ wax, key, attr, amount, title string }{
		{"1000 g", "madder", "amount", "33 drops", "lower madder to 20 drops"},
		{"990 g", "madder", "amount", "33 drops", "lower madder to 19 drops"}, // 19.8
		{"1001 g", "block-red", "amount", "1/2 block", "lower block-red to 1/4 block"},
		{"500 g", "block-red", "amount", "1/2 block", ""}, // 0.5 g is an eighth
		{"20 g", "madder", "amount", "1 drop", ""},
		{"20 g", "madder", "weight", "0.08 g", "lower madder to 0.02 g"},
		{"1000 g", "madder", "load", "0.25 % of wax", "lower madder to 0.1 % of wax"},
		{"1000 g", "madder", "weight", "0.1 oz", "lower madder to 0.03 oz"}, // 1 g is 0.0353 oz
	} {
		report := run(t, wax("six", c.wax)+ingredient("dye", c.key, c.attr, c.amount))
		assert.Contains(t, said(t, report), "should dye-over-limit on \""+c.amount+"\"")
		if c.title == "" {
			assert.Empty(t, titles(report, "dye-over-limit"), c.amount)
			continue
		}
		assert.Equal(t, []string{c.title}, titles(report, "dye-over-limit"))
		assert.Empty(t, said(t, mended(t, report, "dye-over-limit")), c.amount)
	}
}

// 1 % of total is 10 g in 1000 g: 10/990 = 1.0101 % of wax.
func TestAdditives(t *testing.T) {
	additive := func(key, attr, amount string) []string {
		return check(t, kilo+ingredient("additive", key, attr, amount))
	}
	assert.Empty(t, additive("stearin", "load", "5 % of wax"))
	assert.Empty(t, additive("stearin", "load", "10 % of wax"))
	assert.Empty(t, additive("stearin", "load", "0.8 oz per lb"))
	assert.Equal(t, []string{`should additive-outside-usual on "10.1 % of wax"`}, additive("stearin", "load", "10.1 % of wax"))
	assert.Equal(t, []string{`consider additive-outside-usual on "4.9 % of wax"`}, additive("stearin", "load", "4.9 % of wax"))
	assert.Equal(t, []string{`should additive-outside-usual on "10 % of total"`}, additive("stearin", "load", "10 % of total"), "11.1 % of wax")
	assert.Empty(t, additive("hardener", "load", "1 % of total"))
	assert.Empty(t, additive("hardener", "load", "1.0101 % of wax"))
	assert.Equal(t, []string{`should additive-outside-usual on "1.0102 % of wax"`}, additive("hardener", "load", "1.0102 % of wax"))
	assert.Empty(t, additive("hardener", "weight", "10.1 g"))
	assert.Equal(t, []string{`should additive-outside-usual on "10.2 g"`}, additive("hardener", "weight", "10.2 g"))
	assert.Equal(t, []string{"additive-outside-usual: 2 g of Hardener is 0.2 % of total, less than its supplier recommends (0.5 to 1 % of total) by 0.3 % of total: it may do little"},
		messages(run(t, kilo+ingredient("additive", "hardener", "weight", "2 g"))))
}

func TestWaterInWax(t *testing.T) {
	wet := `fragrance "juice" {
  water_based = true
}
dye "food" {
  water_based = true
}
additive "glycerine" {
  water_based = true
}
additive "unsaid" {
  usual = "1 % of wax"
}
`
	body := kilo + fragrance("juice", "load", "1 % of wax") + ingredient("dye", "food", "weight", "1 g") + ingredient("additive", "glycerine", "load", "1 % of wax") + ingredient("additive", "unsaid", "load", "1 % of wax")
	report := runText(t, wet+"recipe \"try\" {\n"+body+"}\n")
	assert.Equal(t, []string{`must water-in-wax on "juice"`, `must water-in-wax on "food"`, `must water-in-wax on "glycerine"`}, said(t, report))
	assert.Contains(t, needs(report), "additive.water_based")
	assert.Equal(t, []string{`must water-in-wax on "juice"`}, said(t, runText(t, wet+"recipe \"try\" {\n"+fragrance("juice", "load", "1 % of wax")+"  mold \"cu")), "also while the rest is typed")
}

// 170 °F (76.7 °C, often said as 77 °C) is common practice.
func TestGel(t *testing.T) {
	extra := `fragrance "undeclared" {
  title           = "Undeclared"
  flash_point     = "200 °F"
  most_in_candles = "25 % of total"
  water_based     = false
}
fragrance "no-flash" {
  gel_safe        = true
  most_in_candles = "25 % of total"
  water_based     = false
}
fragrance "unfit" {
  flash_point     = "150 °F"
  gel_safe        = false
  most_in_candles = "25 % of total"
  water_based     = false
}
dye "chalk" {
  limit       = "1 % of wax"
  gel_safe    = false
  water_based = false
}
`
	gel := func(body string) ([]string, []string) {
		report := runText(t, extra+"recipe \"try\" {\n"+body+"}\n")
		return said(t, report), needs(report)
	}
	of := func(key string) string { return fragrance(key, "load", "3 % of wax") }
	found, unchecked := gel(wax("gel", "1 kg") + of("clove"))
	assert.Empty(t, found, "exactly 170 °F")
	assert.Empty(t, unchecked)
	found, _ = gel(wax("gel", "1 kg") + of("musk"))
	assert.Equal(t, []string{`must gel-needs-gel-safe on "musk"`}, found, "169.9 °F")
	found, _ = gel(wax("gel", "1 kg") + of("undeclared"))
	assert.Equal(t, []string{`must gel-needs-gel-safe on "undeclared"`}, found)
	found, _ = gel(wax("gel", "1 kg") + of("unfit"))
	assert.Equal(t, []string{`must gel-needs-gel-safe on "unfit"`}, found, "one finding for one oil")
	found, unchecked = gel(wax("gel", "1 kg") + of("no-flash"))
	assert.Empty(t, found)
	assert.Equal(t, []string{"fragrance.flash_point"}, unchecked)
	found, _ = gel(wax("six", "1 kg") + of("unfit"))
	assert.Empty(t, found, "no gel in it")
	found, _ = gel(wax("gel", "1 kg") + ingredient("dye", "chalk", "load", "0.1 % of wax"))
	assert.Equal(t, []string{`must gel-needs-gel-safe on "chalk"`}, found, "declared unfit")
	found, _ = gel(wax("gel", "1 kg") + ingredient("dye", "madder", "load", "0.1 % of wax"))
	assert.Empty(t, found, "a dye need not be declared fit")
	assert.Empty(t, check(t, wax("gel", "1 kg")+ingredient("dye", "nowhere", "load", "0.1 % of wax")))
}
