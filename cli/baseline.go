package cli

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
)

// baselineForm is the file of what is known: kept in the repository, written by
// --accept, and read by people in its differences. A finding is known by its
// shop and its print; the rest tells people which it is, and why it stays.
type baselineForm struct {
	Version int            `json:"wickrule_baseline"`
	About   string         `json:"about"`
	Known   []knownFinding `json:"known"`
}

type knownFinding struct {
	Print   string `json:"print"`
	Level   string `json:"level"`
	Rule    string `json:"rule"`
	Shop    string `json:"shop"` // its folder, from the one this file lies in
	Recipe  string `json:"recipe,omitempty"`
	File    string `json:"file"`
	Message string `json:"message"`
	Reason  string `json:"reason"` // why it is accepted
}

const (
	baselineVersion = 1
	baselineAbout   = "What wickrule check found and somebody accepted for now, with the reason. Written by check --baseline with --accept; what must be put right is told all the same."
	baselineCheck   = "cannot-check" // in the place of a rule, where a figure is missing
)

type knownKey struct{ shop, print string }

func (k knownFinding) key() knownKey { return knownKey{k.Shop, k.Print} }

func (k knownFinding) compare(o knownFinding) int {
	return cmp.Or(strings.Compare(k.Shop, o.Shop), strings.Compare(k.File, o.File), strings.Compare(k.Recipe, o.Recipe),
		strings.Compare(k.Rule, o.Rule), strings.Compare(k.Message, o.Message), strings.Compare(k.Print, o.Print))
}

// baseline is the file at work on one check.
type baseline struct {
	s     *session
	file  string // as it was named
	known map[knownKey]knownFinding
	shops map[string]*lint.Report // of the check, by the folder that the file knows them by
	met   map[knownKey]bool
}

// openBaseline reads the file of what is known. With a reason to accept all,
// it need not be there yet.
func (s *session) openBaseline(file string, doc *report.Document, accepting bool) (*baseline, error) {
	b := &baseline{s: s, file: file, known: map[knownKey]knownFinding{}, shops: map[string]*lint.Report{}, met: map[knownKey]bool{}}
	for _, r := range doc.Shops {
		b.shops[b.folder(r)] = r
	}
	text, err := os.ReadFile(s.locate(file).full())
	switch {
	case missing(err) && accepting:
		return b, nil
	case missing(err):
		return nil, errors.New("there is no such file yet: --accept REASON writes it")
	case err != nil:
		return nil, err
	}
	var form baselineForm
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	switch err := decoder.Decode(&form); {
	case err != nil:
		return nil, fmt.Errorf("this is not what check --accept wrote, or it was changed by hand since: %w", err)
	case form.Version != baselineVersion:
		return nil, fmt.Errorf("it is of version %d, and this wickrule reads version %d", form.Version, baselineVersion)
	}
	for _, k := range form.Known {
		b.known[k.key()] = k
	}
	return b, nil
}

// folder is a shop's folder as it is named from that of the file on, so that it
// does not matter where a check is started.
func (b *baseline) folder(r *lint.Report) string {
	root := b.s.locate(r.Shop.Root).full()
	short, err := filepath.Rel(filepath.Dir(b.s.locate(b.file).full()), root)
	if err != nil { // on another drive
		return filepath.ToSlash(root)
	}
	return filepath.ToSlash(short)
}

// covers says whether a finding listed would have been met by the check, were
// it still there. What was not asked about is neither met nor gone.
func (b *baseline) covers(k knownFinding) bool {
	if r := b.shops[k.Shop]; r != nil {
		return r.Covers(k.File)
	}
	_, err := os.Stat(filepath.Join(filepath.Dir(b.s.locate(b.file).full()), filepath.FromSlash(k.Shop)))
	return missing(err)
}

// holds says whether something is listed, at least as loud as it is now.
func (b *baseline) holds(key knownKey, level lint.Level) (knownFinding, bool) {
	k, listed := b.known[key]
	if !listed {
		return k, false
	}
	b.met[key] = true
	was, _ := lint.ParseLevel(k.Level)
	return k, level <= was
}

// sieve leaves out what the file lists. What nothing may turn down is not left
// out, listed or not.
func (b *baseline) sieve() *sieve {
	return &sieve{of: func(r *lint.Report) shopSieve {
		shop := b.folder(r)
		return shopSieve{
			found: func(f *lint.Found, print string) (string, bool) {
				k, known := b.holds(knownKey{shop, print}, f.Level)
				return "known from " + b.file + ": " + k.Reason, known && !f.Binds()
			},
			unchecked: func(u *lint.Unchecked, print string) bool {
				_, known := b.holds(knownKey{shop, print}, u.Level)
				return known
			},
		}
	}}
}

// sentences say what was left out, and what is listed and was not met.
func (b *baseline) sentences(left *leftOut) (list []string) {
	if text := left.String(); text != "" {
		list = append(list, "Left out, since "+b.file+" lists it: "+text+".")
	}
	gone := 0
	for key, k := range b.known {
		if !b.met[key] && b.covers(k) {
			gone++
		}
	}
	if gone > 0 {
		list = append(list, plural(gone, "known finding is", "known findings are")+" gone: write "+b.file+" anew with --accept, so that nothing comes back unseen.")
	}
	return list
}

// accept writes the file with all that is found now, for a reason. What was
// known keeps the reason it had, what was not asked about stays. It says what
// it did; what nothing may turn down is not accepted.
func (b *baseline) accept(doc *report.Document, reason string) ([]string, error) {
	if strings.TrimSpace(reason) == "" {
		return nil, errors.New("say after --accept why all this is accepted for now")
	}
	if !doc.Complete() {
		return nil, errors.New("it is not written, since not everything could be checked and it would list too little")
	}
	listed := map[knownKey]knownFinding{}
	for key, k := range b.known {
		if !b.covers(k) {
			listed[key] = k
		}
	}
	var accepted, refused leftOut
	for shop, r := range b.shops {
		prints := lint.Prints(r.Findings)
		for i := range r.Findings {
			f := &r.Findings[i]
			if f.Binds() {
				refused.add(f)
				continue
			}
			accepted.add(f)
			k := knownFinding{Print: prints[i], Level: f.Level.String(), Rule: f.Rule.Name, Shop: shop, File: f.At.File.Name, Message: f.Message}
			if f.Recipe != nil {
				k.Recipe = f.Recipe.Label
			}
			listed[k.key()] = b.withReason(k, f.Level, reason)
		}
		prints = lint.UncheckedPrints(r.Unchecked)
		for i := range r.Unchecked {
			u := &r.Unchecked[i]
			accepted.unchecked++
			k := knownFinding{Print: prints[i], Level: u.Level.String(), Rule: baselineCheck, Shop: shop, File: u.At.File.Name, Message: u.Message}
			listed[k.key()] = b.withReason(k, u.Level, reason)
		}
	}
	if err := b.write(listed); err != nil {
		return nil, err
	}
	b.known = listed
	said := []string{b.file + " is written, with " + cmp.Or(accepted.String(), "nothing in it") + "."}
	if text := refused.String(); text != "" {
		said = append(said, "Not accepted, since somebody else lights these candles or the text cannot be read: "+text+".")
	}
	return said, nil
}

// withReason gives what is accepted its reason: the one it has, unless it is
// louder now than what was accepted.
func (b *baseline) withReason(k knownFinding, level lint.Level, reason string) knownFinding {
	k.Reason = strings.TrimSpace(reason)
	if was, known := b.holds(k.key(), level); known {
		k.Reason = was.Reason
	}
	return k
}

func (b *baseline) write(listed map[knownKey]knownFinding) error {
	list := []knownFinding{}
	for _, k := range listed {
		list = append(list, k)
	}
	slices.SortFunc(list, knownFinding.compare)
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(baselineForm{baselineVersion, baselineAbout, list}); err != nil {
		return err
	}
	return b.s.keep(b.s.locate(b.file).full(), out.Bytes())
}
