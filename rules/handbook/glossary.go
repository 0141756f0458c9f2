package handbook

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
)

//go:embed glossary.txt
var glossaryText string

// term is a word of the trade.
type term struct {
	Name   string
	Common bool     // so common a word, or words, that it does not lead to itself; what has several words and is listed behind it does
	Also   []string // other words for it
	Forms  []string // other forms of it
	Sought []string // what people look it up by, which leads nowhere in the pages' texts
	Rules  []string // built-in rules that turn on it
	See    []string // terms that stand near it
	Means  string
}

// terms are the words of the trade, in the order of the glossary.
type terms struct {
	all []*term
}

// glossary reads the words of the trade. A text that cannot be read is a
// mistake in the program and panics.
func glossary() *terms {
	t := &terms{}
	for block := range strings.SplitSeq(strings.TrimSpace(glossaryText), "\n\n") {
		if !strings.HasPrefix(block, "#") {
			t.all = append(t.all, readTerm(block))
		}
	}
	return t
}

// turningOn are the words that lead to a rule.
func (t *terms) turningOn(r *lint.Rule) string {
	var all []string
	for _, term := range t.all {
		if slices.Contains(term.Rules, r.Name) {
			all = append(all, slices.Concat([]string{term.Name}, term.Also, term.Forms)...)
		}
	}
	return strings.Join(all, " ")
}

func readTerm(block string) *term {
	lines := strings.Split(block, "\n")
	name, common := strings.CutSuffix(lines[0], "*")
	t := &term{Name: name, Common: common}
	var means []string
	for _, line := range lines[1:] {
		list := func(after string) bool {
			rest, ok := strings.CutPrefix(line, after+": ")
			switch {
			case !ok || len(means) > 0:
				return false
			case after == "also":
				t.Also = strings.Split(rest, ", ")
			case after == "forms":
				t.Forms = strings.Split(rest, ", ")
			case after == "sought":
				t.Sought = strings.Split(rest, ", ")
			case after == "rules":
				t.Rules = strings.Split(rest, ", ")
			case after == "see":
				t.See = strings.Split(rest, ", ")
			}
			return true
		}
		if !list("also") && !list("forms") && !list("sought") && !list("rules") && !list("see") {
			means = append(means, line)
		}
	}
	t.Means = strings.Join(means, " ")
	if t.Name == "" || t.Means == "" {
		panic(fmt.Sprintf("handbook: a term that cannot be read: %q", block))
	}
	return t
}
