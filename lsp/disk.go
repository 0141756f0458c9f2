package lsp

import (
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"
)

// disk is the file system as the editor has it: with open documents in the
// place of the files.
func (s *server) disk() overlay {
	over := overlay{FS: s.Disk, texts: map[string]string{}}
	for key, doc := range s.docs {
		if fs.ValidPath(key) {
			over.texts[key] = doc.text
		}
	}
	return over
}

// overlay is a file system with some texts laid over it.
type overlay struct {
	fs.FS
	texts map[string]string
}

// below is the overlay of a folder: disk is that folder alone.
func (o overlay) below(root string, disk fs.FS) overlay {
	inner := overlay{FS: disk, texts: map[string]string{}}
	for name, text := range o.texts {
		if root == "." {
			inner.texts[name] = text
		} else if rest, ok := strings.CutPrefix(name, root+"/"); ok {
			inner.texts[rest] = text
		}
	}
	return inner
}

func (o overlay) Open(name string) (fs.File, error) {
	if text, ok := o.texts[name]; ok {
		return &openText{textInfo{path.Base(name), len(text)}, strings.NewReader(text)}, nil
	}
	return o.FS.Open(name)
}

func (o overlay) ReadFile(name string) ([]byte, error) {
	if text, ok := o.texts[name]; ok {
		return []byte(text), nil
	}
	return fs.ReadFile(o.FS, name)
}

// Stat is of the file on disk where there is one: a link stays a link that is
// not followed out.
func (o overlay) Stat(name string) (fs.FileInfo, error) {
	if text, ok := o.texts[name]; ok {
		return textInfo{path.Base(name), len(text)}, nil
	}
	return fs.Stat(o.FS, name)
}

// ReadDir lists a folder with the open documents that are not on disk yet.
func (o overlay) ReadDir(name string) ([]fs.DirEntry, error) {
	entries, err := fs.ReadDir(o.FS, name)
	for file, text := range o.texts {
		if path.Dir(file) != name {
			continue
		}
		err = nil
		base := path.Base(file)
		if !slices.ContainsFunc(entries, func(e fs.DirEntry) bool { return e.Name() == base }) {
			entries = append(entries, fs.FileInfoToDirEntry(textInfo{base, len(text)}))
		}
	}
	slices.SortFunc(entries, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return entries, err
}

// openText is a text as an open file.
type openText struct {
	textInfo
	*strings.Reader
}

func (t *openText) Stat() (fs.FileInfo, error) { return t.textInfo, nil }
func (t *openText) Close() error               { return nil }
func (t *openText) Size() int64                { return t.textInfo.Size() }

type textInfo struct {
	name string
	size int
}

func (i textInfo) Name() string       { return i.name }
func (i textInfo) Size() int64        { return int64(i.size) }
func (i textInfo) Mode() fs.FileMode  { return 0o644 }
func (i textInfo) ModTime() time.Time { return time.Time{} }
func (i textInfo) IsDir() bool        { return false }
func (i textInfo) Sys() any           { return nil }
