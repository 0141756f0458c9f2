package lsp

import (
	"cmp"
	"math/rand/v2"
	"os"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// A long day at the editor: edits of recipes and stock, with hovers and
// completions between them. WICKRULE_SOAK says how many, 100,000 take minutes. What the server holds in memory at the end is
// what it held after the first tenth, and no goroutine is left over.
func TestSoak(t *testing.T) {
	edits, err := strconv.Atoi(cmp.Or(os.Getenv("WICKRULE_SOAK"), "5000"))
	require.NoError(t, err)
	if testing.Short() {
		edits = 1_000
	}
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	names := []string{tide, "shop/recipes/winter-blend.candle.hcl", "shop/stock/waxes.candle.hcl", "shop/stock/wicks.candle.hcl"}
	var uris []string
	for _, name := range names {
		uris = append(uris, e.open(name, string(disk[name].Data)))
		e.findings(uris[len(uris)-1])
	}
	random := rand.New(rand.NewPCG(3, 4))
	settled := func() (heap uint64, goroutines int) {
		for i, uri := range uris { // as it was at first
			e.whole(uri, string(disk[names[i]].Data))
		}
		for i, uri := range uris {
			e.findings(uri)
			e.sees(names[i])
		}
		var m runtime.MemStats
		runtime.GC()
		runtime.GC()
		runtime.ReadMemStats(&m)
		goroutines = runtime.NumGoroutine()
		for range 100 { // what asks the client something has its answer by then
			time.Sleep(5 * time.Millisecond)
			goroutines = min(goroutines, runtime.NumGoroutine())
		}
		return m.HeapAlloc, goroutines
	}
	var heap uint64
	var goroutines int
	for i := range edits {
		if i == edits/10 {
			heap, goroutines = settled()
		}
		uri := uris[random.IntN(len(uris))]
		text := e.texts[uri]
		at := random.IntN(len(text))
		for !utf8.RuneStart(text[at]) {
			at--
		}
		_, size := utf8.DecodeRuneInString(text[at:])
		insert := string([]rune("\"{}=°a 1\n🕯")[random.IntN(10)])
		if strings.Count(text, "\n") > 1000 || i%500 == 0 {
			e.whole(uri, string(disk[names[indexOf(uris, uri)]].Data))
		} else if random.IntN(2) == 0 {
			e.edit(uri, schema.Span{Start: int32(at), End: int32(at + size)}, "")
		} else {
			e.edit(uri, schema.Span{Start: int32(at), End: int32(at)}, insert)
		}
		if i%50 == 0 {
			e.findings(uri)
			about := e.about(uri, "", at/2)
			e.call("textDocument/hover", about, nil)
			e.call("textDocument/completion", about, nil)
		}
	}
	heapEnd, goroutinesEnd := settled()
	t.Logf("%d edits: %d KB in %d goroutines after a tenth, %d KB in %d at the end", edits, heap>>10, goroutines, heapEnd>>10, goroutinesEnd)
	assert.LessOrEqual(t, float64(heapEnd), 1.1*float64(heap))
	assert.Equal(t, goroutines, goroutinesEnd)
}

func indexOf(list []string, s string) int {
	for i, v := range list {
		if v == s {
			return i
		}
	}
	return -1
}

// whole replaces the text of an open document.
func (e *editor) whole(uri, text string) {
	e.versions[uri]++
	e.texts[uri] = text
	e.notify("textDocument/didChange", map[string]any{
		"textDocument":   map[string]any{"uri": uri, "version": e.versions[uri]},
		"contentChanges": []any{map[string]any{"text": text}},
	})
}

// edit replaces a span of an open document.
func (e *editor) edit(uri string, span schema.Span, insert string) {
	text := e.texts[uri]
	r := mapper{schema.NewText(text), e.result.Capabilities.PositionEncoding}.rangeOf(span)
	e.versions[uri]++
	e.texts[uri] = text[:span.Start] + insert + text[span.End:]
	require.NoError(e.t, e.conn.Notify(e.t.Context(), "textDocument/didChange", protocol.DidChangeTextDocumentParams{
		TextDocument:   protocol.VersionedTextDocumentIdentifier{TextDocumentIdentifier: protocol.TextDocumentIdentifier{URI: uri}, Version: e.versions[uri]},
		ContentChanges: []any{protocol.TextDocumentContentChangeEvent{Range: &r, Text: insert}},
	}))
}
