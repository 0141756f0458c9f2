// Package cli is the command line: arguments, disk, terminal, clock and
// signals live here and nowhere else. Each verb has a file.
package cli

import (
	"context"
	"fmt"
	"io"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules"
	"wickrule/schema"
)

// Exit statuses.
const (
	Good      = 0 // nothing at or above the level asked for
	Found     = 1 // something must be put right
	NotWorked = 2 // could not check: bad usage, a file that cannot be opened, a fault
)

// Env is what the program is given from outside.
type Env struct {
	In       io.Reader
	Out, Err io.Writer
	Folder   string           // working folder, an absolute path of this system
	Own      string           // folder for what belongs to the user, an absolute path; "" there is none
	Now      func() time.Time // the clock
	Look     report.Look      // how text on Out is laid out
	Terminal bool             // Out is a terminal
	Typed    bool             // In is a terminal: what is typed shows by itself
	Watched  bool             // Err is a terminal: somebody sees progress
	Rules    []*lint.Rule     // the built-in rules, in handbook order
}

// Run does what the arguments say and returns the exit status. When ctx ends
// it stops: a file being written is finished, no further one is begun.
func Run(ctx context.Context, args []string, env Env) int {
	env.Err = &oneAtATime{to: env.Err}
	s := &session{Env: env, ctx: ctx, progress: progress{out: env.Err, watched: env.Watched, now: env.Now}}
	status := make(chan int, 1)
	go func() {
		defer func() {
			if reason := recover(); reason != nil {
				s.say("stopped by a fault of its own, which is worth a report: %v", reason)
				status <- NotWorked
			}
		}()
		status <- s.run(args)
	}()
	select {
	case code := <-status:
		return code
	case <-ctx.Done():
		s.writing.Lock()
		s.progress.erase()
		if s.asking.Load() {
			fmt.Fprintln(s.Err) // the question stands on an open line
			s.say("stopped here; what was answered is kept")
			return NotWorked
		}
		s.say("stopped before the end")
		return NotWorked
	}
}

// oneAtATime is a stream that the work writes to, and whoever stops it
// meanwhile.
type oneAtATime struct {
	mu sync.Mutex
	to io.Writer
}

func (w *oneAtATime) Write(text []byte) (int, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.to.Write(text)
}

// session is one run of the program.
type session struct {
	Env
	ctx      context.Context
	progress progress
	writing  sync.Mutex  // held while a file is written
	asking   atomic.Bool // somebody is asked something, and what was answered before is kept
}

// verb is one thing the program does.
type verb struct {
	name   string
	takes  string                  // what stands after the flags
	about  string                  // one line
	help   string                  // paragraphs
	offers func(*session) []string // the words that may stand after the flags; nil: files, or nothing
	live   bool                    // what it offers is another in each shop
	setup  func(flags *pflag.FlagSet) action
}

// action does the verb's work with what stands after the flags, and returns
// the exit status.
type action func(s *session, args []string) int

// verbs lists everything the program does, in the order help shows it.
func verbs() []verb {
	return []verb{
		checkVerb(), mendVerb(), formatVerb(),
		sheetVerb(), burnVerb(),
		proveVerb(), trialsVerb(), explainVerb(), drillVerb(), handbookVerb(),
		newVerb(), protectVerb(), lspVerb(),
		completionsVerb(), versionVerb(), helpVerb(),
	}
}

func verbNames() []string {
	var names []string
	for _, v := range verbs() {
		names = append(names, v.name)
	}
	return names
}

func findVerb(name string) (verb, bool) {
	for _, v := range verbs() {
		if v.name == name {
			return v, true
		}
	}
	return verb{}, false
}

func (s *session) run(args []string) int {
	if len(args) == 0 {
		fmt.Fprint(s.Err, overview(s.Look))
		return NotWorked
	}
	name, args := args[0], args[1:]
	switch name {
	case "-h", "--help":
		name = "help"
	case "--version":
		name = "version"
	}
	v, ok := findVerb(name)
	if !ok {
		s.say("there is no verb %q: %s. wickrule help lists them", name, schema.NearestOrKnown(name, verbNames(), `"`))
		return NotWorked
	}
	flags := pflag.NewFlagSet(v.name, pflag.ContinueOnError)
	flags.Usage = func() {}
	act := v.setup(flags)
	if err := flags.Parse(args); err != nil {
		if err == pflag.ErrHelp {
			fmt.Fprint(s.Out, page(v, s.Look))
			return Good
		}
		s.say("%s: %s. wickrule help %s shows how", v.name, flagTrouble(err, flags), v.name)
		return NotWorked
	}
	return act(s, flags.Args())
}

// say writes one sentence to the error stream.
func (s *session) say(format string, values ...any) {
	fmt.Fprintln(s.Err, "wickrule: "+report.Clean(fmt.Sprintf(format, values...)))
}

func (s *session) today() string { return s.Now().Format(time.DateOnly) }

// rulesFor is every rule that a shop is checked by: the built-in ones and its
// own.
func (s *session) rulesFor(shop *lint.Shop) []*lint.Rule {
	return append(slices.Clip(s.Rules), rules.Own(shop)...)
}
