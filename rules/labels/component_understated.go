package labels

import (
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/rules/hazard"
)

// ComponentUnderstated compares a component with what is harmonized for its CAS
// number. It only asks: the supplier's sheet is what counts.
var ComponentUnderstated = &lint.Rule{
	Name:   "component-understated",
	Group:  Group,
	Title:  "a component stated without a hazard that is harmonized for its CAS number",
	Levels: lint.Levels{Sale: lint.Consider},
	Why: "For some substances the class is fixed by law for everybody. A component that lacks it was perhaps copied from an old sheet, or a line was lost in copying, " +
		"and the whole arithmetic rests on it.",
	Remedy:   "Look at section 3 of the sheet again, and ask the supplier for one of this year where it agrees with what is written. What the sheet says is what counts here.",
	Source:   "Annex VI of Regulation (EC) No 1272/2008; most entries of the table used here are from memory, and each finding says which",
	Cautions: deferral,
	Bad: []lint.Example{{
		About:   "cinnamal as an everyday sensitizer",
		Recipe:  "skerry-eu",
		Changes: []lint.Change{{From: "fragrance \"kelp-and-lime\"", To: "fragrance \"from-the-fair\""}},
		Stock:   oilFromTheFair("\n  component \"cinnamal\" {\n    cas     = \"104-55-2\"\n    share   = \"0.5 %\"\n    hazards = [\"Skin Sens. 1B H317\"]\n  }\n"),
		Flags:   []string{`["Skin Sens. 1B H317"]`},
	}},
	Also:  []string{"test-burn-missing", "hazard-label-unfounded"}, // the burns and the label are of another oil
	Good:  []lint.Example{{About: "all that is harmonized, and more", Recipe: "skerry-eu", Shows: `fragrance "kelp-and-lime"`, Shelf: `fragrance kelp-and-lime`}},
	Check: checkUnderstated,
}

func checkUnderstated(p *lint.Pass) {
	c, _, ok := hazards(p)
	if !ok {
		return
	}
	for _, s := range c.Substances {
		lacking, known := s.Understated()
		if len(lacking) == 0 || unread(c, s) {
			continue
		}
		words := make([]string, len(lacking))
		for i, h := range lacking {
			words[i] = h.String()
		}
		text := fmt.Sprintf("%s (CAS %s) is stated without %s, which is harmonized for it (%s): look at section 3 of the sheet again",
			s.Name, s.CAS, joined(words), known.Source)
		if known.Limit != "" && !s.HasLimit {
			text += " (and its specific limit is " + known.Limit + ")"
		}
		p.Report(lint.Finding{At: lint.AtValue(s.Parts[0].Component.Get("hazards")), Message: text + "; the supplier's sheet decides", Notes: usedIn(p)})
	}
}

// unread says whether an entry of the substance cannot be read, which another
// rule says.
func unread(c *hazard.Classification, s *hazard.Substance) bool {
	return slices.ContainsFunc(c.Unread, func(u hazard.Unread) bool {
		return !u.Limit() && slices.ContainsFunc(s.Parts, func(p hazard.Part) bool { return p.Component == u.Value.Block })
	})
}
