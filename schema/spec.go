package schema

import "wickrule/schema/quantity"

// Type is what kind of value an attribute takes.
type Type uint8

const (
	Line       Type = iota // one line of text
	Prose                  // text that may run over lines (a heredoc)
	Choice                 // one of Choices
	Choices                // a list of Choices (or a single one)
	Texts                  // a list of text (or a single one)
	Key                    // the key of a block of one of Refers
	Keys                   // a list of keys (or a single one)
	YesNo                  // true or false
	Whole                  // a whole number, 0 or more
	Amount                 // a quantity in one of Dims, or one of Words
	Date                   // "2026-10-04"
	Color                  // "#b5473c"
	Expression             // a shop rule's expression, kept as source text
	Figure                 // a number with the one unit named in Unit, as text: "0.24 W/mK"
	Literal                // whatever an option of a rule is: text, a number, true or false
)

// AttrSpec is one attribute of the language table.
type AttrSpec struct {
	Name     string
	Type     Type
	Dims     []quantity.Dimension // Amount: what it may measure
	Range    bool                 // Amount: whether "a to b" may be written
	Words    []string             // Amount, Line: further words that may stand there ("to shade")
	BelowRim bool                 // Amount: whether a length may end in "below rim"
	Unit     string               // Figure: the one unit it is in
	Choices  []string             // Choice, Choices: the closed list
	Refers   []string             // Key, Keys: names of the top-level blocks referred to
	Required bool
	Doc      string // one or two sentences for a maker
	Example  string // a value as it would be typed, quotes included
}

// LabelType is what the label of a block is.
type LabelType uint8

const (
	NoLabel   LabelType = iota
	Defines             // a new key, unique within its kind across the shop
	Refers              // the key of a block of one of LabelRefers
	StepKind            // a step's kind
	DateLabel           // a date
	RuleName            // the name of a rule
	FreeLabel           // any text
)

// BlockSpec is one kind of block of the language table. A step has one spec
// for each of its kinds.
type BlockSpec struct {
	ID          string // unique: "wax", "recipe wax", "step melt"
	Name        string // the word it starts with: "wax", "step"
	Kind        string // a step's kind: "melt"; "" for other blocks
	Label       LabelType
	LabelRefers []string // Label == Refers: names of the top-level blocks referred to
	Attrs       []*AttrSpec
	Blocks      []*BlockSpec
	Stock       bool // an item on the shop's shelves
	Once        bool // may stand only once in its parent
	Doc         string
	Example     string // a whole block in the house format

	names nameTable // Attrs by name; rules ask a hundred times a recipe
}

// Attr is the attribute's spec, or nil where the block has none of that name.
func (s *BlockSpec) Attr(name string) *AttrSpec {
	if at, ok := s.place(name); ok {
		return s.Attrs[at]
	}
	return nil
}

// Place is where among the Attrs the attribute is. Asking for a name that the
// block does not have is a mistake in the program and panics.
func (s *BlockSpec) Place(name string) uint8 {
	at, ok := s.place(name)
	if !ok {
		panic("schema: a " + s.ID + " block has no attribute " + name)
	}
	return at
}

// place is where among the Attrs the first of that name is.
func (s *BlockSpec) place(name string) (uint8, bool) { return s.names.find(name, s.Attrs) }

// indexAll makes the names of the attributes quick to find, of the block and
// of all it may hold.
func (s *BlockSpec) indexAll() {
	if s.names.built() {
		return
	}
	s.names = tableOf(s.Attrs)
	for _, b := range s.Blocks {
		b.indexAll()
	}
}
