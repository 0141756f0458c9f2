package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

// manPage is the page that man shows of a verb, in the macros of man(7).
func manPage(v verb) string {
	m := manWriter{}
	m.head("wickrule-"+v.name, v.about)
	m.section("SYNOPSIS")
	use := `\fBwickrule ` + roff(v.name) + `\fR`
	flags := flagsOf(v)
	if len(flags) > 0 {
		use += ` [\fIFLAG\fR...]`
	}
	if v.takes != "" {
		use += ` ` + roff(v.takes)
	}
	m.line(use)
	m.section("DESCRIPTION")
	m.line(roff(schema.Capital(v.about) + "."))
	for paragraph := range strings.SplitSeq(v.help, "\n\n") {
		m.line(".PP")
		m.line(roff(paragraph))
	}
	if len(flags) > 0 {
		m.section("FLAGS")
		for _, f := range flags {
			value, _ := pflag.UnquoteUsage(f)
			m.item(strings.TrimRight(`\fB`+roff("--"+f.Name)+`\fR `+roff(value), " "), flagAbout(f))
		}
	}
	m.section("SEE ALSO")
	m.line(`\fBwickrule\fR(1)`)
	return m.String()
}

// manOverview is the page that man shows of the whole program.
func manOverview() string {
	m := manWriter{}
	m.head("wickrule", "check candle recipes")
	m.section("SYNOPSIS")
	m.line(`\fBwickrule\fR \fIVERB\fR [\fIFLAG\fR...] [\fIPATH\fR...]`)
	m.section("DESCRIPTION")
	m.line(roff(purpose))
	m.line(".PP")
	m.line(roff("What it does is said by a verb; each has a page of its own, such as wickrule-check(1)."))
	m.section("VERBS")
	var pages []string
	for _, v := range verbs() {
		m.item(`\fB`+roff(v.name)+`\fR`, v.about)
		pages = append(pages, `\fB`+roff("wickrule-"+v.name)+`\fR(1)`)
	}
	m.section("EXIT STATUS")
	m.item("0", "nothing speaks at must, or at the level asked for; the work is done")
	m.item("1", "something must be put right")
	m.item("2", "it did not work: a file that cannot be opened, a word that does not exist")
	m.section("FILES")
	m.item(`\fB*`+roff(lint.FileSuffix)+`\fR`, "recipes, what stands on the shelves, rules and trials: plain text")
	m.item(`\fB`+roff(lint.ShopFileName)+`\fR`, "makes its folder, and all below it, one shop")
	m.section("ENVIRONMENT")
	m.item(`\fBNO_COLOR\fR`, "where it is set and not empty, nothing is colored")
	m.section("CAUTION")
	m.line(roff(report.Caution))
	m.section("SEE ALSO")
	m.line(strings.Join(pages, ",\n"))
	return m.String()
}

// manWriter puts the lines of a page together.
type manWriter struct{ strings.Builder }

func (m *manWriter) line(text string)     { m.WriteString(text + "\n") }
func (m *manWriter) section(title string) { m.line(".SH " + title) }

func (m *manWriter) item(term, about string) {
	m.line(".TP")
	m.line(term)
	m.line(roff(about))
}

func (m *manWriter) head(name, about string) {
	m.line(fmt.Sprintf(`.TH "%s" 1 "%s" "wickrule %s"`, roff(strings.ToUpper(name)), released, roff(version())))
	m.section("NAME")
	m.line(roff(name) + ` \- ` + roff(about))
}

// roff writes text so that it reads the same on the page: hyphens stay what is
// typed at a prompt, and no line is taken for a macro.
func roff(text string) string {
	var lines []string
	for line := range strings.SplitSeq(roffEscapes.Replace(text), "\n") {
		if line = strings.TrimSpace(line); strings.HasPrefix(line, ".") || strings.HasPrefix(line, "'") {
			line = `\&` + line
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

var roffEscapes = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`, "`", `\(ga`, `"`, `\(dq`, "~", `\(ti`, "^", `\(ha`)
