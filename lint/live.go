package lint

import (
	"slices"

	"wickrule/schema"
)

// Live is a shop that is being edited, and what the rules say of it as it
// stands. It is not safe for use from several goroutines; the shops it gives
// out never change.
type Live struct {
	shop  *Shop
	rules func(*Shop) []*Rule
	today string
	stale bool
	last  *Report
}

// NewLive starts with a shop of which nothing is checked yet.
func NewLive(shop *Shop, rules func(*Shop) []*Rule, today string) *Live {
	return &Live{shop: shop, rules: rules, today: today, stale: true}
}

// Shop is the shop as it stands.
func (l *Live) Shop() *Shop { return l.shop }

// SetToday moves on to another day.
func (l *Live) SetToday(day string) { l.today, l.stale = day, true }

// Edit puts files in the place of those of the same name, or adds them, and
// takes others out.
func (l *Live) Edit(put []*schema.File, remove []string) {
	files := slices.DeleteFunc(slices.Clone(l.shop.Files), func(f *schema.File) bool {
		return slices.Contains(remove, f.Name) || slices.ContainsFunc(put, func(p *schema.File) bool { return p.Name == f.Name })
	})
	l.shop = NewShop(l.shop.Root, append(files, put...))
	l.stale = true
}

// Settle checks again what edits have touched: in the files that which
// accepts (nil: all), at most so many recipes and files. It returns the files
// whose findings may have changed, and whether there is more to do.
func (l *Live) Settle(which func(file string) bool, most int) (touched []string, more bool) {
	if !l.stale {
		return nil, false
	}
	l.stale = false
	l.last = Run(l.shop, l.rules(l.shop), l.today)
	for _, f := range l.shop.Files {
		touched = append(touched, f.Name)
	}
	return touched, false
}

// Of is what the rules say about one file. Fixes are not at hand: RunFile has
// them.
func (l *Live) Of(name string) *Report {
	covers := func(f string) bool { return f == name }
	return RunFor(l.shop, l.rules(l.shop), l.today, covers)
}
