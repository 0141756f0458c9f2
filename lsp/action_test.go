package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	units16 "unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// snapshotOf is a snapshot of one shop with every file open, for a client that
// can do everything.
func snapshotOf(t testing.TB, shop *lint.Shop) *snapshot {
	t.Helper()
	var can client
	require.NoError(t, json.Unmarshal([]byte(able), &can))
	all := rules.All()
	s := &snapshot{
		enc: utf16, can: &can, today: today, rules: func(*lint.Shop) []*lint.Rule { return all },
		shops: map[string]*lint.Shop{shop.Root: shop}, docs: map[string]opened{},
	}
	for _, f := range shop.Files() {
		key := shop.Root + "/" + f.Name
		s.docs[key] = opened{uri: fileURI(key), version: 7, root: shop.Root, name: f.Name}
	}
	return s
}

func loaded(t testing.TB, disk fs.FS) *lint.Shop {
	t.Helper()
	shop, errs := lint.Load(disk, "shop", nil)
	require.Empty(t, errs)
	return shop
}

// ask is the code actions of a file at a span, of the kinds asked for.
func ask(t testing.TB, s *snapshot, shop *lint.Shop, file *schema.File, span schema.Span, only ...string) []codeAction {
	t.Helper()
	h := s.of(shop, file)
	p := &codeActionParams{Range: h.rangeOf(span)}
	p.Context.Only = only
	list, err := h.codeActions(context.Background(), p)
	require.NoError(t, err)
	actions := make([]codeAction, len(list))
	for i := range list {
		actions[i] = *list[i].(*codeAction)
	}
	return actions
}

// titled is the action of that title, or nil.
func titled(actions []codeAction, title string) *codeAction {
	for i := range actions {
		if actions[i].Title == title {
			return &actions[i]
		}
	}
	return nil
}

func titles(actions []codeAction) []string {
	var list []string
	for _, a := range actions {
		list = append(list, a.Title)
	}
	return list
}

// after is the texts of a shop after an edit of the workspace, by name, worked
// out as an editor does: over UTF-16 units, line by line.
func after(t testing.TB, shop *lint.Shop, edit *protocol.WorkspaceEdit) map[string]string {
	t.Helper()
	texts := map[string]string{}
	for _, f := range shop.Files() {
		texts[f.Name] = f.Text.String()
	}
	for _, change := range edit.DocumentChanges {
		if create, ok := change.(protocol.CreateFile); ok {
			texts[strings.TrimPrefix(create.URI, fileURI(shop.Root)+"/")] = ""
			continue
		}
		of := change.(protocol.TextDocumentEdit)
		name := strings.TrimPrefix(of.TextDocument.URI, fileURI(shop.Root)+"/")
		text, ok := texts[name]
		require.True(t, ok, name)
		var list []protocol.TextEdit
		for _, e := range of.Edits {
			list = append(list, e.(protocol.TextEdit))
		}
		texts[name] = edited(t, text, list)
	}
	return texts
}

// edited is a text after edits that must not overlap; of several insertions at
// one place the first in the list comes first.
func edited(t testing.TB, text string, edits []protocol.TextEdit) string {
	t.Helper()
	units := units16.Encode([]rune(text))
	offset := func(p protocol.Position) int {
		at := 0
		for line := p.Line; line > 0; line-- {
			for units[at] != '\n' && units[at] != '\r' {
				at++
			}
			if units[at] == '\r' && at+1 < len(units) && units[at+1] == '\n' {
				at++
			}
			at++
		}
		return at + int(p.Character)
	}
	sorted := slices.Clone(edits)
	slices.SortStableFunc(sorted, func(a, b protocol.TextEdit) int { return offset(a.Range.Start) - offset(b.Range.Start) })
	var out []uint16
	at := 0
	for _, e := range sorted {
		start, end := offset(e.Range.Start), offset(e.Range.End)
		require.GreaterOrEqual(t, start, at, "edits overlap")
		require.LessOrEqual(t, end, len(units))
		out = append(out, units[at:start]...)
		out = append(out, units16.Encode([]rune(e.NewText))...)
		at = end
	}
	return string(units16.Decode(append(out, units[at:]...)))
}

// reread is the shop with other texts.
func reread(shop *lint.Shop, texts map[string]string) *lint.Shop {
	var files []*schema.File
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		if f := shop.File(name); f == nil || f.Text.String() != texts[name] {
			files = append(files, schema.Read(name, []byte(texts[name])))
		}
	}
	return shop.With(files...)
}

// checkFixes asks for the actions at every finding of the shop, and holds them
// against what the report offers.
func checkFixes(t *testing.T, shop *lint.Shop) (fixes int) {
	t.Helper()
	s := snapshotOf(t, shop)
	report := lint.Run(shop, rules.All(), today)
	for i := range report.Findings {
		f := &report.Findings[i]
		repairs := f.Repairs()
		actions := ask(t, s, shop, f.At.File, f.At.Span, "quickfix")
		preferred := 0
		for _, fix := range repairs {
			about := fmt.Sprintf("%s: %s: %s", f.Rule.Name, f.Message, fix.Title)
			want := map[string]string{}
			edits := map[*schema.File][]schema.Edit{}
			for _, e := range fix.Edits {
				edits[e.File] = append(edits[e.File], e)
			}
			for file, own := range edits {
				text, err := schema.Apply(file.Text.String(), schema.Laid(file, own))
				require.NoError(t, err, about)
				want[file.Name] = text
			}
			found := false
			for _, a := range actions {
				if a.Title != fix.Title || len(a.Diagnostics) != 1 || a.Diagnostics[0].(diagnostic).Message != f.Message {
					continue
				}
				got := after(t, shop, a.Edit)
				if !slices.ContainsFunc(slices.Collect(maps.Keys(want)), func(name string) bool { return got[name] != want[name] }) {
					found = true
					require.False(t, a.IsPreferred && fix.Guess, about)
					if a.IsPreferred {
						preferred++
					}
					gone(t, reread(shop, got), f, about)
				}
			}
			require.True(t, found, "%s\noffered: %q", about, titles(actions))
			fixes++
		}
		if slices.ContainsFunc(repairs, func(fix schema.Fix) bool { return !fix.Guess }) {
			require.Positive(t, preferred, f.Message)
		} else {
			require.Zero(t, preferred, f.Message)
		}
	}
	return fixes
}

// gone checks that a finding is not said any more.
func gone(t *testing.T, shop *lint.Shop, f *lint.Found, about string) {
	t.Helper()
	file := f.At.File.Name
	if f.Recipe != nil {
		file = f.Recipe.File.Name
	}
	for _, now := range lint.RunFile(shop, rules.All(), today, file).Findings {
		same := now.Rule == f.Rule && now.Message == f.Message && now.At.File.Name == f.At.File.Name && now.At.Span.Start == f.At.Span.Start
		require.False(t, same, "%s\nis still said", about)
	}
}

func TestFixesOfTheFaultyShop(t *testing.T) {
	n := checkFixes(t, loaded(t, examples.Faulty()))
	require.Greater(t, n, 20)
	t.Logf("%d fixes", n)
}

// Faults are planted in every demo recipe: each step left out, each temperature
// on the other scale or without its unit, each load raised, each key misspelt,
// each quote forgotten.
func TestFixesOfPlantedFaults(t *testing.T) {
	shop := loaded(t, examples.Shop())
	mutants, fixes := 0, 0
	for _, recipe := range shop.Recipes() {
		for n, edit := range faults(recipe) {
			if testing.Short() && n%2 > 0 {
				continue
			}
			text, err := schema.Apply(recipe.File.Text.String(), []schema.Edit{edit})
			require.NoError(t, err)
			mutants++
			fixes += checkFixes(t, shop.With(schema.Read(recipe.File.Name, []byte(text))))
		}
	}
	require.GreaterOrEqual(t, mutants, 200)
	t.Logf("%d fixes in %d mutants", fixes, mutants)
}

// faults are edits that each plant one fault in a recipe.
func faults(recipe *schema.Block) (edits []schema.Edit) {
	f := recipe.File
	for n, b := range recipe.Blocks() {
		if b.Is("test_burn") {
			continue
		}
		if b.Is("step") {
			edits = append(edits, schema.RemoveBlock(b))
		} else if b.Label != "" {
			edits = append(edits, schema.Edit{File: f, Span: b.LabelSpan, Text: schema.Quote(b.Label + "x")})
		}
		for v := range b.Attrs() {
			text := v.Written()
			switch {
			case v.Spec.Name == "load":
				edits = append(edits, schema.SetValue(v, `"19 % of wax"`), schema.SetValue(v, `"5 %"`))
			case strings.HasSuffix(text, ` °F"`):
				edits = append(edits, schema.SetValue(v, strings.Replace(text, "°F", "°C", 1)), schema.SetValue(v, strings.Trim(strings.TrimSuffix(text, ` °F"`), `"`)))
			case strings.HasPrefix(text, `"`) && n%3 == 0:
				edits = append(edits, schema.Edit{File: f, Span: schema.Span{Start: v.Span().End - 1, End: v.Span().End}})
			}
		}
	}
	return edits
}

// What is put right in the whole file is what the command line's mending does.
func TestFixAllIsMending(t *testing.T) {
	for _, disk := range []fs.FS{examples.Faulty(), examples.Shop()} {
		shop := loaded(t, disk)
		for _, name := range []string{"recipes/tide-pillar.candle.hcl", "stock/seals.candle.hcl"} { // with slips that are safe to put right
			if f := shop.File(name); f != nil {
				shop = shop.With(schema.Read(name, []byte(strings.NewReplacer(`"3/8 in"`, `3/8 in`, `"cotton"`, `"coton"`, `"350 °F"`, `350 °F`).Replace(f.Text.String()))))
			}
		}
		fixAllIsMending(t, shop)
	}
}

func fixAllIsMending(t *testing.T, shop *lint.Shop) {
	s := snapshotOf(t, shop)
	all := func(*lint.Shop) []*lint.Rule { return rules.All() }
	mended := 0
	for _, f := range shop.Files() {
		want := lint.Mend(shop, all, today, lint.MendOptions{Covers: func(name string) bool { return name == f.Name }})
		actions := ask(t, s, shop, f, schema.Span{}, "source")
		if len(want.Changed) == 0 {
			for _, a := range actions {
				assert.Nil(t, a.Edit, f.Name)
			}
			continue
		}
		mended++
		require.Len(t, actions, 1, f.Name)
		require.Equal(t, fixAll, actions[0].Kind)
		got := after(t, shop, actions[0].Edit)
		for _, was := range shop.Files() {
			if was == f {
				assert.Equal(t, want.Changed[0].Text, got[f.Name])
			} else {
				assert.Equal(t, was.Text.String(), got[was.Name])
			}
		}
	}
	require.GreaterOrEqual(t, mended, 2)
}
