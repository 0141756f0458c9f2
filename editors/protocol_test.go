package editors

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
)

// missing skips a test whose client is not there, or fails it where it must be.
func missing(t *testing.T, what string) {
	t.Helper()
	if os.Getenv(noSkip) != "" {
		t.Fatal(what)
	}
	t.Skip(what)
}

// node runs a program of the folder protocol, with a program named wickrule in
// bin, and returns what it printed.
func node(t *testing.T, bin string, args ...string) (string, error) {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, "node", args...)
	cmd.Dir = "protocol"
	cmd.Env = append(os.Environ(), "PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	var out, complaints bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaints
	err := cmd.Run()
	if err != nil {
		err = fmt.Errorf("%w\n%s", err, complaints.String())
	}
	return out.String(), err
}

// protocolLibrary makes sure that the library of the protocol's authors is
// there, and the schemas that are made of its types.
func protocolLibrary(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("node"); err != nil {
		missing(t, "node is not installed")
	}
	if _, err := os.Stat("protocol/node_modules/vscode-languageserver-protocol"); err != nil {
		missing(t, "the protocol's library is not installed: run npm ci --ignore-scripts in editors/protocol")
	}
	made, err := os.Stat("protocol/generated/strict.json")
	for _, source := range []string{"protocol/generate.mjs", "protocol/package-lock.json"} {
		written, failed := os.Stat(source)
		require.NoError(t, failed)
		if err != nil || made.ModTime().Before(written.ModTime()) {
			out, err := node(t, "", "generate.mjs")
			require.NoError(t, err)
			t.Log(out)
			return
		}
	}
}

// valid checks every message that the server sent in the recordings of a
// folder against the protocol's schema.
func valid(t *testing.T, recordings string) {
	t.Helper()
	protocolLibrary(t)
	files, err := filepath.Glob(recordings + "/*.jsonl")
	require.NoError(t, err)
	require.NotEmpty(t, files, "nothing was recorded")
	out, err := node(t, "", append([]string{"validate.mjs"}, files...)...)
	assert.NoError(t, err)
	t.Log(out)
}

// shopIn copies one of the example shops into a folder.
func shopIn(t *testing.T, folder string) string {
	t.Helper()
	require.NoError(t, os.CopyFS(folder, examples.Shop()))
	return folder
}

// Every method that the server announces, at many places of all the example
// files and of broken texts: each message is as the protocol has it.
func TestEveryMessageIsTheProtocols(t *testing.T) {
	if testing.Short() {
		t.Skip("a minute or two")
	}
	protocolLibrary(t)
	bin, recordings := recorded(t)
	work := t.TempDir()
	shop := shopIn(t, filepath.Join(work, "shop"))
	faulty := filepath.Join(work, "faulty")
	require.NoError(t, os.CopyFS(faulty, examples.Faulty()))
	big := shopIn(t, filepath.Join(work, "big"))
	recipe, err := os.ReadFile(big + "/recipes/tide-pillar.candle.hcl")
	require.NoError(t, err)
	for i := range 9000 {
		text := strings.Replace(string(recipe), `"tide-pillar"`, fmt.Sprintf(`"tide-%d"`, i), 1)
		require.NoError(t, os.WriteFile(fmt.Sprintf("%s/recipes/tide-%d.candle.hcl", big, i), []byte(text), 0o644))
	}
	out, err := node(t, bin, "session.mjs", shop, faulty, big)
	t.Log(out)
	assert.NoError(t, err)
	valid(t, recordings)
}

// The check can fail: faults planted in messages are seen.
func TestTheSchemaSeesFaults(t *testing.T) {
	protocolLibrary(t)
	for name, c := range map[string]struct{ asked, said, complaint string }{
		"a list that is null":      {"", `{"method":"textDocument/publishDiagnostics","params":{"uri":"file:///a","diagnostics":null}}`, "/diagnostics must be array"},
		"a code that is null":      {"", `{"method":"textDocument/publishDiagnostics","params":{"uri":"file:///a","diagnostics":[{"range":{"start":{"line":0,"character":0},"end":{"line":0,"character":1}},"message":"m","code":null}]}}`, "code"},
		"a place without a column": {"", `{"method":"textDocument/publishDiagnostics","params":{"uri":"file:///a","diagnostics":[{"range":{"start":{"line":0},"end":{"line":0,"character":1}},"message":"m"}]}}`, "must have required property 'character'"},
		"a line below nought":      {"textDocument/hover", `{"id":1,"result":{"contents":"a","range":{"start":{"line":-1,"character":0},"end":{"line":0,"character":0}}}}`, "must be >= 0"},
		"a misspelt key":           {"textDocument/hover", `{"id":1,"result":{"contents":"a","rnage":null}}`, "strict"},
		"a misspelt capability":    {"initialize", `{"id":1,"result":{"capabilities":{"hoverprovider":true}}}`, "strict"},
		"a result not written":     {"shutdown", `{"id":1}`, "one of them"},
		"a range run backwards":    {"textDocument/hover", `{"id":1,"result":{"contents":"a","range":{"start":{"line":3,"character":0},"end":{"line":0,"character":0}}}}`, "backwards"},
		"edits that overlap": {"textDocument/formatting", `{"id":1,"result":[{"newText":"a","range":{"start":{"line":0,"character":0},"end":{"line":0,"character":9}}},` +
			`{"newText":"b","range":{"start":{"line":0,"character":4},"end":{"line":0,"character":9}}}]}`, "overlap"},
		"a method of nobody": {"", `{"method":"wickrule/hello","params":{}}`, "the protocol has no"},
	} {
		t.Run(name, func(t *testing.T) {
			var lines []string
			if c.asked != "" {
				lines = append(lines, `{"from":"client","message":{"jsonrpc":"2.0","id":1,"method":"`+c.asked+`"}}`)
			}
			lines = append(lines, `{"from":"server","message":{"jsonrpc":"2.0",`+c.said[1:]+`}`)
			for _, line := range lines {
				require.True(t, json.Valid([]byte(line)), line)
			}
			file := filepath.Join(t.TempDir(), "planted.jsonl")
			require.NoError(t, os.WriteFile(file, []byte(strings.Join(lines, "\n")), 0o644))
			out, err := node(t, "", "validate.mjs", file)
			require.Error(t, err, out)
			require.Contains(t, out, c.complaint)
		})
	}
}
