package editors

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// Kate, without its screen: with the set-up of this folder it starts the
// server for a recipe, says hello and opens the recipe, and the server answers
// with what it finds there. Nothing is typed.
func TestKate(t *testing.T) {
	if _, err := exec.LookPath("kate"); err != nil {
		t.Skip("kate is not installed") // not asked for by .ci/run: it brings a desktop with it
	}
	bin, recordings := recorded(t)
	shop := prepared(t)
	path := filepath.Join(shop, tide)
	faulty := bytes.Replace([]byte(read(t, shop, tide)), []byte("5 % of wax"), []byte("7 % of wax"), 1)
	require.NoError(t, os.WriteFile(path, faulty, 0o644))
	home := t.TempDir()
	put := func(from, to string) {
		data, err := os.ReadFile(from)
		require.NoError(t, err)
		require.NoError(t, os.MkdirAll(filepath.Dir(filepath.Join(home, to)), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(home, to), data, 0o644))
	}
	put("kate/settings.json", ".config/kate/lspclient/settings.json")
	put("kate/candle.xml", ".local/share/org.kde.syntax-highlighting/syntax/candle.xml")
	require.NoError(t, os.WriteFile(home+"/.config/katerc", []byte("[Kate Plugins]\nlspclientplugin=true\n\n[lspclient]\nAllowedServerCommandLines="+bin+"/wickrule lsp\n"), 0o644))
	require.NoError(t, os.MkdirAll(home+"/.local/share/kate", 0o755))
	require.NoError(t, os.WriteFile(home+"/.local/share/kate/anonymous.katesession", []byte("[Kate Plugins]\nlspclientplugin=true\n"), 0o644))
	require.NoError(t, os.Mkdir(home+"/run", 0o700))
	cmd := exec.Command("kate", "--new", "--block", path)
	cmd.Env = append(os.Environ(), "HOME="+home, "XDG_CONFIG_HOME="+home+"/.config", "XDG_DATA_HOME="+home+"/.local/share", "XDG_RUNTIME_DIR="+home+"/run",
		"QT_QPA_PLATFORM=offscreen", "PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	var complaints screen
	cmd.Stdout, cmd.Stderr = &complaints, &complaints
	require.NoError(t, cmd.Start())
	t.Cleanup(func() {
		cmd.Process.Kill()
		cmd.Wait()
		if t.Failed() {
			t.Log(complaints.last(3000))
		}
	})
	eventually(t, "the finding to be sent", func() (any, bool) {
		said := ""
		files, _ := filepath.Glob(recordings + "/*.jsonl")
		for _, name := range files {
			data, _ := os.ReadFile(name)
			for _, line := range bytes.Split(data, []byte("\n")) {
				var m struct {
					From    string
					Message struct {
						Method string
						Params struct {
							Diagnostics []struct{ Code string }
						}
					}
				}
				if json.Unmarshal(line, &m) != nil {
					continue
				}
				said += m.From + " " + m.Message.Method + "; "
				for _, d := range m.Message.Params.Diagnostics {
					if d.Code == "fragrance-over-limit" {
						return said, true
					}
				}
			}
		}
		return said, false
	})
	cmd.Process.Kill()
	cmd.Wait()
	valid(t, recordings)
}
