package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/cli"
	"wickrule/examples"
	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules"
	"wickrule/schema"
)

// The README shows what the program really prints. A line with … alone stands
// for lines left out.
func TestReadmeShowsRealOutput(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.CopyFS(filepath.Join(folder, "examples"), os.DirFS("examples")))
	shown := 0
	for _, block := range blocks(t, "console") {
		for _, one := range strings.Split("\n"+block, "\n$ ")[1:] {
			command, output, _ := strings.Cut(one, "\n")
			args, ok := strings.CutPrefix(command, "wickrule ")
			if !ok {
				args, ok = strings.CutPrefix(command, "go run . ")
			}
			require.True(t, ok, command)
			got := strings.Split(strings.TrimSpace(printed(t, folder, args)), "\n")
			assert.Truef(t, matches(strings.Split(strings.TrimSpace(output), "\n"), got), "%s prints now:\n%s", command, strings.Join(got, "\n"))
			shown++
		}
	}
	require.NotZero(t, shown)
}

// What the README writes in recipe files can be read, and makes no candle that
// must not be made: it is laid over the example shop.
func TestReadmesRecipesAreSound(t *testing.T) {
	base, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	written := blocks(t, "hcl")
	require.NotEmpty(t, written)
	for _, text := range written {
		name := "readme" + lint.FileSuffix
		if strings.HasPrefix(text, "shop ") {
			name = lint.ShopFileName
		}
		file := schema.Read(name, []byte(text))
		assert.Empty(t, file.Problems, text)
		for _, f := range lint.Run(base.With(file), rules.All(), today).Findings {
			assert.Fail(t, f.Message, text)
		}
	}
}

// The README's test command is the one CI runs.
func TestCIRunsTheReadmesTests(t *testing.T) {
	script, err := os.ReadFile(".ci/run")
	require.NoError(t, err)
	commands := blocks(t, "sh")
	require.Len(t, commands, 2, "two set-up commands and no more")
	assert.Contains(t, string(script), "\n"+commands[1])
}

// What the README and the editors' one point to is there.
func TestReadmesLinksLead(t *testing.T) {
	for _, name := range []string{"README.md", "editors/README.md"} {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		links := regexp.MustCompile(`\]\(([^)]+)\)`).FindAllStringSubmatch(string(text), -1)
		require.NotEmpty(t, links)
		for _, link := range links {
			_, err := os.Stat(filepath.Join(filepath.Dir(name), link[1]))
			assert.NoError(t, err, name)
		}
	}
}

// blocks are the README's fenced texts of one kind.
func blocks(t *testing.T, kind string) []string {
	t.Helper()
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	var found []string
	for _, m := range regexp.MustCompile("(?s)\n```"+kind+"\n(.*?)```\n").FindAllStringSubmatch(string(text), -1) {
		found = append(found, m[1])
	}
	return found
}

// matches compares line by line; … takes any number of lines.
func matches(shown, got []string) bool {
	switch {
	case len(shown) == 0:
		return len(got) == 0
	case shown[0] == "…":
		for skip := 0; skip <= len(got); skip++ {
			if matches(shown[1:], got[skip:]) {
				return true
			}
		}
		return false
	}
	return len(got) > 0 && shown[0] == strings.TrimRight(got[0], " ") && matches(shown[1:], got[1:])
}

// printed is what the program writes to standard output, on a day the
// examples are judged on and in a terminal of 80 columns without color. A file
// after < is its standard input.
func printed(t *testing.T, folder, command string) string {
	t.Helper()
	command, input, piped := strings.Cut(command, " < ")
	var in io.Reader = strings.NewReader("")
	if piped {
		text, err := os.ReadFile(filepath.Join(folder, filepath.FromSlash(input)))
		require.NoError(t, err)
		in = bytes.NewReader(text)
	}
	var out, complaints bytes.Buffer
	status := cli.Run(context.Background(), strings.Fields(command), cli.Env{
		In: in, Out: &out, Err: &complaints, Folder: folder,
		Now:   func() time.Time { return time.Date(2026, 10, 20, 12, 0, 0, 0, time.Local) },
		Look:  report.Look{Width: 80},
		Rules: rules.All(),
	})
	require.NotEqual(t, cli.NotWorked, status, complaints.String())
	return out.String()
}
