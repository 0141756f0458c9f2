package sheet

import (
	"strconv"
	"strings"

	"wickrule/schema"
)

// Words that all forms of the sheet share.

// join puts together what is not empty.
func join(between string, parts ...string) string {
	var full []string
	for _, p := range parts {
		if p != "" {
			full = append(full, p)
		}
	}
	return strings.Join(full, between)
}

// stopped is a text with a full stop.
func stopped(text string) string {
	if text == "" || strings.HasSuffix(text, ".") || strings.HasSuffix(text, "!") || strings.HasSuffix(text, "?") {
		return text
	}
	return text + "."
}

func bracketed(text string) string {
	if text == "" {
		return ""
	}
	return " (" + text + ")"
}

func from(shop string) string {
	if shop == "" {
		return ""
	}
	return ", " + shop
}

// facts is what the batch is, in one line.
func facts(s *Sheet) string {
	sold := "made for " + s.MadeFor
	switch s.MadeFor {
	case "own use":
		sold = "for our own use"
	case "class":
		sold = "for a class"
	case "sale":
		sold = "for sale in " + markets(s.Markets)
	}
	return schema.Capital(join(", ", s.Makes, s.Order, sold, formulaText(s.Formula))) + "."
}

// header is how much is made, at the top of the page: "2 candles, as written".
func header(s *Sheet) string {
	n := 0
	for _, v := range s.Vessels {
		n += v.Count
	}
	if s.Order != "as written" || n == 0 {
		return s.Order
	}
	return count(n, "candle", "candles") + ", as written"
}

// markets names where it is sold: "the US", "the EU and the UK".
func markets(list []string) string {
	text := ""
	for i, m := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			text += " and "
		default:
			text += ", "
		}
		text += "the " + m
	}
	return text
}

func formulaText(code string) string {
	if code == "" {
		return ""
	}
	return "formulation " + code
}

// potTimes tells several pots apart: " for each of 3 pots of 8 candles".
func potTimes(s *Sheet, p Pot) string {
	if len(s.Pots) == 1 && p.Times == 1 {
		return ""
	}
	made := count(p.Candles, "candle", "candles")
	if p.Times == 1 {
		return " for one pot of " + made
	}
	return " for each of " + count(p.Times, "pot", "pots") + " of " + made
}

func weights(w *Weight) (text, other string) {
	if w == nil {
		return "", ""
	}
	return w.Text, w.Other
}

func spare(p Pot) string {
	if p.Spare == nil {
		return ""
	}
	return "of which " + p.Spare.Text + " (" + p.Spare.Other + ") is spare for what stays in the pot"
}

// vesselText is one line about a kind of vessel.
func vesselText(v Vessel) string {
	parts := []string{strconv.Itoa(v.Count) + " × " + v.Title}
	if v.Wick != "" {
		parts = append(parts, "wick: "+v.Wick)
	}
	if v.Each != nil {
		parts = append(parts, "finished weight of each "+v.Each.Text+" ("+v.Each.Other+")")
	}
	if v.TopUp != nil {
		parts = append(parts, "of which the second pour "+v.TopUp.Text+" ("+v.TopUp.Other+")")
	}
	return strings.Join(parts, ", ")
}

func onText(l Label) string {
	if l.On == "" {
		return ""
	}
	return ", on the " + l.On
}

func burnFigures(t Burned) string {
	return join(" ", stopped(t.Rate), stopped(t.Hours))
}

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

// windowText is a window in words: "1 h to 4 h", "from 6 h 30 min".
func windowText(w Window) string {
	if w.To == "" {
		return "from " + w.From
	}
	return w.From + " to " + w.To
}
