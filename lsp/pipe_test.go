package lsp

import (
	"context"
	"encoding/json"
	"io"
	"io/fs"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// today is the day on which the demo shop is looked at in tests.
const today = "2026-10-04"

// editor is a client at the other end of a pipe.
type editor struct {
	t         *testing.T
	conn      *jsonrpc2.Conn
	result    initializeResult
	exited    chan int
	mu        sync.Mutex
	published map[string]publishDiagnosticsParams // the last of each document
	news      chan struct{}
	asked     map[string]func(json.RawMessage) any        // answers to what the server asks
	heard     func(method string, params json.RawMessage) // is told of every notification
	silent    bool                                        // does not answer what the server asks
	versions  map[string]int32
	texts     map[string]string
}

// able is the capabilities of a client that can do everything, as JSON.
const able = `{
	"general": {"positionEncodings": ["utf-16"]},
	"window": {"workDoneProgress": true, "showDocument": {"support": true}},
	"workspace": {"applyEdit": true, "configuration": true, "workspaceEdit": {"documentChanges": true, "resourceOperations": ["create"]},
		"didChangeWatchedFiles": {"dynamicRegistration": true}, "codeLens": {"refreshSupport": true}, "inlayHint": {"refreshSupport": true}},
	"textDocument": {
		"publishDiagnostics": {"relatedInformation": true, "tagSupport": {"valueSet": [1, 2]}, "versionSupport": true, "dataSupport": true},
		"codeAction": {"codeActionLiteralSupport": {"codeActionKind": {"valueSet": ["quickfix", "refactor", "source"]}}, "isPreferredSupport": true, "disabledSupport": true, "dataSupport": true},
		"completion": {"completionItem": {"snippetSupport": true, "documentationFormat": ["markdown"], "labelDetailsSupport": true, "resolveSupport": {"properties": ["documentation"]}}},
		"hover": {"contentFormat": ["markdown", "plaintext"]},
		"documentSymbol": {"hierarchicalDocumentSymbolSupport": true},
		"rename": {"prepareSupport": true}
	}
}`

// demoShop is the example shop as files below "shop".
func demoShop(t testing.TB) fstest.MapFS {
	files := fstest.MapFS{}
	require.NoError(t, fs.WalkDir(examples.Shop(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(examples.Shop(), name)
		files["shop/"+name] = &fstest.MapFile{Data: data}
		return err
	}))
	return files
}

type closer struct{}

func (closer) Close() error { return nil }

func testConfig(t testing.TB, disk fs.FS) Config {
	all := rules.All()
	return Config{
		Disk: disk,
		Folder: func(path string) (fs.FS, io.Closer, error) {
			sub, err := fs.Sub(disk, path)
			return sub, closer{}, err
		},
		Rules: func(*lint.Shop) []*lint.Rule { return all },
		Today: func() string { return today },
		Log:   func(format string, values ...any) { t.Logf(format, values...) },
	}
}

// connect starts a server on a file system and says hello. Folder is the
// workspace folder, capabilities the client's, as JSON.
func connect(t *testing.T, disk fs.FS, folder, capabilities string) *editor {
	return connectTo(t, testConfig(t, disk), folder, capabilities)
}

func connectTo(t *testing.T, config Config, folder, capabilities string) *editor {
	t.Helper()
	toServer, fromClient := io.Pipe()
	toClient, fromServer := io.Pipe()
	e := &editor{
		t: t, exited: make(chan int, 1), published: map[string]publishDiagnosticsParams{}, news: make(chan struct{}, 1),
		asked: map[string]func(json.RawMessage) any{}, versions: map[string]int32{}, texts: map[string]string{},
	}
	go func() {
		e.exited <- Serve(context.Background(), toServer, fromServer, config)
		close(e.exited)
		fromServer.Close()
		toServer.Close()
	}()
	e.conn = jsonrpc2.NewConn(context.Background(), jsonrpc2.NewBufferedStream(twoPipes{toClient, fromClient}, jsonrpc2.VSCodeObjectCodec{}), e, jsonrpc2.SetLogger(quiet{}))
	t.Cleanup(func() {
		e.conn.Close()
		<-e.exited
	})
	params := map[string]any{"processId": nil, "rootUri": nil, "capabilities": json.RawMessage(capabilities)}
	if folder != "" {
		params["rootUri"] = fileURI(folder)
	}
	var result json.RawMessage
	e.call("initialize", params, &result)
	e.result = capabilitiesIn(t, result)
	e.notify("initialized", struct{}{})
	return e
}

// capabilitiesIn reads them in two parts: those of 3.16 have a way of their own
// of being read.
func capabilitiesIn(t *testing.T, result json.RawMessage) (r initializeResult) {
	var older struct{ Capabilities protocol.ServerCapabilities }
	var newer struct {
		Capabilities struct{ PositionEncoding encoding }
	}
	require.NoError(t, json.Unmarshal(result, &older))
	require.NoError(t, json.Unmarshal(result, &newer))
	r.Capabilities.ServerCapabilities, r.Capabilities.PositionEncoding = older.Capabilities, newer.Capabilities.PositionEncoding
	return r
}

type twoPipes struct {
	io.ReadCloser
	io.WriteCloser
}

func (p twoPipes) Close() error {
	p.ReadCloser.Close()
	return p.WriteCloser.Close()
}

// Handle takes what the server sends of itself.
func (e *editor) Handle(ctx context.Context, conn *jsonrpc2.Conn, r *jsonrpc2.Request) {
	e.mu.Lock()
	heard, silent := e.heard, e.silent
	e.mu.Unlock()
	if r.Notif {
		if heard != nil {
			heard(r.Method, paramsOf(r))
		}
		if r.Method == "textDocument/publishDiagnostics" {
			var p publishDiagnosticsParams
			if err := json.Unmarshal(*r.Params, &p); err != nil {
				e.t.Errorf("%v: %s", err, *r.Params)
			}
			e.mu.Lock()
			e.published[p.URI] = p
			e.mu.Unlock()
			select {
			case e.news <- struct{}{}:
			default:
			}
		}
		return
	}
	if silent {
		return
	}
	var answer any
	e.mu.Lock()
	act := e.asked[r.Method]
	e.mu.Unlock()
	if act != nil {
		answer = act(paramsOf(r))
	}
	go conn.Reply(ctx, r.ID, answer)
}

func (e *editor) notify(method string, params any) {
	require.NoError(e.t, e.conn.Notify(context.Background(), method, params))
}

func (e *editor) call(method string, params, result any) {
	e.t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
	defer cancel()
	require.NoError(e.t, e.conn.Call(ctx, method, params, result), method)
}

// open opens a document of the file system.
func (e *editor) open(path, text string) string {
	uri := fileURI(path)
	e.versions[uri], e.texts[uri] = 1, text
	e.notify("textDocument/didOpen", protocol.DidOpenTextDocumentParams{TextDocument: protocol.TextDocumentItem{URI: uri, LanguageID: "candle", Version: 1, Text: text}})
	return uri
}

// replace edits an open document: the one place where old stands becomes new.
func (e *editor) replace(uri, old, new string) {
	e.t.Helper()
	text := e.texts[uri]
	at := strings.Index(text, old)
	require.GreaterOrEqual(e.t, at, 0, "%q is not in the text", old)
	span := schema.Span{Start: int32(at), End: int32(at + len(old))}
	r := mapper{schema.NewText(text), e.result.Capabilities.PositionEncoding}.rangeOf(span)
	e.versions[uri]++
	e.texts[uri] = text[:at] + new + text[at+len(old):]
	e.notify("textDocument/didChange", map[string]any{
		"textDocument":   map[string]any{"uri": uri, "version": e.versions[uri]},
		"contentChanges": []any{map[string]any{"range": r, "text": new}},
	})
}

// position is where a piece of text starts in an open document, and so many
// bytes further on.
func (e *editor) position(uri, piece string, further int) protocol.Position {
	e.t.Helper()
	at := strings.Index(e.texts[uri], piece)
	require.GreaterOrEqual(e.t, at, 0, "%q is not in the text", piece)
	return mapper{schema.NewText(e.texts[uri]), e.result.Capabilities.PositionEncoding}.position(int32(at + further))
}

// findings waits for the findings of the version of a document that stands.
func (e *editor) findings(uri string) []diagnostic {
	e.t.Helper()
	timeout := time.After(20 * time.Second)
	for {
		e.mu.Lock()
		p, ok := e.published[uri]
		e.mu.Unlock()
		if ok && p.Version != nil && *p.Version == e.versions[uri] {
			return p.Diagnostics
		}
		select {
		case <-e.news:
		case <-timeout:
			require.Fail(e.t, "no findings came", uri)
		}
	}
}

// textAt is the text of an open document in a range.
func (e *editor) textAt(uri string, r protocol.Range) string {
	text := schema.NewText(e.texts[uri])
	return text.Slice(mapper{text, e.result.Capabilities.PositionEncoding}.span(r))
}

// about is the parameters of a request at a place.
func (e *editor) about(uri, piece string, further int) map[string]any {
	return map[string]any{"textDocument": map[string]any{"uri": uri}, "position": e.position(uri, piece, further)}
}

const tide = "shop/recipes/tide-pillar.candle.hcl"

func TestTypingAFault(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	uri := e.open(tide, string(disk[tide].Data))
	require.Empty(t, e.findings(uri))
	e.replace(uri, `"5 % of wax"`, `"7 % of wax"`)
	found := e.findings(uri)
	require.Len(t, found, 2) // and the burns are of another formulation
	require.Equal(t, "fragrance-over-limit", found[0].Code)
	require.Equal(t, `"7 % of wax"`, e.textAt(uri, found[0].Range))
	e.replace(uri, `"7 % of wax"`, `"5 % of wax"`)
	require.Empty(t, e.findings(uri))
	e.call("shutdown", nil, nil)
	e.notify("exit", nil)
	require.Equal(t, Ended, <-e.exited)
}
