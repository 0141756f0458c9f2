package report

import (
	"cmp"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"

	"github.com/rivo/uniseg"

	"wickrule/lint"
	"wickrule/schema"
)

// margin is where messages start, right of the level's word.
const margin = 12

// shownFixes is how many of a finding's fixes are written out.
const shownFixes = 3

// Caution stands under every report and page made for people.
const Caution = "These figures are an aid, not a test report. Your suppliers' sheets, local codes and licensed practice go first."

// Text writes the document for a maker at a terminal or on paper: by recipe,
// the message first, then the place, then what to do.
func Text(w io.Writer, d *Document, look Look) error {
	p := NewPage(look)
	for _, shop := range d.Shops {
		p.shop(shop, d.standingIn(shop), len(d.Shops) > 1)
	}
	p.Closing(d)
	_, err := io.WriteString(w, p.String())
	return err
}

func (p *Page) shop(r *lint.Report, standing []Standing, several bool) {
	if len(r.Findings)+len(standing)+len(r.Conceded)+len(r.Unchecked)+len(r.Faults) == 0 {
		return
	}
	if several {
		p.Title(shopTitle(r.Shop), r.Shop.Root)
		p.Line(strings.Repeat("=", p.width))
		p.Blank()
	}
	for _, g := range groups(r.Findings) {
		p.Apart(0, g.title, g.file, styleTitle, styleFaint)
		p.Blank()
		for i := range g.found {
			p.finding(&g.found[i], g.name)
			p.Blank()
		}
	}
	p.standing(standing)
	p.conceded(r.Conceded)
	p.unchecked(r.Unchecked)
	p.faults(r.Faults)
}

func shopTitle(s *lint.Shop) string {
	if title := s.Config.Title(); title != "" {
		return title
	}
	return "A shop without a shop file"
}

// group is the findings about one recipe, or those in one file that are about
// no recipe.
type group struct {
	name  string // the file's name
	title string
	file  string // shown at the right; "" where the title is the file
	at    int32
	found []lint.Found
}

func groups(found []lint.Found) []*group {
	type key struct {
		recipe *schema.Block
		file   string
	}
	byKey := map[key]*group{}
	var list []*group
	for _, f := range found {
		recipe := recipeOf(&f)
		k := key{recipe, f.At.File.Name}
		if recipe != nil {
			k.file = recipe.File.Name
		}
		g := byKey[k]
		if g == nil {
			g = &group{name: k.file, title: k.file, at: -1}
			if recipe != nil {
				g.title, g.file, g.at = recipe.Title(), k.file, recipe.Span.Start
			}
			byKey[k] = g
			list = append(list, g)
		}
		g.found = append(g.found, f)
	}
	slices.SortStableFunc(list, func(a, b *group) int {
		return cmp.Or(strings.Compare(a.name, b.name), cmp.Compare(a.at, b.at))
	})
	return list
}

// recipeOf is the recipe a finding is about, or stands in.
func recipeOf(f *lint.Found) *schema.Block {
	if f.Recipe != nil {
		return f.Recipe
	}
	for _, b := range f.At.File.Blocks {
		if b.Is("recipe") && b.Span.Contains(f.At.Span) {
			return b
		}
	}
	return nil
}

func (p *Page) finding(f *lint.Found, home string) {
	p.message(f.Level, f.Message)
	p.place(f.At, home, f.Rule.Name)
	for _, n := range f.Notes {
		p.Wrap("", margin, NoteText(n, f.At.File.Name))
	}
	fixes := f.Repairs()
	for i, fix := range fixes {
		if more := len(fixes) - i; i == shownFixes && more > 1 {
			p.Wrap("", margin, fmt.Sprintf("or one of %d further ways", more))
			break
		}
		title := fix.Title
		if i > 0 {
			title = "or " + title
		}
		p.Wrap("", margin, title)
	}
}

func (p *Page) message(level lint.Level, text string) {
	lead := p.level(level, margin)
	for _, line := range wrap(Clean(text), p.width-margin) {
		p.Line(lead + line)
		lead = strings.Repeat(" ", margin)
	}
}

// place writes where something stands, with the line as it is typed, and the
// rule at the right edge.
func (p *Page) place(at lint.Place, home, rule string) {
	line := at.File.Text.Line(at.Span.Start)
	where := Whereabouts(at, home)
	typed := strings.TrimSpace(Clean(at.File.Text.Slice(at.File.Text.LineSpan(line))))
	own := p.width - margin - uniseg.StringWidth(where) - 2 // a line without the rule
	beside := own - uniseg.StringWidth(rule) - 2
	switch {
	case typed == "":
	case beside >= readable:
		where += ": " + shorten(typed, beside)
	case own >= readable && at.File.Name == home:
		where += ": " + shorten(typed, own)
	}
	p.Apart(margin, where, rule, styleNone, styleFaint)
}

// readable is how much of a typed line is worth showing.
const readable = 16

// Whereabouts is a line, with the file where it is not the one at hand.
func Whereabouts(at lint.Place, home string) string {
	where := fmt.Sprintf("line %d", at.File.Text.Line(at.Span.Start))
	if at.File.Name != home {
		where = at.File.Name + ", " + where
	}
	return where
}

// NoteText is a note with its place: "limit stated here" becomes "limit stated
// in stock/waxes.candle.hcl, line 12".
func NoteText(n lint.Note, home string) string {
	where := Whereabouts(n.Place, home)
	if said, ok := strings.CutSuffix(n.Message, " here"); ok {
		return said + " in " + where
	}
	return n.Message + ": " + where
}

// standingHeading stands over what does not count and must be put right.
const standingHeading = "Left out of the count, and still to be put right"

func (p *Page) standing(list []Standing) {
	if len(list) == 0 {
		return
	}
	p.Heading(standingHeading)
	p.Blank()
	for i := range list {
		s := &list[i]
		p.message(s.Level, s.Message)
		p.place(s.At, "", s.Rule.Name)
		p.Wrap("", margin, s.Why)
		p.Blank()
	}
}

func (p *Page) conceded(list []lint.Conceded) {
	if len(list) == 0 {
		return
	}
	p.Heading("Conceded, with a reason")
	p.Blank()
	for _, c := range list {
		p.message(c.Level, c.Message)
		p.place(c.At, "", c.Rule.Name)
		reason := "conceded in " + Whereabouts(lint.AtLabel(c.Concession), c.At.File.Name) + ": " + c.Concession.Get("reason").Text()
		if until := c.Concession.Get("until").Text(); until != "" {
			reason += " (until " + until + ")"
		}
		p.Wrap("", margin, reason)
		p.Blank()
	}
}

func (p *Page) unchecked(list []lint.Unchecked) {
	if len(list) == 0 {
		return
	}
	p.Heading("Could not be checked, for want of a figure")
	p.Blank()
	for _, u := range list {
		p.message(u.Level, u.Message)
		p.Wrap("", margin, Whereabouts(u.At, ""))
		p.Blank()
	}
}

func (p *Page) faults(list []lint.Fault) {
	if len(list) == 0 {
		return
	}
	p.Heading("Faults in wickrule itself")
	p.Blank()
	for _, f := range list {
		p.Wrap("", 2, faultText(f))
		p.Blank()
	}
}

func faultText(f lint.Fault) string {
	text := fmt.Sprintf("The check %s stopped, the others went on: %s.", f.Rule, f.Reason)
	if f.At.File != nil {
		text += fmt.Sprintf(" It was looking at %s, line %d.", f.At.File.Name, f.At.File.Text.Line(f.At.Span.Start))
	}
	return text
}

// Closing says how it stands in plain words, what can be mended, and the
// standing caution.
func (p *Page) Closing(d *Document) {
	p.Wrap("", 0, verdict(d))
	for _, sentence := range d.LeftOut {
		p.Wrap("", 0, sentence)
	}
	unchecked := 0
	for _, shop := range d.Shops {
		unchecked += len(shop.Unchecked)
	}
	if unchecked > 0 {
		p.Wrap("", 0, count(unchecked, "figure is", "figures are")+" missing, so not everything could be checked.")
	}
	if n := len(d.Unread); n > 0 {
		p.Wrap("", 0, count(n, "file or folder", "files or folders")+" could not be read.")
	}
	if n := mendable(d); n > 0 {
		p.Wrap("", 0, fmt.Sprintf("wickrule mend puts %d of these right without changing what is made.", n))
	}
	p.Wrap("", 0, Caution)
}

func verdict(d *Document) string {
	checked := count(d.Recipes(), "recipe", "recipes") + " checked"
	if d.Recipes() == 0 {
		checked = "No recipe among " + count(d.Files(), "file", "files")
	}
	var parts []string
	for _, said := range [...]struct {
		level     lint.Level
		one, many string
	}{
		{lint.Must, "must be put right", "must be put right"},
		{lint.Should, "should be put right or conceded with a reason", "should be put right or conceded with a reason"},
		{lint.Consider, "is worth knowing", "are worth knowing"},
	} {
		n := d.Count(said.level)
		switch {
		case n == 0:
		case len(parts) == 0: // the noun is said once
			parts = append(parts, count(n, "thing "+said.one, "things "+said.many))
		default:
			parts = append(parts, count(n, said.one, said.many))
		}
	}
	if len(parts) == 0 {
		parts = []string{"nothing found that must or should be put right"}
		if len(d.LeftOut) > 0 {
			parts = []string{"nothing new found that must or should be put right"}
		}
	}
	return checked + ": " + strings.Join(parts, ", ") + "."
}

// mendable counts the findings that have a safe fix.
func mendable(d *Document) int {
	n := 0
	for _, shop := range d.Shops {
		for i := range shop.Findings {
			if slices.ContainsFunc(shop.Findings[i].Repairs(), func(f schema.Fix) bool { return f.Safe }) {
				n++
			}
		}
	}
	return n
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// Located is a file's name as the user can reach it from where they are: below
// the shop's root.
func Located(root, name string) string {
	if strings.HasPrefix(root, "//") { // of a machine in the network
		return "/" + path.Join(root, name)
	}
	return path.Join(root, name)
}
