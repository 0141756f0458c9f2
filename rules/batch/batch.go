// Package batch works out the figures of one recipe: weights, loads on both
// bases, what the vessels take, the timeline, and the stock's limits as they
// apply to it. Rules, hovers and the batch sheet all read them from here, so
// that they agree. Everything is exact; nothing here judges.
package batch

import (
	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Of is the batch of a view's recipe. The recipe must not be nil.
var Of = lint.NewFact("batch", compute)

// Figure is a number worked out from what is written. It is Known; or Absent,
// because Lacks does not state Attr; or Broken, because a value it rests on
// cannot be read or names stock that does not exist, which another rule says.
type Figure struct {
	Value quantity.Rat // in the base unit named beside the field
	Lacks *schema.Block
	State schema.State
	attr  uint8 // which of the attributes of what Lacks is; a batch has a hundred figures
}

// Attr is what Lacks does not state; "" where there is no Lacks.
func (f Figure) Attr() string {
	if f.Lacks == nil {
		return ""
	}
	return f.Lacks.Spec.Attrs[f.attr].Name
}

// Known says whether the number is there.
func (f Figure) Known() bool { return f.State == schema.Known }

// Ask says whether the number is there, and where it is not because something
// is not written, has the pass say what could not be checked.
func (f Figure) Ask(p *lint.Pass) bool {
	if f.State == schema.Absent && f.Lacks != nil {
		p.CannotCheck(f.Lacks, f.Attr())
	}
	return f.Known()
}

// Batch is everything worked out of one recipe.
type Batch struct {
	Recipe *schema.Block
	Makes  string // pillar, jar, tealight, votive, taper, melt; as the recipe says, else as its first vessel says; "" not known

	Waxes      []Ingredient
	Fragrances []Ingredient
	Dyes       []Ingredient
	Additives  []Ingredient
	Toppings   []*schema.Block // the recipe's topping blocks

	WaxWeight Figure // g, the wax blocks only
	Total     Figure // g, everything weighed in: waxes, additives, dyes, fragrances

	// All fragrances together, as ratios (8 % = 2/25), ranges at their upper
	// end. Zero and known where there is none.
	FragranceOfWax   Figure
	FragranceOfTotal Figure

	Vessels []Vessel
	Takes   Figure // g, what all vessels take together at solid density, filled to their fill
	Spare   Figure // ratio: (Total - Takes) / Takes; negative when short

	Steps []Step
	Pours []Pour // the "pour" steps and "second pour" steps, in order

	density, shrinkage Stated
	totalOverWax       Figure // ratio: Total / WaxWeight, known without weights where all else is ordered by load
}

// Ingredient is a wax, fragrance, dye or additive block of the recipe.
type Ingredient struct {
	Block   *schema.Block // in the recipe
	Stock   *schema.Block // nil: the key is unknown, which another rule says
	Said    schema.Value  // the value that states how much: weight, amount or load, the first that is written (absent where none is)
	Load    schema.Value  // the load where it is written beside a weight or an amount, which counts; see Batch.LoadWeight
	ByEye   bool          // the amount is "to shade": Weight and proportions are absent, and count as 0 in totals
	Weight  Figure        // g in the whole batch, a range at its upper end
	OfWax   Figure        // ratio to the wax
	OfTotal Figure        // ratio to everything weighed in
}

// Vessel is a mold, container or taper block of the recipe.
type Vessel struct {
	Block     *schema.Block
	Stock     *schema.Block // nil: unknown key
	Kind      string        // "mold", "container", "taper"
	Count     int           // how many; 1 where not said
	WickSaid  schema.Value  // the recipe's wick attribute
	Wick      *schema.Block // the wick in stock; nil: none said, or unknown key
	Wicks     int           // per candle; 1 where not said
	Diameter  Figure        // mm, inside; the smaller side of a block
	Height    Figure        // mm, inside
	Holds     Figure        // mL: measured with water, else from the shape
	Fill      Figure        // mL of finished wax in one candle, second pour included
	Headspace Figure        // mm from the finished wax to the rim
	Mass      Figure        // g, one finished candle at solid density
	FirstFill Figure        // g that the first pour puts into one, at pour temperature and up to what it leaves below the rim
	TopUp     Figure        // g that the second pour takes: Mass - FirstFill; absent in layers

	shape         string // a mold's, as stated
	form          form
	width, length Figure // mm, of a block
}

// Step is one step of the recipe, in the order done.
type Step struct {
	Block *schema.Block
	Kind  string
	Index int
	// Heat is the temperature the step says (`to` of a melt, `at` of a pour,
	// of adding fragrance or dye, of a dip): a Value that may be absent. For a
	// kind that has no temperature it has no Spec.
	Heat schema.Value
	// FromStart is seconds since the first step, FromPour since the first
	// pour; Absent where the recipe's waits do not say. Ranges count at their
	// low end, so this is the earliest; FromPourLatest counts the upper ends.
	FromStart      Figure
	FromPour       Figure
	FromPourLatest Figure
	Vessels        []int // indices into Batch.Vessels that the step is about
}

// Pour is a pour or a second pour, with what it is judged by.
type Pour struct {
	Step   *Step
	Second bool
	Melt   *Step // the last melt before it; nil: none
	First  *Step // Second only: the last pour before it that shares a vessel; nil: none
}

// Stated is a figure of the stock that applies to this recipe: from the
// supplier's sheet of one wax, or the strictest of several in a loose blend,
// or what is usual for the wax's family where the stock is silent. Of a loose
// blend's common range, Amount, Wax and Value are those of the high end: ask
// AtLow for the low one, and let Range print it.
type Stated struct {
	State  schema.State      // Known; Broken: silent; Absent: not even the family has one
	Amount quantity.Quantity // a single amount or a range
	Wax    *schema.Block     // the stock item it comes from (of a blend: the one that decides)
	Value  schema.Value      // where it is written; zero for a family's figure
	Family string            // "" for a stated figure; else the family whose usual figure it is ("common practice")
	Blend  bool              // several waxes were looked at: the common range, the strictest, or the average
	Empty  bool              // a loose blend with no common range: Low is above High
	Partly bool              // a loose blend in which Lacks says nothing, nor does its family; the figure is the others'
	Lacks  *schema.Block     // Absent, Family or Partly: the wax that does not state it
	Attr   string
	low    *Stated // a loose blend's common range: what sets the low end, where that is another wax; see AtLow
}

// Known says whether there is a figure at all.
func (s Stated) Known() bool { return s.State == schema.Known }

// Low and High are the ends of the figure in base units.
func (s Stated) Low() quantity.Rat {
	if s.low != nil {
		return s.low.Amount.Base()
	}
	return s.Amount.Base()
}
func (s Stated) High() quantity.Rat { return s.Amount.High().Base() }
