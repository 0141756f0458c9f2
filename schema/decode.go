package schema

import (
	"strings"

	"wickrule/schema/quantity"
)

// top reads the whole file's blocks from its syntax. Nothing of the tree is
// kept.
func (r *reader) top() []*Block {
	blocks, lines, outer := len(r.tree.blocks), len(r.tree.lines), int(r.tree.top.blocks.n)
	r.blocks = make([]Block, 0, blocks)
	r.file.inner = make([]*Block, 0, blocks-outer)
	r.file.attrs = make([]attribute, 0, lines)
	r.amounts = make([]quantity.Single, 0, lines*5/8+1)
	for _, l := range of(r.tree.lines, r.tree.top.lines) {
		r.report(Problem{Rule: ruleUnknownAttr, Span: r.span(l.name),
			Message: "`" + r.slice(l.name) + "` stands outside every block: move it into the recipe or stock item it belongs to"})
	}
	return r.inside(r.tree.top, make([]*Block, 0, outer), nil, nil)
}

// inside reads the blocks that stand in a body onto the end of a list that has
// room for them. Blocks that the format does not have are told and left out.
func (r *reader) inside(from body, read []*Block, parent *Block, spec *BlockSpec) []*Block {
	sources := of(r.tree.blocks, from.blocks)
	for i := range sources {
		source := &sources[i]
		inner := r.specOf(source, spec)
		if inner == nil {
			r.file.Whole = false // it may be what would be missed
			continue
		}
		b := r.block(source, inner, parent)
		if inner.Once {
			for _, before := range read {
				if before.Spec == inner {
					r.report(Problem{Rule: ruleBlockTwice, Span: b.Header(), Message: "a second " + inner.Name + " block stands here; one is allowed, and the first counts"})
					break
				}
			}
		}
		read = append(read, b)
	}
	return read
}

// specOf finds what a block is, by its name and for a step by its kind. nil:
// nothing the format has; that has been told.
func (r *reader) specOf(source *blockSyntax, parent *BlockSpec) *BlockSpec {
	spec := specNamed(r.slice(source.name), parent)
	if spec == nil {
		spec = r.unknownBlock(source, parent)
	}
	if spec == nil || spec.Label != StepKind {
		return spec
	}
	kind, _ := r.label(source)
	if step := Step(kind); step != nil {
		return step
	}
	return r.unknownStep(source, kind)
}

func specNamed(name string, parent *BlockSpec) *BlockSpec {
	if parent == nil {
		return Top(name)
	}
	return parent.Block(name)
}

func (r *reader) block(source *blockSyntax, spec *BlockSpec, parent *Block) *Block {
	r.blocks = append(r.blocks, Block{Spec: spec, File: r.file, Parent: parent})
	b := &r.blocks[len(r.blocks)-1]
	b.Label, b.LabelSpan = r.label(source)
	if spec.Kind != "" {
		b.Label = spec.Kind // also where a slip of the keys stands for it
	}
	name := r.span(source.name)
	b.LabelSpan.End = max(name.End, b.LabelSpan.End)
	b.Span = Span{name.Start, max(b.LabelSpan.End, r.back(source.shut.End))}
	b.Body = Span{b.Span.End, b.Span.End}
	if r.byteAt(source.open.Start) == '{' {
		b.Body.Start = r.back(source.open.End)
		b.Body.End = b.Span.End
		if r.byteAt(source.shut.Start) == '}' {
			b.Body.End = r.back(source.shut.Start)
		}
		b.Body.End = max(b.Body.Start, b.Body.End)
		b.Span.End = max(b.Span.End, b.Body.End)
	}
	r.judgeLabel(b, source)
	r.attributes(b, of(r.tree.lines, source.body.lines))
	r.blocksInside(b, source.body)
	return b
}

// blocksInside reads the blocks of a block. Room for all of them is taken
// first, so that they stand side by side whatever they hold themselves.
func (r *reader) blocksInside(b *Block, from body) {
	if from.blocks.n == 0 {
		return
	}
	first := len(r.file.inner)
	end := first + int(from.blocks.n)
	r.file.inner = r.file.inner[:end]
	read := r.inside(from, r.file.inner[first:first:end], b, b.Spec)
	b.inner = run{int32(first), int32(len(read))}
}

func (r *reader) byteAt(at int32) byte {
	if at < 0 || int(at) >= len(r.seen) {
		return 0
	}
	return r.seen[at]
}

// label is a block's label and where it stands. Of several the span covers
// all; bare words are taken as one label.
func (r *reader) label(source *blockSyntax) (string, Span) {
	labels := of(r.tree.labels, source.labels)
	if len(labels) == 0 {
		return "", r.span(source.name)
	}
	span := r.span(Span{labels[0].Start, labels[len(labels)-1].End})
	text := r.slice(labels[0])
	if bare(text) {
		last := 0
		for last+1 < len(labels) && bare(r.slice(labels[last+1])) {
			last++
		}
		return r.slice(Span{labels[0].Start, labels[last].End}), span
	}
	return unquote(strings.TrimSuffix(text[1:], `"`)), span
}

func bare(label string) bool { return label == "" || label[0] != '"' }

// slice is the parsed text at a place.
func (r *reader) slice(s Span) string {
	start := min(max(int(s.Start), 0), len(r.seen))
	return r.seen[start:min(max(int(s.End), start), len(r.seen))]
}

// attributes reads the `name = value` lines of a block, in the order written.
func (r *reader) attributes(b *Block, lines []line) {
	b.attrs.first = int32(len(r.file.attrs))
	for i := range lines {
		l := &lines[i]
		spec, ok := b.Spec.place(r.slice(l.name))
		if !ok {
			if spec, ok = r.unknownAttr(b, l.name, lines); ok {
				// Named by its nearest, but not taken for it: what it says is not read.
				r.addAttr(b, attribute{spec: spec, nameAt: r.back(l.name.Start), span: r.valueSpan(&l.value), state: Broken})
			}
			continue
		}
		at := r.addAttr(b, attribute{spec: spec, nameAt: r.back(l.name.Start)})
		r.value(b, at, &l.value)
	}
	if r.file.Whole {
		r.missing(b)
	}
}

func (r *reader) addAttr(b *Block, a attribute) *attribute {
	r.file.attrs = append(r.file.attrs, a)
	b.attrs.n++
	return &r.file.attrs[len(r.file.attrs)-1]
}

// missing tells of the attributes a block cannot do without.
func (r *reader) missing(b *Block) {
	for _, spec := range b.Spec.Attrs {
		if !spec.Required || b.Get(spec.Name).State() != Absent {
			continue
		}
		r.report(Problem{Rule: ruleAttrMissing, Span: b.Header(),
			Message: b.describe() + " does not say its `" + spec.Name + "`, for instance " + spec.Name + " = " + spec.Example})
	}
}

// describe names a block the way it is typed: wax "northlight-pillar".
func (b *Block) describe() string {
	if b.Label == "" {
		return "this " + b.Spec.Name + " block"
	}
	return b.Spec.Name + " " + Quote(b.Label)
}
