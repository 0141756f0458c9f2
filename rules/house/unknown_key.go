package house

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// UnknownKey is a reference to nothing.
var UnknownKey = &lint.Rule{
	Name:   "unknown-key",
	Group:  Group,
	Title:  "a name that nothing in the shop has",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFile,
	Why: "A recipe that names a wax nobody has written down cannot be checked against that wax: not its limit, not its temperatures. " +
		"Every rule about it stays silent until the name leads somewhere.",
	Remedy: "Spell the key as the stock file does, or write the item down in the stock with the figures of its sheet.",
	Source: formatSource,
	Bad: []lint.Example{{
		About:   "a misspelled wick",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "with = \"rubber-plug\"", To: "with = \"ruber-plug\""}},
		Flags:   []string{`"ruber-plug"`},
	}},
	Good:  []lint.Example{{About: "spelled as in the stock file", Recipe: "tide-pillar"}},
	Check: checkUnknownKeys,
}

func checkUnknownKeys(p *lint.Pass) {
	for ref := range lint.References(p.File) {
		if !p.Leads(ref) {
			reportUnknown(p, ref.At, strings.Join(ref.Kinds, " or "), ref.Key, p.Keys(ref.Kinds...))
		}
	}
	for example, ref := range lint.InExamples(p.File) {
		if own := ownKeys(example, ref.Kinds); !slices.Contains(own, ref.Key) && !p.Leads(ref) {
			reportUnknown(p, ref.At, strings.Join(ref.Kinds, " or "), ref.Key, append(own, p.Keys(ref.Kinds...)...))
		}
	}
	for _, b := range p.File.Blocks {
		checkRuleNames(p, b)
		checkVesselNames(p, b)
	}
}

// ownKeys are the keys that the example of a shop rule brings along.
func ownKeys(example *schema.Block, kinds []string) (keys []string) {
	for _, b := range example.Blocks() {
		if slices.Contains(kinds, b.Name()) {
			keys = append(keys, b.Label)
		}
	}
	return keys
}

// checkRuleNames looks at the rules named by the concessions of a recipe and
// the tunes of a shop.
func checkRuleNames(p *lint.Pass, b *schema.Block) {
	if !b.Is("recipe") && !b.Is("shop") {
		return
	}
	for _, inner := range b.Blocks() {
		if inner.Spec.Label != schema.RuleName || inner.Label == "" || p.HasRule(inner.Label) {
			continue
		}
		if _, own := p.Stock("rule", inner.Label); !own {
			reportUnknown(p, lint.AtLabel(inner), "rule", inner.Label, append(p.RuleNames(), p.Keys("rule")...))
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
	for _, b := range recipe.Blocks() {
		if b.Is("mold") || b.Is("container") || b.Is("taper") {
			vessels = append(vessels, b.Label)
		}
	}
	for _, b := range recipe.Blocks() {
		if b.Spec.Attr("vessel") == nil {
			continue
		}
		v := b.Get("vessel")
		if !v.Known() || slices.Contains(vessels, v.Text()) || !p.Leads(lint.Reference{Kinds: v.Spec.Refers, Key: v.Text()}) {
			continue
		}
		p.Report(lint.Finding{
			At:      lint.AtValue(v),
			Message: fmt.Sprintf("%s is no vessel of this recipe; %s", v.Text(), schema.NearestOrKnown(v.Text(), vessels, "")),
		})
	}
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
