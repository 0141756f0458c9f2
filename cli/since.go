package cli

import (
	"errors"
	"fmt"
	"os"
	"path"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

// past is the shops as they were at a revision of git, checked by the rules of
// this program and by what the shops had then: settings, stock, rules.
type past struct {
	name  string // as it was asked for, with the commit
	shops map[*lint.Report]*lint.Report
	same  int // recipes that are as they were
}

// pastOf checks the shops of a document as they were at a revision: at the
// last commit that it has in common with what is checked out, so that what
// others did on their branch meanwhile is no change of this one.
func (s *session) pastOf(doc *report.Document, rev string, args []string) (*past, error) {
	here, _, err := s.inRepository(args)
	if err != nil {
		return nil, err
	}
	name, commit, err := s.parting(rev)
	if err != nil {
		return nil, err
	}
	files, err := s.recipeFiles(commit)
	if err != nil {
		return nil, err
	}
	fsys, _, err := s.fileSystem(files)
	if err != nil {
		return nil, err
	}
	asked, _ := lint.Discover(fsys, []string{"."}) // what cannot be read there is new here
	shown := func(name string) string { return shownBelow(here, name) }
	list, _ := s.checkTree(fsys, asked, shown, func(_ lint.Asked, shop *lint.Shop) bool {
		return slices.ContainsFunc(doc.Shops, func(r *lint.Report) bool { return r.Shop.Root == shop.Root || sameShop(r.Shop, shop) })
	})
	p := &past{name: name, shops: map[*lint.Report]*lint.Report{}}
	for _, r := range doc.Shops {
		p.shops[r] = s.before(r, list)
	}
	return p, nil
}

// parting is the commit at which the history of a revision and what is checked
// out here part, and how to call it.
func (s *session) parting(rev string) (name, commit string, err error) {
	tip, err := s.commit(rev)
	if err != nil {
		return "", "", s.unreachable(errors.New("git knows no such revision here"))
	}
	base, err := s.git("", "merge-base", "HEAD", tip)
	if err != nil {
		return "", "", s.unreachable(errors.New("it has no history in common with what is checked out here"))
	}
	commit = strings.TrimSpace(base)
	short, err := s.git("", "rev-parse", "--short", commit)
	if err != nil {
		return "", "", err
	}
	name = fmt.Sprintf("%s (%s)", rev, strings.TrimSpace(short))
	if commit != tip {
		name = fmt.Sprintf("%s, where this branch left it (%s),", rev, strings.TrimSpace(short))
	}
	return name, commit, nil
}

func (s *session) commit(rev string) (string, error) {
	id, err := s.git("", "rev-parse", "--verify", "--quiet", "--end-of-options", rev+"^{commit}")
	return strings.TrimSpace(id), err
}

// unreachable is why a revision cannot be compared with; in a copy of part of
// the history, that it is one.
func (s *session) unreachable(why error) error {
	if shallow, err := s.git("", "rev-parse", "--is-shallow-repository"); err == nil && strings.TrimSpace(shallow) == "true" {
		return fmt.Errorf("%w, since this copy of the repository is shallow: fetch the whole of it (git fetch --unshallow; in CI, ask the host for a full checkout)", why)
	}
	return why
}

// before is a shop as it was: the one in its folder, or one of the same name
// whose folder is no shop any more.
func (s *session) before(r *lint.Report, list []*lint.Report) *lint.Report {
	for _, was := range list {
		if was.Shop.Root == r.Shop.Root {
			return was
		}
	}
	for _, was := range list {
		_, err := os.Stat(s.locate(path.Join(was.Shop.Root, lint.ShopFileName)).full())
		if sameShop(was.Shop, r.Shop) && missing(err) {
			return was
		}
	}
	return nil
}

func sameShop(a, b *lint.Shop) bool {
	return a.Config != nil && b.Config != nil && a.Config.Label != "" && a.Config.Label == b.Config.Label
}

// sieve leaves out what was found before already, about recipes and stock that
// were not changed since. What is said of a recipe that was changed is told
// whole, and so is what is new about another, since its stock, the shop's rules
// or its settings were changed.
func (p *past) sieve() *sieve {
	return &sieve{of: func(r *lint.Report) shopSieve {
		before := p.shops[r]
		if before == nil { // a new shop
			return shopSieve{
				found:     func(*lint.Found, string) (string, bool) { return "", false },
				unchecked: func(*lint.Unchecked, string) bool { return false },
			}
		}
		same := unchangedSince(before.Shop)
		for _, recipe := range r.Checked() {
			if same.block(recipe) {
				p.same++
			}
		}
		known := map[string]lint.Level{} // what is louder than it was is new
		for i, print := range lint.Prints(before.Findings) {
			known[print] = before.Findings[i].Level
		}
		conceded := map[string]bool{}
		for _, print := range lint.Prints(lint.FoundIn(before.Conceded)) {
			conceded[print] = true
		}
		lacked := map[string]lint.Level{}
		for i, print := range lint.UncheckedPrints(before.Unchecked) {
			lacked[print] = before.Unchecked[i].Level
		}
		return shopSieve{
			found: func(f *lint.Found, print string) (string, bool) {
				return "it was so at " + strings.TrimSuffix(p.name, ","), f.Level <= known[print] && same.about(f)
			},
			conceded: func(c *lint.Conceded, print string) bool { return conceded[print] && same.about(&c.Found) },
			unchecked: func(u *lint.Unchecked, print string) bool {
				return u.Level <= lacked[print] && same.place(u.At)
			},
		}
	}}
}

// sentences say how many recipes were changed, and what was left out.
func (p *past) sentences(doc *report.Document, left *leftOut) []string {
	changed := doc.Recipes() - p.same
	list := []string{fmt.Sprintf("Since %s %s changed, of %d checked.", p.name, plural(changed, "recipe was", "recipes were"), doc.Recipes())}
	if text := left.String(); text != "" {
		list = append(list, "Left out, since it was so then and nothing about it was changed: "+text+".")
	}
	return list
}

// unchanged tells what of a shop is as it was.
type unchanged struct {
	blocks map[string]bool // the blocks of then, by name, label and text
	before *lint.Shop
}

func unchangedSince(before *lint.Shop) unchanged {
	u := unchanged{map[string]bool{}, before}
	for _, f := range before.Files() {
		for _, b := range f.Blocks {
			u.blocks[textOf(b)] = true
		}
	}
	return u
}

func (u unchanged) block(b *schema.Block) bool { return u.blocks[textOf(b)] }

// about says whether what a finding is about is as it was.
func (u unchanged) about(f *lint.Found) bool {
	if f.Recipe != nil {
		return u.block(f.Recipe)
	}
	return u.place(f.At)
}

func (u unchanged) place(at lint.Place) bool {
	if top := at.Around(); top != nil {
		return u.block(top)
	}
	was := u.before.File(at.File.Name)
	return was != nil && was.Text.String() == at.File.Text.String()
}

// textOf is the text of a block, whatever its line ends, its indents and its
// empty lines are: laid out anew it is no other block.
func textOf(b *schema.Block) string {
	var out strings.Builder
	for line := range strings.FieldsFuncSeq(b.File.Text.Slice(b.Span), func(r rune) bool { return r == '\n' || r == '\r' }) {
		if words := strings.Fields(line); len(words) > 0 {
			out.WriteString(strings.Join(words, " ") + "\n")
		}
	}
	return out.String()
}
