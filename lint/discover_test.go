package lint_test

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
)

// tree makes a file system of files that hold a recipe each, or a shop block.
func tree(names ...string) fstest.MapFS {
	fsys := fstest.MapFS{}
	for _, name := range names {
		text := `recipe "` + filepath.Base(name) + `" {}` + "\n"
		if filepath.Base(name) == lint.ShopFileName {
			text = `shop "s" {}` + "\n"
		}
		fsys[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
	}
	return fsys
}

func TestDiscover(t *testing.T) {
	fsys := tree(
		"quay/shop.candle.hcl", "quay/stock/waxes.candle.hcl", "quay/recipes/a.candle.hcl", "quay/recipes/deep/b.candle.hcl",
		"quay/annex/shop.candle.hcl", "quay/annex/recipes/c.candle.hcl",
		"quay/.drafts/d.candle.hcl", "quay/.drafts/other/shop.candle.hcl", "quay/notes/readme.txt",
		"loose/one/e.candle.hcl", "loose/two/f.candle.hcl", "loose/two/inner/g.candle.hcl", "loose/.hidden/h.candle.hcl",
		"empty/readme.txt",
	)
	whole := func(root string) lint.Asked { return lint.Asked{Root: root} }
	for _, c := range []struct {
		about string
		named []string
		want  []lint.Asked
	}{
		{"a shop, and the one nested in it", []string{"quay"}, []lint.Asked{whole("quay"), whole("quay/annex")}},
		{"a file belongs to the nearest shop above", []string{"quay/recipes/deep/b.candle.hcl"}, []lint.Asked{{Root: "quay", Only: []string{"recipes/deep/b.candle.hcl"}}}},
		{"a file of the nested shop", []string{"quay/annex/recipes/c.candle.hcl"}, []lint.Asked{{Root: "quay/annex", Only: []string{"recipes/c.candle.hcl"}}}},
		{"a folder inside a shop", []string{"quay/recipes"}, []lint.Asked{{Root: "quay", Only: []string{"recipes"}}}},
		{"two names, one shop", []string{"quay/stock", "quay/recipes/a.candle.hcl", "quay/stock"}, []lint.Asked{{Root: "quay", Only: []string{"recipes/a.candle.hcl", "stock"}}}},
		{"the whole shop takes in its parts", []string{"quay/recipes", "quay"}, []lint.Asked{whole("quay"), whole("quay/annex")}},
		{"no shop above: each folder is one", []string{"loose"}, []lint.Asked{whole("loose/one"), whole("loose/two"), whole("loose/two/inner")}},
		{"the same for a folder named", []string{"loose/two"}, []lint.Asked{whole("loose/two"), whole("loose/two/inner")}},
		{"the same for a file named", []string{"loose/two/f.candle.hcl"}, []lint.Asked{{Root: "loose/two", Only: []string{"f.candle.hcl"}}}},
		{"a hidden folder is of no shop above, but can be named", []string{"quay/.drafts/d.candle.hcl"}, []lint.Asked{{Root: "quay/.drafts", Only: []string{"d.candle.hcl"}}}},
		{"a hidden folder named", []string{"loose/.hidden"}, []lint.Asked{whole("loose/.hidden")}},
		{"everything", []string{"."}, []lint.Asked{whole("loose/one"), whole("loose/two"), whole("loose/two/inner"), whole("quay"), whole("quay/annex")}},
	} {
		got, errs := lint.Discover(fsys, c.named)
		assert.Empty(t, errs, c.about)
		assert.Equal(t, c.want, got, c.about)
	}
}

func TestDiscoverNothing(t *testing.T) {
	fsys := tree("quay/shop.candle.hcl", "quay/a.candle.hcl", "quay/notes/readme.txt", "empty/readme.txt")
	for name, want := range map[string]string{
		"empty":            "there is no recipe file (*.candle.hcl) in this folder or below it",
		"quay/notes":       "there is no recipe file (*.candle.hcl) in this folder or below it",
		"empty/readme.txt": "this is not a recipe file: their names end in .candle.hcl",
		"nowhere":          "there is nothing at this path",
	} {
		shops, errs := lint.Discover(fsys, []string{name, "quay/a.candle.hcl"})
		require.Len(t, errs, 1, name)
		assert.Equal(t, name, errs[0].Name)
		assert.EqualError(t, errs[0].Err, want)
		assert.Len(t, shops, 1, "the other name goes on")
	}
}

func TestAskedCovers(t *testing.T) {
	asked := lint.Asked{Root: "quay", Only: []string{"recipes", "stock/waxes.candle.hcl"}}
	for name, want := range map[string]bool{
		"recipes/a.candle.hcl": true, "recipes/deep/b.candle.hcl": true, "stock/waxes.candle.hcl": true,
		"recipes-old/a.candle.hcl": false, "stock/dyes.candle.hcl": false, "shop.candle.hcl": false,
	} {
		assert.Equal(t, want, asked.Covers(name), name)
	}
	assert.True(t, lint.Asked{Root: "quay"}.Covers("anything"))
}

func TestHome(t *testing.T) {
	fsys := tree("quay/shop.candle.hcl")
	for file, want := range map[string]string{
		"quay/recipes/new.candle.hcl": "quay",
		"quay/new.candle.hcl":         "quay",
		"other/new.candle.hcl":        "other",
		"new.candle.hcl":              ".",
	} {
		assert.Equal(t, want, lint.Home(fsys, file), file)
	}
}

func names(s *lint.Shop) []string {
	var list []string
	for _, f := range s.Files() {
		list = append(list, f.Name)
	}
	return list
}

func TestLoad(t *testing.T) {
	fsys := tree("shop.candle.hcl", "stock/waxes.candle.hcl", "b.candle.hcl", "annex/shop.candle.hcl", "annex/c.candle.hcl", ".old/d.candle.hcl", "notes.txt", "half.hcl")
	var told [][2]int
	shop, errs := lint.Load(fsys, "quay", func(done, total int) { told = append(told, [2]int{done, total}) })
	require.Empty(t, errs)
	assert.Equal(t, "quay", shop.Root)
	assert.Equal(t, []string{"b.candle.hcl", "shop.candle.hcl", "stock/waxes.candle.hcl"}, names(shop))
	assert.Equal(t, [][2]int{{1, 3}, {2, 3}, {3, 3}}, told)

	delete(fsys, "shop.candle.hcl")
	shop, _ = lint.Load(fsys, ".", nil)
	assert.Equal(t, []string{"b.candle.hcl"}, names(shop), "without a shop file the folder alone is the shop")
}

// Links are not followed out of the shop's root, what cannot be opened is
// told, and the rest is read.
func TestLoadStaysInside(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links and modes need rights there")
	}
	base := t.TempDir()
	write := func(name string) {
		full := filepath.Join(base, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(full), 0o755))
		require.NoError(t, os.WriteFile(full, []byte(`recipe "r" {}`), 0o644))
	}
	write("outside.candle.hcl")
	write("outside/x.candle.hcl")
	write("shop/shop.candle.hcl")
	write("shop/recipes/a.candle.hcl")
	link := func(to, name string) { require.NoError(t, os.Symlink(to, filepath.Join(base, "shop", name))) }
	link("../outside.candle.hcl", "relative.candle.hcl")
	link(filepath.Join(base, "outside.candle.hcl"), "absolute.candle.hcl")
	link("../outside", "folder")
	link("recipes/a.candle.hcl", "within.candle.hcl")
	link("nowhere", "dangling.candle.hcl")
	require.NoError(t, os.Mkdir(filepath.Join(base, "shop", "folder.candle.hcl"), 0o755))

	root, err := os.OpenRoot(filepath.Join(base, "shop"))
	require.NoError(t, err)
	defer root.Close()
	shop, errs := lint.Load(root.FS(), "shop", nil)
	assert.Equal(t, []string{"recipes/a.candle.hcl", "shop.candle.hcl", "within.candle.hcl"}, names(shop))
	var failed []string
	for _, e := range errs {
		failed = append(failed, e.Name)
		assert.ErrorContains(t, e, "links are not followed out of it")
	}
	assert.Equal(t, []string{"absolute.candle.hcl", "dangling.candle.hcl", "relative.candle.hcl"}, failed)
}

func TestWith(t *testing.T) {
	shop, _ := lint.Load(tree("shop.candle.hcl", "a.candle.hcl"), ".", nil)
	other, _ := lint.Load(tree("a.candle.hcl", "b.candle.hcl"), ".", nil)
	both := shop.With(other.Files()...)
	assert.Equal(t, []string{"a.candle.hcl", "b.candle.hcl", "shop.candle.hcl"}, names(both))
	assert.Same(t, other.Files()[0], both.Files()[0], "the one given takes the place of the one there")
	assert.Len(t, shop.Files(), 2, "the shop itself is unchanged")
}
