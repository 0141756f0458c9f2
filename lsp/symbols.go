package lsp

import (
	"cmp"
	"context"
	"slices"
	"strings"
	"unicode"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/schema"
)

// documentSymbols is the outline of a document: its blocks as a tree, or one
// after the other for a client that shows no tree.
func (h *here) documentSymbols(_ context.Context, _ *protocol.DocumentSymbolParams) (any, error) {
	tree := h.symbolsOf(h.file.Blocks)
	if h.can.TextDocument.DocumentSymbol.HierarchicalDocumentSymbolSupport {
		return tree, nil
	}
	return h.flat(tree, nil, []protocol.SymbolInformation{}), nil
}

func (h *here) symbolsOf(blocks []*schema.Block) []protocol.DocumentSymbol {
	symbols := make([]protocol.DocumentSymbol, 0, len(blocks))
	for _, b := range blocks {
		name, detail := symbolWords(b)
		s := protocol.DocumentSymbol{
			Name: name, Kind: symbolKind(b),
			Range: h.rangeOf(b.Span), SelectionRange: h.rangeOf(b.LabelSpan),
		}
		if detail != "" {
			s.Detail = &detail
		}
		if len(b.Blocks()) > 0 {
			s.Children = h.symbolsOf(b.Blocks())
		}
		symbols = append(symbols, s)
	}
	return symbols
}

func (h *here) flat(tree []protocol.DocumentSymbol, in *string, list []protocol.SymbolInformation) []protocol.SymbolInformation {
	for _, s := range tree {
		list = append(list, protocol.SymbolInformation{Name: s.Name, Kind: s.Kind, ContainerName: in, Location: protocol.Location{URI: h.uri, Range: s.Range}})
		list = h.flat(s.Children, &s.Name, list)
	}
	return list
}

// symbolWords is what a block is called in an outline, and the little that is
// said beside it. A name is never empty.
func symbolWords(b *schema.Block) (name, detail string) {
	header := strings.TrimSpace(b.Name() + " " + b.Label)
	if b.Parent == nil && b.Spec.Label == schema.Defines {
		if title := strings.TrimSpace(b.Title()); title != "" {
			return title, header
		}
		return header, ""
	}
	if b.Is("test_burn") {
		return header, burnWords(b)
	}
	for v := range b.Attrs() { // how much of it, how hot, for how long
		if v.IsAmount() {
			text := v.Amount().Written()
			return header, text
		}
	}
	return header, ""
}

// burnWords is a test burn in short: "candle A, burn 2, pass".
func burnWords(b *schema.Block) string {
	var words []string
	if v := b.Get("candle"); v.Known() {
		words = append(words, "candle "+v.Text())
	}
	if n := b.Get("cycle").Whole(-1); n >= 0 {
		words = append(words, "burn "+b.Get("cycle").Written())
	}
	if v := b.Get("result"); v.Known() {
		words = append(words, v.Text())
	}
	return strings.Join(words, ", ")
}

// symbolKind picks the protocol's kind whose sign an editor shows.
func symbolKind(b *schema.Block) protocol.SymbolKind {
	switch {
	case b.Is("shop"), b.Is("sound"), b.Is("faulty"):
		return protocol.SymbolKindNamespace
	case b.Is("recipe"):
		return protocol.SymbolKindClass
	case b.Is("rule"):
		return protocol.SymbolKindFunction
	case b.Is("step"):
		return protocol.SymbolKindMethod
	case b.Is("trial"), b.Is("test_burn"):
		return protocol.SymbolKindEvent
	case b.Spec.Stock:
		return protocol.SymbolKindObject
	case b.Spec.Label == schema.Refers:
		return protocol.SymbolKindField
	}
	return protocol.SymbolKindProperty
}

const (
	mostSymbols       = 300 // answered to one search
	blocksBetweenLook = 256
)

// hit is a block that a search found, the better the smaller its rank.
type hit struct {
	block *schema.Block
	shop  *lint.Shop
	name  string
	rank  int
}

// workspaceSymbols finds stock, recipes, rules and trials of all shops by the
// letters of their titles and keys. Both stand in the name, since many clients
// hold it against the query once more.
func (s *snapshot) workspaceSymbols(ctx context.Context, p *protocol.WorkspaceSymbolParams) ([]protocol.SymbolInformation, error) {
	var hits []hit
	query := letters(p.Query)
	looked := 0
	for _, shop := range s.shops {
		for _, f := range shop.Files() {
			for _, b := range f.Blocks {
				if looked++; looked%blocksBetweenLook == 0 && ctx.Err() != nil {
					return nil, ctx.Err()
				}
				if b.Spec.Label != schema.Defines {
					continue
				}
				name := searchedName(b)
				if rank, ok := matches(letters(name), query); ok {
					hits = append(hits, hit{b, shop, name, rank})
				}
			}
		}
	}
	slices.SortFunc(hits, func(a, b hit) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(len(a.name), len(b.name)), strings.Compare(a.name, b.name),
			strings.Compare(a.shop.Root, b.shop.Root), strings.Compare(a.block.File.Name, b.block.File.Name), cmp.Compare(a.block.Span.Start, b.block.Span.Start))
	})
	hits = hits[:min(len(hits), mostSymbols)]
	found := make([]protocol.SymbolInformation, len(hits))
	for i, hit := range hits {
		h := s.of(hit.shop, hit.block.File)
		found[i] = protocol.SymbolInformation{
			Name: hit.name, Kind: symbolKind(hit.block), ContainerName: &hit.block.Spec.Name,
			Location: protocol.Location{URI: h.uri, Range: h.rangeOf(hit.block.Header())},
		}
	}
	return found, nil
}

// searchedName is a block's title and key: "Madder red (madder)".
func searchedName(b *schema.Block) string {
	title := strings.TrimSpace(b.Title())
	switch {
	case title == "":
		return b.Name()
	case title == b.Label:
		return title
	}
	return title + " (" + b.Label + ")"
}

// letters is a text as it is searched: small letters, without spaces, so that
// it does not matter how the words of a query are set apart.
func letters(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, text)
}

// matches says whether a name has the letters of a query, in that order. Those
// that start with the query come first, then those that hold it in one piece.
func matches(name, query string) (rank int, ok bool) {
	switch at := strings.Index(name, query); {
	case at == 0:
		return 0, true
	case at > 0:
		return 1, true
	}
	rest := name
	for _, r := range query {
		at := strings.IndexRune(rest, r)
		if at < 0 {
			return 0, false
		}
		_, rest, _ = strings.Cut(rest[at:], string(r))
	}
	return 2, true
}
