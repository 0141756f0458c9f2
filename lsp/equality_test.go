package lsp

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules"
	"wickrule/schema"
)

// shown lists all that the editor shows of a shop, one line each.
func (e *editor) shown() []string {
	e.mu.Lock()
	defer e.mu.Unlock()
	var lines []string
	for uri, p := range e.published {
		for _, d := range p.Diagnostics {
			level := []string{"", "must", "should", "consider"}[d.Severity]
			lines = append(lines, fmt.Sprintf("%s %d:%d-%d:%d %s %s: %s", strings.TrimPrefix(uri, "file:///shop/"),
				d.Range.Start.Line+1, d.Range.Start.Character+1, d.Range.End.Line+1, d.Range.End.Character+1, level, d.Code, d.Message))
			for _, n := range d.RelatedInformation {
				lines = append(lines, fmt.Sprintf("%s %d:%d of %s: %s", strings.TrimPrefix(n.Location.URI, "file:///shop/"),
					n.Location.Range.Start.Line+1, n.Location.Range.Start.Character+1, d.Code, n.Message))
			}
		}
	}
	slices.Sort(lines)
	return lines
}

// printed lists what a check of the shop prints, from its JSON: another way to
// the places, which counts code points as an editor in UTF-32 does.
func printed(t *testing.T, shop *lint.Shop) (lines []string, findings int) {
	var out bytes.Buffer
	require.NoError(t, report.JSON(&out, &report.Document{Shops: []*lint.Report{lint.Run(shop, rules.All(), today)}}))
	type point struct{ Line, Column int }
	type place struct {
		File string
		Span struct{ Start, End point }
	}
	type said struct {
		place
		Rule, Needs, Level, Message string
		Notes                       []struct {
			place
			Message string
		}
	}
	var document struct{ Findings, Unchecked, Faults []said }
	require.NoError(t, json.Unmarshal(out.Bytes(), &document))
	require.Empty(t, document.Faults)
	for _, f := range slices.Concat(document.Findings, document.Unchecked) {
		lines = append(lines, fmt.Sprintf("%s %d:%d-%d:%d %s %s: %s", f.File, f.Span.Start.Line, f.Span.Start.Column,
			f.Span.End.Line, f.Span.End.Column, f.Level, f.Rule+f.Needs, f.Message))
		for _, n := range f.Notes {
			lines = append(lines, fmt.Sprintf("%s %d:%d of %s: %s", n.File, n.Span.Start.Line, n.Span.Start.Column, f.Rule, n.Message))
		}
	}
	slices.Sort(lines)
	return lines, len(document.Findings)
}

// faultsIn lists texts with one fault planted: each value of the recipe made
// ten times as large or another word, each attribute and block left out in
// turn.
func faultsIn(f *schema.File) (texts []string) {
	text := f.Text.String()
	cut := func(s schema.Span, instead string) string { return text[:s.Start] + instead + text[s.End:] }
	var in func(b *schema.Block)
	in = func(b *schema.Block) {
		if b.Is("test_burn") {
			return
		}
		if b.Parent != nil {
			texts = append(texts, cut(b.Span, ""))
			if b.Label != "" {
				texts = append(texts, cut(b.LabelSpan, schema.Quote(b.Label+"x")))
			}
		}
		for v := range b.Attrs() {
			texts = append(texts, cut(schema.Span{Start: v.NameSpan().Start, End: v.Span().End}, ""))
			switch {
			case v.IsAmount():
				texts = append(texts, cut(v.Span(), `"1`+v.Written()[1:]), cut(v.Span(), `"0.`+v.Written()[1:]))
			case v.Written()[0] == '"':
				texts = append(texts, cut(v.Span(), `"x`+v.Written()[1:]))
			}
		}
		for _, inner := range b.Blocks() {
			in(inner)
		}
	}
	for _, b := range f.Blocks {
		in(b)
	}
	return texts
}

// The editor shows exactly what a check prints for the same texts: rule,
// level, place, words and related places, in all files of the shop.
func TestEditorShowsWhatCheckPrints(t *testing.T) {
	every := 3
	if testing.Short() {
		every = 40
	}
	disk := demoShop(t)
	base, errs := lint.Load(examples.Shop(), "shop", nil)
	require.Empty(t, errs)
	e := connect(t, disk, "shop", strings.Replace(able, `"utf-16"`, `"utf-32", "utf-16"`, 1))
	require.EqualValues(t, "utf-32", e.result.Capabilities.PositionEncoding)
	total, texts := 0, 0
	for _, f := range base.Files() {
		uri := e.open("shop/"+f.Name, f.Text.String())
		for i, text := range faultsIn(f) {
			if strings.HasPrefix(f.Name, "stock/") && i%(5*every) != 0 || i%every != 0 {
				continue
			}
			e.versions[uri]++
			e.notify("textDocument/didChange", map[string]any{
				"textDocument":   map[string]any{"uri": uri, "version": e.versions[uri]},
				"contentChanges": []any{map[string]any{"text": text}},
			})
			want, findings := printed(t, base.With(schema.Read(f.Name, []byte(text))))
			total += findings
			texts++
			var got []string
			for start := time.Now(); time.Since(start) < 20*time.Second; time.Sleep(time.Millisecond) {
				if got = e.shown(); slices.Equal(want, got) {
					break
				}
			}
			require.Equal(t, want, got, "%s\n%s", f.Name, text)
		}
		e.notify("textDocument/didClose", map[string]any{"textDocument": map[string]any{"uri": uri}})
	}
	t.Logf("%d findings in %d texts", total, texts)
	if !testing.Short() {
		require.GreaterOrEqual(t, total, 500)
	}
}
