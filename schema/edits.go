package schema

import (
	"fmt"
	"slices"
	"strings"
)

// The edits that fixes are made of. Each keeps the file's line ending and the
// indentation of what stands around it, and splits a one-line block before it
// puts anything more into it.

const indentStep = "  "

// SetValue replaces a value by a literal, or writes the attribute into its
// block where it is absent.
func SetValue(v Value, literal string) Edit {
	if !v.Absent() {
		return Edit{v.Block.File, v.Span(), literal}
	}
	b := v.Block
	line := v.Spec.Name + " = " + literal
	if b.oneLine() {
		return b.unfolded(line)
	}
	if n := len(b.written()); n > 0 {
		at := b.File.lineEndAfter(b.written()[n-1].span.End)
		return Edit{b.File, Span{at, at}, b.File.lineEnding() + b.innerIndent() + line}
	}
	at := b.File.lineEndAfter(b.Body.Start)
	return Edit{b.File, Span{at, at}, b.File.lineEnding() + b.innerIndent() + line}
}

// RemoveAttr takes an attribute out, with its line where it has one to itself.
func RemoveAttr(v Value) Edit {
	span := Span{v.NameSpan().Start, v.Span().End}
	if v.Block.oneLine() {
		return Edit{v.Block.File, Span{v.Block.Body.Start, v.Block.Body.End}, ""}
	}
	return Edit{v.Block.File, v.Block.File.wholeLines(span), ""}
}

// removeLine takes out the attribute whose value stands there, while its block
// is still being read.
func removeLine(f *File, value Span) Edit {
	text := f.Text.content
	start := value.Start
	for start > 0 && !isLineEnd(text[start-1]) && text[start-1] != '{' && text[start-1] != ',' {
		start--
	}
	for start < value.Start && (text[start] == ' ' || text[start] == '\t') {
		start++
	}
	return Edit{f, f.wholeLines(Span{start, value.End}), ""}
}

// AppendItem adds an element to a list, or makes a lone string a list of two.
func AppendItem(v Value, literal string) Edit {
	if items := v.Items(); len(items) > 0 && strings.HasPrefix(v.Written(), "[") {
		end := items[len(items)-1].Span.End
		return Edit{v.Block.File, Span{end, end}, ", " + literal}
	}
	if written := v.Written(); written != "" && !strings.HasPrefix(written, "[") {
		return SetValue(v, "["+written+", "+literal+"]")
	}
	return SetValue(v, "["+literal+"]")
}

// InsertBlockBefore puts a block's text in front of another block.
func InsertBlockBefore(b *Block, text string) Edit {
	f := b.File
	if b.Parent != nil && b.Parent.oneLine() {
		return Edit{f, Span{b.Span.Start, b.Span.Start}, text + " "}
	}
	at := f.lineStartBefore(b.Span.Start)
	at = f.aboveComments(at)
	indent := f.indentOf(b.Span.Start)
	return Edit{f, Span{at, at}, f.laid(text, indent) + f.lineEnding()}
}

// InsertBlockAfter puts a block's text behind another block.
func InsertBlockAfter(b *Block, text string) Edit {
	f := b.File
	at := f.lineEndAfter(b.Span.End)
	return Edit{f, Span{at, at}, f.lineEnding() + f.laid(text, f.indentOf(b.Span.Start))}
}

// AppendBlock puts a block's text at the end of another block, inside it.
func AppendBlock(parent *Block, text string) Edit {
	f := parent.File
	if parent.oneLine() {
		return parent.unfolded(text)
	}
	if n := len(parent.Blocks()); n > 0 && parent.lastInside() == parent.Blocks()[n-1].Span.End {
		return InsertBlockAfter(parent.Blocks()[n-1], text)
	}
	at := f.lineEndAfter(parent.lastInside())
	return Edit{f, Span{at, at}, f.lineEnding() + f.laid(text, parent.innerIndent())}
}

// RemoveBlock takes a block and its lines out.
func RemoveBlock(b *Block) Edit { return Edit{b.File, b.File.wholeLines(b.Span), ""} }

// MoveBlock takes a block out, with the comment lines right above it and the
// remark behind it, and puts it in front of another of the same parent.
func MoveBlock(b, before *Block) []Edit {
	f := b.File
	whole := f.wholeLines(b.Span)
	if whole == b.Span { // something else stands on its lines
		return []Edit{RemoveBlock(b), InsertBlockBefore(before, dedent(f.Text.Slice(b.Span), f.indentOf(b.Span.Start)))}
	}
	indent := f.indentOf(b.Span.Start)
	whole.Start = f.aboveComments(whole.Start)
	text := dedent(f.Text.Slice(Span{whole.Start, f.lineEndAfter(b.Span.End)}), indent)
	return []Edit{{f, whole, ""}, InsertBlockBefore(before, strings.TrimPrefix(text, indent))}
}

// Apply makes edits in a text, all of them or none. The places are those of
// the text as given. Edits that overlap are refused.
func Apply(text string, edits []Edit) (string, error) {
	sorted := slices.Clone(edits)
	slices.SortStableFunc(sorted, func(a, b Edit) int { return int(a.Span.Start - b.Span.Start) })
	var out strings.Builder
	at := int32(0)
	for _, e := range sorted {
		if e.Span.Start < at || e.Span.End < e.Span.Start || int(e.Span.End) > len(text) {
			return "", fmt.Errorf("edits overlap or reach outside the text at byte %d", e.Span.Start)
		}
		out.WriteString(text[at:e.Span.Start])
		out.WriteString(e.Text)
		at = e.Span.End
	}
	out.WriteString(text[at:])
	return out.String(), nil
}

// oneLine says whether the block's braces stand on one line.
func (b *Block) oneLine() bool {
	return !strings.ContainsAny(b.File.Text.Slice(b.Body), "\r\n")
}

// unfolded opens a one-line block onto lines of its own, with one more line
// at the end.
func (b *Block) unfolded(line string) Edit {
	f := b.File
	end, inner := f.lineEnding(), b.innerIndent()
	text := end
	if body := strings.TrimSpace(f.Text.Slice(b.Body)); body != "" {
		text += inner + body + end
	}
	text += f.laid(line, inner) + end + f.indentOf(b.Span.Start)
	return Edit{f, b.Body, text}
}

// lastInside is the end of the last attribute or block inside, or where the
// body starts.
func (b *Block) lastInside() int32 {
	last := b.Body.Start
	for v := range b.Attrs() {
		last = max(last, v.Span().End)
	}
	for _, inner := range b.Blocks() {
		last = max(last, inner.Span.End)
	}
	return last
}

// innerIndent is the white space in front of what stands inside the block.
func (b *Block) innerIndent() string {
	if !b.oneLine() {
		if written := b.written(); len(written) > 0 {
			return b.File.indentOf(written[0].nameAt)
		}
		if len(b.Blocks()) > 0 {
			return b.File.indentOf(b.Blocks()[0].Span.Start)
		}
	}
	outer := b.File.indentOf(b.Span.Start)
	if strings.HasSuffix(outer, "\t") {
		return outer + "\t"
	}
	return outer + indentStep
}

// lineEnding is how the file's lines end: as its first line does; LF in a file of one line.
func (f *File) lineEnding() string {
	text := f.Text.content
	i := strings.IndexAny(text, "\r\n")
	switch {
	case i < 0 || text[i] == '\n':
		return "\n"
	case strings.HasPrefix(text[i:], "\r\n"):
		return "\r\n"
	}
	return "\r"
}

// laid is a text of several lines with an indent in front of each and the
// file's line ending between them.
func (f *File) laid(text, indent string) string {
	return indent + strings.ReplaceAll(text, "\n", f.lineEnding()+indent)
}

// dedent is a block's text with plain newlines and its own indent taken off
// every line.
func dedent(text, indent string) string {
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	return strings.ReplaceAll(text, "\n"+indent, "\n")
}

func (f *File) lineStartBefore(at int32) int32 {
	for at > 0 && !isLineEnd(f.Text.content[at-1]) {
		at--
	}
	if at == 0 && strings.HasPrefix(f.Text.content, byteOrderMark) {
		return int32(len(byteOrderMark))
	}
	return at
}

// lineEndAfter is the end of the line, before its line ending.
func (f *File) lineEndAfter(at int32) int32 {
	for int(at) < len(f.Text.content) && !isLineEnd(f.Text.content[at]) {
		at++
	}
	return at
}

// aboveComments is the start of the comment lines that stand right above a
// line and speak of it, or of the line itself.
func (f *File) aboveComments(lineStart int32) int32 {
	at := lineStart
	for at > 0 {
		end := at - 1
		if end > 0 && f.Text.content[end] == '\n' && f.Text.content[end-1] == '\r' {
			end--
		}
		start := f.lineStartBefore(end)
		line := strings.TrimSpace(f.Text.content[start:end])
		if !strings.HasPrefix(line, "#") && !strings.HasPrefix(line, "//") {
			return at
		}
		at = start
	}
	return at
}

// indentOf is the white space at the start of the line.
func (f *File) indentOf(at int32) string {
	start := f.lineStartBefore(at)
	end := start
	for end < at && (f.Text.content[end] == ' ' || f.Text.content[end] == '\t') {
		end++
	}
	return f.Text.content[start:end]
}

// wholeLines widens a span to the lines it stands on, a remark behind it and
// the line ending included, where nothing else stands on them.
func (f *File) wholeLines(s Span) Span {
	start, end := f.lineStartBefore(s.Start), f.lineEndAfter(s.End)
	behind := strings.TrimSpace(f.Text.content[s.End:end])
	remark := strings.HasPrefix(behind, "#") || strings.HasPrefix(behind, "//")
	if strings.TrimSpace(f.Text.content[start:s.Start]) != "" || behind != "" && !remark {
		return s
	}
	if strings.HasPrefix(f.Text.content[end:], "\r\n") {
		return Span{start, end + 2}
	}
	if int(end) < len(f.Text.content) {
		return Span{start, end + 1}
	}
	return Span{start, end}
}
