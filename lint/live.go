package lint

import (
	"slices"
	"strings"

	"wickrule/schema"
)

// Live is a shop that is being edited, and what the rules say of it as it
// stands. An edit has those recipes and files checked again that had looked at
// something that it changed, and no others; what comes of it is the same as if
// everything were checked anew. Live is not safe for use from several
// goroutines; the shops it gives out never change.
type Live struct {
	shop    *Shop
	rules   func(*Shop) []*Rule
	book    *book
	today   string
	files   map[string]*liveFile
	readers map[look]*reader
	stale   []*unit         // what is to be checked, each once
	moved   map[string]bool // files of whose findings some stand elsewhere now, or are gone
}

// unit is what is checked by itself: a recipe, or a file without its recipes.
type unit struct {
	file   string
	recipe *schema.Block // nil: the file
	said   gathering
	looked []*reader
	guest  []string // other files in which something stands that it said
	stale  bool
	gone   bool // its file was read anew, or is out
}

// liveFile is one file of the shop.
type liveFile struct {
	units  []*unit
	guests map[*unit]bool // of other files, with something to say about this one
}

// reader is something of the shop, and who has looked at it.
type reader struct {
	look
	units map[*unit]bool
}

// NewLive starts with a shop of which nothing is checked yet.
func NewLive(shop *Shop, rules func(*Shop) []*Rule, today string) *Live {
	l := &Live{
		shop: shop, rules: rules, book: newBook(rules(shop)), today: today,
		files: map[string]*liveFile{}, readers: map[look]*reader{}, moved: map[string]bool{},
	}
	for _, f := range shop.Files() {
		l.renew(f.Name, f)
	}
	return l
}

// Shop is the shop as it stands.
func (l *Live) Shop() *Shop { return l.shop }

// SetToday moves on to another day.
func (l *Live) SetToday(day string) {
	l.today = day
	l.allStale()
}

// Edit puts files in the place of those of the same name, or adds them, and
// takes others out.
func (l *Live) Edit(put []*schema.File, out []string) {
	before := l.shop
	l.shop = before.Edit(put, out)
	names := slices.Clone(out)
	for _, f := range put {
		names = append(names, f.Name)
	}
	slices.Sort(names)
	names = slices.Compact(names)
	for _, name := range names {
		l.renew(name, l.shop.File(name))
	}
	d := difference{before, l.shop, names}
	if d.rules() {
		l.book = newBook(l.rules(l.shop))
		l.allStale()
	} else {
		d.each(func(changed look) {
			if r := l.readers[changed]; r != nil {
				for u := range r.units {
					l.mark(u)
				}
			}
		})
	}
	for _, name := range names {
		if f := l.files[name]; f != nil {
			for u := range f.guests {
				l.follow(u, before.File(name), l.shop.File(name))
			}
		}
	}
}

// renew forgets what was said of a file and of the recipes in it; they are to
// be checked as they are now. A nil file is out.
func (l *Live) renew(name string, f *schema.File) {
	held := l.files[name]
	if held == nil {
		if f == nil {
			return
		}
		held = &liveFile{guests: map[*unit]bool{}}
		l.files[name] = held
	}
	for _, u := range held.units {
		u.gone = true
		l.unlook(u)
		l.unsay(u)
	}
	held.units = nil
	l.moved[name] = true
	if f == nil {
		if len(held.guests) == 0 {
			delete(l.files, name)
		}
		return
	}
	l.begin(held, &unit{file: name})
	for _, b := range f.Blocks {
		if b.Is("recipe") {
			l.begin(held, &unit{file: name, recipe: b})
		}
	}
}

func (l *Live) begin(f *liveFile, u *unit) {
	f.units = append(f.units, u)
	l.mark(u)
}

// unlook takes a unit out of the lists of who looked at what.
func (l *Live) unlook(u *unit) {
	for _, r := range u.looked {
		delete(r.units, u)
		if len(r.units) == 0 {
			delete(l.readers, r.look)
		}
	}
	u.looked = nil
}

// unsay forgets what a unit said, and where else it had something to say.
func (l *Live) unsay(u *unit) {
	for _, name := range u.guest {
		l.moved[name] = true
		f := l.files[name]
		delete(f.guests, u)
		if len(f.units) == 0 && len(f.guests) == 0 {
			delete(l.files, name)
		}
	}
	u.guest, u.said = nil, gathering{}
}

func (l *Live) mark(u *unit) {
	if !u.stale && !u.gone {
		u.stale = true
		l.stale = append(l.stale, u)
	}
}

func (l *Live) allStale() {
	for _, f := range l.files {
		for _, u := range f.units {
			l.mark(u)
		}
	}
}

// Settle checks again what edits have touched: in the files that which
// accepts (nil: all), at most so many recipes and files. It returns the files
// whose findings may have changed, sorted, and whether there is more to do.
func (l *Live) Settle(which func(file string) bool, most int) (touched []string, more bool) {
	var todo []*unit
	rest := l.stale[:0]
	for _, u := range l.stale {
		switch {
		case u.gone:
		case len(todo) < most && (which == nil || which(u.file)):
			todo = append(todo, u)
		default:
			rest = append(rest, u)
		}
	}
	clear(l.stale[len(rest):])
	l.stale = rest

	said := make([]gathering, len(todo))
	looks := make([][]look, len(todo))
	asBefore := make([]bool, len(todo))
	sideBySide(len(todo), func(i int) {
		if u := todo[i]; u.recipe != nil {
			said[i] = checkRecipe(l.shop, l.book, u.recipe, l.today, &looks[i])
		} else {
			said[i] = checkAlone(l.shop, l.book, l.shop.File(u.file), l.today, &looks[i])
		}
		asBefore[i] = slices.EqualFunc(todo[i].looked, looks[i], func(r *reader, at look) bool { return r.look == at })
	})
	for i, u := range todo {
		l.unsay(u)
		if !asBefore[i] {
			l.unlook(u)
			l.look(u, looks[i])
		}
		l.say(u, said[i])
	}
	for name := range l.moved {
		if which == nil || which(name) {
			touched = append(touched, name)
			delete(l.moved, name)
		}
	}
	if len(l.moved) == 0 {
		l.moved = map[string]bool{} // one that was large stays slow to walk through
	}
	slices.Sort(touched)
	return touched, len(l.stale) > 0 || len(l.moved) > 0
}

// look keeps what a unit looked at.
func (l *Live) look(u *unit, looks []look) {
	u.looked = make([]*reader, len(looks))
	for i, at := range looks {
		r := l.readers[at]
		if r == nil {
			// The words are copies: they would hold on to a whole text.
			r = &reader{look{at.at, strings.Clone(at.kind), strings.Clone(at.key)}, map[*unit]bool{}}
			l.readers[r.look] = r
		}
		r.units[u] = true
		u.looked[i] = r
	}
}

// say keeps what a unit said. Fixes are not kept: they are made when they are
// asked for.
func (l *Live) say(u *unit, said gathering) {
	u.stale = false
	u.said = said
	l.moved[u.file] = true
	u.said.eachPlace(func(p *Place) bool {
		name := p.File.Name
		if name != u.file && !slices.Contains(u.guest, name) {
			u.guest = append(u.guest, name)
			l.files[name].guests[u] = true
			l.moved[name] = true
		}
		return true
	})
	for i := range u.said.found {
		u.said.found[i].Fixes = nil
	}
}

// eachPlace goes through every place that something was said about, also as a
// note, until visit returns false.
func (g *gathering) eachPlace(visit func(*Place) bool) bool {
	finding := func(f *Finding) bool {
		if !visit(&f.At) {
			return false
		}
		for i := range f.Notes {
			if !visit(&f.Notes[i].Place) {
				return false
			}
		}
		return true
	}
	for i := range g.found {
		if !finding(&g.found[i].Finding) {
			return false
		}
	}
	for i := range g.conceded {
		if !finding(&g.conceded[i].Finding) {
			return false
		}
	}
	for i := range g.unchecked {
		at := AtHeader(g.unchecked[i].block)
		if !visit(&at) {
			return false
		}
	}
	return true
}

// follow moves what a unit said about another file to where that stands now.
// What cannot be found again there is a reason to check anew.
func (l *Live) follow(u *unit, before, now *schema.File) {
	if u.stale {
		return
	}
	if before == nil || now == nil {
		l.mark(u)
		return
	}
	// Lists that reports have been made of stay as they are.
	u.said.found = slices.Clone(u.said.found)
	u.said.conceded = slices.Clone(u.said.conceded)
	u.said.unchecked = slices.Clone(u.said.unchecked)
	for i := range u.said.found {
		u.said.found[i].Notes = slices.Clone(u.said.found[i].Notes)
	}
	for i := range u.said.conceded {
		u.said.conceded[i].Notes = slices.Clone(u.said.conceded[i].Notes)
	}
	found := u.said.eachPlace(func(p *Place) bool {
		if p.File != before {
			return true
		}
		shift, ok := shifted(before, now, p.Span)
		*p = Place{now, schema.Span{Start: p.Span.Start + shift, End: p.Span.End + shift}}
		return ok
	})
	for i := range u.said.unchecked {
		n := &u.said.unchecked[i]
		if n.block.File != before {
			continue
		}
		shift, ok := shifted(before, now, n.block.Span)
		if !ok {
			found = false
			break
		}
		n.block = startingAt(now.Blocks, n.block.Span.Start+shift)
	}
	l.moved[u.file] = true
	for _, name := range u.guest {
		l.moved[name] = true
	}
	if !found {
		l.mark(u)
	}
}

// shifted is by how much what stood in a span of a file stands further on in
// the file as it is now. False: it does not stand there any more.
func shifted(before, now *schema.File, span schema.Span) (int32, bool) {
	nth := 0
	var old *schema.Block
	for i, b := range before.Blocks {
		if b.Span.Contains(span) {
			old = b
			for _, earlier := range before.Blocks[:i] {
				if alike(earlier, old) {
					nth++
				}
			}
			break
		}
	}
	if old == nil {
		return 0, false
	}
	for _, b := range now.Blocks {
		if !alike(b, old) {
			continue
		}
		if nth == 0 {
			return b.Span.Start - old.Span.Start, schema.Same(b, old)
		}
		nth--
	}
	return 0, false
}

func alike(a, b *schema.Block) bool { return a.Name() == b.Name() && a.Label == b.Label }

// startingAt is the block that starts at an offset.
func startingAt(blocks []*schema.Block, at int32) *schema.Block {
	for _, b := range blocks {
		if b.Span.Start == at {
			return b
		}
		if b.Span.Start < at && at < b.Span.End {
			return startingAt(b.Blocks(), at)
		}
	}
	return nil
}

// Of is what the rules say about one file, as far as it has been checked.
// Fixes are not at hand: RunFile has them.
func (l *Live) Of(name string) *Report {
	r := &Report{Shop: l.shop}
	f := l.files[name]
	if f == nil {
		return r
	}
	if now := l.shop.File(name); now != nil {
		r.Files, r.Recipes = 1, recipesIn(now)
	}
	var said []gathering
	for _, u := range f.units {
		said = append(said, u.said.about(name))
	}
	for u := range f.guests {
		said = append(said, u.said.about(name))
	}
	r.fill(said)
	return r
}

// about is what stands in one file of what was said.
func (g *gathering) about(file string) gathering {
	var of gathering
	for _, f := range g.found {
		if f.At.File.Name == file {
			of.found = append(of.found, f)
		}
	}
	for _, c := range g.conceded {
		if c.At.File.Name == file {
			of.conceded = append(of.conceded, c)
		}
	}
	for _, n := range g.unchecked {
		if n.block.File.Name == file {
			of.unchecked = append(of.unchecked, n)
		}
	}
	of.faults = g.faults
	return of
}

// Report is what the rules say about the whole shop, as far as it has been
// checked.
func (l *Live) Report() *Report {
	r := &Report{Shop: l.shop, Files: len(l.shop.Files()), Recipes: len(l.shop.Recipes())}
	var said []gathering
	for _, f := range l.files {
		for _, u := range f.units {
			said = append(said, u.said)
		}
	}
	r.fill(said)
	return r
}
