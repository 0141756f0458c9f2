package rules_test

import (
	"io/fs"
	"regexp"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/cooling"
)

// The cooling model is costly: of sound recipes none asks it, since the rule
// of thumb or a bound decides; and where it is asked, recipes that share vessel,
// wax and pour have it worked out once, however many they are, and not again
// after an edit.
func TestTheCoolingModelIsSparedAndShared(t *testing.T) {
	few, many := manyRecipes(t, 44), manyRecipes(t, 440)
	for _, files := range []fstest.MapFS{few, many} {
		assert.Zero(t, workedOut(t, files), "by sound recipes")
	}
	soon := regexp.MustCompile(`(?s)(step "unmold" \{\s*after = )"[^"]*"`)
	spoil := func(files fstest.MapFS) fstest.MapFS {
		for _, f := range files {
			f.Data = soon.ReplaceAll(f.Data, []byte(`${1}"1 h"`))
		}
		return files
	}
	some := workedOut(t, spoil(few))
	assert.Positive(t, some)
	assert.LessOrEqual(t, some, 16)
	assert.Equal(t, some, workedOut(t, spoil(many)))
}

// workedOut is how many pours a check works out, and that a check after an edit
// works out none beside them.
func workedOut(t *testing.T, files fs.FS) int {
	t.Helper()
	shop, errs := lint.Load(files, ".", nil)
	require.Empty(t, errs)
	lint.Run(shop, rules.All(), today)
	n := cooling.WorkedOut(shop)
	edited := shop.With(shop.Files()[0])
	lint.Run(edited, rules.All(), today)
	assert.Equal(t, n, cooling.WorkedOut(edited))
	return n
}
