package schema

// The syntax of a text, before anybody asks what it means: blocks, lines and
// values by their places. Two parsers make it. The quick one (parse_plain.go)
// takes what nearly every recipe is written in and declines all else; HCL's
// (parse_hcl.go) takes everything. Whoever reads a tree cannot tell them apart.

// tree is what a text consists of: one list of each kind of thing, without
// pointers, and what holds others says which run of a list they are. All places
// are offsets in the text that was parsed.
type tree struct {
	top      body // what stands outside every block
	lines    []line
	blocks   []blockSyntax
	labels   []Span // quotes included
	elements []expr // of lists
}

// body is what stands in a block, each in the order written.
type body struct {
	lines  run
	blocks run
}

// line is one `name = value`.
type line struct {
	name  Span
	value expr
}

// blockSyntax is one block. The braces are at another place where they are
// missing.
type blockSyntax struct {
	name       Span
	labels     run
	open, shut Span
	body       body
}

// expr is a value.
type expr struct {
	kind exprKind
	span Span
	of   run // the elements of a list
}

// add puts things at the end of a list, and says which run of it they are.
func add[T any](all *[]T, things []T) run {
	if len(things) == 0 {
		return run{}
	}
	first := len(*all)
	*all = append(*all, things...)
	return run{int32(first), int32(len(things))}
}

// of is a run of a list.
func of[T any](all []T, r run) []T { return all[r.first : r.first+r.n] }

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
