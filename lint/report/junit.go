package report

import (
	"cmp"
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strings"

	"wickrule/lint"
)

// JUnit writes the document in the XML that test runners report in, which CI
// hosts show as a list of what passed and failed. There is no standard behind
// it; the elements are those that readers agree on.
//
// A suite is a shop. A case is a recipe, since that is what somebody puts right
// and what stays the same from one check to the next: a case that was red turns
// green. What is about no recipe has a case for its file. What speaks at the
// level asked for fails its case, once, since some readers show one failure
// only; the rest is the case's output.
func JUnit(w io.Writer, d *Document) error {
	all := junitSuites{Name: "Wickrule"}
	for _, shop := range d.Shops {
		all.add(d.junitShop(shop))
	}
	if len(d.Unread) > 0 {
		s := junitSuite{Name: "What could not be read"}
		for _, u := range d.Unread {
			name := Located(u.Shop, u.Name)
			s.Cases = append(s.Cases, &junitCase{Name: Clean(name), Class: Clean(name), Error: &junitFault{Type: "cannot-read", Message: Clean(u.Err.Error())}})
		}
		all.add(s)
	}
	if len(d.LeftOut) > 0 {
		all.add(junitSuite{Name: "What was left out", Out: Clean(strings.Join(d.LeftOut, " "))})
	}
	text, err := xml.MarshalIndent(all, "", "  ")
	if err != nil {
		return err
	}
	// Line ends stand in no attribute here, and read better as they are.
	_, err = io.WriteString(w, xml.Header+strings.ReplaceAll(string(text), "&#xA;", "\n")+"\n")
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
	Name     string       `xml:"name,attr"`
	Tests    int          `xml:"tests,attr"`
	Failures int          `xml:"failures,attr"`
	Errors   int          `xml:"errors,attr"`
	Cases    []*junitCase `xml:"testcase"`
	Out      string       `xml:"system-out,omitempty"`
}

type junitCase struct {
	Name    string      `xml:"name,attr"`
	Class   string      `xml:"classname,attr"`
	File    string      `xml:"file,attr,omitempty"` // not in every schema; readers that know it link to it
	Error   *junitFault `xml:"error"`
	Failure *junitFault `xml:"failure"`
	Out     string      `xml:"system-out,omitempty"`

	failing []junitLine
	others  []junitLine
}

type junitFault struct {
	Type    string `xml:"type,attr"`
	Message string `xml:"message,attr"`
	Text    string `xml:",chardata"`
}

// junitLine is one thing that is said in a case.
type junitLine struct {
	level   lint.Level
	rule    string
	message string
	text    string // the message with its place, and what there is to do
}

// add counts the cases of a suite and adds it. A case counts once.
func (a *junitSuites) add(s junitSuite) {
	for _, c := range s.Cases {
		c.close()
		s.Tests++
		switch {
		case c.Error != nil:
			s.Errors++
		case c.Failure != nil:
			s.Failures++
		}
	}
	a.Suites = append(a.Suites, s)
	a.Tests, a.Failures, a.Errors = a.Tests+s.Tests, a.Failures+s.Failures, a.Errors+s.Errors
}

// close makes the case's failure and its output of what is said in it, the
// loudest first.
func (c *junitCase) close() {
	louder := func(a, b junitLine) int { return cmp.Compare(b.level, a.level) }
	slices.SortStableFunc(c.failing, louder)
	slices.SortStableFunc(c.others, louder)
	if len(c.failing) > 0 {
		first := c.failing[0]
		c.Failure = &junitFault{Type: first.rule, Message: first.message, Text: junitText(c.failing)}
		if more := len(c.failing) - 1; more > 0 {
			c.Failure.Message += fmt.Sprintf(" (and %d more)", more)
		}
	}
	c.Out = junitText(c.others)
}

func junitText(lines []junitLine) string {
	var b strings.Builder
	for _, l := range lines {
		b.WriteString("\n" + l.text + "\n")
	}
	return b.String()
}

// junitCases are the cases of one shop.
type junitCases struct {
	root  string
	list  []*junitCase
	at    map[string]*junitCase
	level lint.Level
}

func (d *Document) junitShop(r *lint.Report) junitSuite {
	cases := junitCases{root: r.Shop.Root, at: map[string]*junitCase{}, level: d.Level}
	for _, recipe := range r.Checked() {
		cases.of(lint.AtHeader(recipe))
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		cases.say(f, cases.found(f, "", fixTitles(f)))
	}
	for _, s := range d.standingIn(r) {
		cases.also(&s.Found, cases.found(&s.Found, "", []string{s.Why}))
	}
	for i := range r.Conceded {
		c := &r.Conceded[i]
		cases.also(&c.Found, cases.found(&c.Found, "conceded, ", []string{"because: " + c.Concession.Get("reason").Text()}))
	}
	for _, u := range r.Unchecked {
		c, line := cases.of(u.At), junitLine{u.Level, "cannot-check", Clean(u.Message), cases.text(u.Level.String(), u.At, u.Message, nil)}
		if u.Level >= d.Level {
			c.failing = append(c.failing, line)
		} else {
			c.others = append(c.others, line)
		}
	}
	for _, f := range r.Faults {
		c := &junitCase{Name: f.Rule, Class: "wickrule"}
		if f.At.File != nil {
			c = cases.of(f.At)
		} else {
			cases.list = append(cases.list, c)
		}
		c.Error = &junitFault{Type: "fault", Message: Clean(faultText(f))}
	}
	return junitSuite{Name: Clean(shopTitle(r.Shop)), Cases: cases.list}
}

// of is the case of the recipe that a place lies in, else of its file.
func (c *junitCases) of(at lint.Place) *junitCase {
	file := Located(c.root, at.File.Name)
	key, name := "file "+file, at.File.Name
	if top := at.Around(); top.Is("recipe") {
		key, name = "recipe "+file+"\n"+top.Label, top.Title()
	}
	if c.at[key] == nil {
		c.at[key] = &junitCase{Name: Clean(name), Class: Clean(strings.TrimSuffix(file, lint.FileSuffix)), File: Clean(file)}
		c.list = append(c.list, c.at[key])
	}
	return c.at[key]
}

// about is the case that a finding belongs to: of the recipe it is about,
// wherever it points.
func (c *junitCases) about(f *lint.Found) *junitCase {
	if f.Recipe != nil {
		return c.of(lint.AtHeader(f.Recipe))
	}
	return c.of(f.At)
}

// say has a finding fail its case, where it is as loud as that.
func (c *junitCases) say(f *lint.Found, line junitLine) {
	if f.Level < c.level {
		c.also(f, line)
		return
	}
	to := c.about(f)
	to.failing = append(to.failing, line)
}

// also adds to a case's output.
func (c *junitCases) also(f *lint.Found, line junitLine) {
	to := c.about(f)
	to.others = append(to.others, line)
}

func (c *junitCases) found(f *lint.Found, mark string, more []string) junitLine {
	return junitLine{f.Level, f.Rule.Name, Clean(f.Message), c.text(mark+f.Level.String()+", "+f.Rule.Name, f.At, f.Message, more)}
}

// text is a message with its place, and further lines below it.
func (c *junitCases) text(mark string, at lint.Place, message string, more []string) string {
	line, column := at.File.Text.Position(at.Span.Start)
	text := Clean(fmt.Sprintf("%s:%d:%d: %s (%s)", Located(c.root, at.File.Name), line, column, message, mark))
	for _, m := range more {
		text += "\n    " + Clean(m)
	}
	return text
}

// fixTitles are the repairs that a report writes out.
func fixTitles(f *lint.Found) (titles []string) {
	for i, fix := range f.Repairs() {
		if i == shownFixes {
			break
		}
		title := fix.Title
		if i > 0 {
			title = "or " + title
		}
		titles = append(titles, title)
	}
	return titles
}
