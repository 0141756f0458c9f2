package schema

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wickrule/schema/quantity"
)

// attrSpec is what the innermost block knows of an attribute, nil for nothing.
func (m *mender) attrSpec(start, end int) *AttrSpec {
	if spec := m.spec(); spec != nil {
		return spec.Attr(string(m.text[start:end]))
	}
	return nil
}

// attribute reads what stands behind an equals sign.
func (m *mender) attribute(start, end int) {
	m.space()
	m.value(m.attrSpec(start, end), Span{int32(start), int32(end)}, -1)
}

// value reads one value. In a block on one line shut is its closing brace,
// elsewhere it is -1.
func (m *mender) value(spec *AttrSpec, name Span, shut int) {
	start := m.i
	if spec == nil || spec.Type != Expression {
		if end, ok := m.literalEnd(start); ok && m.fitsBehind(end, shut) {
			m.i = end
			m.behind(start, end, shut)
			return
		}
	}
	if end, ok := m.balancedEnd(start); ok && end > start && m.fitsBehind(end, shut) && parses(m.text[start:end]) {
		m.i = end // computed, which is for others to judge
		m.behind(start, end, shut)
		return
	}
	m.unreadable(spec, name, start, m.valueEnd(start, shut))
}

func parses(source []byte) bool {
	_, complaints := hclsyntax.ParseExpression(source, "", hcl.InitialPos)
	return len(complaints) == 0
}

// fitsBehind says whether what follows a value can follow one: the end of the
// line, a closing brace, a comma or semicolon too many, or another attribute.
func (m *mender) fitsBehind(end, shut int) bool {
	next := m.spaceEnd(end)
	if next >= len(m.text) || isLineEnd(m.text[next]) || m.isComment(next) || m.text[next] == '}' {
		return true
	}
	if shut >= 0 && next >= shut {
		return next == shut
	}
	if m.text[next] == ',' || m.text[next] == ';' {
		next = m.spaceEnd(next + 1)
		if next >= len(m.text) || isLineEnd(m.text[next]) || m.isComment(next) || m.text[next] == '}' {
			return true
		}
	}
	return m.isAttributeStart(next)
}

// isAttributeStart says whether `name =` stands there.
func (m *mender) isAttributeStart(i int) bool {
	end := nameEnd(m.text, i)
	if end == i {
		return false
	}
	next := m.spaceEnd(end)
	return next < len(m.text) && m.text[next] == '=' && !m.has(next, "==")
}

// behind sees to it that a value ends its line.
func (m *mender) behind(start, end, shut int) {
	if shut >= 0 {
		return // the block on one line sees to it
	}
	m.space()
	if m.peek() == ',' || m.peek() == ';' {
		comma := m.i
		m.i++
		m.blank(comma, comma+1)
		m.space()
		if m.atLineEnd() {
			m.layout(Problem{Rule: ruleSyntax, Span: Span{int32(comma), int32(comma + 1)}, Message: "nothing stands behind a value: take the " + either(m.given(comma, comma+1) == ",", "comma", "semicolon") + " out",
				Fixes: m.fix("take it out", true, m.edit(comma, comma+1, ""))})
			return
		}
	}
	if m.atLineEnd() {
		return
	}
	indent := m.indentAt(m.lineStart(start))
	message := "a line holds one attribute, and here is another: give each a line of its own"
	if m.peek() == '}' && m.tooMany > 0 {
		m.surplus(m.i)
		return
	}
	if m.peek() == '}' {
		message = "the closing brace stands on a line of its own where its block does not stand on one"
		indent = max(indent-2, 0)
	}
	m.layout(Problem{Rule: ruleTwoOnOneLine, Span: Span{int32(m.i), int32(m.trimEnd(m.i, m.lineEnd(m.i)))}, Message: message,
		Fixes: m.fix("give it a line of its own", true, m.newLine(end, m.i, indent))})
	m.add(m.i, "\n")
}

// valueEnd is where a value ends that is not well formed: before a remark,
// the closing brace of a block on one line, or the end of the line.
func (m *mender) valueEnd(start, shut int) int {
	end := m.lineEnd(start)
	if shut >= 0 {
		end = min(end, shut)
	}
	end = m.remarkStart(start, end)
	end = m.trimEnd(start, end)
	for end > start && (m.text[end-1] == ',' || m.text[end-1] == ';') && m.text[start] != '[' {
		end = m.trimEnd(start, end-1)
	}
	if shut >= 0 {
		if another := m.anotherStart(start, end); another > 0 {
			end = m.trimEnd(start, another)
			for end > start && (m.text[end-1] == ',' || m.text[end-1] == ';') {
				end = m.trimEnd(start, end-1)
			}
		}
	}
	return end
}

// anotherStart is where, behind the value, `name =` stands; 0 where nowhere.
func (m *mender) anotherStart(start, end int) int {
	for i := start; i < end; i++ {
		if (m.text[i] == ' ' || m.text[i] == ',') && i+1 < end && m.isAttributeStart(i+1) {
			return i
		}
	}
	return 0
}

// remarkStart is where the remark at the end of a stretch of a line starts; a
// # inside quotes, or that no space stands before, is not one.
func (m *mender) remarkStart(start, end int) int {
	quotes := 0
	for i := start; i < end; i++ {
		if m.text[i] == '"' {
			quotes++
		}
		if i > start && (m.text[i-1] == ' ' || m.text[i-1] == '\t') && m.isComment(i) {
			if quotes%2 == 0 || strings.IndexByte(string(m.text[i:end]), '"') < 0 {
				return i
			}
		}
	}
	return end
}

// unreadable tells of a value that is not well formed, finds what it was
// meant to be, and puts a stand-in in its place.
func (m *mender) unreadable(spec *AttrSpec, name Span, start, end int) {
	attr := m.file.Text.Slice(name)
	if spec == nil {
		spec = &AttrSpec{Name: attr, Type: Line}
	}
	if start >= end && m.noValue(spec, name, start) {
		return
	}
	end = m.colorEnd(spec, start, end)
	if m.has(start, "<<") {
		m.openHeredoc(start)
		return
	}
	if m.text[start] == '[' {
		end = m.openListEnd(start, end)
	}
	source := m.given(start, end)
	p := Problem{Rule: ruleSyntax, Span: Span{int32(start), int32(end)}}
	literal, good := meant(spec, source)
	p.Rule, p.Message = whyUnreadable(spec, source, literal)
	if literal != "" {
		p.Fixes = m.fix("write "+brief(literal), good, m.edit(start, end, literal))
	}
	m.guess(p)
	m.standIn(start, end)
	m.i = end
	m.space()
	if m.peek() == ',' || m.peek() == ';' {
		m.blank(m.i, m.i+1)
		m.i++
	}
}

// noValue tells of an equals sign with nothing behind it. It is false for a
// color without quotes, whose # was taken for a remark.
func (m *mender) noValue(spec *AttrSpec, name Span, at int) bool {
	if m.colorEnd(spec, at, at) > at {
		return false
	}
	equals := m.trimEnd(int(name.Start), at)
	m.guess(Problem{Rule: ruleSyntax, Span: Span{name.Start, int32(equals)}, Message: "`" + spec.Name + "` has no value yet: write for instance " + spec.Name + " = " + spec.example()})
	m.add(equals, "0")
	m.out.broken = append(m.out.broken, brokenValue{equals, Span{int32(equals), int32(equals)}})
	return true
}

// colorEnd is the end of a color without quotes.
func (m *mender) colorEnd(spec *AttrSpec, start, end int) int {
	if stop := start + len("#b5473c"); spec.Type == Color && stop <= len(m.text) && isColor(string(m.text[start:stop])) && m.delimits(stop) {
		return stop
	}
	return end
}

// openHeredoc tells of a heredoc without its closing marker, and closes it
// before the first line that is set out as far as the attribute.
func (m *mender) openHeredoc(start int) {
	line := m.lineStart(start)
	indent := m.indentAt(line)
	from := start + 2
	if m.has(from, "-") {
		from++
	}
	marker := string(m.text[from:nameEnd(m.text, from)])
	end := m.lineEnd(start)
	at := m.nextLine(start)
	for at < len(m.text) {
		stop := m.lineEnd(at)
		if strings.TrimSpace(string(m.text[at:stop])) != "" && m.indentAt(at) <= indent {
			break
		}
		at = m.nextLine(at)
	}
	at = min(at, len(m.text))
	p := Problem{Rule: ruleSyntax, Span: Span{int32(start), int32(m.trimEnd(start, end))},
		Message: "this text never ends: write " + either(marker == "", "the same word", marker) + " on a line of its own behind it"}
	if marker == "" {
		p.Message = "a text over several lines starts with << and a word, and ends with that word on a line of its own: write <<-END"
	} else {
		stop := m.trimEnd(start, at)
		p.Fixes = m.fix("end the text here", false, m.edit(stop, stop, m.lineEnding+strings.Repeat(" ", indent)+marker))
	}
	m.guess(p)
	stop := m.trimEnd(start, at)
	m.standIn(start, stop)
	m.i = stop
}

// openListEnd is where a list that is not well formed ends: with its line, or
// where no ] stands there, before the next line that starts something else.
func (m *mender) openListEnd(start, end int) int {
	if strings.IndexByte(string(m.text[start:end]), ']') >= 0 {
		return end
	}
	for at := m.nextLine(end); at < len(m.text); at = m.nextLine(at) {
		first := m.spaceEnd(at)
		if first >= len(m.text) || isLineEnd(m.text[first]) || m.text[first] == '}' || m.isAttributeStart(first) {
			break
		}
		if word := nameEnd(m.text, first); word > first && strings.IndexByte(string(m.text[first:m.lineEnd(first)]), '{') >= 0 {
			break
		}
		stop := m.lineEnd(first)
		end = m.trimEnd(start, m.remarkStart(first, stop))
		if strings.IndexByte(string(m.text[first:stop]), ']') >= 0 {
			break
		}
	}
	return end
}

// meant is the value that the source was probably meant to be, "" where that
// cannot be told. Good means that it can be read at its place.
func meant(spec *AttrSpec, source string) (literal string, good bool) {
	v := reading{spec: spec}
	if strings.HasPrefix(source, "[") {
		return v.meantList(source)
	}
	if strings.ContainsAny(source, "\r\n") || spec.Type == Expression {
		return "", false
	}
	text := stripQuotes(source)
	if strings.Contains(source, "${") || strings.Contains(source, "%{") {
		return either(spec.Type == Line || spec.Type == Prose || spec.Type == Texts, Quote(text), ""), false
	}
	if v.fits(text) {
		return v.literal(text), true
	}
	if spec.Type == Amount && !strings.ContainsAny(source, quoteMarks) {
		return "", false // quotes alone would not make it an amount
	}
	return Quote(text), false
}

// meantList is a list with each of its values put in quotes anew.
func (v *reading) meantList(source string) (literal string, good bool) {
	if t := v.spec.Type; t != Choices && t != Texts && t != Keys {
		return "", false
	}
	inner := strings.TrimSuffix(strings.TrimPrefix(source, "["), "]")
	inner = strings.ReplaceAll(inner, `" "`, `", "`)
	parts := strings.Split(strings.TrimRight(inner, ", \t\r\n"), ",")
	good = true
	for i, part := range parts {
		text := stripQuotes(part)
		if text == "" || strings.ContainsAny(text, quoteMarks+"[]{}") || strings.ContainsAny(text, "\r\n") {
			return "", false
		}
		good = good && v.fits(text)
		parts[i] = Quote(text)
	}
	return "[" + strings.Join(parts, ", ") + "]", good
}

// whyUnreadable says what is wrong with a value, and what to write.
func whyUnreadable(spec *AttrSpec, source, literal string) (rule, message string) {
	write := ": write " + either(literal != "", brief(literal), "for instance "+spec.example())
	quotes := strings.Count(source, `"`) - strings.Count(source, `\"`)
	first, _ := utf8.DecodeRuneInString(source)
	list := first == '['
	switch {
	case spec.Type == Expression && quotes == 0 && strings.Contains(source, "°"):
		return ruleSyntax, `an amount in an expression is written amount("182 °F"), a difference degrees("10 °F")`
	case spec.Type == Expression:
		return ruleSyntax, "this expression cannot be read: a quote, a bracket or a sign has no partner"
	case strings.Contains(source, "${") || strings.Contains(source, "%{"):
		return ruleNotALiteral, "${ and %{ fill in computed text, which only a shop rule may do: write the text out, or double the $ or % where those very characters are meant"
	case hasOtherQuotes(source):
		return ruleSyntax, "straight quotes stand around text" + write
	case list && quotes%2 == 0 && !strings.HasSuffix(source, "]"):
		return ruleSyntax, "this list is never closed: write ] where it ends"
	case quotes%2 == 1 && (first == '"' || list):
		return ruleSyntax, either(list, "a quote is missing in this list", "the closing quote is missing") + write
	case quotes%2 == 1:
		return ruleSyntax, "the opening quote is missing" + write
	case list:
		return ruleSyntax, "this list cannot be read" + write
	case strings.Contains(source, `\`):
		return ruleSyntax, `a backslash stands only before ", another backslash, n, t, r or u with four digits` + write
	case quotes > 0:
		return ruleSyntax, "something stands beside the text in quotes" + write
	case spec.Type == Amount && ofWrongKind(spec, source) != "":
		return ruleWrongUnit, ofWrongKind(spec, source)
	case spec.Type == Amount || spec.Type == Figure:
		return ruleSyntax, "write the amount with its unit in quotes" + either(literal != "", ": "+literal, ", for instance "+spec.example())
	case unicode.IsLetter(first) || unicode.IsDigit(first):
		return ruleNotALiteral, brief(source) + " is not in quotes" + write
	}
	return ruleSyntax, brief(source) + " cannot be read as a value" + write
}

// ofWrongKind says why an amount without quotes is not what belongs there; ""
// where its kind is right, or it is no amount at all.
func ofWrongKind(spec *AttrSpec, source string) string {
	_, err := quantity.Parse(source, spec.Dims...)
	if err != nil && err.Kind == quantity.WrongKind {
		return err.Message
	}
	return ""
}

// quoteMarks are all the marks that people and programs put around text.
const quoteMarks = "\"'`“”„‟‘’‚‛«»″"

func isQuoteMark(c rune) bool { return strings.ContainsRune(quoteMarks, c) }

// hasOtherQuotes says whether text starts or ends in marks that are not
// straight double quotes; an apostrophe or inch sign inside does not count.
func hasOtherQuotes(source string) bool {
	source = strings.Trim(source, "[] ,")
	first, _ := utf8.DecodeRuneInString(source)
	last, _ := utf8.DecodeLastRuneInString(source)
	return first != '"' && isQuoteMark(first) || first != '"' && last != '"' && isQuoteMark(last)
}

// stripQuotes is the text without spaces and quote marks around it, its
// escapes undone.
func stripQuotes(source string) string {
	text := strings.TrimFunc(source, func(c rune) bool { return unicode.IsSpace(c) || isQuoteMark(c) })
	return strings.ReplaceAll(strings.ReplaceAll(text, `\"`, `"`), `"`, "")
}
