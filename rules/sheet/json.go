package sheet

import (
	_ "embed"
	"encoding/json"
	"io"
)

// Schema is the JSON Schema (2020-12) of what JSON writes.
//
//go:embed sheet.schema.json
var Schema string

// JSON writes the sheet for programs. Its shape is Schema's.
func (s *Sheet) JSON(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(s)
}
