package lint

import (
	"maps"
	"slices"
	"strings"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// ShopFileName is the file that makes a folder a shop.
const ShopFileName = "shop.candle.hcl"

// FileSuffix ends the name of every file of the house format.
const FileSuffix = ".candle.hcl"

// Shop is an immutable snapshot of one shop: its files, what stands on its
// shelves, and its recipes. An edit makes a new one out of it, at the cost of
// copying a few lists of pointers.
type Shop struct {
	Root   string        // the folder as the user knows it, with "/"
	Config *schema.Block // the shop block; nil: default settings

	files   pages[*schema.File] // by name
	recipes blocks              // in the order of places, as are the next three
	trials  blocks
	rules   blocks
	configs blocks            // every shop block
	shelves map[string]blocks // by kind: every block that defines a key, by key; the first of a key counts
	burns   blocks            // test burns written outside their recipe, by recipe
	uses    uses
	taken   []Taken
	broken  int    // files that did not parse whole
	memos   *memos // of pure functions: no part of what the shop says
	ofRules *ruleMemos
}

// NewShop makes a snapshot of files that were read. The first definition of a
// key counts.
func NewShop(root string, files []*schema.File) *Shop {
	return (&Shop{Root: root, memos: newMemos(), ofRules: &ruleMemos{}}).Edit(files, nil)
}

// With is the shop with files put in the place of those of the same name, or
// added.
func (s *Shop) With(files ...*schema.File) *Shop { return s.Edit(files, nil) }

// Edit is the shop with files put in the place of those of the same name, or
// added, and with the files of the other names taken out.
func (s *Shop) Edit(put []*schema.File, remove []string) *Shop {
	put = slices.Clone(put)
	slices.SortStableFunc(put, byName)
	names := slices.Clone(remove)
	for _, f := range put {
		names = append(names, f.Name)
	}
	slices.Sort(names)
	var out []*schema.File
	next := &Shop{Root: s.Root, taken: s.taken, broken: s.broken, memos: s.memos, ofRules: s.ofRules}
	var gone, come sorted
	var named []use
	for _, name := range slices.Compact(names) {
		if f := s.File(name); f != nil {
			out = append(out, f)
			gone.add(f)
			next.count(f, -1)
			usesOf(f, -1, func(u use) { named = append(named, u) })
		}
	}
	for _, f := range put {
		come.add(f)
		next.count(f, 1)
		usesOf(f, 1, func(u use) { named = append(named, u) })
	}
	next.files = s.files.swap(byName, out, put)
	next.recipes = s.recipes.swap(byPlace, gone.of("recipe"), come.of("recipe"))
	next.trials = s.trials.swap(byPlace, gone.of("trial"), come.of("trial"))
	next.rules = s.rules.swap(byPlace, gone.of("rule"), come.of("rule"))
	if len(gone["rule"])+len(come["rule"])+len(gone["shop"])+len(come["shop"]) > 0 {
		next.ofRules = &ruleMemos{}
	}
	next.burns = s.burns.swap(byRecipe, gone.of("test_burn"), come.of("test_burn"))
	next.configs = s.configs.swap(byPlace, gone.of("shop"), come.of("shop"))
	if configs := next.configs.list(); len(configs) > 0 {
		next.Config = configs[0]
	}
	next.shelves = make(map[string]blocks, len(s.shelves))
	maps.Copy(next.shelves, s.shelves)
	for _, kind := range slices.Concat(slices.Collect(maps.Keys(gone)), slices.Collect(maps.Keys(come))) {
		if schema.Top(kind).Label == schema.Defines && kind != "shop" {
			next.shelves[kind] = s.shelves[kind].swap(byKey, gone.of(kind), come.of(kind))
		}
	}
	next.uses = s.uses.with(named)
	return next
}

func (s *Shop) count(f *schema.File, sign int) {
	if !f.Whole {
		s.broken += sign
	}
}

// sorted is the top-level blocks of some files, by kind.
type sorted map[string][]*schema.Block

func (s *sorted) add(f *schema.File) {
	if *s == nil {
		*s = sorted{}
	}
	for _, b := range f.Blocks {
		(*s)[b.Name()] = append((*s)[b.Name()], b)
	}
}

// of is a list of its own: it may be reordered.
func (s sorted) of(kind string) []*schema.Block { return slices.Clone(s[kind]) }

func byName(a, b *schema.File) int { return strings.Compare(a.Name, b.Name) }

// Files lists the files, sorted by name.
func (s *Shop) Files() []*schema.File { return s.files.list() }

// Recipes lists the recipes, in the order of files and of places in them.
func (s *Shop) Recipes() []*schema.Block { return s.recipes.list() }

// Trials lists the trials, in the order of files and of places in them.
func (s *Shop) Trials() []*schema.Block { return s.trials.list() }

// Rules lists the shop's own rules, kept for their evaluation, in the order of
// files and of places in them.
func (s *Shop) Rules() []*schema.Block { return s.rules.list() }

// File is the file of that name, or nil.
func (s *Shop) File(name string) *schema.File {
	for f := range s.files.since(func(f *schema.File) bool { return f.Name < name }) {
		if f.Name == name {
			return f
		}
		break
	}
	return nil
}

// Find is the block of that kind ("wax", "recipe", "trial") with that key, or
// nil.
func (s *Shop) Find(kind, key string) *schema.Block {
	return s.shelves[kind].first(key)
}

// Same lists every block of that kind with that key, in the order of places.
// The first is the one that counts.
func (s *Shop) Same(kind, key string) []*schema.Block { return s.shelves[kind].named(key) }

// Shelf lists the blocks of a kind that count, sorted by key.
func (s *Shop) Shelf(kind string) []*schema.Block {
	return slices.CompactFunc(s.shelves[kind].list(), func(a, b *schema.Block) bool { return a.Label == b.Label })
}

// Keys lists the keys of a kind, sorted.
func (s *Shop) Keys(kind string) []string {
	var keys []string
	for _, b := range s.shelves[kind].list() {
		if n := len(keys); n == 0 || keys[n-1] != b.Label {
			keys = append(keys, b.Label)
		}
	}
	return keys
}

// Uses counts who names a block: how many recipes, and how many places outside
// recipes.
func (s *Shop) Uses(b *schema.Block) (recipes, others int) {
	for _, u := range s.uses.named(b.Label) {
		if s.Resolve(Reference{Kinds: u.kinds, Key: u.key}) == b {
			recipes += u.recipes
			others += u.others
		}
	}
	return recipes, others
}

// AllWhole says whether every file parsed whole.
func (s *Shop) AllWhole() bool { return s.broken == 0 }

// Tune is the shop's tune of a rule, or nil.
func (s *Shop) Tune(rule string) *schema.Block {
	if s.Config != nil {
		for t := range s.Config.Each("tune") {
			if t.Label == rule {
				return t
			}
		}
	}
	return nil
}

// Units is the system the shop reads first.
func (s *Shop) Units() quantity.System {
	if s.Config != nil && s.Config.Get("units").Text() == "metric" {
		return quantity.Metric
	}
	return quantity.US
}

var defaultMarkets = []schema.Item{{Text: "US"}}

func (s *Shop) markets() []schema.Item {
	if s.Config != nil {
		if v := s.Config.Get("markets"); v.Known() {
			return v.Items()
		}
	}
	return defaultMarkets
}

// room is the usual workshop temperature in °C: 70 °F where the shop does not
// say.
func (s *Shop) room() quantity.Quantity {
	if s.Config != nil {
		if v := s.Config.Get("room"); v.Known() {
			return v.Amount()
		}
	}
	return quantity.Of(quantity.Int(70), quantity.Fahrenheit)
}
