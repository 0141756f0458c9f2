package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/shoprule"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// completionTriggers are the characters after which completion is of use: a
// quote opens a key, a choice or an amount; a space stands before a unit, a
// label or a value; behind a per cent sign it has to be said of what.
// In the expressions of a rule a dot asks for what a block has, and a brace
// opens what a message fills in.
var completionTriggers = []string{`"`, " ", "%", ".", "{"}

type completionList struct {
	IsIncomplete bool             `json:"isIncomplete"`
	Items        []completionItem `json:"items"`
}

type completionItem struct {
	protocol.CompletionItem
	LabelDetails *completionLabelDetails `json:"labelDetails,omitempty"`
}

type completionParams struct {
	Position protocol.Position `json:"position"`
	Context  struct {
		TriggerKind      int    `json:"triggerKind"` // 1: asked for; 2: a trigger was typed; 3: asked again
		TriggerCharacter string `json:"triggerCharacter"`
	} `json:"context"`
}

// offer is one thing that may be written where the cursor stands.
type offer struct {
	label   string
	text    string // what is written; a snippet where snippet says so
	snippet bool
	body    string // of a block: the lines between its braces, as a snippet; "": those of its kind
	kind    protocol.CompletionItemKind
	detail  string // what it is: a title, what a value may be
	why     string // why it suits, or why it does not
	filter  string // what the typed text is held against; "": the label
	span    schema.Span
	of      described
}

// described is what the documentation of an offer is looked up by. It goes to
// the client and back.
type described struct {
	URI  string `json:"uri,omitempty"`
	What string `json:"what"` // attribute, block, key, rule, caution, value, name, function, option
	In   string `json:"in,omitempty"`
	Name string `json:"name,omitempty"`
	Why  string `json:"why,omitempty"`
}

func (h *here) completionAsked(_ context.Context, p *completionParams) (completionList, error) {
	a := h.asked(h.offset(p.Position))
	if p.Context.TriggerKind == 2 && p.Context.TriggerCharacter != `"` && a.place == inItem {
		return completionList{Items: []completionItem{}}, nil // a space, typed for its own sake
	}
	if c := p.Context.TriggerCharacter; p.Context.TriggerKind == 2 && (c == "." || c == "{") && a.spot == nil {
		return completionList{Items: []completionItem{}}, nil // of a figure, or of a block
	}
	return a.answer(), nil
}

// asked is what is known of the place where completion is asked for.
type asked struct {
	*here
	cursor
	content string
	at      int32
	parent  *schema.BlockSpec // the innermost block; nil at the top level, or where the format does not have it
	lost    bool              // it stands in a block that the format does not have
	block   *schema.Block     // the innermost block as it was read; nil where it could not be
	own     *schema.Block     // the block whose label is typed, as it was read; or nil
	attr    *schema.AttrSpec  // the attribute whose value is typed; or nil
	option  *shoprule.Option  // the option of a rule whose value is typed in a tune; or nil
	recipe  *schema.Block     // the recipe it stands in, or a test burn is of; nil: none, or an example
	look    *lint.View        // of the recipe
	made    *batch.Batch      // of the recipe
	spot    *shoprule.Spot    // what it stands in of an expression; nil: it stands in none
}

func (h *here) asked(at int32) *asked {
	content := h.text.String()
	a := &asked{here: h, cursor: lookAround(content, at), content: content, at: at}
	blocks := h.file.Blocks
	for i, head := range a.path {
		switch {
		case i == 0:
			a.parent = schema.Top(head.name)
		case a.parent != nil:
			a.parent = a.parent.Block(head.name)
		}
		if a.parent != nil && a.parent.Label == schema.StepKind {
			if step := schema.Step(head.label); step != nil {
				a.parent = step
			}
		}
		a.lost = a.parent == nil
		a.block = startingAt(blocks, head.start)
		blocks = nil
		if a.block != nil {
			blocks = a.block.Blocks()
		}
		if i == 0 && head.name == "recipe" && a.block.Is("recipe") {
			a.recipe = a.block
		}
	}
	if a.place == inLabel {
		if len(a.path) == 0 {
			blocks = h.file.Blocks
		}
		a.own = startingAt(blocks, a.start)
	}
	if a.place == inValue && a.parent != nil {
		a.attr = a.parent.Attr(a.name)
	}
	a.optionTaken()
	a.expression()
	if len(a.path) > 0 && a.path[0].name == "test_burn" && a.block.Is("test_burn") { // kept outside its recipe
		a.recipe = h.shop.Find("recipe", a.block.Get("recipe").Text())
	}
	if a.recipe != nil {
		a.look = h.view(a.recipe)
		a.made = batch.Of.In(a.look)
	}
	return a
}

func startingAt(blocks []*schema.Block, start int32) *schema.Block {
	for _, b := range blocks {
		if b.Span.Start == start {
			return b
		}
	}
	return nil
}

// units is the system the shop reads first.
func (a *asked) units() quantity.System {
	if a.shop.Config != nil && a.shop.Config.Get("units").Text() == "metric" {
		return quantity.Metric
	}
	return quantity.US
}

func (a *asked) answer() completionList {
	var offers []offer
	if !a.lost {
		switch {
		case a.spot != nil:
			offers = a.inExpression()
		case a.place == inItem:
			offers = a.items()
		case a.place == inLabel:
			offers = a.labels()
		case a.place == inValue:
			offers = a.withDefault(a.values())
		}
	}
	list := completionList{Items: make([]completionItem, 0, len(offers))}
	for i := range offers {
		item := a.item(&offers[i], i)
		if a.can.replacesWords() && !a.asWord(&item, &offers[i]) {
			continue
		}
		list.Items = append(list.Items, item)
	}
	// What is offered behind a number changes with the number.
	list.IsIncomplete = a.place == inValue && a.attr != nil && (a.attr.Type == schema.Amount || a.attr.Type == schema.Figure)
	return list
}

// item is an offer as the client takes it.
func (a *asked) item(o *offer, nth int) completionItem {
	can := &a.can.completion().CompletionItem
	sort := fmt.Sprintf("%05d", nth)
	o.of.URI, o.of.Why = a.uri, o.why
	item := completionItem{CompletionItem: protocol.CompletionItem{
		Label: o.label, Kind: &o.kind, SortText: &sort, Data: o.of,
		TextEdit: protocol.TextEdit{Range: a.rangeOf(o.span), NewText: o.text},
	}}
	if o.filter != "" {
		item.FilterText = &o.filter
	}
	if o.snippet {
		format := protocol.InsertTextFormatSnippet
		item.InsertTextFormat = &format
		if modes := can.InsertTextModeSupport; modes != nil && slices.Contains(modes.ValueSet, int(protocol.InsertTextModeAdjustIndentation)) {
			mode := protocol.InsertTextModeAdjustIndentation
			item.InsertTextMode = &mode
		}
	}
	detail := o.detail
	switch {
	case o.why == "":
	case can.LabelDetailsSupport:
		item.LabelDetails = &completionLabelDetails{Description: o.why}
	case detail == "":
		detail = o.why
	default:
		detail = strings.TrimSuffix(detail, ".") + ": " + o.why
	}
	if detail != "" {
		item.Detail = &detail
	}
	return item
}

// resolveCompletion adds the documentation of an item that the client shows.
func (s *snapshot) resolveCompletion(_ context.Context, item *completionItem) (*completionItem, error) {
	data, err := json.Marshal(item.Data)
	var of described
	if err != nil || json.Unmarshal(data, &of) != nil {
		return item, nil
	}
	h, ok := s.at(of.URI)
	if !ok {
		return item, nil
	}
	if text := h.describe(of); text != "" {
		if slices.Contains(s.can.completion().CompletionItem.DocumentationFormat, "markdown") {
			item.Documentation = protocol.MarkupContent{Kind: protocol.MarkupKindMarkdown, Value: text}
		} else {
			item.Documentation = plainText(text)
		}
	}
	return item, nil
}

// describe is what there is to read of an offer, in Markdown.
func (h *here) describe(of described) string {
	var parts []string
	if of.Why != "" {
		parts = append(parts, fullSentence(of.Why))
	}
	switch of.What {
	case "attribute":
		if spec := specOf(of.In); spec != nil {
			if attr := spec.Attr(of.Name); attr != nil {
				parts = append(parts, attr.Doc, "It takes "+attr.Takes()+".", hclText(attr.Name+" = "+attr.Example))
			}
		}
	case "block":
		if spec := specOf(of.Name); spec != nil {
			parts = append(parts, spec.Doc, hclText(spec.Example))
		}
	case "key":
		if b := h.shop.Find(of.In, of.Name); b != nil {
			parts = append(parts, hclText(h.beginning(b)))
		}
	case "rule":
		for _, r := range h.rules(h.shop) {
			if r.Name == of.Name {
				parts = append(parts, fullSentence(r.Title), r.Why, r.Remedy)
			}
		}
	case "option":
		parts = h.optionSays(h.shop.Find("rule", of.In), of.Name) // the why is among it
	case "name", "function":
		parts = append(parts, h.describeName(of)...)
	case "caution":
		if c := schema.CautionNamed(of.Name); c != nil {
			parts = append(parts, c.Words)
		}
	}
	return strings.Join(parts, "\n\n")
}

// mostShown is how many lines of a block are shown beside its key.
const mostShown = 30

// beginning is a block's text as it is written, cut where it is long.
func (h *here) beginning(b *schema.Block) string {
	text := b.File.Text.Slice(b.Span)
	lines := strings.SplitN(text, "\n", mostShown+1)
	if len(lines) > mostShown {
		lines[mostShown] = "  # …"
	}
	return strings.Join(lines, "\n")
}

func hclText(text string) string { return "```hcl\n" + strings.TrimRight(text, "\n") + "\n```" }

// fullSentence is a phrase with a capital and a full stop.
func fullSentence(phrase string) string {
	if phrase == "" {
		return ""
	}
	text := strings.ToUpper(phrase[:1]) + phrase[1:]
	if strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

func specOf(id string) *schema.BlockSpec {
	for _, s := range schema.AllSpecs() {
		if s.ID == id {
			return s
		}
	}
	return nil
}
