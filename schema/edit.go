package schema

// Edit replaces the bytes of a span in a file. An empty span inserts.
type Edit struct {
	File *File
	Span Span
	Text string
}

// Fix is a repair: byte edits made together or not at all. Title is an
// imperative that names the result. Safe means that what is made does not
// change: spelling, layout, a unit made explicit. Guess means that it is one
// of several readings, between which only a person can choose: it is offered,
// and never made in bulk.
type Fix struct {
	Title string
	Safe  bool
	Guess bool
	First bool // it swaps what other findings are measured against: they wait until that is done
	Edits []Edit
}
