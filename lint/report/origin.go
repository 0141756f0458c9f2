package report

import (
	"net/url"
	"path"
	"strings"
)

// Origin tells programs that read a report who wrote it, and where the files
// lie that it speaks of.
type Origin struct {
	Version string // of wickrule
	Base    string // the folder that paths are told from, an absolute path with "/": the top of the repository, where there is one
	Here    string // the working folder, which the roots of shops are told from: below Base, or "." for itself
}

// uri is the address of a file of a shop: relative to the base, or absolute
// where the file lies elsewhere.
func (o Origin) uri(root, name string) (address string, relative bool) {
	file := Located(root, name)
	if !absolute(file) {
		file = path.Join(o.Here, file)
		if file != ".." && !strings.HasPrefix(file, "../") {
			relative := url.URL{Path: file}
			return relative.String(), true
		}
		file = Located(o.Base, file)
	}
	return fileURI(file), false
}

// absolute says whether a path with "/" begins at the root of a disk, with a
// drive's letter or with the name of a machine.
func absolute(file string) bool { return strings.HasPrefix(file, "/") || hasDrive(file) }

// hasDrive says whether a path begins with the letter of a drive: "C:/shop".
func hasDrive(file string) bool {
	return len(file) >= 3 && file[1] == ':' && file[2] == '/' && (file[0]|0x20) >= 'a' && (file[0]|0x20) <= 'z'
}

// fileURI is the address (RFC 8089) of an absolute path with "/": "/a/b",
// "C:/a/b", or "//machine/share/a".
func fileURI(file string) string {
	u := url.URL{Scheme: "file", Path: file}
	switch {
	case strings.HasPrefix(file, "//"):
		machine, rest, _ := strings.Cut(file[2:], "/")
		u.Host, u.Path = machine, "/"+rest
	case hasDrive(file):
		u.Path = "/" + file
	}
	return u.String()
}
