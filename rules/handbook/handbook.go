package handbook

import (
	"bytes"
	_ "embed"
	"html/template"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/sheet"
)

// Order is what a handbook is made of.
type Order struct {
	Shop  *lint.Shop
	Demo  *lint.Shop                    // the shop that the built-in rules' examples are laid over
	Rules func(*lint.Shop) []*lint.Rule // every rule that a shop is checked by, built-in ones first
	Today string                        // "2026-10-04": the day the examples are judged on
}

// File is one file of a handbook. All lie in one folder.
type File struct {
	Name  string
	Bytes []byte
}

// The files that are not pages.
const (
	styleFile  = "handbook.css"
	searchFile = "search.js"
	indexFile  = "search-index.js"
)

//go:embed handbook.css
var style []byte

//go:embed search.js
var searchScript []byte

//go:embed pages.html.tmpl
var pagesText string

var pages = template.Must(template.New("").Parse(pagesText))

// Make makes every file of a handbook, sorted by name. It is an error where an
// example of a built-in rule cannot be laid over the demo shop.
func Make(o Order) ([]File, error) {
	b := newBook(o)
	if err := b.write(); err != nil {
		return nil, err
	}
	b.files = append(b.files, File{styleFile, style}, File{searchFile, searchScript}, File{indexFile, b.index.script()})
	slices.SortFunc(b.files, func(x, y File) int { return strings.Compare(x.Name, y.Name) })
	return b.files, nil
}

// book is a handbook while it is made.
type book struct {
	Order
	title    string
	rules    []*lint.Rule // in force in the shop
	terms    *terms
	links    *linker
	index    index
	files    []File
	cautions cautions
}

// cautions stand on every page.
type cautions struct {
	Bench, Burning []string
	Deferral       string
}

func newBook(o Order) *book {
	b := &book{Order: o, title: o.Shop.Config.Title(), rules: o.Rules(o.Shop), terms: glossary()}
	if b.title == "" {
		b.title = "A shop without a name"
	}
	b.cautions = cautions{sheet.Bench(), sheet.Burning(), sheet.Deferral("handbook")}
	b.links = newLinker(b.terms, b.rules, b.own)
	return b
}

// own says whether a rule is one of the shop's own.
func (b *book) own(r *lint.Rule) bool { return r.Group == ownGroup }

func (b *book) write() error {
	b.cover()
	if err := b.rulePages(); err != nil {
		return err
	}
	b.rulesPage()
	b.stockPage()
	b.trialsPage()
	b.wordsPage()
	b.formatPages()
	b.searchPage()
	return nil
}

// frame is what every page has around it.
type frame struct {
	Title    string // of the page
	Shop     string
	Part     string // which of the parts it belongs to; "" for the cover
	Parts    []part
	Today    string
	Cautions cautions
	Search   bool // the page brings the search with it
	Body     any
}

// part is one of the dividers of the binder.
type part struct{ Name, File, About string }

var parts = []part{
	{"Rules", "rules.html", "every rule in force here, why it is one, and how to keep it"},
	{"Stock", "stock.html", "what stands on the shelves, with the limits of each"},
	{"Trials", "trials.html", "what was tried, what came of it, and what rests on it"},
	{"Words", "words.html", "the words of the trade, in plain English"},
	{"Format", "format.html", "how recipes and stock are written down"},
	{"Look up", "search.html", "find a word, a rule or a stock key"},
}

// page lays out one page by its template.
func (b *book) page(file, template, part, title string, body any) {
	var out bytes.Buffer
	f := frame{Title: title, Shop: b.title, Part: part, Parts: parts, Today: b.Today, Cautions: b.cautions, Search: file == "search.html", Body: body}
	if err := pages.ExecuteTemplate(&out, template, f); err != nil {
		panic(err) // the templates are part of the program: a fault
	}
	b.files = append(b.files, File{file, out.Bytes()})
}
