package cli_test

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/cli"
)

// shellOr skips the test where the shell is not installed.
func shellOr(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skip("no " + name + " here")
	}
	return path
}

func script(t *testing.T, shell string) string {
	t.Helper()
	p := newPlace(t, nil)
	require.Equal(t, cli.Good, p.run("completions", shell))
	p.write("script", p.out.String())
	return filepath.Join(p.folder, "script")
}

// Bash itself is asked what it would complete.
func TestBashCompletions(t *testing.T) {
	bash, file := shellOr(t, "bash"), script(t, "bash")
	for _, c := range []struct{ typed, want string }{
		{"ch", "check"},
		{"check --", "--accept --as --baseline --level --report --since --staged --write"},
		{"check --report ", "text markdown lines json sarif junit"},
		{"check --report = js", "json"},
		{"check --level =", "must should consider"},
		{"check rec", ""}, // files are bash's own
		{"explain s", "spelling"},
		{"completions ", "bash zsh fish"},
		{"help v", "version"},
		{"mend --", "--all --show"},
		{"protect ", "hook github gitlab make"},
	} {
		words := "wickrule " + c.typed
		quoted := "'" + strings.ReplaceAll(words, " ", "' '") + "'"
		out, err := exec.Command(bash, "--norc", "-c", `source "$0"; COMP_WORDS=(`+quoted+`); COMP_CWORD=$((${#COMP_WORDS[@]}-1)); _wickrule; echo "${COMPREPLY[*]}"`, file).CombinedOutput()
		require.NoError(t, err, string(out))
		assert.Equal(t, c.want, strings.TrimSpace(string(out)), c.typed)
	}
}

func TestFishCompletions(t *testing.T) {
	fish, file := shellOr(t, "fish"), script(t, "fish")
	for typed, want := range map[string]string{
		"ch":                      "check",
		"check --report ":         "json junit lines markdown sarif text",
		"completions ":            "bash fish zsh",
		"explain ":                "haste open-flame spelling",
		"mend --":                 "--all --show",
		"check --level must --re": "--report",
	} {
		out, err := exec.Command(fish, "--no-config", "-c", `source $argv[1]; complete -C $argv[2]`, file, "wickrule "+typed).CombinedOutput()
		require.NoError(t, err, string(out))
		var words []string
		for line := range strings.Lines(string(out)) {
			word, _, _ := strings.Cut(strings.TrimSpace(line), "\t")
			words = append(words, word)
		}
		assert.Equal(t, want, strings.Join(words, " "), typed)
	}
}

// What a shop has is asked for while one types, wherever the script was made;
// a key that a shell would read as more than a word is not among it.
func TestCompletionsAskForWhatTheShopHas(t *testing.T) {
	bash := shellOr(t, "bash")
	p := newPlace(t, map[string]string{
		"shop.candle.hcl":  shopText,
		"tide.candle.hcl":  titled("tide", "Tide"),
		"kelp.candle.hcl":  titled("kelp", "Kelp"),
		"wrong.candle.hcl": titled("$(touch taken)", "Taken"),
	})
	require.Equal(t, cli.Good, p.run("completions", "bash"))
	file := p.out.String()
	assert.NotContains(t, file, "tide")
	require.Equal(t, cli.Good, p.run("completions", "words", "sheet"))
	assert.Equal(t, "kelp\ntide\n", p.out.String())
	p.write("words", p.out.String())
	for _, verb := range []string{"sheet", "burn"} {
		out, err := exec.Command(bash, "--norc", "-c", file+`
wickrule() { [ "$*" = "completions words `+verb+`" ] && cat "$0"; }
COMP_WORDS=(wickrule `+verb+` k); COMP_CWORD=2; _wickrule; echo "${COMPREPLY[*]}"`, filepath.Join(p.folder, "words")).CombinedOutput()
		require.NoError(t, err, string(out))
		assert.Equal(t, "kelp\n", string(out))
	}
	assert.Equal(t, cli.NotWorked, p.run("completions", "words", "shet"))
}

// Zsh completes at a prompt only; its own parser reads the script whole.
func TestZshCompletionsParse(t *testing.T) {
	zsh, file := shellOr(t, "zsh"), script(t, "zsh")
	out, err := exec.Command(zsh, "-f", "-n", file).CombinedOutput()
	assert.NoError(t, err, string(out))
}
