package handbook

import (
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

// namesFile is the page of what a rule can name.
const namesFile = "names.html"

// formatPage is a page made of what the program writes about itself.
type formatPage struct {
	Title, Lead, Other, OtherFile string
	First                         html
	Sections                      []section
}

func (b *book) formatPages() {
	b.formatPage("format.html", schema.Manual(), formatPage{
		Lead: "Everything that can be written in a recipe, a stock file, a rule or a shop file.", Other: "What a rule of the shop's own can name", OtherFile: namesFile})
	b.formatPage(namesFile, shoprule.Manual(), formatPage{
		Lead: "For those who write rules of the shop's own.", Other: "How recipes, stock and rules are written down", OtherFile: "format.html"})
}

func (b *book) formatPage(file, text string, p formatPage) {
	all := sections(text)
	p.Title, p.First, p.Sections = all[0].Title, all[0].HTML, all[1:]
	for _, s := range p.Sections {
		b.index.add("format", s.Title, s.Title, file+"#"+s.Anchor, "", s.Lead, s.Text)
	}
	b.page(file, "format", "Format", p.Title, p)
}
