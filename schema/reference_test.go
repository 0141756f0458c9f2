package schema

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestReferenceIsUpToDate(t *testing.T) {
	written, err := os.ReadFile("FORMAT.md")
	require.NoError(t, err)
	if string(written) != Reference() {
		t.Fatal("FORMAT.md needs updating: run `go generate ./schema`")
	}
}

func TestReferenceTellsEverything(t *testing.T) {
	text := Reference()
	for _, s := range AllSpecs() {
		assert.Contains(t, text, s.Doc, s.ID)
		for _, a := range s.Attrs {
			assert.Contains(t, text, "| `"+a.Name+"` |", s.ID)
		}
	}
	for _, name := range CautionNames() {
		assert.Contains(t, text, "| `"+name+"` |")
	}
	// Every table is one: as many bars in each row as in its head.
	bars := 0
	for i, line := range strings.Split(text, "\n") {
		if !strings.HasPrefix(line, "|") {
			bars = 0
			continue
		}
		n := strings.Count(line, "|") - strings.Count(line, `\|`)
		if bars == 0 {
			bars = n
		}
		assert.Equal(t, bars, n, "line %d: %s", i+1, line)
	}
}

func TestTakes(t *testing.T) {
	cases := []struct{ block, attr, want string }{
		{"wax", "pour_at", "a temperature or a range"},
		{"wax", "fragrance_limit", "a proportion of the wax or the total"},
		{"wax", "latent_heat", "a number in kJ/kg"},
		{"shop", "units", `one of "us" or "metric"`},
		{"label", "markets", `one or more of "US", "EU" or "UK"`},
		{"fragrance", "components", `"none classified"`},
		{"container", "thermal_shock", "a temperature difference"},
		{"recipe", "pot", "the key of a pot"},
	}
	for _, c := range cases {
		assert.Equal(t, c.want, Top(c.block).Attr(c.attr).Takes(), c.attr)
	}
	recipe := Top("recipe")
	assert.Equal(t, "a length, a length below rim, a volume, a weight or a percentage", recipe.Block("mold").Attr("fill").Takes())
	assert.Equal(t, `a count or "to shade"`, recipe.Block("dye").Attr("amount").Takes())
	assert.Equal(t, "a proportion of the wax or the total", recipe.Block("fragrance").Attr("load").Takes())
	assert.Equal(t, "the key of a mold, a container or a taper", Step("pour").Attr("vessel").Takes())
}
