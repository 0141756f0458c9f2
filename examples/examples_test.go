package examples_test

import (
	"io/fs"
	"path"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/schema"
)

// The demo shop reads without a single problem.
func TestTheShopReadsClean(t *testing.T) {
	files := recipeFiles(t, examples.Shop(), ".")
	assert.NotEmpty(t, files)
	for _, name := range files {
		file := read(t, examples.Shop(), name)
		for _, p := range file.Problems {
			t.Errorf("%s: %s: %s", name, p.Rule, p.Message)
		}
		assert.True(t, file.Clean, name)
	}
}

// The stock of the faulty shop reads clean: what is wrong there is wrong in
// its recipes.
func TestTheFaultyStockReadsClean(t *testing.T) {
	for _, name := range recipeFiles(t, examples.Faulty(), "stock") {
		for _, p := range read(t, examples.Faulty(), name).Problems {
			t.Errorf("%s: %s: %s", name, p.Rule, p.Message)
		}
	}
}

// Every faulty recipe says what is wrong at its top, and is expected to be
// found; what is expected stands in the line named.
func TestWhatIsExpectedStandsThere(t *testing.T) {
	found := map[string]int{}
	for _, e := range expected(t) {
		src, err := fs.ReadFile(examples.Faulty(), e.file)
		require.NoError(t, err, e)
		lines := strings.Split(string(src), "\n")
		require.LessOrEqual(t, e.line, len(lines), e)
		assert.Contains(t, lines[e.line-1], e.text, e)
		found[e.file]++
	}
	for _, name := range recipeFiles(t, examples.Faulty(), "recipes") {
		assert.NotZero(t, found[name], "%s: nothing is expected to be found in it", name)
		src, err := fs.ReadFile(examples.Faulty(), name)
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(string(src), "# "), "%s does not say what is wrong", name)
	}
}

// A recipe's file is named after its key, so that it is found by it.
func TestRecipesStandInFilesOfTheirName(t *testing.T) {
	for _, name := range recipeFiles(t, examples.Shop(), "recipes") {
		key := strings.TrimSuffix(path.Base(name), ".candle.hcl")
		src, err := fs.ReadFile(examples.Shop(), name)
		require.NoError(t, err)
		assert.Contains(t, string(src), "recipe \""+key+"\" {", name)
	}
}

func recipeFiles(t *testing.T, shop fs.FS, under string) []string {
	t.Helper()
	var names []string
	require.NoError(t, fs.WalkDir(shop, under, func(name string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(name, ".candle.hcl") {
			names = append(names, name)
		}
		return err
	}))
	return names
}

func read(t *testing.T, shop fs.FS, name string) *schema.File {
	t.Helper()
	src, err := fs.ReadFile(shop, name)
	require.NoError(t, err)
	return schema.Read(name, src)
}
