package main

import (
	"encoding/json"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// goPackage is what `go list` tells of a package.
type goPackage struct {
	ImportPath string
	Imports    []string
}

func packages(t *testing.T) []goPackage {
	t.Helper()
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "./...").Output()
	require.NoError(t, err)
	var all []goPackage
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p goPackage
		if err := d.Decode(&p); err == io.EOF {
			return all
		} else {
			require.NoError(t, err)
		}
		all = append(all, p)
	}
}

// below lists what each part of the project may import of it. A part stands
// for its own folder and those beneath that are not named themselves.
var below = map[string][]string{
	"wickrule":                   {"wickrule/cli"},
	"wickrule/cli":               {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/lint/report", "wickrule/rules", "wickrule/rules/batch", "wickrule/rules/card", "wickrule/rules/drill", "wickrule/rules/explained", "wickrule/rules/formula", "wickrule/rules/handbook", "wickrule/rules/sheet", "wickrule/rules/shoprule", "wickrule/examples", "wickrule/lsp"},
	"wickrule/examples":          {},
	"wickrule/editors":           {},
	"wickrule/schema/quantity":   {},
	"wickrule/schema":            {"wickrule/schema/quantity"},
	"wickrule/schema/formatref":  {"wickrule/schema"},
	"wickrule/lint":              {"wickrule/schema", "wickrule/schema/quantity"},
	"wickrule/lint/report":       {"wickrule/schema", "wickrule/lint"},
	"wickrule/lsp":               {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/rules/batch", "wickrule/rules/cooling", "wickrule/rules/hazard", "wickrule/rules/formula", "wickrule/rules/sheet", "wickrule/rules/shoprule", "wickrule/rules/explained"},
	"wickrule/rules/batch":       {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint"},
	"wickrule/rules/cooling":     {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/rules/batch"},
	"wickrule/rules/formula":     {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/rules/batch"},
	"wickrule/rules/hazard":      {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/rules/batch"},
	"wickrule/rules/sheet":       {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/lint/report", "wickrule/rules/batch", "wickrule/rules/cooling", "wickrule/rules/hazard", "wickrule/rules/formula"},
	"wickrule/rules/explained":   {"wickrule/schema", "wickrule/lint"},
	"wickrule/rules/card":        {"wickrule/schema", "wickrule/lint", "wickrule/rules/explained", "wickrule/rules/sheet"},
	"wickrule/rules/drill":       {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/rules/batch"},
	"wickrule/rules/handbook":    {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/lint/report", "wickrule/rules/explained", "wickrule/rules/sheet", "wickrule/rules/shoprule"},
	"wickrule/rules/repair":      {"wickrule/schema", "wickrule/schema/quantity"},
	"wickrule/rules/formulation": group, "wickrule/rules/vessel": group, "wickrule/rules/heat": group,
	"wickrule/rules/setting": group, "wickrule/rules/labels": group, "wickrule/rules/burns": group, "wickrule/rules/house": group,
	"wickrule/rules": {"wickrule/schema", "wickrule/lint", "wickrule/rules/formulation", "wickrule/rules/vessel", "wickrule/rules/heat",
		"wickrule/rules/setting", "wickrule/rules/labels", "wickrule/rules/burns", "wickrule/rules/house", "wickrule/rules/shoprule"},
	"wickrule/rules/rulebook": {"wickrule/rules"},

	"wickrule/rules/shoprule":       {"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/rules/batch", "wickrule/rules/cooling", "wickrule/rules/hazard", "wickrule/rules/repair"},
	"wickrule/rules/shoprule/names": {"wickrule/rules/shoprule"},
}

var group = []string{"wickrule/schema", "wickrule/schema/quantity", "wickrule/lint", "wickrule/rules/batch", "wickrule/rules/cooling", "wickrule/rules/formula", "wickrule/rules/hazard", "wickrule/rules/repair"}

// only says which parts may use a library, or a part of the system. A name
// with a stroke at its end stands for all that begins so. Tests may use what
// they like.
var only = map[string][]string{
	"github.com/hashicorp/hcl/":    {"wickrule/schema", "wickrule/rules/shoprule"},
	"github.com/zclconf/go-cty/":   {"wickrule/schema", "wickrule/rules/shoprule"},
	"github.com/spf13/pflag":       {"wickrule/cli"},
	"golang.org/x/term":            {"wickrule/cli"},
	"github.com/stretchr/testify/": {},
	"os":                           {"wickrule", "wickrule/cli", "wickrule/schema/formatref", "wickrule/rules/rulebook", "wickrule/rules/shoprule/names"},
	"os/":                          {"wickrule"},
	"os/exec":                      {"wickrule/cli"}, // git
	"net":                          {},
	"net/":                         {},
	"net/url":                      {"wickrule/lsp", "wickrule/lint/report"}, // names only, no network
	"github.com/tliron/glsp/":      {"wickrule/lsp"},
	"github.com/sourcegraph/":      {"wickrule/lsp"},
}

// The arrows between the folders run one way: schema, lint, batch, the rule
// groups, rules, cli.
func TestArrows(t *testing.T) {
	all := packages(t)
	require.NotEmpty(t, all)
	for _, p := range all {
		allowed, known := below[p.ImportPath]
		assert.Truef(t, known, "%s is not on the map of this test: say what it may import", p.ImportPath)
		for _, i := range p.Imports {
			if strings.HasPrefix(i, "wickrule/") {
				assert.Containsf(t, allowed, i, "%s may not import %s", p.ImportPath, i)
			}
			for what, where := range only {
				if _, own := only[i]; own && i != what {
					continue // it has a line of its own
				}
				if i == what || strings.HasSuffix(what, "/") && strings.HasPrefix(i, what) {
					assert.Truef(t, slices.Contains(where, p.ImportPath), "%s may not import %s", p.ImportPath, i)
				}
			}
		}
	}
}
