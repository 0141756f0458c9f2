package formula

import (
	"strconv"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// Record is a test burn to be written down. What is empty, or 0, is left out:
// nothing is guessed of what was seen.
type Record struct {
	Date   string // "2026-10-04"
	Vessel string // the key, where the recipe has several
	Candle string // "A"
	Cycle  int

	// Amounts as they would be typed: "4 h", "2.6 in".
	BurnedFor, MeltPool, PoolDepth, Flame, Wall, WeightBefore, WeightAfter string

	ToEnd  *bool
	Soot   string   // none, light, heavy
	Seen   []string // nil: not said; empty: nothing
	Result string   // pass, fail
	Notes  string
}

// Next is which candle a burn is taken to be of where nobody says, and its
// cycle: the last one burned of this formulation that has not ended, else the
// next letter. For a candle that is named it is its next cycle.
func (t *Tested) Next(candle string) (string, int) {
	cycles, ended := map[string]int{}, map[string]bool{}
	last := ""
	for _, burn := range t.Current {
		name := burn.Get("candle").Text()
		if name == "" {
			continue
		}
		cycles[name] = max(cycles[name]+1, burn.Get("cycle").Whole(0))
		ended[name] = ended[name] || burn.Get("to_end").Yes() || burn.Get("result").Text() == "fail"
		last = name
	}
	switch {
	case candle != "":
	case last != "" && !ended[last]:
		candle = last
	default:
		candle = freeName(cycles)
	}
	return candle, cycles[candle] + 1
}

// freeName is the first letter that no candle has: A to Z, then AA, AB …
func freeName(taken map[string]int) string {
	for _, before := range append([]string{""}, strings.Split("ABCDEFGHIJKLMNOPQRSTUVWXYZ", "")...) {
		for letter := 'A'; letter <= 'Z'; letter++ {
			if name := before + string(letter); taken[name] == 0 {
				return name
			}
		}
	}
	return ""
}

// Text is the block that records the burn, with the fingerprint of what was
// burned and, where no burn keeps it yet, what that rests on.
func (r Record) Text(code string, keep []string) string {
	var names, values []string
	add := func(name, literal string) {
		names, values = append(names, name), append(values, literal)
	}
	quoted := func(name, text string) {
		if text != "" {
			add(name, schema.Quote(text))
		}
	}
	quoted("formula", code)
	quoted("vessel", r.Vessel)
	quoted("candle", r.Candle)
	if r.Cycle > 0 {
		add("cycle", strconv.Itoa(r.Cycle))
	}
	quoted("burned_for", r.BurnedFor)
	if r.ToEnd != nil {
		add("to_end", strconv.FormatBool(*r.ToEnd))
	}
	quoted("melt_pool", r.MeltPool)
	quoted("pool_depth", r.PoolDepth)
	quoted("flame", r.Flame)
	quoted("wall", r.Wall)
	quoted("weight_before", r.WeightBefore)
	quoted("weight_after", r.WeightAfter)
	quoted("soot", r.Soot)
	if r.Seen != nil {
		items := make([]string, len(r.Seen))
		for i, what := range r.Seen {
			items[i] = schema.Quote(what)
		}
		add("seen", "["+strings.Join(items, ", ")+"]")
	}
	quoted("result", r.Result)
	quoted("notes", r.Notes)

	width := 0
	for _, name := range names {
		width = max(width, len(name))
	}
	var b strings.Builder
	b.WriteString("test_burn " + schema.Quote(r.Date) + " {\n")
	for i, name := range names {
		b.WriteString("  " + name + strings.Repeat(" ", width-len(name)) + " = " + values[i] + "\n")
	}
	b.WriteString(KeptAttribute(keep) + "}")
	return b.String()
}

// KeptAttribute is the line of a test burn that keeps what its code rests on, a
// line each, or "" for nothing. It comes last: the layout lines up no equals
// sign with one before a list of several lines.
func KeptAttribute(keep []string) string {
	if len(keep) == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteString("  burned_as = [\n")
	for _, line := range keep {
		b.WriteString("    " + schema.Quote(line) + ",\n")
	}
	b.WriteString("  ]\n")
	return b.String()
}

// Edit puts the record into the recipe, behind its last test burn, a line left
// out before it.
func (r Record) Edit(view *lint.View, code string, keep []string) schema.Edit {
	var last *schema.Block
	for burn := range view.Recipe.Each("test_burn") {
		last = burn
	}
	if last == nil {
		return apart(schema.AppendBlock(view.Recipe, r.Text(code, keep)))
	}
	return apart(schema.InsertBlockAfter(last, r.Text(code, keep)))
}

// apart leaves a line out before a block that is put on lines of its own.
func apart(e schema.Edit) schema.Edit {
	if rest := strings.TrimLeft(e.Text, "\r\n"); len(rest) < len(e.Text) && e.Span.Start == e.Span.End {
		e.Text = e.Text[:len(e.Text)-len(rest)] + e.Text
	}
	return e
}

// Named is the kind of candle of the vessel that a key names, among those the
// recipe makes; without a key the only one. False: it has several, or no such.
func Named(view *lint.View, vessel string) (*Tested, bool) {
	tests := Tests(view)
	b := batch.Of.In(view)
	if vessel == "" {
		if len(tests) != 1 {
			return nil, false
		}
		return &tests[0], true
	}
	for i := range tests {
		if at := tests[i].Vessel; at < len(b.Vessels) && b.Vessels[at].Block.Label == vessel {
			return &tests[i], true
		}
	}
	return nil, false
}
