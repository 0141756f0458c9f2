package cli_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/cli"
	"wickrule/rules"
)

// What is written about the two example shops, by all built-in rules and the
// demo shop's own, keeps to the JSON Schema that OASIS publishes with the
// standard, and is the same each time.
func TestSARIFOfTheExamples(t *testing.T) {
	p := newPlace(t, nil)
	folder, err := filepath.Abs("../examples")
	require.NoError(t, err)
	p.env.Folder, p.env.Rules = folder, rules.All()
	copied := filepath.Join(t.TempDir(), "kept", "recipes.sarif")
	require.Equal(t, cli.Found, p.run("check", "--report", "sarif", "--write", "sarif="+copied, "shop", "faulty"), p.err.String())
	first := p.out.String()
	value, err := jsonschema.UnmarshalJSON(strings.NewReader(first))
	require.NoError(t, err)
	schema, err := jsonschema.NewCompiler().Compile("../lint/report/testdata/sarif/sarif-schema-2.1.0.json")
	require.NoError(t, err)
	assert.NoError(t, schema.Validate(value))
	assert.Equal(t, first, readFile(t, copied))

	p.run("check", "--report", "sarif", "faulty", "shop")
	assert.Equal(t, first, p.out.String())
}

func readFile(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	return string(text)
}
