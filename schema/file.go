package schema

import (
	"iter"

	"wickrule/schema/quantity"
)

// File is one file of the house format, read. It is immutable.
//
// What its blocks hold lies in a few lists, in the order of the text, and a
// block or a value only says where in them. Shops of many thousands of recipes
// are kept whole, so every pointer counts: the memory manager follows each of
// them over and over while further files are read.
type File struct {
	Name     string // path relative to the shop's root, with "/"
	Text     *Text
	Whole    bool // the text parsed without a repair and every block is known: what is missing in it is really missing
	Clean    bool // whole, and with no problem at all
	parsed   bool // a parser took the bytes as they are, so their layout may be judged
	Blocks   []*Block
	Problems []Problem // sorted by place

	inner   []*Block          // the blocks inside of blocks
	attrs   []attribute       // of all blocks
	amounts []quantity.Single // of values held as an amount
	others  []any             // of values held otherwise: *quantity.Quantity, quantity.Rat, string or []Item
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
	Body      Span   // between the braces; empty at the end where there are none
	attrs     run    // in File.attrs
	inner     run    // in File.inner
}

// run is a piece of a list.
type run struct{ first, n int32 }

// attribute is one `name = value` line of a block.
type attribute struct {
	nameAt int32 // where the name starts
	span   Span  // the value, quotes included
	held   held
	spec   uint8 // which of the attributes of the block's spec
	state  State
}

// held is what a value holds: in which form, and the whole number itself, or
// where in File.amounts or File.others it is.
type held struct {
	at   int32
	form form
}

type form uint8

const (
	nothing   form = iota
	asWritten      // a text that is its own source, between the quotes where it has any: nearly all are
	amount         // in File.amounts, written as its source says
	other          // in File.others
	whole
	yes
	no
)

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
		for _, inner := range b.Blocks() {
			if inner.Spec.Name == name && !yield(inner) {
				return
			}
		}
	}
}

// Header is the name and the label.
func (b *Block) Header() Span { return Span{b.Span.Start, b.LabelSpan.End} }

// Blocks are the blocks inside, in the order written. Must not be changed.
func (b *Block) Blocks() []*Block {
	end := b.inner.first + b.inner.n
	return b.File.inner[b.inner.first:end:end]
}

// Attrs yields the attributes that are written in the block, in order.
func (b *Block) Attrs() iter.Seq[Value] {
	return func(yield func(Value) bool) {
		written := b.written()
		for i := range written {
			if !yield(Value{b, b.Spec.Attrs[written[i].spec], &written[i]}) {
				return
			}
		}
	}
}

func (b *Block) written() []attribute {
	return b.File.attrs[b.attrs.first : b.attrs.first+b.attrs.n]
}

// Get is the value of an attribute of the block. Asking for a name that the
// language table does not have for this block is a mistake in the program and
// panics; a nil block has every attribute absent.
func (b *Block) Get(name string) Value {
	if b == nil {
		return Value{}
	}
	return b.At(b.Spec.Place(name))
}

// At is Get for an attribute by its place in the spec (BlockSpec.Place), for
// those who ask very often.
func (b *Block) At(place uint8) Value {
	v := Value{Block: b, Spec: b.Spec.Attrs[place]}
	written := b.written()
	for i := range written {
		if written[i].spec == place {
			v.attr = &written[i]
			break
		}
	}
	return v
}

// Value is an attribute looked up in a block, written or not.
type Value struct {
	Block *Block
	Spec  *AttrSpec
	attr  *attribute
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

// has says whether the value is known and held in that form.
func (v Value) has(f form) bool { return v.Known() && v.attr.held.form == f }

// Span is where the value stands, quotes included; for an absent value, the
// header of its block.
func (v Value) Span() Span {
	if v.attr != nil {
		return v.attr.span
	}
	if v.Block != nil {
		return v.Block.Header()
	}
	return Span{}
}

// NameSpan is where the attribute's name stands; for an absent value, the
// header of its block.
func (v Value) NameSpan() Span {
	if v.attr == nil {
		return v.Span()
	}
	return Span{v.attr.nameAt, v.attr.nameAt + int32(len(v.Spec.Name))}
}

// Written is the value's source text, quotes included; "" where absent.
func (v Value) Written() string {
	if v.attr == nil {
		return ""
	}
	return v.Block.File.Text.Slice(v.attr.span)
}

// source is the text of a value that is its own source.
func (v Value) source() string {
	span := v.attr.span
	if v.Spec.Type != Expression {
		span = Span{span.Start + 1, span.End - 1}
	}
	return v.Block.File.Text.Slice(span)
}

// Amount is the quantity of a known value; the zero Quantity otherwise.
func (v Value) Amount() quantity.Quantity {
	switch {
	case v.has(amount):
		text := v.source()
		if v.Spec.BelowRim {
			if length, ok := cutBelowRim(text); ok {
				text = length
			}
		}
		return v.Block.File.amounts[v.attr.held.at].Quantity(text)
	case v.has(other):
		if q, ok := v.Block.File.others[v.attr.held.at].(*quantity.Quantity); ok {
			return *q
		}
	}
	return quantity.Quantity{}
}

// IsAmount says whether the value is known and a quantity (and not one of the
// words that may stand in its place, such as "to shade").
func (v Value) IsAmount() bool {
	if v.has(other) {
		_, ok := v.Block.File.others[v.attr.held.at].(*quantity.Quantity)
		return ok
	}
	return v.has(amount)
}

// Ends are the two ends of a known quantity in its base unit, the same where it
// is no range, and what a proportion is of: what Amount says, without the rest.
func (v Value) Ends() (low, high quantity.Rat, basis quantity.Basis, ok bool) {
	if v.has(amount) {
		held := v.Block.File.amounts[v.attr.held.at]
		return held.Base(), held.Base(), held.Basis(), true
	}
	if !v.IsAmount() {
		return low, high, basis, false
	}
	q := v.Amount()
	low = q.Base()
	if high = low; q.IsRange() {
		high = q.High().Base()
	}
	return low, high, q.Basis(), true
}

// Text is the string of a known value; "" otherwise.
func (v Value) Text() string {
	switch {
	case v.has(asWritten):
		return v.source()
	case v.has(other):
		text, _ := v.Block.File.others[v.attr.held.at].(string)
		return text
	}
	return ""
}

// Yes says whether the value is known and true.
func (v Value) Yes() bool { return v.has(yes) }

// No says whether the value is known and false.
func (v Value) No() bool { return v.has(no) }

// Whole is the whole number of a known value; the fallback otherwise.
func (v Value) Whole(fallback int) int {
	if v.has(whole) {
		return int(v.attr.held.at)
	}
	return fallback
}

// Items are the elements of a known list, each with its place. A lone string
// where a list may stand is a list of one.
func (v Value) Items() []Item {
	switch {
	case v.has(asWritten):
		return []Item{{Text: v.source(), Span: v.attr.span}}
	case v.has(other):
		switch data := v.Block.File.others[v.attr.held.at].(type) {
		case []Item:
			return data
		case string:
			return []Item{{Text: data, Span: v.attr.span}}
		}
	}
	return nil
}

// BelowRim says whether a fill is written as a distance below the rim.
func (v Value) BelowRim() bool {
	return v.Known() && v.Spec.BelowRim && belowRim(v.Written())
}
