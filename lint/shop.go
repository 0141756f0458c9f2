package lint

import (
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
// shelves, and its recipes.
type Shop struct {
	Root    string         // the folder as the user knows it, with "/"
	Files   []*schema.File // sorted by name
	Config  *schema.Block  // the shop block; nil: default settings
	Recipes []*schema.Block
	Trials  []*schema.Block
	Rules   []*schema.Block // the shop's own, kept for their evaluation
	defined map[string]map[string]*schema.Block
	burns   map[string][]*schema.Block // test burns written outside their recipe
	tunes   map[string]*schema.Block
}

// NewShop makes a snapshot of files that were read. The first definition of a
// key counts.
func NewShop(root string, files []*schema.File) *Shop {
	s := &Shop{Root: root, Files: slices.Clone(files), defined: map[string]map[string]*schema.Block{}, burns: map[string][]*schema.Block{}, tunes: map[string]*schema.Block{}}
	slices.SortFunc(s.Files, func(a, b *schema.File) int { return strings.Compare(a.Name, b.Name) })
	for _, f := range s.Files {
		for _, b := range f.Blocks {
			s.add(b)
		}
	}
	return s
}

func (s *Shop) add(b *schema.Block) {
	switch b.Name() {
	case "shop":
		if s.Config == nil {
			s.Config = b
			for t := range b.Each("tune") {
				if s.tunes[t.Label] == nil {
					s.tunes[t.Label] = t
				}
			}
		}
		return
	case "test_burn":
		if recipe := b.Get("recipe").Text(); recipe != "" {
			s.burns[recipe] = append(s.burns[recipe], b)
		}
		return
	case "recipe":
		s.Recipes = append(s.Recipes, b)
	case "trial":
		s.Trials = append(s.Trials, b)
	case "rule":
		s.Rules = append(s.Rules, b)
	}
	byKey := s.defined[b.Name()]
	if byKey == nil {
		byKey = map[string]*schema.Block{}
		s.defined[b.Name()] = byKey
	}
	if byKey[b.Label] == nil {
		byKey[b.Label] = b
	}
}

// Find is the block of that kind ("wax", "recipe", "trial") with that key, or
// nil.
func (s *Shop) Find(kind, key string) *schema.Block { return s.defined[kind][key] }

// Shelf lists the blocks of a kind, sorted by key.
func (s *Shop) Shelf(kind string) []*schema.Block {
	blocks := make([]*schema.Block, 0, len(s.defined[kind]))
	for _, b := range s.defined[kind] {
		blocks = append(blocks, b)
	}
	slices.SortFunc(blocks, func(a, b *schema.Block) int { return strings.Compare(a.Label, b.Label) })
	return blocks
}

// Keys lists the keys of a kind, sorted.
func (s *Shop) Keys(kind string) []string {
	keys := make([]string, 0, len(s.defined[kind]))
	for key := range s.defined[kind] {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}

// Tune is the shop's tune of a rule, or nil.
func (s *Shop) Tune(rule string) *schema.Block { return s.tunes[rule] }

func (s *Shop) units() quantity.System {
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

// File is the file of that name, or nil.
func (s *Shop) File(name string) *schema.File {
	i, ok := slices.BinarySearchFunc(s.Files, name, func(f *schema.File, name string) int { return strings.Compare(f.Name, name) })
	if !ok {
		return nil
	}
	return s.Files[i]
}
