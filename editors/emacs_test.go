package editors

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestEmacs(t *testing.T) {
	for _, command := range commands(t, "EDITORS_EMACS", "emacs") {
		t.Run(versionOf(t, command), func(t *testing.T) {
			for _, needed := range []string{"emacsclient", "script"} {
				if _, err := exec.LookPath(needed); err != nil {
					missing(t, needed+" is not installed")
				}
			}
			if out, err := exec.Command(command, "--batch", "-f", "package-initialize", "--eval", "(require 'eglot)").CombinedOutput(); err != nil {
				missing(t, "this Emacs has no eglot: "+string(out))
			}
			bin, recordings := recorded(t)
			shop := prepared(t)
			e := startEmacs(t, command, bin)
			work(t, shop, e)
			e.quit()
			valid(t, recordings)
		})
	}
}

// emacs is one in a terminal of its own: keys are typed there, and what it
// holds is asked for through its server.
type emacs struct {
	t       *testing.T
	keys    io.WriteCloser
	sockets string
	cmd     *exec.Cmd
	screen  screen
	undone  string // the text before the last completion
}

// startEmacs starts one that has the package of this folder installed as a maker
// would install it, and whose init file has the lines given and loads what the
// test asks with.
func startEmacs(t *testing.T, command, bin string, more ...string) *emacs {
	t.Helper()
	home, err := os.MkdirTemp("", "e-") // short, since names of sockets are
	require.NoError(t, err)
	t.Cleanup(func() { os.RemoveAll(home) })
	here, err := os.Getwd()
	require.NoError(t, err)
	installPackage(t, command, home)
	// Packages are loaded between the two, and what they say of being compiled
	// to machine code would come to lie over the recipe.
	early := "(setq native-comp-deferred-compilation nil native-comp-jit-compilation nil native-comp-enable-subr-trampolines nil)\n"
	init := fmt.Sprintf("%s\n(load %q)\n", strings.Join(more, "\n"), filepath.Join(here, "testdata/driver.el"))
	require.NoError(t, os.WriteFile(home+"/.emacs.d/early-init.el", []byte(early), 0o644))
	require.NoError(t, os.WriteFile(home+"/.emacs.d/init.el", []byte(init), 0o644))
	e := &emacs{t: t, sockets: home + "/s"}
	require.NoError(t, os.Mkdir(e.sockets, 0o700))
	e.cmd = exec.Command("script", "-qfc", "stty rows 50 cols 160; exec "+command+" -nw", "/dev/null")
	e.cmd.Env = append(os.Environ(), "HOME="+home, "TERM=screen", "LC_ALL=C.UTF-8", "DRIVER_SOCKETS="+e.sockets,
		"PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	e.cmd.Stdout = &e.screen
	e.keys, err = e.cmd.StdinPipe()
	require.NoError(t, err)
	require.NoError(t, e.cmd.Start())
	t.Cleanup(func() {
		if e.cmd.ProcessState == nil {
			e.ask(`(kill-emacs)`)
			e.cmd.Process.Kill()
			e.cmd.Wait()
		}
		if t.Failed() {
			t.Logf("%.6000s", e.screen.last(6000))
		}
	})
	eventually(t, "Emacs", func() (any, bool) {
		_, err := e.ask("t") // the socket is there before anybody listens
		return err, err == nil
	})
	return e
}

// installPackage installs the package of this folder for the person whose home
// it is, and is what Emacs said about that.
func installPackage(t *testing.T, command, home string) string {
	t.Helper()
	file, err := filepath.Abs("emacs/wickrule.el")
	require.NoError(t, err)
	require.NoError(t, os.MkdirAll(home+"/.emacs.d", 0o755))
	return batch(t, command, home, "--eval", "(package-install-file "+lisp(file)+")")
}

// batch has an Emacs without a screen do something, for the person whose home
// it is, and is what it said.
func batch(t *testing.T, command, home string, args ...string) string {
	t.Helper()
	cmd := exec.Command(command, append([]string{"--batch", "-f", "package-initialize"}, args...)...)
	cmd.Env = append(os.Environ(), "HOME="+home)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
	return string(out)
}

func (e *emacs) quit() {
	e.ask(`(let ((kill-emacs-query-functions nil)) (run-with-timer 0.1 nil #'kill-emacs) "")`)
	done := make(chan error, 1)
	go func() { done <- e.cmd.Wait() }()
	select {
	case <-done:
	case <-time.After(20 * time.Second):
		require.Fail(e.t, "the editor does not end")
	}
}

// screen is what a terminal was sent.
type screen struct {
	mu   sync.Mutex
	sent bytes.Buffer
}

func (s *screen) Write(data []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.sent.Write(data)
}

func (s *screen) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.sent.String()
}

func (s *screen) forget() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.sent.Reset()
}

func (s *screen) last(bytes int) string {
	text := s.String()
	return text[max(0, len(text)-bytes):]
}

// ask has a form evaluated.
func (e *emacs) ask(form string) (string, error) {
	ctx, cancel := context.WithTimeout(context.Background(), 15*time.Second)
	defer cancel()
	out, err := exec.CommandContext(ctx, "emacsclient", "-s", e.sockets+"/driver", "--eval", form).CombinedOutput()
	if err != nil {
		err = fmt.Errorf("%w: %s", err, out)
	}
	return strings.TrimSpace(string(out)), err
}

// in evaluates a form in the buffer that is shown, and reads its value.
func (e *emacs) in(form string, value any) {
	e.t.Helper()
	_, err := e.ask("(driver-in " + form + ")")
	require.NoError(e.t, err, form)
	data, err := os.ReadFile(e.sockets + "/answer")
	require.NoError(e.t, err)
	var list []json.RawMessage
	require.NoError(e.t, json.Unmarshal(data, &list), string(data))
	if value != nil {
		require.NoError(e.t, json.Unmarshal(list[0], value), string(data))
	}
}

// input types keys, one after the other.
func (e *emacs) input(keys ...string) {
	e.t.Helper()
	for _, key := range keys {
		_, err := io.WriteString(e.keys, key)
		require.NoError(e.t, err)
		time.Sleep(10 * time.Millisecond)
	}
}

func lisp(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(text) + `"`
}

func (e *emacs) open(path string) {
	e.t.Helper()
	e.in(`(progn (setq driver-path `+lisp(path)+`) nil)`, nil)
	e.input("\x03", "o")
	eventually(e.t, "the server", func() (any, bool) {
		var seen string
		e.in(`(format "%s %s" (buffer-file-name) (if (and (fboundp 'eglot-managed-p) (eglot-managed-p) (equal (file-truename (buffer-file-name)) `+lisp(path)+`)) "ready" (with-current-buffer "*Messages*" (driver-text))))`, &seen)
		return seen, strings.HasSuffix(seen, "ready")
	})
}

func (e *emacs) text() (text string) {
	e.t.Helper()
	e.in(`(driver-text)`, &text)
	return text
}

func (e *emacs) cursor(piece string, further int) {
	e.t.Helper()
	var found bool
	e.in(fmt.Sprintf(`(driver-cursor %s %d)`, lisp(piece), further), &found)
	require.True(e.t, found, piece)
}

func (e *emacs) replace(old, new string) {
	e.t.Helper()
	e.cursor(old, 0)
	for range []rune(old) {
		e.input("\x04") // C-d
	}
	e.typed(new)
	eventually(e.t, "the typed text", func() (any, bool) { text := e.text(); return text, strings.Contains(text, new) })
}

func (e *emacs) typed(text string) {
	for _, r := range text {
		e.input(string(r))
	}
}

func (e *emacs) findings() (list []finding) {
	e.t.Helper()
	e.in(`(driver-findings)`, &list)
	if list == nil {
		list = []finding{}
	}
	return list
}

func (e *emacs) hover() (text string) {
	e.t.Helper()
	e.input("\x03", "h")
	eventually(e.t, "the hover", func() (any, bool) {
		e.in(`(driver-hover)`, &text)
		return text, strings.Contains(text, "of total")
	})
	e.input("\x18", "1") // C-x 1
	return text
}

func (e *emacs) complete(after, typed string) (offers []string) {
	e.t.Helper()
	e.undone = e.text()
	e.cursor(after, 0)
	e.input("\x05", "\r") // C-e RET
	e.typed(typed)
	eventually(e.t, "what was typed", func() (any, bool) { text := e.text(); return text, strings.Contains(text, typed) })
	e.in(`(driver-offers)`, &offers)
	e.input("\x1b\t") // M-TAB
	eventually(e.t, "the completion", func() (any, bool) {
		text := e.text()
		return text, len(offers) > 0 && strings.Contains(text, offers[0]+`"`)
	})
	return offers
}

func (e *emacs) undo() {
	e.t.Helper()
	for range 40 {
		if e.text() == e.undone {
			return
		}
		e.input("\x1f") // C-_
		time.Sleep(20 * time.Millisecond)
	}
}

func (e *emacs) act(title string) (titles []string) {
	e.t.Helper()
	e.in(`(setq driver-titles nil driver-wanted `+lisp(title)+`)`, nil)
	e.input("\x03", "a")
	eventually(e.t, "the actions", func() (any, bool) {
		e.in(`(vconcat driver-titles)`, &titles)
		return e.screen.last(500), len(titles) > 0
	})
	return titles
}

func (e *emacs) rename(to string) {
	e.t.Helper()
	e.in(`(progn (setq driver-name `+lisp(to)+`) nil)`, nil)
	e.screen.forget()
	e.input("\x03", "r")
	// It shows the files and asks. A question of emacsclient meanwhile would end
	// that, so that the screen is looked at.
	eventually(e.t, "the question whether to rename, or the new name", func() (any, bool) {
		shown := e.screen.String()
		if strings.Contains(shown, "Proceed? (") {
			e.input("y")
			return shown, true
		}
		return shown, strings.Contains(shown, to[strings.LastIndex(to, "-")+1:])
	})
}

func (e *emacs) layOut() { e.t.Helper(); e.input("\x03", "f") }

func (e *emacs) hints() (list []string, can bool) {
	e.t.Helper()
	e.in(`(if (fboundp 'eglot-inlay-hints-mode) t :json-false)`, &can)
	if can {
		e.in(`(driver-hints)`, &list)
	}
	return list, can
}

func (e *emacs) lenses() ([]string, bool) { return nil, false } // eglot shows none

func (e *emacs) symbols() (list []string) {
	e.t.Helper()
	e.in(`(driver-symbols)`, &list)
	return list
}

func (e *emacs) save() { e.t.Helper(); e.in(`(progn (save-some-buffers t) nil)`, nil) }
