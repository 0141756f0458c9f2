package editors

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// helixLanguages is helix/languages.toml.
type helixLanguages struct {
	Server map[string]struct {
		Command string         `json:"command"`
		Args    []string       `json:"args"`
		Config  map[string]any `json:"config"`
	} `json:"language-server"`
	Language []struct {
		Name      string `json:"name"`
		FileTypes []struct {
			Glob string `json:"glob"`
		} `json:"file-types"`
		Roots         []string `json:"roots"`
		CommentTokens []string `json:"comment-tokens"`
		Block         struct {
			Start string `json:"start"`
			End   string `json:"end"`
		} `json:"block-comment-tokens"`
		Indent struct {
			Width int    `json:"tab-width"`
			Unit  string `json:"unit"`
		} `json:"indent"`
		Servers []string `json:"language-servers"`
		Scope   string   `json:"scope"`
		Grammar string   `json:"grammar"`
	} `json:"language"`
}

// What stands in the set-up for Helix is what the server and the recipes are
// like. A key that Helix does not document would not be read here either: the
// names above are all it may have
// (docs.helix-editor.com/languages.html, of version 25.07).
func TestHelixSetUp(t *testing.T) {
	out, err := exec.Command("python3", "-c", "import json, tomllib\nprint(json.dumps(tomllib.load(open('helix/languages.toml', 'rb'))))").Output()
	if err != nil {
		missing(t, "there is no python3 with tomllib to read TOML with (3.11 has it)")
	}
	var set helixLanguages
	strict := json.NewDecoder(bytes.NewReader(out))
	strict.DisallowUnknownFields()
	require.NoError(t, strict.Decode(&set))
	require.Len(t, set.Language, 1)
	candle := set.Language[0]
	assert.Equal(t, "source."+candle.Name, candle.Scope)
	require.Equal(t, 1, len(candle.FileTypes))
	shop := prepared(t)
	for name := range texts(t, shop) {
		matches, err := path.Match(candle.FileTypes[0].Glob, path.Base(name))
		require.NoError(t, err)
		assert.True(t, matches, name)
	}
	other, err := path.Match(candle.FileTypes[0].Glob, "other.hcl")
	require.NoError(t, err)
	assert.False(t, other, "files of others are theirs")
	for _, query := range []string{"highlights", "indents"} {
		text, err := os.ReadFile("helix/runtime/queries/" + candle.Name + "/" + query + ".scm")
		require.NoError(t, err)
		assert.Equal(t, "; inherits: "+candle.Grammar+"\n", string(text))
	}
	for _, root := range candle.Roots {
		assert.FileExists(t, filepath.Join(shop, root))
	}
	// A remark, and a step in, as the program takes and writes them.
	loads := regexp.MustCompile(`(?m)^( +)load`).FindStringSubmatch(read(t, shop, "recipes/bosun-tin.candle.hcl"))
	require.NotNil(t, loads)
	assert.Equal(t, loads[1], candle.Indent.Unit+candle.Indent.Unit)
	assert.Equal(t, len(candle.Indent.Unit), candle.Indent.Width)
	text := read(t, shop, tide)
	for _, token := range candle.CommentTokens {
		text = token + " a remark\n" + text
	}
	text = candle.Block.Start + " a remark " + candle.Block.End + "\n" + text

	require.Len(t, candle.Servers, 1)
	server := set.Server[candle.Servers[0]]
	s := startServer(t, shop, server.Command, server.Args...)
	assert.Contains(t, s.begin(shop, server.Config, `{}`), "documentFormattingProvider")
	s.finds(s.open(filepath.Join(shop, tide), candle.Name, text)) // nothing: the remarks are remarks
	assert.Zero(t, s.end())
}

// helixes are the Helix editors to try. Debian has it from 13 on, so that it is
// not asked for by .ci/run.
func helixes(t *testing.T) []string {
	if os.Getenv("EDITORS_HELIX") == "" {
		if _, err := exec.LookPath("hx"); err != nil {
			t.Skip("Helix (hx) is not installed")
		}
	}
	if _, err := exec.LookPath("tmux"); err != nil {
		missing(t, "tmux is not installed")
	}
	return commands(t, "EDITORS_HELIX", "hx")
}

// helix is one in a terminal of tmux: keys are typed there, and what is asserted
// is what stands on the screen and on disk.
type helix struct {
	t      *testing.T
	socket string
	scrap  string // a file that it writes what it holds into
}

func startHelix(t *testing.T, command, bin, shop string) *helix {
	t.Helper()
	home, err := os.MkdirTemp("", "h-") // short, since names of sockets are
	require.NoError(t, err)
	t.Cleanup(func() { os.RemoveAll(home) })
	require.NoError(t, os.CopyFS(home+"/.config/helix", os.DirFS("helix")))
	require.NoError(t, os.WriteFile(home+"/.config/helix/config.toml", []byte("[editor.lsp]\ndisplay-inlay-hints = true\n"), 0o644))
	h := &helix{t: t, socket: home + "/s", scrap: home + "/held"}
	cmd := exec.Command("tmux", "-S", h.socket, "-f", "/dev/null", "new-session", "-d", "-x", "220", "-y", "60", "exec "+command)
	cmd.Dir = shop
	cmd.Env = append(os.Environ(), "HOME="+home, "XDG_CONFIG_HOME="+home+"/.config", "XDG_CACHE_HOME="+home, "TMUX=", "SHELL=/bin/sh", "LC_ALL=C.UTF-8", "PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
	t.Cleanup(func() {
		if t.Failed() {
			t.Log(h.screen())
		}
		exec.Command("tmux", "-S", h.socket, "kill-server").Run()
	})
	h.shows("[scratch]")
	return h
}

func (h *helix) screen() string {
	out, _ := exec.Command("tmux", "-S", h.socket, "capture-pane", "-p").Output()
	return regexp.MustCompile(`\n{2,}`).ReplaceAllString(string(out), "\n")
}

// keys presses keys, named as tmux names them.
func (h *helix) keys(names ...string) {
	h.t.Helper()
	for _, name := range names {
		require.NoError(h.t, exec.Command("tmux", "-S", h.socket, "send-keys", name).Run())
		time.Sleep(50 * time.Millisecond)
	}
}

// typed types a text, character by character.
func (h *helix) typed(text string) {
	h.t.Helper()
	for _, r := range text {
		require.NoError(h.t, exec.Command("tmux", "-S", h.socket, "send-keys", "-l", string(r)).Run())
		time.Sleep(30 * time.Millisecond) // as a person does
	}
}

// leaves presses Escape until a piece does not stand on the screen any longer.
// What is pressed too soon after it would be taken for Alt and that key.
func (h *helix) leaves(piece string) {
	h.t.Helper()
	eventually(h.t, piece+" to go", func() (any, bool) {
		if !strings.Contains(h.screen(), piece) {
			return nil, true
		}
		h.keys("Escape")
		time.Sleep(200 * time.Millisecond)
		return h.screen(), false
	})
}

func (h *helix) command(line string) {
	h.t.Helper()
	h.typed(":" + line)
	h.keys("Enter")
}

// shows waits until all pieces stand on the screen.
func (h *helix) shows(pieces ...string) {
	h.t.Helper()
	eventually(h.t, strings.Join(pieces, ", "), func() (any, bool) {
		screen := h.screen()
		for _, piece := range pieces {
			if !strings.Contains(screen, piece) {
				return screen, false
			}
		}
		return screen, true
	})
}

// again does something until a piece stands on the screen for it: what the
// server answers is dropped by the editor where it did something else meanwhile.
func (h *helix) again(piece string, do func()) {
	h.t.Helper()
	eventually(h.t, piece, func() (any, bool) {
		do()
		for range 20 {
			if strings.Contains(h.screen(), piece) {
				return nil, true
			}
			time.Sleep(50 * time.Millisecond)
		}
		return h.screen(), false
	})
}

// holds waits until the text it holds, saved or not, is that.
func (h *helix) holds(want string) {
	h.t.Helper()
	os.Remove(h.scrap)
	eventually(h.t, "the text", func() (any, bool) {
		h.command("pipe-to cat > " + h.scrap)
		time.Sleep(100 * time.Millisecond)
		got, _ := os.ReadFile(h.scrap)
		return difference(want, string(got)), string(got) == want
	})
}

// difference is the first line that is not as wanted.
func difference(want, got string) string {
	wanted := strings.Split(want, "\n")
	for i, line := range strings.Split(got, "\n") {
		if i == len(wanted) || line != wanted[i] {
			return fmt.Sprintf("line %d is %q", i+1, line)
		}
	}
	return fmt.Sprintf("it ends after %q", got[max(0, len(got)-60):])
}

// open opens a file, and has all of it selected, so that holds is asked of it.
func (h *helix) open(file string) {
	h.t.Helper()
	h.command("open " + file)
	h.shows(" " + file + " ")
}

// on selects the first place of a piece.
func (h *helix) on(piece string) {
	h.t.Helper()
	h.keys("g", "g", "/")
	h.typed(regexp.QuoteMeta(piece))
	h.keys("Enter")
}

func (h *helix) replace(old, new string) {
	h.t.Helper()
	h.on(old)
	h.keys("c")
	h.typed(new)
	h.leaves(" INS ")
}

// A maker opens a recipe, types a fault, reads what is said about it, has it put
// right, completes a step, renames a wax, lays a file out, and saves.
func TestHelix(t *testing.T) {
	for _, command := range helixes(t) {
		t.Run(versionOf(t, command), func(t *testing.T) {
			bin, recordings := recorded(t)
			shop := prepared(t)
			was := texts(t, shop)
			h := startHelix(t, command, bin, shop)
			h.open(tide)

			h.replace("5 % of wax", "7 % of wax")
			h.shows("7 % of wax is over what Northlight paraffin, pillar grade holds (6 % of wax) by 12.4 g")
			// Figures stand beside the text; Helix asks for them when something is typed.
			h.shows(`load = "7 % of wax" 6.54 % of total · 3.06 oz (86.8 g)`, `at   = "183 °F" 83.9 °C`)
			h.again("more fragrance than the wax holds", func() { h.keys("Space", "k") })
			h.shows("6.54 % of total")
			h.leaves("more fragrance than the wax holds")
			h.keys("Space", "a")
			h.shows("lower the load to 6 % of wax", "state it as a load")
			h.keys("Enter") // the first of them
			h.shows(`load = "6 % of wax"`)
			h.keys("%")
			mended := strings.Replace(was[tide], "5 % of wax", "6 % of wax", 1)
			h.holds(mended)
			h.command("write")

			h.on(`step "trim base" {}`)
			h.keys("o")
			h.typed(`step "unm`)
			h.shows("unmold         event")
			time.Sleep(time.Second) // the list comes anew while it is filtered
			h.again(`after = ""`, func() { h.keys("C-n") })
			h.keys("Enter")
			h.leaves(" INS ")
			h.keys("%")
			h.holds(strings.Replace(mended, `step "trim base" {}`, "step \"trim base\" {}\n  step \"unmold\" {\n    after = \"\"\n  }", 1))
			h.command("reload")
			h.keys("%")
			h.holds(mended)

			h.keys("Space", "s")
			h.shows("Tide and thyme pillar", "step second pour")
			h.leaves("method step second pour")

			h.on(`northlight-pillar`)
			h.keys("Space", "r")
			h.shows("rename-to:")
			h.keys("C-u")
			h.typed("northlight-tall")
			h.keys("Enter")
			h.shows(`wax "northlight-tall" {`)
			h.command("write-all")
			want := map[string]string{}
			for name, text := range was {
				text = strings.ReplaceAll(text, `"northlight-pillar"`, `"northlight-tall"`)
				want[name] = strings.ReplaceAll(text, `"wax northlight-pillar: 100 % of wax"`, `"wax northlight-tall: 100 % of wax"`)
			}
			want[tide] = strings.Replace(want[tide], "5 % of wax", "6 % of wax", 1)
			eventually(t, "the files", func() (any, bool) { now := texts(t, shop); return now[tide], sameButCodes(want, now) })

			const tin = "recipes/bosun-tin.candle.hcl"
			sound := read(t, shop, tin)
			ragged := strings.NewReplacer("\n  title ", "\n      title ", " = \"", "=  \"").Replace(sound)
			require.NotEqual(t, sound, ragged)
			require.NoError(t, os.WriteFile(filepath.Join(shop, tin), []byte(ragged), 0o644))
			h.command("reload-all")
			h.open(tin)
			h.keys("g", "g")
			h.again(`  title    = "Bosun's tin`, func() { h.command("format") })
			h.keys("%")
			h.holds(sound)
			h.command("write")
			eventually(t, "the layout", func() (any, bool) { text := read(t, shop, tin); return text, text == sound })

			// A batch sheet, of what is saved.
			h.command("sh wickrule sheet bosun-tin || true")
			h.shows("Larkspur Quay Candleworks. Jar, as written")
			h.leaves("Larkspur Quay Candleworks")
			h.command("quit-all!")
			eventually(t, "the end", func() (any, bool) {
				return nil, exec.Command("tmux", "-S", h.socket, "has-session").Run() != nil
			})
			valid(t, recordings)
		})
	}
}
