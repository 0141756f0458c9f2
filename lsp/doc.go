// Package lsp is the language server: it serves any editor that speaks the
// Language Server Protocol, over one stream.
//
// Messages are taken in the order they arrive. What changes a text is done at
// once, on one goroutine; a request runs beside it on the snapshot it arrived
// under, and can be cancelled. Byte offsets are the only positions inside; the
// protocol's lines and characters are made in position.go and nowhere else.
//
// Each feature has a file, and a line in the table of methods (methods.go).
package lsp
