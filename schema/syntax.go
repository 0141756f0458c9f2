package schema

// The syntax of a text, before anybody asks what it means: blocks, lines and
// values by their places. Two parsers make it. The quick one (parse_plain.go)
// takes what nearly every recipe is written in and declines all else; HCL's
// (parse_hcl.go) takes everything. Whoever reads a tree cannot tell them apart.

// tree is what a text consists of. All places are offsets in the text that was
// parsed.
type tree struct {
	body  body                        // what stands outside every block
	count struct{ blocks, lines int } // how many there are in all
}

// body is what stands in a block, each in the order written.
type body struct {
	lines  []line
	blocks []blockSyntax
}

// line is one `name = value`.
type line struct {
	name  Span
	value expr
}

// blockSyntax is one block.
type blockSyntax struct {
	name   Span
	labels []Span // quotes included
	open   Span   // the brace; another place where it is missing
	shut   Span   // the brace; another place where it is missing
	body   body
}

// expr is a value.
type expr struct {
	kind exprKind
	span Span
	of   []expr // the elements of a list
}

type exprKind uint8

const (
	computed       exprKind = iota // what none of the others is: operators, calls and so on
	plainText                      // text, in quotes or as a heredoc, with nothing to fill in
	filledText                     // text with ${ or %{ in it
	unquoted                       // a number, true, false or null
	list                           // elements between [ and ]
	braces                         // what stands between { and }
	bareName                       // names without quotes
	inBrackets                     // a value between ( and )
	textInBrackets                 // text between ( and )
	signed                         // a sign before something computed
	signedNumber                   // a sign before a number
)
