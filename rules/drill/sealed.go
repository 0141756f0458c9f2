package drill

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"errors"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// sealed is an exercise with its answers, for the folder it is given away in.
type sealed struct {
	Recipe string       `json:"recipe"`
	Title  string       `json:"title"`
	Draft  bool         `json:"draft,omitempty"`
	Sound  string       `json:"sound"`
	Slips  []sealedSlip `json:"slips"`
}

type sealedSlip struct {
	Rule  string       `json:"rule"`
	Slip  string       `json:"slip"`
	Edits []sealedEdit `json:"edits"`
}

type sealedEdit struct {
	Start int32  `json:"start"`
	End   int32  `json:"end"`
	Text  string `json:"text"`
}

// sealed is the exercise in letters that tell nothing to who only looks.
func (e *Exercise) sealed() string {
	out := sealed{Recipe: e.Recipe, Title: e.Title, Draft: e.Draft, Sound: e.Sound}
	for _, p := range e.Faults {
		slip := sealedSlip{Rule: p.fault.Rule, Slip: p.fault.Slip}
		for _, edit := range p.fault.Edits {
			slip.Edits = append(slip.Edits, sealedEdit{edit.Span.Start, edit.Span.End, edit.Text})
		}
		out.Slips = append(out.Slips, slip)
	}
	data, err := json.Marshal(out)
	if err != nil { // numbers and text only
		panic(err)
	}
	return base64.StdEncoding.EncodeToString(data)
}

// errOtherwise says that an exercise is not what it was when it was made.
var errOtherwise = errors.New("the shelf beside it is not what it was made from, or another version of the program made it")

// Open is an exercise of a set, made with the school of its shelf. It is an
// error where the checker does not find in it what was planted, and nothing
// else: the shelf, the rules or the program changed since.
func (s *School) Open(set *Set, item SetItem) (*Exercise, error) {
	data, err := base64.StdEncoding.DecodeString(item.Sealed)
	if err != nil {
		return nil, errOtherwise
	}
	var in sealed
	read := json.NewDecoder(bytes.NewReader(data))
	read.DisallowUnknownFields()
	if read.Decode(&in) != nil || len(in.Slips) == 0 {
		return nil, errOtherwise
	}
	// With the heading, so that lines have the numbers they have in the file.
	head := heading(set.Shop, item.Number, len(in.Slips), in.Draft)
	b := &base{key: in.Recipe, title: in.Title, draft: in.Draft, text: head + in.Sound}
	b.said = s.check(b.text)
	shop, _, recipe := s.read(b.text, in.Recipe)
	if recipe == nil || !sound(b.said) {
		return nil, errOtherwise
	}
	b.bench = NewBench(lint.NewView(shop, recipe, s.Today))
	var faults []Fault
	for _, slip := range in.Slips {
		if s.named[slip.Rule] == nil {
			return nil, errOtherwise
		}
		f := Fault{Rule: slip.Rule, Slip: slip.Slip}
		for _, edit := range slip.Edits {
			if edit.Start < 0 || edit.End < edit.Start || int(edit.End) > len(in.Sound) {
				return nil, errOtherwise
			}
			at := int32(len(head))
			f.Edits = append(f.Edits, schema.Edit{File: recipe.File, Span: schema.Span{Start: at + edit.Start, End: at + edit.End}, Text: edit.Text})
		}
		faults = append(faults, f)
	}
	text, said, ok := s.proved(b, faults)
	if !ok || Digest(strings.TrimPrefix(text, head)) != item.Text {
		return nil, errOtherwise
	}
	e := s.made(b, faults, text, said)
	e.Seed, e.About, e.Number = set.Seed, set.About, item.Number
	return e, nil
}
