package lsp

import (
	"net/url"
	"path"
	"strings"
)

// pathOf is the slash path, from the root of the file system, that a file URI
// (RFC 8089) names: "file:///a/b" is "a/b". Of Windows, "file:///C:/a" and
// "file:///c%3A/a" are both "c:/a", since the case of a drive's letter says
// nothing, and "file://nas/wax/a" is `\\nas/wax/a`: a machine stands first, with
// two backslashes. False: the URI is of another scheme, or not one at all.
func pathOf(uri string) (string, bool) {
	u, err := url.Parse(uri)
	if err != nil || u.Scheme != "file" {
		return "", false
	}
	p := path.Clean("/" + u.Path)[1:]
	switch {
	case isDrive(u.Host + "/"): // "file://c:/a", as some write it
		p = strings.ToLower(u.Host) + "/" + p
	case u.Host != "" && !strings.EqualFold(u.Host, "localhost"):
		p = strings.TrimSuffix(`\\`+strings.ToLower(u.Host)+"/"+p, "/")
	case isDrive(p + "/"):
		p = strings.ToLower(p[:1]) + p[1:]
	case p == "":
		p = "."
	}
	return p, true
}

// fileURI is the URI of a slash path from the root of the file system.
func fileURI(p string) string {
	if p == "." {
		p = ""
	}
	u := url.URL{Scheme: "file", Path: "/" + p}
	if share, ok := strings.CutPrefix(p, `\\`); ok {
		machine, rest, _ := strings.Cut(share, "/")
		u.Host, u.Path = machine, "/"+rest
	}
	return strings.ReplaceAll(u.String(), "+", "%2B")
}

// uriOfPath is the URI of a path as its system writes it: "/a/b", `C:\a` or
// `\\nas\wax`.
func uriOfPath(full string) string {
	slashed := strings.ReplaceAll(full, `\`, "/")
	switch share, ok := strings.CutPrefix(slashed, "//"); {
	case ok:
		return fileURI(`\\` + path.Clean(share))
	case isDrive(slashed + "/"):
		return fileURI(path.Clean(slashed))
	}
	return fileURI(path.Clean("/" + full)[1:])
}
