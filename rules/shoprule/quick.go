package shoprule

import (
	"slices"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Most rules hold for most recipes, and then nobody asks where a value is
// written or what it lacks. So beside eval, which keeps all that, an expression
// has a quick form that gives what it comes to and nothing else. Where the quick
// form is unsure, or the rule does not hold, eval says what is the matter. What
// the two say never differs.

// truth is the quick form of yes and no.
type truth uint8

const (
	unsure truth = iota
	itHolds
	itFails
)

func truthOf(holds bool) truth {
	if holds {
		return itHolds
	}
	return itFails
}

type (
	tester func(*scene) truth
	ends   func(*scene) (low, high quantity.Rat, known bool)
	wordOf func(*scene) (word string, known bool)
	listOf func(*scene) (items []schema.Item, known bool)
)

// tests is the quick form of yes or no.
func (e *expr) tests() tester {
	switch {
	case e.fixed != nil:
		always := truthOf(e.fixed.yes)
		return func(*scene) truth { return always }
	case e.quickTest != nil:
		return e.quickTest
	}
	eval := e.eval
	return func(s *scene) truth {
		if v := eval(s); v.known() {
			return truthOf(v.yes)
		}
		return unsure
	}
}

// ends is the quick form of an amount or a number.
func (e *expr) ends() ends {
	if e.quickEnds != nil {
		return e.quickEnds
	}
	eval := e.eval
	return func(s *scene) (low, high quantity.Rat, known bool) {
		v := eval(s)
		return v.low, v.high, v.known()
	}
}

// words is the quick form of a text.
func (e *expr) words() wordOf {
	if e.quickWord != nil {
		return e.quickWord
	}
	eval := e.eval
	return func(s *scene) (string, bool) {
		v := eval(s)
		return v.text, v.known()
	}
}

// holdsQuickly says whether it is plain that the rule has nothing to say of the
// combination in hand.
func (p *program) holdsQuickly(s *scene) bool {
	if p.quickWhen != nil {
		switch p.quickWhen(s) {
		case itFails:
			return true
		case unsure:
			return false
		}
	}
	return p.quickRequire(s) == itHolds
}

// ordering is what a sign of comparison asks of two ranges: all of the one
// against all of the other.
type ordering uint8

const (
	lessThan ordering = iota
	atMost
	moreThan
	atLeast
)

func (o ordering) holds(aLow, aHigh, bLow, bHigh quantity.Rat) bool {
	switch o {
	case lessThan:
		return aHigh.Less(bLow)
	case atMost:
		return aHigh.Cmp(bLow) <= 0
	case moreThan:
		return bHigh.Less(aLow)
	}
	return bHigh.Cmp(aLow) <= 0
}

// quickOrder compares two amounts or numbers.
func quickOrder(a, b *expr, o ordering) tester {
	left := a.ends()
	if b.fixed != nil {
		low, high := b.fixed.low, b.fixed.high
		return func(s *scene) truth {
			aLow, aHigh, known := left(s)
			if !known {
				return unsure
			}
			return truthOf(o.holds(aLow, aHigh, low, high))
		}
	}
	right := b.ends()
	return func(s *scene) truth {
		aLow, aHigh, known := left(s)
		if !known {
			return unsure
		}
		bLow, bHigh, known := right(s)
		if !known {
			return unsure
		}
		return truthOf(o.holds(aLow, aHigh, bLow, bHigh))
	}
}

// quickBoth is && or ||: see both.
func quickBoth(a, b *expr, decides bool) tester {
	left, right, decided := a.tests(), b.tests(), truthOf(decides)
	return func(s *scene) truth {
		x := left(s)
		if x == decided {
			return x
		}
		y := right(s)
		if y == decided {
			return y
		}
		if x == unsure || y == unsure {
			return unsure
		}
		return truthOf(!decides)
	}
}

func quickNot(inner *expr) tester {
	test := inner.tests()
	return func(s *scene) truth {
		switch test(s) {
		case itHolds:
			return itFails
		case itFails:
			return itHolds
		}
		return unsure
	}
}

// quickSame compares two texts.
func quickSame(a, b *expr, wanted bool) tester {
	left, right := a.words(), b.words()
	if b.fixed != nil {
		word := b.fixed.text
		return func(s *scene) truth {
			x, known := left(s)
			if !known {
				return unsure
			}
			return truthOf((x == word) == wanted)
		}
	}
	return func(s *scene) truth {
		x, known := left(s)
		if !known {
			return unsure
		}
		y, known := right(s)
		if !known {
			return unsure
		}
		return truthOf((x == y) == wanted)
	}
}

// quickSum is two ranges added, or one taken from the other.
func quickSum(a, b *expr, minus bool) ends {
	left, right := a.ends(), b.ends()
	return func(s *scene) (low, high quantity.Rat, known bool) {
		aLow, aHigh, known := left(s)
		if !known {
			return low, high, false
		}
		bLow, bHigh, known := right(s)
		if !known {
			return low, high, false
		}
		if minus {
			return aLow.Sub(bHigh), aHigh.Sub(bLow), true
		}
		return aLow.Add(bLow), aHigh.Add(bHigh), true
	}
}

// quickName gives an expression the quick forms of what can be asked of a
// thing.
func quickName(e *expr, n *name, thingOf func(*scene) *thing) {
	if of := n.quickFigure; of != nil {
		e.quickEnds = func(s *scene) (low, high quantity.Rat, known bool) {
			th := thingOf(s)
			if th.state != schema.Known {
				return low, high, false
			}
			f := of(s, th)
			return f.Value, f.Value, f.Known()
		}
		return
	}
	q := n.quick
	if q == nil {
		return
	}
	switch n.Type.Kind {
	case YesNo:
		e.quickTest = func(s *scene) truth {
			v, known := q(s, thingOf(s))
			if !known {
				return unsure
			}
			return truthOf(v.Yes())
		}
	case Text:
		e.quickWord = func(s *scene) (string, bool) {
			v, known := q(s, thingOf(s))
			if !known {
				return "", false
			}
			return v.Text(), true
		}
	case Amount:
		e.quickEnds = func(s *scene) (low, high quantity.Rat, known bool) {
			v, known := q(s, thingOf(s))
			if !known {
				return low, high, false
			}
			low, high, basis, ok := v.Ends()
			return low, high, ok && basis != quantity.OfTotal // else as this batch is weighed: see measure
		}
	case List:
		e.quickList = func(s *scene) ([]schema.Item, bool) {
			v, known := q(s, thingOf(s))
			return v.Items(), known
		}
	}
}

// quickIncludes looks into a list.
func quickIncludes(list, word *expr) tester {
	if list.quickList == nil {
		return nil
	}
	items, wanted := list.quickList, word.words()
	return func(s *scene) truth {
		l, known := items(s)
		if !known {
			return unsure
		}
		w, known := wanted(s)
		if !known {
			return unsure
		}
		return truthOf(slices.ContainsFunc(l, func(item schema.Item) bool { return item.Text == w }))
	}
}
