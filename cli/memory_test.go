package cli

import (
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
)

// percent is what is in force now.
func percent() int {
	now := debug.SetGCPercent(usualGarbage)
	debug.SetGCPercent(now)
	return now
}

func TestReadingTakesMoreMemoryForAWhile(t *testing.T) {
	defer debug.SetGCPercent(debug.SetGCPercent(usualGarbage))
	told, done := readingRoom()
	told(roomyUpTo)
	assert.Equal(t, roomy, percent())
	told(roomyUpTo + 1)
	assert.Equal(t, usualGarbage, percent(), "a shop so large is read as usual")
	done()
	assert.Equal(t, usualGarbage, percent())

	told, done = readingRoom()
	told(1)
	done()
	assert.Equal(t, usualGarbage, percent())

	debug.SetGCPercent(50)
	told, done = readingRoom()
	told(1)
	assert.Equal(t, 50, percent(), "what was asked for stays")
	done()
	assert.Equal(t, 50, percent())
}
