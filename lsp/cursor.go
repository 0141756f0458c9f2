package lsp

import (
	"strings"

	"wickrule/schema"
)

// cursor is what stands around a place in a text as it is typed: a half-typed
// text has no tree, or one that was guessed at, so the lines themselves are
// looked at.
type cursor struct {
	path  []header // the blocks it stands in, outermost first
	place whereabouts
	name  string      // in a value the attribute's name, in a label the block's word
	start int32       // where that name starts
	word  schema.Span // what is typed at the cursor and would be replaced: the inside of the quotes, where there are any

	quoted bool     // inside quotes
	closed bool     // whose end is there, right behind the word
	list   bool     // inside brackets
	others []string // in a list: the other texts in it
	rest   string   // what stands behind the word, and its quote, on the line
	fresh  bool     // nothing but the word stands before it: on its line, or behind the brace of a block of one line
	inline bool     // the innermost block is opened on the cursor's own line
}

// whereabouts is the part of the language a cursor stands in.
type whereabouts uint8

const (
	nowhere whereabouts = iota // a comment, prose, or where nothing can be added
	inItem                     // where an attribute or a block starts
	inLabel                    // behind a block's word
	inValue                    // behind an attribute's =
)

// header is the head of a block that has been opened.
type header struct {
	name, label string
	start       int32    // where its word starts
	indent      int      // of its line
	attrs       []string // the attributes written in it before the cursor
	blocks      []string // the words of the blocks in it before the cursor
}

// typed is what stands in the word before a place.
func (c *cursor) typed(text string, at int32) string { return text[c.word.Start:at] }

// lookAround finds what a place stands in. It goes through the text from its
// start, and knows no more of the language than its comments, quotes, braces
// and brackets. A quote that is not closed ends with its line.
func lookAround(text string, at int32) cursor {
	s := &scanner{text: text, at: int(min(max(at, 0), int32(len(text))))}
	s.run()
	s.cursor.path = s.open
	return s.cursor
}

type scanner struct {
	text   string
	at     int // the cursor
	i      int // where it reads
	open   []header
	lines  []int // of each open block, where the line starts on which it was opened
	cursor cursor
	found  bool
}

// run reads statement by statement until the cursor is passed.
func (s *scanner) run() {
	if strings.HasPrefix(s.text, "\uFEFF") {
		s.i = len("\uFEFF")
	}
	for !s.found {
		if s.skip(true) {
			return // in a comment
		}
		if s.i >= s.at {
			s.item(s.at, s.at)
			return
		}
		switch c := s.text[s.i]; {
		case c == '}':
			s.i++
			s.pop()
		case inWord(c):
			s.statement()
		default:
			s.i++
		}
	}
}

func (s *scanner) pop() {
	if n := len(s.open); n > 0 {
		s.open, s.lines = s.open[:n-1], s.lines[:n-1]
	}
}

// skip goes over spaces and comments, and line ends where it may. True: the
// cursor stands in a comment.
func (s *scanner) skip(lines bool) bool {
	for s.i < len(s.text) && s.i < s.at {
		rest := s.text[s.i:]
		switch {
		case rest[0] == ' ' || rest[0] == '\t' || lines && (rest[0] == '\n' || rest[0] == '\r'):
			s.i++
		case rest[0] == '#' || strings.HasPrefix(rest, "//"):
			s.i = s.lineEnd(s.i)
			if s.at <= s.i {
				s.found = true
				return true
			}
		case strings.HasPrefix(rest, "/*"):
			end := strings.Index(rest, "*/")
			if end < 0 || s.i+end+2 > s.at {
				s.found = true
				return true
			}
			s.i += end + 2
		default:
			return false
		}
	}
	return false
}

// lineEnd is where the line ends on which a place stands, lineStart where it
// starts.
func (s *scanner) lineEnd(i int) int {
	if n := strings.IndexAny(s.text[i:], "\r\n"); n >= 0 {
		return i + n
	}
	return len(s.text)
}

func (s *scanner) lineStart(i int) int { return strings.LastIndexAny(s.text[:i], "\r\n") + 1 }

// item says that the cursor stands where an attribute or a block starts.
func (s *scanner) item(from, to int) {
	s.found = true
	c := &s.cursor
	for to < len(s.text) && inWord(s.text[to]) {
		to++
	}
	line := s.lineStart(from)
	if n := len(s.lines); n > 0 && s.lines[n-1] == line {
		c.inline = true
		line = int(s.open[n-1].start) // what stands before the block does not matter
		if brace := strings.LastIndexByte(s.text[line:from], '{'); brace >= 0 {
			line += brace + 1
		}
	}
	c.place, c.fresh = inItem, strings.TrimSpace(s.text[line:from]) == ""
	c.word = schema.Span{Start: int32(from), End: int32(to)}
	c.rest = s.text[to:s.lineEnd(to)]
}

// statement reads what starts with a word: an attribute, a block, or only a
// word.
func (s *scanner) statement() {
	from := s.i
	for s.i < len(s.text) && inWord(s.text[s.i]) {
		s.i++
	}
	if s.at <= s.i {
		s.item(from, s.i)
		return
	}
	name := s.text[from:s.i]
	s.cursor.name, s.cursor.start = name, int32(from)
	gap := s.i
	s.blanks()
	switch {
	case s.i < len(s.text) && s.text[s.i] == '=' && s.i < s.at:
		s.i++
		if n := len(s.open); n > 0 {
			s.open[n-1].attrs = append(s.open[n-1].attrs, name)
		}
		s.value()
	case s.i < len(s.text) && s.text[s.i] == '"' && s.i < s.at:
		s.label(name, from)
	case s.i < len(s.text) && s.text[s.i] == '{' && s.i < s.at:
		s.i++
		s.push(name, "", from)
	case s.at <= s.i && gap < s.at:
		s.word(inLabel, s.at, s.at)
	}
}

// blanks goes over spaces.
func (s *scanner) blanks() {
	for s.i < len(s.text) && (s.text[s.i] == ' ' || s.text[s.i] == '\t') {
		s.i++
	}
}

func (s *scanner) push(name, label string, from int) {
	if n := len(s.open); n > 0 {
		s.open[n-1].blocks = append(s.open[n-1].blocks, name)
	}
	line := s.lineStart(from)
	s.open = append(s.open, header{name: name, label: label, start: int32(from), indent: from - line})
	s.lines = append(s.lines, line)
}

// label reads the label of a block, and the brace behind it.
func (s *scanner) label(name string, from int) {
	quote := s.i + 1
	text, ok := s.quoted(inLabel)
	if !ok {
		return
	}
	if brace := strings.IndexByte(text, '{'); brace >= 0 { // its closing quote is missing
		s.i, text = quote+brace, strings.TrimRight(text[:brace], " \t")
	}
	s.blanks()
	switch {
	case s.at <= s.i: // behind the label
		s.found = true
	case s.i < len(s.text) && s.text[s.i] == '{':
		s.i++
		s.push(name, text, from)
	case s.deeper(from):
		s.push(name, text, from) // its brace is missing
	}
}

// deeper says whether the line after a header without a brace is set deeper
// than the header.
func (s *scanner) deeper(from int) bool {
	end := s.lineEnd(s.i)
	if strings.TrimSpace(s.text[s.i:end]) != "" {
		return false
	}
	line := strings.TrimLeft(s.text[end:], "\r\n")
	at := len(line) - len(strings.TrimLeft(line, " \t"))
	return at > from-s.lineStart(from) && strings.TrimSpace(line[:at]) == "" && line[at:] != "" && !strings.ContainsRune("\r\n", rune(line[at]))
}

// value reads what stands behind an =.
func (s *scanner) value() {
	call := false // a round bracket is open: it is an expression
	for depth := 0; ; {
		s.blanks()
		if s.at <= s.i {
			s.bare(depth)
			return
		}
		switch c := s.text[s.i]; {
		case c == '"':
			text, ok := s.quoted(inValue)
			if depth > 0 {
				s.cursor.list = true
				if ok {
					s.cursor.others = append(s.cursor.others, text)
				}
			}
			if !ok {
				if depth > 0 {
					s.restOfList()
				}
				return
			}
			if s.at <= s.i { // right behind a closing quote
				s.found = true
				return
			}
		case c == '[' || c == '(':
			depth++
			call = call || c == '('
			s.i++
		case c == ']' || c == ')':
			depth--
			s.i++
			if s.at <= s.i {
				s.found = true
				return
			}
		case strings.HasPrefix(s.text[s.i:], "<<"):
			s.heredoc()
			return
		case c == '\n' || c == '\r':
			if depth <= 0 || s.listLeft(call) {
				s.leave()
				return
			}
			s.i++
		case c == '#' || strings.HasPrefix(s.text[s.i:], "//"):
			s.i = s.lineEnd(s.i)
			if s.at <= s.i {
				s.found = true
				return
			}
		case c == '}':
			s.leave()
			return // of the block
		case inWord(c):
			from := s.i
			for s.i < len(s.text) && (inWord(s.text[s.i]) || s.text[s.i] == '.') {
				s.i++
			}
			if s.at <= s.i {
				s.cursor.list = depth > 0
				s.word(inValue, from, s.i)
				if depth > 0 {
					s.restOfList()
				}
				return
			}
		default:
			s.i++
		}
	}
}

// leave forgets what was noted of a value.
func (s *scanner) leave() { s.cursor.list, s.cursor.others = false, nil }

// bare says that the cursor stands behind an = or in a list with nothing typed
// yet, or behind a value.
func (s *scanner) bare(depth int) {
	line := s.text[s.lineStart(s.at):s.at]
	before := strings.TrimRight(line, " \t")
	if depth == 0 && !strings.HasSuffix(before, "=") {
		s.found = true
		return
	}
	if depth > 0 && before != "" && !strings.HasSuffix(before, "[") && !strings.HasSuffix(before, ",") {
		s.found = true
		return
	}
	s.cursor.list = depth > 0
	to := s.at
	for to < len(s.text) && inWord(s.text[to]) {
		to++
	}
	s.word(inValue, s.at, to)
	if depth > 0 {
		s.i = to
		s.restOfList()
	}
}

// word says that the cursor stands in a word outside quotes.
func (s *scanner) word(where whereabouts, from, to int) {
	s.found = true
	c := &s.cursor
	c.place, c.word = where, schema.Span{Start: int32(from), End: int32(to)}
	c.rest = s.text[to:s.lineEnd(to)]
}

// restOfList notes the texts of a list behind the cursor, as far as it goes on
// over plain lines.
func (s *scanner) restOfList() {
	i := max(int(s.cursor.word.End), s.at)
	if s.cursor.closed {
		i++
	}
	for i < len(s.text) {
		switch s.text[i] {
		case '"':
			end := strings.IndexAny(s.text[i+1:], "\"\r\n")
			if end < 0 || s.text[i+1+end] != '"' {
				return
			}
			s.cursor.others = append(s.cursor.others, s.text[i+1:i+1+end])
			i += end + 2
		case ',', ' ', '\t', '\r', '\n':
			i++
		default:
			return
		}
	}
}

// listLeft says whether a list that is not closed has ended all the same: the
// next line is an attribute, a block or a closing brace. In an expression a
// line may start with a name as well.
func (s *scanner) listLeft(expression bool) bool {
	line := strings.TrimLeft(s.text[s.i:], "\r\n \t")
	if line == "" || line[0] == '}' {
		return true
	}
	if expression {
		rest := strings.TrimLeft(strings.TrimLeftFunc(line, func(r rune) bool { return r < 0x80 && inWord(byte(r)) }), " \t")
		return inWord(line[0]) && (strings.HasPrefix(rest, "=") && !strings.HasPrefix(rest, "==") || strings.HasPrefix(rest, "{") || strings.HasPrefix(rest, `"`))
	}
	return inWord(line[0]) && !strings.HasPrefix(line, "true") && !strings.HasPrefix(line, "false")
}

// quoted reads a text in quotes. False: the cursor stands in it.
//
// Where the quotes of a line do not pair up, the one the cursor stands behind
// is taken to be the one just typed: its text reaches as far as the cursor and
// the word it stands in.
func (s *scanner) quoted(where whereabouts) (string, bool) {
	from := s.i + 1
	end, closed := s.quoteEnd(from)
	limit := s.lineEnd(from)
	in := from <= s.at && (s.at <= end)
	if in && !s.paired(from) {
		closed, end = false, s.at
		for end < limit && (inWord(s.text[end]) || s.text[end] >= 0x80) {
			end++
		}
	}
	if !in {
		s.i = end
		if closed {
			s.i++
		} else {
			s.i = s.openEnd(from, limit)
		}
		return s.text[from:min(end, s.i)], true
	}
	s.found = true
	c := &s.cursor
	c.place, c.quoted, c.closed = where, true, closed
	c.word = schema.Span{Start: int32(from), End: int32(end)}
	behind := end
	if closed {
		behind++
	}
	c.rest = s.text[behind:limit]
	if before := s.text[from:s.at]; strings.Contains(before, "${") || where == inLabel && strings.Contains(before, "{") {
		c.place = nowhere // computed text, or behind a label that is not closed
	}
	return "", false
}

// openEnd is where a text without a closing quote ends: before a brace that
// closes or opens a block at the end of its line.
func (s *scanner) openEnd(from, limit int) int {
	line := strings.TrimRight(s.text[from:limit], " \t")
	if n := len(line); n > 0 && (line[n-1] == '}' || line[n-1] == '{') {
		return from + n - 1
	}
	return limit
}

// quoteEnd is where a text in quotes ends, on its line.
func (s *scanner) quoteEnd(from int) (int, bool) {
	depth := 0
	for i := from; i < len(s.text); i++ {
		switch c := s.text[i]; {
		case c == '\n' || c == '\r':
			return i, false
		case c == '\\':
			if i+1 < len(s.text) && s.text[i+1] != '\n' && s.text[i+1] != '\r' {
				i++
			}
		case c == '$' && strings.HasPrefix(s.text[i:], "${"):
			depth++
		case c == '}' && depth > 0:
			depth--
		case c == '"' && depth == 0:
			return i, true
		}
	}
	return len(s.text), false
}

// paired says whether the quotes from a place just behind one to the end of
// the line are odd in number, so that the one before it has its match.
func (s *scanner) paired(from int) bool {
	n := 0
	for i := from; i < len(s.text) && s.text[i] != '\n' && s.text[i] != '\r'; i++ {
		switch s.text[i] {
		case '\\':
			i++
		case '"':
			n++
		case '#':
			if n%2 == 1 {
				return true // a comment behind a text that is closed
			}
		}
	}
	return n%2 == 1
}

// heredoc goes over a text between marks.
func (s *scanner) heredoc() {
	mark := strings.TrimSpace(strings.TrimPrefix(s.text[s.i+2:s.lineEnd(s.i)], "-"))
	for i := s.lineEnd(s.i); i < len(s.text); {
		i++
		end := s.lineEnd(min(i, len(s.text)))
		if strings.TrimSpace(s.text[min(i, end):end]) == mark {
			s.i = end
			if s.at <= s.i {
				s.found = true
			}
			return
		}
		i = end
	}
	s.i, s.found = len(s.text), true
}

func inWord(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'
}
