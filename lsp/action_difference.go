package lsp

import (
	"strings"

	"wickrule/schema"
)

// mostCells is how large a comparison of lines may get before what differs is
// replaced as one piece.
const mostCells = 1 << 22

// differences are the edits, by whole lines, that turn the text of a file into
// another.
func differences(f *schema.File, text string) []schema.Edit {
	old, now := lines(f.Text.String()), lines(text)
	at := int32(0)
	for len(old) > 0 && len(now) > 0 && old[0] == now[0] {
		at += int32(len(old[0]))
		old, now = old[1:], now[1:]
	}
	for len(old) > 0 && len(now) > 0 && old[len(old)-1] == now[len(now)-1] {
		old, now = old[:len(old)-1], now[:len(now)-1]
	}
	if len(old)*len(now) > mostCells {
		gone := int32(len(strings.Join(old, "")))
		return []schema.Edit{{File: f, Span: schema.Span{Start: at, End: at + gone}, Text: strings.Join(now, "")}}
	}
	var edits []schema.Edit
	longest := longestCommon(old, now)
	for i, j := 0, 0; i < len(old) || j < len(now); {
		if i < len(old) && j < len(now) && old[i] == now[j] {
			at += int32(len(old[i]))
			i, j = i+1, j+1
			continue
		}
		e := schema.Edit{File: f, Span: schema.Span{Start: at, End: at}}
		for (i < len(old) || j < len(now)) && !(i < len(old) && j < len(now) && old[i] == now[j]) {
			if j == len(now) || i < len(old) && longest[i+1][j] >= longest[i][j+1] {
				e.Span.End += int32(len(old[i]))
				i++
				continue
			}
			e.Text += now[j]
			j++
		}
		at = e.Span.End
		edits = append(edits, e)
	}
	return edits
}

// longestCommon is, for every pair of places, how many lines two texts have in
// common from there on, in order.
func longestCommon(a, b []string) [][]int32 {
	table := make([][]int32, len(a)+1)
	for i := range table {
		table[i] = make([]int32, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if a[i] == b[j] {
				table[i][j] = table[i+1][j+1] + 1
				continue
			}
			table[i][j] = max(table[i+1][j], table[i][j+1])
		}
	}
	return table
}

// lines cuts a text behind every line end.
func lines(text string) []string {
	starts := schema.LineStarts(text)
	list := make([]string, 0, len(starts))
	for i, start := range starts {
		end := int32(len(text))
		if i+1 < len(starts) {
			end = starts[i+1]
		}
		list = append(list, text[start:end])
	}
	return list
}
