package lsp

import (
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// labels offers what may stand behind a block's word: keys, kinds of step,
// today, names of rules and of their options.
func (a *asked) labels() []offer {
	spec := schema.Top(a.name)
	if a.parent != nil {
		spec = a.parent.Block(a.name)
	}
	if spec == nil {
		return nil
	}
	var offers []offer
	switch spec.Label {
	case schema.Refers:
		offers = a.keys(spec.LabelRefers)
	case schema.StepKind:
		offers = a.kinds()
	case schema.DateLabel:
		offers = a.dates(false)
	case schema.RuleName:
		offers = a.ruleNames(spec)
	case schema.FreeLabel:
		if spec.ID != tuneOption {
			return nil
		}
		offers = a.optionLabels()
	default:
		return nil
	}
	rest := strings.TrimLeft(a.rest, " \t")
	free := rest == "" || rest[0] == '#' || strings.HasPrefix(rest, "//")
	if !a.quoted && !free && rest[0] != '{' {
		return nil // a label stands there already
	}
	for i := range offers {
		o := &offers[i]
		inner := spec
		if spec.Label == schema.StepKind {
			inner = schema.Step(o.label)
		}
		a.writeLabel(o, inner, free)
	}
	return offers
}

// writeLabel makes the text of an offer for a label: its quotes where they are
// missing, and where no brace follows, the block.
func (a *asked) writeLabel(o *offer, spec *schema.BlockSpec, free bool) {
	o.span = a.word
	before, behind := `"`, `"`
	if a.quoted {
		before = ""
	}
	if !free {
		if a.closed {
			behind = ""
		}
		o.text = before + o.label + behind
		if !a.quoted && strings.HasPrefix(a.rest, "{") {
			o.text += " "
		}
		return
	}
	if a.closed {
		o.span.End++ // the quote is written anew, since the block comes behind it
	}
	gap := " "
	if strings.HasPrefix(a.rest, " ") || strings.HasPrefix(a.rest, "\t") {
		gap = ""
		o.span.End += int32(len(a.rest) - len(strings.TrimLeft(a.rest, " \t")))
		gap = " "
	}
	o.text = before + o.label + behind + gap
	switch {
	case a.bodyFollows():
		o.text += "{"
	case a.snippets():
		n := 1
		body := o.body
		if body == "" {
			body = a.body(spec, &n)
		}
		o.text += "{\n" + body + "}"
		o.snippet = true
	case requires(spec):
		o.text += "{"
	default:
		o.text += "{}"
	}
	if strings.TrimLeft(a.rest, " \t") != "" {
		o.text += " " // before a comment
	}
}

// bodyFollows says whether the next line is set deeper, so that only the brace
// is missing.
func (a *asked) bodyFollows() bool {
	s := scanner{text: a.content, i: int(a.word.End)}
	s.i = s.lineEnd(s.i)
	return s.deeper(int(a.start))
}

func requires(spec *schema.BlockSpec) bool {
	for _, attr := range spec.Attrs {
		if attr.Required {
			return true
		}
	}
	return false
}

// kinds offers the kinds of step.
func (a *asked) kinds() []offer {
	var offers []offer
	for _, s := range a.stepOrder() {
		offers = append(offers, offer{label: s.spec.Kind, kind: protocol.CompletionItemKindEvent, detail: firstSentence(s.spec.Doc), why: s.why,
			of: described{What: "block", Name: s.spec.ID}})
	}
	return offers
}
