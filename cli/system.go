package cli

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"golang.org/x/term"

	"wickrule/lint/report"
	"wickrule/rules"
)

// System is the environment of this process. Color goes to a terminal only,
// and not where NO_COLOR is set (no-color.org) or the terminal is a dumb one.
func System() (Env, error) {
	folder, err := os.Getwd()
	if err != nil {
		return Env{}, fmt.Errorf("the working folder cannot be told: %w", err)
	}
	env := Env{In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Folder: folder, Now: time.Now, Rules: rules.All()}
	width, ok := terminal(os.Stdout)
	if env.Terminal = ok; ok {
		env.Look = report.Look{Width: width, Color: os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"}
	}
	_, env.Watched = terminal(os.Stderr)
	env.Typed = term.IsTerminal(int(os.Stdin.Fd()))
	if own, err := os.UserConfigDir(); err == nil {
		env.Own = filepath.Join(own, "wickrule")
	}
	return env, nil
}

// terminal is the width of the terminal a stream goes to; false where it goes
// elsewhere.
func terminal(stream io.Writer) (width int, ok bool) {
	f, isFile := stream.(*os.File)
	if !isFile || !term.IsTerminal(int(f.Fd())) {
		return 0, false
	}
	width, _, err := term.GetSize(int(f.Fd()))
	if err != nil {
		return 0, true
	}
	return width, true
}
