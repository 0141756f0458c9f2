package hazard_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/hazard"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

func TestEntriesAsSheetsWriteThem(t *testing.T) {
	for text, want := range map[string]string{
		"Skin Sens. 1B H317":                   "Skin Sens. 1B H317",
		"Skin Sens. 1B; H317":                  "Skin Sens. 1B H317",
		"H317 - Skin Sens. 1A":                 "Skin Sens. 1A H317",
		"Skin sensitisation, Category 1, H317": "Skin Sens. 1 H317",
		"Skin Sens. 1":                         "Skin Sens. 1 H317",
		"Eye Irrit. 2A H319":                   "Eye Irrit. 2 H319",
		"H315":                                 "Skin Irrit. 2 H315",
		"H410":                                 "Aquatic Chronic 1 H410",
		"Acute Tox. 4 (oral) H302":             "Acute Tox. 4 H302",
		"Acute Tox. 4 H332":                    "Acute Tox. 4 H332",
		"Acute Tox. 3 (oral)":                  "Acute Tox. 3 H301",
		"Repr. 1B H360Fd":                      "Repr. 1B H360Fd",
		"Serious eye damage, category 1 H318":  "Eye Dam. 1 H318",
		"STOT SE 3 H336":                       "STOT SE 3 H336",
		"STOT RE 2 (kidney) H373":              "STOT RE 2 H373",
		"Skin Corr. 1B H314":                   "Skin Corr. 1B H314",
		"Lact. H362":                           "Lact. H362",
		"vPvB EUH441":                          "vPvB EUH441",
		"H317":                                 "", // 1A or 1B?
		"Skin Sens. H317":                      "",
		"Skin Sens. 1B H315":                   "", // the two do not fit
		"H315 H319":                            "",
		"H300":                                 "",
		"irritant":                             "",
		"":                                     "",
		"Aquatic Acute 2 H401":                 "Aquatic Acute 2 H401",
		"Flam. Liq. 3 H226":                    "Flam. Liq. 3 H226",
	} {
		h, ok := hazard.Parse(text)
		assert.Equalf(t, want != "", ok, "%q", text)
		if ok && h.Class != hazard.Outside {
			assert.Equalf(t, want, h.String(), "%q", text)
		}
	}
}

func TestEstimatesAsSheetsWriteThem(t *testing.T) {
	for text, want := range map[string]string{
		"oral 500 mg/kg": "500", "dermal 1,100 mg/kg": "", "vapour 3 mg/l": "3", "vapor 3 mg/L": "3", "dust/mist 1.5 mg/L": "1.5",
		"oral 200 to 2000 mg/kg": "200", "oral 3 mg/L": "", "500 mg/kg": "", "oral": "", "oral 0 mg/kg": "", "inhaled 3 mg/L": "",
	} {
		ate, ok := hazard.ParseATE(text)
		assert.Equalf(t, want != "", ok, "%q", text)
		if ok {
			assert.Equal(t, want, ate.Value.Decimal(3), text)
		}
	}
}

// Every entry of the table of known substances reads, and its CAS number's last
// digit is right (the registry's rule: the sum of the digits times their place
// from the right, modulo 10).
func TestKnownSubstances(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range hazard.All() {
		assert.NotEmpty(t, k.Source, k.Name)
		assert.False(t, seen[k.CAS], k.CAS)
		seen[k.CAS] = true
		sum, place, check := 0, 0, 0
		for i := len(k.CAS) - 1; i >= 0; i-- {
			if c := k.CAS[i]; c != '-' {
				if place > 0 {
					sum += place * int(c-'0')
				} else {
					check = int(c - '0')
				}
				place++
			}
		}
		assert.Equal(t, check, sum%10, "%s %s", k.Name, k.CAS)
		for _, text := range k.Hazards {
			h, ok := hazard.Parse(text)
			assert.True(t, ok, "%s: %s", k.Name, text)
			assert.Equal(t, text, h.String(), k.Name)
		}
	}
}

// Worked by hand from Annex I, Tables 3.2.3 and 3.3.3.
func TestCorrosion(t *testing.T) {
	assert.Equal(t, "Skin Corr. 1B H314, Eye Dam. 1 H318", results(candle(t, "50 % of total", part("a", "6 %", "Skin Corr. 1A H314"), part("b", "6 %", "Skin Corr. 1B H314"))))
	assert.Equal(t, "Skin Corr. 1A H314, Eye Dam. 1 H318", results(candle(t, "50 % of total", part("a", "10 %", "Skin Corr. 1A H314"))))
	assert.Equal(t, "Skin Corr. 1 H314, Eye Dam. 1 H318", results(candle(t, "50 % of total", part("a", "6 %", "Skin Corr. 1 H314"), part("b", "6 %", "Skin Corr. 1B H314"))))
	assert.Equal(t, "Skin Irrit. 2 H315, Eye Irrit. 2 H319", results(candle(t, "50 % of total", part("a", "5 %", "Skin Corr. 1C H314")))) // 2.5 %
	assert.Equal(t, "", results(candle(t, "50 % of total", part("a", "1.9 %", "Skin Corr. 1C H314"))))                                    // 0.95 %
	c := candle(t, "50 % of total", part("a", "10 %", "Skin Corr. 1 H314, Eye Dam. 1 H318"))
	assert.Contains(t, steps(c), "makes 5 % of the candle, at or over the limit of 3 % for Eye Dam. 1 H318") // both, counted once
	e := c.Label("EU", batch.Figure{})
	assert.Equal(t, []string{"H314"}, e.Statements) // H318 would only repeat it
	assert.Equal(t, "Danger", e.Signal)
	assert.Equal(t, []string{"GHS05"}, e.Pictograms)
}

// Worked by hand from Annex I, Tables 3.5.2, 3.6.2, 3.7.2, 3.8.3 and 3.9.4.
func TestOneByOne(t *testing.T) {
	for _, v := range []struct{ load, share, hazards, want string }{
		{"10 % of total", "3 %", "Repr. 1B H360Fd", "Repr. 1B H360Fd"}, // 0.3 %
		{"10 % of total", "2.99 %", "Repr. 1B H360Fd", ""},
		{"10 % of total", "30 %", "Repr. 2 H361d", "Repr. 2 H361d"},
		{"10 % of total", "29 %", "Repr. 2 H361d", ""},
		{"10 % of total", "1 %", "Carc. 1B H350", "Carc. 1B H350"},
		{"10 % of total", "0.9 %", "Carc. 1B H350", ""},
		{"10 % of total", "10 %", "Carc. 2 H351", "Carc. 2 H351"},
		{"10 % of total", "1 %", "Muta. 1A H340", "Muta. 1A H340"},
		{"50 % of total", "20 %", "STOT RE 1 H372", "STOT RE 1 H372"},
		{"50 % of total", "19 %", "STOT RE 1 H372", "STOT RE 2 H373"},
		{"50 % of total", "1.9 %", "STOT RE 1 H372", ""},
		{"50 % of total", "20 %", "STOT SE 2 H371", "STOT SE 2 H371"},
		{"50 % of total", "40 %", "STOT SE 3 H335", "STOT SE 3 H335"},
		{"50 % of total", "39 %", "STOT SE 3 H335", ""},
		{"10 % of total", "1 %", "Resp. Sens. 1A H334", "Resp. Sens. 1 H334"},
		{"10 % of total", "10 %", "Resp. Sens. 1B H334", "Resp. Sens. 1 H334"},
		{"90 % of total", "90 %", "Asp. Tox. 1 H304, Flam. Liq. 3 H226", ""}, // a solid: neither applies
		{"10 % of total", "1 %", "PBT EUH440", "PBT EUH440"},
	} {
		assert.Equal(t, v.want, results(candle(t, v.load, part("a", v.share, v.hazards))), "%s of %s: %s", v.share, v.load, v.hazards)
	}
	own := candle(t, "10 % of total", part("a", "0.5 %", "Carc. 1B H350", "    limit = \"0.05 %\"\n"))
	assert.Equal(t, "Carc. 1B H350", results(own))
}

// Article 26: which pictogram gives way to which; worked by hand.
func TestPictogramsGiveWay(t *testing.T) {
	sensitive := part("s", "50 %", "Skin Sens. 1 H317, Skin Irrit. 2 H315")
	both := candle(t, "50 % of total", sensitive, part("b", "2 %", "Resp. Sens. 1B H334"))
	e := both.Label("EU", batch.Figure{})
	assert.Equal(t, []string{"GHS08"}, e.Pictograms)
	assert.Equal(t, "Danger", e.Signal)
	assert.ElementsMatch(t, []string{"H334", "H317", "H315"}, e.Statements)
	corrosive := candle(t, "50 % of total", part("i", "40 %", "Skin Irrit. 2 H315"), part("d", "10 %", "Eye Dam. 1 H318")).Label("EU", batch.Figure{})
	assert.Equal(t, []string{"GHS05"}, corrosive.Pictograms)
	toxic := candle(t, "50 % of total", sensitive, part("t", "50 %", "Acute Tox. 3 H301", "    ate = \"oral 60 mg/kg\"\n")).Label("EU", batch.Figure{})
	assert.Equal(t, []string{"GHS06"}, toxic.Pictograms)
	water := candle(t, "50 % of total", part("w", "60 %", "Aquatic Acute 1 H400, Aquatic Chronic 1 H410", m("1"))).Label("EU", batch.Figure{})
	assert.Equal(t, []string{"H410"}, water.Statements) // which says H400 as well
	assert.Equal(t, "Warning", water.Signal)
}

// Annex I, 1.5.2.1.1: what a pack of up to 125 mL may leave off; never H317.
func TestSmallPacks(t *testing.T) {
	c := candle(t, "50 % of total", part("a", "50 %", "Skin Sens. 1 H317, Skin Irrit. 2 H315, Eye Irrit. 2 H319"), part("w", "40 %", "Aquatic Chronic 2 H411"))
	assert.Equal(t, "Skin Irrit. 2 H315, Eye Irrit. 2 H319, Skin Sens. 1 H317, Aquatic Chronic 3 H412", results(c)) // 20 % of category 2, times 10 for category 3
	ml := func(n int64) batch.Figure { return batch.Figure{Value: quantity.Int(n), State: schema.Known} }
	small := c.Label("EU", ml(125))
	assert.Equal(t, []string{"H317", "H412"}, small.Statements)
	assert.Equal(t, []string{"H315", "H319"}, small.SmallPack)
	assert.Equal(t, []string{"GHS07"}, small.Pictograms)
	assert.Equal(t, "Warning", small.Signal)
	assert.Len(t, c.Label("EU", ml(126)).Statements, 4)
	assert.Len(t, c.Label("EU", batch.Figure{}).Statements, 4)
}

// The new classes are the Union's alone; from memory.
func TestClassesOfOneMarket(t *testing.T) {
	c := candle(t, "10 % of total", part("a", "1 %", "ED HH 1 EUH380"))
	assert.Equal(t, []string{"EUH380"}, c.Label("EU", batch.Figure{}).Statements)
	uk := c.Label("UK", batch.Figure{})
	assert.True(t, uk.None())
}

// Several oils bring the same substance: it counts together.
func TestOneSubstanceInTwoOils(t *testing.T) {
	oil := func(key, share string) string {
		return "fragrance \"" + strings.ToLower(key) + "\" {\n  title = \"" + key + "\"\n  component \"linalool\" {\n    cas = \"78-70-6\"\n    share = \"" + share + "\"\n    hazards = [\"Skin Sens. 1B H317\"]\n  }\n}\n"
	}
	c := recipe(t, oil("One", "10 %")+oil("Two", "20 %"), "  fragrance \"one\" {\n    load = \"4 % of total\"\n  }\n  fragrance \"two\" {\n    load = \"3 % of total\"\n  }\n")
	assert.Equal(t, "Skin Sens. 1 H317", results(c))
	assert.Contains(t, steps(c), "linalool: 10 % of One, which is 4 % of total, and 20 % of Two, which is 3 % of total, makes 1 % of the candle, at or over the limit of 1 %")
}

func TestWhatIsNotKnown(t *testing.T) {
	bare := recipe(t, "fragrance \"oil\" {\n}\ndye \"d\" {\n  components = \"none classified\"\n}\n",
		"  fragrance \"oil\" {\n    load = \"5 % of total\"\n  }\n  dye \"d\" {\n    weight = \"1 g\"\n  }\n")
	assert.Len(t, bare.Unknown, 1)
	assert.False(t, bare.Whole())

	c := candle(t, "10 % of total", part("a", "10 %", "Aquatic Acute 1 H400"), part("b", "10 %", "mild"), part("c", "10 %", "Skin Irrit. 2 H315, Eye Irrit. 2 H319", "    limit = \"5 %\"\n"))
	assert.Len(t, c.NoM, 1)
	if assert.Len(t, c.Unread, 2) {
		assert.Contains(t, c.Unread[0].Why, `"mild" of b cannot be read as a classification`)
		assert.Contains(t, c.Unread[1].Why, "the limit of c (5 %) is of no use here")
	}
	assert.False(t, c.Whole())

	eye := recipe(t, "dye \"d\" {\n  component \"a\" {\n    share = \"50 %\"\n    hazards = [\"Skin Sens. 1A H317\"]\n  }\n}\n", "  dye \"d\" {\n    amount = \"to shade\"\n  }\n")
	assert.Len(t, eye.Doubts, 1)

	aldehyde := candle(t, "50 % of total", part("citral", "8 %", "Skin Irrit. 2 H315", "    cas = \"5392-40-5\"\n"))
	assert.Equal(t, "", results(aldehyde))
	if assert.Len(t, aldehyde.Doubts, 1) {
		assert.Contains(t, aldehyde.Doubts[0].Says, "citral is an aldehyde")
	}
}

func TestUnderstated(t *testing.T) {
	c := candle(t, "10 % of total", part("cinnamal", "1 %", "Skin Sens. 1B H317", "    cas = \"104-55-2\"\n"), part("linalool", "1 %", "Skin Sens. 1 H317", "    cas = \"78-70-6\"\n"))
	lacking, k := c.Substances[0].Understated()
	assert.Len(t, lacking, 1)
	assert.Equal(t, "cinnamal", k.Name)
	none, _ := c.Substances[1].Understated()
	assert.Empty(t, none)
}

func TestWhatALabelLacks(t *testing.T) {
	e := candle(t, "10 % of total", citrus()...).Label("EU", batch.Figure{})
	all := e.Lacks([]string{"WARNING"}, []string{"GHS07"}, []string{"H317 May cause an allergic skin reaction."}, []string{"Limonene", "D-LIMONENE", "Linalool", "citral", "Eugenol"})
	assert.True(t, all.None())
	none := e.Lacks(nil, nil, []string{"EUH208"}, []string{"linalool"})
	assert.Equal(t, "Warning", none.Signal)
	assert.Equal(t, []string{"GHS07"}, none.Pictograms)
	assert.Equal(t, []string{"H317"}, none.Statements)
	assert.Equal(t, "d-limonene, citral, eugenol", names(none.Names))
}

// What one classification costs, beside the parse of a recipe (about 300 us).
func BenchmarkClassify(b *testing.B) {
	text := "wax \"plain\" {\n}\nfragrance \"oil\" {\n" + strings.Join(citrus(), "") + "}\nrecipe \"r\" {\n  wax \"plain\" {\n    weight = \"1 kg\"\n  }\n" +
		"  fragrance \"oil\" {\n    load = \"6 % of wax\"\n  }\n}\n"
	shop := lint.NewShop(".", []*schema.File{schema.Read("r.candle.hcl", []byte(text))})
	b.ReportAllocs()
	for b.Loop() {
		view := lint.NewView(shop, shop.Find("recipe", "r"), "2026-11-25")
		hazard.Of.In(view)
	}
}

// What was not held against the text of the regulation says so in its step and
// is left out of what was checked: the figures of Table 3.1.2, harm to organs,
// the classes of Regulation (EU) 2023/707. A stated estimate needs no such figure.
func TestWhatIsFromMemorySaysSo(t *testing.T) {
	for name, c := range map[string]struct {
		oil     string
		results string // 10 % of the candle is the oil
		checked string
	}{
		"a category's figure":      {part("a", "100 %", "Acute Tox. 3 H301"), "Acute Tox. 4 H302", ""},
		"a stated estimate":        {part("a", "100 %", "Acute Tox. 3 H301", "    ate = \"oral 100 mg/kg\"\n"), "Acute Tox. 4 H302", "Acute Tox. 4 H302"},
		"organs":                   {part("a", "100 %", "STOT RE 1 H372"), "STOT RE 1 H372", ""},
		"drowsiness, under 20 %":   {part("a", "100 %", "STOT SE 3 H336"), "", ""},
		"hormones":                 {part("a", "1 %", "ED HH 1 EUH380"), "ED HH 1 EUH380", ""},
		"genes":                    {part("a", "1 %", "Muta. 1B H340"), "Muta. 1B H340", "Muta. 1B H340"},
		"organs under 10 %":        {part("a", "10 %", "Skin Sens. 1B H317") + part("b", "90 %", "STOT SE 2 H371"), "Skin Sens. 1 H317", "Skin Sens. 1 H317"},
		"a sensitizer, and organs": {part("a", "10 %", "Skin Sens. 1B H317") + part("b", "90 %", "STOT SE 1 H370"), "Skin Sens. 1 H317, STOT SE 2 H371", "Skin Sens. 1 H317"},
	} {
		t.Run(name, func(t *testing.T) {
			whole := candle(t, "10 % of total", c.oil)
			assert.Equal(t, c.results, results(whole))
			assert.Equal(t, c.checked, results(whole.Checked()))
			for i := range whole.Steps {
				if s := &whole.Steps[i]; s.Memory {
					assert.Contains(t, s.String(), "from memory")
				}
			}
		})
	}
}

// Where a stated estimate reaches the category by itself, what a category's
// figure adds does not make it doubtful; where it takes both, it does.
func TestStatedEstimatesBesideConverted(t *testing.T) {
	stated := part("a", "90 %", "Acute Tox. 3 H301", "    ate = \"oral 100 mg/kg\"\n") // 9 %: 1111 mg/kg alone
	alone := candle(t, "10 % of total", stated, part("b", "10 %", "Acute Tox. 4 H302"))
	assert.Equal(t, "Acute Tox. 4 H302", results(alone.Checked()))
	little := part("a", "40 %", "Acute Tox. 3 H301", "    ate = \"oral 100 mg/kg\"\n") // 4 %: 2500 mg/kg alone
	both := candle(t, "10 % of total", little, part("b", "60 %", "Acute Tox. 4 H302"))
	assert.Equal(t, "Acute Tox. 4 H302", results(both)) // 100 / (4/100 + 6/500) = 1923
	assert.Equal(t, "", results(both.Checked()))
}
