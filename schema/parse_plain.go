package schema

import "strings"

// The quick parser takes plain texts only: blocks with at most one label in
// quotes, and lines whose value is text in quotes, a number, true, false or a
// list of those. It goes once over the bytes and takes the whole text or
// declines it: whatever it is not certain of is left to HCL's parser, so what
// is wrong with a text never depends on it. What it does take must come out
// as HCL's parser would have it, which FuzzPlain compares.
//
// It relies on the survey of the bytes: they are UTF-8 without control
// characters, and a carriage return stands only before a line feed.

// mostPlainLines is how many lines of its own a block may have here: each is
// compared with those before it. No block of the format has half as many.
const mostPlainLines = 64

type plainParser struct {
	text string
	at   int
	deep int // brackets open

	// The lines and blocks of the bodies that are still open, the innermost
	// last. When one closes, what it holds goes to where all lie side by side.
	openLines  []line
	openBlocks []blockSyntax
	tree       *tree
}

// parsePlain reads a plain text; ok is false where it is not one.
func parsePlain(text string) (t *tree, ok bool) {
	p := plainParser{
		text:       text,
		openLines:  make([]line, 0, 16),
		openBlocks: make([]blockSyntax, 0, 16),
		tree: &tree{ // with room rather for too many than for too few
			lines:  make([]line, 0, len(text)/24+1),
			blocks: make([]blockSyntax, 0, len(text)/64+1),
			labels: make([]Span, 0, len(text)/64+1),
		},
	}
	p.tree.top, ok = p.body(true)
	return p.tree, ok
}

// next is the byte to be read; 0, which no plain text has, at the end.
func (p *plainParser) next() byte {
	if p.at < len(p.text) {
		return p.text[p.at]
	}
	return 0
}

// body reads what stands up to the closing brace, or to the end of the text.
func (p *plainParser) body(top bool) (body, bool) {
	lines, blocks := len(p.openLines), len(p.openBlocks)
	for {
		p.blank()
		switch c := p.next(); {
		case c == 0 && top, c == '}' && !top:
			return p.close(lines, blocks), true
		case !isNameStart(c) || !p.item(lines) || !p.lineEnd():
			return body{}, false
		}
	}
}

// close takes the lines and blocks of a body off those that are open.
func (p *plainParser) close(lines, blocks int) body {
	b := body{add(&p.tree.lines, p.openLines[lines:]), add(&p.tree.blocks, p.openBlocks[blocks:])}
	p.openLines, p.openBlocks = p.openLines[:lines], p.openBlocks[:blocks]
	return b
}

// item reads a line or a block. The lines of the body it stands in are open
// from there on.
func (p *plainParser) item(lines int) bool {
	name := p.name()
	p.spaces()
	if p.next() == '=' {
		return p.line(name, lines)
	}
	return p.block(name)
}

// line reads `= value`.
func (p *plainParser) line(name Span, lines int) bool {
	own := p.openLines[lines:]
	if len(own) == mostPlainLines {
		return false
	}
	for i := range own {
		if p.slice(own[i].name) == p.slice(name) {
			return false
		}
	}
	p.at++
	p.spaces()
	var value expr
	var ok bool
	if p.next() == '[' {
		value, ok = p.list()
	} else {
		value, ok = p.single()
	}
	p.openLines = append(p.openLines, line{name, value})
	return ok
}

// block reads the label of a block and what stands between its braces.
func (p *plainParser) block(name Span) bool {
	b := blockSyntax{name: name}
	if p.next() == '"' {
		label, ok := p.quoted()
		if !ok {
			return false
		}
		b.labels = run{int32(len(p.tree.labels)), 1}
		p.tree.labels = append(p.tree.labels, label)
		p.spaces()
	}
	if p.next() != '{' || !p.descend() {
		return false
	}
	b.open = Span{int32(p.at), int32(p.at + 1)}
	p.at++
	p.spaces()
	var ok bool
	if isNameStart(p.next()) {
		b.body, ok = p.onOneLine()
	} else if p.next() == '}' {
		ok = true
	} else if ok = p.lineEnd(); ok {
		b.body, ok = p.body(false)
	}
	if !ok || p.next() != '}' {
		return false
	}
	b.shut = Span{int32(p.at), int32(p.at + 1)}
	p.at++
	p.deep--
	p.openBlocks = append(p.openBlocks, b)
	return true
}

// onOneLine reads the only line of a block whose braces stand on that line.
func (p *plainParser) onOneLine() (body, bool) {
	lines, blocks := len(p.openLines), len(p.openBlocks)
	name := p.name()
	p.spaces()
	if p.next() != '=' || !p.line(name, lines) {
		return body{}, false
	}
	p.spaces()
	return p.close(lines, blocks), true
}

// descend counts a bracket that opens, as the guard before HCL's parser does.
func (p *plainParser) descend() bool {
	p.deep++
	return p.deep <= deepestNest
}

// list reads a list of single values.
func (p *plainParser) list() (expr, bool) {
	start := p.at
	elements := run{first: int32(len(p.tree.elements))}
	if !p.descend() {
		return expr{}, false
	}
	p.deep--
	p.at++
	for {
		p.blank()
		if p.next() == ']' {
			break
		}
		element, ok := p.single()
		if !ok {
			return expr{}, false
		}
		p.tree.elements = append(p.tree.elements, element)
		elements.n++
		p.blank()
		if p.next() == ',' {
			p.at++
		} else if p.next() != ']' {
			return expr{}, false
		}
	}
	p.at++
	if elements.n == 0 {
		elements = run{}
	}
	return expr{kind: list, span: p.from(start), of: elements}, true
}

// single reads text in quotes, a number, true or false. That it ends there is
// for the caller to see: only a few signs may follow a value.
func (p *plainParser) single() (expr, bool) {
	start := p.at
	switch c := p.next(); {
	case c == '"':
		span, ok := p.quoted()
		return expr{kind: plainText, span: span}, ok
	case isDigit(c):
		p.digits()
		if p.next() == '.' {
			p.at++
			if !isDigit(p.next()) {
				return expr{}, false
			}
			p.digits()
		}
	case strings.HasPrefix(p.text[p.at:], "true"):
		p.at += len("true")
	case strings.HasPrefix(p.text[p.at:], "false"):
		p.at += len("false")
	default:
		return expr{}, false
	}
	return expr{kind: unquoted, span: p.from(start)}, true
}

// quoted reads text in quotes on one line, with the common escapes and nothing
// to fill in.
func (p *plainParser) quoted() (Span, bool) {
	start := p.at
	for i := start + 1; i < len(p.text); i++ {
		switch c := p.text[i]; c {
		case '"':
			p.at = i + 1
			return p.from(start), true
		case '\n', '\r':
			return Span{}, false
		case '\\':
			if i++; i == len(p.text) || strings.IndexByte(`"\nrt`, p.text[i]) < 0 {
				return Span{}, false
			}
		case '$', '%':
			if i+1 < len(p.text) && (p.text[i+1] == '{' || p.text[i+1] == c) {
				return Span{}, false
			}
		}
	}
	return Span{}, false
}

func (p *plainParser) name() Span {
	start := p.at
	for isNameStart(p.next()) || isDigit(p.next()) || p.next() == '-' {
		p.at++
	}
	return p.from(start)
}

func (p *plainParser) digits() {
	for isDigit(p.next()) {
		p.at++
	}
}

func (p *plainParser) spaces() {
	for p.next() == ' ' || p.next() == '\t' {
		p.at++
	}
}

// blank goes over spaces, line ends and comments.
func (p *plainParser) blank() {
	for {
		switch p.next() {
		case ' ', '\t', '\r', '\n':
			p.at++
		default:
			if !p.comment() {
				return
			}
		}
	}
}

// lineEnd goes over the end of a line and a comment before it. It is false
// where something else stands there.
func (p *plainParser) lineEnd() bool {
	p.spaces()
	switch p.next() {
	case '\r', '\n', 0:
		return true
	}
	return p.comment()
}

// comment goes over a comment up to the end of its line, and is false where
// there is none.
func (p *plainParser) comment() bool {
	if p.next() != '#' && !strings.HasPrefix(p.text[p.at:], "//") {
		return false
	}
	if end := strings.IndexByte(p.text[p.at:], '\n'); end >= 0 {
		p.at += end
	} else {
		p.at = len(p.text)
	}
	return true
}

func (p *plainParser) slice(s Span) string { return p.text[s.Start:s.End] }

func (p *plainParser) from(start int) Span { return Span{int32(start), int32(p.at)} }

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// isNameStart says whether a name may start with the byte. Names beyond ASCII
// are HCL's to judge.
func isNameStart(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_'
}
