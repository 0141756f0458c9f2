package rules_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/rules"
	"wickrule/schema"
)

// Whatever name the reader or the engine gives to what it finds, a rule
// stands behind it: a finding without one would be lost.
func TestEveryNameHasARule(t *testing.T) {
	known := map[string]bool{}
	for _, r := range rules.All() {
		known[r.Name] = true
	}
	for _, name := range schema.ReadingRules() {
		assert.Truef(t, known[name], "the reader finds %s, and no rule has that name", name)
	}
	for constant, name := range constants(t, "../lint", "Concession") {
		assert.Truef(t, known[name], "the engine finds %s (%s), and no rule has that name", name, constant)
	}
}

// The reader's list of names has every name that it uses.
func TestTheReadersListIsWhole(t *testing.T) {
	for constant, name := range constants(t, "../schema", "rule") {
		assert.Containsf(t, schema.ReadingRules(), name, "schema.ReadingRules leaves out %s", constant)
	}
}

// constants are the text constants of a package whose names begin so, with
// what they hold, taken from its source.
func constants(t *testing.T, folder, prefix string) map[string]string {
	t.Helper()
	found := map[string]string{}
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), folder+"/"+e.Name(), nil, parser.SkipObjectResolution)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.ValueSpec)
			if !ok {
				return true
			}
			for i, name := range spec.Names {
				if !strings.HasPrefix(name.Name, prefix) || i >= len(spec.Values) {
					continue
				}
				if text, ok := spec.Values[i].(*ast.BasicLit); ok && text.Kind == token.STRING {
					found[name.Name], err = strconv.Unquote(text.Value)
					require.NoError(t, err)
				}
			}
			return true
		})
	}
	require.NotEmptyf(t, found, "no constant %s… in %s", prefix, folder)
	return found
}
