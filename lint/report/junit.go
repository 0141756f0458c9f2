package report

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"unicode"

	"wickrule/lint"
)

// JUnit writes the document in the XML that test runners report in: a suite a
// shop, a case a recipe, and one for each file with findings that are about no
// recipe. What speaks at the level asked for makes its case fail; the rest is
// the case's output. There is no standard behind this form; the names are those
// that readers agree on.
func JUnit(w io.Writer, d *Document) error {
	all := junitSuites{Name: "Wickrule"}
	level := max(d.Level, lint.Consider)
	for _, shop := range d.Shops {
		s := junitShop(shop, level)
		all.add(s)
	}
	if len(d.Unread) > 0 {
		s := junitSuite{Name: "what could not be read"}
		for _, u := range d.Unread {
			s.Cases = append(s.Cases, junitCase{Name: printable(Located(u.Shop, u.Name)), Class: printable(u.Shop),
				Errors: []junitFault{{Type: "not-read", Message: printable(u.Err.Error())}}})
		}
		s.count()
		all.add(s)
	}
	if _, err := io.WriteString(w, xml.Header); err != nil {
		return err
	}
	enc := xml.NewEncoder(w)
	enc.Indent("", "  ")
	if err := enc.Encode(all); err != nil {
		return err
	}
	_, err := io.WriteString(w, "\n")
	return err
}

type junitSuites struct {
	XMLName  xml.Name     `xml:"testsuites"`
	Name     string       `xml:"name,attr"`
	Tests    int          `xml:"tests,attr"`
	Failures int          `xml:"failures,attr"`
	Errors   int          `xml:"errors,attr"`
	Suites   []junitSuite `xml:"testsuite"`
}

type junitSuite struct {
	Name     string      `xml:"name,attr"`
	Tests    int         `xml:"tests,attr"`
	Failures int         `xml:"failures,attr"`
	Errors   int         `xml:"errors,attr"`
	Skipped  int         `xml:"skipped,attr"`
	Cases    []junitCase `xml:"testcase"`
}

type junitCase struct {
	Name     string       `xml:"name,attr"`
	Class    string       `xml:"classname,attr"`
	File     string       `xml:"file,attr,omitempty"`
	Errors   []junitFault `xml:"error"`
	Failures []junitFault `xml:"failure"`
	Out      string       `xml:"system-out,omitempty"`
}

type junitFault struct {
	Type    string `xml:"type,attr"`
	Message string `xml:"message,attr"`
	Text    string `xml:",chardata"`
}

func (a *junitSuites) add(s junitSuite) {
	a.Suites = append(a.Suites, s)
	a.Tests, a.Failures, a.Errors = a.Tests+s.Tests, a.Failures+s.Failures, a.Errors+s.Errors
}

// count counts the cases: those with failures or errors, however many.
func (s *junitSuite) count() {
	for i := range s.Cases {
		s.Tests++
		switch {
		case len(s.Cases[i].Errors) > 0:
			s.Errors++
		case len(s.Cases[i].Failures) > 0:
			s.Failures++
		}
	}
}

func junitShop(r *lint.Report, level lint.Level) junitSuite {
	s := junitSuite{Name: printable(shopTitle(r.Shop))}
	root := r.Shop.Root
	at := map[string]int{}
	caseOf := func(key, name, file string) *junitCase {
		i, has := at[key]
		if !has {
			i = len(s.Cases)
			at[key] = i
			s.Cases = append(s.Cases, junitCase{Name: printable(name), Class: printable(Located(root, file)), File: printable(Located(root, file))})
		}
		return &s.Cases[i]
	}
	for _, recipe := range r.Checked() {
		caseOf("recipe "+recipe.Label, recipe.Title(), recipe.File.Name)
	}
	of := func(f *lint.Found) *junitCase {
		if f.Recipe != nil {
			return caseOf("recipe "+f.Recipe.Label, f.Recipe.Title(), f.Recipe.File.Name)
		}
		return caseOf("file "+f.At.File.Name, f.At.File.Name, f.At.File.Name)
	}
	place := func(p lint.Place) string {
		line, column := p.File.Text.Position(p.Span.Start)
		return fmt.Sprintf("%s:%d:%d", Located(root, p.File.Name), line, column)
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		c := of(f)
		if f.Level < level {
			c.Out += printable(fmt.Sprintf("%s: %s: %s (%s)", f.Level, place(f.At), f.Message, f.Rule.Name)) + "\n"
			continue
		}
		c.Failures = append(c.Failures, junitFault{Type: f.Rule.Name, Message: printable(f.Message),
			Text: printable(place(f.At)) + "\n" + printable(f.Rule.Why) + "\n" + printable(f.Rule.Remedy)})
	}
	for i := range r.Conceded {
		c := &r.Conceded[i]
		of(&c.Found).Out += printable(fmt.Sprintf("conceded: %s: %s, because: %s", place(c.At), c.Message, c.Concession.Get("reason").Text())) + "\n"
	}
	for _, u := range r.Unchecked {
		c := caseOf("file "+u.At.File.Name, u.At.File.Name, u.At.File.Name)
		if u.Level < level {
			c.Out += printable(fmt.Sprintf("%s: %s: %s", u.Level, place(u.At), u.Message)) + "\n"
			continue
		}
		c.Failures = append(c.Failures, junitFault{Type: "could-not-check", Message: printable(u.Message), Text: printable(place(u.At))})
	}
	for _, f := range r.Faults {
		name := "the shop"
		if f.At.File != nil {
			name = f.At.File.Name
		}
		c := caseOf("file "+name, name, name)
		c.Errors = append(c.Errors, junitFault{Type: f.Rule, Message: printable("the check stopped, the others went on: " + f.Reason)})
	}
	s.count()
	return s
}

// printable leaves out what XML 1.0 cannot hold.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.C, r) && !unicode.Is(unicode.Cf, r) || r == 0xFFFE || r == 0xFFFF {
			return unicode.ReplacementChar
		}
		return r
	}, Clean(text))
}
