package schema

import (
	"iter"

	"wickrule/schema/quantity"
)

// File is one file of the house format, read. It is immutable.
type File struct {
	Name     string // path relative to the shop's root, with "/"
	Text     *Text
	Whole    bool // the text parsed without a repair and every block is known: what is missing in it is really missing
	Clean    bool // whole, and with no problem at all
	Blocks   []*Block
	Problems []Problem // sorted by place
	parsed   bool      // the parser took the bytes as they are, so their layout may be judged
}

// Problem is something in the text that the format does not allow. Rule is
// the name of the rule that speaks of it; the rule says how loud.
type Problem struct {
	Rule    string
	Span    Span
	Message string
	Block   *Block // the innermost block it lies in, nil at the top level
	Fixes   []Fix
}

// Block is one block of a file: stock, a recipe, a step.
type Block struct {
	Spec      *BlockSpec
	File      *File
	Parent    *Block // nil at the top level
	Label     string // the key, reference, date or step kind; "" where there is none
	LabelSpan Span   // the label with its quotes; the block's name where there is none
	Span      Span   // from the name to the closing brace
	Header    Span   // the name and the label
	Body      Span   // between the braces; empty at the end where there are none
	Attrs     []Attribute
	Blocks    []*Block // in the order written
}

// Attribute is one `name = value` line of a block.
type Attribute struct {
	Spec   *AttrSpec
	NameAt int32 // where the name starts
	Span   Span  // the value, quotes included
	state  State
	data   any // *quantity.Quantity, quantity.Rat, string, asWritten, bool, int64, []Item or nil
}

// asWritten stands for a text that is its own source, between the quotes where
// it has any: nearly all are, and then nothing has to be kept of them.
type asWritten struct{}

func (asWritten) of(v Value) string {
	span := v.attr.Span
	if v.Spec.Type != Expression {
		span = Span{span.Start + 1, span.End - 1}
	}
	return v.Block.File.Text.Slice(span)
}

// State tells what is known of a value.
type State uint8

const (
	Absent State = iota // not written
	Broken              // written, but cannot be read: its own problem says so
	Known
)

// Item is one element of a list, with its own place.
type Item struct {
	Text string
	Span Span
}

// Name is the word the block starts with: "wax", "recipe", "step".
func (b *Block) Name() string { return b.Spec.Name }

// Is says whether the block starts with that word. A nil block is nothing.
func (b *Block) Is(name string) bool { return b != nil && b.Spec.Name == name }

// Title is the block's `title`, else its label: how a maker calls it.
func (b *Block) Title() string {
	if b == nil {
		return ""
	}
	if b.Spec.Attr("title") != nil {
		if v := b.Get("title"); v.Known() && v.Text() != "" {
			return v.Text()
		}
	}
	return b.Label
}

// Each yields the blocks inside that start with the word, in order.
func (b *Block) Each(name string) iter.Seq[*Block] {
	return func(yield func(*Block) bool) {
		if b == nil {
			return
		}
		for _, inner := range b.Blocks {
			if inner.Spec.Name == name && !yield(inner) {
				return
			}
		}
	}
}

// Get is the value of an attribute of the block. Asking for a name that the
// language table does not have for this block is a mistake in the program and
// panics; a nil block has every attribute absent.
func (b *Block) Get(name string) Value {
	if b == nil {
		return Value{}
	}
	spec := b.Spec.named[name]
	if spec == nil {
		panic("schema: a " + b.Spec.ID + " block has no attribute " + name)
	}
	for i := range b.Attrs {
		if b.Attrs[i].Spec == spec {
			return Value{Block: b, Spec: spec, attr: &b.Attrs[i]}
		}
	}
	return Value{Block: b, Spec: spec}
}

// Value is an attribute looked up in a block, written or not.
type Value struct {
	Block *Block
	Spec  *AttrSpec
	attr  *Attribute
}

// State tells whether the value is absent, broken or known.
func (v Value) State() State {
	if v.attr == nil {
		return Absent
	}
	return v.attr.state
}

func (v Value) Known() bool  { return v.attr != nil && v.attr.state == Known }
func (v Value) Broken() bool { return v.attr != nil && v.attr.state == Broken }
func (v Value) Absent() bool { return v.attr == nil }

// Span is where the value stands, quotes included; for an absent value, the
// header of its block.
func (v Value) Span() Span {
	if v.attr != nil {
		return v.attr.Span
	}
	if v.Block != nil {
		return v.Block.Header
	}
	return Span{}
}

// NameSpan is where the attribute's name stands; for an absent value, the
// header of its block.
func (v Value) NameSpan() Span {
	if v.attr == nil {
		return v.Span()
	}
	return Span{v.attr.NameAt, v.attr.NameAt + int32(len(v.attr.Spec.Name))}
}

// Written is the value's source text, quotes included; "" where absent.
func (v Value) Written() string {
	if v.attr == nil {
		return ""
	}
	return v.Block.File.Text.Slice(v.attr.Span)
}

// Amount is the quantity of a known value; the zero Quantity otherwise.
func (v Value) Amount() quantity.Quantity {
	if v.Known() {
		if q, ok := v.attr.data.(*quantity.Quantity); ok {
			return *q
		}
	}
	return quantity.Quantity{}
}

// IsAmount says whether the value is known and a quantity (and not one of the
// words that may stand in its place, such as "to shade").
func (v Value) IsAmount() bool {
	if !v.Known() {
		return false
	}
	_, ok := v.attr.data.(*quantity.Quantity)
	return ok
}

// Text is the string of a known value; "" otherwise.
func (v Value) Text() string {
	if v.Known() {
		switch data := v.attr.data.(type) {
		case string:
			return data
		case asWritten:
			return data.of(v)
		}
	}
	return ""
}

// Yes says whether the value is known and true.
func (v Value) Yes() bool {
	if v.Known() {
		yes, ok := v.attr.data.(bool)
		return ok && yes
	}
	return false
}

// No says whether the value is known and false.
func (v Value) No() bool {
	if v.Known() {
		yes, ok := v.attr.data.(bool)
		return ok && !yes
	}
	return false
}

// Whole is the whole number of a known value; the fallback otherwise.
func (v Value) Whole(fallback int) int {
	if v.Known() {
		if n, ok := v.attr.data.(int64); ok {
			return int(n)
		}
	}
	return fallback
}

// Items are the elements of a known list, each with its place. A lone string
// where a list may stand is a list of one.
func (v Value) Items() []Item {
	if !v.Known() {
		return nil
	}
	switch data := v.attr.data.(type) {
	case []Item:
		return data
	case string, asWritten:
		return []Item{{Text: v.Text(), Span: v.attr.Span}}
	}
	return nil
}

// BelowRim says whether a fill is written as a distance below the rim.
func (v Value) BelowRim() bool {
	return v.Known() && v.Spec.BelowRim && belowRim(v.Written())
}
