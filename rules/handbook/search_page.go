package handbook

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"

	"wickrule/lint/report"
)

func (b *book) searchPage() { b.page("search.html", "search", "Look up", "Look up", nil) }

// index is what can be looked up. It is written as a script, since a page
// opened from a folder may not read other files.
type index struct{ entries []entry }

// entry is one thing that can be found.
type entry struct {
	Kind    string `json:"kind"`
	Key     string `json:"key"`
	Title   string `json:"title"`
	Address string `json:"at"`
	Asked   string `json:"asked"` // as people ask for it
	Summary string `json:"says"`
	Words   string `json:"words"` // those of its text, each once
}

// summaryLength is how much of a text stands beside what was found, in bytes.
const summaryLength = 150

// add puts a thing into the index: how people ask for it, a text that can be
// shown beside it, and more that it can be found by.
func (x *index) add(kind, key, title, address, asked, text, more string) {
	text, more = report.Clean(oneLine(text)), report.Clean(oneLine(more))
	x.entries = append(x.entries, entry{kind, report.Clean(key), report.Clean(title), address, report.Clean(oneLine(asked)), shortened(text), each(text + " " + more)})
}

// shortened is the beginning of a text, cut behind a word.
func shortened(text string) string {
	if len(text) <= summaryLength {
		return text
	}
	cut := strings.LastIndexByte(text[:summaryLength], ' ')
	if cut < 0 {
		return ""
	}
	return text[:cut] + " …"
}

// each is every word of a text once, sorted, in small letters.
func each(text string) string {
	text = strings.ToLower(text)
	var all []string
	for _, w := range wordsIn(text) {
		all = append(all, text[w.start:w.end])
	}
	slices.Sort(all)
	return strings.Join(slices.Compact(all), " ")
}

// script is the index as a script that gives it a name.
func (x *index) script() []byte {
	var b bytes.Buffer
	b.WriteString("// Made with the pages; what is looked up is found here.\n\"use strict\";\nconst handbookIndex = [\n")
	for i, e := range x.entries {
		line, err := json.Marshal(e) // escapes <, > and &, and the line ends of JavaScript
		if err != nil {
			panic(err) // strings always can be written
		}
		b.Write(line)
		if i+1 < len(x.entries) {
			b.WriteByte(',')
		}
		b.WriteByte('\n')
	}
	b.WriteString("];\n")
	return b.Bytes()
}
