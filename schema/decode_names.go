package schema

import (
	"slices"
	"strings"
	"time"
)

// unknownBlock tells of a block whose name the format does not have there. A
// slip of the keys is read as what it is nearest to; anything else is left out.
func (r *reader) unknownBlock(source *blockSyntax, parent *BlockSpec) *BlockSpec {
	word := r.slice(source.name)
	if r.full() {
		r.untold++
		return nil
	}
	span := r.span(source.name)
	where, known := "at the top of a file", Language()
	if parent != nil {
		where, known = "in a "+parent.Name+" block", parent.Blocks
	}
	p := Problem{Rule: ruleUnknownBlock, Span: span}
	if parent != nil && parent.Attr(word) != nil {
		p.Message = "`" + word + "` is no block: write " + word + " = " + parent.Attr(word).example()
		r.report(p)
		return nil
	}
	if homes := homesOf(word); len(homes) > 0 {
		p.Message = article(word) + " block cannot stand " + where + ": it belongs in " + orList(homes)
		r.report(p)
		return nil
	}
	names := make([]string, len(known))
	for i, s := range known {
		names[i] = s.Name
	}
	p.Message = "`" + word + "` is no block that stands " + where
	if len(names) == 0 {
		p.Message = article(parent.Name) + " block holds no blocks, and `" + word + "` is one"
		r.report(p)
		return nil
	}
	p.Message += "; " + NearestOrKnown(word, names, "`")
	name, sure := Nearest(word, names)
	if name != "" {
		p.Fixes = []Fix{{Title: "write " + name, Safe: sure, Edits: []Edit{{r.file, span, name}}}}
	}
	r.report(p)
	if !sure {
		return nil
	}
	return specNamed(name, parent)
}

// homesOf is where a block of that name may stand.
func homesOf(name string) []string {
	var homes []string
	if Top(name) != nil {
		homes = append(homes, "the top of a file")
	}
	for _, s := range AllSpecs() {
		if s.Block(name) != nil && s.Label != NoLabel {
			homes = append(homes, article(s.Name)+" block")
		}
	}
	return homes
}

// unknownStep tells of a step the format does not have. A slip of the keys is
// read as the step it is nearest to.
func (r *reader) unknownStep(source *blockSyntax, kind string) *BlockSpec {
	if source.labels.n == 0 {
		r.report(Problem{Rule: ruleKeyForm, Span: r.span(source.name), Message: `this step does not say what is done: write step "pour", for instance`})
		return nil
	}
	_, span := r.label(source)
	p := Problem{Rule: ruleUnknownStep, Span: span,
		Message: Quote(kind) + " is no step that is known; " + NearestOrKnown(kind, StepKinds(), `"`)}
	name, sure := Nearest(kind, StepKinds())
	if name != "" {
		p.Fixes = []Fix{{Title: "write step " + Quote(name), Safe: sure, Edits: []Edit{{r.file, span, Quote(name)}}}}
	}
	r.report(p)
	if !sure {
		return nil
	}
	return Step(name)
}

// unknownAttr tells of an attribute that the block does not have. It is the
// spec of its nearest, where a slip of the keys explains it and the block does
// not have that one as well; nil otherwise.
func (r *reader) unknownAttr(b *Block, at Span, all []line) (place uint8, ok bool) {
	if r.full() {
		r.untold++
		return 0, false
	}
	word := r.slice(at)
	p := Problem{Rule: ruleUnknownAttr, Span: r.span(at)}
	who := b.Spec.Name
	if b.Spec.Kind != "" {
		who += " " + Quote(b.Spec.Kind)
	}
	if b.Spec.Block(word) != nil {
		p.Message = "`" + word + "` is a block: write " + word + " \"…\" { … } and what belongs to it between the braces"
		r.report(p)
		return 0, false
	}
	names := make([]string, len(b.Spec.Attrs))
	for i, s := range b.Spec.Attrs {
		names[i] = s.Name
	}
	p.Message = article(who) + " block has no `" + word + "`; " + NearestOrKnown(word, names, "`")
	name, sure := Nearest(word, names)
	taken := slices.ContainsFunc(all, func(other line) bool { return r.slice(other.name) == name })
	if name != "" && !taken {
		p.Fixes = []Fix{{Title: "write " + name, Safe: sure, Edits: []Edit{{r.file, p.Span, name}}}}
	}
	r.report(p)
	if !sure || taken {
		return 0, false
	}
	place, ok = b.Spec.place(name)
	before := slices.ContainsFunc(b.written(), func(a attribute) bool { return a.spec == place })
	return place, ok && !before
}

// judgeLabel tells what is wrong with the form of a block's label.
func (r *reader) judgeLabel(b *Block, source *blockSyntax) {
	if r.touched(b.LabelSpan) && source.labels.n > 0 {
		return
	}
	labels := of(r.tree.labels, source.labels)
	if len(labels) == 0 {
		if b.Spec.Label != NoLabel {
			r.report(Problem{Rule: ruleKeyForm, Span: b.LabelSpan,
				Message: "this " + b.Spec.Name + " block needs " + b.Spec.labelMeaning() + " in quotes behind its name, such as " + b.Spec.header()})
		}
		return
	}
	if len(labels) == 1 && b.Spec.Label != NoLabel && !bare(r.slice(labels[0])) && b.Spec.labelFits(b.Label) {
		return
	}
	p := Problem{Rule: ruleKeyForm, Span: b.LabelSpan}
	literal := Quote(b.Label)
	fix := Fix{Title: "write " + b.Spec.Name + " " + literal, Safe: true, Edits: []Edit{{r.file, b.LabelSpan, literal}}}
	switch {
	case b.Spec.Label == NoLabel:
		p.Message = article(b.Spec.Name) + " block has no label: take " + brief(r.file.Text.Slice(b.LabelSpan)) + " out"
		p.Fixes = []Fix{{Title: "take the label out", Safe: true, Edits: []Edit{{r.file, Span{b.Span.Start + int32(len(b.Spec.Name)), b.LabelSpan.End}, ""}}}}
	case bare(r.slice(labels[0])):
		p.Rule = ruleNotALiteral
		p.Message = brief(r.file.Text.Slice(b.LabelSpan)) + " is not in quotes: write " + b.Spec.Name + " " + literal
		p.Fixes = []Fix{fix}
	case len(labels) > 1:
		p.Message = article(b.Spec.Name) + " block has one label, and " + count(len(labels), "stands", "stand") + " here: keep " + literal + " or put all words between one pair of quotes"
	default:
		p.Message = Quote(b.Label) + " is not " + b.Spec.labelMeaning() + ": write " + b.Spec.header()
		if b.Spec.Label == Defines || b.Spec.Label == RuleName {
			p.Message = Quote(b.Label) + " cannot be a key: write small letters, digits and hyphens, such as " + b.Spec.header()
			if key := AsKey(b.Label); key != "" {
				p.Message = Quote(b.Label) + " cannot be a key: write small letters, digits and hyphens, such as " + Quote(key)
				// Others may refer to the key as it is, so this is not safe.
				p.Fixes = []Fix{{Title: "write " + b.Spec.Name + " " + Quote(key), Edits: []Edit{{r.file, b.LabelSpan, Quote(key)}}}}
			}
		}
	}
	r.report(p)
}

// labelMeaning says what the label of such a block is.
func (s *BlockSpec) labelMeaning() string {
	switch s.Label {
	case Defines:
		return "a key of its own"
	case Refers:
		return "the key of " + orList(withArticles(s.LabelRefers))
	case StepKind:
		return "what is done"
	case DateLabel:
		return "a date"
	case RuleName:
		return "the name of a rule"
	}
	return "a label"
}

// header is the first line of the block's example, up to its brace.
func (s *BlockSpec) header() string {
	header, _, _ := strings.Cut(s.Example, "{")
	return strings.TrimSpace(header)
}

func (s *BlockSpec) labelFits(label string) bool {
	switch s.Label {
	case Defines, RuleName:
		return IsKey(label)
	case DateLabel:
		_, err := time.Parse(time.DateOnly, label)
		return err == nil
	}
	return strings.TrimSpace(label) != ""
}

// IsKey says whether the text is a well-formed key: words of small letters and
// digits, joined by hyphens.
func IsKey(text string) bool {
	hyphen := true
	for i := 0; i < len(text); i++ {
		c := text[i]
		if c == '-' {
			if hyphen {
				return false
			}
			hyphen = true
			continue
		}
		if (c < 'a' || c > 'z') && (c < '0' || c > '9') {
			return false
		}
		hyphen = false
	}
	return !hyphen
}

// AsKey makes a key of a text, "" where nothing of it can stay.
func AsKey(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(c rune) bool {
		return (c < 'a' || c > 'z') && (c < '0' || c > '9')
	})
	return strings.Join(words, "-")
}
