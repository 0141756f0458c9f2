package schema

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wickrule/schema/quantity"
)

// top reads the whole file's blocks from what the parser made of it. Nothing
// of the parser's tree is kept.
func (r *reader) top(body *hclsyntax.Body) []*Block {
	blocks, attrs := size(body)
	r.blocks = make([]Block, 0, blocks)
	r.file.inner = make([]*Block, 0, blocks-len(body.Blocks))
	r.file.attrs = make([]attribute, 0, attrs)
	r.amounts = make([]quantity.Single, 0, attrs*5/8+1)
	for _, a := range body.Attributes {
		r.report(Problem{Rule: ruleUnknownAttr, Span: r.span(a.NameRange),
			Message: "`" + a.Name + "` stands outside every block: move it into the recipe or stock item it belongs to"})
	}
	return r.inside(body, make([]*Block, 0, len(body.Blocks)), nil, nil)
}

// size counts the blocks and attributes of a body and all it holds.
func size(body *hclsyntax.Body) (blocks, attrs int) {
	blocks, attrs = len(body.Blocks), len(body.Attributes)
	for _, b := range body.Blocks {
		inner, lines := size(b.Body)
		blocks += inner
		attrs += lines
	}
	return blocks, attrs
}

// inside reads the blocks that stand in a body onto the end of a list that has
// room for them. Blocks that the format does not have are told and left out.
func (r *reader) inside(body *hclsyntax.Body, read []*Block, parent *Block, spec *BlockSpec) []*Block {
	for _, source := range body.Blocks {
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
func (r *reader) specOf(source *hclsyntax.Block, parent *BlockSpec) *BlockSpec {
	spec := specNamed(source.Type, parent)
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

func (r *reader) block(source *hclsyntax.Block, spec *BlockSpec, parent *Block) *Block {
	r.blocks = append(r.blocks, Block{Spec: spec, File: r.file, Parent: parent})
	b := &r.blocks[len(r.blocks)-1]
	b.Label, b.LabelSpan = r.label(source)
	if spec.Kind != "" {
		b.Label = spec.Kind // also where a slip of the keys stands for it
	}
	name := r.span(source.TypeRange)
	b.LabelSpan.End = max(name.End, b.LabelSpan.End)
	b.Span = Span{name.Start, max(b.LabelSpan.End, r.back(source.CloseBraceRange.End.Byte))}
	b.Body = Span{b.Span.End, b.Span.End}
	if open := source.OpenBraceRange; r.byteAt(open.Start.Byte) == '{' {
		b.Body.Start = r.back(open.End.Byte)
		b.Body.End = b.Span.End
		if shut := source.CloseBraceRange; r.byteAt(shut.Start.Byte) == '}' {
			b.Body.End = r.back(shut.Start.Byte)
		}
		b.Body.End = max(b.Body.Start, b.Body.End)
		b.Span.End = max(b.Span.End, b.Body.End)
	}
	r.judgeLabel(b, source)
	r.attributes(b, source.Body)
	r.blocksInside(b, source.Body)
	return b
}

// blocksInside reads the blocks of a block. Room for all of them is taken
// first, so that they stand side by side whatever they hold themselves.
func (r *reader) blocksInside(b *Block, body *hclsyntax.Body) {
	if len(body.Blocks) == 0 {
		return
	}
	first := len(r.file.inner)
	end := first + len(body.Blocks)
	r.file.inner = r.file.inner[:end]
	read := r.inside(body, r.file.inner[first:first:end], b, b.Spec)
	b.inner = run{int32(first), int32(len(read))}
}

func (r *reader) byteAt(at int) byte {
	if at < 0 || at >= len(r.seen) {
		return 0
	}
	return r.seen[at]
}

// label is a block's label and where it stands. Of several the span covers
// all; bare words are taken as one label.
func (r *reader) label(source *hclsyntax.Block) (string, Span) {
	ranges := source.LabelRanges
	if len(ranges) == 0 {
		return "", r.span(source.TypeRange)
	}
	span := r.span(hcl.RangeBetween(ranges[0], ranges[len(ranges)-1]))
	text := r.slice(ranges[0])
	if bare(text) {
		last := 0
		for last+1 < len(ranges) && bare(r.slice(ranges[last+1])) {
			last++
		}
		return r.slice(hcl.RangeBetween(ranges[0], ranges[last])), span
	}
	return unquote(strings.TrimSuffix(text[1:], `"`)), span
}

func bare(label string) bool { return label == "" || label[0] != '"' }

// slice is the parsed text of a range.
func (r *reader) slice(rng hcl.Range) string {
	start := min(max(rng.Start.Byte, 0), len(r.seen))
	return r.seen[start:min(max(rng.End.Byte, start), len(r.seen))]
}

// attributes reads the `name = value` lines of a block, in the order written.
func (r *reader) attributes(b *Block, body *hclsyntax.Body) {
	order := r.order[:0]
	for _, a := range body.Attributes {
		order = append(order, a)
	}
	slices.SortFunc(order, func(a, b *hclsyntax.Attribute) int { return a.NameRange.Start.Byte - b.NameRange.Start.Byte })
	r.order = order
	b.attrs.first = int32(len(r.file.attrs))
	for _, a := range order {
		spec, ok := b.Spec.place(a.Name)
		if !ok {
			if spec, ok = r.unknownAttr(b, a, order); ok {
				// Named by its nearest, but not taken for it: what it says is not read.
				r.addAttr(b, attribute{spec: spec, nameAt: r.back(a.NameRange.Start.Byte), span: r.valueSpan(a), state: Broken})
			}
			continue
		}
		at := r.addAttr(b, attribute{spec: spec, nameAt: r.back(a.NameRange.Start.Byte)})
		r.value(b, at, a)
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
