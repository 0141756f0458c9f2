// Package examples holds shops of recipes in the house format, as anyone would
// keep them on disk. The shops, their stock and their figures are invented.
package examples

import (
	"embed"
	"io/fs"
)

//go:embed shop faulty starter
var files embed.FS

// Shop is the demo shop, Larkspur Quay Candleworks. Every recipe in it is
// sound: it has no finding at must or should.
func Shop() fs.FS { return folder("shop") }

// Faulty is a shop whose recipes are wrong on purpose. Each says at its top,
// in plain words, what is wrong; expected.txt lists the findings.
func Faulty() fs.FS { return folder("faulty") }

// Starter is a small shop to begin with, without a name of its own, in the
// units "us" or "metric". It holds recipe files only.
func Starter(units string) fs.FS { return folder("starter/" + units) }

// StarterReadme is what a starter shop says of itself, in whatever units.
//
//go:embed starter/README.md
var StarterReadme string

// folder is one embedded folder as a root of its own. Sub fails on names that
// are not valid paths only, and these are written above.
func folder(name string) fs.FS {
	sub, err := fs.Sub(files, name)
	if err != nil {
		panic(err)
	}
	return sub
}
