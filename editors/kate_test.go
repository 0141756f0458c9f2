package editors

import (
	"bytes"
	"encoding/json"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Kate has no way to be asked what it holds, so that its buffers are taken from
// what it tells the server, its findings from what the server last told it, and
// both are held against the files it saves and what a check prints. That it
// draws the mark, and pops up hovers and offers, is seen on its screen.
func TestKate(t *testing.T) {
	for _, needed := range []string{"kate", "Xvfb", "openbox", "xdotool"} {
		if _, err := exec.LookPath(needed); err != nil {
			t.Skip(needed + " is not installed") // not asked for by .ci/run: Kate brings a desktop with it
		}
	}
	bin, recordings := recorded(t)
	shop := prepared(t)
	k := startKate(t, bin, recordings, filepath.Join(shop, tide))
	work(t, shop, k)
	k.quickFix(shop)
	k.goes(shop)
	k.quit()
	valid(t, recordings)
}

// kate is one on a screen of its own.
type kate struct {
	*display
	recordings string
	path       string // of the document shown
	cmd        *exec.Cmd
	undone     string // the text before the last completion
}

// The colors in which the line of a finding that must be put right is drawn, in
// Kate's own light theme: the line the cursor is in, and others.
var (
	wrongHere  = color{248, 222, 221}
	wrongThere = color{255, 229, 229}
)

// startKate starts one with a clean home and the set-up of this folder, and lets
// it start the server when it asks.
func startKate(t *testing.T, bin, recordings, path string) *kate {
	t.Helper()
	k := &kate{display: startDisplay(t), recordings: recordings, path: path}
	home := t.TempDir()
	for from, to := range map[string]string{
		"kate/settings.json": ".config/kate/lspclient/settings.json",
		"kate/candle.xml":    ".local/share/org.kde.syntax-highlighting/syntax/candle.xml",
	} {
		data, err := os.ReadFile(from)
		require.NoError(t, err)
		require.NoError(t, os.MkdirAll(filepath.Dir(filepath.Join(home, to)), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(home, to), data, 0o644))
	}
	require.NoError(t, os.Mkdir(home+"/run", 0o700))
	k.cmd = exec.Command("kate", "--new", "--block", path)
	k.cmd.Env = append(os.Environ(), "HOME="+home, "XDG_CONFIG_HOME="+home+"/.config", "XDG_DATA_HOME="+home+"/.local/share",
		"XDG_CACHE_HOME="+home+"/.cache", "XDG_STATE_HOME="+home+"/.local/state", "XDG_RUNTIME_DIR="+home+"/run", "DBUS_SESSION_BUS_ADDRESS=disabled:",
		"DISPLAY="+k.number, "WAYLAND_DISPLAY=", "QT_QPA_PLATFORM=xcb", "LC_ALL=C.UTF-8", "LANGUAGE=en",
		"PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"))
	var complaints screen
	k.cmd.Stdout, k.cmd.Stderr = &complaints, &complaints
	require.NoError(t, k.cmd.Start())
	t.Cleanup(func() {
		if t.Failed() {
			t.Log(k.titles(), complaints.last(2000))
		}
		if k.cmd.ProcessState == nil {
			k.cmd.Process.Kill()
			k.cmd.Wait()
		}
	})
	k.dialog("LSP server start requested", func() { k.press("alt+y") })
	window := k.focus(filepath.Base(path))
	_, err := k.tool("windowmove", window, "0", "0", "windowsize", "--sync", window, "1270", "870", "mousemove", "900", "5") // the mouse shows no hover there
	require.NoError(t, err)
	return k
}

func (k *kate) quit() {
	k.main()
	k.press("ctrl+q")
	done := make(chan error, 1)
	go func() { done <- k.cmd.Wait() }()
	select {
	case <-done:
	case <-time.After(20 * time.Second):
		require.Fail(k.t, "the editor does not end", k.titles())
	}
}

// main sends keys to the window of the document.
func (k *kate) main() { k.t.Helper(); k.focus(filepath.Base(k.path)) }

// said is one message between Kate and the server, and the answer where it is a
// request of Kate's.
type said struct {
	From    string
	Message struct {
		ID     *int
		Method string
		Params struct {
			TextDocument struct {
				URI, Text string
				Version   *int
			}
			ContentChanges []struct {
				Range *struct{}
				Text  string
			}
			URI         string
			Version     *int
			Diagnostics []struct {
				Range    struct{ Start, End struct{ Line, Character int } }
				Severity int
				Code     string
				Message  string
			}
		}
		Result json.RawMessage
	}
}

// heard is everything said so far.
func (k *kate) heard() (list []said) {
	k.t.Helper()
	files, _ := filepath.Glob(k.recordings + "/*.jsonl")
	for _, name := range files {
		data, err := os.ReadFile(name)
		require.NoError(k.t, err)
		for _, line := range bytes.Split(data, []byte("\n")) {
			var m said
			if json.Unmarshal(line, &m) == nil && m.From != "" { // else it is being written
				list = append(list, m)
			}
		}
	}
	return list
}

func (k *kate) uri() string { return (&url.URL{Scheme: "file", Path: k.path}).String() }

// told is what Kate last told of the document, and whether it told anything.
func (k *kate) told() (text string, version int, ok bool) {
	k.t.Helper()
	for _, m := range k.heard() {
		doc := m.Message.Params.TextDocument
		if m.From != "client" || doc.URI != k.uri() {
			continue
		}
		switch m.Message.Method {
		case "textDocument/didOpen":
			text, ok = doc.Text, true
		case "textDocument/didChange":
			for _, c := range m.Message.Params.ContentChanges {
				require.Nil(k.t, c.Range, "Kate sends whole texts")
				text = c.Text
			}
		default:
			continue
		}
		if doc.Version != nil {
			version = *doc.Version
		}
	}
	return text, version, ok
}

// answer waits for the answer to a request made after what was heard before.
func (k *kate) answer(before int, method string, result any) {
	k.t.Helper()
	eventually(k.t, "the answer to "+method, func() (any, bool) {
		id, methods := -1, []string{}
		for i, m := range k.heard() {
			if i < before {
				continue
			}
			methods = append(methods, m.From+" "+m.Message.Method)
			switch {
			case m.From == "client" && m.Message.Method == method && m.Message.ID != nil:
				id = *m.Message.ID
			case m.From == "server" && m.Message.Method == "" && m.Message.ID != nil && *m.Message.ID == id && len(m.Message.Result) > 0:
				require.NoError(k.t, json.Unmarshal(m.Message.Result, result), string(m.Message.Result))
				return nil, true
			}
		}
		return methods, false
	})
}

func (k *kate) open(path string) {
	k.t.Helper()
	if path != k.path {
		k.main()
		k.press("ctrl+o")
		k.dialog("Open File", func() {
			k.typed(path)
			k.press("Return")
		})
		k.path = path
		k.main()
	}
	eventually(k.t, "the document to be opened", func() (any, bool) { text, _, ok := k.told(); return text, ok })
	k.settled()
}

func (k *kate) text() string { k.t.Helper(); text, _, _ := k.told(); return text }

func (k *kate) cursor(piece string, further int) {
	k.t.Helper()
	text := k.text()
	at := strings.Index(text, piece)
	require.GreaterOrEqual(k.t, at, 0, piece)
	at += len(string([]rune(text[at:])[:further]))
	line := text[strings.LastIndexByte(text[:at], '\n')+1 : at]
	k.main()
	k.press("ctrl+Home")
	k.press(slices.Repeat([]string{"Down"}, strings.Count(text[:at], "\n"))...)
	k.press(slices.Repeat([]string{"Right"}, len([]rune(line)))...)
}

func (k *kate) replace(old, new string) {
	k.t.Helper()
	k.cursor(old, 0)
	k.press(slices.Repeat([]string{"Delete"}, len([]rune(old)))...)
	k.written(new)
}

// written types a text, and closes the offers that popped up at it: they would
// take the next keys.
func (k *kate) written(text string) {
	k.t.Helper()
	windows := len(k.windows(""))
	k.typed(text)
	eventually(k.t, "what was typed", func() (any, bool) { now := k.text(); return now, strings.Contains(now, text) })
	eventually(k.t, "the end of the offers", func() (any, bool) {
		k.settled()
		k.press("Escape")
		k.settled()
		now := len(k.windows(""))
		return now, now <= windows // fewer, if some stood there already
	})
}

func (k *kate) findings() []finding {
	k.t.Helper()
	text, version, _ := k.told()
	list := []finding{}
	current := false
	lines := strings.Split(text, "\n")
	for _, m := range k.heard() {
		p := m.Message.Params
		if m.Message.Method != "textDocument/publishDiagnostics" || p.URI != k.uri() {
			continue
		}
		list, current = []finding{}, p.Version == nil || *p.Version == version
		for _, d := range p.Diagnostics {
			f := finding{Line: d.Range.Start.Line + 1, Code: d.Code, Message: d.Message, Severity: d.Severity}
			if d.Range.Start.Line == d.Range.End.Line && d.Range.Start.Line < len(lines) {
				units := utf16.Encode([]rune(lines[d.Range.Start.Line]))
				if d.Range.Start.Character <= d.Range.End.Character && d.Range.End.Character <= len(units) {
					f.Text = string(utf16.Decode(units[d.Range.Start.Character:d.Range.End.Character]))
				}
			}
			list = append(list, f)
		}
	}
	if !current {
		return []finding{{Message: "the findings are of another text"}}
	}
	return list
}

// marked says how high the lines are that are drawn as wrong, in pixels.
func (k *kate) marked() (pixels int) {
	k.t.Helper()
	for _, of := range []color{wrongHere, wrongThere} {
		for _, wide := range k.lines(of) {
			if wide > 500 {
				pixels++
			}
		}
	}
	return pixels
}

// chosen is what is under a letter in the menu LSP Client.
func (k *kate) chosen(letter string) {
	k.t.Helper()
	k.popped("the menu", func() { k.press("alt+l") })
	k.settled()
	k.press(letter)
}

func (k *kate) hover() string {
	k.t.Helper()
	eventually(k.t, "one line to be drawn as wrong", func() (any, bool) { high := k.marked(); return high, 8 < high && high < 30 })
	before := len(k.heard())
	var result struct{ Contents struct{ Value string } }
	k.popped("the hover", func() {
		k.press("Left", "Left") // into the number: Kate asks at a word only
		k.chosen("y")           // Symbol Info
		k.answer(before, "textDocument/hover", &result)
	})
	k.press("Escape", "Right", "Right")
	return result.Contents.Value
}

func (k *kate) complete(after, typed string) (offers []string) {
	k.t.Helper()
	k.undone = k.text()
	k.cursor(after, 0)
	k.press("End", "Return")
	k.written(typed)
	before := len(k.heard())
	var result struct{ Items []struct{ Label string } }
	k.popped("the offers", func() {
		k.press("ctrl+space")
		k.answer(before, "textDocument/completion", &result)
	})
	k.settled()
	for _, item := range result.Items {
		if strings.HasPrefix(item.Label, typed[strings.LastIndexAny(typed, ` "`)+1:]) { // Kate picks
			offers = append(offers, item.Label)
		}
	}
	k.press("Return")
	eventually(k.t, "the completion", func() (any, bool) {
		text := k.text()
		_, behind, _ := strings.Cut(text, after)
		return behind, len(offers) > 0 && strings.Contains(text, `"`+offers[0]+"\"\n") // Kate has closed the quote itself
	})
	return offers
}

func (k *kate) undo() {
	k.t.Helper()
	for range 40 {
		if k.text() == k.undone {
			return
		}
		k.press("ctrl+z")
		k.settled()
	}
}

func (k *kate) act(title string) (titles []string) {
	k.t.Helper()
	before := len(k.heard())
	var actions []struct{ Title string }
	k.popped("the actions", func() {
		k.press("alt+Return")
		k.answer(before, "textDocument/codeAction", &actions)
	})
	for _, a := range actions {
		titles = append(titles, a.Title)
	}
	k.settled()
	at := slices.Index(titles, title)
	require.GreaterOrEqual(k.t, at, 0, titles)
	k.press(slices.Repeat([]string{"Down"}, at+1)...)
	k.press("Return")
	return titles
}

func (k *kate) rename(to string) {
	k.t.Helper()
	eventually(k.t, "nothing to be drawn as wrong", func() (any, bool) { high := k.marked(); return high, high == 0 }) // the repair is made by now
	k.press("F2")
	k.dialog("Rename", func() {
		k.typed(to) // the whole key is selected
		k.press("Return")
	})
	k.main()
}

func (k *kate) layOut() { k.t.Helper(); k.main(); k.press("ctrl+t", "f") }

func (k *kate) hints() ([]string, bool)  { return nil, false } // Kate 22.12 asks for none
func (k *kate) lenses() ([]string, bool) { return nil, false }

func (k *kate) symbols() (list []string) {
	k.t.Helper()
	type symbol struct {
		Name     string
		Children []json.RawMessage
	}
	var result []json.RawMessage
	k.answer(0, "textDocument/documentSymbol", &result)
	var names func([]json.RawMessage)
	names = func(all []json.RawMessage) {
		for _, data := range all {
			var s symbol
			require.NoError(k.t, json.Unmarshal(data, &s))
			list = append(list, s.Name)
			names(s.Children)
		}
	}
	names(result)
	return list
}

func (k *kate) save() { k.t.Helper(); k.main(); k.press("ctrl+l") }

// quickFix has the finding in the cursor's line put right by the key for it:
// Kate makes everything at once that it is answered.
func (k *kate) quickFix(shop string) {
	k.t.Helper()
	was := k.text()
	k.replace("6 % of wax", "7 % of wax")
	eventually(k.t, "the finding", func() (any, bool) {
		names := codes(k.findings())
		return names, slices.Contains(names, "fragrance-over-limit")
	})
	k.cursor(`"7 % of wax"`, 3)
	k.settled()
	k.press("ctrl+period")
	eventually(k.t, "the load to be lowered, and nothing else", func() (any, bool) { text := k.text(); return text, text == was })
	k.settled()
	require.Equal(k.t, was, k.text())
	before := texts(k.t, shop)
	k.save()
	k.settled()
	require.Equal(k.t, before, texts(k.t, shop))
}

// goes follows a wax to the shelf, and lists where it is named.
func (k *kate) goes(shop string) {
	k.t.Helper()
	k.cursor(`"northlight-tall"`, 3)
	k.chosen("g") // Go to Definition
	k.path = filepath.Join(shop, waxes)
	k.main()
	before := len(k.heard())
	k.press("ctrl+alt+l")
	var places []struct{ URI string }
	k.answer(before, "textDocument/references", &places)
	var named []string
	for _, p := range places {
		named = append(named, strings.TrimPrefix(p.URI, (&url.URL{Scheme: "file", Path: shop + "/"}).String()))
	}
	slices.Sort(named)
	assert.Subset(k.t, named, []string{waxes, tide, "rules/mixing.candle.hcl"})
	assert.Len(k.t, slices.Compact(named), 7)
}
