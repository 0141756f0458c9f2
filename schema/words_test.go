package schema_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/schema"
)

// Every word of a closed list has a meaning that can be told, save languages
// and the names of blocks; a caution's stands with the cautions.
func TestEveryWordMeansSomething(t *testing.T) {
	words := 0
	for _, s := range schema.AllSpecs() {
		for _, a := range s.Attrs {
			if a.Name == "languages" || a.Name == "about" {
				continue
			}
			for _, word := range a.Choices {
				words++
				if a.Name == "cautions" {
					assert.NotNil(t, schema.CautionNamed(word), word)
					continue
				}
				assert.NotEmpty(t, schema.WordMeans(a, word), "%s.%s = %q", s.ID, a.Name, word)
			}
		}
	}
	assert.Greater(t, words, 150)
}
