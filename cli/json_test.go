package cli_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/cli"
	"wickrule/rules"
)

// What is written about the two example shops, by all built-in rules, keeps to
// the published JSON Schema (2020-12), and is the same each time.
func TestJSONOfTheExamples(t *testing.T) {
	p := newPlace(t, nil)
	folder, err := filepath.Abs("../examples")
	require.NoError(t, err)
	p.env.Folder, p.env.Rules = folder, rules.All()
	require.Equal(t, cli.Found, p.run("check", "--report", "json", "shop", "faulty"), p.err.String())
	first := p.out.String()
	value, err := jsonschema.UnmarshalJSON(strings.NewReader(first))
	require.NoError(t, err)

	require.Equal(t, cli.Good, p.run("help", "json-schema"))
	schema, err := jsonschema.UnmarshalJSON(strings.NewReader(p.out.String()))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("report.json", schema))
	compiled, err := c.Compile("report.json")
	require.NoError(t, err)
	assert.NoError(t, compiled.Validate(value))

	p.run("check", "--report", "json", "faulty", "shop")
	assert.Equal(t, first, p.out.String())
}
