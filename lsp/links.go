package lsp

import (
	"context"
	"io/fs"
	"net/url"
	"path"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// linked attributes say where figures come from.
var linkedAttrs = []string{"source", "sheet", "certificate"}

// linkedFiles are the endings of files that a link may lead to: what is read
// or looked at, never what could be run.
var linkedFiles = []string{".pdf", ".txt", ".md", ".csv", ".png", ".jpg", ".jpeg", ".webp"}

// links are the pages and files of the shop that the stock says its figures
// are from. Only web pages, and files inside of the shop's folder: a shop that
// came from somebody else leads nowhere else.
func (h *here) links(_ context.Context, _ *protocol.DocumentLinkParams) ([]protocol.DocumentLink, error) {
	found := []protocol.DocumentLink{}
	for _, b := range h.file.Blocks {
		found = h.linksIn(b, found)
	}
	return found, nil
}

func (h *here) linksIn(b *schema.Block, found []protocol.DocumentLink) []protocol.DocumentLink {
	for v := range b.Attrs() {
		if !v.Known() || !slices.Contains(linkedAttrs, v.Spec.Name) {
			continue
		}
		span := unquoted(h.file, v.Span())
		text := h.text.Slice(span)
		if text != v.Text() {
			continue // something in it is written otherwise than it reads
		}
		if target, ok := h.fileNamed(text); ok {
			found = append(found, protocol.DocumentLink{Range: h.rangeOf(span), Target: &target})
			continue
		}
		for _, page := range pages(text) {
			at := schema.Span{Start: span.Start + page.Start, End: span.Start + page.End}
			if target, ok := webAddress(h.text.Slice(at)); ok {
				found = append(found, protocol.DocumentLink{Range: h.rangeOf(at), Target: &target})
			}
		}
	}
	for _, inner := range b.Blocks() {
		found = h.linksIn(inner, found)
	}
	return found
}

// fileNamed is the URI of a file that a text names, from the shop's folder on.
func (h *here) fileNamed(name string) (string, bool) {
	root := h.shop.Root
	if _, alone := h.docs[root]; alone || strings.Contains(root, ":") && !isDrive(root+"/") {
		return "", false // no folder
	}
	if !fs.ValidPath(name) || strings.ContainsAny(name, `\:`) || !slices.Contains(linkedFiles, strings.ToLower(path.Ext(name))) {
		return "", false
	}
	for part := range strings.SplitSeq(name, "/") {
		if strings.HasPrefix(part, ".") {
			return "", false
		}
	}
	return fileURI(path.Join(root, name)), true
}

// pages finds what looks like the address of a web page.
func pages(text string) []schema.Span {
	var found []schema.Span
	for from := 0; from < len(text); {
		at := strings.Index(text[from:], "http")
		if at < 0 {
			break
		}
		start := from + at
		end := start + strings.IndexAny(text[start:]+" ", " \t\"<>")
		end = start + len(strings.TrimRight(text[start:end], ".,;:!?)'"))
		if end > start {
			found = append(found, schema.Span{Start: int32(start), End: int32(end)})
		}
		from = max(end, start+1)
	}
	return found
}

// webAddress is the URI of a page that http or https leads to. One with a name
// before an @ is left out: it looks as if it led elsewhere.
func webAddress(text string) (string, bool) {
	u, err := url.Parse(text)
	if err != nil || u.Scheme != "http" && u.Scheme != "https" || u.Host == "" || u.User != nil {
		return "", false
	}
	return u.String(), true
}
