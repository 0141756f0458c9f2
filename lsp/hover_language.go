package lsp

import (
	"slices"
	"strings"

	"wickrule/schema"
)

// attribute is what an attribute is for, what it takes, and an example.
func (h *here) attribute(s *schema.AttrSpec) []string {
	says := []string{"**" + s.Name + "** " + s.Doc}
	takes := "Takes " + h.plain(s.Takes()) + "."
	if len(s.Choices) > 12 {
		takes = "Takes words of a closed list; ask for completion to see them."
	}
	if s.Required {
		takes += " It must be written."
	}
	if s.Example != "" {
		takes += " For example " + code(s.Name+" = "+s.Example) + "."
	}
	return append(says, takes)
}

// blockWord is what a block is, with an example.
func (h *here) blockWord(s *schema.BlockSpec) []string {
	name := s.Name
	if s.Kind != "" {
		name += " \"" + s.Kind + "\""
	}
	says := []string{"**" + name + "** " + s.Doc}
	var names []string
	for _, a := range s.Attrs {
		if !slices.Contains(names, code(a.Name)) {
			names = append(names, code(a.Name))
		}
	}
	if len(names) > 0 {
		says = append(says, "It may state "+strings.Join(names, ", ")+".")
	}
	if s.Example != "" {
		says = append(says, hclText(shortened(s.Example)))
	}
	return says
}

// mostOfExample is how many lines of an example a hover shows: what is longer
// hides what one wanted to see.
const mostOfExample = 14

// shortened is the beginning of an example that is long, closed again.
func shortened(example string) string {
	lines := strings.Split(strings.TrimRight(example, "\n"), "\n")
	if len(lines) <= mostOfExample {
		return example
	}
	for last := mostOfExample - 2; last > 0; last-- {
		if lines[last] == "  }" || lines[last] == "" { // between blocks
			return strings.TrimRight(strings.Join(lines[:last+1], "\n"), "\n") + "\n  # …\n}\n"
		}
	}
	return example
}

// wordMeans is what one of the words means that an attribute may have.
func (h *here) wordMeans(s *schema.AttrSpec, word string) []string {
	var says []string
	if c := schema.CautionNamed(word); c != nil && s.Name == "cautions" {
		says = append(says, "**"+word+"** "+c.Words, h.cautionWanted(word))
	} else if meaning := schema.WordMeans(s, word); meaning != "" {
		says = append(says, "**"+word+"** "+meaning)
	}
	return append(says, h.attribute(s)...)
}

// cautionWanted says which markets want a caution, of which candles.
func (h *here) cautionWanted(name string) string {
	var all, some []string
	for _, market := range schema.Markets() {
		in := schema.CautionsIn(market)
		if slices.Contains(in.Core, name) {
			all = append(all, "the "+market+" ("+in.Standard+")")
		}
		for _, t := range in.ByType {
			if t.Name == name {
				some = append(some, "the "+market+" ("+in.Standard+") on "+t.Which)
			}
		}
	}
	switch {
	case len(all) > 0:
		return "Wanted on every candle in " + joined(all) + "."
	case len(some) > 0:
		return "Wanted in " + joined(some) + "."
	}
	return "Good to have on a label; no market here requires it."
}
