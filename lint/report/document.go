// Package report writes what a check found: for a maker at a terminal, as a
// page, one finding a line for editors and logs, and for programs. The words
// are the rules' own, whatever the form.
package report

import (
	"io"

	"wickrule/lint"
)

// Document is what one check found in all the shops it was asked about.
type Document struct {
	Shops  []*lint.Report // sorted by root
	Unread []Unread       // what could not be read
	Level  lint.Level     // from which a finding fails the check
	Origin Origin         // for programs that read the report

	LeftOut  []string   // what was found and is not among the findings: how much and why, a sentence each
	Standing []Standing // of that, what must be put right: it is told all the same
	Prints   Prints     // of the findings left in those shops of which some were left out
}

// Prints are the prints of a shop's findings, in their order, as they were
// before some of them were left out.
type Prints map[*lint.Report][]string

// Standing is a finding that does not fail the check although it must be put
// right, and why it does not.
type Standing struct {
	Shop *lint.Shop
	lint.Found
	Print string
	Why   string // "known from known.json: the old molds"
}

// Unread is a file or folder that could not be read. Shop is the root of the
// shop it belongs to, "" where it belongs to none that was found.
type Unread struct {
	Shop string
	lint.ReadError
}

// Forms are the words for the forms a document can be written in; the first is
// the one for people.
var Forms = []string{"text", "markdown", "lines", "json", "sarif", "junit"}

// Write writes the document in one of the Forms; look is that of the text.
func Write(w io.Writer, form string, d *Document, look Look) error {
	switch form {
	case "markdown":
		return Markdown(w, d)
	case "lines":
		return Lines(w, d)
	case "json":
		return JSON(w, d)
	case "sarif":
		return SARIF(w, d)
	case "junit":
		return JUnit(w, d)
	}
	return Text(w, d, look)
}

// standingIn is what stands in one of the shops.
func (d *Document) standingIn(r *lint.Report) (list []Standing) {
	for _, s := range d.Standing {
		if s.Shop == r.Shop {
			list = append(list, s)
		}
	}
	return list
}

func (d *Document) printsOf(r *lint.Report) []string {
	if prints, ok := d.Prints[r]; ok {
		return prints
	}
	return lint.Prints(r.Findings)
}

// Recipes counts the recipes checked.
func (d *Document) Recipes() int {
	n := 0
	for _, shop := range d.Shops {
		n += shop.Recipes
	}
	return n
}

// Files counts the files read.
func (d *Document) Files() int {
	n := 0
	for _, shop := range d.Shops {
		n += shop.Files
	}
	return n
}

// Count is how many findings speak at a level.
func (d *Document) Count(level lint.Level) int {
	n := 0
	for _, shop := range d.Shops {
		for i := range shop.Findings {
			if shop.Findings[i].Level == level {
				n++
			}
		}
	}
	return n
}

// Loudest is the level of the loudest finding, or of the loudest check that
// could not be made. What is conceded does not count.
func (d *Document) Loudest() lint.Level {
	loudest := lint.Silent
	for _, shop := range d.Shops {
		for i := range shop.Findings {
			loudest = max(loudest, shop.Findings[i].Level)
		}
		for i := range shop.Unchecked {
			loudest = max(loudest, shop.Unchecked[i].Level)
		}
	}
	return loudest
}

// Complete says whether everything asked for was read and every check ran to
// its end.
func (d *Document) Complete() bool {
	if len(d.Unread) > 0 {
		return false
	}
	for _, shop := range d.Shops {
		if len(shop.Faults) > 0 {
			return false
		}
	}
	return true
}
