package schema

import (
	"cmp"
	"slices"
	"strings"

	"wickrule/schema/quantity"
)

// Read reads one file. It never fails: what it cannot read stands among the
// problems, and everything else is there to be judged.
//
// The text is parsed as given. Only where that fails is a copy made, mended
// line by line (a quote closed, a brace added), and parsed again; the problems
// and every span still speak of the bytes as given.
func Read(name string, src []byte) *File {
	f := &File{Name: name, Text: NewText(string(src)), Whole: true}
	r := &reader{file: f, seen: f.Text.content}
	r.read(src)
	r.finish()
	return f
}

// reader carries one file through reading.
type reader struct {
	file     *File
	seen     string      // what the parser saw: the text, or a cleaned or mended copy
	inserted []insertion // what the mended copy has more than the text, in order
	broken   []brokenValue
	guessed  []Span // lines on which the copy is a guess: they have been told of
	untold   int    // problems that are only counted
	hurt     []Span // places that make a value they touch unreadable

	tree    *tree             // the syntax of what was seen
	blocks  []Block           // one piece of memory for all blocks of the file
	amounts []quantity.Single // those of the file, until it is known how many they are
}

// insertion is text that a mended copy has at a place, in the copy's offsets.
type insertion struct{ at, length int }

// brokenValue is a value the copy has a stand-in for.
type brokenValue struct {
	at   int  // where the stand-in starts, in the copy
	span Span // the value as given
}

func (r *reader) read(src []byte) {
	s := look(src)
	if why, start, end := s.refusal(src); why != "" {
		r.refuse(why, start, end)
		return
	}
	if s.plain && !s.longDigit {
		if t, ok := parsePlain(r.seen); ok {
			r.file.parsed = true
			r.decode(t)
			return
		}
	}
	if why, start, end := s.tooDeep(src); why != "" {
		r.refuse(why, start, end)
		return
	}
	r.readAny(s, src)
}

// refuse tells why nothing of the text is read.
func (r *reader) refuse(why string, start, end int) {
	r.file.Whole = false
	r.report(Problem{Rule: ruleSyntax, Span: Span{int32(start), int32(end)}, Message: why})
}

// decode turns syntax into what the file holds.
func (r *reader) decode(t *tree) {
	r.tree = t
	r.file.Blocks = r.top()
	r.file.amounts = slices.Clone(r.amounts)
}

// readAny reads any text, with HCL's parser and repairs where it fails.
func (r *reader) readAny(s survey, src []byte) {
	seen := src
	if !s.plain {
		seen = r.clean(slices.Clone(seen))
	}
	if s.longDigit {
		seen = r.shorten(seen)
	}
	t, complaints := parseHCL(seen)
	r.file.parsed = len(r.hurt) == 0 && failures(complaints) == 0
	if failures(complaints) > 0 {
		m := mend(r.file, seen)
		mended, again := parseHCL(m.copy)
		if failures(again) < failures(complaints) {
			t, complaints, seen = mended, again, m.copy
			r.inserted, r.broken, r.guessed = m.inserted, append(r.broken, m.broken...), m.guessed
			r.file.Problems = append(r.file.Problems, m.problems...)
			r.file.Whole = r.file.Whole && m.whole
		}
	}
	if len(seen) != len(src) || len(src) > 0 && &seen[0] != &src[0] {
		r.seen = string(seen)
	}
	if len(complaints) > 0 {
		r.complain(complaints)
	}
	r.decode(t)
}

// clean makes the copy readable without moving a byte: a lone CR becomes a
// line end, and bytes that are no text become spaces, each told.
func (r *reader) clean(copy []byte) []byte {
	text := r.file.Text.content
	for i, c := range text {
		size := 1
		switch {
		case c == '\r':
			if !strings.HasPrefix(text[i+1:], "\n") {
				copy[i] = '\n'
			}
			continue
		case c == '\uFFFD' && !strings.HasPrefix(text[i:], "\uFFFD"):
			r.badByte(i)
		case c < ' ' && c != '\n' && c != '\t' || c == 0x7f:
			span := Span{int32(i), int32(i + size)}
			r.harm(Problem{Rule: ruleSyntax, Span: span,
				Message: "a control character stands here (byte " + hexByte(text[i]) + "), which no editor shows: delete it",
				Fixes:   []Fix{{Title: "delete the control character", Safe: true, Edits: []Edit{{r.file, span, ""}}}}})
		default:
			continue
		}
		copy[i] = ' '
	}
	return copy
}

// badByte tells of a byte that is not UTF-8. The commonest is the degree sign
// of an old one-byte encoding.
func (r *reader) badByte(at int) {
	span := Span{int32(at), int32(at + 1)}
	b := r.file.Text.content[at]
	p := Problem{Rule: ruleSyntax, Span: span,
		Message: "this byte (" + hexByte(b) + ") is not UTF-8 text: save the file as UTF-8 and type the character again"}
	if b == 0xb0 || b == 0xba {
		p.Fixes = []Fix{{Title: "write the degree sign as °", Safe: true, Edits: []Edit{{r.file, span, "°"}}}}
	}
	r.harm(p)
}

// shorten puts 0 in place of numbers that are too long to be computed with.
func (r *reader) shorten(seen []byte) []byte {
	for i, span := range longNumbers(seen) {
		if i == 0 {
			seen = slices.Clone(seen)
		}
		r.harm(Problem{Rule: ruleSyntax, Span: span, Message: "a number of over 30 digits stands here: write it shorter"})
		for at := span.Start; at < span.End; at++ {
			seen[at] = ' '
		}
		seen[span.Start] = '0'
		r.broken = append(r.broken, brokenValue{int(span.Start), span})
	}
	return seen
}

// harm reports a problem that makes what it touches unreadable.
func (r *reader) harm(p Problem) {
	if r.full() {
		// Enough is told: all between here and there is unreadable.
		r.hurt[len(r.hurt)-1].End = p.Span.End
		r.untold++
		return
	}
	r.hurt = append(r.hurt, p.Span)
	r.report(p)
}

// full says whether so much is wrong that the rest is only counted.
func (r *reader) full() bool { return len(r.file.Problems) > 2*mostProblems }

// report tells of a problem, unless its line has been told of as one that
// could only be guessed: one cause, one problem.
func (r *reader) report(p Problem) {
	for _, line := range r.guessed {
		if line.Start <= p.Span.Start && p.Span.Start <= line.End {
			return
		}
	}
	if r.full() {
		r.untold++
		return
	}
	r.file.Problems = append(r.file.Problems, p)
}

// back turns an offset of the parsed copy into one of the text as given.
func (r *reader) back(at int32) int32 {
	if len(r.inserted) == 0 {
		return at
	}
	return at - int32(r.movedBy(int(at)))
}

// movedBy is how many of the bytes before an offset of the parsed copy are not
// in the text as given.
func (r *reader) movedBy(at int) int {
	moved := 0
	for _, in := range r.inserted {
		if in.at >= at {
			break
		}
		moved += min(in.length, at-in.at)
	}
	return moved
}

// span turns a place in the parsed copy into one in the text as given. The
// parser leaves some end before they start; those are cut to nothing.
func (r *reader) span(s Span) Span {
	start := r.back(min(max(s.Start, 0), int32(len(r.seen))))
	end := r.back(min(max(s.End, 0), int32(len(r.seen))))
	return Span{start, max(start, end)}
}

// finish sorts the problems, cuts their number and finds the blocks they lie in.
func (r *reader) finish() {
	f := r.file
	if len(f.Problems) == 0 {
		f.Clean = f.Whole
		return
	}
	slices.SortStableFunc(f.Problems, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Span.Start, b.Span.Start), cmp.Compare(a.Span.End, b.Span.End), strings.Compare(a.Rule, b.Rule))
	})
	if more := len(f.Problems) - mostProblems; more > 0 {
		f.Problems = f.Problems[:mostProblems+1]
		last := &f.Problems[mostProblems]
		last.Rule, last.Fixes = ruleSyntax, nil
		last.Message = count(more+r.untold, "more problem", "more problems") + " from here on: put right those above first"
	}
	for i := range f.Problems {
		f.Problems[i].Block = blockAt(f.Blocks, f.Problems[i].Span.Start)
	}
}

// blockAt is the innermost of the blocks that the offset lies in, or nil.
func blockAt(blocks []*Block, at int32) *Block {
	for _, b := range blocks {
		if b.Span.Start <= at && at < b.Span.End {
			if inner := blockAt(b.Blocks(), at); inner != nil {
				return inner
			}
			return b
		}
	}
	return nil
}
