package shoprule

import (
	"slices"
	"strings"

	"wickrule/schema/quantity"
)

// Kind is what sort of thing an expression gives.
type Kind uint8

const (
	YesNo  Kind = iota // true or false
	Text               // a word or a line
	List               // a list of texts
	Number             // a number without a unit
	Amount             // a quantity with its dimension
	Mixed              // an amount whose dimension only the recipe tells: it can be shown and pointed at
	Thing              // a block of the recipe, or what is reckoned from it: an attribute of it can be asked for
)

// Type is what an expression gives.
type Type struct {
	Kind    Kind
	Dim     quantity.Dimension // Amount
	Basis   quantity.Basis     // Amount: of a proportion
	Counted *quantity.Unit     // Amount: what a count counts
	Choices []string           // Text, List: the words there can be; nil: any
	Instead string             // Mixed: what to ask in its place
	Of      string             // Thing: the name of its kind
}

func amountOf(d quantity.Dimension) Type { return Type{Kind: Amount, Dim: d} }

var (
	ofWax   = Type{Kind: Amount, Dim: quantity.Proportion, Basis: quantity.OfWax}
	ofTotal = Type{Kind: Amount, Dim: quantity.Proportion, Basis: quantity.OfTotal}
)

// same says whether two types can be compared and added: for amounts, whether
// they measure the same.
func (t Type) same(o Type) bool {
	return t.Kind == o.Kind && (t.Kind != Amount || t.Dim == o.Dim && t.Basis == o.Basis && t.Counted == o.Counted)
}

// String is the type with its article, as it stands in a message: "a
// temperature", "a text".
func (t Type) String() string {
	switch t.Kind {
	case YesNo:
		return "yes or no"
	case Text:
		return "a text"
	case List:
		return "a list of texts"
	case Number:
		return "a number"
	case Mixed:
		return "an amount of one kind or another"
	case Thing:
		return article(strings.ReplaceAll(t.Of, "_", " "))
	}
	switch {
	case t.Dim == quantity.Proportion:
		return "a proportion " + t.Basis.String()
	case t.Counted != nil:
		return "a count of " + strings.TrimSuffix(t.Counted.Symbol, "s") + "s"
	}
	return article(t.Dim.String())
}

// unit is what a reckoned amount of the type is kept in until it is shown.
func (t Type) unit() *quantity.Unit {
	switch t.Dim {
	case quantity.Weight:
		return quantity.Gram
	case quantity.Volume:
		return quantity.Milliliter
	case quantity.Length:
		return quantity.Millimeter
	case quantity.Temperature:
		return quantity.Celsius
	case quantity.Difference:
		return quantity.CelsiusDegrees
	case quantity.Time:
		return quantity.Second
	case quantity.Proportion:
		if t.Basis == quantity.OfTotal {
			return quantity.PercentOfTotal
		}
		return quantity.PercentOfWax
	case quantity.Share:
		return quantity.Percent
	case quantity.Density:
		return quantity.GramPerMilliliter
	}
	if t.Counted != nil {
		return t.Counted
	}
	return quantity.Piece
}

// typeOf is the type of a quantity that is written in a rule.
func typeOf(q quantity.Quantity) Type {
	t := Type{Kind: Amount, Dim: q.Dim(), Basis: q.Basis()}
	if t.Dim == quantity.Count {
		t.Counted = q.Unit()
	}
	return t
}

// knows says whether a word can come about in a text or list of the type.
func (t Type) knows(word string) bool { return t.Choices == nil || slices.Contains(t.Choices, word) }

func article(word string) string {
	if strings.IndexByte("aeiou", word[0]) >= 0 {
		return "an " + word
	}
	return "a " + word
}
