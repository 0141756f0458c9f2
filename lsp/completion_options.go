package lsp

import (
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/rules/shoprule"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// tuned is the rule whose options the tune sets that the cursor stands in; nil:
// it stands in none, or in one of a rule that the shop did not write.
func (a *asked) tuned() *schema.Block {
	if len(a.path) < 2 || a.path[0].name != "shop" || a.path[1].name != "tune" {
		return nil
	}
	return a.shop.Find("rule", a.path[1].label)
}

// optionLabels offers the options of the tuned rule by name, last those that
// are set already.
func (a *asked) optionLabels() []offer {
	rule := a.tuned()
	if rule == nil {
		return nil
	}
	var offers, set []offer
	for _, o := range shoprule.OptionsOf(a.shop, rule) {
		add := a.optionOffer(rule, &o)
		add.body = "  is = " + placeholder(o.Literal()) + "\n"
		if a.setAlready(o.Name) {
			add.why = "set already"
			set = append(set, add)
			continue
		}
		offers = append(offers, add)
	}
	return append(offers, set...)
}

// optionBlocks offers those that are not set yet as whole blocks.
func (a *asked) optionBlocks() []offer {
	rule := a.tuned()
	if rule == nil {
		return nil
	}
	var offers []offer
	for _, o := range shoprule.OptionsOf(a.shop, rule) {
		if a.setAlready(o.Name) {
			continue
		}
		add := a.optionOffer(rule, &o)
		add.label = "option " + schema.Quote(o.Name)
		add.text, add.kind = add.label+" ", protocol.CompletionItemKindStruct
		if a.snippets() {
			add.text, add.snippet = add.label+" {\n  is = "+placeholder(o.Literal())+"\n}", true
		}
		offers = append(offers, add)
	}
	return offers
}

func (a *asked) optionOffer(rule *schema.Block, o *shoprule.Option) offer {
	return offer{label: o.Name, kind: protocol.CompletionItemKindConstant, detail: o.Type.String() + ", " + o.Is, why: strings.TrimSuffix(o.Title, "."),
		span: a.word, of: described{What: "option", In: rule.Label, Name: o.Name}}
}

func (a *asked) setAlready(option string) bool {
	for other := range a.block.Each("option") {
		if other != a.own && other.Label == option {
			return true
		}
	}
	return false
}

// placeholder is a literal of a snippet with what it says selected, quotes
// aside.
func placeholder(literal string) string {
	text, quoted := strings.CutPrefix(literal, `"`)
	if quoted {
		text = strings.TrimSuffix(text, `"`)
	}
	text = "${1:" + snippetText.Replace(text) + "}"
	if quoted {
		text = `"` + text + `"`
	}
	return text
}

// snippetText keeps the signs of a snippet from meaning anything (LSP 3.17,
// Snippet Syntax: "With `\` (backslash), you can escape `$`, `}`, and `\`").
var snippetText = strings.NewReplacer(`\`, `\\`, "$", `\$`, "}", `\}`)

// optionTaken makes what is taken behind the = of an option that which the
// rule's own is.
func (a *asked) optionTaken() {
	if a.attr == nil || a.attr.Type != schema.Literal {
		return
	}
	o, ok := shoprule.OptionOf(a.shop, a.tuned(), a.path[len(a.path)-1].label)
	if !ok {
		return
	}
	spec := *a.attr
	switch o.Type.Kind {
	case shoprule.YesNo:
		spec.Type = schema.YesNo
	case shoprule.Amount:
		spec.Type, spec.Dims, spec.Range = schema.Amount, []quantity.Dimension{o.Type.Dim}, o.Range
	}
	a.attr, a.option = &spec, &o
}

// asTheRuleSays offers what the option is in the rule, where nothing is typed
// yet that says otherwise.
func (a *asked) asTheRuleSays() []offer {
	rest := strings.TrimLeft(a.rest, " \t")
	if a.list || !a.quoted && rest != "" && !strings.ContainsRune("#/}", rune(rest[0])) {
		return nil // a value stands there already
	}
	literal := a.option.Literal()
	quoted := strings.HasPrefix(literal, `"`)
	if a.quoted && !quoted || !strings.HasPrefix(a.option.Is, a.typed(a.content, a.at)) || a.option.Type.Kind == shoprule.YesNo {
		return nil
	}
	o := offer{label: a.option.Is, text: literal, kind: protocol.CompletionItemKindValue, why: "as the rule says", span: a.word, of: described{What: "value"}}
	if quoted {
		o.text = a.inQuotes(a.option.Is)
	}
	return []offer{o}
}

// withDefault is offers behind the = of an option, with what the rule says.
func (a *asked) withDefault(offers []offer) []offer {
	if a.option == nil {
		return offers
	}
	for i := range offers {
		if a.option.Type.Kind == shoprule.YesNo && offers[i].label == a.option.Literal() {
			offers[i].why = "as the rule says"
		}
	}
	own := a.asTheRuleSays()
	if len(own) > 0 {
		offers = slices.DeleteFunc(offers, func(o offer) bool { return o.label == own[0].label })
	}
	if a.typed(a.content, a.at) == "" {
		return append(own, offers...)
	}
	return append(offers, own...)
}
