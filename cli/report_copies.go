package cli

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

// copies is a flag that may be repeated: a form, and the file that a report in
// this form goes into.
type copies []reportCopy

type reportCopy struct{ form, file string }

func (c *copies) String() string { return "" }
func (c *copies) Type() string   { return "FORM=FILE" }

func (c *copies) Set(value string) error {
	form, file, ok := strings.Cut(value, "=")
	switch {
	case !ok || file == "":
		return errors.New("write a form, = and the file, such as sarif=recipes.sarif")
	case !slices.Contains(report.Forms, form):
		return errors.New(schema.NearestOrKnown(form, report.Forms, ""))
	case strings.HasSuffix(file, lint.FileSuffix):
		return fmt.Errorf("a report is no recipe: let the file's name end otherwise than in %s", lint.FileSuffix)
	}
	*c = append(*c, reportCopy{form, file})
	return nil
}

// writeReport writes the report to standard output, and its copies into their
// files, whole or not at all. Where there was nothing to check, people were
// told; programs wait for their report all the same.
func (s *session) writeReport(doc *report.Document, form string, more copies) error {
	forPeople := form == "text" || form == "markdown"
	if !forPeople {
		for _, sentence := range doc.LeftOut {
			s.say("%s", sentence)
		}
	}
	if len(doc.Shops) > 0 || !forPeople && form != "lines" {
		if err := report.Write(s.Out, form, doc, s.Look); err != nil {
			return fmt.Errorf("the report could not be written: %w", err)
		}
	}
	for _, c := range more {
		var text strings.Builder
		if err := report.Write(&text, c.form, doc, report.Look{}); err != nil {
			return fmt.Errorf("%s: %w", c.file, err)
		}
		if err := s.keep(s.locate(c.file).full(), []byte(text.String())); err != nil {
			return fmt.Errorf("%s: %w", c.file, err)
		}
	}
	return nil
}

// origin says where the files of a report lie: below the top of the repository
// around the working folder or, where there is none, in that folder.
func (s *session) origin() report.Origin {
	here := s.locate(".")
	base := lint.Repository(os.DirFS(here.volume), here.path)
	if base == "" {
		base = here.path
	}
	return report.Origin{
		Version: version(),
		Base:    filepath.ToSlash(place{here.volume, base}.full()),
		Here:    lint.Below(base, here.path),
	}
}
