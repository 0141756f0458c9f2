package lsp

import (
	"strings"

	"wickrule/schema"
)

// phrase is how an attribute of the stock is told: the words before its value
// and behind it. Of what is true or false, lead is said where it is true and
// not where it is false.
type phrase struct{ attr, lead, tail, not string }

// cards is what a hover tells of an item on the shelves, a sentence a line.
var cards = map[string][][]phrase{
	"wax": {
		{{attr: "melt_to", lead: "melted to "}, {attr: "add_fragrance_at", lead: "fragrance goes in at "}, {attr: "pour_at", lead: "poured at "}},
		{{attr: "never_above", lead: "never above "}, {attr: "flash_point", lead: "its vapor can be lit from "}, {attr: "congeals_at", lead: "begins to set at "}},
		{{attr: "fragrance_limit", lead: "holds ", tail: " of fragrance at the most"}, {attr: "shrinkage", lead: "shrinks by "}, {attr: "density", lead: "density ", tail: " when solid"}, {attr: "cure", lead: "scented candles rest "}},
		{{attr: "one_pour", lead: "needs no second pour"}, {attr: "tested_for", lead: "the shop has tried it for "}},
	},
	"fragrance": {
		{{attr: "most_in_candles", lead: "its certificate allows ", tail: " in candles"}, {attr: "density", lead: "density "}},
		{{attr: "flash_point", lead: "flash point ", tail: ", which is about the neat oil near a flame and not about warm wax"}},
		{{attr: "gel_safe", lead: "declared fit for gel", not: "not fit for gel"}, {attr: "water_based", lead: "carries water, which must never go into hot wax"}},
		{{attr: "sheet"}, {attr: "certificate", lead: "certificate: "}},
	},
	"dye": {
		{{attr: "limit", lead: "at most "}, {attr: "drop", lead: "a drop weighs "}, {attr: "piece", lead: "a piece weighs "}},
		{{attr: "flash_point", lead: "flash point "}, {attr: "gel_safe", lead: "declared fit for gel", not: "not fit for gel"}, {attr: "water_based", lead: "carries water, which must never go into hot wax"}},
	},
	"additive": {
		{{attr: "usual", lead: "usually "}, {attr: "flash_point", lead: "flash point "}, {attr: "gel_safe", lead: "declared fit for gel", not: "not fit for gel"}, {attr: "water_based", lead: "carries water, which must never go into hot wax"}},
	},
	"mold": {
		{{attr: "diameter", tail: " across"}, {attr: "width", tail: " wide"}, {attr: "length", tail: " long"}, {attr: "height", tail: " high"}, {attr: "holds", lead: "holds "}},
		{{attr: "material", lead: "made of "}, {attr: "softens_at", lead: "softens at "}, {attr: "wick_hole", lead: "has a wick hole, which must be sealed before the pour", not: "has no open wick hole"}},
	},
	"container": {
		{{attr: "holds", lead: "holds ", tail: " to the fill line"}, {attr: "diameter", tail: " across"}, {attr: "opening", tail: " at the rim"}, {attr: "height", tail: " high"}},
		{{attr: "material", lead: "made of "}, {attr: "finish", lead: "finish: "}, {attr: "thermal_shock", lead: "withstands a sudden difference of "}, {attr: "softens_at", lead: "softens at "}},
		{{attr: "made_for_candles", lead: "made for candles", not: "not made for candles: it may crack or burn"}},
	},
	"taper":   {{{attr: "length", tail: " long"}, {attr: "diameter", tail: " across at the base"}}},
	"topping": {},
	"pot":     {{{attr: "heat", lead: "heat: "}}, {{attr: "holds", lead: "holds ", tail: " to the brim; three quarters of that is as full as melted wax should stand"}}},
	"wick": {
		{{attr: "burns", lead: "for candles of ", tail: " across"}, {attr: "families", lead: "made for "}, {attr: "trim", lead: "trimmed to "}},
		{{attr: "construction"}, {attr: "core", lead: "core: "}, {attr: "lead_at_most", lead: "at most ", tail: " of lead in the core"}, {attr: "tab", lead: "crimped to a tab", not: "without a tab"}},
	},
	"seal": {{{attr: "holds_to", lead: "holds to "}}},
	"label": {
		{{attr: "markets", lead: "for the "}, {attr: "languages", lead: "in the languages "}, {attr: "signal", lead: "signal word "}, {attr: "net_weight", lead: "net weight "}, {attr: "count_and_length"}},
		{{attr: "cautions", lead: "says: "}},
		{{attr: "pictograms"}, {attr: "hazards", lead: "statements "}, {attr: "names", lead: "names "}, {attr: "lot", lead: "lot: "}},
	},
	"trial": {
		{{attr: "question"}},
		{{attr: "date", lead: "tried "}, {attr: "up_to", lead: "up to "}, {attr: "outcome", lead: "outcome: "}},
		{{attr: "notes"}},
	},
	"rule": {{{attr: "because"}}},
	"shop": {{{attr: "units", lead: "units: "}, {attr: "markets", lead: "sells in the "}, {attr: "room", lead: "the workshop is at "}}},
}

// kindWord is the attribute whose word says what sort of thing an item is.
var kindWord = map[string]string{"wax": "family", "container": "kind", "topping": "kind", "seal": "kind", "mold": "shape"}

// dangers is the usual caution for what can hurt somebody.
var dangers = map[string]string{
	"wax":       "Hot wax burns the skin and can catch fire: stay with it, and never put water on it.",
	"fragrance": "Fragrance oils are strong stuff: gloves, fresh air, and no flame near the bottle.",
	"pot":       "Never leave it alone while it heats.",
}

// card is an item of the shop as a maker would tell of it: its figures in both
// systems, where they are from, and where it is used.
func (h *here) card(b *schema.Block) []string {
	if b.Is("recipe") {
		return h.recipeCard(b)
	}
	name := b.Name()
	head := "**" + h.title(b) + "**, " + article(h.sort(b))
	if suits := h.listed(b, "suits"); suits != "" {
		head += ", sold for " + suits
	}
	says := []string{head + "."}
	var figures []string
	for _, line := range cards[name] {
		var parts []string
		for _, p := range line {
			parts = append(parts, h.phrase(b, p))
		}
		figures = append(figures, inOne(parts...))
	}
	says = append(says, spaced(figures...), h.madeOf(b))
	if name == "rule" {
		says = append(says, h.restsText(b)...)
	}
	if b.Spec.Attr("source") != nil {
		if source := b.Get("source").Text(); source != "" {
			says = append(says, "Source: "+h.plain(fullStop(source)))
		} else if name == "wax" || name == "wick" || name == "seal" {
			says = append(says, "Where these figures are from is not written down.")
		}
	}
	if name == "trial" {
		return append(says, h.bearsText(b))
	}
	return append(says, h.usedIn(b), dangers[name])
}

// sort is what sort of thing an item is: "paraffin wax", "plug".
func (h *here) sort(b *schema.Block) string {
	name := b.Name()
	word := ""
	if attr := kindWord[name]; attr != "" {
		word = b.Get(attr).Text()
	}
	switch {
	case word == "" || word == "other":
		return name
	case word == "blend":
		return "house blend"
	case name == "wax" && (word == "beeswax" || word == "gel"):
		return word
	case name == "mold" || name == "wax":
		return word + " " + name
	}
	return word
}

// phrase is an attribute of a block in words; "" where it is not known.
func (h *here) phrase(b *schema.Block, p phrase) string {
	v := b.Get(p.attr)
	switch {
	case !v.Known():
		return ""
	case v.Spec.Type == schema.YesNo && v.Yes():
		return p.lead
	case v.Spec.Type == schema.YesNo:
		return p.not
	}
	value := h.listed(b, p.attr)
	switch {
	case v.IsAmount():
		value = v.Amount().Both(h.units())
	case v.Spec.Type == schema.Texts || v.Spec.Type == schema.Choices:
	default:
		value = h.plain(strings.TrimSuffix(v.Text(), "."))
	}
	if value == "" {
		return ""
	}
	return p.lead + value + p.tail
}

// listed is the elements of a list as a sentence has them.
func (h *here) listed(b *schema.Block, attr string) string {
	if b.Spec.Attr(attr) == nil {
		return ""
	}
	var words []string
	for _, item := range b.Get(attr).Items() {
		words = append(words, h.plain(item.Text))
	}
	if attr == "markets" || attr == "languages" || attr == "families" || attr == "suits" || attr == "tested_for" {
		return joined(words)
	}
	return strings.Join(words, ", ")
}

// madeOf is what a house blend, or a fragrance, is made of.
func (h *here) madeOf(b *schema.Block) string {
	var parts []string
	for _, inner := range b.Blocks() {
		if share := inner.Spec.Attr("share"); share == nil {
			continue
		}
		name := inner.Label
		if inner.Is("part") {
			for _, kind := range inner.Spec.LabelRefers {
				if item := h.shop.Find(kind, inner.Label); item != nil {
					name = item.Title()
					break
				}
			}
		}
		part := h.plain(name)
		if share := inner.Get("share"); share.IsAmount() {
			part += " " + share.Amount().String()
		}
		parts = append(parts, part)
	}
	switch {
	case len(parts) > 0 && b.Is("wax"):
		return "Made of " + joined(parts) + "; its figures are its own, not those of its parts."
	case len(parts) > 0:
		return "Classified substances in it: " + joined(parts) + "."
	case b.Spec.Attr("components") != nil && b.Get("components").Known():
		return "Its safety data sheet lists no classified substance."
	case b.Is("fragrance"):
		return "Its components are not written down, so its hazards are not known."
	}
	return ""
}

func article(noun string) string {
	if noun != "" && strings.IndexByte("aeiou", noun[0]) >= 0 {
		return "an " + noun
	}
	return "a " + noun
}
