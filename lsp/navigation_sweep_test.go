package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/examples"
	"wickrule/schema"
)

// asker asks everything about a document, and about a place in it, and sees
// that no answer stops on a fault or leads outside of the text.
type asker struct {
	t *testing.T
	*here
}

func (s *asker) in(r protocol.Range) {
	m := s.mapper
	require.Equal(s.t, r, m.rangeOf(m.span(r)), "a range outside of the text, or inside of a character")
	require.LessOrEqual(s.t, m.span(r).Start, m.span(r).End)
}

func (s *asker) inShop(l protocol.Location) {
	other, ok := s.at(l.URI)
	require.True(s.t, ok, l.URI)
	(&asker{s.t, other}).in(l.Range)
}

func (s *asker) document() {
	ctx := s.t.Context()
	tokens, _ := s.semanticTokens(ctx, nil)
	decodedTokens(s.t, s.text, s.enc, tokens.Data)
	symbols, _ := s.documentSymbols(ctx, nil)
	s.symbols(symbols.([]protocol.DocumentSymbol))
	folds, _ := s.foldingRanges(ctx, nil)
	for _, f := range folds {
		require.Less(s.t, f.StartLine, f.EndLine)
		require.Less(s.t, int(f.EndLine), s.text.Lines())
	}
	links, _ := s.links(ctx, nil)
	for _, l := range links {
		s.in(l.Range)
	}
	colors, _ := s.colors(ctx, nil)
	for _, c := range colors {
		s.in(c.Range)
	}
	edits, _ := s.formatting(ctx, nil)
	for i, e := range edits {
		s.in(e.Range)
		if i > 0 { // LSP 3.17, TextEdit[]: "Text edits ranges must never overlap"
			require.LessOrEqual(s.t, s.span(edits[i-1].Range).End, s.span(e.Range).Start)
		}
	}
}

func (s *asker) symbols(list []protocol.DocumentSymbol) {
	for _, symbol := range list {
		require.NotEmpty(s.t, strings.TrimSpace(symbol.Name))
		s.in(symbol.Range)
		s.in(symbol.SelectionRange)
		require.True(s.t, s.span(symbol.Range).Contains(s.span(symbol.SelectionRange)))
		s.symbols(symbol.Children)
	}
}

func (s *asker) place(at int32) {
	ctx := s.t.Context()
	where := protocol.TextDocumentPositionParams{Position: s.position(at)}
	for _, l := range s.definition(at).([]protocol.Location) {
		s.inShop(l)
	}
	for _, f := range s.highlights(at) {
		s.in(f.Range)
	}
	ranges, _ := s.selectionRanges(ctx, &protocol.SelectionRangeParams{Positions: []protocol.Position{where.Position}})
	require.Len(s.t, ranges, 1)
	for r := &ranges[0]; r != nil; r = r.Parent {
		s.in(r.Range)
		require.True(s.t, s.span(r.Range).Touches(at))
		require.True(s.t, r.Parent == nil || s.span(r.Parent.Range).Contains(s.span(r.Range)))
	}
	there, _ := s.prepareRename(ctx, &protocol.PrepareRenameParams{TextDocumentPositionParams: where})
	if there != nil {
		s.in(there.Range)
		require.Equal(s.t, there.Placeholder, s.text.Slice(s.span(there.Range)))
	}
	if at%8 > 0 && at < int32(s.text.Len()) { // it reads the text anew, which takes its time
		return
	}
	for _, ch := range onTypeTriggers {
		edits, _ := s.onTypeFormatting(ctx, &protocol.DocumentOnTypeFormattingParams{TextDocumentPositionParams: where, Ch: ch})
		for _, e := range edits {
			s.in(e.Range)
			require.LessOrEqual(s.t, s.span(e.Range).End, at)
		}
	}
}

// shopPlaces asks what goes through the whole shop.
func (s *asker) shopPlaces(at int32) {
	ctx := s.t.Context()
	where := protocol.TextDocumentPositionParams{Position: s.position(at)}
	locations, err := s.references(ctx, &protocol.ReferenceParams{TextDocumentPositionParams: where, Context: protocol.ReferenceContext{IncludeDeclaration: true}})
	require.NoError(s.t, err)
	for _, l := range locations {
		s.inShop(l)
	}
	edit, err := s.rename(ctx, &protocol.RenameParams{TextDocumentPositionParams: where, NewName: "quite-another"})
	if err == nil {
		for uri, edits := range edit.Changes {
			for _, e := range edits {
				s.inShop(protocol.Location{URI: uri, Range: e.Range})
			}
		}
		require.GreaterOrEqual(s.t, len(locations), 1)
	}
}

const hierarchical = `{"textDocument": {"documentSymbol": {"hierarchicalDocumentSymbolSupport": true}}}`

func TestEveryByteOfTheDemoShop(t *testing.T) {
	now := standing(t, filesOf(t, examples.Shop(), "."), hierarchical, utf16)
	shop := now.shops["shop"]
	step, wide := int32(1), int32(31)
	if testing.Short() {
		step, wide = 17, 997
	}
	for _, f := range shop.Files() {
		s := &asker{t, now.of(shop, f)}
		s.document()
		for at := int32(0); at <= int32(f.Text.Len()); at += step {
			if s.offset(s.position(at)) == at {
				s.place(at)
			}
		}
		for at := int32(0); at <= int32(f.Text.Len()); at += wide {
			s.shopPlaces(at)
		}
	}
}

// Half-typed texts: every beginning of some files, and every file without one
// of its lines.
func TestEveryBeginningOfATextIsAnswered(t *testing.T) {
	files := filesOf(t, examples.Shop(), ".")
	texts := []string{rested["logs/trials.candle.hcl"], rested["stock.candle.hcl"], colored, foldable, strings.ReplaceAll(foldable, "\n", "\r")}
	step := 1
	if testing.Short() {
		step = 3
	}
	shop := standing(t, files, hierarchical, utf16).shops["shop"]
	for _, enc := range []encoding{utf16, utf8s} {
		now := standing(t, nil, hierarchical, enc)
		ask := func(text string) {
			f := schema.Read("half.candle.hcl", []byte(text))
			now.shops["shop"] = shop.With(f)
			s := &asker{t, now.of(now.shops["shop"], f)}
			s.document()
			for at := int32(0); at <= int32(len(text)); at += 1 + int32(len(text)/7) {
				if s.offset(s.position(at)) == at {
					s.place(at)
				}
			}
			s.place(int32(len(text)))
		}
		for _, text := range texts {
			for end := 0; end <= len(text); end += step {
				ask(text[:end])
			}
			lines := strings.SplitAfter(text, "\n")
			for i := range lines {
				ask(strings.Join(lines[:i], "") + strings.Join(lines[i+1:], ""))
			}
		}
	}
}

// The shop that is wrong on purpose is answered about as well as the other.
func TestTheFaultyShopIsAnswered(t *testing.T) {
	now := standing(t, filesOf(t, examples.Faulty(), "."), hierarchical, utf32)
	step := int32(3)
	if testing.Short() {
		step = 23
	}
	for _, f := range now.shops["shop"].Files() {
		s := &asker{t, now.of(now.shops["shop"], f)}
		s.document()
		for at := int32(0); at <= int32(f.Text.Len()); at += step {
			if s.offset(s.position(at)) == at {
				s.place(at)
			}
		}
	}
}
