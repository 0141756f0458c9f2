package cli_test

import (
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
	"wickrule/rules"
	"wickrule/rules/drill"
)

// learner is a place where somebody drills, with a progress file of their own.
func learner(t *testing.T) (p *place, progress string) {
	t.Helper()
	p = newPlace(t, nil)
	p.env.Rules = rules.All()
	p.env.Own = filepath.Join(p.folder, "own")
	return p, filepath.Join(p.env.Own, "drill-progress.json")
}

func records(t *testing.T, file string) []drill.Record {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		return nil
	}
	kept, err := drill.ReadProgress(data)
	require.NoError(t, err)
	return kept.Exercises
}

// Whoever interrupts the program loses nothing of what was answered, and goes
// on there.
func TestDrillInterrupted(t *testing.T) {
	p, progress := learner(t)
	in, typed := io.Pipe()
	p.env.In = in
	ctx, interrupt := context.WithCancel(t.Context())
	ended := make(chan int, 1)
	go func() { ended <- cli.Run(ctx, []string{"drill", "--demo", "--seed", "bell"}, p.env) }()
	_, err := io.WriteString(typed, "hint\n")
	require.NoError(t, err)
	require.Eventually(t, func() bool {
		all := records(t, progress)
		return len(all) == 1 && all[0].Slips[0].Hints == 1
	}, 20*time.Second, 10*time.Millisecond)
	time.Sleep(50 * time.Millisecond) // it asks again
	interrupt()
	assert.Equal(t, cli.NotWorked, <-ended)
	assert.Contains(t, p.err.String(), "stopped here; what was answered is kept")

	again, _ := learner(t)
	again.env.Own = p.env.Own
	again.env.In = strings.NewReader("answers\nstop\n")
	assert.Equal(t, cli.Good, again.run("drill", "--demo"), again.err.String())
	assert.Contains(t, again.out.String(), "seed bell: going on with exercise 1")
	all := records(t, progress)
	require.Len(t, all, 1)
	assert.True(t, all[0].Done())
	assert.Equal(t, 1, all[0].Slips[0].Hints, "the hint still counts")
	typed.Close()
}

// Two sittings that share a file keep each other's records; a file that is
// spoiled meanwhile is left as it is.
func TestDrillsShareAFile(t *testing.T) {
	p, progress := learner(t)
	in, typed := io.Pipe()
	p.env.In = in
	ended := make(chan int, 1)
	go func() { ended <- cli.Run(t.Context(), []string{"drill", "--demo", "--seed", "one"}, p.env) }()
	_, err := io.WriteString(typed, "hint\n")
	require.NoError(t, err)
	require.Eventually(t, func() bool { return len(records(t, progress)) == 1 }, 20*time.Second, 10*time.Millisecond)

	other, _ := learner(t)
	other.env.Own = p.env.Own
	other.env.In = strings.NewReader("stop\n")
	assert.Equal(t, cli.Good, other.run("drill", "--demo", "--seed", "two"), other.err.String())
	_, err = io.WriteString(typed, "hint\n")
	require.NoError(t, err)
	require.Eventually(t, func() bool {
		all := records(t, progress)
		return len(all) == 2 && all[0].Slips[0].Hints == 2 && all[1].Seed == "two"
	}, 20*time.Second, 10*time.Millisecond)

	require.NoError(t, os.WriteFile(progress, []byte("spilt wax"), 0o644))
	_, err = io.WriteString(typed, "hint\n")
	require.NoError(t, err)
	assert.Equal(t, cli.NotWorked, <-ended)
	assert.Contains(t, p.err.String(), "It is left as it is")
	data, err := os.ReadFile(progress)
	require.NoError(t, err)
	assert.Equal(t, "spilt wax", string(data))
}

// Where no folder is the user's own, the drill goes on and says that nothing
// is kept.
func TestDrillKeepsNothingWithoutAFolder(t *testing.T) {
	p, _ := learner(t)
	p.env.Own = ""
	p.env.In = strings.NewReader("answers\n")
	assert.Equal(t, cli.Good, p.run("drill", "--demo", "--seed", "bell"), p.err.String())
	assert.Contains(t, p.out.String(), "Nothing is kept of it")
	left, err := os.ReadDir(p.folder)
	require.NoError(t, err)
	assert.Empty(t, left)
}
