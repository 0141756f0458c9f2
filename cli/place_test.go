package cli

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Paths as Windows reads them (naming files, paths and namespaces in its own
// documentation): drives in any case, either stroke, shares, the prefix for
// long paths, and paths that lean on the drive or the folder at hand.
func TestWindowsPlaces(t *testing.T) {
	const here = `C:\Users\quay`
	long := strings.Repeat(`shelf of waxes and wicks\`, 20)
	for _, c := range []struct{ folder, arg, volume, path string }{
		{here, `shop`, `C:\`, "Users/quay/shop"},
		{here, `.`, `C:\`, "Users/quay"},
		{here, `..\..`, `C:\`, "."},
		{here, `..\..\..\..`, `C:\`, "."},
		{here, `shop/recipes\tide.candle.hcl`, `C:\`, "Users/quay/shop/recipes/tide.candle.hcl"},
		{here, `C:\shop`, `C:\`, "shop"},
		{here, `c:\shop`, `C:\`, "shop"},
		{here, `c:/shop/`, `C:\`, "shop"},
		{`c:\Users`, `shop`, `C:\`, "Users/shop"},
		{here, `D:\`, `D:\`, "."},
		{here, `d:`, `D:\`, "."},
		{here, `D:shop`, `D:\`, "shop"},
		{here, `c:shop`, `C:\`, "Users/quay/shop"},
		{here, `\shop`, `C:\`, "shop"},
		{here, `/shop`, `C:\`, "shop"},
		{here, `\\nas\wax\our shop`, `\\nas\wax\`, "our shop"},
		{here, `//nas/wax/our shop/..`, `\\nas\wax\`, "."},
		{here, `\\nas\wax`, `\\nas\wax\`, "."},
		{here, `\\?\C:\shop`, `C:\`, "shop"},
		{here, `\\?\UNC\nas\wax\shop`, `\\nas\wax\`, "shop"},
		{`\\?\` + here, `shop`, `C:\`, "Users/quay/shop"},
		{`\\nas\wax\quay`, `..\shop`, `\\nas\wax\`, "shop"},
		{`\\nas\wax\quay`, `..\..\..\shop`, `\\nas\wax\`, "shop"},
		{`\\nas\wax\quay`, `\shop`, `\\nas\wax\`, "shop"},
		{here, long + "tide.candle.hcl", `C:\`, "Users/quay/" + strings.ReplaceAll(long, `\`, "/") + "tide.candle.hcl"},
		{here, `Kerzen für Öl\1 °F.candle.hcl`, `C:\`, "Users/quay/Kerzen für Öl/1 °F.candle.hcl"},
	} {
		assert.Equal(t, place{c.volume, c.path}, windowsPlace(c.folder, c.arg), "%s from %s", c.arg, c.folder)
		assert.True(t, fs.ValidPath(c.path))
	}
}

// The drives of Windows are one file system, by the paths that an editor's
// addresses are read as.
func TestDrives(t *testing.T) {
	volumes := map[string]fstest.MapFS{
		`C:\`:        {"shop/shop.candle.hcl": &fstest.MapFile{Data: []byte("one")}},
		`\\nas\wax\`: {"shop.candle.hcl": &fstest.MapFile{Data: []byte("two")}},
	}
	disk := drives{func(volume string) fs.FS {
		require.Contains(t, volumes, volume)
		return volumes[volume]
	}}
	for name, want := range map[string]string{"c:/shop/shop.candle.hcl": "one", "C:/shop/shop.candle.hcl": "one", `\\nas/wax/shop.candle.hcl`: "two"} {
		text, err := fs.ReadFile(disk, name)
		require.NoError(t, err, name)
		assert.Equal(t, want, string(text))
		info, err := fs.Stat(disk, name)
		require.NoError(t, err)
		assert.Equal(t, "shop.candle.hcl", info.Name())
		f, err := disk.Open(name)
		require.NoError(t, err)
		f.Close()
	}
	for name, want := range map[string]string{"c:": "shop", "c:/shop": "shop.candle.hcl", `\\nas/wax`: "shop.candle.hcl"} {
		entries, err := fs.ReadDir(disk, name)
		require.NoError(t, err, name)
		require.Len(t, entries, 1)
		assert.Equal(t, want, entries[0].Name())
	}
	for _, name := range []string{".", "shop.candle.hcl", "shop/a", "1:/shop", "cc:/shop", `\\nas`, `\\`, "c:/../x", "c:/shop//a"} {
		_, err := fs.Stat(disk, name)
		assert.ErrorIs(t, err, fs.ErrNotExist, name)
		_, err = fs.ReadFile(disk, name)
		assert.ErrorIs(t, err, fs.ErrNotExist, name)
	}
}
