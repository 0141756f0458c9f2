package report

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// mostOnPage is how many recipes a summary tells of: CI hosts cut a page that
// is too long, and nobody reads it.
const mostOnPage = 100

// Markdown writes a summary for a page, such as that of a CI job: how much was
// found, a table by recipe with the most serious first, then what to put right.
func Markdown(w io.Writer, d *Document) error {
	out := &markdownPage{bufio.NewWriter(w)}
	out.line("## " + escapeMarkdown(strings.TrimSuffix(verdict(d), ".")))
	out.list("Could not be read, so it was not checked", len(d.Unread), func(i int) string {
		u := d.Unread[i]
		return escapeMarkdown(Located(u.Shop, u.Name)+": "+u.Err.Error()) + "."
	})
	for _, shop := range d.Shops {
		out.shop(shop, d.standingIn(shop), len(d.Shops) > 1)
	}
	for _, left := range d.LeftOut {
		out.line(escapeMarkdown(left))
	}
	out.line(escapeMarkdown(Caution))
	return out.Flush()
}

type markdownPage struct{ *bufio.Writer }

// line writes a paragraph.
func (out *markdownPage) line(text string) { out.WriteString(text + "\n\n") }

// list writes a heading and n items; nothing where there are none.
func (out *markdownPage) list(heading string, n int, item func(i int) string) {
	if n == 0 {
		return
	}
	out.line("#### " + heading)
	for i := range n {
		out.WriteString("- " + item(i) + "\n")
	}
	out.WriteString("\n")
}

func (out *markdownPage) shop(r *lint.Report, standing []Standing, several bool) {
	if len(r.Findings)+len(standing)+len(r.Conceded)+len(r.Unchecked)+len(r.Faults) == 0 {
		return
	}
	if several {
		out.line("### " + escapeMarkdown(shopTitle(r.Shop)) + ", " + code(r.Shop.Root))
	}
	list := groups(r.Findings)
	slices.SortStableFunc(list, func(a, b *group) int {
		return cmp.Or(cmp.Compare(b.count(lint.Must), a.count(lint.Must)), cmp.Compare(b.count(lint.Should), a.count(lint.Should)), cmp.Compare(b.count(lint.Consider), a.count(lint.Consider)))
	})
	more := len(list) - mostOnPage
	if more > 0 {
		list = list[:mostOnPage]
	}
	out.table(list)
	for _, g := range list {
		out.group(g, r.Shop.Root)
	}
	if more > 0 {
		out.line("…and " + count(more, "recipe", "recipes") + " with less. `wickrule check` tells of all.")
	}
	out.list(standingHeading, len(standing), func(i int) string {
		return out.about(&standing[i].Found, r.Shop.Root) + ". " + escapeMarkdown(schema.Capital(standing[i].Why)) + "."
	})
	out.list("Conceded, with a reason", len(r.Conceded), func(i int) string {
		c := &r.Conceded[i]
		return out.about(&c.Found, r.Shop.Root) + ". Conceded: " + escapeMarkdown(c.Concession.Get("reason").Text())
	})
	out.list("Could not be checked, for want of a figure", len(r.Unchecked), func(i int) string {
		u := &r.Unchecked[i]
		return fmt.Sprintf("**%s** %s. %s", u.Level, escapeMarkdown(u.Message), where(r.Shop.Root, u.At))
	})
	out.list("Faults in wickrule itself", len(r.Faults), func(i int) string { return escapeMarkdown(faultText(r.Faults[i])) })
}

// table counts by recipe.
func (out *markdownPage) table(list []*group) {
	if len(list) == 0 {
		return
	}
	out.WriteString("| recipe | must | should | consider |\n|:--|--:|--:|--:|\n")
	for _, g := range list {
		out.WriteString("| " + escapeMarkdown(g.title))
		for _, level := range []lint.Level{lint.Must, lint.Should, lint.Consider} {
			out.WriteString(" | ")
			if n := g.count(level); n > 0 {
				fmt.Fprint(out, n)
			}
		}
		out.WriteString(" |\n")
	}
	out.WriteString("\n")
}

// group writes what is found in one recipe, the most serious first.
func (out *markdownPage) group(g *group, root string) {
	found := slices.Clone(g.found)
	slices.SortStableFunc(found, func(a, b lint.Found) int { return cmp.Compare(b.Level, a.Level) })
	out.list(escapeMarkdown(g.title), len(found), func(i int) string {
		text := out.about(&found[i], root)
		if titles := fixTitles(&found[i]); len(titles) > 0 {
			text += ". *" + escapeMarkdown(schema.Capital(strings.Join(titles, ", "))) + ".*"
		}
		return text
	})
}

// about is a finding with its level and its place.
func (out *markdownPage) about(f *lint.Found, root string) string {
	return fmt.Sprintf("**%s** %s (%s, %s)", f.Level, escapeMarkdown(f.Message), where(root, f.At), code(f.Rule.Name))
}

func where(root string, at lint.Place) string {
	return fmt.Sprintf("%s, line %d", code(Located(root, at.File.Name)), at.File.Text.Line(at.Span.Start))
}

// count is how many of the findings speak at a level.
func (g *group) count(level lint.Level) (n int) {
	for i := range g.found {
		if g.found[i].Level == level {
			n++
		}
	}
	return n
}

// markdownSigns are what CommonMark, and GitHub's Markdown, would not show as
// it stands.
var markdownSigns = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "{", `\{`, "}", `\}`, "[", `\[`, "]", `\]`,
	"<", `\<`, ">", `\>`, "#", `\#`, "|", `\|`, "~", `\~`, "&", `\&`, "$", `\$`)

// escapeMarkdown is a text that Markdown shows as it is, in one line.
func escapeMarkdown(text string) string { return markdownSigns.Replace(Clean(text)) }

// code is a word in the type of code: nothing in it is escaped, so it holds no
// sign that would end it.
func code(text string) string {
	return "`" + strings.ReplaceAll(Clean(text), "`", "'") + "`"
}
