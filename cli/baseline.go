package cli

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
)

// baseline is the file of what is known: kept in the repository, written by
// --accept, and read by people in its differences. A finding is known by its
// print; the rest says to people which it is.
type baseline struct {
	Version int            `json:"wickrule_baseline"`
	About   string         `json:"about"`
	Known   []knownFinding `json:"known"`
}

type knownFinding struct {
	Print   string `json:"print"`
	Level   string `json:"level"`
	Rule    string `json:"rule"`
	Shop    string `json:"shop"`
	Recipe  string `json:"recipe,omitempty"`
	File    string `json:"file"`
	Message string `json:"message"`
}

const (
	baselineVersion = 1
	baselineAbout   = "What wickrule check found and somebody accepted for now. It is written by check --baseline with --accept; what must be put right is still told."
	couldNotCheck   = "could-not-check"
)

func (k knownFinding) key() string { return k.Shop + "\n" + k.Print }

// leaveOutKnown leaves out of a report what the file lists, or with accept
// writes the file anew with all of it.
func (s *session) leaveOutKnown(doc *report.Document, file string, accept bool) error {
	if accept {
		if err := s.acceptAll(doc, file); err != nil {
			return err
		}
	}
	known, err := s.readBaseline(file)
	if err != nil {
		return err
	}
	gone, levels := map[string]bool{}, map[string]lint.Level{}
	for _, k := range known.Known {
		gone[k.key()] = true
		levels[k.key()], _ = lint.ParseLevel(k.Level)
	}
	listed := func(key string, level lint.Level) bool {
		if level > levels[key] { // not listed, or not as loud
			return false
		}
		gone[key] = false
		return true
	}
	left := leftOut{}
	unchecked := 0
	for _, r := range doc.Shops {
		drop(r, func(f *lint.Found, print string) bool {
			if !listed(s.fromFile(file, r)+"\n"+print, f.Level) {
				return false
			}
			left.add(r.Shop, f)
			return true
		}, func(u *lint.Unchecked) bool {
			if !listed(s.fromFile(file, r)+"\n"+lacking(u), u.Level) {
				return false
			}
			unchecked++
			return true
		})
	}
	doc.LeftOut = append(doc.LeftOut, left.sentences("known from "+file)...)
	if unchecked > 0 {
		doc.LeftOut = append(doc.LeftOut, "Left out: "+plural(unchecked, "missing figure", "missing figures")+", known from "+file+".")
	}
	n := 0
	for _, still := range gone {
		if still {
			n++
		}
	}
	if n > 0 && !accept {
		doc.LeftOut = append(doc.LeftOut, fmt.Sprintf("%s in %s not found any more: write it anew with --accept, so that nothing comes back unseen.", map[bool]string{true: "1 finding listed", false: fmt.Sprintf("%d findings listed", n)}[n == 1], file+map[bool]string{true: " is", false: " are"}[n == 1]))
	}
	return nil
}

// fromFile is a shop's folder as it is named from that of a file on, so that it
// does not matter where a check is started.
func (s *session) fromFile(file string, r *lint.Report) string {
	full := func(name string) string { return s.locate(name).full() }
	short, err := filepath.Rel(filepath.Dir(full(file)), full(r.Shop.Root))
	if err != nil {
		return r.Shop.Root
	}
	return filepath.ToSlash(short)
}

func (s *session) readBaseline(file string) (b baseline, err error) {
	text, err := os.ReadFile(s.locate(file).full())
	if errors.Is(err, fs.ErrNotExist) {
		return b, errors.New("there is no such file yet: write it with --accept")
	}
	if err != nil {
		return b, err
	}
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	switch err := decoder.Decode(&b); {
	case err != nil:
		return b, fmt.Errorf("it is no file that check --accept wrote, or was changed by hand: %w", err)
	case b.Version != baselineVersion:
		return b, fmt.Errorf("it is of version %d, and this program reads version %d: write it anew with --accept", b.Version, baselineVersion)
	}
	return b, nil
}

func (s *session) acceptAll(doc *report.Document, file string) error {
	if !doc.Complete() {
		return errors.New("not written: not everything could be checked, so it would list too little")
	}
	b := baseline{Version: baselineVersion, About: baselineAbout, Known: []knownFinding{}}
	for _, r := range doc.Shops {
		prints := lint.Prints(r.Findings)
		for i := range r.Findings {
			f := &r.Findings[i]
			k := knownFinding{Print: prints[i], Level: f.Level.String(), Rule: f.Rule.Name, Shop: s.fromFile(file, r), File: f.At.File.Name, Message: f.Message}
			if f.Recipe != nil {
				k.Recipe = f.Recipe.Label
			}
			b.Known = append(b.Known, k)
		}
		for i := range r.Unchecked {
			u := &r.Unchecked[i]
			b.Known = append(b.Known, knownFinding{Print: lacking(u), Level: u.Level.String(), Rule: couldNotCheck, Shop: s.fromFile(file, r), File: u.At.File.Name, Message: u.Message})
		}
	}
	slices.SortFunc(b.Known, func(a, b knownFinding) int {
		return strings.Compare(a.Shop+"\n"+a.File+"\n"+a.Recipe+"\n"+a.Rule+"\n"+a.Print, b.Shop+"\n"+b.File+"\n"+b.Recipe+"\n"+b.Rule+"\n"+b.Print)
	})
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(b); err != nil {
		return err
	}
	return s.replace(file, out.String())
}
