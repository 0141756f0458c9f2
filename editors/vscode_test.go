package editors

import (
	"os"
	"os/exec"
	"testing"

	"github.com/stretchr/testify/require"
)

// The extension of vscode/: its types, its bundle, and its own tests, which run
// it with its client library against the server, in a stand-in for the editor.
func TestVSCode(t *testing.T) {
	if _, err := exec.LookPath("node"); err != nil {
		missing(t, "node is not installed")
	}
	if _, err := os.Stat("vscode/node_modules/vscode-languageclient"); err != nil {
		missing(t, "the extension's libraries are not installed: run npm ci --ignore-scripts in editors/vscode")
	}
	for _, command := range [][]string{
		{"node", "node_modules/typescript/bin/tsc", "--noEmit"},
		{"node", "build.mjs"},
		{"node", "--test", "test/manifest.test.mjs", "test/grammar.test.mjs", "test/program.test.mjs", "test/pack.test.mjs", "test/client.test.mjs"},
	} {
		cmd := exec.Command(command[0], command[1:]...)
		cmd.Dir = "vscode"
		cmd.Env = append(os.Environ(), "WICKRULE="+program(t))
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, "%v\n%.20000s", command, out)
	}
}
