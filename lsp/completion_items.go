package lsp

import (
	"fmt"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// items offers what may start where the cursor stands: the attributes that are
// not written yet, the required ones first, and the blocks. Behind a block come
// blocks first.
func (a *asked) items() []offer {
	rest := strings.TrimLeft(a.rest, " \t")
	named := strings.HasPrefix(rest, "=") || strings.HasPrefix(rest, `"`) || strings.HasPrefix(rest, "{")
	alone := rest == "" || rest[0] == '#' || strings.HasPrefix(rest, "//") || a.inline && rest[0] == '}'
	if !a.fresh || !named && !alone || named && a.word.Len() == 0 {
		return nil
	}
	var attrs, blocks []offer
	if !strings.HasPrefix(rest, `"`) && !strings.HasPrefix(rest, "{") {
		attrs = a.attributes(named)
	}
	if !strings.HasPrefix(rest, "=") && !a.inline {
		blocks = a.blocks(named)
	}
	if n := len(a.path); n > 0 && len(a.path[n-1].blocks) > 0 {
		return append(blocks, attrs...)
	}
	return append(attrs, blocks...)
}

// attributes are those that the block does not have yet. Where an = follows
// already, only the name is written.
func (a *asked) attributes(named bool) []offer {
	if a.parent == nil {
		return nil
	}
	written := slices.Clone(a.path[len(a.path)-1].attrs)
	if a.block != nil && a.block.Spec == a.parent {
		for v := range a.block.Attrs() {
			if !v.NameSpan().Touches(a.at) {
				written = append(written, v.Spec.Name)
			}
		}
	}
	var required, others []offer
	for _, attr := range a.parent.Attrs {
		if slices.Contains(written, attr.Name) {
			continue
		}
		o := offer{label: attr.Name, kind: protocol.CompletionItemKindProperty, detail: briefly(attr.Takes()), span: a.word,
			of: described{What: "attribute", In: a.parent.ID, Name: attr.Name}}
		switch {
		case named:
			o.text = attr.Name
		case a.snippets():
			n := 1
			o.text, o.snippet = attr.Name+" = "+a.room(attr, &n), true
		default:
			o.text = attr.Name + " = "
		}
		if attr.Required {
			o.why = "required"
			required = append(required, o)
			continue
		}
		others = append(others, o)
	}
	return append(required, others...)
}

func (a *asked) snippets() bool {
	return a.can.completion().CompletionItem.SnippetSupport
}

// blocks are those that may stand here, in the order in which they are likely.
func (a *asked) blocks(named bool) []offer {
	var offers []offer
	for _, spec := range a.blockOrder() {
		o := offer{label: spec.Name, kind: protocol.CompletionItemKindStruct, detail: firstSentence(spec.Doc), span: a.word, of: described{What: "block", Name: spec.ID}}
		switch {
		case named:
			o.text = spec.Name
		case !a.snippets():
			o.text = spec.Name + " "
		case spec.Label == schema.NoLabel:
			o.text, o.snippet = spec.Name+" {\n  $0\n}", true
		default:
			n := 2
			o.text, o.snippet = fmt.Sprintf("%s \"%s\" {\n%s}", spec.Name, a.labelRoom(spec), a.body(spec, &n)), true
		}
		if spec.Label == schema.StepKind && !named {
			offers = append(offers, a.nextSteps()...)
		}
		if spec.ID == tuneOption && !named {
			offers = append(offers, a.optionBlocks()...)
		}
		offers = append(offers, o)
	}
	return offers
}

// nextSteps offers the steps that the recipe still needs, whole.
func (a *asked) nextSteps() []offer {
	var offers []offer
	for _, s := range a.stepOrder() {
		if !s.needed || len(offers) == 3 {
			break
		}
		label := `step "` + s.spec.Kind + `"`
		o := offer{label: label, text: label + " ", kind: protocol.CompletionItemKindStruct, detail: firstSentence(s.spec.Doc), why: s.why, span: a.word, of: described{What: "block", Name: s.spec.ID}}
		if a.snippets() {
			n := 1
			o.text, o.snippet = label+" {\n"+a.body(s.spec, &n)+"}", true
		}
		offers = append(offers, o)
	}
	return offers
}

// blockOrder is the blocks that may stand here. What stands only once and is
// there is left out. A block mostly follows one of its own kind on the
// shelves; in a recipe mostly the next in the order of the language.
func (a *asked) blockOrder() []*schema.BlockSpec {
	specs := schema.Language()
	var before []string
	if a.parent != nil {
		specs = a.parent.Blocks
		before = a.path[len(a.path)-1].blocks
	} else {
		for _, b := range a.file.Blocks {
			if b.Span.End <= a.at {
				before = append(before, b.Name())
			}
		}
	}
	var order []*schema.BlockSpec
	for _, s := range specs {
		if s.Once && (a.parent == nil && a.shop.Config != nil || slices.Contains(before, s.Name)) {
			continue
		}
		order = append(order, s)
	}
	if len(before) == 0 {
		return order
	}
	last := before[len(before)-1]
	at := slices.IndexFunc(order, func(s *schema.BlockSpec) bool { return s.Name == last })
	if at < 0 {
		return order
	}
	if a.parent == nil || last == "step" || last == "test_burn" || a.parent.Name != "recipe" {
		return append([]*schema.BlockSpec{order[at]}, append(slices.Clone(order[:at]), order[at+1:]...)...)
	}
	order = append(slices.Clone(order[at+1:]), order[:at+1]...)
	if last == "mold" || last == "container" || last == "taper" { // a second kind of vessel is rare
		slices.SortStableFunc(order, func(x, y *schema.BlockSpec) int {
			return trueFirst(x.Label == schema.StepKind, y.Label == schema.StepKind)
		})
	}
	return order
}

// trueFirst orders by whether something holds.
func trueFirst(x, y bool) int {
	switch {
	case x == y:
		return 0
	case x:
		return -1
	}
	return 1
}

// labelRoom is the first place of a snippet: where the label goes. The key of
// a new block has a stand-in that is not a key by itself.
func (a *asked) labelRoom(spec *schema.BlockSpec) string {
	switch spec.Label {
	case schema.Defines:
		return "${1:" + spec.Name + "-key}"
	case schema.DateLabel:
		return "${1:" + a.today + "}"
	}
	return "$1"
}

// body is the lines between the braces of a new block, each attribute with
// room for its value: those that the block needs, and those that its example
// in the language shows. n is the number of the next place of the snippet.
func (a *asked) body(spec *schema.BlockSpec, n *int) string {
	attrs := usualAttrs(spec)
	width := 0
	for _, attr := range attrs {
		width = max(width, len(attr.Name))
	}
	var b strings.Builder
	for _, attr := range attrs {
		fmt.Fprintf(&b, "  %-*s = %s\n", width, attr.Name, a.room(attr, n))
	}
	if len(attrs) == 0 {
		b.WriteString("  $0\n")
	}
	return b.String()
}

// usualAttrs are the attributes that a new block of the kind is given.
func usualAttrs(spec *schema.BlockSpec) []*schema.AttrSpec {
	shown := shownIn(spec.Example)
	switch spec.ID {
	case "recipe":
		shown = []string{"title", "makes", "made_for"} // the rest of a recipe is blocks
	case "recipe concession":
		shown = []string{"reason"} // most end when they are removed
	}
	var attrs []*schema.AttrSpec
	for _, name := range shown {
		if attr := spec.Attr(name); attr != nil && attr.Type != schema.Prose || attr != nil && spec.Kind == "" {
			attrs = append(attrs, attr)
		}
	}
	for _, attr := range spec.Attrs {
		if attr.Required && !slices.Contains(attrs, attr) {
			attrs = append(attrs, attr)
		}
	}
	return attrs
}

// shownIn are the names of the attributes directly in an example block.
func shownIn(example string) []string {
	c := lookAround(example, int32(len(strings.TrimRight(example, "}\n "))))
	for len(c.path) > 1 {
		c.path = c.path[:len(c.path)-1]
	}
	if len(c.path) == 0 {
		return nil
	}
	return c.path[0].attrs
}

// room is an attribute's value with a place to type in: between quotes, in
// brackets, or one of true and false, the more careful one first.
func (a *asked) room(attr *schema.AttrSpec, n *int) string {
	nth := *n
	*n++
	switch {
	case attr.Type == schema.YesNo:
		switch attr.Name {
		case "water_based", "wick_hole", "in_reach":
			return fmt.Sprintf("${%d|true,false|}", nth)
		}
		return fmt.Sprintf("${%d|false,true|}", nth)
	case attr.Type == schema.Date:
		return fmt.Sprintf("\"${%d:%s}\"", nth, a.today)
	case strings.HasPrefix(attr.Example, "["):
		return fmt.Sprintf("[\"$%d\"]", nth)
	case strings.HasPrefix(attr.Example, `"`):
		return fmt.Sprintf("\"$%d\"", nth)
	}
	return fmt.Sprintf("$%d", nth)
}

// briefly is a text cut where a list of choices would fill the screen.
func briefly(text string) string {
	const most = 80
	if len(text) <= most {
		return text
	}
	cut := strings.LastIndex(text[:most], ",")
	if cut < 0 {
		return text
	}
	return text[:cut+1] + " …"
}

func firstSentence(text string) string {
	if at := strings.Index(text, ". "); at >= 0 {
		return text[:at+1]
	}
	return text
}
