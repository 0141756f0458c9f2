package card

import (
	"fmt"
	"io"
	"strings"

	"wickrule/rules/sheet"
)

// Markdown writes the card as CommonMark.
func (c *Card) Markdown(w io.Writer) error {
	var b strings.Builder
	text := func(t string) { fmt.Fprintf(&b, "\n%s\n", sheet.MarkdownText(t)) }
	fmt.Fprintf(&b, "# %s\n\n**%s**\n", sheet.MarkdownText(c.Question), sheet.MarkdownText(c.Answer))
	b.WriteString("\n## Why\n")
	for _, paragraph := range c.Why {
		text(paragraph)
	}
	b.WriteString("\n## When it is still all right\n")
	text(c.AllRight)
	b.WriteString("\n## What to do\n")
	text(c.Do)
	list := func(heading string, all []string) {
		if len(all) == 0 {
			return
		}
		fmt.Fprintf(&b, "\n## %s\n\n", heading)
		for _, line := range all {
			fmt.Fprintf(&b, "- %s\n", sheet.MarkdownText(line))
		}
	}
	list("What we tried", c.Tried)
	list("Mind", c.Mind)
	b.WriteString("\n---\n")
	text(c.Foot())
	_, err := io.WriteString(w, b.String())
	return err
}

// Foot is the last line: whose card it is, the rule's name, and what the card
// is not.
func (c *Card) Foot() string {
	foot := c.Rule + ". " + c.Deferral
	if c.Shop != "" {
		foot = c.Shop + ", " + foot
	}
	return foot
}
