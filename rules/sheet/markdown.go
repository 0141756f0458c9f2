package sheet

import (
	"fmt"
	"io"
	"strings"

	"wickrule/schema"
)

// Markdown writes the sheet as CommonMark with tables.
func (s *Sheet) Markdown(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n\n", MarkdownText(s.Title))
	fmt.Fprintf(&b, "Batch sheet, %s%s. %s\n\n", s.Date, from(s.Shop), facts(s))
	fmt.Fprintf(&b, "**%s.**\n", schema.Capital(s.Verdict))
	for _, f := range s.Findings {
		fmt.Fprintf(&b, "\n- %s: %s (`%s`)%s", strong(f), MarkdownText(f.Message), f.Rule, concededText(f))
	}
	if len(s.Findings) > 0 {
		b.WriteString("\n")
	}
	for _, r := range s.Remarks {
		fmt.Fprintf(&b, "\n%s\n", MarkdownText(r))
	}

	for _, p := range s.Pots {
		fmt.Fprintf(&b, "\n## Weigh%s\n\n| | | | |\n|---|---:|---:|---|\n", potTimes(s, p))
		for _, l := range p.Weigh {
			text, other := weights(l.Weight)
			fmt.Fprintf(&b, "| ☐ %s | %s | %s | %s |\n", cell(l.Title), text, other, cell(join(", ", l.Said, l.Share, l.Note)))
		}
		if p.Total != nil {
			fmt.Fprintf(&b, "| **together** | **%s** | %s | %s |\n", p.Total.Text, p.Total.Other, cell(spare(p)))
		}
		if p.Pot != "" {
			fmt.Fprintf(&b, "\n%s\n", MarkdownText(join(": ", p.Pot, p.Full)))
		}
	}

	if len(s.Vessels) > 0 {
		b.WriteString("\n## Fill\n\n")
		for _, v := range s.Vessels {
			fmt.Fprintf(&b, "- %s\n", MarkdownText(vesselText(v)))
		}
	}

	b.WriteString("\n## Do\n\n")
	for _, st := range s.Steps {
		fmt.Fprintf(&b, "%d. ☐ **%s**%s\n", st.Number, MarkdownText(st.Do), bracketed(join("; ", st.When, st.Since)))
		for _, more := range []string{st.Say, join("; ", st.Within...), st.Watch} {
			if more != "" {
				fmt.Fprintf(&b, "   %s  \n", MarkdownText(schema.Capital(stopped(more))))
			}
		}
	}
	if len(s.Windows) > 0 {
		b.WriteString("\n## When it sets\n\n| | from | to | |\n|---|---|---|---|\n")
		for _, x := range s.Windows {
			fmt.Fprintf(&b, "| %s | %s | %s | %s |\n", cell(join(", ", x.What, x.Pour)), x.From, or(x.To, "on"), cell(x.Note))
		}
	}

	if len(s.Burns) > 0 {
		b.WriteString("\n## Burned\n\n")
		for _, t := range s.Burns {
			fmt.Fprintf(&b, "- %s (`%s`): %s\n", MarkdownText(t.Candle), t.Formula, MarkdownText(join(" ", t.Status, burnFigures(t))))
		}
	}
	if len(s.Labels) > 0 {
		b.WriteString("\n## Label\n")
		for _, l := range s.Labels {
			fmt.Fprintf(&b, "\n%s%s:\n\n", MarkdownText(l.Title), onText(l))
			for _, text := range l.Lines {
				fmt.Fprintf(&b, "> %s  \n", MarkdownText(text))
			}
		}
	}
	for _, h := range s.Hazards {
		fmt.Fprintf(&b, "\n## %s\n\n", MarkdownText(hazardHeading(h)))
		for _, text := range hazardLines(h) {
			fmt.Fprintf(&b, "- %s\n", MarkdownText(text))
		}
	}
	list := func(heading string, lines []string) {
		if len(lines) == 0 {
			return
		}
		fmt.Fprintf(&b, "\n## %s\n\n", heading)
		for _, text := range lines {
			fmt.Fprintf(&b, "- %s\n", MarkdownText(text))
		}
	}
	list("Could not be checked", s.Unchecked)
	list("At the bench", s.Bench)
	list("When it is burned", s.Burning)
	fmt.Fprintf(&b, "\n%s\n", s.Deferral)
	_, err := io.WriteString(w, b.String())
	return err
}

// markdownSpecial is what would be read as markup in CommonMark.
var markdownSpecial = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "<", `&lt;`, "[", `\[`, "]", `\]`, "#", `\#`)

// MarkdownText is a text that shows as it is in CommonMark.
func MarkdownText(text string) string { return markdownSpecial.Replace(oneLine(text)) }

// cell is plain text in a table.
func cell(text string) string { return strings.ReplaceAll(MarkdownText(text), "|", `\|`) }

func strong(f Finding) string {
	if f.Conceded != "" {
		return f.Level + ", conceded"
	}
	return "**" + f.Level + "**"
}

func concededText(f Finding) string {
	if f.Conceded == "" {
		return ""
	}
	return ". Conceded: " + MarkdownText(f.Conceded)
}
