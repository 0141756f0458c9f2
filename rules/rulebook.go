package rules

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Rulebook is RULEBOOK.md: every rule for a person to read, made from the
// rule values.
func Rulebook(rules []*lint.Rule) string {
	var b strings.Builder
	b.WriteString("# The rulebook\n\n")
	b.WriteString("Made from the rules themselves by `go generate ./rules`; do not edit it by hand.\n\n")
	b.WriteString("Levels are for one's own use / a class / sale: **must** (do not pour, sell or teach it like this), **should** (put it right, or\n" +
		"record a concession with its reason), **consider** (worth knowing), – (silent). A shop can `tune` how loud a rule speaks. Rules marked ‡\n" +
		"can be neither tuned below their level nor conceded in recipes made for sale, and those about the format itself in none. Single findings of a rule\n" +
		"may be softer or louder; the rule says when.\n\n")
	b.WriteString("Nothing here is a test report or legal advice. The supplier's data sheets, local codes and licensed practice go first.\n")
	group := ""
	for _, r := range rules {
		if r.Group != group {
			group = r.Group
			fmt.Fprintf(&b, "\n## %s\n", group)
		}
		writeRule(&b, r)
	}
	return b.String()
}

func writeRule(b *strings.Builder, r *lint.Rule) {
	fmt.Fprintf(b, "\n### %s%s\n\n", r.Name, mark(r))
	fmt.Fprintf(b, "%s. *%s*\n\n", schema.Capital(r.Title), levelsText(r.Levels))
	fmt.Fprintf(b, "%s\n\n", strings.TrimSpace(r.Why))
	fmt.Fprintf(b, "**To put it right:** %s\n\n", strings.TrimSpace(r.Remedy))
	if r.Cautions != "" {
		fmt.Fprintf(b, "**Mind:** %s\n\n", strings.TrimSpace(r.Cautions))
	}
	fmt.Fprintf(b, "Source: %s\n", strings.TrimSpace(r.Source))
}

func mark(r *lint.Rule) string {
	if r.Binding {
		return " ‡"
	}
	return ""
}

func levelsText(l lint.Levels) string {
	if l == lint.Every(l.Sale) {
		return levelWord(l.Sale)
	}
	return levelWord(l.OwnUse) + " / " + levelWord(l.Class) + " / " + levelWord(l.Sale)
}

func levelWord(l lint.Level) string {
	if l == lint.Silent {
		return "–"
	}
	return l.String()
}
