package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// File addresses as RFC 8089 and editors write them, and the paths they are.
func TestFileURIs(t *testing.T) {
	long := "c:/" + strings.Repeat("shelf of waxes/", 40) + "tide.candle.hcl"
	for uri, want := range map[string]string{
		"file:///":                                        ".",
		"file:///home/quay/a%20b.candle.hcl":              "home/quay/a b.candle.hcl",
		"file://localhost/home/quay":                      "home/quay",
		"file:///home/quay/":                              "home/quay",
		"file:///home/../quay":                            "quay",
		"file:///home/1%20%C2%B0F%2B":                     "home/1 °F+",
		"file:///c%3A/quay/tide.candle.hcl":               "c:/quay/tide.candle.hcl",
		"file:///C%3A/quay/tide.candle.hcl":               "c:/quay/tide.candle.hcl",
		"file:///C:/quay/tide.candle.hcl":                 "c:/quay/tide.candle.hcl",
		"file:///c:/quay/Tide.candle.hcl":                 "c:/quay/Tide.candle.hcl",
		"file:///c:/":                                     "c:",
		"file:///C:":                                      "c:",
		"file://c:/quay":                                  "c:/quay",
		"file://nas/wax/our%20shop":                       `\\nas/wax/our shop`,
		"file://NAS/wax/our%20shop/":                      `\\nas/wax/our shop`,
		"file://nas/wax":                                  `\\nas/wax`,
		"file://nas":                                      `\\nas`,
		"file:///" + strings.ReplaceAll(long, " ", "%20"): long,
	} {
		got, ok := pathOf(uri)
		assert.True(t, ok, uri)
		assert.Equal(t, want, got, uri)
		again, ok := pathOf(fileURI(got))
		assert.True(t, ok)
		assert.Equal(t, got, again, "there and back: %s", fileURI(got))
	}
	for _, uri := range []string{"untitled:Untitled-1", "http://localhost/a", "git:/a", "%zz", ""} {
		_, ok := pathOf(uri)
		assert.False(t, ok, uri)
	}
	for p, want := range map[string]string{
		".": "file:///", "home/a b": "file:///home/a%20b", "c:/quay": "file:///c:/quay", `\\nas/wax/our shop`: "file://nas/wax/our%20shop", "home/1+1": "file:///home/1%2B1",
	} {
		assert.Equal(t, want, fileURI(p))
	}
	for full, want := range map[string]string{
		"/home/quay/": "file:///home/quay", `/home/a\b`: "file:///home/a%5Cb", `C:\quay`: "file:///C:/quay", "c:/quay/": "file:///c:/quay", `\\nas\wax\shop`: "file://nas/wax/shop", `C:\`: "file:///C:",
	} {
		assert.Equal(t, want, uriOfPath(full))
	}
}
