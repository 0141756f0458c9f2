package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is looked up as it is written must mean what it means folded.
func TestSpellingsMeanTheSameFolded(t *testing.T) {
	for text, id := range spelled {
		folded, ok := fold(nil, text)
		assert.True(t, ok, text)
		assert.Equal(t, id, spelled[string(folded)], text)
	}
}
