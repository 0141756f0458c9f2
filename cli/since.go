package cli

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

// leaveOutBefore leaves out of a report what was found at a revision of git
// already, in recipes that were not changed since. The shops are checked as
// they were then, by today's rules of the program and of that day of the shop:
// so a recipe is back in where its stock, its rules or its settings were changed
// and something else is found for it.
func (s *session) leaveOutBefore(doc *report.Document, rev string, args []string) error {
	commit, err := s.git("", "rev-parse", "--verify", "--quiet", "--end-of-options", rev+"^{commit}")
	if err != nil {
		if shallow, serr := s.git("", "rev-parse", "--is-shallow-repository"); serr == nil && strings.TrimSpace(shallow) == "true" {
			return fmt.Errorf("this copy of the repository does not reach back to it: fetch the whole history (git fetch --unshallow)")
		} else if serr != nil {
			return serr
		}
		return fmt.Errorf("git knows no such revision here")
	}
	here, _, err := s.inRepository(args)
	if err != nil {
		return err
	}
	files, err := s.recipeFiles(strings.TrimSpace(commit))
	if err != nil {
		return err
	}
	fsys, _, err := s.fileSystem(files)
	if err != nil {
		return err
	}
	asked, _ := lint.Discover(fsys, []string{"."})
	was := map[string]*lint.Report{}
	wanted := func(a lint.Asked, shop *lint.Shop) bool {
		return slices.ContainsFunc(doc.Shops, func(r *lint.Report) bool { return r.Shop.Root == shop.Root })
	}
	list, _ := s.checkTree(fsys, asked, func(name string) string { return shownBelow(here, name) }, wanted)
	for _, r := range list {
		was[r.Shop.Root] = r
	}
	left, recipes := leftOut{}, 0
	for _, r := range doc.Shops {
		before := was[r.Shop.Root]
		if before == nil {
			continue // a new shop
		}
		n := leaveOutStanding(r, before, &left)
		recipes += n
	}
	doc.LeftOut = append(doc.LeftOut, fmt.Sprintf("Since %s %s changed, of %d checked.", rev, pluralWere(doc.Recipes()-recipes), doc.Recipes()))
	doc.LeftOut = append(doc.LeftOut, left.sentences("found at "+rev+" already, in recipes that were not changed since")...)
	return nil
}

func pluralWere(n int) string {
	if n == 1 {
		return "1 recipe was"
	}
	return fmt.Sprintf("%d recipes were", n)
}

// leaveOutStanding leaves out of one shop's report what stood in the one before,
// and counts the recipes that are as they were.
func leaveOutStanding(r, before *lint.Report, left *leftOut) (same int) {
	texts := map[string]string{}
	for _, recipe := range before.Shop.Recipes() {
		texts[recipe.Label] = textOf(recipe)
	}
	unchanged := map[*schema.Block]bool{}
	for _, recipe := range r.Checked() {
		if text, was := texts[recipe.Label]; was && text == textOf(recipe) {
			unchanged[recipe] = true
			same++
		}
	}
	sameFile := func(f *schema.File) bool {
		was := before.Shop.File(f.Name)
		return was != nil && was.Text.String() == f.Text.String()
	}
	known := map[string]lint.Level{} // what speaks louder than it did is new
	for i, print := range lint.Prints(before.Findings) {
		known[print] = before.Findings[i].Level
	}
	lacked := map[string]bool{}
	for i := range before.Unchecked {
		lacked[lacking(&before.Unchecked[i])] = true
	}
	drop(r, func(f *lint.Found, print string) bool {
		still := f.Recipe != nil && unchanged[f.Recipe] || f.Recipe == nil && sameFile(f.At.File)
		if !still || f.Level > known[print] {
			return false
		}
		left.add(r.Shop, f)
		return true
	}, func(u *lint.Unchecked) bool {
		top := topOf(u.Of())
		was := before.Shop.Find(top.Name(), top.Label)
		return was != nil && textOf(was) == textOf(top) && lacked[lacking(u)]
	})
	return same
}

// textOf is the text of a block whatever its line ends are: a file that git
// gave others is no other file.
func textOf(b *schema.Block) string {
	return strings.ReplaceAll(b.File.Text.Slice(b.Span), "\r\n", "\n")
}
