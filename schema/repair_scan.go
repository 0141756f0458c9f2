package schema

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"
)

// space goes over spaces, tabs and what looks like a space; the latter becomes
// plain spaces in the copy.
func (m *mender) space() { m.i = m.spaceEnd(m.i) }

func (m *mender) spaceEnd(i int) int {
	for i < len(m.text) {
		if m.text[i] == ' ' || m.text[i] == '\t' {
			i++
			continue
		}
		size := foreignSpace(m.text, i)
		if size == 0 {
			break
		}
		m.foreign = append(m.foreign, Span{int32(i), int32(i + size)})
		m.blank(i, i+size)
		i += size
	}
	return i
}

func (m *mender) peek() byte {
	if m.i < len(m.text) {
		return m.text[m.i]
	}
	return '\n'
}

func (m *mender) has(i int, what string) bool {
	return len(m.text)-i >= len(what) && string(m.text[i:i+len(what)]) == what
}

func (m *mender) isComment(i int) bool {
	return i < len(m.text) && (m.text[i] == '#' || m.has(i, "//") || m.has(i, "/*"))
}

// atLineEnd says whether nothing but a comment is left of the line.
func (m *mender) atLineEnd() bool { return isLineEnd(m.peek()) || m.isComment(m.i) }

// comment goes over a comment. One that never ends hides the rest of the
// text, so only its first line is taken for it.
func (m *mender) comment() {
	if !m.has(m.i, "/*") {
		m.i = m.lineEnd(m.i)
		return
	}
	if end := bytes.Index(m.text[m.i:], []byte("*/")); end >= 0 {
		m.i += end + 2
		return
	}
	end := m.lineEnd(m.i)
	m.guess(Problem{Rule: ruleSyntax, Span: Span{int32(m.i), int32(m.i + 2)}, Message: "this comment never ends: write */ where it does",
		Fixes: m.fix("end the comment with this line", false, m.edit(end, end, " */"))})
	m.blank(m.i, end)
	m.i = end
}

// nameEnd is where the name that starts at i ends: i itself where none starts.
func nameEnd(text []byte, i int) int {
	start := i
	for i < len(text) {
		c, size := utf8.DecodeRune(text[i:])
		if c != '_' && !unicode.IsLetter(c) && (i == start || c != '-' && !unicode.IsDigit(c)) {
			break
		}
		i += size
	}
	return i
}

// literalEnd is where the plain value that starts at i ends. False: none
// starts there, or it is not well formed.
func (m *mender) literalEnd(i int) (end int, ok bool) {
	if i >= len(m.text) {
		return i, false
	}
	switch c := m.text[i]; {
	case c == '"':
		return m.stringEnd(i)
	case c >= '0' && c <= '9':
		end = m.digitsEnd(i)
		if m.has(end, ".") && m.digitsEnd(end+1) > end+1 {
			end = m.digitsEnd(end + 1)
		}
		return end, m.delimits(end)
	case c == '[':
		return m.listEnd(i)
	case m.has(i, "true"):
		return i + 4, m.delimits(i + 4)
	case m.has(i, "false"):
		return i + 5, m.delimits(i + 5)
	case m.has(i, "<<"):
		return m.heredocEnd(i)
	}
	return i, false
}

func (m *mender) digitsEnd(i int) int {
	for i < len(m.text) && m.text[i] >= '0' && m.text[i] <= '9' {
		i++
	}
	return i
}

// delimits says whether a number or word may end before the byte at i.
func (m *mender) delimits(i int) bool {
	if i >= len(m.text) || isLineEnd(m.text[i]) || m.isComment(i) || foreignSpace(m.text, i) > 0 {
		return true
	}
	return strings.IndexByte(" \t,;]}", m.text[i]) >= 0
}

// stringEnd is behind the closing quote of the text in quotes that starts at
// i. What a template fills in may hold quotes of its own.
func (m *mender) stringEnd(i int) (end int, ok bool) {
	for i++; i < len(m.text); i++ {
		switch c := m.text[i]; {
		case c == '"':
			return i + 1, true
		case isLineEnd(c):
			return i, false
		case c == '\\':
			size := m.escapeSize(i)
			if size == 0 {
				return i, false
			}
			i += size - 1
		case m.has(i, "$${"), m.has(i, "%%{"):
			i += 2
		case m.has(i, "${"), m.has(i, "%{"):
			shut, ok := m.templateEnd(i + 2)
			if !ok {
				return i, false
			}
			i = shut - 1
		}
	}
	return i, false
}

// templateEnd is behind the brace that closes what a template fills in.
func (m *mender) templateEnd(i int) (end int, ok bool) {
	for depth := 1; i < len(m.text); i++ {
		switch c := m.text[i]; {
		case isLineEnd(c):
			return i, false
		case c == '{':
			depth++
		case c == '}':
			if depth--; depth == 0 {
				return i + 1, true
			}
		case c == '"':
			shut, ok := m.stringEnd(i)
			if !ok {
				return i, false
			}
			i = shut - 1
		}
	}
	return i, false
}

// escapeSize is the length of the escape sequence at i, 0 where it is none.
func (m *mender) escapeSize(i int) int {
	if i+1 >= len(m.text) {
		return 0
	}
	switch m.text[i+1] {
	case 'n', 'r', 't', '"', '\\':
		return 2
	case 'u':
		return m.hexDigits(i+2, 4)
	case 'U':
		return m.hexDigits(i+2, 8)
	}
	return 0
}

func (m *mender) hexDigits(i, n int) int {
	if i+n > len(m.text) || strings.Trim(string(m.text[i:i+n]), "0123456789abcdefABCDEF") != "" {
		return 0
	}
	return n + 2
}

// listEnd is behind the ] of a list of plain values.
func (m *mender) listEnd(i int) (end int, ok bool) {
	i = m.gapEnd(i + 1)
	for i < len(m.text) && m.text[i] != ']' {
		end, ok := m.literalEnd(i)
		if !ok {
			return i, false
		}
		i = m.gapEnd(end)
		if i >= len(m.text) || m.text[i] != ',' && m.text[i] != ']' {
			return i, false
		}
		if m.text[i] == ',' {
			i = m.gapEnd(i + 1)
		}
	}
	return i + 1, i < len(m.text)
}

// gapEnd is behind the spaces, line ends and comments between the values of a
// list.
func (m *mender) gapEnd(i int) int {
	for i < len(m.text) {
		switch next := m.spaceEnd(i); {
		case next > i:
			i = next
		case isLineEnd(m.text[i]):
			i++
		case m.has(i, "/*"):
			end := bytes.Index(m.text[i:], []byte("*/"))
			if end < 0 {
				return i
			}
			i += end + 2
		case m.isComment(i):
			i = m.lineEnd(i)
		default:
			return i
		}
	}
	return i
}

// heredocEnd is behind the closing marker of the heredoc that starts at i.
func (m *mender) heredocEnd(i int) (end int, ok bool) {
	start := i + 2
	if start < len(m.text) && m.text[start] == '-' {
		start++
	}
	stop := nameEnd(m.text, start)
	marker := string(m.text[start:stop])
	if marker == "" || m.lineEnd(stop) != stop {
		return i, false
	}
	for line := m.nextLine(stop); line < len(m.text); line = m.nextLine(line) {
		end := m.lineEnd(line)
		if strings.TrimSpace(string(m.text[line:end])) == marker {
			return end, true
		}
	}
	return i, false
}

// nextLine is where the line after the one at i starts.
func (m *mender) nextLine(i int) int {
	i = m.lineEnd(i)
	if m.has(i, "\r\n") {
		return i + 2
	}
	return i + 1
}

// balancedEnd is where the expression that starts at i ends: with its line,
// or where it opens brackets, with the line that closes them. A closing brace
// that it did not open ends it too. False: quotes or brackets do not pair up.
func (m *mender) balancedEnd(i int) (end int, ok bool) {
	depth, last := 0, i
	for i < len(m.text) {
		c := m.text[i]
		switch {
		case c == '"':
			shut, ok := m.stringEnd(i)
			if !ok {
				return i, false
			}
			i, last = shut, shut
			continue
		case m.has(i, "<<"):
			if shut, ok := m.heredocEnd(i); ok {
				i, last = shut, shut
				continue
			}
		case m.isComment(i) || isLineEnd(c):
			if depth == 0 {
				return last, true
			}
			if next := m.gapEnd(i); next > i {
				i = next
				continue
			}
		case c == '(' || c == '[' || c == '{':
			depth++
		case c == ')' || c == ']' || c == '}':
			if depth == 0 {
				return last, c == '}'
			}
			depth--
		case c == ' ' || c == '\t':
			i++
			continue
		}
		i++
		last = i
	}
	return last, depth == 0
}

// trimEnd is the end of a stretch without the spaces before it.
func (m *mender) trimEnd(start, end int) int {
	for end > start && (m.text[end-1] == ' ' || m.text[end-1] == '\t' || isLineEnd(m.text[end-1])) {
		end--
	}
	return end
}
