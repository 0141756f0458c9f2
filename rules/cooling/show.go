package cooling

import (
	"slices"
	"strings"
)

// Basis says which figures nobody has stated and what stands in for them, as a
// sentence without a full stop: "Taken for the latent_heat that Southlight
// paraffin does not state, what is usual for paraffin (from memory)". Empty
// where all is stated.
func (p *Pour) Basis() string {
	var parts []string
	for i, a := range p.Assumed {
		if i > 0 && p.Assumed[i-1].Block == a.Block && p.Assumed[i-1].As == a.As {
			continue
		}
		var attrs []string
		for _, o := range p.Assumed {
			if o.Block == a.Block && o.As == a.As && !slices.Contains(attrs, o.Attr) {
				attrs = append(attrs, o.Attr)
			}
		}
		part := "the " + list(attrs) + " that " + a.Block.Title() + " does not state, what is usual for " + a.As
		if !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "Taken for " + strings.Join(parts, "; for ") + " (from memory)"
}

func list(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return words[0]
}
