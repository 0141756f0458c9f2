package lsp

import (
	"fmt"
	"path"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/schema"
)

// stock offers to write down, on the shelf it belongs to, what a recipe names
// and nothing in the shop is. Every figure is left blank.
func (a *actions) stock(found []lint.Found) {
	for ref := range lint.References(a.file) {
		if len(ref.Kinds) != 1 || !schema.Top(ref.Kinds[0]).Stock || !touch(ref.At.Span, a.at) || a.shop.Resolve(ref) != nil {
			continue
		}
		said := slices.IndexFunc(found, func(f lint.Found) bool { return f.Rule.Name == "unknown-key" && f.At.Span == ref.At.Span })
		if said < 0 {
			continue
		}
		a.newItem(ref.Kinds[0], ref.Key, a.saidAs(&found[said]))
	}
}

func (a *actions) newItem(kind, key string, said []any) {
	action := codeAction{Kind: quickFix, Diagnostics: said}
	a.write(action, kind, a.blanks(kind, key), func(where string) string {
		return fmt.Sprintf("write down the %s %s in %s, with blanks to fill in", kind, key, where)
	})
}

// write offers an action that writes a new block of a kind down where the shop
// keeps such: in a file that has some, or in a new one.
func (a *actions) write(action codeAction, kind, text string, title func(where string) string) {
	if shelf := a.shelfOf(kind); shelf != nil {
		action.Title = title(shelf.Name)
		a.offer(action, []schema.Edit{onShelf(shelf, kind, text)})
		return
	}
	name := a.newShelf(kind)
	action.Title = title("a new file " + name)
	uri := a.uriOf(a.shop, name)
	ignore := true
	action.Edit = &protocol.WorkspaceEdit{DocumentChanges: []any{
		protocol.CreateFile{Kind: "create", URI: uri, Options: &protocol.CreateFileOptions{IgnoreIfExists: &ignore}},
		protocol.TextDocumentEdit{
			TextDocument: protocol.OptionalVersionedTextDocumentIdentifier{TextDocumentIdentifier: protocol.TextDocumentIdentifier{URI: uri}},
			Edits:        []any{protocol.TextEdit{NewText: text + "\n"}},
		},
	}}
	a.all = append(a.all, action)
}

// shelfOf is the file that holds most of a kind; where none does, the
// document itself, unless a new file can be made. Nil: a new file is to be
// made.
func (a *actions) shelfOf(kind string) *schema.File {
	var shelf *schema.File
	most := 0
	for _, b := range a.shop.Shelf(kind) {
		n := 0
		for _, other := range b.File.Blocks {
			if other.Is(kind) {
				n++
			}
		}
		if n > most || n == most && b.File.Name < shelf.Name {
			shelf, most = b.File, n
		}
	}
	if shelf == nil {
		shelf = a.shop.File(a.newShelf(kind)) // there, and without any
	}
	_, alone := a.docs[a.shop.Root]
	edit := a.can.Workspace.WorkspaceEdit
	if shelf == nil && (alone || !edit.DocumentChanges || !slices.Contains(edit.ResourceOperations, "create")) {
		return a.file
	}
	return shelf
}

// newShelf is the name of the file for a kind of stock that no file holds: in
// the folder in which other stock stands. A folder without a shop file is a
// shop by itself, and its files stand beside each other.
func (a *actions) newShelf(kind string) string {
	folder := "stock"
	for _, other := range schema.StockKinds() {
		if shelf := a.shop.Shelf(other); len(shelf) > 0 {
			folder = path.Dir(shelf[0].File.Name)
			break
		}
	}
	if a.shop.File(lint.ShopFileName) == nil {
		folder = "."
	}
	plural := kind + "s"
	switch kind {
	case "wax":
		plural = "waxes"
	case "trial":
		if folder != "." {
			folder = plural
		}
	}
	return path.Join(folder, plural+lint.FileSuffix)
}

// onShelf puts a block behind the last of its kind, or at the end of the file.
func onShelf(f *schema.File, kind, text string) schema.Edit {
	var last *schema.Block
	for _, b := range f.Blocks {
		if b.Is(kind) || last == nil || !last.Is(kind) {
			last = b
		}
	}
	if last != nil {
		return apart(schema.InsertBlockAfter(last, text))
	}
	end := int32(f.Text.Len())
	if before := f.Text.String(); before != "" && !strings.HasSuffix(before, "\n") {
		text = "\n" + text
	}
	return schema.Edit{File: f, Span: schema.Span{Start: end, End: end}, Text: text + "\n"}
}

// blanks is a new block with a blank for every attribute that the language
// requires or that the rules ask for in this document. They find the blanks
// until they are filled in.
func (a *actions) blanks(kind, key string) string {
	head := kind + " " + schema.Quote(key) + " {"
	name := "new" + lint.FileSuffix
	for a.shop.File(name) != nil {
		name = "new-" + name
	}
	shop := a.shop.With(schema.Read(name, []byte(head+"}\n")))
	asked := map[string]bool{}
	for _, u := range lint.RunFile(shop, a.rules(shop), a.today, a.file.Name).Unchecked {
		if u.At.File.Name == name {
			asked[strings.TrimPrefix(u.Needs, kind+".")] = true
		}
	}
	var names []string
	width := 0
	for _, attr := range schema.Top(kind).Attrs {
		if attr.Required || asked[attr.Name] {
			names = append(names, attr.Name)
			width = max(width, len(attr.Name))
		}
	}
	if len(names) == 0 {
		return head + "}"
	}
	var b strings.Builder
	b.WriteString(head + "\n")
	for _, attr := range names {
		fmt.Fprintf(&b, "  %-*s = \"\"\n", width, attr)
	}
	b.WriteString("}")
	return b.String()
}
