package house

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/repair"
	"wickrule/schema"
)

// UnknownKey is a reference to nothing.
var UnknownKey = &lint.Rule{
	Name:   "unknown-key",
	Group:  Group,
	Title:  "a name that nothing in the shop has",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutShop,
	Why: "A recipe that names a wax nobody has written down cannot be checked against that wax: not its limit, not its temperatures. " +
		"Every rule about it stays silent until the name leads somewhere.",
	Remedy: "Spell the key as the stock file does, or write the item down in the stock with the figures of its sheet.",
	Source: formatSource,
	Bad: []lint.Example{{
		About:   "a misspelt wick",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "with = \"rubber-plug\"", To: "with = \"ruber-plug\""}},
		Flags:   []string{`"ruber-plug"`},
	}},
	Good:  []lint.Example{{About: "spelt as in the stock file", Recipe: "tide-pillar"}},
	Check: checkUnknownKeys,
}

func checkUnknownKeys(p *lint.Pass) {
	shop := p.Shop()
	known := map[string][]string{} // by kinds, for a shop may have thousands of keys
	for _, f := range shop.Files {
		for ref := range lint.References(f) {
			if shop.Resolve(ref) != nil {
				continue
			}
			kinds := strings.Join(ref.Kinds, " or ")
			if known[kinds] == nil {
				known[kinds] = shop.KeysOf(ref.Kinds)
			}
			reportUnknown(p, ref.At, kinds, ref.Key, known[kinds])
		}
		for _, b := range f.Blocks {
			checkRuleNames(p, b)
			checkVesselNames(p, b)
		}
	}
}

// checkRuleNames looks at the rules named by the concessions of a recipe and
// the tunes of a shop.
func checkRuleNames(p *lint.Pass, b *schema.Block) {
	if !b.Is("recipe") && !b.Is("shop") {
		return
	}
	for _, inner := range b.Blocks {
		if inner.Spec.Label != schema.RuleName || inner.Label == "" {
			continue
		}
		if !p.HasRule(inner.Label) && p.Shop().Find("rule", inner.Label) == nil {
			names := append(p.RuleNames(), p.Shop().Keys("rule")...)
			reportUnknown(p, lint.AtLabel(inner), "rule", inner.Label, names)
		}
	}
}

// checkVesselNames looks at the steps, toppings and burns of a recipe that name
// a vessel: one that is on the shelf, but not in this recipe, is a slip too.
func checkVesselNames(p *lint.Pass, recipe *schema.Block) {
	if !recipe.Is("recipe") {
		return
	}
	var vessels []string
	for _, b := range recipe.Blocks {
		if b.Is("mold") || b.Is("container") || b.Is("taper") {
			vessels = append(vessels, b.Label)
		}
	}
	for _, b := range recipe.Blocks {
		if b.Spec.Attr("vessel") == nil {
			continue
		}
		v := b.Get("vessel")
		if !v.Known() || slices.Contains(vessels, v.Text()) || !onShelf(p.Shop(), v) {
			continue
		}
		p.Report(lint.Finding{
			At:      lint.AtValue(v),
			Message: fmt.Sprintf("%s is no vessel of this recipe; %s", v.Text(), schema.NearestOrKnown(v.Text(), vessels, "")),
		})
	}
}

func onShelf(shop *lint.Shop, v schema.Value) bool {
	return shop.Resolve(lint.Reference{Kinds: v.Spec.Refers, Key: v.Text()}) != nil
}

func reportUnknown(p *lint.Pass, at lint.Place, kind, key string, known []string) {
	f := lint.Finding{At: at}
	if len(known) == 0 {
		f.Message = fmt.Sprintf("no %s here is called %s: the shop has none at all, so write it down first", kind, key)
	} else {
		f.Message = fmt.Sprintf("no %s here is called %s; %s", kind, key, schema.NearestOrKnown(key, known, ""))
	}
	if nearest, _ := schema.Nearest(key, known); nearest != "" {
		f.Fixes = func() []schema.Fix {
			return []schema.Fix{{Title: "write " + nearest, Edits: []schema.Edit{{File: at.File, Span: at.Span, Text: schema.Quote(nearest)}}}}
		}
	}
	p.Report(f)
}

// KeyRepeated is a key given to two things of one kind.
var KeyRepeated = &lint.Rule{
	Name:   "key-repeated",
	Group:  Group,
	Title:  "two things of one kind with the same key",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutShop,
	Why: "A recipe that names this key may mean either of the two. The first counts, in the order of the files' names, " +
		"and figures written in the second are never used.",
	Remedy: "Give one of them another key, or remove the one that is out of date.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a wick that is already on the shelf",
		Text:  "wick \"flat-braid-24\" {\n  construction = \"flat braid\"\n}\n",
		Stock: "seal \"rubber-plug\" {\n  kind = \"plug\"\n}\n",
		Flags: []string{`"rubber-plug"`, `"flat-braid-24"`},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "a key of its own",
		Text:  "wick \"flat-braid-25\" {\n  construction = \"flat braid\"\n}\n",
	}},
	Check: checkRepeatedKeys,
}

func checkRepeatedKeys(p *lint.Pass) {
	shop := p.Shop()
	for _, f := range shop.Files {
		for _, b := range f.Blocks {
			if b.Spec.Label != schema.Defines || b.Label == "" {
				continue
			}
			first := shop.Find(b.Name(), b.Label)
			if b.Is("shop") {
				first = shop.Config
			}
			if first == b {
				continue
			}
			p.Report(lint.Finding{
				At:      lint.AtLabel(b),
				Message: fmt.Sprintf("there is already a %s called %s: give this one another key, or remove one of the two", b.Name(), first.Label),
				Notes:   []lint.Note{{Place: lint.AtLabel(first), Message: "the first stands here, and counts"}},
			})
		}
	}
}

// MadeForMissing is a recipe that does not say whom its candles are for.
var MadeForMissing = &lint.Rule{
	Name:   "made-for-missing",
	Group:  Group,
	Title:  "a recipe that does not say whom its candles are for",
	Levels: lint.Every(lint.Consider),
	Why: "A candle for one's own table, one made in a class and one that is sold are judged differently: a stranger who lights it knows nothing of how " +
		"it was made. Where nothing is said the strictest is taken, as made for sale.",
	Remedy: "Write made_for = \"sale\", \"class\" or \"own use\".",
	Source: formatSource,
	Bad: []lint.Example{{
		About:   "nothing said",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "  made_for = \"sale\"\n", To: ""}},
		Flags:   []string{`recipe "tide-pillar"`},
	}},
	Good: []lint.Example{{About: "made for sale, and said so", Recipe: "tide-pillar"}},
	Check: func(p *lint.Pass) {
		made := p.Recipe.Get("made_for")
		if !made.Absent() {
			return
		}
		p.Missing(lint.Finding{
			At:      lint.AtHeader(p.Recipe),
			Message: fmt.Sprintf("%s does not say whom it is made for, so it is judged as made for sale", p.Recipe.Title()),
			Fixes: func() []schema.Fix {
				return []schema.Fix{
					repair.Rewrite("write that it is made for sale", made, `"sale"`),
					repair.Rewrite("write that it is made in a class", made, `"class"`),
					repair.Rewrite("write that it is made for own use", made, `"own use"`),
				}
			},
		})
	},
}
