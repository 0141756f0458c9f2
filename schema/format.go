package schema

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/hashicorp/hcl/v2/hclwrite"
)

// ErrNotReadable is why a text is not laid out anew: it did not read as it
// stands, and moving its parts about could change what it says.
var ErrNotReadable = errors.New("the text has something in it that cannot be read: put that right first, then lay it out")

// ErrMeaningWouldChange is why a text is not laid out anew although it reads.
var ErrMeaningWouldChange = errors.New("laying this text out anew would change what it says, so it is left as it is")

// Format is the edits that give a file the house layout: two spaces for each
// brace, equals signs of neighboring lines one below the other, one line end
// at the end. Only lines that change are touched; line endings and a byte
// order mark stay as they are. A file in the house layout has no edits.
func Format(f *File) ([]Edit, error) {
	if !f.parsed {
		return nil, ErrNotReadable
	}
	text := f.Text.content
	skip := 0
	if strings.HasPrefix(text, byteOrderMark) {
		skip = len(byteOrderMark)
	}
	before := plainLines([]byte(text[skip:]))
	after := settle(before)
	if !sameTokens(before, after) {
		return nil, ErrMeaningWouldChange
	}
	return lineEdits(f, skip, before, after)
}

// plainLines is the text with a lone CR made a line end that the layout
// understands; no byte moves.
func plainLines(text []byte) []byte {
	for i, b := range text {
		if b == '\r' && (i+1 == len(text) || text[i+1] != '\n') {
			text[i] = '\n'
		}
	}
	return text
}

// settle lays out until nothing moves any more, which is the second time for
// all but odd texts.
func settle(text []byte) []byte {
	for range 4 {
		next := hclwrite.Format(text)
		if bytes.Equal(next, text) {
			break
		}
		text = next
	}
	return text
}

// sameTokens says whether two texts consist of the same words, signs, texts
// and comments, so that they differ in spaces only.
func sameTokens(a, b []byte) bool {
	before, _ := hclsyntax.LexConfig(a, "", hcl.InitialPos)
	after, _ := hclsyntax.LexConfig(b, "", hcl.InitialPos)
	return slices.EqualFunc(before, after, func(x, y hclsyntax.Token) bool {
		return x.Type == y.Type && bytes.Equal(x.Bytes, y.Bytes)
	})
}

// lineEdits are the edits from one text to another with the same lines. skip
// is what stands before the text in the file.
func lineEdits(f *File, skip int, before, after []byte) ([]Edit, error) {
	old, laid := bytes.Split(before, []byte("\n")), bytes.Split(after, []byte("\n"))
	if len(old) != len(laid) {
		return nil, ErrMeaningWouldChange
	}
	var edits []Edit
	start := skip
	for i := range old {
		if !bytes.Equal(old[i], laid[i]) {
			edits = append(edits, lineEdit(f, start, string(old[i]), string(laid[i])))
		}
		start += len(old[i]) + 1
	}
	return lastLineEnd(f, skip, edits), nil
}

// lineEdit replaces what differs between two lines: all but what they start
// and end with alike.
func lineEdit(f *File, start int, old, laid string) Edit {
	head := 0
	for head < len(old) && head < len(laid) && old[head] == laid[head] {
		head++
	}
	for head > 0 && head < len(old) && !utf8.RuneStart(old[head]) {
		head--
	}
	tail := 0
	for tail < len(old)-head && tail < len(laid)-head && old[len(old)-1-tail] == laid[len(laid)-1-tail] {
		tail++
	}
	for tail > 0 && !utf8.RuneStart(old[len(old)-tail]) {
		tail--
	}
	return Edit{f, Span{int32(start + head), int32(start + len(old) - tail)}, laid[head : len(laid)-tail]}
}

// lastLineEnd sees to it that the text ends with one line end: blank lines at
// its end go, a missing line end is added. A file of nothing stays as it is.
func lastLineEnd(f *File, skip int, edits []Edit) []Edit {
	text := f.Text.content
	end := len(text)
	for end > skip && strings.IndexByte(" \t\r\n", text[end-1]) >= 0 {
		end--
	}
	if end == skip {
		return edits
	}
	want := f.lineEnding()
	if text[end:] == want {
		return edits
	}
	edits = slices.DeleteFunc(edits, func(e Edit) bool { return int(e.Span.Start) >= end })
	if n := len(edits); n > 0 && int(edits[n-1].Span.End) > end {
		// The layout takes spaces from the end of the last line, as this does.
		edits[n-1].Span.End = int32(end)
		edits[n-1].Text = strings.TrimRight(edits[n-1].Text, " \t\r\n")
	}
	return append(edits, Edit{f, Span{int32(end), int32(len(text))}, want})
}
