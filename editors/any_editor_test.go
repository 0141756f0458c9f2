package editors

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// page is any-editor.md.
func page(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("any-editor.md")
	require.NoError(t, err)
	return string(text)
}

// rows are the first cells of the table under a heading, without their quotes,
// and what stands in each row.
func rows(t *testing.T, heading string) (names []string, whole map[string]string) {
	t.Helper()
	_, text, found := strings.Cut(page(t), "\n## "+heading+"\n")
	require.True(t, found, heading)
	text, _, _ = strings.Cut(text, "\n## ")
	whole = map[string]string{}
	for _, m := range regexp.MustCompile("(?m)^\\| `([^`]+)` \\|(.*)\\|$").FindAllStringSubmatch(text, -1) {
		names = append(names, m[1])
		whole[m[1]] = m[2]
	}
	require.NotEmpty(t, names, heading)
	return names, whole
}

// told is what the page says is to be said to an editor that asks for something.
func told(t *testing.T, what string) string {
	t.Helper()
	m := regexp.MustCompile(`(?m)^\| ` + regexp.QuoteMeta(what) + " \\| (?:[^`|]*)`([^`]+)`").FindStringSubmatch(page(t))
	require.NotNil(t, m, what)
	return m[1]
}

// served is a server started as the page says, in a shop that it is told of,
// with a recipe open that has a finding at each of two levels.
func served(t *testing.T, options any, can string) (s *server, shop, uri string) {
	t.Helper()
	shop = prepared(t)
	s = startServer(t, shop, told(t, "command"), told(t, "arguments"))
	s.begin(shop, options, can)
	uri = s.open(filepath.Join(shop, tide), told(t, "language"), strings.Replace(read(t, shop, tide), "5 % of wax", "6 % of wax", 1))
	return s, shop, uri
}

const runsCommands = `{"workspace": {"applyEdit": true, "executeCommand": {}}}`

// What the server announces is on the page, and nothing else.
func TestAnyEditorKnowsWhatIsAnnounced(t *testing.T) {
	s := startServer(t, t.TempDir(), "wickrule", "lsp", "--stdio")
	can := s.begin(t.TempDir(), nil, `{"textDocument": {"diagnostic": {}}}`) // one that asks for findings is told that it may
	var announced []string
	for name := range can {
		if strings.HasSuffix(name, "Provider") {
			announced = append(announced, name)
		}
	}
	named, _ := rows(t, "What is announced")
	assert.ElementsMatch(t, announced, named)
	assert.True(t, slices.IsSorted(named))

	var commands struct {
		Commands []string `json:"commands"`
	}
	require.NoError(t, json.Unmarshal(can["executeCommandProvider"], &commands))
	named, _ = rows(t, "Commands")
	assert.ElementsMatch(t, commands.Commands, named)
	assert.Zero(t, s.end())
}

// Each command does with the arguments of the page what the page says.
func TestAnyEditorRunsTheCommands(t *testing.T) {
	s, _, uri := served(t, nil, runsCommands)
	s.finds(uri, "fragrance-near-limit", "test-burn-stale")
	_, table := rows(t, "Commands")
	// run has a server execute a command with the arguments that its row names.
	run := func(s *server, command, uri string) (answer any) {
		t.Helper()
		values := map[string]any{
			"the URI of a document": uri, "the URI of any document of the shop": uri,
			"the key of a recipe of its shop": "tide-pillar", "the name of a rule": "test-burn-stale",
		}
		var arguments []any
		for _, words := range strings.Split(strings.TrimSpace(strings.Split(table[command], "|")[0]), ", ") {
			if value, known := values[words]; known {
				arguments = append(arguments, value)
			} else {
				assert.True(t, strings.HasPrefix(words, "which "), words) // more about the one before
			}
		}
		require.NoError(t, s.ask("workspace/executeCommand", map[string]any{"command": command, "arguments": arguments}, &answer))
		return answer
	}
	sheet := run(s, "wickrule.sheet", uri)
	assert.Contains(t, sheet, "# ")
	assert.Contains(t, sheet, "Tide and thyme pillar")
	assert.Contains(t, run(s, "wickrule.explain", uri), "To put it right")

	// A slip that is safe to put right.
	for _, command := range []string{"wickrule.mendFile", "wickrule.mendShop"} {
		s, shop, _ := served(t, nil, runsCommands)
		slip := s.open(filepath.Join(shop, tide), "candle", strings.Replace(read(t, shop, tide), `"trim base"`, `"trim bsae"`, 1))
		sentence := run(s, command, slip)
		assert.Equal(t, "1 repair made", sentence)
		s.mu.Lock()
		require.Len(t, s.edits, 1)
		assert.Contains(t, string(s.edits[0]), "trim base")
		s.mu.Unlock()
		eventually(t, "the message", func() (any, bool) {
			s.mu.Lock()
			defer s.mu.Unlock()
			return s.messages, len(s.messages) == 1 && s.messages[0] == sentence
		})
	}

	// A client that knows commands only is given one that applies.
	var actions []struct {
		Command   string            `json:"command"`
		Arguments []json.RawMessage `json:"arguments"`
	}
	at := map[string]int{"line": 11, "character": 40}
	require.NoError(t, s.ask("textDocument/codeAction", map[string]any{"textDocument": map[string]string{"uri": uri}, "range": map[string]any{"start": at, "end": at}, "context": map[string]any{"diagnostics": []any{}}}, &actions))
	require.NotEmpty(t, actions)
	assert.Equal(t, "wickrule.apply", actions[0].Command)
	var nothing any
	require.NoError(t, s.ask("workspace/executeCommand", actions[0], &nothing))
	assert.Nil(t, nothing)
	s.mu.Lock()
	assert.Len(t, s.edits, 1)
	s.mu.Unlock()

	// And the first line above a recipe shows its sheet; others are to be read.
	var lenses []struct {
		Command struct {
			Command   string `json:"command"`
			Arguments []any  `json:"arguments"`
		} `json:"command"`
	}
	require.NoError(t, s.ask("textDocument/codeLens", map[string]any{"textDocument": map[string]string{"uri": uri}}, &lenses))
	require.Greater(t, len(lenses), 1)
	assert.Equal(t, "wickrule.sheet", lenses[0].Command.Command)
	assert.Equal(t, []any{uri, "tide-pillar"}, lenses[0].Command.Arguments)
	assert.Empty(t, lenses[1].Command.Command)
}

// Each setting of the page counts, wherever it is said, and there is none beside.
func TestAnyEditorSets(t *testing.T) {
	named, _ := rows(t, "Settings")
	source, err := os.ReadFile("../lsp/settings.go")
	require.NoError(t, err)
	_, fields, _ := strings.Cut(string(source), "type settings struct {")
	fields, _, _ = strings.Cut(fields, "}")
	var read []string
	for _, m := range regexp.MustCompile("`json:\"(\\w+)\"`").FindAllStringSubmatch(fields, -1) {
		read = append(read, m[1])
	}
	require.ElementsMatch(t, read, named)

	beside := func(s *server, method, uri string) (count int) {
		var list []any
		whole := map[string]any{"start": map[string]int{"line": 0, "character": 0}, "end": map[string]int{"line": 500, "character": 0}}
		require.NoError(t, s.ask(method, map[string]any{"textDocument": map[string]string{"uri": uri}, "range": whole}, &list))
		return len(list)
	}
	usual := map[string]any{"level": "consider", "hints": true, "lenses": true}
	quiet := map[string]any{"level": "must", "hints": false, "lenses": false}
	shows := func(s *server, uri string, quiet bool) {
		t.Helper()
		if quiet {
			s.finds(uri, "test-burn-stale")
		} else {
			s.finds(uri, "fragrance-near-limit", "test-burn-stale")
		}
		assert.Equal(t, quiet, beside(s, "textDocument/inlayHint", uri) == 0)
		assert.Equal(t, quiet, beside(s, "textDocument/codeLens", uri) == 0)
	}
	for name := range quiet {
		require.Contains(t, named, name)
	}
	s, _, uri := served(t, nil, `{}`)
	shows(s, uri, false)
	s, _, uri = served(t, usual, `{}`)
	shows(s, uri, false)
	s, _, uri = served(t, quiet, `{}`)
	shows(s, uri, true)
	s.tell("workspace/didChangeConfiguration", map[string]any{"settings": map[string]any{"wickrule": usual}})
	shows(s, uri, false)

	// A client that is asked.
	s, _, uri = served(t, nil, `{"workspace": {"configuration": true}}`)
	shows(s, uri, false)
	s.mu.Lock()
	s.settings = quiet
	s.mu.Unlock()
	s.tell("workspace/didChangeConfiguration", map[string]any{"settings": nil})
	shows(s, uri, true)
}

// How positions are counted, where a shop begins, and how it ends.
func TestAnyEditorIsToldTheRest(t *testing.T) {
	m := regexp.MustCompile("the first of `([^`]+)`, `([^`]+)` and `([^`]+)` that it offers; as `([^`]+)`").FindStringSubmatch(page(t))
	require.NotNil(t, m)
	folder := t.TempDir()
	agreed := func(can string) (encoding string) {
		s := startServer(t, folder, "wickrule", "lsp")
		require.NoError(t, json.Unmarshal(s.begin(folder, nil, can)["positionEncoding"], &encoding))
		assert.Zero(t, s.end())
		return encoding
	}
	for _, encoding := range m[1:4] {
		assert.Equal(t, encoding, agreed(`{"general": {"positionEncodings": ["utf-7", "`+encoding+`", "utf-16"]}}`))
	}
	assert.Equal(t, m[4], agreed(`{}`))

	// A root that has nothing to do with it, and two shops.
	one, other := prepared(t), prepared(t)
	s := startServer(t, folder, "wickrule", "lsp")
	s.begin(folder, nil, `{}`)
	for _, shop := range []string{one, other} {
		require.FileExists(t, filepath.Join(shop, told(t, "root of a project")))
		s.finds(s.open(filepath.Join(shop, tide), "plaintext", read(t, shop, tide)))
	}
	// Without a shop file, or with another name, its stock is not found.
	alone := s.open(filepath.Join(folder, "alone.candle.hcl"), "candle", read(t, one, tide))
	named := s.open(filepath.Join(one, "recipes/tide-pillar.hcl"), "candle", read(t, one, tide))
	for _, uri := range []string{alone, named} {
		eventually(t, "unknown stock", func() (any, bool) {
			s.mu.Lock()
			defer s.mu.Unlock()
			return s.findings[uri], slices.Contains(s.findings[uri], "unknown-key")
		})
	}
	for _, remark := range []string{"# no", "// no", "/* no */"} {
		s.finds(s.open(filepath.Join(one, "recipes/remark.candle.hcl"), "candle", remark+"\n"))
	}
	assert.Zero(t, s.end())
	assert.Empty(t, s.complaints.String())
	matches, err := filepath.Glob(filepath.Join(one, "recipes", told(t, "files")))
	require.NoError(t, err)
	assert.Contains(t, matches, filepath.Join(one, tide))

	// Ends that are none.
	left := exec.Command(program(t), "lsp")
	_ = left.Run() // its standard input is empty
	assert.Equal(t, 1, left.ProcessState.ExitCode())
	unknown := exec.Command(program(t), "lsp", "--socket")
	out, _ := unknown.CombinedOutput()
	assert.Equal(t, 2, unknown.ProcessState.ExitCode())
	assert.Contains(t, string(out), "--socket")
	for _, verb := range []string{"version", "check"} {
		assert.Contains(t, page(t), "`wickrule "+verb+"`")
		assert.NoError(t, exec.Command(program(t), "help", verb).Run())
	}
}
