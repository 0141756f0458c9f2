package cli

import "runtime/debug"

// While a shop is read, nearly all that is thrown away is the parser's, and
// nearly all that is kept stays: to look through the kept each time memory has
// doubled costs a tenth of a check. So there it may grow to four times what is
// kept beside it, unless the shop is so large that this would be much.
const (
	usualGarbage = 100 // percent of what is kept
	roomy        = 400
	roomyUpTo    = 15_000 // files; of small ones that is some 350 MB at most
)

// readingRoom gives the reading of a shop more memory. Told tells how many
// files there are; done puts things back. Where the surroundings ask for
// something else than is usual, they are left alone.
func readingRoom() (told func(files int), done func()) {
	before := debug.SetGCPercent(roomy)
	if before != usualGarbage {
		debug.SetGCPercent(before)
		return func(int) {}, func() {}
	}
	told = func(files int) {
		if files > roomyUpTo {
			debug.SetGCPercent(usualGarbage)
		}
	}
	return told, func() { debug.SetGCPercent(usualGarbage) }
}
