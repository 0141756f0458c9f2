package drill

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
)

// ProgressVersion is the version of the form that progress is kept in.
const ProgressVersion = 1

// Progress is what a learner has done, kept in a file of their own.
type Progress struct {
	Version   int      `json:"drill_progress"`
	Exercises []Record `json:"exercises"`
}

// Record is one exercise of a learner.
type Record struct {
	Shop   string       `json:"shop"`
	Seed   string       `json:"seed"`
	About  string       `json:"about,omitempty"`
	Number int          `json:"number"`
	Recipe string       `json:"recipe"`
	Text   string       `json:"text"` // Digest of the exercise as it was set
	Day    string       `json:"day"`  // it was set for: rules that ask for a date go by it
	Ended  string       `json:"ended,omitempty"`
	Misses int          `json:"misses"`
	Slips  []SlipRecord `json:"slips"`
}

// SlipRecord is one slip: "found" or "mended" by the learner, "told" by the
// program, or "" not yet.
type SlipRecord struct {
	Rule    string `json:"rule"`
	Outcome string `json:"outcome"`
	Hints   int    `json:"hints"`
}

var outcomes = []string{"", "found", "mended", "told"}

// NewRecord begins the record of an exercise.
func NewRecord(shop, day string, e *Exercise) Record {
	r := Record{Shop: shop, Seed: e.Seed, About: e.About, Number: e.Number, Recipe: e.Recipe, Text: Digest(e.Text), Day: day}
	for i := range e.Faults {
		r.Slips = append(r.Slips, SlipRecord{Rule: e.Faults[i].Rule.Name})
	}
	return r
}

// Done says whether the exercise has ended.
func (r *Record) Done() bool { return r.Ended != "" }

// Digest tells one text from another.
func Digest(text string) string {
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:12])
}

// ReadProgress reads a learner's file. It is an error where that is not what
// Bytes writes: nothing of it is then to be written over.
func ReadProgress(data []byte) (*Progress, error) {
	p := &Progress{}
	in := json.NewDecoder(bytes.NewReader(data))
	in.DisallowUnknownFields()
	var head struct {
		Version int `json:"drill_progress"`
	}
	if json.Unmarshal(data, &head) == nil && head.Version > ProgressVersion {
		return nil, fmt.Errorf("it is of version %d, and this program knows version %d", head.Version, ProgressVersion)
	}
	if err := in.Decode(p); err != nil {
		return nil, fmt.Errorf("it is not what drill writes: %w", err)
	}
	if _, err := in.Token(); !errors.Is(err, io.EOF) {
		return nil, errors.New("it is not what drill writes: something stands behind its end")
	}
	if p.Version != ProgressVersion {
		return nil, errors.New("it does not say that it is drill_progress 1")
	}
	for _, r := range p.Exercises {
		switch {
		case r.Seed == "" || r.Number < 1 || r.Misses < 0:
			return nil, errors.New("an exercise in it has no seed or no number")
		case slices.ContainsFunc(r.Slips, func(s SlipRecord) bool {
			return s.Rule == "" || s.Hints < 0 || s.Hints > len(HintWords) || !slices.Contains(outcomes, s.Outcome)
		}):
			return nil, fmt.Errorf("exercise %d of seed %s in it cannot be right", r.Number, r.Seed)
		}
	}
	return p, nil
}

// Bytes is the progress as it is kept.
func (p *Progress) Bytes() []byte {
	p.Version = ProgressVersion
	if p.Exercises == nil {
		p.Exercises = []Record{}
	}
	data, err := json.MarshalIndent(p, "", "  ")
	if err != nil { // numbers and text only
		panic(err)
	}
	return append(data, '\n')
}

// Put takes a record in, in the place of the one of the same exercise.
func (p *Progress) Put(r Record) {
	r.Slips = slices.Clone(r.Slips)
	for i := range p.Exercises {
		if o := &p.Exercises[i]; o.Shop == r.Shop && o.Seed == r.Seed && o.About == r.About && o.Number == r.Number {
			*o = r
			return
		}
	}
	p.Exercises = append(p.Exercises, r)
}

// Open is the last exercise of a shop that has not ended, or nil.
func (p *Progress) Open(shop string) *Record {
	for i := len(p.Exercises) - 1; i >= 0; i-- {
		if r := &p.Exercises[i]; r.Shop == shop && !r.Done() {
			return r
		}
	}
	return nil
}

// Again lists the rules whose last slip was told by the program or found only
// with help, sorted.
func (p *Progress) Again() []string {
	last := map[string]bool{}
	for _, r := range p.Exercises {
		for _, s := range r.Slips {
			if s.Outcome != "" {
				last[s.Rule] = s.Outcome == "told" || s.Hints > 1
			}
		}
	}
	var again []string
	for rule, wanted := range last {
		if wanted {
			again = append(again, rule)
		}
	}
	slices.Sort(again)
	return again
}
