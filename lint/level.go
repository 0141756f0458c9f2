package lint

// Level is how loud a finding speaks.
type Level uint8

const (
	Silent   Level = iota
	Consider       // worth knowing
	Should         // put it right, or record a concession with its reason
	Must           // do not pour, sell or teach it like this
)

var levelWords = [...]string{"off", "consider", "should", "must"}

// String is the level as it is written in a shop file and in reports.
func (l Level) String() string { return levelWords[l] }

// Word is the level as it is spoken of: a rule that is off is silent.
func (l Level) Word() string {
	if l == Silent {
		return "silent"
	}
	return l.String()
}

// ParseLevel reads "must", "should", "consider" or "off".
func ParseLevel(word string) (Level, bool) {
	for i, w := range levelWords {
		if w == word {
			return Level(i), true
		}
	}
	return Silent, false
}

// MadeFor is whom a recipe's candles are for. What is not said is judged as
// made for sale.
type MadeFor uint8

const (
	Sale MadeFor = iota
	Class
	OwnUse
)

var madeForWords = [...]string{"sale", "class", "own use"}

// String is the word as it is written in a recipe.
func (m MadeFor) String() string { return madeForWords[m] }

func parseMadeFor(word string) MadeFor {
	for i, w := range madeForWords {
		if w == word {
			return MadeFor(i)
		}
	}
	return Sale
}

// Levels is how loud a rule speaks by what a recipe is made for, in the order
// of the rulebook's columns.
type Levels struct{ OwnUse, Class, Sale Level }

// Every is the same level whatever the recipe is made for.
func Every(l Level) Levels { return Levels{l, l, l} }

// For is the level for one purpose.
func (l Levels) For(m MadeFor) Level {
	switch m {
	case OwnUse:
		return l.OwnUse
	case Class:
		return l.Class
	}
	return l.Sale
}
