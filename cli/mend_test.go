package cli_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/cli"
	"wickrule/lint"
	"wickrule/schema"
)

func onlyFiles(t *testing.T, folder string, want ...string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	assert.Equal(t, want, names)
}

func TestMend(t *testing.T) {
	p := newPlace(t, map[string]string{
		"shop.candle.hcl": shopText,
		"a.candle.hcl":    strings.ReplaceAll(titled("a", "teh quick tide"), "\n", "\r\n"),
		"b.candle.hcl":    titled("b", "teh stove"),
	})
	full := filepath.Join(p.folder, "a.candle.hcl")
	require.NoError(t, os.Chmod(full, 0o640))

	assert.Equal(t, cli.Good, p.run("mend", "a.candle.hcl"), p.err.String())
	assert.Equal(t, strings.ReplaceAll(titled("a", "the quick tide"), "\n", "\r\n"), p.read("a.candle.hcl"))
	assert.Equal(t, titled("b", "teh stove"), p.read("b.candle.hcl"), "not asked for")
	info, err := os.Stat(full)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o640), info.Mode().Perm())
	onlyFiles(t, p.folder, "a.candle.hcl", "b.candle.hcl", "shop.candle.hcl")
	assert.Equal(t, `Mended

  a.candle.hcl
    write the
            line 2: title = "teh quick tide"                            spelling

Left to you, since it changes what is made (mend --all makes these, where it
need not guess)

  a.candle.hcl
    write slow
            line 2: title = "the quick tide"                               haste

1 recipe checked: 1 thing should be put right or conceded with a reason.
These figures are an aid, not a test report. Your suppliers' sheets, local codes
and licensed practice go first.
`, p.out.String())

	assert.Equal(t, cli.Found, p.run("mend"), "the stove is left, and must not be")
	assert.Equal(t, titled("b", "the stove"), p.read("b.candle.hcl"))
	assert.Equal(t, cli.Good, p.run("mend", "--all"))
	assert.Equal(t, titled("b", "the water bath"), p.read("b.candle.hcl"))
}

// What --show prints is a patch: applied by the patch program it gives what
// mend would have written.
func TestMendShow(t *testing.T) {
	files := map[string]string{
		"quay/shop.candle.hcl": shopText,
		"quay/a.candle.hcl":    "# one\n# two\n\n" + titled("a", "teh tide") + "\n\n# three",
		"quay/b.candle.hcl":    titled("b", "tide"),
	}
	p := newPlace(t, files)
	assert.Equal(t, cli.Good, p.run("mend", "--show", "quay"), p.err.String())
	for name, text := range files {
		assert.Equal(t, text, p.read(name), "nothing is written")
	}
	patch := p.out.String()
	assert.True(t, strings.HasPrefix(patch, "--- quay/a.candle.hcl\n+++ quay/a.candle.hcl\n@@ "), patch)
	assert.Contains(t, patch, "\n-  title = \"teh tide\"\n+  title = \"the tide\"\n")
	assert.Contains(t, p.err.String(), "Would be mended")

	program, err := exec.LookPath("patch")
	if err != nil {
		t.Skip("no patch program here")
	}
	cmd := exec.Command(program, "-p0", "--batch")
	cmd.Dir, cmd.Stdin = p.folder, strings.NewReader(patch)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
	byPatch := p.read("quay/a.candle.hcl")
	p.write("quay/a.candle.hcl", files["quay/a.candle.hcl"])
	p.run("mend", "quay")
	assert.Equal(t, byPatch, p.read("quay/a.candle.hcl"))
}

// A file that somebody saved meanwhile is theirs.
func TestMendLeavesWhatChangedMeanwhile(t *testing.T) {
	p := newPlace(t, map[string]string{"a.candle.hcl": titled("a", "teh tide")})
	theirs := titled("a", "teh tide, saved by an editor")
	p.env.Rules = []*lint.Rule{{Name: "spelling", Levels: lint.Every(lint.Consider), Check: func(pass *lint.Pass) {
		title := pass.Recipe.Get("title")
		if title.Text() != "teh tide" {
			return
		}
		p.write("a.candle.hcl", theirs)
		pass.Report(lint.Finding{At: lint.AtValue(title), Message: "teh", Fixes: func() []schema.Fix {
			return []schema.Fix{{Title: "write the", Safe: true, Edits: []schema.Edit{{File: title.Block.File, Span: title.Span(), Text: `"the tide"`}}}}
		}})
	}}}
	assert.Equal(t, cli.NotWorked, p.run("mend"))
	assert.Equal(t, theirs, p.read("a.candle.hcl"))
	assert.Contains(t, p.err.String(), "a.candle.hcl: not written: it changed on disk meanwhile")
	onlyFiles(t, p.folder, "a.candle.hcl")
}

func TestMendLeavesLinks(t *testing.T) {
	p := newPlace(t, map[string]string{"shop.candle.hcl": shopText, "real.txt": titled("a", "teh tide")})
	require.NoError(t, os.Symlink("real.txt", filepath.Join(p.folder, "a.candle.hcl")))
	assert.Equal(t, cli.NotWorked, p.run("mend"))
	assert.Contains(t, p.err.String(), "a.candle.hcl: not written: it is a link")
	assert.Equal(t, titled("a", "teh tide"), p.read("real.txt"))
}

// Where a part of the shop could not be read, a fix might rest on what is
// missing: nothing is mended.
func TestMendNeedsTheWholeShop(t *testing.T) {
	p := newPlace(t, map[string]string{"shop.candle.hcl": shopText, "a.candle.hcl": titled("a", "teh tide")})
	require.NoError(t, os.Symlink("nowhere", filepath.Join(p.folder, "stock.candle.hcl")))
	assert.Equal(t, cli.NotWorked, p.run("mend"))
	assert.Equal(t, titled("a", "teh tide"), p.read("a.candle.hcl"))
	assert.Contains(t, p.err.String(), "nothing is mended, since not all of the shop could be read")
}
