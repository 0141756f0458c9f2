package lsp

import (
	"net/url"
	"path"
	"strings"
)

// pathOf is the slash path, from the root of the file system, that a file URI
// names ("file:///a/b" is "a/b"; "file:///c%3A/a" is "c:/a"). False: the URI is
// of another scheme, or not one at all.
func pathOf(uri string) (string, bool) {
	u, err := url.Parse(uri)
	if err != nil || u.Scheme != "file" {
		return "", false
	}
	p := path.Clean("/" + u.Path)
	if p == "/" {
		return ".", true
	}
	return p[1:], true
}

// fileURI is the URI of a slash path from the root of the file system.
func fileURI(p string) string {
	if p == "." {
		p = ""
	}
	u := url.URL{Scheme: "file", Path: "/" + p}
	return strings.ReplaceAll(u.String(), "+", "%2B")
}
