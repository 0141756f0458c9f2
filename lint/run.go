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
}

// Run checks the shop by the rules, on a day ("2026-10-04"). Recipes are
// checked side by side on all processors.
func Run(shop *Shop, rules []*Rule, today string) *Report {
	return RunFor(shop, rules, today, func(string) bool { return true })
}

// RunFor checks the whole shop and reports what concerns the files that covers
// accepts by name, and the recipes written in them.
func RunFor(shop *Shop, rules []*Rule, today string, covers func(file string) bool) *Report {
	book := newBook(rules)
	results := make([]recipeResult, len(shop.Recipes))
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), max(1, len(shop.Recipes))) {
		wg.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(shop.Recipes) {
					return
				}
				results[i] = checkRecipe(shop, book, shop.Recipes[i], today)
			}
		})
	}
	wg.Wait()

	r := &Report{Shop: shop}
	for _, f := range shop.Files {
		if covers(f.Name) {
			r.Files++
		}
	}
	whole := recipeResult{gathering: checkShop(shop, book, today)}
	whole.found = append(whole.found, problems(shop, book)...)
	for i := range results {
		if covers(shop.Recipes[i].File.Name) {
			r.Recipes++
			continue
		}
		results[i].keep(covers)
	}
	whole.keep(covers)
	var needs []need
	for _, res := range append(results, whole) {
		r.Findings = append(r.Findings, res.found...)
		r.Conceded = append(r.Conceded, res.conceded...)
		r.Faults = append(r.Faults, res.faults...)
		needs = append(needs, res.unchecked...)
	}
	r.Unchecked = mergeNeeds(needs)
	r.sort()
	return r
}

// book is the rule list, sorted out by subject and name.
type book struct {
	recipe, shop []*Rule
	named        map[string]*Rule
}

func newBook(rules []*Rule) *book {
	b := &book{named: make(map[string]*Rule, len(rules))}
	for _, r := range rules {
		b.named[r.Name] = r
		switch r.About {
		case AboutRecipe:
			b.recipe = append(b.recipe, r)
		case AboutShop:
			b.shop = append(b.shop, r)
		}
	}
	return b
}

type recipeResult struct {
	gathering
	conceded []Conceded
}

// keep leaves only what stands in a file that covers accepts. Faults stay: a
// check that stopped is told whatever was asked for.
func (r *recipeResult) keep(covers func(file string) bool) {
	r.found = slices.DeleteFunc(r.found, func(f Found) bool { return !covers(f.At.File.Name) })
	r.conceded = slices.DeleteFunc(r.conceded, func(c Conceded) bool { return !covers(c.At.File.Name) })
	r.unchecked = slices.DeleteFunc(r.unchecked, func(n need) bool { return !covers(n.block.File.Name) })
}

func checkRecipe(shop *Shop, book *book, recipe *schema.Block, today string) recipeResult {
	res := recipeResult{gathering: gathering{whole: recipe.File.Whole}}
	pass := &Pass{View: NewView(shop, recipe, today), book: book, out: &res.gathering}
	for _, r := range book.recipe {
		pass.rule = r
		pass.run()
	}
	concede(shop, book, pass, &res)
	return res
}

func checkShop(shop *Shop, book *book, today string) gathering {
	out := gathering{whole: true}
	pass := &Pass{View: NewView(shop, nil, today), book: book, out: &out}
	for _, r := range book.shop {
		pass.rule = r
		pass.run()
	}
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

// problems turns what the reader met into findings.
func problems(shop *Shop, book *book) []Found {
	var found []Found
	for _, f := range shop.Files {
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
	r.Findings = slices.CompactFunc(r.Findings, func(a, b Found) bool {
		return a.Rule == b.Rule && a.At == b.At && a.Message == b.Message
	})
	slices.SortFunc(r.Conceded, func(a, b Conceded) int { return compareFound(a.Found, b.Found) })
	slices.SortFunc(r.Unchecked, func(a, b Unchecked) int {
		return cmp.Or(a.At.compare(b.At), strings.Compare(a.Needs, b.Needs))
	})
	slices.SortFunc(r.Faults, func(a, b Fault) int { return strings.Compare(a.Rule+a.Reason, b.Rule+b.Reason) })
}

func compareFound(a, b Found) int {
	return cmp.Or(a.At.compare(b.At), strings.Compare(a.Rule.Name, b.Rule.Name), strings.Compare(a.Message, b.Message))
}

// RunFile checks one file: what its own recipes, and the file itself, have to
// answer for.
func RunFile(shop *Shop, rules []*Rule, today, name string) *Report {
	return RunFor(shop, rules, today, func(file string) bool { return file == name })
}
