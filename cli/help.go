package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint/report"
	"wickrule/rules/sheet"
	"wickrule/schema"
)

// The help topics that are the JSON Schemas of what is written for programs.
const (
	jsonForm  = "json-schema"
	sheetForm = "sheet-json-schema"
)

func helpVerb() verb {
	return verb{
		name:   "help",
		takes:  "[VERB]",
		about:  "show how a verb is used",
		help:   "Without a VERB it lists them. wickrule help " + jsonForm + " prints the JSON Schema (2020-12) of what check --report json writes, wickrule help " + sheetForm + " that of sheet --format json.",
		offers: func(*session) []string { return append(verbNames(), jsonForm, sheetForm) },
		setup: func(flags *pflag.FlagSet) action {
			man := flags.Bool("man", false, "print the page that man(1) shows, to be kept as wickrule.1 or wickrule-VERB.1")
			return func(s *session, args []string) int { return help(s, *man, args) }
		},
	}
}

func help(s *session, man bool, args []string) int {
	switch {
	case len(args) == 0 && man:
		fmt.Fprint(s.Out, manOverview())
		return Good
	case len(args) == 0:
		fmt.Fprint(s.Out, overview(s.Look))
		return Good
	case len(args) > 1:
		s.say("help takes one verb")
		return NotWorked
	case args[0] == jsonForm:
		fmt.Fprint(s.Out, report.Schema)
		return Good
	case args[0] == sheetForm:
		fmt.Fprint(s.Out, sheet.Schema)
		return Good
	}
	v, ok := findVerb(args[0])
	if !ok {
		s.say("there is no verb %q: %s", args[0], schema.NearestOrKnown(args[0], verbNames(), `"`))
		return NotWorked
	}
	if man {
		fmt.Fprint(s.Out, manPage(v))
		return Good
	}
	fmt.Fprint(s.Out, page(v, s.Look))
	return Good
}

// purpose says in a sentence what the program is for.
const purpose = "Wickrule reads candle recipes and says where they would go wrong: loads, temperatures, wicks, seals, labels, burn tests."

// overview is the list of verbs.
func overview(look report.Look) string {
	p := report.NewPage(look)
	p.Wrap("", 0, purpose)
	p.Blank()
	for _, v := range verbs() {
		p.Wrap("  "+v.name, 16, v.about)
	}
	p.Blank()
	p.Wrap("", 0, "wickrule help VERB tells more about one of them. wickrule check, in a folder of recipes, is where to begin; wickrule new my-candles makes such a folder.")
	p.Blank()
	p.Wrap("", 0, report.Caution)
	return p.String()
}

// page is how one verb is used.
func page(v verb, look report.Look) string {
	flags := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	v.setup(flags)
	p := report.NewPage(look)
	use := "wickrule " + v.name
	if v.takes != "" {
		use += " " + v.takes
	}
	p.Heading(use)
	p.Blank()
	p.Wrap("", 2, schema.Capital(v.about)+".")
	for paragraph := range strings.SplitSeq(v.help, "\n\n") {
		p.Blank()
		p.Wrap("", 2, paragraph)
	}
	first := true
	flags.VisitAll(func(f *pflag.Flag) {
		if first {
			p.Blank()
			first = false
		}
		p.Wrap("  "+flagUse(f), 20, flagAbout(f))
	})
	return p.String()
}

func flagUse(f *pflag.Flag) string {
	value, _ := pflag.UnquoteUsage(f)
	return strings.TrimRight("--"+f.Name+" "+value, " ")
}

func flagAbout(f *pflag.Flag) string {
	_, about := pflag.UnquoteUsage(f)
	if c, ok := f.Value.(*choice); ok {
		about += fmt.Sprintf(" (%s; %s where it is not said)", strings.Join(c.allowed, ", "), c.word)
	}
	return about
}
