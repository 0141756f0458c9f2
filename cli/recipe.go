package cli

import (
	"path/filepath"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

// oneRecipe finds the recipe that a verb is about: by its key in the shop
// around the working folder, or by the path of a file that holds one recipe. A
// path with a # behind it names the recipe in a file of several. The caller
// closes the root. False: what is wrong has been said.
func (s *session) oneRecipe(verb string, args []string) (opened, *schema.Block, bool) {
	if len(args) != 1 {
		s.say("%s takes one recipe: its key, or the path of its file. wickrule help %s shows how", verb, verb)
		return opened{}, nil, false
	}
	file, key, _ := strings.Cut(args[0], "#")
	var paths []string
	if strings.HasSuffix(file, lint.FileSuffix) {
		paths = []string{file}
	} else {
		key = args[0]
		if folder := filepath.Dir(file); folder != "." {
			paths, key = []string{folder}, filepath.Base(file)
		}
	}
	shops, unread := s.find(paths)
	if len(shops) != 1 {
		s.sayUnread(unread)
		if len(unread) == 0 {
			s.say("no recipe %q found here", args[0])
		}
		return opened{}, nil, false
	}
	o, more := s.open(shops[0])
	s.sayUnread(append(unread, more...))
	if o.Shop == nil {
		return opened{}, nil, false
	}
	if len(unread)+len(more) > 0 {
		s.say("nothing is done, since not all of the shop could be read")
		o.root.Close()
		return opened{}, nil, false
	}
	recipe := s.pick(o, shops[0], key)
	if recipe == nil {
		o.root.Close()
		return opened{}, nil, false
	}
	return o, recipe, true
}

// pick is the recipe of that key, or without one the only recipe of the files
// that were asked for.
func (s *session) pick(o opened, f found, key string) *schema.Block {
	var keys []string
	var only *schema.Block
	for _, recipe := range o.Recipes() {
		if key == "" && !f.Covers(recipe.File.Name) {
			continue
		}
		if recipe.Label == key {
			return recipe
		}
		keys = append(keys, recipe.Label)
		only = recipe
	}
	switch {
	case key == "" && len(keys) == 1:
		return only
	case key == "" && len(keys) > 1:
		s.say("%s holds several recipes: put # and one of %s behind its name", report.Located(o.Root, only.File.Name), strings.Join(keys, ", "))
	case len(keys) == 0:
		s.say("there is no recipe in it")
	default:
		slices.Sort(keys)
		s.say("there is no recipe %q: %s", key, schema.NearestOrKnown(key, keys, `"`))
	}
	return nil
}
