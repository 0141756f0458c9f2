package formulation_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const (
	over    = "must fragrance-over-limit on "
	overS   = "should fragrance-over-limit on "
	nearly  = "consider fragrance-near-limit on "
	extreme = "must fragrance-load-extreme on "
)

// By hand: o g of oil in w g of wax is o / w of wax and o / (w + o) of total,
// so 6 % of wax is 6/106 = 5.660 377 358 … % of total and 10 % of total is
// 10/90 = 11.111 … % of wax. An ounce to the pound is 1/16 = 6.25 % of wax
// (NIST HB 44, Appendix C: 16 ounces to the pound).
func TestTheLimitIncludesItsEndInEveryUnit(t *testing.T) {
	for _, c := range []struct{ wax, weight, attr, amount, want string }{
		{"six", "50 oz", "weight", "3 oz", nearly},
		{"six", "50 oz", "weight", "3.001 oz", over},
		{"six", "3 lb 2 oz", "weight", "3 oz", nearly},
		{"six", "1 kg", "weight", "60 g", nearly},
		{"six", "1 kg", "weight", "60.001 g", over},
		{"six", "1 kg", "weight", "0.06 kg", nearly},
		{"six", "1 lb", "weight", "27.215 g", nearly}, // 453.592 37 g x 6 % = 27.215 542 2 g
		{"six", "1 lb", "weight", "27.216 g", over},
		{"six", "1 kg", "weight", "62.5 mL", nearly}, // at 0.96 g/mL 60 g
		{"six", "1 kg", "weight", "62.6 mL", over},
		{"six", "1 kg", "load", "6 % of wax", nearly},
		{"six", "1 kg", "load", "6.0000001 % of wax", over},
		{"six", "1 kg", "load", "5.660377 % of total", nearly},
		{"six", "1 kg", "load", "5.660378 % of total", over},
		{"six", "1 kg", "load", "0.96 oz per lb", nearly},
		{"six", "1 kg", "load", "1 oz per lb", over},
		{"six", "1 kg", "load", "60 g per kg", nearly},
		{"six", "1 kg", "load", "60.1 g per kg", over},
		{"six", "1 kg", "load", "5.7 % of wax", ""}, // exactly 95 % of the limit
		{"six", "1 kg", "load", "5.701 % of wax", nearly},
		{"ten-of-total", "900 g", "weight", "100 g", nearly},
		{"ten-of-total", "900 g", "weight", "100.1 g", over},
		{"ten-of-total", "1 kg", "load", "10 % of total", nearly},
		{"ten-of-total", "1 kg", "load", "11.1111 % of wax", nearly},
		{"ten-of-total", "1 kg", "load", "11.1112 % of wax", over},
		{"house", "1 kg", "load", "8 % of wax", nearly}, // a house blend's own limit, not those of its parts
		{"house", "1 kg", "load", "8.01 % of wax", over},
	} {
		want := []string{}
		if c.want != "" {
			want = append(want, c.want+`"`+c.amount+`"`)
		}
		found := check(t, wax(c.wax, c.weight)+fragrance("thyme", c.attr, c.amount))
		if strings.HasSuffix(c.amount, "mL") {
			found = found[:len(found)-1] // that it is measured by volume is said as well
		}
		assert.Equal(t, want, found, "%s in %s of %s", c.amount, c.weight, c.wax)
	}
}

// Of total counts everything weighed in: with 100 g of stearin beside 1000 g
// of wax, 10 % of total is (1000 + 100) / 9 = 122.2 g of oil.
func TestOfTotalCountsDyesAndAdditives(t *testing.T) {
	rest := ingredient("additive", "stearin", "weight", "100 g")
	assert.Equal(t, []string{nearly + `"122.2 g"`}, check(t, wax("ten-of-total", "1000 g")+rest+fragrance("thyme", "weight", "122.2 g")))
	assert.Equal(t, []string{over + `"122.3 g"`}, check(t, wax("ten-of-total", "1000 g")+rest+fragrance("thyme", "weight", "122.3 g")))
	assert.Equal(t, []string{nearly + `"60 g"`}, check(t, kilo+rest+fragrance("thyme", "weight", "60 g")), "of wax does not count it")
}

// 7 % of 1450 g is 101.5 g, and 6 % is 87 g: 14.5 g too much, 0.511 oz. Of
// 1000 g and 130 g of oil with a limit of 10 % of total, 1000 / 9 = 111.1 g
// may go in: 18.9 g too much.
func TestTooMuchIsSaidInWeightInTheMakersUnits(t *testing.T) {
	for _, c := range []struct{ body, want string }{
		{wax("six", "1450 g") + fragrance("thyme", "load", "7 % of wax"), "7 % of wax is over what Six wax holds (6 % of wax) by 14.5 g"},
		{wax("six", "50 oz") + fragrance("thyme", "weight", "3.5 oz"), "3.5 oz is 7 % of wax, which is over what Six wax holds (6 % of wax) by 0.5 oz"},
		{wax("six", "50 oz") + fragrance("thyme", "load", "1 oz per lb"), "1 oz per lb is 6.25 % of wax, which is over what Six wax holds (6 % of wax) by 0.125 oz"},
		{wax("ten-of-total", "1000 g") + fragrance("thyme", "weight", "130 g"), "130 g is 11.5 % of total, which is over what Total wax holds (10 % of total) by 18.9 g"},
		{unweighed("six") + fragrance("thyme", "load", "7 % of wax"), "7 % of wax is over what Six wax holds (6 % of wax) by 1 % of wax"},
		{kilo + fragrance("thyme", "load", "7 %"), "7 % is 7 % of wax, which is over what Six wax holds (6 % of wax) by 10 g"},
		{kilo + fragrance("thyme", "load", "4 % of wax") + fragrance("clove", "load", "3 % of wax"),
			"4 % of wax and 3 % of wax together, 7 % of wax, is over what Six wax holds (6 % of wax) by 10 g"},
		{wax("no-sheet", "1000 g") + fragrance("thyme", "load", "7 % of wax"),
			"7 % of wax is over what paraffin usually holds (3 to 6 % of wax; Sack of paraffin does not state its own: common practice) by 10 g"},
	} {
		assert.Contains(t, messages(run(t, c.body)), "fragrance-over-limit: "+c.want)
	}
}

// Each amount is rounded down, so that the sum is within the limit: 6/7 of 4
// and of 3 are 3.428 … and 2.571 …
func TestTheFixIsWithinTheLimit(t *testing.T) {
	for _, c := range []struct{ body, title string }{
		{kilo + fragrance("thyme", "load", "7 % of wax"), "lower the load to 6 % of wax"},
		{kilo + fragrance("thyme", "load", "7 % of total"), "lower the load to 5.6 % of total"},
		{kilo + fragrance("thyme", "load", "1 oz per lb"), "lower the load to 0.96 oz per lb"},
		{kilo + fragrance("thyme", "load", "70 g per kg"), "lower the load to 60 g per kg"},
		{kilo + fragrance("thyme", "weight", "70 g"), "lower the load to 60 g"},
		{kilo + fragrance("thyme", "weight", "0.07 kg"), "lower the load to 0.06 kg"},
		{kilo + fragrance("thyme", "weight", "2.5 oz"), "lower the load to 2.11 oz"}, // 60 g are 2.116 oz
		{kilo + fragrance("thyme", "weight", "3 fl oz"), "lower the load to 2.11 fl oz"},
		{kilo + fragrance("thyme", "load", "7 %"), "lower the load to 6 %"},
		{wax("ten-of-total", "1000 g") + fragrance("thyme", "load", "12 % of wax"), "lower the load to 11.1 % of wax"},
		{wax("ten-of-total", "1000 g") + fragrance("thyme", "load", "12 % of total"), "lower the load to 10 % of total"},
		{wax("ten-of-total", "1000 g") + ingredient("additive", "stearin", "load", "5 % of wax") + fragrance("thyme", "load", "12 % of wax"), "lower the load to 11.6 % of wax"},
		{kilo + fragrance("thyme", "load", "4 % of wax") + fragrance("clove", "load", "3 % of wax"), "lower thyme to 3.4 % of wax and clove to 2.5 % of wax"},
		{kilo + fragrance("thyme", "load", "4 % of total") + fragrance("clove", "weight", "30 g") + fragrance("musk", "load", "1 oz per lb"),
			"lower thyme to 1.8 % of total and clove to 13 g and musk to 0.43 oz per lb"}, // 41.7, 30 and 62.5 g of 134 g, so 60/134 of each
	} {
		report := run(t, c.body)
		assert.Equal(t, []string{c.title}, titles(report, "fragrance-over-limit"))
		for _, left := range said(t, mended(t, report, "fragrance-over-limit")) {
			assert.NotContains(t, left, "fragrance-over-limit", c.title)
		}
	}
}

// Half of a wax that holds 6 % and half of one that holds 10 % may hold 8 %
// together: the average by weight.
func TestALooseBlend(t *testing.T) {
	half := wax("six", "500 g") + wax("ten", "500 g")
	assert.Equal(t, []string{nearly + `"6 % of wax"`}, check(t, half+fragrance("thyme", "load", "6 % of wax")))
	assert.Equal(t, []string{overS + `"6.1 % of wax"`}, check(t, half+fragrance("thyme", "load", "6.1 % of wax")), "over the strictest")
	assert.Equal(t, []string{overS + `"8 % of wax"`}, check(t, half+fragrance("thyme", "load", "8 % of wax")), "the average itself")
	assert.Equal(t, []string{over + `"8.01 % of wax"`}, check(t, half+fragrance("thyme", "load", "8.01 % of wax")))
	assert.Equal(t, []string{over + `"9.1 % of wax"`}, check(t, wax("six", "9 oz")+wax("ten", "27 oz")+fragrance("thyme", "load", "9.1 % of wax")), "(6 + 3 x 10) / 4 = 9 %")

	// Without weights only what no mixture of the two holds is sure.
	loose := unweighed("six") + unweighed("ten")
	report := run(t, loose+fragrance("thyme", "load", "9 % of wax"))
	assert.Equal(t, []string{overS + `"9 % of wax"`}, said(t, report))
	assert.Contains(t, needs(report), "wax.weight")
	assert.NotContains(t, messages(report)[0], "0 % of wax")
	assert.Equal(t, []string{over + `"10.1 % of wax"`}, check(t, loose+fragrance("thyme", "load", "10.1 % of wax")))
	assert.Equal(t, []string{over + `"16 % of wax"`}, check(t, loose+fragrance("thyme", "load", "16 % of wax")), "one cause, one finding")

	// 10 % of total is 11.1 % of wax, so half and half hold 8.56 %.
	mixed := wax("six", "500 g") + wax("ten-of-total", "500 g")
	assert.Equal(t, []string{overS + `"8.5 % of wax"`}, check(t, mixed+fragrance("thyme", "load", "8.5 % of wax")))
	assert.Equal(t, []string{over + `"8.6 % of wax"`}, check(t, mixed+fragrance("thyme", "load", "8.6 % of wax")))
}

// A family's figure is common practice: it says so and is never a must.
func TestAFamilySpeaksSoftly(t *testing.T) {
	unknown := `should fragrance-limit-unknown on "no-sheet"`
	assert.Equal(t, []string{unknown, nearly + `"6 % of wax"`}, check(t, wax("no-sheet", "1 kg")+fragrance("thyme", "load", "6 % of wax")))
	assert.Equal(t, []string{unknown, overS + `"6.1 % of wax"`}, check(t, wax("no-sheet", "1 kg")+fragrance("thyme", "load", "6.1 % of wax")))

	report := run(t, wax("six", "500 g")+wax("no-sheet", "500 g")+fragrance("thyme", "load", "8 % of wax"))
	assert.Equal(t, []string{unknown, overS + `"8 % of wax"`}, said(t, report))
	assert.Contains(t, messages(report)[0], "what is usual for paraffin (3 to 6 % of wax, common practice)", "the family's figure and not the other wax's")
	assert.Contains(t, messages(report)[1], "what is usual for paraffin: common practice")

	report = run(t, wax("nothing-said", "1 kg")+fragrance("thyme", "load", "9 % of wax"))
	assert.Empty(t, said(t, report))
	assert.Equal(t, []string{"wax.fragrance_limit"}, needs(report))
}

func TestSilentWhereSomethingCannotBeRead(t *testing.T) {
	for _, body := range []string{
		wax("nowhere", "1 kg") + fragrance("thyme", "load", "7 % of wax"),
		wax("nowhere", "1 kg") + fragrance("thyme", "load", "20 % of wax"),
		wax("broken-limit", "1 kg") + fragrance("thyme", "load", "20 % of wax"),
		kilo + fragrance("thyme", "load", "7 degrees of wax"),
		kilo + fragrance("thyme", "load", "5 to 8 % of wax"), // a load is one figure
		kilo + fragrance("thyme", "load", "-7 % of wax"),
		wax("six", "much") + fragrance("thyme", "weight", "70 g"),
		kilo + "  fragrance \"thyme\" {\n    load = 7\n  }\n",
	} {
		assert.Empty(t, check(t, body), body)
	}
	report := run(t, unweighed("six")+fragrance("thyme", "weight", "70 g"))
	assert.Empty(t, said(t, report))
	assert.Equal(t, []string{"wax.weight"}, needs(report), "what is missing is said")
	report = run(t, kilo+"  fragrance \"thyme\" {}\n")
	assert.Empty(t, said(t, report))
	assert.Equal(t, []string{"fragrance.load"}, needs(report))
}

// What is there is judged while the rest is still being typed; what is not
// there yet is not asked for.
func TestHalfTyped(t *testing.T) {
	report := runText(t, "recipe \"try\" {\n"+kilo+fragrance("thyme", "load", "7 % of wax")+"  mold \"cube\" {\n")
	assert.Equal(t, []string{over + `"7 % of wax"`}, said(t, report))
	report = runText(t, "recipe \"try\" {\n"+unweighed("no-sheet")+fragrance("thyme", "weight", "7 g")+"  mold \"cube\" {\n")
	assert.Empty(t, said(t, report))
	assert.Empty(t, needs(report))
}

func TestHowLoudByWhatItIsMadeFor(t *testing.T) {
	for made, want := range map[string][]string{
		"own use": {over + `"7 % of wax"`, `should fragrance-over-certificate on "7 % of wax"`},
		"class":   {over + `"7 % of wax"`, `should fragrance-over-certificate on "7 % of wax"`},
		"sale":    {over + `"7 % of wax"`, `must fragrance-over-certificate on "7 % of wax"`},
	} {
		assert.ElementsMatch(t, want, check(t, "  made_for = \""+made+"\"\n"+kilo+fragrance("strict", "load", "7 % of wax")), made)
	}
	for made, want := range map[string]string{"own use": "consider", "class": "should", "sale": "should"} {
		assert.Equal(t, []string{want + ` fragrance-limit-unknown on "no-sheet"`}, check(t, "  made_for = \""+made+"\"\n"+wax("no-sheet", "1 kg")+fragrance("thyme", "load", "4 % of wax")), made)
	}
}

// One load, one finding of the same kind: the loudest that is sure.
func TestExtremeLoads(t *testing.T) {
	for _, c := range []struct {
		wax, load string
		want      []string
	}{
		{"sponge", "15 % of wax", []string{}},
		{"sponge", "15.1 % of wax", []string{`should fragrance-load-extreme on "15.1 % of wax"`}}, // its sheet says 20 %
		{"sponge", "20 % of wax", []string{`should fragrance-load-extreme on "20 % of wax"`}},
		{"sponge", "20.1 % of wax", []string{over + `"20.1 % of wax"`}},
		{"six", "16 % of wax", []string{over + `"16 % of wax"`}},
		{"no-sheet", "15 % of wax", []string{`should fragrance-limit-unknown on "no-sheet"`, overS + `"15 % of wax"`}},
		{"no-sheet", "16 % of wax", []string{`should fragrance-limit-unknown on "no-sheet"`, extreme + `"16 % of wax"`}},
		{"nothing-said", "16 % of wax", []string{extreme + `"16 % of wax"`}},
		{"nothing-said", "14 % of total", []string{extreme + `"14 % of total"`}}, // 14/86 = 16.3 % of wax
		{"nothing-said", "13 % of total", []string{}},                            // 13/87 = 14.9 %
		{"nothing-said", "110 % of total", []string{extreme + `"110 % of total"`}},
		{"six", "110 % of total", []string{extreme + `"110 % of total"`}},
		{"nowhere", "110 % of total", []string{`should load-looks-like-fraction on "110 % of total"`}},
		{"nowhere", "99 % of total", []string{`must fragrance-over-certificate on "99 % of total"`}},
	} {
		assert.Equal(t, c.want, check(t, wax(c.wax, "1 kg")+fragrance("thyme", "load", c.load)), "%s in %s", c.load, c.wax)
	}
	assert.Equal(t, []string{extreme + `"70 g"`}, check(t, wax("six", "0 g")+fragrance("thyme", "weight", "70 g")), "no wax at all")
	assert.Equal(t, []string{`must fragrance-over-certificate on "700 % of wax"`, over + `"700 % of wax"`}, check(t, kilo+fragrance("thyme", "load", "700 % of wax")),
		"two limits of two suppliers, and no third voice")
}

// 0.3 % is the least that is taken for a load (common practice).
func TestAFractionForAPercentage(t *testing.T) {
	slip := func(load string) []string { return check(t, kilo+fragrance("thyme", "load", load)) }
	assert.Equal(t, []string{`should load-looks-like-fraction on "0.05 % of wax"`}, slip("0.05 % of wax"))
	assert.Equal(t, []string{`should load-looks-like-fraction on "0.299 % of wax"`}, slip("0.299 % of wax"))
	assert.Equal(t, []string{`should load-looks-like-fraction on "0.04 oz per lb"`}, slip("0.04 oz per lb")) // 0.25 %
	assert.Empty(t, slip("0.3 % of wax"))
	assert.Empty(t, slip("0.05 oz per lb")) // 0.3125 %
	assert.Empty(t, check(t, kilo+ingredient("dye", "madder", "load", "0.05 % of wax")), "a dye is used in such amounts")
}

// The certificate is of the finished candle: 3 % of total is 30 g in 1000 g,
// beside 970 g of all else. 3/97 of 1000 g of wax is 30.9 g.
func TestTheCertificateIsOfTheFinishedCandle(t *testing.T) {
	cert := func(body string) []string { return check(t, body+fragrance("strict", "weight", "30.9 g")) }
	assert.Empty(t, cert(kilo))
	assert.Equal(t, []string{`must fragrance-over-certificate on "30.9 g"`}, cert(wax("six", "999 g")))
	assert.Empty(t, cert(wax("six", "990 g")+ingredient("additive", "stearin", "weight", "60 g")), "all that is weighed in counts")
	assert.Empty(t, check(t, kilo+fragrance("strict", "load", "3 % of total")))
	assert.Equal(t, []string{`must fragrance-over-certificate on "3.01 % of total"`}, check(t, kilo+fragrance("strict", "load", "3.01 % of total")))

	report := run(t, kilo+fragrance("strict", "weight", "40 g")+fragrance("thyme", "load", "1 % of total"))
	assert.Equal(t, []string{`must fragrance-over-certificate on "40 g"`}, said(t, report))
	// 1000 g of wax is 96 % of the total when it is right, so 3 % is 31.25 g.
	assert.Equal(t, []string{"lower strict to 31.2 g"}, titles(report, "fragrance-over-certificate"))
	assert.Empty(t, said(t, mended(t, report, "fragrance-over-certificate")))

	assert.Equal(t, []string{"fragrance-over-certificate: 4 % of total of Strict oil is over what its certificate allows in candles (3 % of total) by 10.7 g"}, // 41.67 g, and 3/97 of 1000 g is 30.93 g
		messages(run(t, kilo+fragrance("strict", "load", "4 % of total"))))
}

// What stands beside a weight goes down with it, and never up: 6 % of 1000 g
// is 60 g.
func TestALoadBesideAWeightIsLoweredWithIt(t *testing.T) {
	both := func(key, load, weight string) string {
		return "  fragrance \"" + key + "\" {\n    load = \"" + load + "\"\n    weight = \"" + weight + "\"\n  }\n"
	}
	report := run(t, kilo+both("thyme", "7 % of wax", "70 g"))
	assert.Equal(t, []string{"lower the load to 60 g, and the load beside it to 6 % of wax"}, titles(report, "fragrance-over-limit"))
	assert.Equal(t, []string{nearly + `"60 g"`}, said(t, mended(t, report, "fragrance-over-limit")))

	report = run(t, kilo+both("thyme", "6 % of total", "70 g")) // 60 of 1060 g are 5.66 %
	assert.Equal(t, []string{"lower the load to 60 g, and the load beside it to 5.6 % of total"}, titles(report, "fragrance-over-limit"))

	report = run(t, kilo+both("thyme", "5 % of wax", "70 g"))
	assert.Equal(t, []string{"lower the load to 60 g"}, titles(report, "fragrance-over-limit"), "the load is lower already")

	report = run(t, kilo+both("strict", "4 % of total", "41.7 g"))
	assert.Equal(t, []string{"lower strict to 30.9 g and the load beside it to 3 % of total"}, titles(report, "fragrance-over-certificate"))
	assert.Empty(t, said(t, mended(t, report, "fragrance-over-certificate")))
}

// A wax that holds no fragrance: to leave it out is a person's choice.
func TestAWaxThatHoldsNoFragrance(t *testing.T) {
	report := runText(t, "wax \"plain\" {\n  title = \"Plain wax\"\n  family = \"paraffin\"\n  suits = [\"pillar\"]\n  fragrance_limit = \"0 % of wax\"\n}\nrecipe \"try\" {\n  made_for = \"sale\"\n"+
		wax("plain", "1 kg")+fragrance("thyme", "load", "2 % of wax")+"  step \"add fragrance\" { at = \"80 °C\" }\n}\n")
	assert.Equal(t, []string{over + `"2 % of wax"`}, said(t, report))
	assert.Equal(t, []string{"leave the fragrance out"}, titles(report, "fragrance-over-limit"))
	assert.Empty(t, said(t, mended(t, report, "fragrance-over-limit")))
}

// Who holds it, in the words of the sheet or of common practice; a fifth of 10 %
// and four fifths of 20 % are 18 %.
func TestWhoHoldsIt(t *testing.T) {
	assert.Equal(t, []string{"fragrance-near-limit: 6 % of wax is all that Six wax alone holds (6 % of wax): weigh exactly"},
		messages(run(t, wax("six", "500 g")+wax("ten", "500 g")+fragrance("thyme", "load", "6 % of wax"))))
	assert.Contains(t, messages(run(t, wax("no-sheet", "1 kg")+fragrance("thyme", "load", "6 % of wax"))),
		"fragrance-near-limit: 6 % of wax is all that paraffin usually holds (3 to 6 % of wax; Sack of paraffin does not state its own: common practice): weigh exactly")
	assert.Equal(t, []string{"fragrance-load-extreme: 16 % of wax is over 15 % of wax, which hardly any wax holds, and over what Ten wax alone holds (10 % of wax); " +
		"what the blend as a whole holds, 18 % of wax on the average of its waxes by weight, nobody has tested: is it a slip?"},
		messages(run(t, wax("ten", "200 g")+wax("sponge", "800 g")+fragrance("thyme", "load", "16 % of wax"))))
}
