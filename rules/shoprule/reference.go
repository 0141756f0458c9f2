package shoprule

import (
	"fmt"
	"strings"
)

// Reference is NAMES.md: everything a rule can name, with its type and
// dimension, made from the table.
func Reference() string {
	return manual("Made from the program's own table by `go generate ./rules/...`; do not edit it by hand.\n\n")
}

// Manual is the same page for those who write rules: without the word to those
// who change the program.
func Manual() string { return manual("") }

func manual(note string) string {
	var b strings.Builder
	b.WriteString("# What a rule can name\n\n" + note)
	b.WriteString("A rule is checked once for each combination of the blocks it names; what a recipe does not have is not checked. `recipe`, `batch`, `cooling`, `hazards`\n" +
		"and `shop` are there once. Figures are exact and carry their dimension; only what measures the same is compared, added and taken away. A\n" +
		"temperature and a difference give a temperature, two temperatures a difference; an amount is multiplied and divided by numbers; what measures the\n" +
		"same divides to a number, a weight by a volume to a density. A range compared bare holds only if it holds at both ends; `.low` and `.high` are its\n" +
		"ends. A proportion that the shelves state of the total is taken as what it is of the wax in that batch.\n\n")
	b.WriteString("## Functions\n\n| function | gives | what it does |\n|---|---|---|\n")
	for _, f := range Functions() {
		fmt.Fprintf(&b, "| `%s(%s)` | %s | %s |\n", f.Name, f.Takes, f.Gives, f.Doc)
	}
	b.WriteString("\n## Options\n\n`option.NAME` is a figure of the rule's own, which an `option` block states: an amount, a number, a text, or true or false. It may be made of\n" +
		"options above it. A shop sets it in its tune of the rule, to what measures the same, and the rule goes by that in the shop's recipes and trials. The rule's\n" +
		"examples are tried with what the rule says.\n")
	for _, k := range table.kinds {
		fmt.Fprintf(&b, "\n## %s\n\n%s\n\n| name | gives | from | what it is |\n|---|---|---|---|\n", k.Name, k.Doc)
		for _, n := range k.Names {
			fmt.Fprintf(&b, "| `%s.%s` | %s | %s | %s |\n", k.Name, n.Name, n.gives(), n.From, n.Doc)
		}
	}
	return b.String()
}

// gives is the type and dimension of a name, as the reference has it.
func (n *name) gives() string {
	gives := n.Type.String()
	switch {
	case n.Type.Kind == Mixed && n.Type.Instead != "":
		gives += ", to show and to point at only; reckon with " + n.Type.Instead
	case n.Type.Kind == Mixed:
		gives += ", to show and to point at only"
	case n.Type.Kind == Number && n.Attr != nil && n.Attr.Unit != "":
		gives += " (of " + n.Attr.Unit + ")"
	}
	return gives
}
