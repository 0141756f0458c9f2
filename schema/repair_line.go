package schema

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// item reads one line, or what follows on a line behind a brace.
func (m *mender) item() {
	m.space()
	c := m.peek()
	switch {
	case isLineEnd(c):
		m.i++
		return
	case m.isComment(m.i):
		m.comment()
		return
	}
	m.settleIndent()
	switch {
	case c == '}':
		m.closing()
	case nameEnd(m.text, m.i) > m.i:
		m.named(m.i, nameEnd(m.text, m.i))
	case c == '"' && m.unquoteName():
	default:
		m.stray()
	}
}

// named reads a line that starts with a name.
func (m *mender) named(start, end int) {
	m.i = end
	m.space()
	switch c := m.peek(); {
	case c == '=' && !m.has(m.i, "=="):
		m.i++
		m.attribute(start, end)
	case c == ':':
		m.colon(start, end)
	case c == '{':
		m.header(start, end)
	case m.atLineEnd() && !m.takesNoLabel(string(m.text[start:end])):
		m.alone(start, end)
	default:
		m.header(start, end)
	}
}

func (m *mender) takesNoLabel(name string) bool {
	spec := specNamed(name, m.spec())
	return spec != nil && spec.Label == NoLabel
}

// colon reads `name: value`.
func (m *mender) colon(start, end int) {
	colon := m.i
	equals := "="
	if colon == end {
		equals = " ="
	}
	m.layout(Problem{Rule: ruleSyntax, Span: Span{int32(colon), int32(colon + 1)}, Message: "an equals sign stands between a name and its value: write " + m.given(start, end) + " =",
		Fixes: m.fix("write "+m.given(start, end)+" =", true, m.edit(colon, colon+1, equals))})
	m.text[colon] = '='
	m.i = colon + 1
	m.attribute(start, end)
}

// unquoteName reads `"name" = value`, the way other formats write it.
func (m *mender) unquoteName() bool {
	end, ok := m.stringEnd(m.i)
	if !ok {
		return false
	}
	start := m.i
	next := m.spaceEnd(end)
	name := string(m.text[start+1 : end-1])
	if nameEnd([]byte(name), 0) != len(name) || name == "" || next >= len(m.text) || strings.IndexByte("=:{\"", m.text[next]) < 0 {
		return false
	}
	if m.text[next] == '"' && !m.isBlockName(name) {
		return false
	}
	m.layout(Problem{Rule: ruleSyntax, Span: Span{int32(start), int32(end)}, Message: "a name stands without quotes: write " + name,
		Fixes: m.fix("write "+name, true, m.edit(start, end, name))})
	m.text[start], m.text[end-1] = ' ', ' '
	m.i = start
	return true
}

// stray tells of something that is neither a name nor a brace.
func (m *mender) stray() {
	start, end := m.i, m.lineEnd(m.i)
	c, _ := utf8.DecodeRune(m.text[m.i:])
	if !unicode.IsDigit(c) && !isQuoteMark(c) {
		// A sign that slipped in before a name: the rest of the line may do.
		end = start
		for end < len(m.text) && !isLineEnd(m.text[end]) && m.text[end] != ' ' && m.text[end] != '}' && nameEnd(m.text, end) == end {
			_, size := utf8.DecodeRune(m.text[end:])
			end += size
		}
	}
	end = m.trimEnd(start, end)
	m.guess(Problem{Rule: ruleSyntax, Span: Span{int32(start), int32(end)},
		Message: brief(m.given(start, end)) + ` cannot be read here: a line is name = value, a block is name "label" { and, at its end, }`})
	m.blank(start, end)
	m.i = end
}

// alone tells of a name with nothing behind it, as while it is being typed.
func (m *mender) alone(start, end int) {
	name := m.given(start, end)
	message := name + ` stands alone: a line is name = value, a block is name "label" {`
	if spec := m.spec(); spec != nil && spec.Attr(name) != nil {
		message = "`" + name + "` has no value yet: write for instance " + name + " = " + spec.Attr(name).example()
	} else if known := specNamed(name, spec); known != nil {
		message = article(name) + " block needs its label and an opening brace: write " + known.header() + " {"
	}
	m.guess(Problem{Rule: ruleSyntax, Span: Span{int32(start), int32(end)}, Message: message})
	m.blank(start, end)
}

// header reads the label and the opening brace of a block.
func (m *mender) header(start, end int) {
	name := string(m.text[start:end])
	from := m.i
	stop := m.trimEnd(from, m.remarkStart(from, m.lineEnd(from)))
	brace := strings.IndexByte(string(m.text[from:stop]), '{')
	if brace < 0 && (!m.isBlockName(name) || m.isOnlyAttribute(name)) {
		m.noEquals(start, end, stop)
		return
	}
	if brace >= 0 {
		stop = from + brace
	}
	labelEnd := m.trimEnd(from, stop)
	header := Span{int32(start), int32(max(labelEnd, end))}
	m.label(name, from, labelEnd, brace >= 0)
	if brace >= 0 {
		m.i = stop + 1
		m.push(name, header)
		m.body(stop)
		return
	}
	m.i = labelEnd
	m.noBrace(name, header)
}

// isBlockName says whether some block of the language has that name.
func (m *mender) isBlockName(name string) bool {
	return specNamed(name, m.spec()) != nil || len(homesOf(name)) > 0
}

// isOnlyAttribute says whether the innermost block has an attribute of that
// name, and no block.
func (m *mender) isOnlyAttribute(name string) bool {
	spec := m.spec()
	return spec != nil && spec.Attr(name) != nil && spec.Block(name) == nil
}

// noEquals reads `name value`, a line without its equals sign; a line of
// anything else is told and left out.
func (m *mender) noEquals(start, end, stop int) {
	name := m.given(start, end)
	if spec := m.spec(); spec != nil && spec.Attr(name) != nil {
		m.guess(Problem{Rule: ruleSyntax, Span: Span{int32(start), int32(end)}, Message: "an equals sign stands between a name and its value: write " + name + " =",
			Fixes: m.fix("write "+name+" =", true, m.edit(end, end, " ="))})
		m.add(end, "=")
		m.attribute(start, end)
		return
	}
	stop = max(stop, end)
	m.guess(Problem{Rule: ruleSyntax, Span: Span{int32(start), int32(stop)},
		Message: brief(m.given(start, stop)) + ` cannot be read: a line is name = value, a block is name "label" { and, at its end, }`})
	m.blank(start, stop)
	m.i = stop
}

// label puts a block's label right where it is not text in quotes.
func (m *mender) label(name string, from, end int, hasBrace bool) {
	if m.labelsReadable(from, end) {
		return
	}
	source := m.given(from, end)
	key := stripQuotes(source)
	brace := ""
	if !hasBrace {
		brace = either(m.deeperBelow(end), " {", " {}")
	}
	p := Problem{Rule: ruleSyntax, Span: Span{int32(from), int32(end)}, Message: "the label stands in quotes: write " + name + " " + Quote(key),
		Fixes: m.fix("write "+name+" "+Quote(key)+brace, hasBrace, m.edit(from, end, Quote(key)+brace))}
	switch {
	case hasOtherQuotes(source):
		p.Message = "straight quotes stand around a label: write " + name + " " + Quote(key)
	case strings.Count(source, `"`)%2 == 1 && source[0] == '"':
		p.Message = "the closing quote of this label is missing: write " + name + " " + Quote(key)
	case strings.Count(source, `"`)%2 == 1:
		p.Message = "the opening quote of this label is missing: write " + name + " " + Quote(key)
	case strings.Count(source, `"`) == 0:
		p.Rule = ruleNotALiteral
		p.Message = brief(source) + " is not in quotes: write " + name + " " + Quote(key)
	}
	m.guess(p)
	m.put(from, end, Quote(key))
}

// labelsReadable says whether the stretch is nothing but labels the parser
// takes: texts in quotes, or names.
func (m *mender) labelsReadable(i, end int) bool {
	for i < end {
		next := nameEnd(m.text[:end], i)
		if next == i {
			if m.text[i] != '"' {
				return false
			}
			shut, ok := m.stringEnd(i)
			if !ok || shut > end || strings.Contains(string(m.text[i:shut]), "${") || strings.Contains(string(m.text[i:shut]), "%{") {
				return false
			}
			next = shut
		}
		i = m.spaceEnd(next)
	}
	return true
}

// noBrace reads a header without its opening brace. Where what follows is set
// deeper it is the block's, else the block is taken for an empty one.
func (m *mender) noBrace(name string, header Span) {
	at := int(header.End)
	next := m.gapEnd(m.lineEnd(at))
	what := brief(m.file.Text.Slice(header))
	if next < len(m.text) && m.text[next] == '{' {
		m.layout(Problem{Rule: ruleSyntax, Span: header, Message: "the opening brace stands on the line of its block: write " + what + " {",
			Fixes: m.fix("write "+what+" {", true, m.edit(at, next+1, " {"))})
		m.add(at, "{")
		m.blank(next, next+1)
		m.push(name, header)
		return
	}
	deeper := m.deeperBelow(at)
	brace := either(deeper, " {", " {}")
	m.guess(Problem{Rule: ruleSyntax, Span: header, Message: "the opening brace of this block is missing: write " + what + brace,
		Fixes: m.fix("write "+what+brace, false, m.edit(at, at, brace))})
	if deeper {
		m.add(at, "{")
		m.push(name, header)
		return
	}
	m.add(at, "{}")
	m.i = max(m.i, at)
}

// deeperBelow says whether the next line with something on it is set deeper
// than the line of the place.
func (m *mender) deeperBelow(at int) bool {
	next := m.gapEnd(m.lineEnd(at))
	return next < len(m.text) && m.indentAt(m.lineStart(next)) > m.indentAt(m.lineStart(at))
}

// body reads what stands on the line behind an opening brace: nothing, or a
// block on one line.
func (m *mender) body(open int) {
	m.space()
	if m.atLineEnd() {
		return
	}
	start := m.i
	shut := m.oneLineEnd(start)
	if shut < 0 && !m.goesOnBelow(start) {
		shut = m.trimEnd(start, m.remarkStart(start, m.lineEnd(start)))
		top := m.open[len(m.open)-1].header
		m.guess(Problem{Rule: ruleSyntax, Span: top, Message: "the closing brace of " + brief(m.file.Text.Slice(top)) + " is missing: write } where it ends",
			Fixes: m.fix("close "+brief(m.file.Text.Slice(top)), false, m.edit(shut, shut, " }"))})
		m.oneLine(open, start, shut)
		m.add(shut, "}\n")
		return
	}
	if shut < 0 {
		// The block goes on below: only its first line stands too high.
		m.layout(Problem{Rule: ruleTwoOnOneLine, Span: Span{int32(start), int32(m.trimEnd(start, m.lineEnd(start)))},
			Message: "a block that goes on below has nothing behind its opening brace: give it a line of its own",
			Fixes:   m.fix("give it a line of its own", true, m.newLine(open+1, start, m.indentAt(m.lineStart(open))+2))})
		m.add(open+1, "\n")
		return
	}
	m.oneLine(open, start, shut)
}

// goesOnBelow says whether the block whose first line that is has more lines,
// or its closing brace on a line of its own.
func (m *mender) goesOnBelow(at int) bool {
	next := m.gapEnd(m.lineEnd(at))
	if next >= len(m.text) {
		return false
	}
	here, there := m.indentAt(m.lineStart(at)), m.indentAt(m.lineStart(next))
	return there > here || there == here && m.text[next] == '}'
}

// oneLineEnd is the closing brace, on the same line, of a block whose content
// starts at i; -1 where there is none.
func (m *mender) oneLineEnd(i int) int {
	line := m.remarkStart(i, m.lineEnd(i))
	depth := 1
	for at := i; at < line; at++ {
		switch m.text[at] {
		case '"':
			end, ok := m.stringEnd(at)
			if !ok || end > line {
				// A quote is missing: the last brace of the line is the likeliest.
				if last := strings.LastIndexByte(string(m.text[i:line]), '}'); last >= 0 {
					return i + last
				}
				return -1
			}
			at = end - 1
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return at
			}
		}
	}
	return -1
}

// oneLine reads a block that stands on one line. With more in it than one
// attribute it gets lines of its own in the copy.
func (m *mender) oneLine(open, start, shut int) {
	type part struct{ start, end int }
	var parts []part
	split := false
	var second Span
	for m.i < shut {
		m.i = m.spaceEnd(m.i)
		if m.i >= shut {
			break
		}
		if m.text[m.i] == ',' || m.text[m.i] == ';' {
			m.blank(m.i, m.i+1)
			m.i++
			split = true
			continue
		}
		from := m.i
		if len(parts) > mostProblems {
			m.strayUpTo(shut) // no block of a recipe has so much on a line
			break
		}
		if len(parts) > 0 {
			m.add(from, "\n")
		}
		m.inOneLine(shut)
		m.i = min(max(m.i, from+1), shut)
		parts = append(parts, part{from, m.trimEnd(from, m.i)})
		if len(parts) == 2 {
			second = Span{int32(from), int32(m.trimEnd(from, m.i))}
		}
	}
	m.open = m.open[:len(m.open)-1]
	nested := len(parts) == 1 && strings.Contains(string(m.text[parts[0].start:parts[0].end]), "{") && !strings.Contains(string(m.text[parts[0].start:parts[0].end]), "=")
	m.i = shut
	if shut < len(m.text) && m.text[shut] == '}' {
		m.i++
	}
	empty := len(parts) == 0
	if !split && (empty || len(parts) == 1 && !nested && !m.startsBlock(parts[0].start)) {
		m.afterOneLine(open)
		return
	}
	indent := m.indentAt(m.lineStart(open))
	text := ""
	for _, p := range parts {
		text += m.lineEnding + strings.Repeat(" ", indent+2) + m.given(p.start, p.end)
	}
	text += m.lineEnding + strings.Repeat(" ", indent)
	p := Problem{Rule: ruleTwoOnOneLine, Span: second, Message: "a block on one line holds one attribute, and here is another: give each a line of its own",
		Fixes: m.fix("give each its own line", true, m.edit(open+1, shut, text))}
	switch {
	case len(parts) < 2 && split:
		p.Span, p.Message = Span{int32(start), int32(shut)}, "no comma stands behind a value: take it out"
		if len(parts) == 1 {
			p.Fixes = m.fix("take it out", true, m.edit(parts[0].end, shut, " "))
		}
	case len(parts) < 2:
		p.Span, p.Message = Span{int32(start), int32(m.trimEnd(start, shut))}, "a block inside a block needs a line of its own"
	}
	m.layout(p)
	m.add(open+1, "\n")
	m.add(shut, "\n")
	m.afterOneLine(open)
}

// startsBlock says whether a block stands there rather than an attribute.
func (m *mender) startsBlock(i int) bool {
	next := m.spaceEnd(nameEnd(m.text, i))
	return next < len(m.text) && m.text[next] != '='
}

// inOneLine reads one thing inside a block on one line.
func (m *mender) inOneLine(shut int) {
	end := nameEnd(m.text, m.i)
	if end == m.i {
		m.strayUpTo(shut)
		return
	}
	start := m.i
	next := m.spaceEnd(end)
	switch {
	case next < shut && (m.text[next] == '=' || m.text[next] == ':'):
		m.i = next + 1
		if m.text[next] == ':' {
			m.layout(Problem{Rule: ruleSyntax, Span: Span{int32(next), int32(next + 1)}, Message: "an equals sign stands between a name and its value: write " + m.given(start, end) + " =",
				Fixes: m.fix("write "+m.given(start, end)+" =", true, m.edit(next, next+1, " ="))})
			m.text[next] = '='
		}
		m.space()
		m.value(m.attrSpec(start, end), Span{int32(start), int32(end)}, shut)
	case next < shut && strings.IndexByte(string(m.text[next:shut]), '{') >= 0:
		m.i = next
		m.header(start, end)
	default:
		m.strayUpTo(shut)
	}
}

// strayUpTo tells of something in a block on one line that cannot be read.
func (m *mender) strayUpTo(shut int) {
	end := m.trimEnd(m.i, shut)
	message := brief(m.given(m.i, end)) + " cannot be read here: between the braces stands name = value"
	if spec := m.attrSpec(m.i, end); spec != nil {
		message = "`" + spec.Name + "` has no value yet: write for instance " + spec.Name + " = " + spec.example()
	}
	m.guess(Problem{Rule: ruleSyntax, Span: Span{int32(m.i), int32(end)}, Message: message})
	m.blank(m.i, end)
	m.i = shut
}

// afterOneLine sees to it that nothing stands behind a block on one line.
func (m *mender) afterOneLine(open int) {
	at := m.i
	m.space()
	if m.atLineEnd() || m.peek() == '}' && len(m.open) > 0 && m.insideOneLine(at) {
		return
	}
	if m.peek() == '}' && m.tooMany > 0 {
		m.surplus(m.i)
		return
	}
	m.layout(Problem{Rule: ruleTwoOnOneLine, Span: Span{int32(m.i), int32(m.trimEnd(m.i, m.lineEnd(m.i)))},
		Message: "something stands behind the closing brace: give it a line of its own",
		Fixes:   m.fix("give it a line of its own", true, m.newLine(at, m.i, m.indentAt(m.lineStart(open))))})
	m.add(m.i, "\n")
}

// insideOneLine says whether the block around starts on this very line, and
// so puts the line ends itself.
func (m *mender) insideOneLine(at int) bool {
	return int(m.open[len(m.open)-1].header.Start) >= m.lineStart(at)
}
