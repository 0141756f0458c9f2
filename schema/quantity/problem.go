package quantity

// Error is what keeps a text from being read as a quantity.
type Error struct {
	Kind       ErrorKind
	Start, End int       // byte offsets in the text
	Message    string    // in the maker's words; says what to write
	Suggest    []string  // whole texts to write instead, likeliest first; may be empty
	Got        Dimension // what the text is, where it is of a wrong kind
}

// Error is the message.
func (e *Error) Error() string { return e.Message }

// ErrorKind says what is wrong.
type ErrorKind uint8

// What can be wrong with a quantity.
const (
	Empty            ErrorKind = iota + 1
	NoNumber                   // no number where one is needed
	UnitMissing                // a number without its unit
	UnitUnknown                // a unit this format does not have
	WrongKind                  // a weight where a temperature belongs
	RangeDescends              // a range from high to low, or of two equal ends
	NumberUnreadable           // a decimal comma, an exponent, a fraction over 0 ...
	TooLong                    // a text or number longer than any quantity
	MixedUnits                 // units that do not go together in one quantity
	BasisMissing               // a bare % where of wax and of total differ
	Negative                   // below nothing
)
