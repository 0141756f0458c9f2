package card

import (
	_ "embed"
	"html/template"
	"io"
)

//go:embed card.html.tmpl
var page string

var htmlPage = template.Must(template.New("card").Parse(page))

// HTML writes the card as one page that needs nothing but itself, for a sheet
// of A5; a printer makes A6 of it.
func (c *Card) HTML(w io.Writer) error { return htmlPage.Execute(w, c) }
