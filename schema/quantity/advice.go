package quantity

import (
	"strings"

	"github.com/agext/levenshtein"
)

// advise puts an error into the maker's words and finds what to write instead. Only texts that read at this place
// are suggested.
func advise(e *Error, text string, accept []Dimension) {
	a := advisor{e: e, text: text, accept: accept}
	switch e.Kind {
	case Empty:
		a.say("nothing is written here: write " + a.wanted())
	case NoNumber:
		a.noNumber()
	case UnitMissing:
		a.unitMissing()
	case UnitUnknown:
		a.unitUnknown()
	case WrongKind:
		a.wrongKind()
	case RangeDescends:
		a.rangeDescends()
	case NumberUnreadable:
		a.numberUnreadable()
	case TooLong:
		a.say("this is longer than any quantity: write " + a.wanted())
	case MixedUnits:
		a.mixedUnits()
	case BasisMissing:
		a.basisMissing()
	case Negative:
		a.say(a.quoted() + " is below nothing: a " + e.Got.String() + " is written without a minus sign")
		a.suggest(text[:e.Start] + text[e.Start+minus(text, e.Start):])
	}
}

// advisor carries what every piece of advice looks at.
type advisor struct {
	e      *Error
	text   string
	accept []Dimension
}

func (a *advisor) say(message string) { a.e.Message = message }

// suggest offers a text, if it reads and is not offered yet.
func (a *advisor) suggest(text string) {
	if _, err := read(text, a.accept); err != nil {
		return
	}
	for _, s := range a.e.Suggest {
		if s == text {
			return
		}
	}
	a.e.Suggest = append(a.e.Suggest, text)
}

// at is the text with what is at fault replaced.
func (a *advisor) at(replacement string) string {
	return a.text[:a.e.Start] + replacement + a.text[a.e.End:]
}

// span is what is at fault.
func (a *advisor) span() string { return a.text[a.e.Start:a.e.End] }

// quoted is the whole text, as the subject of a message.
func (a *advisor) quoted() string { return `"` + trim(a.text) + `"` }

// wanted is what belongs here: `a weight, for instance "36 oz" or "1.13 kg"`.
func (a *advisor) wanted() string {
	if len(a.accept) == 0 {
		return `a number with its unit, for instance "36 oz"`
	}
	names := make([]string, len(a.accept))
	examples := make([]string, len(a.accept))
	for i, d := range a.accept {
		names[i] = "a " + d.String()
		examples[i] = d.Examples()
	}
	return strings.Join(names, " or ") + ", for instance " + strings.Join(examples, " or ")
}

// orOffers is the suggestions as a list to choose from, or what is wanted where there are none.
func (a *advisor) orOffers() string {
	if len(a.e.Suggest) == 0 {
		return a.wanted()
	}
	return quotedList(a.e.Suggest)
}

func quotedList(texts []string) string {
	quoted := make([]string, len(texts))
	for i, t := range texts {
		quoted[i] = `"` + t + `"`
	}
	last := len(quoted) - 1
	if last < 1 {
		return strings.Join(quoted, "")
	}
	return strings.Join(quoted[:last], ", ") + " or " + quoted[last]
}

func (a *advisor) noNumber() {
	for i := range a.text { // "about 65 g": what stands behind the words may do
		if startsNumber(a.text, i) {
			a.suggest(a.text[i:])
			break
		}
	}
	if a.e.Start > skipSpaces(a.text, 0) {
		a.say(a.quoted() + " lacks the upper end of its range: write " + a.orOffers())
		return
	}
	a.say(a.quoted() + " has no number to go by: write " + a.orOffers())
}

func (a *advisor) unitMissing() {
	before, after := a.text[:a.e.End], a.text[a.e.End:]
	for _, d := range a.places() {
		for _, u := range kinds[d].units {
			a.suggest(before + " " + u + after)
		}
	}
	if len(a.e.Suggest) > 6 {
		a.e.Suggest = a.e.Suggest[:6]
	}
	a.say(a.span() + " needs its unit: write " + a.orOffers())
}

// places are the dimensions accepted, or all of them.
func (a *advisor) places() []Dimension {
	if len(a.accept) > 0 {
		return a.accept
	}
	return []Dimension{Weight, Temperature, Length, Time, Proportion, Volume, Density, Count}
}

func (a *advisor) unitUnknown() {
	unit := a.span()
	var room [longestSpelling]byte
	folded, _ := fold(room[:0], unit)
	key := string(folded)
	if i := strings.IndexByte(a.text, '('); i > 0 {
		a.suggest(trim(a.text[:i]))
		if len(a.e.Suggest) > 0 {
			a.say(a.quoted() + " says it twice: write " + a.orOffers())
			return
		}
	}
	if why := refusal(key); why != "" {
		a.say(`"` + unit + `": ` + why)
		return
	}
	if key == "°" || key == "deg" || key == "degree" || key == "degrees" {
		a.suggest(a.at("°F"))
		a.suggest(a.at("°C"))
		a.say(a.quoted() + " does not say which scale: write " + a.orOffers())
		return
	}
	for _, u := range a.nearest(key) {
		a.suggest(a.at(u))
	}
	if len(a.e.Suggest) > 0 {
		a.say(`"` + unit + `" is no unit used here: write ` + a.orOffers())
		return
	}
	a.say(`"` + unit + `" is no unit used here: write ` + a.wanted())
}

// refusal is why a unit that exists elsewhere is not taken; "" where there is nothing special to say.
func refusal(key string) string {
	has := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(key, w) {
				return true
			}
		}
		return false
	}
	switch {
	case has("troy", "ozt", "oz t"):
		return "a troy ounce (31.1 g) is for precious metals; wax and oil are weighed in oz (28.35 g) or g"
	case has("imp", "uk ", "british"):
		return "imperial measures differ from the US ones (their fl oz are 28.41 mL and 29.57 mL): write mL"
	case key == "k" || has("kelvin"):
		return "temperatures are written in °F or °C"
	case has("spoon", "tsp", "tbsp"):
		return "a spoon holds a different weight of every liquid: weigh it, or write mL"
	case key == "gal" || has("gallon"):
		return "write quarts or liters: a US gallon is 4 qt (3.785 L)"
	case key == "ft" || key == "'" || has("foot", "feet"):
		return "lengths are written in in, cm or mm"
	}
	return ""
}

// nearest are the symbols of the accepted units whose spelling is closest to key, of several equally close all.
func (a *advisor) nearest(key string) []string {
	var symbols []string
	least := longestSpelling
	for id := range table {
		u := &table[id]
		if u.Dim == None || !a.takes(u.Dim) {
			continue
		}
		distance, symbol := closest(u, key)
		if symbol == "" || distance > least {
			continue
		}
		if distance < least {
			least, symbols = distance, nil
		}
		symbols = append(symbols, symbol)
	}
	return symbols
}

// takes says whether a unit of dimension d may stand here, counting scales where differences are meant.
func (a *advisor) takes(d Dimension) bool {
	return accepts(a.accept, d) || d == Temperature && accepts(a.accept, Difference)
}

// closest is how far key is from the nearest spelling of u, and what to write for it; "" where it is too far. A key
// that begins a spelling ("m" for minutes) or that a spelling begins ("oz of wax") counts as one step.
func closest(u *Unit, key string) (int, string) {
	least, symbol := max(1, (len(key)+2)/4), ""
	for _, s := range u.Spellings {
		d := levenshtein.Distance(key, s, nil)
		if key != "" && strings.HasPrefix(s, key) || len(s) > 1 && strings.HasPrefix(key, s+" ") {
			d = min(d, 1)
		}
		if len(key) < 3 && (key == "" || s[0] != key[0]) {
			continue // with so few letters, one other letter is another word
		}
		if d > least {
			continue
		}
		least, symbol = d, u.Symbol
		if u.Dim == Count {
			symbol = s // "drop" or "drops", whichever is closer
		}
	}
	return least, symbol
}

func (a *advisor) wrongKind() {
	q, err := read(a.text, nil)
	if err == nil {
		a.otherKind(q)
	}
	if len(a.e.Suggest) > 0 {
		a.say(a.quoted() + " is a " + a.e.Got.String() + ": write " + a.orOffers())
		return
	}
	if a.e.Got == Volume && accepts(a.accept, Weight) {
		a.say(a.quoted() + " is a volume, and how much it weighs depends on the liquid; what belongs here is " + a.wanted())
		return
	}
	a.say(a.quoted() + " is a " + a.e.Got.String() + "; what belongs here is " + a.wanted())
}

// otherKind offers the same numbers in the unit that was probably meant.
func (a *advisor) otherKind(q Quantity) {
	u := q.Unit()
	switch {
	case u == Ounce && accepts(a.accept, Volume):
		a.swapUnits(FluidOunce.Symbol)
	case (u == PercentOfWax || u == PercentOfTotal) && accepts(a.accept, Share):
		a.swapUnits(Percent.Symbol)
	}
}

// swapUnits offers the text with another unit behind every number.
func (a *advisor) swapUnits(symbol string) {
	var b strings.Builder
	at := 0
	for _, p := range Parts(a.text) {
		if p.UnitStart < at { // the unit both ends of a range share
			continue
		}
		b.WriteString(a.text[at:p.UnitStart])
		b.WriteString(symbol)
		at = p.UnitEnd
	}
	b.WriteString(a.text[at:])
	a.suggest(b.String())
}

func (a *advisor) rangeDescends() {
	parts := Parts(a.text)
	if len(parts) == 2 {
		low, high := parts[0], parts[1]
		first := a.text[low.NumberStart:low.NumberEnd]
		second := a.text[high.NumberStart:high.NumberEnd]
		unit := a.text[high.NumberEnd:high.UnitEnd]
		between := a.text[low.NumberEnd:high.NumberStart]
		switch {
		case first == second:
			a.suggest(first + unit)
		case trim(between) == "-" && strings.Contains(second, "/"): // "2-1/2 in" is meant as a mixed number
			a.suggest(first + " " + second + unit)
		}
		if low.UnitStart == high.UnitStart {
			a.suggest(second + between + first + unit)
		} else {
			a.suggest(a.text[high.NumberStart:high.UnitEnd] + a.text[low.UnitEnd:high.NumberStart] + a.text[low.NumberStart:low.UnitEnd])
		}
		if first == second {
			a.say("both ends of " + a.quoted() + " are the same: write " + a.orOffers())
			return
		}
	}
	a.say(a.quoted() + " does not ascend; a range starts at its low end: write " + a.orOffers())
}

func (a *advisor) numberUnreadable() {
	bad := a.span()
	switch {
	case strings.ContainsAny(bad, ",'"):
		for _, r := range withoutComma(bad) {
			a.suggest(a.at(r))
		}
		a.say(bad + " is written with a decimal point and without marks between thousands: write " + a.orOffers())
	case strings.ContainsAny(bad, "eE"):
		a.say(bad + " is written out in full, without powers of ten: write " + a.wanted())
	case strings.ContainsAny(bad, "/⁄"):
		a.say(bad + ` is no fraction that can be read: write it like "1/4", "2 1/2" or "2.5"`)
	default:
		for _, r := range []string{strings.TrimRight(bad, "."), strings.Join(strings.FieldsFunc(bad, isSpace), "")} {
			a.suggest(a.at(r))
		}
		a.say(bad + " cannot be read as one number: write " + a.orOffers())
	}
}

// withoutComma is a number written with commas or apostrophes, as the ways it may have been meant, likeliest first.
func withoutComma(bad string) []string {
	groups := strings.FieldsFunc(bad, func(c rune) bool { return c == ',' || c == '\'' })
	last := groups[len(groups)-1]
	if dot := strings.IndexByte(last, '.'); dot >= 0 {
		last = last[:dot]
	}
	plain := strings.NewReplacer(",", "", "'", "").Replace(bad)
	switch comma := strings.IndexByte(bad, ','); {
	case strings.Count(bad, ",") == 1 && strings.Contains(bad[:comma], "."): // 1.234,5
		return []string{strings.Replace(strings.ReplaceAll(bad, ".", ""), ",", ".", 1)}
	case strings.Count(bad, ",") != 1 || strings.Contains(bad, "."):
		return []string{plain}
	case len(last) == 3: // 1,000 may be a thousand or one
		return []string{plain, strings.Replace(bad, ",", ".", 1)}
	}
	return []string{strings.Replace(bad, ",", ".", 1)}
}

func (a *advisor) mixedUnits() {
	a.say(a.quoted() + " mixes units that do not go together: write one unit, a large and a small one of a kind (2 lb 8 oz), or a range within one kind")
}

func (a *advisor) basisMissing() {
	a.suggest(trimEnd(a.text) + " of wax")
	a.suggest(trimEnd(a.text) + " of total")
	message := a.quoted() + " does not say of what: write " + a.orOffers()
	if q, err := read(a.text, []Dimension{Share}); err == nil && !q.IsRange() {
		if total, ok := q.Base().Quo(q.Base().Add(one)); ok && q.Base().Sign() > 0 {
			of := FromBase(total, PercentOfTotal)
			message += " (" + FromBase(q.Base(), PercentOfWax).Show(US) + " is " + of.Show(US) + ")"
		}
	}
	a.say(message)
}
