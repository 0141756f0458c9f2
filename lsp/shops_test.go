package lsp

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/examples"
	"wickrule/schema"
)

// shared is a file system that changes while it is read, as a disk does.
type shared struct {
	mu    sync.Mutex
	files fstest.MapFS
}

func (s *shared) Open(name string) (fs.File, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.files.Open(name)
}

func (s *shared) write(name, text string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	next := fstest.MapFS{}
	for n, f := range s.files {
		next[n] = f
	}
	next[name] = &fstest.MapFile{Data: []byte(text), ModTime: time.Now()}
	if text == "" { // gone
		delete(next, name)
	}
	s.files = next
}

// codes lists the codes of what is shown of a document now.
func (e *editor) codes(path string) (codes []string) {
	e.mu.Lock()
	defer e.mu.Unlock()
	for _, d := range e.published[fileURI(path)].Diagnostics {
		codes = append(codes, d.Code)
	}
	return codes
}

// sees waits until the codes shown of a document are these.
func (e *editor) sees(path string, codes ...string) {
	e.t.Helper()
	for start := time.Now(); time.Since(start) < 10*time.Second; time.Sleep(time.Millisecond) {
		if fmt.Sprint(e.codes(path)) == fmt.Sprint(codes) {
			return
		}
	}
	require.Equal(e.t, fmt.Sprint(codes), fmt.Sprint(e.codes(path)), path)
}

func (e *editor) close(uri string) {
	e.notify("textDocument/didClose", map[string]any{"textDocument": map[string]any{"uri": uri}})
}

func (e *editor) changedOnDisk(kind int, paths ...string) {
	var changes []any
	for _, p := range paths {
		changes = append(changes, map[string]any{"uri": fileURI(p), "type": kind})
	}
	e.notify("workspace/didChangeWatchedFiles", map[string]any{"changes": changes})
}

const (
	created = 1
	altered = 2
	deleted = 3
)

const lonely = "wax \"lone\" {\n  family = \"paraffin\"\n  weigth = 3\n}\n"

// A change in a stock file is seen in every recipe that leans on it, open or
// not; undoing it takes it back.
func TestStockEditReachesRecipes(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	waxes := "shop/stock/waxes.candle.hcl"
	text := string(disk[waxes].Data)
	uri := e.open(waxes, text)
	require.Empty(t, e.findings(uri))
	at := strings.Index(text, "fragrance_limit")
	line := text[at : at+strings.Index(text[at:], "\n")]
	e.replace(uri, line, `fragrance_limit = "1 % of wax"`)
	e.sees(tide, "fragrance-over-limit")
	e.replace(uri, `fragrance_limit = "1 % of wax"`, line)
	e.sees(tide)
}

func TestDocumentsWithoutAShop(t *testing.T) {
	e := connect(t, fstest.MapFS{"loose/a.candle.hcl": &fstest.MapFile{Data: []byte(lonely)}}, "", able)
	uri := e.open("loose/a.candle.hcl", lonely)
	found := e.findings(uri)
	require.NotEmpty(t, found)
	assert.Equal(t, "unknown-attribute", found[0].Code)

	for _, uri := range []string{"untitled:Untitled-1", "file:///elsewhere/notes.txt", "file:///elsewhere/Caf%C3%A9%20%C2%B0.candle.hcl"} {
		e.versions[uri], e.texts[uri] = 1, lonely
		e.notify("textDocument/didOpen", map[string]any{"textDocument": map[string]any{"uri": uri, "languageId": "candle", "version": 1, "text": lonely}})
		found := e.findings(uri)
		require.NotEmpty(t, found, uri)
		assert.Equal(t, "weigth", e.textAt(uri, found[0].Range), uri)
		e.close(uri)
		for start := time.Now(); ; time.Sleep(time.Millisecond) {
			e.mu.Lock()
			left := len(e.published[uri].Diagnostics)
			e.mu.Unlock()
			if left == 0 {
				break
			}
			require.Less(t, time.Since(start), 10*time.Second, "findings are cleared when it is closed")
		}
	}
}

// Shops beside and inside one another are kept apart, as a check keeps them.
func TestSeveralShops(t *testing.T) {
	files := fstest.MapFS{}
	for name, f := range demoShop(t) {
		rest := strings.TrimPrefix(name, "shop/")
		files["one/"+rest], files["one/inner/"+rest], files["two/"+rest] = f, f, f
	}
	name := "recipes/tide-pillar.candle.hcl"
	e := connect(t, files, "one", able)
	e.notify("workspace/didChangeWorkspaceFolders", map[string]any{"event": map[string]any{
		"added": []any{map[string]any{"uri": "file:///two", "name": "two"}}, "removed": []any{}}})
	inner := e.open("one/inner/"+name, string(files["one/inner/"+name].Data))
	require.Empty(t, e.findings(inner))
	waxes := e.open("one/stock/waxes.candle.hcl", string(files["one/stock/waxes.candle.hcl"].Data))
	e.replace(waxes, `wax "northlight-pillar"`, `wax "southlight-pillar"`)
	e.sees("one/"+name, "unknown-key")
	e.sees("one/inner/" + name)
	e.sees("two/" + name)
	e.replace(waxes, `wax "southlight-pillar"`, `wax "northlight-pillar"`)
	e.sees("one/" + name)

	spoilt := e.open("two/"+name, strings.Replace(string(files["two/"+name].Data), "tide-and-thyme", "tide-and-time", 1))
	require.NotEmpty(t, e.findings(spoilt))
	e.close(spoilt) // back to what is on disk
	e.sees("two/" + name)
}

func TestFilesChangeOnDisk(t *testing.T) {
	disk := &shared{files: demoShop(t)}
	text := string(disk.files[tide].Data)
	e := connect(t, disk, "shop", able)
	uri := e.open(tide, text)
	require.Empty(t, e.findings(uri))

	disk.write("shop/stock/more/extra.candle.hcl", lonely)
	e.changedOnDisk(created, "shop/stock/more/extra.candle.hcl")
	e.sees("shop/stock/more/extra.candle.hcl", "unused-stock", "unknown-attribute")
	disk.write("shop/stock/more/extra.candle.hcl", strings.Replace(lonely, "weigth = 3", "title = \"Lone\"", 1))
	e.changedOnDisk(altered, "shop/stock/more/extra.candle.hcl")
	e.sees("shop/stock/more/extra.candle.hcl", "unused-stock")
	disk.write("shop/stock/more/extra.candle.hcl", "")
	e.changedOnDisk(deleted, "shop/stock/more") // the folder went
	e.sees("shop/stock/more/extra.candle.hcl")

	// What is open counts, whatever is on disk.
	disk.write(tide, strings.Replace(text, "tide-and-thyme", "tide-and-time", 1))
	e.changedOnDisk(altered, tide)
	e.notify("textDocument/didChange", map[string]any{"textDocument": map[string]any{"uri": uri, "version": 9}, "contentChanges": []any{}})
	e.versions[uri] = 9 // nothing changed, yet it is said again with the version
	require.Empty(t, e.findings(uri))
	e.close(uri)
	e.sees(tide, "unknown-key")
	disk.write(tide, text)
	e.changedOnDisk(altered, tide)
	e.sees(tide)
}

// A client that cannot tell of changed files is served by looking at them.
func TestFilesChangeUnannounced(t *testing.T) {
	disk := &shared{files: demoShop(t)}
	text := string(disk.files[tide].Data)
	e := connect(t, disk, "shop", "{}")
	e.sees(tide)
	disk.write(tide, strings.Replace(text, "tide-and-thyme", "tide-and-time", 1))
	e.sees(tide, "unknown-key")
	disk.write(tide, text)
	e.sees(tide)
	disk.write("shop/stock/extra.candle.hcl", lonely)
	e.sees("shop/stock/extra.candle.hcl", "unused-stock", "unknown-attribute")
	disk.write("shop/stock/extra.candle.hcl", "")
	e.sees("shop/stock/extra.candle.hcl")
}

// While a shop file is there its folder is a shop: the files below find each
// other.
func TestShopFileComesAndGoes(t *testing.T) {
	files := demoShop(t)
	shopFile := files["shop/shop.candle.hcl"]
	delete(files, "shop/shop.candle.hcl")
	disk := &shared{files: files}
	e := connect(t, disk, "shop", able)
	uri := e.open(tide, string(files[tide].Data))
	require.NotEmpty(t, e.findings(uri), "its stock is in another folder")
	disk.write("shop/shop.candle.hcl", string(shopFile.Data))
	e.changedOnDisk(created, "shop/shop.candle.hcl")
	e.sees(tide)
	disk.write("shop/shop.candle.hcl", "")
	e.changedOnDisk(deleted, "shop/shop.candle.hcl")
	for start := time.Now(); len(e.codes(tide)) == 0; time.Sleep(time.Millisecond) {
		require.Less(t, time.Since(start), 10*time.Second)
	}
	// As a new document that is not saved yet it makes a shop as well.
	made := e.open("shop/shop.candle.hcl", string(shopFile.Data))
	e.sees(tide)
	e.close(made)
	for start := time.Now(); len(e.codes(tide)) == 0; time.Sleep(time.Millisecond) {
		require.Less(t, time.Since(start), 10*time.Second)
	}
}

func TestVersionThatDoesNotRise(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	uri := e.open(tide, string(disk[tide].Data))
	require.Empty(t, e.findings(uri))
	e.versions[uri] = -5 // replace makes it -4
	e.replace(uri, `"5 % of wax"`, `"7 % of wax"`)
	assert.NotEmpty(t, e.findings(uri))
	e.versions[uri]-- // the same once more
	e.replace(uri, `"7 % of wax"`, `"5 % of wax"`)
	e.sees(tide)
}

func TestSettings(t *testing.T) {
	disk := demoShop(t)
	faulty := "shop/zz.candle.hcl"
	disk[faulty] = &fstest.MapFile{Data: []byte(lonely)} // a must, and a consider for being unused
	e := connect(t, disk, "shop", able)
	e.sees(faulty, "unused-stock", "unknown-attribute")
	e.notify("workspace/didChangeConfiguration", map[string]any{"settings": map[string]any{"wickrule": map[string]any{"level": "must"}}})
	e.sees(faulty, "unknown-attribute")
	e.mu.Lock()
	e.asked["workspace/configuration"] = func(json.RawMessage) any { return []any{map[string]any{"level": "consider"}} }
	e.mu.Unlock()
	e.notify("workspace/didChangeConfiguration", map[string]any{"settings": nil})
	e.sees(faulty, "unused-stock", "unknown-attribute")
}

func TestPullDiagnostics(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", strings.Replace(able, `"hover":`, `"diagnostic": {}, "hover":`, 1))
	uri := e.open(tide, string(disk[tide].Data))
	about := map[string]any{"textDocument": map[string]any{"uri": uri}}
	var report documentDiagnosticReport
	e.call("textDocument/diagnostic", about, &report)
	require.Equal(t, "full", report.Kind)
	require.NotNil(t, report.Items)
	assert.Empty(t, *report.Items)
	e.replace(uri, `"5 % of wax"`, `"7 % of wax"`)
	report = documentDiagnosticReport{}
	e.call("textDocument/diagnostic", about, &report)
	require.NotNil(t, report.Items)
	require.NotEmpty(t, *report.Items)
	assert.Equal(t, "fragrance-over-limit", (*report.Items)[0].Code)
	about["previousResultId"] = report.ResultID
	report = documentDiagnosticReport{}
	e.call("textDocument/diagnostic", about, &report)
	assert.Equal(t, "unchanged", report.Kind)
	assert.Empty(t, e.codes(tide), "what is pulled is not sent as well")
}

// slowDisk takes a millisecond for each file.
type slowDisk struct{ fs.FS }

func (d slowDisk) Open(name string) (fs.File, error) {
	time.Sleep(time.Millisecond)
	return d.FS.Open(name)
}

// A shop that takes long to read shows how far it is, where the client shows
// it, and reading does not wait for a client that does not answer.
func TestProgress(t *testing.T) {
	if testing.Short() {
		t.Skip("reads a large shop")
	}
	files, err := examples.Many(1500)
	require.NoError(t, err)
	for _, answers := range []bool{true, false} {
		kinds := map[string]int{}
		var mu sync.Mutex
		below := fstest.MapFS{}
		for name, f := range files {
			below["shop/"+name] = f
		}
		e := connect(t, slowDisk{below}, "shop", able)
		e.mu.Lock()
		e.silent = !answers
		e.heard = func(method string, params json.RawMessage) {
			if method == "$/progress" {
				var p struct{ Value struct{ Kind string } }
				_ = json.Unmarshal(params, &p)
				mu.Lock()
				kinds[p.Value.Kind]++
				mu.Unlock()
			}
		}
		e.mu.Unlock()
		name := "shop/recipes/00003.candle.hcl"
		require.Empty(t, e.findings(e.open(name, string(below[name].Data))))
		mu.Lock()
		if answers {
			assert.Equal(t, 1, kinds["begin"])
			assert.Equal(t, 1, kinds["end"])
		} else {
			assert.Empty(t, kinds)
		}
		mu.Unlock()
	}
}

// An edit that touches very many recipes is seen in the open ones first.
func TestOpenOnesFirst(t *testing.T) {
	files, err := examples.Many(1500)
	require.NoError(t, err)
	below := fstest.MapFS{}
	for name, f := range files {
		below["shop/"+name] = f
	}
	var order []string
	var mu sync.Mutex
	e := connect(t, below, "shop", able)
	e.mu.Lock()
	e.heard = func(method string, params json.RawMessage) {
		var p publishDiagnosticsParams
		if method == "textDocument/publishDiagnostics" && json.Unmarshal(params, &p) == nil && len(p.Diagnostics) > 0 {
			mu.Lock()
			order = append(order, p.URI)
			mu.Unlock()
		}
	}
	e.mu.Unlock()
	// The last of the recipes of the pillar wax is open.
	open := ""
	for i := 1499; open == ""; i-- {
		if name := fmt.Sprintf("shop/recipes/%05d.candle.hcl", i); strings.Contains(string(below[name].Data), `wax "northlight-pillar"`) {
			open = e.open(name, string(below[name].Data))
		}
	}
	e.findings(open)
	waxes := "shop/stock/waxes.candle.hcl"
	uri := e.open(waxes, string(below[waxes].Data))
	e.findings(uri)
	mu.Lock()
	order = nil
	mu.Unlock()
	e.replace(uri, `wax "northlight-pillar"`, `wax "southlight-pillar"`)
	for start := time.Now(); ; time.Sleep(5 * time.Millisecond) {
		mu.Lock()
		n := len(order)
		mu.Unlock()
		if n > 100 {
			break
		}
		require.Less(t, time.Since(start), 20*time.Second)
	}
	mu.Lock()
	defer mu.Unlock()
	assert.Equal(t, []string{uri, open}, order[:2])
}

// What a finding carries besides its place and words: how loud it is, the rule,
// the place in the stock that states the limit, and that unused stock is not
// needed.
func TestWhatAFindingCarries(t *testing.T) {
	disk := demoShop(t)
	disk["shop/zz.candle.hcl"] = &fstest.MapFile{Data: []byte("dye \"slate\" {\n  title = \"Slate\"\n}\n")}
	e := connect(t, disk, "shop", able)
	e.sees("shop/zz.candle.hcl", "unused-stock")
	e.mu.Lock()
	unused := e.published[fileURI("shop/zz.candle.hcl")].Diagnostics[0]
	e.mu.Unlock()
	assert.Equal(t, []protocol.DiagnosticTag{protocol.DiagnosticTagUnnecessary}, unused.Tags)
	assert.Equal(t, protocol.DiagnosticSeverityInformation, unused.Severity)

	uri := e.open(tide, string(disk[tide].Data))
	e.replace(uri, `"5 % of wax"`, `"7 % of wax"`)
	over := e.findings(uri)[0]
	assert.Equal(t, protocol.DiagnosticSeverityError, over.Severity)
	assert.Equal(t, "wickrule", over.Source)
	assert.Equal(t, map[string]any{"rule": "fragrance-over-limit"}, over.Data)
	require.Len(t, over.RelatedInformation, 1)
	stated := over.RelatedInformation[0].Location
	assert.Equal(t, fileURI("shop/stock/waxes.candle.hcl"), stated.URI)
	waxes := schema.NewText(string(disk["shop/stock/waxes.candle.hcl"].Data))
	assert.Equal(t, `"6 % of wax"`, waxes.Slice(mapper{waxes, utf16}.span(stated.Range)))
}
