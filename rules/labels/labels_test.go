package labels

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

const stock = `
wax "plain" {
  family  = "paraffin"
  density = "0.9 g/mL"
}
mold "round" {
  shape    = "cylinder"
  diameter = "3 in"
  height   = "6 in"
}
container "jar" {
  kind  = "jar"
  holds = "300 mL"
}
taper "ten" {
  diameter = "7/8 in"
  length   = "10 in"
}
`

// check runs the rules of this folder over a recipe and some labels, and
// returns what is found as "rule on characters".
func check(t *testing.T, text string) []string {
	t.Helper()
	f := schema.Read("try.candle.hcl", []byte(stock+text))
	require.Empty(t, f.Problems)
	report := lint.Run(lint.NewShop(".", []*schema.File{f}), Rules(), "2026-10-20")
	require.Empty(t, report.Faults)
	found := []string{}
	for _, one := range report.Findings {
		assert.NotEmpty(t, one.Message)
		for _, fix := range one.Repairs() {
			_, err := schema.Apply(f.Text.String(), fix.Edits)
			assert.NoError(t, err, fix.Title)
		}
		found = append(found, fmt.Sprintf("%s %s on %s", one.Level, one.Rule.Name, f.Text.Slice(one.At.Span)))
	}
	return found
}

// recipe is a recipe in the round mold with what is written in its head and
// its steps.
func recipe(head, steps string) string {
	return "recipe \"try\" {\n" + head + "\n  wax \"plain\" {\n    weight = \"625 g\"\n  }\n  mold \"round\" {\n    count = 1\n  }\n" + steps + "\n}\n"
}

func attach(keys ...string) string {
	return "  step \"attach label\" { label = [\"" + strings.Join(keys, "\", \"") + "\"] }"
}

// full is a label that lacks nothing in a market, with lines replaced.
func full(key, market string, replace ...string) string {
	cautions := map[string]string{
		"US": `"burn within sight", "keep away from things that catch fire", "keep away from children"`,
		"EU": `"general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire", "heat-resistant holder"`,
	}
	cautions["UK"] = cautions["EU"]
	text := "label \"" + key + "\" {\n  markets = [\"" + market + "\"]\n  signal = \"WARNING\"\n  cautions = [" + cautions[market] + "]\n" +
		"  net_weight = \"1 lb 5 oz (595 g)\"\n  contact = \"Larkspur Quay Candleworks, Slip Street, post@larkspur-quay.example\"\n  lot = \"as stamped\"\n}\n"
	return strings.NewReplacer(replace...).Replace(text)
}

// The three core statements of ASTM F2058 and the sign and three cautions of
// EN 15494, as publicly known: leaving out any of them is found, for each
// market, and nothing else.
func TestEveryRequiredCaution(t *testing.T) {
	required := map[string][]string{
		"US": {"burn within sight", "keep away from things that catch fire", "keep away from children"},                                       // ASTM F2058
		"EU": {"general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire"}, // EN 15494
		"UK": {"general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire"}, // BS EN 15494
	}
	for market, cautions := range required {
		head := "  made_for = \"sale\"\n  markets = [\"" + market + "\"]"
		assert.Empty(t, check(t, full("whole", market)+recipe(head, attach("whole"))), market)
		for _, c := range cautions {
			text := full("short", market, `"`+c+`", `, "", `, "`+c+`"]`, "]")
			require.NotContains(t, text, `"`+c+`"`)
			assert.Equal(t, []string{`must caution-missing on "short"`}, check(t, text+recipe(head, attach("short"))), "%s: %s", market, c)
		}
	}
}

func TestHowLoudByWhatItIsMadeFor(t *testing.T) {
	bare := func(made string) []string { return check(t, recipe("  made_for = \""+made+"\"", "")) }
	assert.Equal(t, []string{`must warning-label-missing on mold "round"`}, bare("sale"))
	assert.Equal(t, []string{`should warning-label-missing on mold "round"`}, bare("class"))
	assert.Equal(t, []string{`consider warning-label-missing on mold "round"`}, bare("own use"))

	short := full("short", "US", `, "keep away from children"`, "", "net_weight", "notes # ", "contact", "# ")
	short = "label \"short\" {\n  markets = [\"US\"]\n  cautions = [\"burn within sight\"]\n}\n"
	assert.Equal(t, []string{`should caution-missing on "short"`}, check(t, short+recipe("  made_for = \"class\"", attach("short"))))
	assert.Empty(t, check(t, short+recipe("  made_for = \"own use\"", attach("short"))))
}

func TestLabelsCountTogetherAndPerVessel(t *testing.T) {
	lid := "label \"lid\" {\n  markets = [\"US\"]\n  cautions = [\"keep away from children and pets\"]\n}\n"
	base := full("base", "US", `, "keep away from children"`, "")
	assert.Empty(t, check(t, base+lid+recipe("  made_for = \"sale\"", attach("base", "lid"))), "children and pets covers children")
	assert.Empty(t, check(t, base+lid+recipe("  made_for = \"sale\"", attach("base")+"\n"+attach("lid"))), "in two steps")

	two := "recipe \"try\" {\n  made_for = \"sale\"\n  wax \"plain\" {\n    weight = \"625 g\"\n  }\n  mold \"round\" {\n    count = 1\n  }\n  container \"jar\" {\n    count = 1\n  }\n" +
		"  step \"attach label\" {\n    label  = \"whole\"\n    vessel = \"round\"\n  }\n}\n"
	assert.Equal(t, []string{`must warning-label-missing on container "jar"`}, check(t, full("whole", "US")+two), "the jar has none")
}

func TestWhoseMarket(t *testing.T) {
	us := full("us", "US")
	assert.Equal(t, []string{`must label-not-for-market on "us"`}, check(t, us+recipe("  made_for = \"sale\"\n  markets = [\"UK\"]", attach("us"))))
	assert.Empty(t, check(t, us+recipe("  made_for = \"class\"\n  markets = [\"UK\"]", attach("us"))), "not sold")
	both := us + full("eu", "EU")
	assert.Empty(t, check(t, both+recipe("  made_for = \"sale\"\n  markets = [\"US\", \"EU\"]", attach("us", "eu"))))
}

func TestNothingIsMissedWhereALabelCannotBeRead(t *testing.T) {
	assert.Empty(t, check(t, recipe("  made_for = \"sale\"", attach("nowhere"))), "unknown-key says it")
}

// Each vessel is asked for itself: jars beside melts have a flame, whichever
// stands first, and the melts have none.
func TestJarsBesideMelts(t *testing.T) {
	tray := "container \"tray\" {\n  kind  = \"clamshell\"\n  holds = \"80 mL\"\n}\n"
	both := func(first, second, steps string) []string {
		return check(t, tray+full("whole", "US")+"recipe \"try\" {\n  made_for = \"sale\"\n  wax \"plain\" {\n    weight = \"625 g\"\n  }\n  container \""+first+"\" {\n    count = 1\n  }\n  container \""+second+"\" {\n    count = 1\n  }\n"+steps+"\n}\n")
	}
	onJar := "  step \"attach label\" {\n    label  = \"whole\"\n    vessel = \"jar\"\n  }"
	for _, order := range [][2]string{{"jar", "tray"}, {"tray", "jar"}} {
		assert.Equal(t, []string{`must warning-label-missing on container "jar"`}, both(order[0], order[1], ""))
		assert.NotContains(t, both(order[0], order[1], onJar), `must warning-label-missing on container "tray"`)
	}
}

func TestAMeltHasNoFlame(t *testing.T) {
	assert.Empty(t, check(t, recipe("  made_for = \"sale\"\n  makes = \"melt\"", "")))
}

// 16 CFR 500.19(a): 1 oz = 28.3495 g, 1 lb = 453.592 g; (b): metric figures to
// three digits. 1 lb 5 oz = 595.34 g; 7 oz = 198.447 g; 8 oz = 226.796 g.
func TestNetWeightInBothUnits(t *testing.T) {
	for printed, want := range map[string]string{
		"1 lb 5 oz (595 g)":    "",
		"Net wt. 7 oz (198 g)": "",
		"8 oz (226 g)":         "", // rounded down
		"8 oz (227 g)":         "", // to the nearest
		"226 g / 7.9 oz":       "",
		"1 lb 5 oz":            "must net-weight-missing",
		"595 g":                "must net-weight-missing",
		"a good pound":         "must net-weight-missing",
		"8 oz (246 g)":         "",                           // 8.68 oz, rounded down to whole ounces
		"8 oz (256 g)":         "must net-weight-overstated", // 9.03 oz: they disagree
		"8 oz (206 g)":         "must net-weight-overstated",
		"1 lb 7 oz (652 g)":    "must net-weight-overstated", // the mold holds 625.5 g at 0.90 g/mL
		"1 lb 6.07 oz (625 g)": "must net-weight-overstated", // 625.68 g
		"1 lb 6 oz (623 g)":    "",
		"10 fl oz (295 mL)":    "",
	} {
		want := map[bool][]string{true: {}, false: {want + ` on "` + printed + `"`}}[want == ""]
		text := full("net", "US", "1 lb 5 oz (595 g)", printed)
		assert.Equal(t, want, check(t, text+recipe("  made_for = \"sale\"", attach("net"))), printed)
	}
}

// Regulation (EU) 2023/988, Article 6(1)(f), and the Food Imitations (Safety)
// Regulations 1989, from memory: food only, and not for oneself.
func TestWhatLooksLikeFood(t *testing.T) {
	for head, want := range map[string][]string{
		`made_for = "sale" markets = ["EU"] looks_like = "food"`:       {`should looks-like-food on "food"`},
		`made_for = "sale" markets = ["US", "UK"] looks_like = "food"`: {`should looks-like-food on "food"`},
		`made_for = "class" markets = ["EU"] looks_like = "food"`:      {`consider looks-like-food on "food"`},
		`made_for = "own use" markets = ["EU"] looks_like = "food"`:    {},
		`made_for = "sale" markets = ["EU"] looks_like = "toy"`:        {},
		`made_for = "sale" markets = ["US"] looks_like = "food"`:       {},
	} {
		head = strings.NewReplacer(" markets", "\nmarkets", " looks_like", "\nlooks_like").Replace(head)
		f := schema.Read("try.candle.hcl", []byte(stock+recipe(head, "")))
		found := []string{}
		for _, one := range lint.Run(lint.NewShop(".", []*schema.File{f}), []*lint.Rule{LooksLikeFood}, "2026-10-20").Findings {
			found = append(found, fmt.Sprintf("%s %s on %s", one.Level, one.Rule.Name, f.Text.Slice(one.At.Span)))
		}
		assert.Equal(t, want, found, head)
	}
}

// The mold holds 625.5 g, 22.064 oz: the figures of the message follow from each
// other, and every recipe that the label is on is named.
func TestALabelThatTwoRecipesShare(t *testing.T) {
	one := recipe("  made_for = \"sale\"", attach("net"))
	f := schema.Read("try.candle.hcl", []byte(stock+full("net", "US", "1 lb 5 oz (595 g)", "1 lb 7 oz (652 g)")+one+strings.Replace(one, `"try"`, `"again"`, 1)))
	report := lint.Run(lint.NewShop(".", []*schema.File{f}), []*lint.Rule{NetWeightOverstated}, "2026-10-20")
	require.Len(t, report.Findings, 1)
	found := report.Findings[0]
	assert.Equal(t, "the label promises 1 lb 7 oz and one round holds 1 lb 6.1 oz at the density of the solid wax: 0.936 oz too much. Print 1 lb 6 oz (625 g) at the most", found.Message)
	var named []string
	for _, note := range found.Notes {
		named = append(named, note.Message)
	}
	assert.ElementsMatch(t, []string{"for try, in this vessel", "for again, in this vessel"}, named)
}

// 16 CFR 501.7: tapers are sold by count and length.
func TestTapersByCountAndLength(t *testing.T) {
	taper := func(line string) []string {
		text := full("pair", "US", "net_weight = \"1 lb 5 oz (595 g)\"", line)
		return check(t, text+"recipe \"try\" {\n  made_for = \"sale\"\n  makes = \"taper\"\n  wax \"plain\" {\n    weight = \"2 kg\"\n  }\n  taper \"ten\" {\n    count = 12\n  }\n"+attach("pair")+"\n}\n")
	}
	assert.Empty(t, taper(`count_and_length = "2 tapers, 10 in (254 mm)"`))
	assert.Equal(t, []string{`must net-weight-missing on "2 tapers, 10 in"`}, taper(`count_and_length = "2 tapers, 10 in"`))
	assert.Equal(t, []string{`must net-weight-missing on "pair"`}, taper(""))
}

func TestParticulars(t *testing.T) {
	us := "  made_for = \"sale\""
	eu := us + "\n  markets = [\"EU\"]"
	assert.Equal(t, []string{`should signal-missing on "l"`}, check(t, full("l", "US", "  signal = \"WARNING\"\n", "")+recipe(us, attach("l"))))
	assert.Equal(t, []string{`should signal-missing on "l"`}, check(t, full("l", "US", `"WARNING"`, `"Warning"`)+recipe(us, attach("l"))))
	assert.Empty(t, check(t, full("l", "EU", "  signal = \"WARNING\"\n", "")+recipe(eu, attach("l"))), "there the sign is one of the cautions")
	contact := "contact = \"Larkspur Quay Candleworks, Slip Street, post@larkspur-quay.example\""
	assert.Equal(t, []string{`should maker-missing on "l"`}, check(t, full("l", "US", contact, "")+recipe(us, attach("l"))))
	assert.Empty(t, check(t, full("l", "US", ", post@larkspur-quay.example", "")+recipe(us, attach("l"))))
	assert.Equal(t, []string{`should maker-missing on "l"`}, check(t, full("l", "EU", ", post@larkspur-quay.example", "")+recipe(eu, attach("l"))), "no electronic address")
	assert.Empty(t, check(t, full("l", "EU", "post@larkspur-quay.example", "www.larkspur-quay.example")+recipe(eu, attach("l"))))
	assert.Equal(t, []string{`should lot-missing on "l"`}, check(t, full("l", "EU", "  lot = \"as stamped\"\n", "")+recipe(eu, attach("l"))))
	assert.Empty(t, check(t, full("l", "US", "  lot = \"as stamped\"\n", "")+recipe(us, attach("l"))))
}

// 16 CFR 1500.17(a)(13): the statement goes with metal-cored wicks.
func TestLeadStatement(t *testing.T) {
	wick := func(lines string) []string { return check(t, "wick \"w\" {\n"+lines+"\n}\n") }
	assert.Equal(t, []string{`should lead-statement-missing on wick "w"`}, wick("  core = \"zinc\"\n  sold_loose = true"))
	assert.Empty(t, wick("  core = \"zinc\"\n  sold_loose = true\n  conformity = \"Conforms to 16 CFR 1500.17(a)(13)\""))
	assert.Empty(t, wick("  core = \"zinc\""))
	assert.Empty(t, wick("  core = \"cotton\"\n  sold_loose = true"))
}

func TestParseNet(t *testing.T) {
	net := parseNet("Net wt. 1 lb 5 oz (595 g)", quantity.Weight)
	assert.Equal(t, "1 lb 5 oz", net.us.String())
	assert.Equal(t, "595 g", net.metric.String())
	assert.True(t, net.agree())
}
