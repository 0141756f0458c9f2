package report

import (
	_ "embed"
	"encoding/json"
	"io"

	"wickrule/lint"
	"wickrule/schema"
)

// Schema is the JSON Schema (2020-12) of what JSON writes.
//
//go:embed report.schema.json
var Schema string

// formatVersion is the value of the key "wickrule". It changes when a program
// that reads the report would have to.
const formatVersion = 1

type jsonDocument struct {
	Wickrule  int             `json:"wickrule"`
	Checked   jsonChecked     `json:"checked"`
	Findings  []jsonFinding   `json:"findings"`
	Conceded  []jsonConceded  `json:"conceded"`
	Unchecked []jsonUnchecked `json:"unchecked"`
	Faults    []jsonFault     `json:"faults"`
	LeftOut   []string        `json:"left_out,omitempty"`
	Standing  []jsonStanding  `json:"standing,omitempty"`
}

type jsonChecked struct {
	Files   int `json:"files"`
	Recipes int `json:"recipes"`
}

type jsonPoint struct {
	Line   int   `json:"line"`
	Column int   `json:"column"`
	Byte   int32 `json:"byte"`
}

type jsonSpan struct {
	Start jsonPoint `json:"start"`
	End   jsonPoint `json:"end"`
}

type jsonPlace struct {
	File string   `json:"file"`
	Span jsonSpan `json:"span"`
}

type jsonFinding struct {
	Rule  string `json:"rule"`
	Level string `json:"level"`
	Shop  string `json:"shop"`
	jsonPlace
	Message string     `json:"message"`
	Notes   []jsonNote `json:"notes"`
	Fixes   []jsonFix  `json:"fixes"`
}

type jsonNote struct {
	jsonPlace
	Message string `json:"message"`
}

type jsonFix struct {
	Title string     `json:"title"`
	Safe  bool       `json:"safe"`
	Edits []jsonEdit `json:"edits"`
}

type jsonEdit struct {
	jsonPlace
	Text string `json:"text"`
}

type jsonStanding struct {
	jsonFinding
	Why string `json:"why"`
}

type jsonConceded struct {
	jsonFinding
	Concession jsonConcession `json:"concession"`
}

type jsonConcession struct {
	jsonPlace
	Reason string `json:"reason"`
	Until  string `json:"until,omitempty"`
}

type jsonUnchecked struct {
	Needs string   `json:"needs"`
	Rules []string `json:"rules"`
	Level string   `json:"level"`
	Shop  string   `json:"shop"`
	jsonPlace
	Message string `json:"message"`
}

type jsonFault struct {
	Rule    string    `json:"rule,omitempty"`
	Shop    string    `json:"shop,omitempty"`
	File    string    `json:"file,omitempty"`
	Span    *jsonSpan `json:"span,omitempty"`
	Message string    `json:"message"`
}

// JSON writes the document for programs. Its shape is Schema's.
func JSON(w io.Writer, d *Document) error {
	doc := jsonDocument{
		Wickrule:  formatVersion,
		Checked:   jsonChecked{d.Files(), d.Recipes()},
		Findings:  []jsonFinding{},
		Conceded:  []jsonConceded{},
		Unchecked: []jsonUnchecked{},
		Faults:    []jsonFault{},
		LeftOut:   d.LeftOut,
	}
	for _, shop := range d.Shops {
		root := shop.Shop.Root
		for i := range shop.Findings {
			doc.Findings = append(doc.Findings, findingJSON(root, &shop.Findings[i]))
		}
		for i := range shop.Conceded {
			doc.Conceded = append(doc.Conceded, concededJSON(root, &shop.Conceded[i]))
		}
		for _, u := range shop.Unchecked {
			doc.Unchecked = append(doc.Unchecked, jsonUnchecked{u.Needs, u.Rules, u.Level.String(), root, placeJSON(u.At), u.Message})
		}
		for _, f := range shop.Faults {
			doc.Faults = append(doc.Faults, faultJSON(root, f))
		}
	}
	for i := range d.Standing {
		s := &d.Standing[i]
		doc.Standing = append(doc.Standing, jsonStanding{findingJSON(s.Shop.Root, &s.Found), s.Why})
	}
	for _, u := range d.Unread {
		doc.Faults = append(doc.Faults, jsonFault{Shop: u.Shop, File: u.Name, Message: u.Err.Error()})
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(doc)
}

func placeJSON(at lint.Place) jsonPlace { return jsonPlace{at.File.Name, spanJSON(at.File, at.Span)} }

func spanJSON(f *schema.File, s schema.Span) jsonSpan {
	return jsonSpan{pointJSON(f, s.Start), pointJSON(f, s.End)}
}

func pointJSON(f *schema.File, offset int32) jsonPoint {
	line, column := f.Text.Position(offset)
	return jsonPoint{line, column, offset}
}

func findingJSON(root string, f *lint.Found) jsonFinding {
	out := jsonFinding{
		Rule:      f.Rule.Name,
		Level:     f.Level.String(),
		Shop:      root,
		jsonPlace: placeJSON(f.At),
		Message:   f.Message,
		Notes:     []jsonNote{},
		Fixes:     []jsonFix{},
	}
	for _, n := range f.Notes {
		out.Notes = append(out.Notes, jsonNote{placeJSON(n.Place), n.Message})
	}
	for _, fix := range f.Repairs() {
		edits := []jsonEdit{}
		for _, e := range fix.Edits {
			edits = append(edits, jsonEdit{jsonPlace{e.File.Name, spanJSON(e.File, e.Span)}, e.Text})
		}
		out.Fixes = append(out.Fixes, jsonFix{fix.Title, fix.Safe, edits})
	}
	return out
}

func concededJSON(root string, c *lint.Conceded) jsonConceded {
	return jsonConceded{findingJSON(root, &c.Found), jsonConcession{
		jsonPlace: placeJSON(lint.AtHeader(c.Concession)),
		Reason:    c.Concession.Get("reason").Text(),
		Until:     c.Concession.Get("until").Text(),
	}}
}

func faultJSON(root string, f lint.Fault) jsonFault {
	out := jsonFault{Rule: f.Rule, Shop: root, Message: "the check stopped, the others went on: " + f.Reason}
	if f.At.File != nil {
		span := spanJSON(f.At.File, f.At.Span)
		out.File, out.Span = f.At.File.Name, &span
	}
	return out
}
