package main

import (
	"bytes"
	"context"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/cli"
	"wickrule/lint/report"
	"wickrule/rules"
)

var consoleBlock = regexp.MustCompile("(?s)```console\n(.*?)```")

// The README shows what the program really prints. A line with … alone stands
// for lines left out.
func TestReadmeShowsRealOutput(t *testing.T) {
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	blocks := consoleBlock.FindAllStringSubmatch(string(text), -1)
	require.NotEmpty(t, blocks)
	for _, block := range blocks {
		command, shown, _ := strings.Cut(block[1], "\n")
		args, ok := strings.CutPrefix(command, "$ wickrule ")
		require.True(t, ok, command)
		got := strings.Split(strings.TrimSpace(printed(t, strings.Fields(args))), "\n")
		assert.Truef(t, matches(strings.Split(strings.TrimSpace(shown), "\n"), got), "%s prints now:\n%s", command, strings.Join(got, "\n"))
	}
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
// examples are judged on and in a terminal of 80 columns without color.
func printed(t *testing.T, args []string) string {
	t.Helper()
	folder, err := os.Getwd()
	require.NoError(t, err)
	var out, complaints bytes.Buffer
	status := cli.Run(context.Background(), args, cli.Env{
		In: strings.NewReader(""), Out: &out, Err: &complaints, Folder: folder,
		Now:   func() time.Time { return time.Date(2026, 10, 20, 12, 0, 0, 0, time.Local) },
		Look:  report.Look{Width: 80},
		Rules: rules.All(),
	})
	require.NotEqual(t, cli.NotWorked, status, complaints.String())
	return out.String()
}

// The README's test command is the one CI runs.
func TestCIRunsTheReadmesTests(t *testing.T) {
	readme, err := os.ReadFile("README.md")
	require.NoError(t, err)
	script, err := os.ReadFile(".ci/run")
	require.NoError(t, err)
	commands := regexp.MustCompile("(?s)```sh\n(.*?)\n```").FindAllStringSubmatch(string(readme), -1)
	require.Len(t, commands, 2, "two set-up commands and no more")
	assert.Contains(t, string(script), "\n"+commands[1][1]+"\n")
}
