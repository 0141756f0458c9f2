package editors

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// eachEmacs runs a test for every Emacs there is.
func eachEmacs(t *testing.T, try func(t *testing.T, command string)) {
	for _, command := range commands(t, "EDITORS_EMACS", "emacs") {
		t.Run(versionOf(t, command), func(t *testing.T) { try(t, command) })
	}
}

// The package compiles without a warning, and its comments and docstrings are
// in the form that Emacs asks for (checkdoc).
func TestEmacsPackageIsInOrder(t *testing.T) {
	eachEmacs(t, func(t *testing.T, command string) {
		text, err := os.ReadFile("emacs/wickrule.el")
		require.NoError(t, err)
		file := filepath.Join(t.TempDir(), "wickrule.el")
		require.NoError(t, os.WriteFile(file, text, 0o644))
		batch(t, command, t.TempDir(), "--eval", "(setq byte-compile-error-on-warn t)", "-f", "batch-byte-compile", file)
		require.FileExists(t, file+"c")
		said := batch(t, command, t.TempDir(), "--eval", `(checkdoc-file "`+file+`")`)
		assert.NotContains(t, said, "wickrule.el:", said)
		// And checkdoc is one that speaks.
		require.NoError(t, os.WriteFile(file, []byte(strings.Replace(string(text), `"Start the language server anew.`, `"Starts the language server anew.`, 1)), 0o644))
		assert.Contains(t, batch(t, command, t.TempDir(), "--eval", `(checkdoc-file "`+file+`")`), "wickrule.el:")
	})
}

// In a home with nothing in it, it is installed without a complaint, and nothing
// has to be written into an init file: the commands are there, and recipes are
// opened in its mode.
func TestEmacsPackageInstalls(t *testing.T) {
	about, err := os.ReadFile("vscode/package.json")
	require.NoError(t, err)
	version := regexp.MustCompile(`"version": "([^"]+)"`).FindSubmatch(about)
	eachEmacs(t, func(t *testing.T, command string) {
		home := t.TempDir()
		said := installPackage(t, command, home)
		assert.NotRegexp(t, `(?m)^wickrule\.el:.*(Warning|Error)`, said) // Emacs 30 warns of a file that it wrote itself
		said = batch(t, command, home, "--eval", `(progn
  (setq wickrule-program "/nowhere")
  (princ (format "version: %s\n" (package-version-join (package-desc-version (cadr (assq 'wickrule package-alist))))))
  (princ (format "loaded: %s\n" (featurep 'wickrule)))
  (dolist (name '(wickrule-mode wickrule-sheet wickrule-explain wickrule-handbook wickrule-mend-file wickrule-mend-shop wickrule-health))
    (princ (format "%s: %s %s\n" name (autoloadp (symbol-function name)) (commandp name))))
  (find-file (expand-file-name "a.candle.hcl" temporary-file-directory))
  (princ (format "opened: %s %s\n" major-mode (and (derived-mode-p 'prog-mode) t)))
  (insert "title = \"Tide\"")
  (comment-region (point-min) (point-max))
  (princ (format "remark: %s\n" (buffer-string)))
  (uncomment-region (point-min) (point-max))
  (princ (format "none: %s\n" (buffer-string))))`)
		for _, want := range []string{
			"version: " + string(version[1]) + "\n", "loaded: nil\n", "opened: wickrule-mode t\n", "remark: # title = \"Tide\"\n", "none: title = \"Tide\"\n",
			"wickrule-mode: t t\n", "wickrule-sheet: t t\n", "wickrule-explain: t t\n", "wickrule-handbook: t t\n", "wickrule-mend-file: t t\n", "wickrule-mend-shop: t t\n", "wickrule-health: t t\n",
		} {
			assert.Contains(t, said, want)
		}
	})
}

// What a piece is colored as, and what is text and what a remark.
func TestEmacsColors(t *testing.T) {
	eachEmacs(t, func(t *testing.T, command string) {
		said := batch(t, command, t.TempDir(), "-l", "emacs/wickrule.el", "--eval", `(with-temp-buffer
  (setq wickrule-program "/nowhere")
  (insert "# a remark \"here\"\nrecipe \"tide-pillar\" { // and another\n  title = \"Tide\"\n  /* long\n     no = \"no\" */\n  made_for_candles = true\n  fill = \"168 to 182 °F\"\n}\nrule \"own\" {\n  because = <<-EOT\n    3 \" of putty # no remark { \n  EOT\n  when = pour.at <= degrees(\"10 °F\")\n}\n")
  (wickrule-mode)
  (font-lock-ensure)
  (dolist (piece '("a remark" "here" "and another" "long" "no = " "recipe" "tide-pillar" "title" "made_for" "true" "168 to" "rule" "because" "of putty" "no remark" "when" "degrees"))
    (goto-char (point-min))
    (search-forward piece)
    (princ (format "%s: %s\n" piece (get-text-property (match-beginning 0) 'face))))
  (princ (format "depth: %s" (nth 0 (syntax-ppss (point-max))))))`)
		// A face is sometimes in a list of one.
		said = regexp.MustCompile(`\((font-lock-[a-z-]+)(?: font-lock-string-face)?\)`).ReplaceAllString(said, "$1")
		for _, want := range []string{
			"a remark: font-lock-comment-face", "here: font-lock-comment-face", "and another: font-lock-comment-face", "long: font-lock-comment-face", "no = : font-lock-comment-face",
			"recipe: font-lock-keyword-face", "tide-pillar: font-lock-string-face", "title: font-lock-variable-name-face", "made_for: font-lock-variable-name-face",
			"true: font-lock-constant-face", "168 to: font-lock-constant-face", "rule: font-lock-keyword-face", "because: font-lock-variable-name-face",
			"of putty: font-lock-string-face", "no remark: font-lock-string-face", "when: font-lock-variable-name-face", "degrees: font-lock-function-name-face", "depth: 0",
		} {
			assert.Contains(t, said, want+map[bool]string{true: "", false: "\n"}[strings.HasPrefix(want, "depth")])
		}
	})
}

// Every file of the demo shop is indented as it is laid out, also from nothing.
func TestEmacsIndents(t *testing.T) {
	folder := t.TempDir()
	tried := 0
	for name, text := range texts(t, prepared(t)) {
		if strings.Contains(text, "<<") {
			continue // prose is left as it is
		}
		flat := regexp.MustCompile(`(?m)^ +`).ReplaceAllString(text, "")
		if flat == text {
			continue
		}
		path := filepath.Join(folder, strings.ReplaceAll(name, "/", "_"))
		require.NoError(t, os.WriteFile(path+".want", []byte(text), 0o644))
		require.NoError(t, os.WriteFile(path, []byte(flat), 0o644))
		tried++
	}
	require.Greater(t, tried, 20)
	eachEmacs(t, func(t *testing.T, command string) {
		said := batch(t, command, t.TempDir(), "-l", "emacs/wickrule.el", "--eval", `(progn
  (setq wickrule-program "/nowhere" coding-system-for-read 'utf-8)
  (dolist (file (directory-files "`+folder+`" t "hcl\\'"))
    (with-temp-buffer
      (insert-file-contents file)
      (let ((inhibit-message t)) (wickrule-mode) (indent-region (point-min) (point-max)))
      (let ((got (buffer-string)))
        (erase-buffer)
        (insert-file-contents (concat file ".want"))
        (princ (if (equal got (buffer-string)) "as laid out\n" (format "not laid out: %s\n%s" file got)))))))`)
		assert.NotContains(t, said, "not laid out")
		assert.Equal(t, tried, strings.Count(said, "as laid out\n"))
	})
}

// page waits until a page of a name is shown, and is its text.
func (e *emacs) page(name, words string) (text string) {
	e.t.Helper()
	eventually(e.t, name, func() (any, bool) {
		var shown string
		e.in(`(buffer-name)`, &shown)
		text = e.text()
		return shown + e.screen.last(300), shown == "*"+name+"*" && strings.Contains(text, words)
	})
	return text
}

// call calls a command by its name.
func (e *emacs) call(command string) {
	e.t.Helper()
	e.in(`(progn (setq driver-command '`+command+`) nil)`, nil)
	e.input("\x03", "x")
}

func (e *emacs) says(words string) {
	e.t.Helper()
	eventually(e.t, "a message", func() (any, bool) {
		var said string
		e.in(`(with-current-buffer "*Messages*" (driver-text))`, &said)
		return said, strings.Contains(said, words)
	})
}

func TestEmacsCommands(t *testing.T) {
	eachEmacs(t, func(t *testing.T, command string) {
		shop := prepared(t)
		e := startEmacs(t, command, filepath.Dir(program(t)), `(setq browse-url-browser-function (lambda (url &rest _) (setq driver-opened url)))`)
		e.open(filepath.Join(shop, tide))
		was := e.text()
		eventually(t, "a recipe without findings", func() (any, bool) { f := e.findings(); return f, len(f) == 0 })

		// The sheet, also of what was typed a moment ago.
		e.cursor(`step "melt"`, 0)
		e.input("\x03\x13") // C-c C-s
		e.page("batch sheet tide-pillar", "Tide and thyme pillar")
		e.input("q")
		eventually(t, "the recipe", func() (any, bool) { text := e.text(); return text, text == was })
		e.replace("5 % of wax", "7 % of wax")
		e.input("\x03\x13")
		e.page("batch sheet tide-pillar", "Do not pour or sell it like this")
		e.input("q")

		// The rule of what is found.
		eventually(t, "the finding", func() (any, bool) { f := e.findings(); return f, len(f) == 2 })
		e.cursor("7 % of wax", 2)
		e.input("\x03\x05") // C-c C-e
		e.page("rule fragrance-over-limit", "To put it right")
		e.input("q")
		e.cursor("7 % of wax", 2)
		e.input("\x03\x02") // C-c C-b
		eventually(t, "the page in the handbook", func() (any, bool) {
			var opened string
			e.in(`(or (bound-and-true-p driver-opened) "")`, &opened)
			_, err := os.Stat(strings.TrimPrefix(opened, "file://"))
			return opened + e.screen.last(500), err == nil && strings.HasSuffix(opened, "/rule-fragrance-over-limit.html")
		})
		// Where nothing is found it is asked for, with the shop's own rules offered.
		e.cursor(`title `, 0)
		e.in(`(setq driver-titles nil driver-wanted "fresh-putty-for-hot-pours")`, nil)
		e.input("\x03\x05")
		e.page("rule fresh-putty-for-hot-pours", "Putty")
		e.input("q")
		var offered []string
		e.in(`(vconcat driver-titles)`, &offered)
		assert.Subset(t, offered, []string{"fresh-putty-for-hot-pours", "fragrance-over-limit", "lead-core"})

		// Mending, and undoing that.
		e.replace("7 % of wax", "5 % of wax")
		e.replace(`"trim base"`, `"trim bsae"`)
		slipped := e.text()
		eventually(t, "the slip", func() (any, bool) { f := e.findings(); return f, len(f) == 1 && f[0].Code == "unknown-step" })
		e.input("\x03\x12") // C-c C-r
		eventually(t, "the slip to go", func() (any, bool) { text := e.text(); return text + e.screen.last(500), text == was })
		e.undone = slipped
		e.undo()
		assert.Equal(t, slipped, e.text())
		e.call("wickrule-mend-shop")
		eventually(t, "the slip to go", func() (any, bool) { text := e.text(); return text + e.screen.last(500), text == was })
		e.quit()
	})
}

// Files without a recipe of the shop, files that are no recipes.
func TestEmacsSaysWhatIsMissing(t *testing.T) {
	eachEmacs(t, func(t *testing.T, command string) {
		shop := prepared(t)
		e := startEmacs(t, command, filepath.Dir(program(t)))
		e.open(filepath.Join(shop, waxes))
		e.input("\x03\x13")
		e.says("There is no recipe in this file")
		rules, err := filepath.Glob(filepath.Join(shop, "rules/*.candle.hcl"))
		require.NoError(t, err)
		e.open(rules[0])
		e.cursor(`recipe "`, 0)
		e.in(`(with-current-buffer "*Messages*" (let ((inhibit-read-only t)) (erase-buffer) nil))`, nil)
		e.input("\x03\x13")
		e.says("There is no recipe in this file")
		e.input("\x18", "b", "*scratch*", "\r") // C-x b
		eventually(t, "another buffer", func() (any, bool) {
			var shown string
			e.in(`(buffer-name)`, &shown)
			return shown, shown == "*scratch*"
		})
		e.call("wickrule-mend-file")
		e.says("Open a recipe file first: its name ends in .candle.hcl")
	})
}

// Settings count from the next start of the server on.
func TestEmacsRestarts(t *testing.T) {
	eachEmacs(t, func(t *testing.T, command string) {
		shop := prepared(t)
		e := startEmacs(t, command, filepath.Dir(program(t)), `(setq wickrule-hints nil)`)
		e.open(filepath.Join(shop, tide))
		e.replace("5 % of wax", "6 % of wax")
		eventually(t, "the findings", func() (any, bool) {
			f := codes(e.findings())
			return f, assert.ObjectsAreEqual([]string{"fragrance-near-limit", "test-burn-stale"}, f) // the first is worth considering
		})
		hints, _ := e.hints()
		assert.Empty(t, hints)
		e.in(`(setq wickrule-level "must" wickrule-hints t)`, nil)
		e.call("wickrule-restart")
		eventually(t, "the must alone", func() (any, bool) {
			e.input("\x06") // C-f: Emacs marks when a key is pressed
			f := codes(e.findings())
			return f, assert.ObjectsAreEqual([]string{"test-burn-stale"}, f)
		})
		if _, can := e.hints(); can {
			e.replace("6 % of wax", "4 % of wax") // Eglot asks for them when something is typed
			eventually(t, "the hints", func() (any, bool) { hints, _ := e.hints(); return hints, len(hints) > 0 })
		}
	})
}

// Where there is no program, it is said once what to do.
func TestEmacsWithoutTheProgram(t *testing.T) {
	eachEmacs(t, func(t *testing.T, command string) {
		shop := prepared(t)
		e := startEmacs(t, command, t.TempDir(), `(setq exec-path (seq-remove (lambda (d) (file-exists-p (expand-file-name "wickrule" (or d ".")))) exec-path))`)
		show := func(name string) {
			e.in(`(setq driver-path `+lisp(filepath.Join(shop, name))+`)`, nil)
			e.input("\x03", "o")
		}
		warnings := func() (text string) {
			e.in(`(if (get-buffer "*Warnings*") (with-current-buffer "*Warnings*" (driver-text)) "")`, &text)
			return text
		}
		show(tide)
		what := "There is no program wickrule on the PATH: put it there, or say where it is in wickrule-program"
		eventually(t, "what to do", func() (any, bool) { text := warnings(); return text, strings.Contains(text, what) })
		e.call("wickrule-health")
		e.page("wickrule health", what)
		e.input("q")
		show(waxes)
		eventually(t, "the shelf", func() (any, bool) { text := e.text(); return text, strings.Contains(text, "northlight-pillar") })
		assert.Equal(t, 1, strings.Count(warnings(), what))
		e.input("\x03\x13")
		e.says(what)
		e.in(`(setq wickrule-program `+lisp(program(t))+`)`, nil)
		e.call("wickrule-restart")
		e.open(filepath.Join(shop, tide))
		e.call("wickrule-health")
		version, err := exec.Command(program(t), "version").Output()
		require.NoError(t, err)
		text := e.page("wickrule health", program(t)+": "+strings.TrimSpace(string(version)))
		assert.Contains(t, text, filepath.Join(shop, tide)+"` has its server, and is of the shop in `"+shop+"/`")
		assert.NotContains(t, text, "no server")
		// A program that is there and is not the right one.
		e.in(`(setq wickrule-program "false")`, nil)
		e.call("wickrule-health")
		e.page("wickrule health", "does not run")
	})
}
