package card_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/card"
)

func demo(t *testing.T) *lint.Shop {
	t.Helper()
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	return shop
}

// all is the card of every rule in force in the demo shop.
func all(t *testing.T) (cards []*card.Card) {
	t.Helper()
	shop := demo(t)
	for _, r := range rules.All() {
		cards = append(cards, card.Of(r, shop))
	}
	for _, r := range rules.Own(shop) {
		cards = append(cards, card.OfOwn(r, shop, shop.Find("rule", r.Name)))
	}
	return cards
}

// Every card has all that a card is for, in whole sentences.
func TestEveryCardSaysSomething(t *testing.T) {
	for _, c := range all(t) {
		assert.Truef(t, strings.HasSuffix(c.Question, "?"), "%s: %s", c.Rule, c.Question)
		require.NotEmpty(t, c.Why, c.Rule)
		for _, text := range append([]string{c.Answer, c.AllRight, c.Do, c.Why[0]}, c.Mind...) {
			assert.GreaterOrEqualf(t, len(strings.Fields(text)), 2, "%s: %q", c.Rule, text)
			assert.Containsf(t, ".!", text[len(text)-1:], "%s: %q", c.Rule, text)
		}
		assert.Equal(t, "Larkspur Quay Candleworks", c.Shop)
		assert.Contains(t, c.Deferral, "not legal advice")
		assert.Contains(t, strings.Join(c.Mind, " "), "never water")
	}
}

// What is written for customers speaks of candles and not of this program.
func TestWrittenCardsSpeakToCustomers(t *testing.T) {
	written := 0
	for _, r := range rules.All() {
		if r.Card == (lint.Card{}) {
			continue
		}
		written++
		for _, text := range []string{r.Card.Question, r.Card.Answer, r.Card.AllRight, r.Card.Do} {
			assert.NotEmpty(t, text, r.Name)
			for _, word := range []string{"_", " = ", "wickrule", "stock", "concession", "finding", r.Name} {
				assert.NotContainsf(t, text, word, "%s", r.Name)
			}
		}
		assert.LessOrEqual(t, len(strings.Fields(r.Card.Question)), 18, r.Name)
		assert.LessOrEqual(t, len(strings.Fields(r.Card.Answer)), 46, r.Name)
	}
	assert.GreaterOrEqual(t, written, 25)
	t.Logf("%d rules have a card of their own", written)
}

// A figure that stands on a card in two units is the same in both, to the last
// digit written (NIST SP 811 (2008), B.8: °C = (°F − 32) / 1.8, 1 in = 25.4 mm
// exactly; a difference has no 32).
func TestFiguresAgree(t *testing.T) {
	number := `(\d+(?: \d+/\d+|/\d+|\.\d+)?)`
	pairs := regexp.MustCompile(number + `(?: to ` + number + `)? (°C|°F|mm|cm|in) \(` + number + `(?: to ` + number + `)? (°C|°F|mm|cm|in)\)`)
	seen := 0
	for _, r := range rules.All() {
		text := r.Card.Answer + " " + r.Card.AllRight + " " + r.Card.Do
		for _, m := range pairs.FindAllStringSubmatch(text, -1) {
			for _, ends := range [][2]string{{m[1], m[4]}, {m[2], m[5]}} {
				if ends[0] == "" {
					continue
				}
				seen++
				a, b := read(t, ends[0]), read(t, ends[1])
				near := math.Abs(inBase(a, m[3])-inBase(b, m[6])) <= coarse(m[6])
				difference := math.Abs(asDifference(a, m[3])-asDifference(b, m[6])) <= coarse(m[6])
				assert.Truef(t, near || difference, "%s: %s", r.Name, m[0])
			}
		}
	}
	assert.GreaterOrEqual(t, seen, 20)
	t.Logf("%d figures compared", seen)
}

func read(t *testing.T, text string) float64 {
	t.Helper()
	sum := 0.0
	for part := range strings.FieldsSeq(text) {
		above, below, fraction := strings.Cut(part, "/")
		n, err := strconv.ParseFloat(above, 64)
		require.NoError(t, err)
		if fraction {
			d, err := strconv.ParseFloat(below, 64)
			require.NoError(t, err)
			n /= d
		}
		sum += n
	}
	return sum
}

func inBase(n float64, unit string) float64 {
	switch unit {
	case "°F":
		return (n - 32) / 1.8
	case "in":
		return n * 25.4
	case "cm":
		return n * 10
	}
	return n
}

func asDifference(n float64, unit string) float64 {
	if unit == "°F" {
		return n / 1.8
	}
	return inBase(n, unit)
}

// coarse is how far a rounded figure may be off: half a degree; in inches, as
// people read a ruler, a sixteenth and a little.
func coarse(unit string) float64 {
	switch unit {
	case "°F", "°C":
		return 0.6
	case "cm":
		return 2.5
	case "in":
		return 1.8
	}
	return 1
}

// The card of a rule of the shop's own tells what was asked and tried.
func TestOwnCards(t *testing.T) {
	shop := demo(t)
	byName := map[string]*card.Card{}
	for _, r := range rules.Own(shop) {
		byName[r.Name] = card.OfOwn(r, shop, shop.Find("rule", r.Name))
	}
	glue := byName["tab-glue-in-hand"]
	require.NotNil(t, glue)
	assert.Equal(t, "How warm may a pour be before a glued tab leans?", glue.Question)
	assert.Equal(t, []string{"2026-08-03, Hot-melt glue, rated, in Fog bank, rain on slate, up to 142 °F: Six jars at 142 °F stood straight. At 146 °F two of six leaned."}, glue.Tried)
	cure := byName["a-day-on-the-rack"]
	assert.Equal(t, "What is our rule for the step “cure”?", cure.Question, "two rules rest on its trial, which asks about one of them")
	assert.Equal(t, "Nothing cures for less than a day.", cure.Answer)
	assert.Equal(t, "Cure for 24 h or more.", cure.Do)
	assert.Equal(t, "Like this, for instance: cure for 3 days.", cure.AllRight)
	assert.Equal(t, "Pour at 188 °F or more, and never above what the wax's sheet allows.", byName["gel-poured-hot"].Do)
}

// Both forms have everything, and the page asks for nothing from elsewhere.
func TestForms(t *testing.T) {
	for _, c := range all(t) {
		var page, text bytes.Buffer
		require.NoError(t, c.HTML(&page))
		require.NoError(t, c.Markdown(&text))
		tree, err := html.Parse(&page)
		require.NoError(t, err)
		shown := textOf(tree)
		parts := append([]string{c.Question, c.Answer, c.AllRight, c.Do, c.Foot()}, c.Mind...)
		for _, part := range append(append(parts, c.Why...), c.Tried...) {
			assert.Contains(t, shown, part, c.Rule)
			assert.Contains(t, strings.NewReplacer(`\`, "", "&lt;", "<").Replace(text.String()), part, c.Rule)
		}
		for n := range tree.Descendants() {
			for _, a := range n.Attr {
				assert.NotContains(t, []string{"src", "href"}, a.Key, c.Rule)
			}
		}
		assert.True(t, strings.HasPrefix(text.String(), "# "))
		assert.Equal(t, 1, strings.Count("\n"+text.String(), "\n# "), c.Rule)
	}
}

// What comes from a shop's files is shown as it is, and is no markup.
func TestNothingIsMarkup(t *testing.T) {
	c := &card.Card{Rule: "a", Question: "<script>alert(1)</script>?", Answer: "*b* [c](d)", Why: []string{"<b>"}, AllRight: "e", Do: "f", Mind: []string{"g"}}
	var page, text bytes.Buffer
	require.NoError(t, c.HTML(&page))
	require.NoError(t, c.Markdown(&text))
	assert.NotContains(t, page.String(), "<script>")
	assert.Contains(t, text.String(), `\*b\* \[c\](d)`)
	assert.NotContains(t, text.String(), "<script>")
}

func textOf(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			fmt.Fprint(&b, d.Data)
		}
	}
	return b.String()
}
