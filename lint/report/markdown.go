package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Markdown writes a summary for a page: how much was found, recipe by recipe,
// what must and what should be put right with its place, then the rest.
func Markdown(w io.Writer, d *Document) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "## %s\n\n", summary(d))
	if n := len(d.Unread); n > 0 {
		fmt.Fprintf(out, "**Not read, so not checked:**\n\n")
		for _, u := range d.Unread {
			fmt.Fprintf(out, "- %s: %s\n", escapeMarkdown(Located(u.Shop, u.Name)), escapeMarkdown(u.Err.Error()))
		}
		out.WriteString("\n")
	}
	for _, shop := range d.Shops {
		markdownShop(out, shop, len(d.Shops) > 1)
	}
	for _, left := range d.LeftOut {
		fmt.Fprintf(out, "%s\n\n", escapeMarkdown(left))
	}
	fmt.Fprintf(out, "%s\n", Caution)
	return out.Flush()
}

// summary is the whole in a line.
func summary(d *Document) string {
	checked := count(d.Recipes(), "recipe", "recipes") + " checked: "
	if must, should := d.Count(lint.Must), d.Count(lint.Should); must+should > 0 {
		return checked + count(must, "thing", "things") + " must be put right, " + count(should, "thing", "things") + " should be"
	}
	if len(d.LeftOut) > 0 {
		return checked + "nothing new that must or should be put right"
	}
	return checked + "nothing that must or should be put right"
}

func markdownShop(out *bufio.Writer, r *lint.Report, several bool) {
	if len(r.Findings)+len(r.Conceded)+len(r.Unchecked)+len(r.Faults) == 0 {
		return
	}
	if several {
		fmt.Fprintf(out, "### %s\n\n", escapeMarkdown(shopTitle(r.Shop)))
	}
	list := groups(r.Findings)
	if len(list) > 0 {
		out.WriteString("| | must | should | consider |\n|---|--:|--:|--:|\n")
		for _, g := range list {
			var n [lint.Must + 1]int
			for i := range g.found {
				n[g.found[i].Level]++
			}
			fmt.Fprintf(out, "| %s | %s | %s | %s |\n", escapeMarkdown(g.title), mark(n[lint.Must]), mark(n[lint.Should]), mark(n[lint.Consider]))
		}
		out.WriteString("\n")
	}
	for _, level := range []lint.Level{lint.Must, lint.Should, lint.Consider} {
		begun := false
		for i := range r.Findings {
			f := &r.Findings[i]
			if f.Level != level {
				continue
			}
			if !begun {
				fmt.Fprintf(out, "**%s**\n\n", map[lint.Level]string{lint.Must: "Must be put right", lint.Should: "Should be put right", lint.Consider: "Worth knowing"}[level])
				begun = true
			}
			line, _ := f.At.File.Text.Position(f.At.Span.Start)
			fmt.Fprintf(out, "- %s  \n  `%s`, line %d, `%s`\n", escapeMarkdown(schema.Capital(f.Message)+"."), plainCode(Located(r.Shop.Root, f.At.File.Name)), line, f.Rule.Name)
		}
		if begun {
			out.WriteString("\n")
		}
	}
	if len(r.Conceded) > 0 {
		out.WriteString("**Conceded**\n\n")
		for i := range r.Conceded {
			c := &r.Conceded[i]
			fmt.Fprintf(out, "- %s  \n  because: %s\n", escapeMarkdown(schema.Capital(c.Message)+"."), escapeMarkdown(c.Concession.Get("reason").Text()))
		}
		out.WriteString("\n")
	}
	if len(r.Unchecked) > 0 {
		out.WriteString("**Could not be checked, for want of a figure**\n\n")
		for _, u := range r.Unchecked {
			fmt.Fprintf(out, "- %s (%s)\n", escapeMarkdown(u.Message), u.Level)
		}
		out.WriteString("\n")
	}
	for _, f := range r.Faults {
		fmt.Fprintf(out, "- the check `%s` stopped, the others went on: %s\n", f.Rule, escapeMarkdown(f.Reason))
	}
	if len(r.Faults) > 0 {
		out.WriteString("\n")
	}
}

// mark is a number, or nothing for none.
func mark(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

var markdownSigns = func() *strings.Replacer {
	var pairs []string
	for _, sign := range "\\`*_{}[]<>#|~&" {
		pairs = append(pairs, string(sign), `\`+string(sign))
	}
	return strings.NewReplacer(pairs...)
}()

// escapeMarkdown is a text that reads in CommonMark as it stands.
func escapeMarkdown(text string) string { return markdownSigns.Replace(Clean(text)) }

func plainCode(text string) string { return strings.ReplaceAll(Clean(text), "`", "'") }
