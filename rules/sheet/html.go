package sheet

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strconv"
	"strings"

	"wickrule/schema"
)

//go:embed sheet.html.tmpl
var page string

var htmlPage = template.Must(template.New("sheet").Funcs(template.FuncMap{
	"facts": facts, "potTimes": potTimes, "spare": spare, "vessel": vesselText, "join": join, "sentence": schema.Capital,
	"stop": stopped, "hazardLines": hazardLines, "hazardHeading": hazardHeading, "burnFigures": burnFigures, "curve": curveLines, "section": sectionLines,
	"windowsOf": windowsOf, "header": header, "burningWax": func() string { return BurningWax },
	"within": func(parts []string) string { return join("; ", parts...) },
	"beside": func(l Weigh) string {
		if l.Weight == nil {
			return join(", ", l.Share, l.Note) // what is said stands in the place of the weight
		}
		return join(", ", l.Said, l.Share, l.Note)
	},
}).Parse(page))

// pourWindows are the windows of one pour, side by side.
type pourWindows struct {
	Pour, Note string
	Windows    []Window
}

// windowsOf puts the windows of each pour together.
func windowsOf(all []Window) []pourWindows {
	var list []pourWindows
	for _, w := range all {
		if n := len(list); n == 0 || list[n-1].Pour != w.Pour {
			list = append(list, pourWindows{Pour: w.Pour, Note: w.Note})
		}
		last := &list[len(list)-1]
		last.Windows = append(last.Windows, w)
	}
	return list
}

// HTML writes the sheet as one page that needs nothing but itself, for the
// screen and for the printer.
func (s *Sheet) HTML(w io.Writer) error { return htmlPage.Execute(w, s) }

// drawing is a curve or a section laid out in the coordinates of its picture.
type drawing struct {
	Core, Wall string // points of a polyline
	Ticks      []tick // along the time
	Heats      []tick // along the temperature
	Lines      []fillLine
	Bands      []band
	Deep       float64 // of a curve: how far down the picture goes
	Width      float64
	High       float64
	Left       float64
	Cavity     float64
	Right      float64
	Middle     float64
	WickTop    float64
}

type tick struct {
	At          float64
	Text, Other string
}

// band is a window under a curve, with its words in a row of its own.
type band struct {
	At, Wide, Line float64
	Text           string
}

// fillLine is a line across a vessel, with its words beside it.
type fillLine struct {
	At, To, TextAt float64
	Text           string
}

// The picture of a curve, in its own units.
const (
	curveLeft, curveTop    = 34.0, 8.0
	curveWide, curveHigh   = 300.0, 110.0
	curveBands             = 143.0 // where the first of the windows stands, under the hours
	sectionHigh, sectionAt = 110.0, 10.0
)

// curveLines lays a curve out: hours to the right, heat upward from 20 °C.
func curveLines(c Curve) drawing {
	last, top := c.Points[len(c.Points)-1].Hours, c.Points[0].Core
	low := 20.0
	for _, p := range c.Points {
		low = min(low, p.Wall)
		top = max(top, p.Core)
	}
	x := func(h float64) float64 { return curveLeft + h/last*curveWide }
	y := func(t float64) float64 { return curveTop + (top-t)/(top-low)*curveHigh }
	d := drawing{Deep: curveBands - 9 + 13*float64(len(c.Bands))}
	line := func(heat func(Point) float64) string {
		var b strings.Builder
		for _, p := range c.Points {
			fmt.Fprintf(&b, "%.1f,%.1f ", x(p.Hours), y(heat(p)))
		}
		return strings.TrimSpace(b.String())
	}
	d.Core, d.Wall = line(func(p Point) float64 { return p.Core }), line(func(p Point) float64 { return p.Wall })
	step := 1
	for last/float64(step) > 8 {
		step *= 2
	}
	for h := 0; float64(h) <= last; h += step {
		d.Ticks = append(d.Ticks, tick{At: x(float64(h)), Text: strconv.Itoa(h) + " h"})
	}
	for i, w := range c.Bands {
		if w.From < last {
			d.Bands = append(d.Bands, band{x(w.From), x(min(w.To, last)) - x(w.From), curveBands + 13*float64(i), w.What})
		}
	}
	for t := 20; float64(t) <= top; t += 20 {
		d.Heats = append(d.Heats, tick{y(float64(t)), fmt.Sprintf("%d °C", t), fmt.Sprintf("%d °F", t*9/5+32)})
	}
	return d
}

// sectionLines lays a vessel out: cut open, with its fill lines.
func sectionLines(v Section) drawing {
	scale := sectionHigh / max(v.High, v.Across)
	d := drawing{Width: v.Across * scale, High: v.High * scale, Left: sectionAt, Cavity: sectionAt + sectionHigh - v.High*scale}
	bottom := sectionAt + sectionHigh
	d.Right, d.Middle = d.Left+d.Width, d.Left+d.Width/2
	d.WickTop = bottom - v.Finished*scale - 6
	add := func(mm float64, text string, aside float64) {
		if mm > 0 && mm <= v.High {
			at := bottom - mm*scale
			d.Lines = append(d.Lines, fillLine{at, d.Right + 14, at + aside, text})
		}
	}
	first, finished := 7.0, -4.0 // the words stand apart where the lines do not
	if v.First > v.Finished {
		first, finished = finished, first
	}
	add(v.First, "first pour", first)
	add(v.Finished, "finished", finished)
	return d
}
