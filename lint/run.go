package lint

import (
	"cmp"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"wickrule/schema"
)

// Report is everything found in one shop, sorted by file, place and rule: the
// same input gives the same report.
type Report struct {
	Shop      *Shop
	Files     int
	Recipes   int
	Findings  []Found
	Conceded  []Conceded
	Unchecked []Unchecked
	Faults    []Fault
	covers    func(file string) bool // nil: every file
}

// Covers says whether the report is about a file of that name.
func (r *Report) Covers(file string) bool { return r.covers == nil || r.covers(file) }

// Checked lists the recipes that the report is about, by file and place.
func (r *Report) Checked() (recipes []*schema.Block) {
	for _, f := range r.Shop.Files() {
		for _, b := range f.Blocks {
			if b.Is("recipe") && r.Covers(f.Name) {
				recipes = append(recipes, b)
			}
		}
	}
	return recipes
}

// Run checks the shop by the rules, on a day ("2026-10-04"). Files are checked
// side by side on all processors.
func Run(shop *Shop, rules []*Rule, today string) *Report {
	return RunFor(shop, rules, today, func(string) bool { return true })
}

// RunFor checks the whole shop and reports what concerns the files that covers
// accepts by name, and the recipes written in them.
func RunFor(shop *Shop, rules []*Rule, today string, covers func(file string) bool) *Report {
	book := newBook(rules)
	files := shop.Files()
	results := make([]gathering, len(files))
	sideBySide(len(files), func(i int) {
		results[i] = checkFile(shop, book, files[i], today)
		if !covers(files[i].Name) {
			results[i].keep(covers)
		}
	})
	r := &Report{Shop: shop, covers: covers}
	for _, f := range files {
		if covers(f.Name) {
			r.Files++
			r.Recipes += recipesIn(f)
		}
	}
	r.fill(results)
	return r
}

// RunFile checks one file: what its own recipes, and the file itself, have to
// answer for.
func RunFile(shop *Shop, rules []*Rule, today, name string) *Report {
	r := &Report{Shop: shop}
	if f := shop.File(name); f != nil {
		r.Files, r.Recipes = 1, recipesIn(f)
		r.fill([]gathering{checkFile(shop, newBook(rules), f, today)})
	}
	return r
}

func recipesIn(f *schema.File) (n int) {
	for _, b := range f.Blocks {
		if b.Is("recipe") {
			n++
		}
	}
	return n
}

// sideBySide does n pieces of work on all processors. A few are done at once:
// waking another processor takes as long as one of them.
func sideBySide(n int, work func(i int)) {
	if n <= 2 {
		for i := range n {
			work(i)
		}
		return
	}
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		wg.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				work(i)
			}
		})
	}
	wg.Wait()
}

// book is the rule list, sorted out by subject and name.
type book struct {
	recipe, file []*Rule
	named        map[string]*Rule
}

func newBook(rules []*Rule) *book {
	b := &book{named: make(map[string]*Rule, len(rules))}
	for _, r := range rules {
		if b.named[r.Name] != nil {
			continue // the first counts, or a shop could put a quiet one in the place of one that binds
		}
		b.named[r.Name] = r
		switch r.About {
		case AboutRecipe:
			b.recipe = append(b.recipe, r)
		case AboutFile:
			b.file = append(b.file, r)
		}
	}
	return b
}

// keep leaves only what stands in a file that covers accepts. Faults stay: a
// check that stopped is told whatever was asked for.
func (g *gathering) keep(covers func(file string) bool) {
	g.found = slices.DeleteFunc(g.found, func(f Found) bool { return !covers(f.At.File.Name) })
	g.conceded = slices.DeleteFunc(g.conceded, func(c Conceded) bool { return !covers(c.At.File.Name) })
	g.unchecked = slices.DeleteFunc(g.unchecked, func(n need) bool { return !covers(n.block.File.Name) })
}

// checkFile is everything about one file: itself, and each recipe in it.
func checkFile(shop *Shop, book *book, f *schema.File, today string) gathering {
	out := checkAlone(shop, book, f, today, nil)
	for _, b := range f.Blocks {
		if b.Is("recipe") {
			out.add(checkRecipe(shop, book, b, today, nil))
		}
	}
	return out
}

// checkRecipe is what the rules about recipes say of one. What it looks at is
// noted, where notes is not nil.
func checkRecipe(shop *Shop, book *book, recipe *schema.Block, today string, notes *[]look) gathering {
	out := gathering{whole: recipe.File.Whole}
	pass := &Pass{View: NewView(shop, recipe, today), book: book, out: &out}
	pass.notes = notes
	for _, r := range book.recipe {
		pass.rule = r
		pass.run()
	}
	concede(book, pass)
	out.sayOnce()
	return out
}

// sayOnce takes out of what could not be checked what a finding asks for that
// is heard: the maker is told once, and louder.
func (g *gathering) sayOnce() {
	for i := range g.found {
		if lack := g.found[i].Lacks; lack.Block != nil {
			g.unchecked = slices.DeleteFunc(g.unchecked, func(n need) bool { return n.block == lack.Block && n.attr == lack.Attr })
		}
	}
}

// checkAlone is what the rules about files, and the reader, say of one.
func checkAlone(shop *Shop, book *book, f *schema.File, today string, notes *[]look) gathering {
	out := gathering{whole: f.Whole}
	pass := &Pass{View: &View{File: f, shop: shop, today: today, notes: notes}, book: book, out: &out}
	for _, r := range book.file {
		pass.rule = r
		pass.run()
	}
	out.found = append(out.found, problems(shop, book, f)...)
	return out
}

// run calls the rule's check. A rule that stops is reported, what it had said
// is kept, and the others go on.
func (p *Pass) run() {
	defer func() {
		if reason := recover(); reason != nil {
			f := Fault{Rule: p.rule.Name, Reason: fmt.Sprint(reason)}
			if p.Recipe != nil {
				f.At = AtHeader(p.Recipe)
			}
			p.out.faults = append(p.out.faults, f)
		}
	}()
	p.rule.Check(p)
}

// problems turns what the reader met in a file into findings.
func problems(shop *Shop, book *book, f *schema.File) []Found {
	var found []Found
	for _, problem := range f.Problems {
		rule := book.named[problem.Rule]
		if rule == nil {
			continue
		}
		made := Sale
		recipe := recipeOf(problem.Block)
		if recipe != nil {
			made = parseMadeFor(recipe.Get("made_for").Text())
		}
		level := loudness(shop, rule, Levels{}, made)
		if level == Silent {
			continue
		}
		finding := Finding{At: Place{f, problem.Span}, Message: problem.Message}
		if len(problem.Fixes) > 0 {
			fixes := problem.Fixes
			finding.Fixes = func() []schema.Fix { return fixes }
		}
		found = append(found, Found{Finding: finding, Rule: rule, Level: level, Recipe: recipe})
	}
	return found
}

// recipeOf is the shop's recipe that the block lies in; an example inside a
// shop rule is not one.
func recipeOf(b *schema.Block) *schema.Block {
	for ; b != nil; b = b.Parent {
		if b.Is("recipe") && b.Parent == nil {
			return b
		}
	}
	return nil
}

// fill makes the report of what was gathered.
func (r *Report) fill(results []gathering) {
	var needs []need
	for _, g := range results {
		r.Findings = append(r.Findings, g.found...)
		r.Conceded = append(r.Conceded, g.conceded...)
		r.Faults = append(r.Faults, g.faults...)
		needs = append(needs, g.unchecked...)
	}
	r.Unchecked = mergeNeeds(needs)
	r.sort()
}

// mergeNeeds makes one entry of all that wait for the same attribute of the
// same block.
func mergeNeeds(needs []need) []Unchecked {
	type key struct {
		block *schema.Block
		attr  string
	}
	index := map[key]int{}
	var merged []Unchecked
	for _, n := range needs {
		k := key{n.block, n.attr}
		i, ok := index[k]
		if !ok {
			i = len(merged)
			index[k] = i
			merged = append(merged, Unchecked{Needs: n.block.Name() + "." + n.attr, At: AtHeader(n.block), block: n.block, attr: n.attr})
		}
		u := &merged[i]
		u.Level = max(u.Level, n.level)
		if !slices.Contains(u.Rules, n.rule) {
			u.Rules = append(u.Rules, n.rule)
		}
	}
	for i := range merged {
		u := &merged[i]
		slices.Sort(u.Rules)
		u.Message = fmt.Sprintf("%s does not state %s, so this could not be checked: %s", u.block.Title(), u.attr, strings.Join(u.Rules, ", "))
	}
	return merged
}

func (r *Report) sort() {
	slices.SortFunc(r.Findings, compareFound)
	r.Findings = said(r.Findings)
	slices.SortFunc(r.Conceded, func(a, b Conceded) int { return compareFound(a.Found, b.Found) })
	slices.SortFunc(r.Unchecked, func(a, b Unchecked) int {
		return cmp.Or(a.At.compare(b.At), strings.Compare(a.Needs, b.Needs))
	})
	slices.SortFunc(r.Faults, func(a, b Fault) int { return strings.Compare(a.Rule+a.Reason, b.Rule+b.Reason) })
}

// mostNotes is how many places one finding names at most that several recipes
// share.
const mostNotes = 8

// said makes one finding of those that say the same of the same place, as two
// recipes do of a label they share; it keeps the notes of each.
func said(sorted []Found) []Found {
	kept := sorted[:0]
	for _, f := range sorted {
		if n := len(kept); n > 0 && kept[n-1].Rule == f.Rule && kept[n-1].At == f.At && kept[n-1].Message == f.Message {
			same := &kept[n-1]
			for _, note := range f.Notes {
				if len(same.Notes) < mostNotes && !slices.Contains(same.Notes, note) {
					same.Notes = slices.Concat(same.Notes, []Note{note}) // the first finding's own stay as they are
				}
			}
			continue
		}
		kept = append(kept, f)
	}
	return kept
}

// compareFound is the order of a report.
func compareFound(a, b Found) int {
	return cmp.Or(a.At.compare(b.At), strings.Compare(a.Rule.Name, b.Rule.Name), strings.Compare(a.Message, b.Message),
		slices.CompareFunc(a.Notes, b.Notes, func(x, y Note) int {
			return cmp.Or(x.compare(y.Place), strings.Compare(x.Message, y.Message))
		}))
}
