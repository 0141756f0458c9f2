package lint

import (
	"cmp"

	"wickrule/schema"
)

// Place is where something stands: a file and a span of its bytes.
type Place struct {
	File *schema.File
	Span schema.Span
}

// AtValue is the place of a value, quotes included; of its block's header
// where the value is not written.
func AtValue(v schema.Value) Place { return Place{v.Block.File, v.Span()} }

// AtLabel is the place of a block's label with its quotes.
func AtLabel(b *schema.Block) Place { return Place{b.File, b.LabelSpan} }

// AtHeader is the place of a block's name and label.
func AtHeader(b *schema.Block) Place { return Place{b.File, b.Header()} }

// AtItem is the place of one element of a list.
func AtItem(v schema.Value, item schema.Item) Place { return Place{v.Block.File, item.Span} }

func (p Place) compare(o Place) int {
	return cmp.Or(cmp.Compare(p.File.Name, o.File.Name), cmp.Compare(p.Span.Start, o.Span.Start), cmp.Compare(p.Span.End, o.Span.End))
}

// Note is a related place: the limit stated in the stock file.
type Note struct {
	Place
	Message string
}

// Finding is what a rule says: what was found, what was expected, by how
// much, at which characters.
type Finding struct {
	At      Place
	Message string
	Notes   []Note
	Levels  Levels              // zero: the rule's own
	Fixes   func() []schema.Fix // made only when asked for, the preferred first; nil: none
	Lacks   Lack                // what is not written and the finding asks for, so that it is not said a second time as what could not be checked
}

// Lack is an attribute that a block does not have; zero: none.
type Lack struct {
	Block *schema.Block
	Attr  string
}

// Found is a finding in a report, with its rule and how loud it speaks.
type Found struct {
	Finding
	Rule   *Rule
	Level  Level
	Recipe *schema.Block // the recipe it is about; nil: the file or the shop
}

// Repairs are the fixes of the finding, the preferred first. Where making them
// stops on a fault the finding stands without: what is wrong weighs more than
// the help with it.
func (f *Found) Repairs() (fixes []schema.Fix) {
	if f.Fixes == nil {
		return nil
	}
	defer func() {
		if recover() != nil {
			fixes = nil
		}
	}()
	return f.Fixes()
}

// Conceded is a finding that the recipe asks to be let off, with the block
// that says why.
type Conceded struct {
	Found
	Concession *schema.Block
}

// FoundIn are the findings that were conceded.
func FoundIn(list []Conceded) []Found {
	found := make([]Found, len(list))
	for i := range list {
		found[i] = list[i].Found
	}
	return found
}

// Unchecked is an attribute that is not written and that rules wait for.
type Unchecked struct {
	Needs   string   // "wax.flash_point"
	Rules   []string // the rules that wait for it, sorted
	Level   Level
	At      Place // the header of the block that lacks it
	Message string
	block   *schema.Block
	attr    string
}

// Fault is a defect of a rule: it stopped on this recipe and the others went on.
type Fault struct {
	Rule   string
	At     Place
	Reason string
}
