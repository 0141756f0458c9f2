package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// smallShop is a shop of these files, below "shop".
func smallShop(files map[string]string) fstest.MapFS {
	disk := fstest.MapFS{}
	for name, text := range files {
		disk["shop/"+name] = &fstest.MapFile{Data: []byte(text)}
	}
	return disk
}

// openAll opens these files of the shop, as they are on disk, and gives their
// URIs.
func (e *editor) openAll(disk fstest.MapFS, names ...string) []string {
	uris := make([]string, len(names))
	for i, name := range names {
		uris[i] = e.open("shop/"+name, string(disk["shop/"+name].Data))
	}
	return uris
}

// refusal is the message with which a request is refused, and its code.
func (e *editor) refusal(method string, params any) (string, int64) {
	e.t.Helper()
	var failed *jsonrpc2.Error
	require.ErrorAs(e.t, e.conn.Call(context.Background(), method, params, nil), &failed, method)
	return failed.Message, failed.Code
}

// with is parameters with one more.
func with(params map[string]any, name string, value any) map[string]any {
	params[name] = value
	return params
}

// places is locations as a person reads them: file, line from 1 up and the
// text, in a shop on disk.
func places(t *testing.T, disk fstest.MapFS, locations []protocol.Location) []string {
	var list []string
	for _, l := range locations {
		name, ok := pathOf(l.URI)
		require.True(t, ok, l.URI)
		require.Contains(t, disk, name)
		text := schema.NewText(string(disk[name].Data))
		list = append(list, fmt.Sprintf("%s:%d %s", strings.TrimPrefix(name, "shop/"), l.Range.Start.Line+1, text.Slice(mapper{text, utf16}.span(l.Range))))
	}
	return list
}

// editedTexts is every text of a shop after an edit, by name. Edits of one text may
// not overlap, which the specification asks for (TextEdit[]).
func editedTexts(t *testing.T, disk fstest.MapFS, changes map[string][]protocol.TextEdit) map[string]string {
	texts := map[string]string{}
	for uri, list := range changes {
		name, _ := pathOf(uri)
		require.Contains(t, disk, name)
		f := schema.Read(name, disk[name].Data)
		var edits []schema.Edit
		for _, e := range list {
			edits = append(edits, schema.Edit{File: f, Span: mapper{f.Text, utf16}.span(e.Range), Text: e.NewText})
		}
		out, err := schema.Apply(f.Text.String(), edits)
		require.NoError(t, err)
		texts[strings.TrimPrefix(name, "shop/")] = out
	}
	return texts
}

// standing is a snapshot of a shop at rest, for what is asked at every byte.
func standing(t testing.TB, files []*schema.File, capabilities string, enc encoding) *snapshot {
	can := &client{}
	require.NoError(t, json.Unmarshal([]byte(capabilities), can))
	all := rules.All()
	return &snapshot{
		enc: enc, can: can, wants: defaultSettings, today: today,
		rules: func(*lint.Shop) []*lint.Rule { return all },
		shops: map[string]*lint.Shop{"shop": lint.NewShop("shop", files)}, docs: map[string]opened{},
	}
}

// filesOf reads every file of a shop.
func filesOf(t testing.TB, disk fs.FS, root string) []*schema.File {
	var files []*schema.File
	require.NoError(t, fs.WalkDir(disk, root, func(name string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(name, lint.FileSuffix) {
			return err
		}
		data, err := fs.ReadFile(disk, name)
		files = append(files, schema.Read(strings.TrimPrefix(name, root+"/"), data))
		return err
	}))
	return files
}
