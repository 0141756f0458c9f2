package schema

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// mended is a copy of a text that the parser gets further with.
type mended struct {
	copy     []byte
	inserted []insertion
	broken   []brokenValue
	problems []Problem
	guessed  []Span // the lines on which something was guessed
	whole    bool   // nothing was guessed: only the layout was put right
}

// mend goes through a text that does not parse, line by line, and makes a
// copy that does: each thing at fault is told once, in the maker's words, and
// made good or replaced by a stand-in, so that the lines around it are read.
// It knows the plain part of the language: names, labels, values, braces.
func mend(f *File, seen []byte) mended {
	first := newMender(f, seen)
	first.run()
	m := first
	if len(first.open) > 0 || first.extra > 0 {
		// Braces do not pair up. Which one is missing or too many shows in the
		// indentation, once it is known that some are.
		m = newMender(f, seen)
		m.byIndent, m.missing, m.tooMany = true, len(first.open), first.extra
		m.run()
	}
	if m.reports <= mostReports {
		m.closeRest()
	}
	m.tellForeignSpaces()
	return m.result()
}

// mender makes the copy. Bytes are replaced in place, so that offsets stay
// those of the text; what has to be added is kept apart until the end.
type mender struct {
	file  *File
	text  []byte
	i     int // where it reads
	added []addition
	out   mended

	lineEnding string // how the file's lines end

	open     []openBlock
	extra    int  // closing braces that close nothing
	byIndent bool // braces are known not to pair up, and indentation decides
	missing  int  // closing braces still to be found missing
	tooMany  int  // closing braces still to be found too many

	told    []Span // lines that have been told of
	reports int    // things mended, told or not
	foreign []Span // spaces of another kind than the language has
}

// addition is text the copy has more, before the byte at a place.
type addition struct {
	at   int
	text string
}

// openBlock is a block whose closing brace has not come yet.
type openBlock struct {
	spec     *BlockSpec // nil where the format does not have it
	name     string
	header   Span
	indent   int
	indented bool // what stands in it is set deeper than its header
	started  bool // something stands in it
}

func newMender(f *File, seen []byte) *mender {
	m := &mender{file: f, text: slices.Clone(seen), out: mended{whole: true}, lineEnding: f.lineEnding()}
	for _, p := range f.Problems {
		m.told = append(m.told, m.lineOf(p))
	}
	return m
}

// lineOf is the line on which a problem starts.
func (m *mender) lineOf(p Problem) Span {
	return Span{int32(m.lineStart(int(p.Span.Start))), int32(m.lineEnd(int(p.Span.Start)))}
}

func (m *mender) run() {
	if strings.HasPrefix(m.file.Text.content, byteOrderMark) {
		m.i = len(byteOrderMark)
	}
	for m.i < len(m.text) && m.reports <= mostReports {
		m.item()
	}
}

// mostReports is how many things are mended. A text with more is no recipe,
// and each of them may take a look at all the rest of it.
const mostReports = 4 * mostProblems

// result puts the additions into the copy.
func (m *mender) result() mended {
	slices.SortStableFunc(m.added, func(a, b addition) int { return a.at - b.at })
	out := m.out
	out.copy = make([]byte, 0, len(m.text)+64)
	from, shift := 0, 0
	for i := range out.broken {
		out.broken[i].at += m.addedBefore(out.broken[i].at)
	}
	for _, a := range m.added {
		out.copy = append(out.copy, m.text[from:a.at]...)
		from = a.at
		out.inserted = append(out.inserted, insertion{a.at + shift, len(a.text)})
		shift += len(a.text)
		out.copy = append(out.copy, a.text...)
	}
	out.copy = append(out.copy, m.text[from:]...)
	return out
}

func (m *mender) addedBefore(at int) int {
	n := 0
	for _, a := range m.added {
		if a.at < at {
			n += len(a.text)
		}
	}
	return n
}

func (m *mender) add(at int, text string) { m.added = append(m.added, addition{at, text}) }

// put writes text over a stretch of the copy: what is left of the stretch
// becomes spaces, what does not fit is added behind it.
func (m *mender) put(start, end int, text string) {
	n := copy(m.text[start:end], text)
	for i := start + n; i < end; i++ {
		m.text[i] = ' '
	}
	if n < len(text) {
		m.add(end, text[n:])
	}
}

func (m *mender) blank(start, end int) { m.put(start, end, "") }

// standIn puts a number in place of a value that cannot be read.
func (m *mender) standIn(start, end int) {
	m.put(start, end, "0")
	m.out.broken = append(m.out.broken, brokenValue{start, Span{int32(start), int32(end)}})
}

// guess reports a problem whose repair is a guess, so that nothing counts as
// missing from the text. A line is told of once.
func (m *mender) guess(p Problem) {
	m.out.whole = false
	m.out.guessed = append(m.out.guessed, m.lineOf(p))
	m.layout(p)
}

// layout reports a problem that leaves no doubt about what is meant.
func (m *mender) layout(p Problem) {
	m.reports++
	line := m.lineOf(p)
	if slices.Contains(m.told, line) {
		return
	}
	m.told = append(m.told, line)
	m.out.problems = append(m.out.problems, p)
}

func (m *mender) fix(title string, safe bool, edits ...Edit) []Fix {
	return []Fix{{Title: title, Safe: safe, Edits: edits}}
}

func (m *mender) edit(start, end int, text string) Edit {
	return Edit{m.file, Span{int32(start), int32(end)}, text}
}

// given is a stretch of the text as it was given.
func (m *mender) given(start, end int) string { return m.file.Text.content[start:end] }

func (m *mender) lineStart(at int) int {
	for at > 0 && !isLineEnd(m.text[at-1]) {
		at--
	}
	return at
}

func (m *mender) lineEnd(at int) int {
	for at < len(m.text) && !isLineEnd(m.text[at]) {
		at++
	}
	return at
}

func isLineEnd(b byte) bool { return b == '\n' || b == '\r' }

// indentAt is how far the line starting there is set in; a tab counts as two.
func (m *mender) indentAt(lineStart int) int {
	indent := 0
	for i := lineStart; i < len(m.text); i++ {
		switch m.text[i] {
		case ' ':
			indent++
		case '\t':
			indent += 2
		default:
			return indent
		}
	}
	return indent
}

// spec is what the innermost open block may hold; nil at the top of the file.
func (m *mender) spec() *BlockSpec {
	if len(m.open) == 0 {
		return nil
	}
	return m.open[len(m.open)-1].spec
}

func (m *mender) push(name string, header Span) {
	spec := specNamed(name, m.spec())
	if spec != nil && spec.Label == StepKind {
		label := strings.Trim(strings.TrimSpace(m.file.Text.Slice(header)[len(name):]), `"`)
		if step := Step(label); step != nil {
			spec = step
		}
	}
	m.open = append(m.open, openBlock{spec: spec, name: name, header: header, indent: m.indentAt(m.lineStart(int(header.Start)))})
}

// closing reads a closing brace.
func (m *mender) closing() {
	at := m.i
	m.i++
	first := m.isFirst(at)
	indent := m.indentAt(m.lineStart(at))
	surplus := len(m.open) == 0 || m.tooMany > 0 && !first
	if !surplus && m.tooMany > 0 {
		top := m.open[len(m.open)-1]
		surplus = top.started && top.indented && (indent > top.indent || m.goesOnDeeper(at))
	}
	if surplus {
		m.surplus(at)
		return
	}
	m.open = m.open[:len(m.open)-1]
	m.space()
	if !m.atLineEnd() {
		m.layout(Problem{Rule: ruleTwoOnOneLine, Span: Span{int32(m.i), int32(m.trimEnd(m.i, m.lineEnd(m.i)))},
			Message: "something stands behind the closing brace: give it a line of its own",
			Fixes:   m.fix("give it a line of its own", true, m.newLine(at+1, m.i, indent))})
		m.add(m.i, "\n")
	}
}

// goesOnDeeper says whether what comes below the closing brace that stands
// there is set deeper than the brace.
func (m *mender) goesOnDeeper(at int) bool {
	next := m.gapEnd(at + 1)
	return next < len(m.text) && m.indentAt(m.lineStart(next)) > m.indentAt(m.lineStart(at))
}

// surplus takes out a closing brace that closes nothing.
func (m *mender) surplus(at int) {
	m.extra++
	m.tooMany--
	m.guess(Problem{Rule: ruleSyntax, Span: Span{int32(at), int32(at + 1)}, Message: "this closing brace closes nothing: take it out",
		Fixes: m.fix("take the closing brace out", false, m.edit(at, at+1, ""))})
	m.blank(at, at+1)
	m.i = at + 1
}

// newLine is the edit that puts a line end and an indentation between two
// places on a line.
func (m *mender) newLine(from, to, indent int) Edit {
	return m.edit(from, to, m.lineEnding+strings.Repeat(" ", indent))
}

// isFirst says whether nothing but spaces stands before the place on its line.
func (m *mender) isFirst(at int) bool {
	return strings.TrimLeft(string(m.text[m.lineStart(at):at]), " \t") == ""
}

// settleIndent looks at the first word of a line before it is read: where it
// is set out further than it can be inside the innermost block, that block's
// closing brace is missing.
func (m *mender) settleIndent() {
	start := m.lineStart(m.i)
	indent := m.indentAt(start)
	brace := m.text[m.i] == '}'
	for m.byIndent && m.missing > 0 && len(m.open) > 0 {
		top := m.open[len(m.open)-1]
		if indent > top.indent || brace && indent == top.indent {
			break
		}
		if !top.indented && top.indent == 0 && !m.belongsOutside(top.spec) {
			break // a text without any indentation tells nothing
		}
		m.closeMissing(start)
	}
	if len(m.open) > 0 {
		top := &m.open[len(m.open)-1]
		if !top.started {
			top.started, top.indented = true, indent > top.indent
		}
	}
}

// belongsOutside says whether the word that comes next starts a block that
// stands at the top of a file and not in one of spec.
func (m *mender) belongsOutside(spec *BlockSpec) bool {
	name := string(m.text[m.i:nameEnd(m.text, m.i)])
	return Top(name) != nil && (spec == nil || spec.Block(name) == nil && spec.Attr(name) == nil)
}

// closeMissing closes the innermost block before the line that starts there.
func (m *mender) closeMissing(lineStart int) {
	top := m.open[len(m.open)-1]
	m.open = m.open[:len(m.open)-1]
	m.missing--
	end := lineStart
	for end > 0 && (isLineEnd(m.text[end-1]) || m.text[end-1] == ' ' || m.text[end-1] == '\t') {
		end--
	}
	end = max(m.lineEnd(end), int(top.header.End))
	indent := m.given(m.lineStart(int(top.header.Start)), m.lineStart(int(top.header.Start))+m.indentBytes(int(top.header.Start)))
	m.guess(Problem{Rule: ruleSyntax, Span: top.header,
		Message: "the closing brace of " + brief(m.file.Text.Slice(top.header)) + " is missing: write } where it ends",
		Fixes:   m.fix("close "+brief(m.file.Text.Slice(top.header)), false, m.edit(end, end, m.lineEnding+indent+"}"))})
	m.add(lineStart, "\n}\n")
}

// indentBytes is how many bytes of indentation the line of a place has.
func (m *mender) indentBytes(at int) int {
	start := m.lineStart(at)
	n := 0
	for start+n < at && (m.text[start+n] == ' ' || m.text[start+n] == '\t') {
		n++
	}
	return n
}

// closeRest closes the blocks that are open where the text ends.
func (m *mender) closeRest() {
	for len(m.open) > 0 {
		m.closeMissing(len(m.text))
	}
}

// tellForeignSpaces tells once of all spaces that look like one and are none.
func (m *mender) tellForeignSpaces() {
	if len(m.foreign) == 0 {
		return
	}
	slices.SortFunc(m.foreign, func(a, b Span) int { return int(a.Start - b.Start) })
	m.foreign = slices.Compact(m.foreign)
	edits := make([]Edit, len(m.foreign))
	for i, span := range m.foreign {
		text := " "
		if isZeroWidth(m.file.Text.Slice(span)) {
			text = ""
		}
		edits[i] = Edit{m.file, span, text}
	}
	message := "a space of another kind stands here, as word processors and web pages put in: write a plain space"
	if n := len(edits) - 1; n > 0 {
		message += ", here and in " + count(n, "other place", "other places")
	}
	m.out.problems = append(m.out.problems, Problem{Rule: ruleSyntax, Span: m.foreign[0], Message: message,
		Fixes: m.fix("write plain spaces", true, edits...)})
}

// foreignSpace is the length in bytes of a space at the place that the
// language does not take for one, 0 where none stands there.
func foreignSpace(text []byte, at int) int {
	if text[at] < utf8.RuneSelf {
		return 0
	}
	c, size := utf8.DecodeRune(text[at:])
	switch {
	case c == 0xa0, c == 0x1680, c >= 0x2000 && c <= 0x200b, c == 0x202f, c == 0x205f, c == 0x2060, c == 0x3000, c == 0xfeff:
		return size
	}
	return 0
}

func isZeroWidth(space string) bool {
	return space == "\u200b" || space == "\u2060" || space == "\ufeff"
}
