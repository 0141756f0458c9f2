package schema

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/schema/quantity"
)

//go:generate go run ./formatref

// Reference is the format page, FORMAT.md, written from the language table.
// The same table always gives the same page.
func Reference() string {
	return manual("Written from the language table itself; after a change there, run `go generate ./schema`.\n\n")
}

// Manual is the format page for those who write recipes: without the word to
// those who change the program.
func Manual() string { return manual("") }

func manual(note string) string {
	p := &page{}
	p.line("# The format of candle recipes\n\n" + note + writing)
	p.quantities()
	p.contents()
	for _, s := range language.tops {
		p.topBlock(s)
	}
	p.cautions()
	return p.String()
}

// page is the text so far, and which blocks stand in it.
type page struct {
	strings.Builder
	shown []*BlockSpec
}

func (p *page) linef(format string, args ...any) {
	fmt.Fprintf(p, format, args...)
	p.WriteByte('\n')
}

func (p *page) line(text string) {
	p.WriteString(text)
	p.WriteByte('\n')
}

const writing = `Recipes and stock stand in files named ` + "`*.candle.hcl`" + `, in UTF-8. A file holds **blocks**; a block has a name, mostly a
key in quotes, and between braces **attributes**, one to a line, and further blocks:

` + "```hcl" + `
fragrance "tide-and-thyme" {       # a block: its name and its key
  title       = "Tide and thyme"   # attributes
  flash_point = "190 °F"
}
` + "```" + `

- **Keys** are small letters, digits and hyphens (` + "`tide-and-thyme`" + `), and no two blocks of one kind share one in a shop.
- **Text and amounts** stand in straight double quotes, numbers and true or false without: ` + "`weight = \"36 oz\"`, `count = 2`, `wick_hole = true`" + `.
- **Lists** stand in brackets: ` + "`markets = [\"US\", \"EU\"]`" + `. Where a list may stand, a single value may.
- **Long text** may stand between ` + "`<<-END`" + ` and ` + "`END`" + `, each on its own line.
- **Comments** run from ` + "`#`" + ` to the end of the line.
- A block written on one line holds one attribute: ` + "`step \"melt\" { to = \"186 °F\" }`" + `.
- Nothing is computed in a recipe or in stock: it is read by people at a melting pot. Only rules compute.
- The order of attributes does not matter. The order of steps does.

A **shop** is a folder with a ` + "`shop.candle.hcl`" + ` and every ` + "`*.candle.hcl`" + ` below it. Any file may hold any block.
`

func (p *page) quantities() {
	p.line(`## Amounts

An amount is a number with its unit, in quotes. The number may be a decimal, a fraction or both (` + "`\"2 1/2 in\"`" + `); units of one
kind may follow one another (` + "`\"2 lb 8 oz\"`, `\"1 h 45 min\"`" + `); ` + "`to`" + ` makes a range where one is allowed (` + "`\"168 to 182 °F\"`" + `). What
you write is kept as you wrote it. Where an amount has to be turned into another unit, that is done exactly.

Capitals, dots and the space before a unit do not matter. An ounce is always a weight, a fluid ounce always a volume. A
percentage of fragrance says of what: ` + "`\"8 % of wax\"`" + ` is 7.41 % of total.

| amount | unit | also written | is |
|---|---|---|---|`)
	units := quantity.Units()
	for d := quantity.Weight; d <= quantity.Count; d++ {
		name := d.String()
		for _, u := range units {
			if u.Dim != d {
				continue
			}
			p.linef("| %s | %s | %s | %s |", name, u.Symbol, cell(spellings(u)), unitSize(u, units))
			name = ""
		}
	}
	p.line(`
Sizes are those of NIST SP 811, Appendix B, and NIST Handbook 44, Appendix C.
`)
}

// spellings are the other ways to write a unit. A difference is written like a
// temperature.
func spellings(u *quantity.Unit) string {
	if u.Dim == quantity.Difference {
		return "like a temperature, where a difference is meant"
	}
	var others []string
	for _, s := range u.Spellings {
		if !strings.EqualFold(s, u.Symbol) {
			others = append(others, s)
		}
	}
	return strings.Join(others, ", ")
}

// unitSize is a unit in the base unit of its kind, where that is worth saying.
func unitSize(u *quantity.Unit, units []*quantity.Unit) string {
	one := quantity.Int(1)
	switch {
	case u.Dim == quantity.Temperature, u.Dim == quantity.Difference, u.Dim == quantity.Share, u.Dim == quantity.Count:
		return ""
	case u.Dim == quantity.Proportion:
		if strings.HasPrefix(u.Symbol, "%") {
			return ""
		}
		return sizeIn(u.Factor.Mul(quantity.Int(100)), "% of wax")
	}
	for _, base := range units {
		if base == u {
			return ""
		}
		if base.Dim == u.Dim && base.Factor.Equal(one) {
			return sizeIn(u.Factor, base.Symbol)
		}
	}
	return ""
}

// sizeIn writes a factor out in full, or says that it is cut short where its
// digits never end.
func sizeIn(factor quantity.Rat, symbol string) string {
	if places, ends := factor.Big().FloatPrec(); ends {
		return factor.Decimal(places) + " " + symbol
	}
	return "about " + factor.Decimal(6) + " " + symbol
}

func (p *page) contents() {
	p.line("## Blocks\n")
	p.line("| block | what it is |\n|---|---|")
	for _, s := range language.tops {
		p.linef("| [%s](#%s) | %s |", s.Name, s.Name, cell(firstSentence(s.Doc)))
	}
	p.line("")
}

func (p *page) topBlock(s *BlockSpec) {
	p.linef("## %s\n", s.Name)
	p.line(s.Doc + "\n")
	p.line(labelWords(s) + "\n")
	p.example(s)
	p.attributes(s)
	if s.Blocks != nil {
		p.innerBlocks(s)
	}
}

func (p *page) innerBlocks(s *BlockSpec) {
	for _, b := range s.Blocks {
		p.linef("### %s in %s\n", b.Name, article(s.Name))
		p.line(b.Doc + "\n")
		if b.Label == StepKind {
			p.steps(b)
			continue
		}
		p.line(labelWords(b) + "\n")
		if first := p.shownAlike(b); first != nil {
			p.linef("Example: `%s`. It takes what %s takes.\n", header(b), article(words(first)))
			continue
		}
		p.example(b)
		if b.Block("recipe") != nil {
			p.line("It holds any top-level block save another rule.\n")
			continue
		}
		p.attributes(b)
		if len(b.Blocks) > 0 && b.Blocks[0].Label != StepKind { // the steps have been told of
			p.innerBlocks(b)
		}
	}
}

// shownAlike is a block already on the page that takes the very same
// attributes, or nil.
func (p *page) shownAlike(s *BlockSpec) *BlockSpec {
	for _, other := range p.shown {
		if other.Name == s.Name && sameAttrs(other, s) {
			return other
		}
	}
	for _, other := range p.shown {
		if sameAttrs(other, s) && slices.Contains(vesselKinds, s.Name) {
			return other
		}
	}
	return nil
}

func sameAttrs(a, b *BlockSpec) bool {
	return len(a.Attrs) > 0 && slices.EqualFunc(a.Attrs, b.Attrs, func(x, y *AttrSpec) bool {
		return x.Name == y.Name && x.Takes() == y.Takes()
	})
}

func (p *page) example(s *BlockSpec) {
	p.linef("```hcl\n%s\n```\n", strings.TrimRight(s.Example, "\n"))
}

func (p *page) attributes(s *BlockSpec) {
	p.shown = append(p.shown, s)
	p.table(s.Attrs)
}

func (p *page) table(attrs []*AttrSpec) {
	p.line("| attribute | takes | what it is | example |\n|---|---|---|---|")
	for _, a := range attrs {
		takes := a.Takes()
		if a.Name == "cautions" {
			takes = "one or more of [the cautions](#cautions)"
		}
		if a.Required {
			takes += "; **required**"
		}
		p.linef("| `%s` | %s | %s | `%s` |", a.Name, cell(takes), cell(a.Doc), cell(a.Example))
	}
	p.line("")
}

func (p *page) steps(any *BlockSpec) {
	p.example(any)
	p.line("Every step takes:\n")
	p.attributes(any)
	for _, s := range language.steps {
		p.linef("#### step \"%s\"\n", s.Kind)
		p.line(s.Doc + "\n")
		p.example(s)
		own := s.Attrs[:len(s.Attrs)-len(any.Attrs)]
		if len(own) > 0 {
			p.table(own)
		}
	}
}

func (p *page) cautions() {
	p.line(`## Cautions

What a label may list under ` + "`cautions`" + `, and what each market wants on every candle (**always**) or on some kinds. The wording is
our own; a label uses the standard's text or signs. A label that says children and pets also says children.

| caution | says | US | EU | UK |
|---|---|---|---|---|`)
	for _, c := range cautions {
		p.linef("| `%s` | %s | %s | %s | %s |", c.Name, c.Words, wanted("US", c.Name), wanted("EU", c.Name), wanted("UK", c.Name))
	}
	p.line("")
	for _, m := range marketCautions {
		p.linef("- **%s**: %s. Checked against: %s.", m.Market, m.Standard, m.Source)
	}
	p.line(`
Wax melts have no flame and need none of these. This page is no legal advice: the standard in force, the law and the
authorities of the place decide.`)
}

func wanted(market, name string) string {
	m := CautionsIn(market)
	if slices.Contains(m.Core, name) {
		return "**always**"
	}
	for _, t := range m.ByType {
		if t.Name == name {
			return t.Which
		}
	}
	if slices.Contains(m.Further, name) {
		return "worth adding"
	}
	return ""
}

func labelWords(s *BlockSpec) string {
	switch s.Label {
	case Defines:
		return "Its name is followed by its key, in quotes."
	case Refers:
		return "Its name is followed by the key of " + orList(withArticles(s.LabelRefers)) + ", in quotes."
	case DateLabel:
		return "Its name is followed by the date in quotes, year first."
	case RuleName:
		return "Its name is followed by the name of the rule, in quotes."
	case FreeLabel:
		return "Its name is followed by " + freeLabel(s.Name) + ", in quotes."
	}
	return "Its name is followed by the brace: it has no key."
}

func freeLabel(block string) string {
	switch block {
	case "option":
		return "the name of the option: small letters, digits and _"
	case "set", "insert":
		return "what comes of it, in a few words"
	}
	return "what the substance is called"
}

// header is the first line of a block's example.
func header(s *BlockSpec) string {
	first, _, _ := strings.Cut(s.Example, "\n")
	return first + " … }"
}

// words is how a block is spoken of: "component in a fragrance".
func words(s *BlockSpec) string {
	if outer, name, inner := strings.Cut(s.ID, " "); inner {
		return name + " in " + article(outer)
	}
	return s.Name
}

func firstSentence(text string) string {
	if first, _, more := strings.Cut(text, ". "); more {
		return first + "."
	}
	return text
}

// cell keeps a table's own bar out of its cells.
func cell(text string) string { return strings.ReplaceAll(text, "|", "\\|") }
