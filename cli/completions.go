package cli

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/schema"
)

func completionsVerb() verb {
	return verb{
		name:  "completions",
		takes: "bash|zsh|fish",
		about: "print what a shell needs to complete wickrule's words",
		help: `In bash: source <(wickrule completions bash), for instance in ~/.bashrc.

In zsh: wickrule completions zsh > _wickrule, in a folder of $fpath.

In fish: wickrule completions fish > ~/.config/fish/completions/wickrule.fish

The keys of recipes and the shop's own rules are asked for while you type, by wickrule completions words VERB: it prints, one a line, what may stand after a verb in the shop around the working folder.`,
		offers: func(*session) []string { return shells() },
		setup:  func(*pflag.FlagSet) action { return completions },
	}
}

func shells() []string { return []string{"bash", "zsh", "fish"} }

func completions(s *session, args []string) int {
	if len(args) == 2 && args[0] == "words" {
		return completionWords(s, args[1])
	}
	if len(args) != 1 {
		s.say("completions needs the name of one shell: %s", strings.Join(shells(), ", "))
		return NotWorked
	}
	switch args[0] {
	case "bash":
		fmt.Fprint(s.Out, bashCompletions(s))
	case "zsh":
		fmt.Fprint(s.Out, zshCompletions(s))
	case "fish":
		fmt.Fprint(s.Out, fishCompletions(s))
	default:
		s.say("there are no completions for %q: %s", args[0], schema.NearestOrKnown(args[0], shells(), ""))
		return NotWorked
	}
	return Good
}

// flagsOf lists the flags of a verb.
func flagsOf(v verb) []*pflag.Flag {
	set := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	v.setup(set)
	var flags []*pflag.Flag
	set.VisitAll(func(f *pflag.Flag) { flags = append(flags, f) })
	return flags
}

func longNames(flags []*pflag.Flag) string {
	var names []string
	for _, f := range flags {
		names = append(names, "--"+f.Name)
	}
	return strings.Join(names, " ")
}

// completionWords prints what may stand after a verb here. What is no
// well-formed key is left out: a shell would read its signs as its own.
func completionWords(s *session, name string) int {
	v, ok := findVerb(name)
	if !ok {
		s.say("there is no verb %q: %s", name, schema.NearestOrKnown(name, verbNames(), `"`))
		return NotWorked
	}
	here := s.locate(".")
	if _, inShop := lint.ShopAbove(os.DirFS(here.volume), here.path); v.offers == nil || v.live && !inShop {
		return Good // to look through all folders below would take as long as they are many
	}
	for _, word := range v.offers(s) {
		if schema.IsKey(word) {
			fmt.Fprintln(s.Out, word)
		}
	}
	return Good
}

// askFor is the command that tells what may stand after a verb in the shop one
// is in.
func askFor(v verb) string { return "wickrule completions words " + v.name + " 2>/dev/null" }

// offered is what may stand after the verb's flags wherever one is; nil:
// files, or what the shop has.
func offered(s *session, v verb) []string {
	if v.offers == nil || v.live {
		return nil
	}
	return v.offers(s)
}

func bashCompletions(s *session) string {
	var b strings.Builder
	b.WriteString(`# Completions of wickrule for bash.
_wickrule() {
  local word="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}" verb="${COMP_WORDS[1]}" words=""
  COMPREPLY=()
  if [ "$word" = "=" ]; then word=""; before="= $before"; fi
  if [ "$before" = "=" ]; then before="${COMP_WORDS[COMP_CWORD-2]}"; fi
  before="${before#= }"
  if [ "$COMP_CWORD" -eq 1 ]; then
    words="` + strings.Join(verbNames(), " ") + `"
  else
    case "$verb $before" in
`)
	for _, v := range verbs() {
		for _, f := range flagsOf(v) {
			if c, ok := f.Value.(*choice); ok {
				fmt.Fprintf(&b, "      '%s --%s') words=%q ;;\n", v.name, f.Name, strings.Join(c.allowed, " "))
			} else if f.Value.Type() != "bool" {
				fmt.Fprintf(&b, "      '%s --%s') return ;;\n", v.name, f.Name)
			}
		}
	}
	b.WriteString(`    esac
    if [ -z "$words" ]; then
      case "$verb" in
`)
	for _, v := range verbs() {
		fmt.Fprintf(&b, "        %s)\n", v.name)
		if flags := longNames(flagsOf(v)); flags != "" {
			fmt.Fprintf(&b, "          if [ \"${word#-}\" != \"$word\" ]; then words=%q; fi\n", flags)
		}
		if words := offered(s, v); len(words) > 0 {
			fmt.Fprintf(&b, "          words=%q\n", strings.Join(words, " "))
		}
		if v.live {
			fmt.Fprintf(&b, "          if [ -z \"$words\" ]; then words=$(%s); fi\n", askFor(v))
		}
		b.WriteString("          ;;\n")
	}
	b.WriteString(`      esac
    fi
  fi
  # Without words of ours, bash completes files.
  if [ -n "$words" ]; then
    local IFS=$' \n'
    COMPREPLY=($(compgen -W "$words" -- "$word"))
  fi
}
complete -o default -F _wickrule wickrule
`)
	return b.String()
}

func zshCompletions(s *session) string {
	var b strings.Builder
	b.WriteString(`#compdef wickrule
# Completions of wickrule for zsh.
_wickrule() {
  local verb=$words[2] before=$words[CURRENT-1]
  local -a list
  if (( CURRENT == 2 )); then
    list=(
`)
	for _, v := range verbs() {
		fmt.Fprintf(&b, "      %s\n", quoted(v.name+":"+v.about))
	}
	b.WriteString(`    )
    _describe -t verbs verb list
    return
  fi
  case "$verb $before" in
`)
	for _, v := range verbs() {
		for _, f := range flagsOf(v) {
			if c, ok := f.Value.(*choice); ok {
				fmt.Fprintf(&b, "    '%s --%s') compadd -- %s; return ;;\n", v.name, f.Name, strings.Join(c.allowed, " "))
			} else if f.Value.Type() != "bool" {
				fmt.Fprintf(&b, "    '%s --%s') _files; return ;;\n", v.name, f.Name)
			}
		}
	}
	b.WriteString("  esac\n  case $verb in\n")
	for _, v := range verbs() {
		fmt.Fprintf(&b, "    %s)\n", v.name)
		if flags := flagsOf(v); len(flags) > 0 {
			b.WriteString("      if [[ $words[CURRENT] == -* ]]; then\n        list=(\n")
			for _, f := range flags {
				_, about := pflag.UnquoteUsage(f)
				fmt.Fprintf(&b, "          %s\n", quoted("--"+f.Name+":"+strings.ReplaceAll(about, ":", `\:`)))
			}
			b.WriteString("        )\n        _describe -t flags flag list\n        return\n      fi\n")
		}
		if words := offered(s, v); len(words) > 0 {
			fmt.Fprintf(&b, "      compadd -- %s\n", strings.Join(words, " "))
		} else if v.live {
			fmt.Fprintf(&b, "      compadd -- ${(f)\"$(%s)\"} || _files\n", askFor(v))
		} else if v.takes != "" {
			b.WriteString("      _files\n")
		}
		b.WriteString("      ;;\n")
	}
	b.WriteString(`  esac
}
if [[ $funcstack[1] == _wickrule ]]; then
  _wickrule "$@"
else
  compdef _wickrule wickrule
fi
`)
	return b.String()
}

func fishCompletions(s *session) string {
	var b strings.Builder
	b.WriteString("# Completions of wickrule for fish.\n")
	for _, v := range verbs() {
		fmt.Fprintf(&b, "complete -c wickrule -f -n __fish_use_subcommand -a %s -d %s\n", v.name, quoted(v.about))
	}
	for _, v := range verbs() {
		when := "-n '__fish_seen_subcommand_from " + v.name + "'"
		for _, f := range flagsOf(v) {
			_, about := pflag.UnquoteUsage(f)
			value := ""
			if c, ok := f.Value.(*choice); ok {
				value = " -x -a " + quoted(strings.Join(c.allowed, " "))
			} else if f.Value.Type() != "bool" {
				value = " -r -F"
			}
			fmt.Fprintf(&b, "complete -c wickrule %s -l %s%s -d %s\n", when, f.Name, value, quoted(about))
		}
		if words := offered(s, v); len(words) > 0 {
			fmt.Fprintf(&b, "complete -c wickrule %s -f -a %s\n", when, quoted(strings.Join(words, " ")))
		}
		if v.live {
			fmt.Fprintf(&b, "complete -c wickrule %s -a %s\n", when, quoted("("+askFor(v)+")"))
		}
	}
	return b.String()
}

// quoted is a text in single quotes, as the three shells read it.
func quoted(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }
