package handbook_test

import (
	"slices"
	"strings"
	"testing"

	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules"
	"wickrule/rules/handbook"
	"wickrule/schema"
)

func plainPage(t *testing.T, book map[string]string, name string) string {
	t.Helper()
	require.Contains(t, book, name)
	return textOf(parsed(t, book[name]))
}

// What a page says of an example is what a check of the whole demo shop with
// the example in it says; the characters that are flagged are marked.
func TestExamplesSayWhatTheCheckerSays(t *testing.T) {
	book, base := books()["demo"], load(t, examples.Shop())
	pages := strings.NewReplacer("the house format, schema/format.md", "the house format", "rules/shoprule/names.md", "the names a rule can ask for") // files that are pages
	for i, r := range rules.All() {
		if testing.Short() && i%6 > 0 {
			continue
		}
		page := plainPage(t, book, handbook.RulePage(r.Name, false))
		for _, text := range []string{r.Why, r.Remedy, r.Cautions, r.Source} {
			for paragraph := range strings.SplitSeq(text, "\n\n") {
				assert.Contains(t, strings.ToLower(page), pages.Replace(strings.ToLower(strings.Join(strings.Fields(paragraph), " "))))
			}
		}
		for _, e := range r.Bad {
			shop, about, err := e.Over(base)
			require.NoError(t, err)
			said := 0
			for _, f := range lint.Run(shop, rules.For(shop), today).Findings {
				if f.Rule.Name != r.Name || !slices.Contains(about, f.At.File) {
					continue
				}
				said++
				assert.Contains(t, page, strings.Join(strings.Fields(strings.ReplaceAll(report.Clean(f.Message), "`", "")), " "), r.Name)
				if fixes := f.Repairs(); len(fixes) > 0 {
					assert.Contains(t, page, report.Clean(fixes[0].Title), r.Name)
				}
			}
			assert.NotZerof(t, said, "%s: nothing is said of %s", r.Name, e.About)
		}
	}
}

func marksOf(t *testing.T, book map[string]string, name string) (marks []string) {
	for _, e := range elements(parsed(t, book[name])) {
		if e.Data == "mark" {
			marks = append(marks, textOf(e))
		}
	}
	return marks
}

// The characters under which a rule's bad examples are flagged are marked.
func TestFlaggedCharactersAreMarked(t *testing.T) {
	book := books()["demo"]
	assert.Equal(t, []string{`"1 min"`}, marksOf(t, book, "rule-stir-too-short.html")[:1])
	assert.Contains(t, marksOf(t, book, "own-fresh-putty-for-hot-pours.html"), `"212 °F"`)
	without := 0
	for _, r := range rules.All() {
		if len(marksOf(t, book, handbook.RulePage(r.Name, false))) == 0 {
			without++
			t.Log(r.Name)
		}
	}
	assert.LessOrEqual(t, without, 3)
}

// A rule of the shop's own tells its trials and whether it is proved, and
// stands in the list.
func TestOwnRule(t *testing.T) {
	book := books()["demo"]
	page := plainPage(t, book, "own-fresh-putty-for-hot-pours.html")
	for _, said := range []string{
		"Putty only well below the temperature it holds to",
		"Putty that softens lets the mold drain onto the bench",
		"How many pours does a ball of wick putty seal before it weeps?",
		"mixed", "Clean for six pours; wept at the seventh.",
		"Proved by 1 sound and 1 faulty.",
		"The pour is 212 °F; this putty holds to 220 °F, and we keep 10 °F in hand",
		"require = pour.at <= mold.seal.holds_to - option.in_hand",
	} {
		assert.Contains(t, page, said)
	}
	assert.NotContains(t, page, "sound { recipe \"cool-pour\" { mold \"pillar-3x6\" { count = 1 } } }")
	assert.Contains(t, book["rules.html"], `href="own-fresh-putty-for-hot-pours.html"`)
	assert.Contains(t, book["trials.html"], `href="own-fresh-putty-for-hot-pours.html"`)
}

const tunes = `shop "quay" {
  title   = "Quay"
  tune "stir-too-short" {
    level  = "off"
    reason = "We stir by machine"
  }
  tune "second-pour-missing" { level = "consider" }
  tune "heat-near-flash" { level = "off" }
  tune "own-one" {
    level  = "must"
    option "in_hand" { is = "5 °F" }
  }
}
recipe "r" {
  title = "Left as it is"
  concession "batch-left-over" {
    reason = "The spare goes into tealights"
    until  = "2027-03-31"
  }
}
rule "own-one" {
  title   = "Own one"
  about   = "pour"
  require = pour.at < amount("100 °F") - option.in_hand
  option "in_hand" {
    is    = degrees("10 °F")
    title = "What we keep in hand"
  }
  option "spare" { is = amount("3 g") }
  sound {
    recipe "cool" {
      step "pour" { at = "89 °F" }
    }
  }
  faulty {
    recipe "warm" {
      step "pour" { at = "93 °F" }
    }
  }
}
rule "broken" {
  title   = "Broken one"
  about   = "pour"
  require = pour.at < amount("100 g")
}
rule "bare" {
  title   = "Bare one"
  about   = "pour"
  require = pour.at < amount("100 °F")
}
`

// A rule that speaks otherwise in this shop says so, where it is and in the
// list; one that cannot be silenced says that.
func TestTunedRules(t *testing.T) {
	book := makeOf(load(t, fstest.MapFS{"shop.candle.hcl": {Data: []byte(tunes)}}))
	silenced := plainPage(t, book, "rule-stir-too-short.html")
	assert.Contains(t, silenced, "This shop has silenced the rule: it says nothing here. Why: We stir by machine (shop.candle.hcl, line 3)")
	assert.Contains(t, silenced, "in this shop silent silent silent")
	softer := plainPage(t, book, "rule-second-pour-missing.html")
	assert.Contains(t, softer, "This shop has tuned the rule to consider.")
	assert.Contains(t, softer, "as the rule is should should should in this shop consider consider consider")
	binding := plainPage(t, book, "rule-heat-near-flash.html")
	assert.Contains(t, binding, "This shop has silenced the rule, save where it cannot be: what is made for sale is still judged.")
	assert.Contains(t, binding, "in this shop silent silent must")
	assert.Contains(t, plainPage(t, book, "own-own-one.html"), "This shop has tuned the rule to must. It has figures of its own for the rule's options too.")
	assert.Contains(t, plainPage(t, book, "own-own-one.html"), "What we keep in hand: 10 °F; in this shop 5 °F (in_hand) 3 g (spare)")
	assert.Contains(t, plainPage(t, book, "own-bare.html"), "Not proved: it has not an example of each kind.")
	assert.NotContains(t, plainPage(t, book, "own-bare.html"), "Options")
	// The examples are the rule's: with 5 °F it would pass 93 °F.
	assert.Contains(t, plainPage(t, book, "own-own-one.html"), "Proved by 1 sound and 1 faulty.")
	assert.Contains(t, plainPage(t, book, "own-own-one.html"), "Said of it: must Own one")
	assert.Contains(t, plainPage(t, book, "own-own-one.html"), "checked as this page is made, with the options as the rule has them.")
	assert.Contains(t, plainPage(t, book, "rule-batch-left-over.html"), "Left as it is: The spare goes into tealights (until 2027-03-31)")
	list := plainPage(t, book, "rules.html")
	assert.Contains(t, list, "tuned here stir-too-short silent silent silent")
	assert.Contains(t, list, "Broken one (shop.candle.hcl, line 41)")
	cover := plainPage(t, book, "index.html")
	assert.Contains(t, cover, "This shop has silenced the rule")
	assert.NotContains(t, cover, "No rule of the trade is tuned")
	assert.NotContains(t, plainPage(t, book, "rule-cure-too-short.html"), "in this shop")
}

// The figures of the stock are those on the shelves, in both systems, and
// nothing that is not stated is shown.
func TestStockPage(t *testing.T) {
	page := parsed(t, books()["demo"]["stock.html"])
	shop := load(t, examples.Shop())
	items := map[string]*html.Node{}
	for _, e := range elements(page) {
		if e.Data == "section" && strings.HasPrefix(attr(e, "class"), "item") {
			items[attr(e, "aria-labelledby")] = e
		}
	}
	n := 0
	for _, kind := range schema.StockKinds() {
		for _, block := range shop.Shelf(kind) {
			n++
			item := items[kind+"-"+block.Label]
			require.NotNil(t, item, block.Label)
			text := textOf(item)
			for v := range block.Attrs() {
				if v.IsAmount() {
					assert.Contains(t, text, strings.ReplaceAll(v.Spec.Name, "_", " ")+" "+v.Amount().String(), block.Label)
				}
			}
		}
	}
	assert.Equal(t, n, len(items))
	// Temperatures by NIST SP 811, B.8: 168 °F is 75.56 °C, 182 °F 83.33 °C.
	assert.Contains(t, textOf(items["wax-northlight-pillar"]), "pour at 168 to 182 °F (75.6 to 83.3 °C)")
	assert.Contains(t, textOf(items["wax-northlight-pillar"]), "fragrance limit 6 % of wax density")
	assert.Contains(t, textOf(items["seal-wick-putty"]), "Tried: How many pours does a ball of wick putty seal before it weeps? (mixed)")
}

// The format's pages are the program's own pages, word for word.
func TestFormatPages(t *testing.T) {
	book := books()["demo"]
	format := plainPage(t, book, "format.html")
	for _, spec := range schema.AllSpecs() {
		assert.Contains(t, format, strings.Join(strings.Fields(spec.Doc), " "))
		for _, a := range spec.Attrs {
			if !strings.Contains(schema.Manual(), a.Doc) {
				continue // what is alike is told once
			}
			assert.Contains(t, format, strings.Join(strings.Fields(strings.ReplaceAll(a.Doc, "`", "")), " "))
		}
	}
	assert.NotContains(t, format, "go generate")
	assert.NotContains(t, format, "**")
	assert.NotContains(t, format, "](")
	assert.NotContains(t, plainPage(t, book, "names.html"), "go generate")
	assert.Contains(t, plainPage(t, book, "names.html"), "mold.seal")
}

// What a shop of strange keys has on its pages can be read and harms nothing.
func TestOddKeys(t *testing.T) {
	book := books()["odd"]
	cover := plainPage(t, book, "index.html")
	assert.Contains(t, cover, `of <script>alert(1)</script> & "Ölfleck"`)
	assert.Contains(t, book, "own-gr_c3_b6_c3_9fe.html")
	assert.Contains(t, plainPage(t, book, handbook.RulePage("CON", true)), "Hot <wax> & water.")
	assert.NotContains(t, book, "own-fragrance-over-limit.html", "a rule of the program has that name")
	assert.Contains(t, plainPage(t, book, "rules.html"), "They check nothing.")
	assert.Contains(t, plainPage(t, book, "rule-fragrance-over-limit.html"), "Wax holds only so much oil.")
	scripts := 0
	for name, text := range book {
		if strings.HasSuffix(name, ".html") {
			scripts += strings.Count(text, "<script")
		}
		assert.Regexp(t, `^[a-z0-9_.-]{1,120}$`, name)
	}
	assert.Equal(t, 2, scripts, "those of the search")
}
