package drill

import (
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// ExerciseName is what the exercise's file is called while it is checked. It
// comes last in the order of names, so that the shop's own blocks count first.
const ExerciseName = "~exercise" + lint.FileSuffix

// School is a shop with everything but its recipes, and the recipes apart, to
// make exercises of.
type School struct {
	Shop  *lint.Shop // without recipes
	Rules []*lint.Rule
	Today string

	named map[string]*lint.Rule
	kinds []Kind
	of    map[string][]*Kind // by rule
	taken []taken
}

// taken is a recipe that was taken out of the shop.
type taken struct {
	key, title, text string
	bases            []*base // nil: not looked at yet
	looked           bool
}

// NewSchool makes a school of a shop whose rules are these, on a day.
func NewSchool(shop *lint.Shop, rules []*lint.Rule, today string) *School {
	s := &School{Rules: rules, Today: today, named: map[string]*lint.Rule{}, of: map[string][]*Kind{}}
	seen := map[string]bool{}
	var put []*schema.File
	var gone []string
	for _, f := range shop.Files() {
		var edits []schema.Edit
		others := 0
		for _, b := range f.Blocks {
			if !b.Is("recipe") {
				others++
				continue
			}
			edits = append(edits, schema.RemoveBlock(b))
			if !seen[b.Label] && f.Whole {
				seen[b.Label] = true
				s.taken = append(s.taken, taken{key: b.Label, title: b.Title(), text: f.Text.Slice(b.Span) + "\n"})
			}
		}
		switch {
		case edits == nil:
		case others == 0:
			gone = append(gone, f.Name)
		default:
			text, err := schema.Apply(f.Text.String(), edits)
			if err != nil { // blocks of one file do not overlap
				panic(err)
			}
			put = append(put, schema.Read(f.Name, []byte(text)))
		}
	}
	s.Shop = shop.Edit(put, gone)
	for _, r := range rules {
		s.named[r.Name] = r
	}
	s.kinds = append(append(Kinds(), Hunches()...), OwnKinds(shop)...)
	for i := range s.kinds {
		s.of[s.kinds[i].Rule] = append(s.of[s.kinds[i].Rule], &s.kinds[i])
	}
	return s
}

// Files are the texts of the school's shop by name, to be kept beside
// exercises that are given away.
func (s *School) Files() map[string]string {
	files := map[string]string{}
	for _, f := range s.Shop.Files() {
		files[f.Name] = f.Text.String()
	}
	return files
}

// read lays a text over the school's shop and gives the recipe in it of that
// key, else the only one; nil: there is none.
func (s *School) read(text, key string) (*lint.Shop, *schema.File, *schema.Block) {
	file := schema.Read(ExerciseName, []byte(text))
	var found *schema.Block
	n := 0
	for _, b := range file.Blocks {
		if b.Is("recipe") {
			n++
			if found == nil || b.Label == key && found.Label != key {
				found = b
			}
		}
	}
	if n > 1 && found.Label != key {
		found = nil
	}
	return s.Shop.With(file), file, found
}

// check is everything that the rules say of a text as the exercise's file.
func (s *School) check(text string) *lint.Report {
	shop, file, _ := s.read(text, "")
	return lint.RunFile(shop, s.Rules, s.Today, file.Name)
}

// base is a sound recipe to plant slips in.
type base struct {
	key, title string
	draft      bool // set as one for a class, without its test burns
	text       string
	said       *lint.Report
	bench      *Bench
}

// bases are the forms of a recipe that are sound: as it is, with the last burn
// of each candle only, and as one for a class that is not test burned yet, in
// which what it is made of may be changed without a word on burns.
func (s *School) bases(t *taken) []*base {
	if t.looked {
		return t.bases
	}
	t.looked = true
	_, file, recipe := s.read(t.text, t.key)
	if recipe == nil || !file.Whole {
		return nil
	}
	add := func(draft bool, edits []schema.Edit) bool {
		text, err := schema.Apply(t.text, edits)
		if err != nil {
			return false
		}
		for strings.Contains(text, "\n\n\n") { // where burns were taken out
			text = strings.ReplaceAll(text, "\n\n\n", "\n\n")
		}
		text = strings.ReplaceAll(text, "\n\n}\n", "\n}\n")
		b := &base{key: t.key, title: t.title, draft: draft, text: laidOut(text)}
		b.said = s.check(b.text)
		if !sound(b.said) {
			return false
		}
		shop, _, recipe := s.read(b.text, b.key)
		b.bench = NewBench(lint.NewView(shop, recipe, s.Today))
		t.bases = append(t.bases, b)
		return true
	}
	if !add(false, lastBurnsOnly(recipe)) {
		add(false, nil)
	}
	unburned := []schema.Edit{schema.SetValue(recipe.Get("made_for"), `"class"`)}
	for burn := range recipe.Each("test_burn") {
		unburned = append(unburned, schema.RemoveBlock(burn))
	}
	add(true, unburned)
	return t.bases
}

// laidOut is a text in the house layout, so that nothing planted stands out by
// its place; the text itself where it cannot be laid out, or has other lines
// then.
func laidOut(text string) string {
	edits, err := schema.Format(schema.Read(ExerciseName, []byte(text)))
	if err != nil {
		return text
	}
	laid, err := schema.Apply(text, edits)
	if err != nil || strings.Count(laid, "\n") != strings.Count(text, "\n") {
		return text
	}
	return laid
}

// lastBurnsOnly takes out all burns of each candle but the last, and those that
// say what was burned.
func lastBurnsOnly(recipe *schema.Block) []schema.Edit {
	last := map[string]*schema.Block{}
	for burn := range recipe.Each("test_burn") {
		last[burn.Get("candle").Text()] = burn
	}
	var edits []schema.Edit
	for burn := range recipe.Each("test_burn") {
		if last[burn.Get("candle").Text()] != burn && burn.Get("burned_as").Absent() {
			edits = append(edits, schema.RemoveBlock(burn))
		}
	}
	return edits
}

// sound says whether there is nothing that must or should be put right.
func sound(r *lint.Report) bool {
	return len(r.Faults) == 0 && len(loud(r.Findings)) == 0
}

// loud are the findings that must or should be put right. An exercise is about
// these; what is only worth knowing may be there too.
func loud(findings []lint.Found) []lint.Found {
	var all []lint.Found
	for _, f := range findings {
		if f.Level >= lint.Should {
			all = append(all, f)
		}
	}
	return all
}
