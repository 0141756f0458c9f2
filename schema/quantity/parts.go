package quantity

// Part is where a number and its unit stand in a text, in bytes. Where the unit is missing, its start is its end.
type Part struct{ NumberStart, NumberEnd, UnitStart, UnitEnd int }

// Parts are the places of every number and its unit, in order: several for a compound, one for each end of a range;
// a unit that both ends share is given to both. In a text that cannot be read it gives what stands before the fault.
func Parts(text string) []Part {
	if len(text) > longestText {
		return nil
	}
	var parts []Part
	for at := skipSpaces(text, 0); at < len(text); {
		if !startsNumber(text, at) {
			return parts
		}
		n, err := readNumber(text, at)
		if err != nil {
			return parts
		}
		from := skipSpaces(text, n.end)
		stop := unitEnd(text, from)
		if from == stop {
			from, stop = n.end, n.end
		}
		if k := len(parts); k > 0 && parts[k-1].UnitStart == parts[k-1].UnitEnd && stop > from {
			parts[k-1].UnitStart, parts[k-1].UnitEnd = from, stop
		}
		parts = append(parts, Part{n.start, n.end, from, stop})
		at = skipSpaces(text, stop)
		if at < len(text) {
			at = skipSpaces(text, separatorEnd(text, at))
		}
	}
	return parts
}
