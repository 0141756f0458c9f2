// Package repair makes the fixes that rules offer. A fix lowers a
// temperature, a load or a weight, adds or moves a step, or swaps to a stock
// item; nothing here raises anything.
package repair

import (
	"strings"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Attr is one line of a block to be written: a name and its literal, quotes
// included where it has them.
type Attr struct{ Name, Literal string }

// Text is an attribute whose value is a string.
func Text(name, value string) Attr { return Attr{name, schema.Quote(value)} }

// Step is the text of a step block, on one line where it holds at most one
// attribute.
func Step(kind string, attrs ...Attr) string {
	head := "step " + schema.Quote(kind) + " {"
	switch len(attrs) {
	case 0:
		return head + "}"
	case 1:
		return head + " " + attrs[0].Name + " = " + attrs[0].Literal + " }"
	}
	width := 0
	for _, a := range attrs {
		width = max(width, len(a.Name))
	}
	var b strings.Builder
	b.WriteString(head + "\n")
	for _, a := range attrs {
		b.WriteString("  " + a.Name + strings.Repeat(" ", width-len(a.Name)) + " = " + a.Literal + "\n")
	}
	b.WriteString("}")
	return b.String()
}

// Before inserts a block in front of another.
func Before(title string, b *schema.Block, text string) schema.Fix {
	return schema.Fix{Title: title, Edits: []schema.Edit{schema.InsertBlockBefore(b, text)}}
}

// After inserts a block behind another.
func After(title string, b *schema.Block, text string) schema.Fix {
	return schema.Fix{Title: title, Edits: []schema.Edit{schema.InsertBlockAfter(b, text)}}
}

// FirstStep inserts a step in front of all steps of the recipe, or at its end
// where it has none.
func FirstStep(title string, recipe *schema.Block, text string) schema.Fix {
	for step := range recipe.Each("step") {
		return Before(title, step, text)
	}
	return schema.Fix{Title: title, Edits: []schema.Edit{schema.AppendBlock(recipe, text)}}
}

// LastStep inserts a step behind all steps of the recipe, or at its end where
// it has none.
func LastStep(title string, recipe *schema.Block, text string) schema.Fix {
	var last *schema.Block
	for step := range recipe.Each("step") {
		last = step
	}
	if last != nil {
		return After(title, last, text)
	}
	return schema.Fix{Title: title, Edits: []schema.Edit{schema.AppendBlock(recipe, text)}}
}

// Rewrite replaces a value, or writes it into its block where it is absent.
func Rewrite(title string, v schema.Value, literal string) schema.Fix {
	return schema.Fix{Title: title, Edits: []schema.Edit{schema.SetValue(v, literal)}}
}

// Lowered is the amount of base units written in the unit of the quantity it
// takes the place of, rounded down to what is weighed, counted or read on a
// bench: whole degrees and drops, quarters of a block, a tenth of a per cent
// or a gram, a hundredth of either below one, a hundredth of an ounce. It is
// zero where there is too little of it for that. A proportion keeps its basis:
// base must be on the same one.
func Lowered(written quantity.Quantity, base quantity.Rat) quantity.Quantity {
	unit := written.Unit()
	exact := quantity.FromBase(base, unit).Number()
	step := quantity.NewRat(1, 10)
	switch {
	case unit.Dim == quantity.Temperature || unit == quantity.Drop:
		step = quantity.Int(1)
	case unit.Dim == quantity.Count:
		step = quantity.NewRat(1, 4)
	case unit.Symbol == "kg":
		step = quantity.NewRat(1, 1000)
	case exact.Less(quantity.Int(1)) || unit.System == quantity.US && !strings.HasPrefix(unit.Symbol, "%"):
		step = quantity.NewRat(1, 100)
	}
	return quantity.Of(exact.Floor(step), unit)
}
