package handbook

import (
	"fmt"
	"html/template"
	"strings"
)

// section is a piece of a page below a heading.
type section struct {
	Level  int // 1: the page's own title
	Anchor string
	Title  string // plain text
	Text   string // everything below it, plain
	Lead   string // the first paragraph, plain
	HTML   html   // without the heading
}

// sections reads the Markdown that the program writes of itself: headings,
// paragraphs, lists, fenced code, tables, and in them code, strong words and
// links inside the page. It is no reader for Markdown of others; a line that it
// does not know is a paragraph.
func sections(text string) []section {
	m := &markdown{used: map[string]bool{}}
	lines := strings.Split(text, "\n")
	for i := 0; i < len(lines); {
		i += m.block(lines[i:])
	}
	m.close()
	return m.all
}

type markdown struct {
	all  []section
	html strings.Builder
	text strings.Builder
	used map[string]bool // anchors
}

// close ends the section at hand.
func (m *markdown) close() {
	if n := len(m.all); n > 0 {
		m.all[n-1].HTML, m.all[n-1].Text = html(m.html.String()), strings.Join(strings.Fields(m.text.String()), " ")
	}
	m.html.Reset()
	m.text.Reset()
}

// block reads the block at the head of the lines, and says how many it took.
func (m *markdown) block(lines []string) int {
	line := lines[0]
	take := func(while func(string) bool) int {
		n := 1
		for n < len(lines) && while(lines[n]) {
			n++
		}
		return n
	}
	switch {
	case strings.TrimSpace(line) == "":
		return 1
	case strings.HasPrefix(line, "#"):
		m.heading(line)
		return 1
	case strings.HasPrefix(line, "```"):
		n := take(func(l string) bool { return l != "```" })
		m.raw("<pre><code>" + template.HTMLEscapeString(strings.Join(lines[1:n], "\n")) + "</code></pre>\n")
		m.say(strings.Join(lines[1:n], " "))
		return min(n+1, len(lines))
	case strings.HasPrefix(line, "|"):
		n := take(func(l string) bool { return strings.HasPrefix(l, "|") })
		m.table(lines[:n])
		return n
	case strings.HasPrefix(line, "- "):
		n := take(func(l string) bool { return l != "" && !strings.HasPrefix(l, "#") && !strings.HasPrefix(l, "```") })
		m.list(lines[:n])
		return n
	}
	n := take(func(l string) bool {
		return l != "" && !strings.HasPrefix(l, "#") && !strings.HasPrefix(l, "```") && !strings.HasPrefix(l, "|") && !strings.HasPrefix(l, "- ")
	})
	m.raw("<p>" + m.inline(strings.Join(lines[:n], " ")) + "</p>\n")
	if at := len(m.all) - 1; at >= 0 && m.all[at].Lead == "" {
		m.all[at].Lead = unmarked(strings.Join(lines[:n], " "))
	}
	return n
}

func (m *markdown) raw(html string)  { m.html.WriteString(html) }
func (m *markdown) say(words string) { m.text.WriteString(words + " ") }

func (m *markdown) heading(line string) {
	m.close()
	title := strings.TrimLeft(line, "#")
	s := section{Level: len(line) - len(title), Title: unmarked(strings.TrimSpace(title))}
	s.Anchor = slug(s.Title)
	for n := 2; m.used[s.Anchor]; n++ {
		s.Anchor = fmt.Sprintf("%s-%d", slug(s.Title), n)
	}
	m.used[s.Anchor] = true
	m.all = append(m.all, s)
}

// slug is a heading as the anchor that links inside the text name it by.
func slug(title string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(title) {
		switch {
		case r == ' ':
			b.WriteByte('-')
		case r == '-' || r == '_' || 'a' <= r && r <= 'z' || '0' <= r && r <= '9':
			b.WriteRune(r)
		}
	}
	return b.String()
}

func unmarked(text string) string { return strings.NewReplacer("`", "", "*", "").Replace(text) }

func (m *markdown) list(lines []string) {
	var items []string
	for _, l := range lines {
		if item, ok := strings.CutPrefix(l, "- "); ok {
			items = append(items, item)
		} else {
			items[len(items)-1] += " " + strings.TrimSpace(l)
		}
	}
	m.raw("<ul>\n")
	for _, item := range items {
		m.raw("<li>" + m.inline(item) + "</li>\n")
	}
	m.raw("</ul>\n")
}

// table reads a table with a head. Where the first cell of a row is empty it
// belongs with the row above.
func (m *markdown) table(lines []string) {
	about := "table"
	if n := len(m.all); n > 0 {
		about = m.all[n-1].Title
	}
	m.raw(`<div class="wide" role="group" tabindex="0" aria-label="` + template.HTMLEscapeString("Table: "+about) + `"><table class="stacked" role="table">` + "\n")
	heads := cells(lines[0])
	row := func(line, cell, scope string) {
		m.raw(`<tr role="row">`)
		for i, c := range cells(line) {
			name, attr := cell, scope
			switch {
			case i == 0 && cell == "td" && c != "":
				name, attr = "th", ` scope="row" role="rowheader"`
			case cell == "td" && i < len(heads):
				attr = ` role="cell" data-for="` + template.HTMLEscapeString(unmarked(heads[i])) + `"`
				if heads[i] == "what it is" { // sentences, which want room
					attr += ` class="says"`
				}
			}
			m.raw("<" + name + attr + ">" + m.inline(c) + "</" + name + ">")
		}
		m.raw("</tr>\n")
	}
	m.raw(`<thead role="rowgroup">`)
	row(lines[0], "th", ` scope="col" role="columnheader"`)
	m.raw("</thead>\n" + `<tbody role="rowgroup">` + "\n")
	for _, line := range lines[min(2, len(lines)):] {
		row(line, "td", "")
	}
	m.raw("</tbody></table></div>\n")
}

// cells are the cells of a row; a bar inside one is written with a stroke.
func cells(line string) []string {
	line = strings.TrimSuffix(strings.TrimPrefix(strings.TrimSpace(line), "|"), "|")
	line = strings.ReplaceAll(line, `\|`, "\x00")
	var all []string
	for c := range strings.SplitSeq(line, "|") {
		all = append(all, strings.ReplaceAll(strings.TrimSpace(c), "\x00", "|"))
	}
	return all
}

// inline turns a run of text into HTML.
func (m *markdown) inline(text string) string {
	m.say(unmarked(text))
	return inline(text)
}

func inline(text string) string {
	var b strings.Builder
	for text != "" {
		at := strings.IndexAny(text, "`*[")
		if at < 0 {
			break
		}
		b.WriteString(template.HTMLEscapeString(text[:at]))
		text = text[at:]
		if html, n := marked(text); n > 0 {
			b.WriteString(html)
			text = text[n:]
			continue
		}
		b.WriteString(template.HTMLEscapeString(text[:1]))
		text = text[1:]
	}
	return b.String() + template.HTMLEscapeString(text)
}

// inlineCode is a text in which only code is marked.
func inlineCode(text string) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(text, "`")
		code, after, closed := strings.Cut(rest, "`")
		if !found || !closed {
			return b.String() + template.HTMLEscapeString(text)
		}
		b.WriteString(template.HTMLEscapeString(before) + "<code>" + template.HTMLEscapeString(code) + "</code>")
		text = after
	}
}

// marked is the code, the strong word or the link at the head of a text, and
// how long it is; 0 where there is none.
func marked(text string) (html string, n int) {
	for _, quote := range []string{"``", "`"} {
		if rest, ok := strings.CutPrefix(text, quote); ok {
			if end := strings.Index(rest, quote); end > 0 {
				return "<code>" + template.HTMLEscapeString(strings.TrimSpace(rest[:end])) + "</code>", end + 2*len(quote)
			}
		}
	}
	if rest, ok := strings.CutPrefix(text, "**"); ok {
		if end := strings.Index(rest, "**"); end > 0 {
			return "<strong>" + inline(rest[:end]) + "</strong>", end + 4
		}
	}
	if strings.HasPrefix(text, "[") {
		close := strings.Index(text, "](#")
		if end := strings.IndexByte(text, ')'); close > 0 && end > close && !strings.ContainsAny(text[1:close], "[]`") {
			return `<a href="` + template.HTMLEscapeString(text[close+2:end]) + `">` + template.HTMLEscapeString(text[1:close]) + "</a>", end + 1
		}
	}
	return "", 0
}
