package formula

// Part is what an attribute is about. Each part has a letter of its own in
// the code, so that two codes tell which parts differ.
type Part uint8

const (
	Wax Part = iota
	Fragrance
	Additive
	Dye
	Topping
	Vessel
	Wick
	parts = iota
)

var partWords = [parts]string{"the wax", "the fragrance", "the additives", "the dye", "the toppings", "the vessel", "the wick"}

// String is the part in a sentence: "the fragrance".
func (p Part) String() string { return partWords[p] }
