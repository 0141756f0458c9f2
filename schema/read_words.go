package schema

import "strconv"

// count is a number with its noun: "1 line", "3 lines".
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// The rules that speak of what a reader finds.
const (
	ruleSyntax       = "syntax"
	ruleNotALiteral  = "not-a-literal"
	ruleTwoOnOneLine = "two-on-one-line"
	ruleUnknownBlock = "unknown-block"
	ruleUnknownAttr  = "unknown-attribute"
	ruleAttrMissing  = "attribute-missing"
	ruleAttrRepeated = "attribute-repeated"
	ruleBlockTwice   = "block-repeated"
	ruleUnreadable   = "quantity-unreadable"
	ruleUnitMissing  = "unit-missing"
	ruleWrongUnit    = "unit-wrong-kind"
	ruleUnknownStep  = "unknown-step"
	ruleUnknownWord  = "unknown-word"
	ruleWrongKind    = "value-wrong-kind"
	ruleKeyForm      = "key-form"
)

// ReadingRules are the names of all rules that a problem can carry.
func ReadingRules() []string {
	return []string{ruleSyntax, ruleNotALiteral, ruleTwoOnOneLine, ruleUnknownBlock, ruleUnknownAttr, ruleAttrMissing,
		ruleAttrRepeated, ruleBlockTwice, ruleUnreadable, ruleUnitMissing, ruleWrongUnit, ruleUnknownStep, ruleUnknownWord, ruleWrongKind, ruleKeyForm}
}

func hexByte(b byte) string {
	const digits = "0123456789ABCDEF"
	return "0x" + string([]byte{digits[b>>4], digits[b&15]})
}

func either(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}
