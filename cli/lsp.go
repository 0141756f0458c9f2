package cli

import (
	"errors"
	"io/fs"
	"os"
	"runtime/debug"
	"syscall"

	"github.com/spf13/pflag"

	"wickrule/lsp"
)

func lspVerb() verb {
	return verb{
		name:  "lsp",
		about: "serve an editor (Language Server Protocol)",
		help: `Speaks the Language Server Protocol on standard input and output, for an editor that starts it: findings while you type,
the figures beside the numbers, the repair one key away. The folder editors/ holds set-ups to copy.

There is nothing to be typed here: without an editor at the other end it waits.`,
		setup: func(flags *pflag.FlagSet) action {
			flags.Bool("stdio", false, "what some editors add; it changes nothing")
			return serveEditor
		},
	}
}

func serveEditor(s *session, args []string) int {
	if len(args) > 0 {
		s.say("lsp takes nothing after it: the editor says over standard input what it wants")
		return NotWorked
	}
	// The protocol has standard output to itself: what anything else would print
	// there goes to the error stream.
	os.Stdout = os.Stderr
	if os.Getenv("GOGC") == "" {
		// Room for garbage is worth less here than an edit that waits for its collection.
		debug.SetGCPercent(200)
	}
	return lsp.Serve(s.ctx, s.In, s.Out, lsp.Config{
		Disk:    wholeDisk(),
		Folder:  folderOfDisk,
		Rules:   s.rulesFor,
		Today:   s.today,
		Alive:   alive,
		Log:     s.say,
		Version: version(),
	})
}

// alive says whether a process still runs. One that may not be signaled does,
// and so does one that was found where processes cannot be signaled at all, as
// on Windows.
func alive(id int) bool {
	p, err := os.FindProcess(id)
	if err != nil {
		return false
	}
	defer p.Release()
	err = p.Signal(syscall.Signal(0))
	return err == nil || errors.Is(err, fs.ErrPermission) || errors.Is(err, errors.ErrUnsupported)
}
