package lsp

import (
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/rules/shoprule"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// expression notes what stands before the cursor where that is in an
// expression of a shop rule.
func (a *asked) expression() {
	if a.parent == nil || len(a.path) == 0 || a.path[0].name != "rule" || a.start >= a.at {
		return
	}
	attr := a.parent.Attr(a.name)
	if attr == nil || attr.Type != schema.Expression {
		return
	}
	behind := int(a.start) + len(a.name)
	blank := len(a.content[behind:]) - len(strings.TrimLeft(a.content[behind:], " \t"))
	start := int32(behind + blank + 1)
	if start > a.at || a.content[start-1] != '=' {
		return
	}
	spot, ok := shoprule.Around(a.content, start, a.at)
	if !ok {
		return
	}
	a.spot, a.attr = &spot, attr
	a.word, a.quoted = spot.Word, spot.Quoted
	a.word.End, a.closed = a.wordEnd()
}

// wordEnd is where the word under the cursor ends: a name with its letters, a
// text at its closing quote, where it has one on the line.
func (a *asked) wordEnd() (end int32, closed bool) {
	i := int(a.at)
	if a.quoted {
		s := &scanner{text: a.content}
		if end, closed := s.quoteEnd(i); closed && s.paired(i) {
			return int32(end), true
		}
	}
	for i < len(a.content) && (isNameByte(a.content[i]) || '0' <= a.content[i] && a.content[i] <= '9') {
		i++
	}
	return int32(i), false
}

// draft is the rule in whose expressions the cursor stands.
func (a *asked) draft() *shoprule.Draft {
	var rule *schema.Block
	for _, b := range a.file.Blocks {
		if b.Is("rule") && b.Span.Start == a.path[0].start {
			rule = b
		}
	}
	return shoprule.DraftOf(a.shop, rule)
}

// inExpression offers what may stand at a place of an expression.
func (a *asked) inExpression() []offer {
	d, s := a.draft(), a.spot
	switch {
	case s.Quoted:
		return a.inText(d)
	case s.Dotted:
		return a.askedOf(d)
	case s.Open:
		return a.operands(d)
	}
	return nil
}

// operands offers what an expression, or a side of a sign, can start with: the
// blocks that the rule names already come first. An option is a figure of the
// rule itself, and has no names of the recipe in it.
func (a *asked) operands(d *shoprule.Draft) []offer {
	var offers []offer
	kinds := func(names []shoprule.Name) {
		for _, n := range names {
			offers = append(offers, a.nameOffer(n, "", protocol.CompletionItemKindVariable))
		}
	}
	bare, pointing := a.name == "is", a.name == "point_at" || a.name == "what"
	all, named := d.Kinds(), d.Named()
	filling := a.name == "message" && len(a.spot.Calls) == 0
	if filling {
		offers = append(offers, a.functions("show")...)
	}
	if !bare {
		kinds(all[:named])
	}
	for _, n := range d.Options() {
		if pointing || bare && a.ownOption(n.Word) {
			continue
		}
		o := a.nameOffer(n, "option", protocol.CompletionItemKindConstant)
		o.label, o.text = "option."+n.Word, "option."+n.Word
		offers = append(offers, o)
	}
	if !pointing {
		for _, f := range shoprule.Functions() {
			if (!bare || f.Name == "amount" || f.Name == "degrees") && !(filling && f.Name == "show") {
				offers = append(offers, a.functions(f.Name)...)
			}
		}
	}
	if !bare {
		kinds(all[named:])
	}
	if !pointing && !filling {
		for _, word := range []string{"true", "false"} {
			offers = append(offers, offer{label: word, text: word, kind: protocol.CompletionItemKindKeyword, span: a.word})
		}
	}
	return offers
}

// ownOption says whether the cursor stands in the option of that name.
func (a *asked) ownOption(name string) bool {
	return a.path[len(a.path)-1].label == name
}

// functions offers a function, with its brackets where none follow.
func (a *asked) functions(name string) []offer {
	f, _ := shoprule.FunctionNamed(name)
	o := offer{label: f.Name, text: f.Name, kind: protocol.CompletionItemKindFunction, detail: "(" + f.Takes + ") gives " + f.Gives, span: a.word,
		of: described{What: "function", Name: f.Name}}
	switch rest := strings.TrimLeft(a.content[a.word.End:], " \t"); {
	case strings.HasPrefix(rest, "("):
	case a.snippets():
		o.snippet, o.text = true, f.Name+functionRooms[f.Name]
	default:
		o.text += "("
	}
	return []offer{o}
}

// functionRooms are the brackets of the functions with places to type in.
var functionRooms = map[string]string{
	"amount": `("$1")`, "degrees": `("$1")`, "show": "($1)", "includes": `($1, "$2")`, "count": `("$1")`, "least": "($1, $2)", "most": "($1, $2)", "abs": "($1)",
}

// askedOf offers what can be asked of what stands before the dot. Where a sign
// stands before that, what measures the same comes first; where a fix sets it,
// what can be set.
func (a *asked) askedOf(d *shoprule.Draft) []offer {
	names, _ := d.Asked(a.spot.Base)
	type ranked struct {
		offer
		rank int
	}
	var list []ranked
	of := ""
	if t, ok := d.TypeOf(a.spot.Base); ok {
		of = t.Of
	}
	for _, n := range names {
		kind, what := protocol.CompletionItemKindField, of
		if a.spot.Base == "option" {
			kind, what = protocol.CompletionItemKindConstant, "option"
		}
		r := ranked{a.nameOffer(n, what, kind), 1}
		if a.name == "what" && n.Set {
			r.rank = 0
		} else if left := a.spot.Left; left != "" && n.Type.Kind != shoprule.Thing {
			r.rank = 2
			if d.Fits(left, a.spot.Sign, a.spot.Base+"."+n.Word) {
				r.rank = 0
			}
		}
		list = append(list, r)
	}
	slices.SortStableFunc(list, func(x, y ranked) int { return x.rank - y.rank })
	var offers []offer
	for i := range list {
		offers = append(offers, list[i].offer)
	}
	return offers
}

// nameOffer is a name as it is offered, with what it gives. Of is the kind of
// block it is asked of.
func (a *asked) nameOffer(n shoprule.Name, of string, kind protocol.CompletionItemKind) offer {
	o := offer{label: n.Word, text: n.Word, kind: kind, detail: n.Gives, span: a.word, of: described{What: "name", In: of, Name: n.Word}}
	switch {
	case of == "option":
		o.detail += ", " + strings.Join(n.Words, "")
		o.why, o.of = n.Doc, described{What: "value"}
	case of == "" && n.Type.Kind == shoprule.Thing:
		o.detail = firstSentence(n.Doc)
	case n.Word == "low" || n.Word == "high":
		o.of = described{What: "value"}
		o.why = n.Doc
	}
	return o
}

// inText offers what a text in quotes may be: a word that the other side of
// the sign can be, the key of something on the shelves, a kind of block or
// step, an amount.
func (a *asked) inText(d *shoprule.Draft) []offer {
	s := a.spot
	var words []string
	var kinds []string
	call := shoprule.Call{}
	if n := len(s.Calls); n > 0 {
		call = s.Calls[n-1]
	}
	switch {
	case call.Name == "amount" || call.Name == "degrees":
		return a.amountsFor(d, call)
	case call.Name == "count" && len(call.Before) == 0:
		words = shoprule.Counted()
	case call.Name == "count":
		words = schema.StepKinds()
	case call.Name == "includes" && len(call.Before) == 1:
		words, kinds = d.Words(call.Before[0])
	case s.Sign == "==" || s.Sign == "!=":
		words, kinds = d.Words(s.Left)
	case a.name == "to" && a.block.Is("set"):
		what := a.block.Get("what").Written()
		words, _ = d.Words(what)
		kinds = d.Keys(what)
	}
	var offers []offer
	for _, word := range words {
		if word != "" {
			offers = append(offers, offer{label: word, kind: protocol.CompletionItemKindEnumMember, of: described{What: "value"}})
		}
	}
	if len(kinds) > 0 {
		offers = append(offers, a.keys(kinds)...)
	}
	for i := range offers {
		offers[i].text, offers[i].span = a.inQuotes(offers[i].label), a.word
	}
	return offers
}

// amountsFor offers the units of what the other side of the sign measures;
// where that is not known, all.
func (a *asked) amountsFor(d *shoprule.Draft, call shoprule.Call) []offer {
	spec := &schema.AttrSpec{Name: call.Name, Type: schema.Amount, Dims: []quantity.Dimension{quantity.Weight, quantity.Volume, quantity.Length,
		quantity.Temperature, quantity.Time, quantity.Proportion, quantity.Share, quantity.Density, quantity.Count}}
	if call.Name == "degrees" {
		spec.Dims = []quantity.Dimension{quantity.Difference}
	} else if t, ok := d.TypeOf(call.Left); ok && t.Kind == shoprule.Amount {
		spec.Dims = []quantity.Dimension{t.Dim}
	}
	if a.typed(a.content, a.at) == "" {
		return nil
	}
	a.attr, a.place = spec, inValue
	return a.amounts()
}

// describeName is what there is to read of a name or a function of a rule.
func (h *here) describeName(of described) []string {
	if of.What == "function" {
		f, ok := shoprule.FunctionNamed(of.Name)
		if !ok {
			return nil
		}
		return []string{code(f.Name+"("+f.Takes+")") + " gives " + f.Gives + ".", f.Doc}
	}
	n, ok := shoprule.NameOf(of.In, of.Name)
	if !ok {
		return nil
	}
	return append([]string{fullSentence(h.givesText(&n))}, nameDoc(&n)...)
}

// givesText is what a name gives, and where that is from.
func (h *here) givesText(n *shoprule.Name) string {
	return spaced(n.Gives + fromText[n.From])
}

// fromText is how it is said where a name's value comes from.
var fromText = map[string]string{
	"recipe": ", as the recipe says", "shelves": ", as its item on the shelf says", "reckoned": ", reckoned", "this rule": ", of this rule's own",
}

// nameDoc is what a name means, and the words it can be.
func nameDoc(n *shoprule.Name) []string {
	says := []string{n.Doc}
	if n.From != "this rule" && len(n.Words) > 0 && len(n.Words) <= 24 {
		var words []string
		for _, w := range n.Words {
			if w != "" {
				words = append(words, w)
			}
		}
		says = append(says, "One of: "+strings.Join(words, ", ")+".")
	}
	return says
}
