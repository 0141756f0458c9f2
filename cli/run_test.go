package cli_test

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/cli"
	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

// retitle is a rule that flags a word in a recipe's title, with a fix that
// puts another in its place.
func retitle(name string, level lint.Level, safe bool, from, to string) *lint.Rule {
	return &lint.Rule{Name: name, Group: "Titles", Title: "the word " + from + " in a title", Levels: lint.Every(level), Check: func(p *lint.Pass) {
		title := p.Recipe.Get("title")
		if !strings.Contains(title.Text(), from) {
			return
		}
		p.Report(lint.Finding{At: lint.AtValue(title), Message: "the title says " + from, Fixes: func() []schema.Fix {
			text := strings.ReplaceAll(title.Written(), from, to)
			return []schema.Fix{{Title: "write " + to, Safe: safe, Edits: []schema.Edit{{File: p.Recipe.File, Span: title.Span(), Text: text}}}}
		}})
	}}
}

func testRules() []*lint.Rule {
	return []*lint.Rule{
		retitle("spelling", lint.Consider, true, "teh", "the"),
		retitle("haste", lint.Should, false, "quick", "slow"),
		retitle("open-flame", lint.Must, false, "stove", "water bath"),
	}
}

func titled(key, title string) string {
	return "recipe \"" + key + "\" {\n  title = \"" + title + "\"\n}\n"
}

// place is a folder of files to run the program in.
type place struct {
	t      *testing.T
	folder string
	env    cli.Env
	out    bytes.Buffer
	err    bytes.Buffer
}

func newPlace(t *testing.T, files map[string]string) *place {
	t.Helper()
	p := &place{t: t, folder: t.TempDir()}
	p.env = cli.Env{
		In: strings.NewReader(""), Out: &p.out, Err: &p.err, Folder: p.folder, Rules: testRules(),
		Now: func() time.Time { return time.Date(2026, 10, 20, 12, 0, 0, 0, time.UTC) },
	}
	for name, text := range files {
		p.write(name, text)
	}
	return p
}

func (p *place) write(name, text string) {
	p.t.Helper()
	full := filepath.Join(p.folder, filepath.FromSlash(name))
	require.NoError(p.t, os.MkdirAll(filepath.Dir(full), 0o755))
	require.NoError(p.t, os.WriteFile(full, []byte(text), 0o644))
}

func (p *place) read(name string) string {
	p.t.Helper()
	text, err := os.ReadFile(filepath.Join(p.folder, filepath.FromSlash(name)))
	require.NoError(p.t, err)
	return string(text)
}

func (p *place) run(args ...string) int {
	p.out.Reset()
	p.err.Reset()
	return cli.Run(context.Background(), args, p.env)
}

const shopText = "shop \"quay\" {\n  title = \"Larkspur Quay Candleworks\"\n}\n"

func TestExitStatus(t *testing.T) {
	p := newPlace(t, map[string]string{
		"shop.candle.hcl": shopText,
		"well.candle.hcl": titled("well", "tide"),
		"c.candle.hcl":    titled("c", "teh tide"),
		"s.candle.hcl":    titled("s", "quick tide"),
		"m.candle.hcl":    titled("m", "stove tide"),
	})
	for _, c := range []struct {
		args string
		want int
	}{
		{"check well.candle.hcl", cli.Good},
		{"check c.candle.hcl", cli.Good},
		{"check s.candle.hcl", cli.Good},
		{"check m.candle.hcl", cli.Found},
		{"check", cli.Found},
		{"check --level should s.candle.hcl", cli.Found},
		{"check --level should c.candle.hcl", cli.Good},
		{"check --level=consider c.candle.hcl", cli.Found},
		{"check --level consider well.candle.hcl", cli.Good},
		{"check m.candle.hcl nowhere.candle.hcl", cli.NotWorked},
		{"check --report json nowhere.candle.hcl", cli.NotWorked},
	} {
		assert.Equal(t, c.want, p.run(strings.Fields(c.args)...), "%s: %s", c.args, p.err.String())
	}
}

func TestUsageTroubles(t *testing.T) {
	p := newPlace(t, map[string]string{"shop.candle.hcl": shopText})
	for args, want := range map[string]string{
		"chek":                      `there is no verb "chek": the nearest is "check"`,
		"check --repart json":       `check: there is no flag --repart: the nearest is --report`,
		"check -x":                  `check: there is no flag -x`,
		"check --report yaml":       `check: --report cannot be "yaml": known are text, markdown, lines, json, sarif, junit`,
		"check --level":             `check: --level needs a value after it`,
		"version --all":             `version: it takes no flag --all`,
		"version now":               `version takes nothing after it`,
		"check --as x.candle.hcl y": `check: --as checks the one file on standard input: leave out y, or leave out --as`,
		"check --as x.txt":          `check: --as needs the name of a recipe file, which ends in .candle.hcl`,
		"explain speling":           `there is no rule "speling": the nearest is "spelling"`,
		"explain spelling haste":    `explain takes one rule`,
		"help chek":                 `there is no verb "chek": the nearest is "check"`,
		"completions":               `completions needs the name of one shell: bash, zsh, fish`,
		"completions csh":           `there are no completions for "csh"`,
		"check nowhere":             `nowhere: there is nothing at this path`,
	} {
		assert.Equal(t, cli.NotWorked, p.run(strings.Fields(args)...), args)
		assert.Contains(t, p.err.String(), "wickrule: "+want, args)
		assert.Empty(t, p.out.String(), args)
	}
	assert.Equal(t, cli.NotWorked, p.run())
	assert.Contains(t, p.err.String(), "wickrule help VERB")
}

// Without a path the whole shop around the working folder is checked; a path
// narrows what is said, not what is read.
func TestCheckWithoutPath(t *testing.T) {
	p := newPlace(t, map[string]string{
		"shop.candle.hcl":       shopText,
		"recipes/a.candle.hcl":  titled("a", "teh a"),
		"recipes/b.candle.hcl":  titled("b", "teh b"),
		"seasonal/c.candle.hcl": titled("c", "teh c"),
	})
	p.env.Folder = filepath.Join(p.folder, "recipes")
	p.run("check", "--report", "lines")
	assert.Equal(t, 3, strings.Count(p.out.String(), "\n"), p.out.String())
	p.run("check", "--report", "lines", ".")
	assert.Equal(t, 2, strings.Count(p.out.String(), "\n"), p.out.String())
	p.run("check", "--report", "lines", "../seasonal", "b.candle.hcl")
	assert.Equal(t, "../recipes/b.candle.hcl:2:11: the title says teh (consider, spelling)\n../seasonal/c.candle.hcl:2:11: the title says teh (consider, spelling)\n", p.out.String())
}

func TestCheckStandardInput(t *testing.T) {
	p := newPlace(t, map[string]string{
		"quay/shop.candle.hcl":      shopText,
		"quay/recipes/a.candle.hcl": titled("a", "stove"),
		"quay/recipes/b.candle.hcl": titled("b", "stove"),
	})
	for _, c := range []struct{ as, in, want string }{
		{"quay/recipes/a.candle.hcl", titled("a", "teh"), "quay/recipes/a.candle.hcl:2:11: the title says teh (consider, spelling)\n"},
		{"quay/recipes/a.candle.hcl", titled("a", "tide"), ""},
		{"quay/recipes/new.candle.hcl", titled("new", "teh"), "quay/recipes/new.candle.hcl:2:11: the title says teh (consider, spelling)\n"},
		{"not/there/yet/new.candle.hcl", titled("new", "teh"), "not/there/yet/new.candle.hcl:2:11: the title says teh (consider, spelling)\n"},
	} {
		p.env.In = strings.NewReader(c.in)
		assert.Equal(t, cli.Good, p.run("check", "--report", "lines", "--as", c.as), "%s: %s", c.as, p.err.String())
		assert.Equal(t, c.want, p.out.String(), c.as)
	}
	assert.Equal(t, titled("a", "stove"), p.read("quay/recipes/a.candle.hcl"), "nothing is written")
}

// A file that cannot be opened is told, the others are checked, and the
// status says that the check was not made in full.
func TestUnreadableFile(t *testing.T) {
	p := newPlace(t, map[string]string{"shop.candle.hcl": shopText, "a.candle.hcl": titled("a", "stove")})
	require.NoError(t, os.Symlink("/nowhere", filepath.Join(p.folder, "away.candle.hcl")))
	assert.Equal(t, cli.NotWorked, p.run("check"))
	assert.Contains(t, p.err.String(), "wickrule: away.candle.hcl: this is a link that leads nowhere or out of the shop")
	assert.Contains(t, p.out.String(), "the title says stove")
	assert.Contains(t, p.out.String(), "1 file or folder could not be read.")
	p.run("check", "--report", "json")
	assert.Contains(t, p.out.String(), `"file": "away.candle.hcl"`)
}

// Progress is shown on a terminal only, after half a second, and taken away.
func TestProgress(t *testing.T) {
	files := map[string]string{"shop.candle.hcl": shopText}
	for _, key := range []string{"a", "b", "c", "d"} {
		files[key+".candle.hcl"] = titled(key, "tide")
	}
	p := newPlace(t, files)
	now := p.env.Now()
	p.env.Now = func() time.Time { now = now.Add(200 * time.Millisecond); return now }
	p.run("check")
	assert.Empty(t, p.err.String(), "not a terminal")
	p.env.Watched = true
	p.run("check")
	shown := p.err.String()
	assert.NotContains(t, shown, "file 1 of 5", "not in the first half second")
	assert.Contains(t, shown, "\r\x1b[Kreading file 5 of 5")
	assert.True(t, strings.HasSuffix(shown, "\r\x1b[K"), "%q", shown)
}

// blocked is a standard input that never ends.
type blocked struct{ reached chan struct{} }

func (b blocked) Read([]byte) (int, error) {
	close(b.reached)
	select {}
}

func TestInterrupt(t *testing.T) {
	p := newPlace(t, nil)
	ctx, cancel := context.WithCancel(context.Background())
	in := blocked{make(chan struct{})}
	p.env.In = in
	go func() { <-in.reached; cancel() }()
	assert.Equal(t, cli.NotWorked, cli.Run(ctx, []string{"check", "--as", "a.candle.hcl"}, p.env))
	assert.Equal(t, "wickrule: stopped before the end\n", p.err.String())
}

func TestHelpNamesEveryVerbAndFlag(t *testing.T) {
	p := newPlace(t, nil)
	require.Equal(t, cli.Good, p.run("help"))
	overview := p.out.String()
	assert.Contains(t, strings.Join(strings.Fields(overview), " "), report.Caution)
	for _, name := range []string{"check", "mend", "format", "explain", "completions", "version", "help"} {
		assert.Contains(t, overview, "\n  "+name+" ", name)
		require.Equal(t, cli.Good, p.run("help", name))
		byVerb := p.out.String()
		assert.True(t, strings.HasPrefix(byVerb, "wickrule "+name), byVerb)
		require.Equal(t, cli.Good, p.run(name, "--help"))
		assert.Equal(t, byVerb, p.out.String())
	}
	p.run("help", "check")
	for _, flag := range []string{"--as PATH", "--level WORD", "--report WORD", "text, markdown, lines, json, sarif, junit; text where it is not said"} {
		assert.Contains(t, strings.Join(strings.Fields(p.out.String()), " "), flag)
	}
	p.run("help", "json-schema")
	assert.Equal(t, report.Schema, p.out.String())
}

// A stream that cannot be written to is a failure, not a good check.
func TestReportCannotBeWritten(t *testing.T) {
	p := newPlace(t, map[string]string{"a.candle.hcl": titled("a", "tide")})
	p.env.Out = full{}
	assert.Equal(t, cli.NotWorked, p.run("check"))
	assert.Contains(t, p.err.String(), "the report could not be written")
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }
