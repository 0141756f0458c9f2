package cli_test

import (
	"context"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/cli"
)

// Stopped at whatever moment, a new shop is there whole or not at all, and
// nothing lies beside it.
func TestANewShopIsWholeOrNotThere(t *testing.T) {
	whole := 0
	for wait := time.Duration(0); wait < 12*time.Millisecond; wait += 300 * time.Microsecond {
		p := newPlace(t, nil)
		ctx, stop := context.WithTimeout(context.Background(), wait)
		cli.Run(ctx, []string{"new", "mine", "--ci", "none"}, p.env)
		stop()
		entries, err := os.ReadDir(p.folder)
		require.NoError(t, err)
		if len(entries) == 0 {
			continue
		}
		require.Len(t, entries, 1)
		assert.Equal(t, "mine", entries[0].Name())
		assert.Contains(t, p.read("mine/shop.candle.hcl"), `shop "mine"`)
		assert.Contains(t, p.read("mine/stock/wicks.candle.hcl"), "wick ")
		whole++
	}
	t.Logf("%d of 40 were written before they were stopped", whole)
}

// A folder that holds a shop already, or anything else, is left as it is.
func TestNewOverwritesNothing(t *testing.T) {
	p := newPlace(t, map[string]string{"mine/README.md": "mine", "other/.hidden/a": ""})
	assert.Equal(t, cli.NotWorked, p.run("new", "mine"))
	assert.Contains(t, p.err.String(), "mine holds something already (README.md)")
	assert.Equal(t, "mine", p.read("mine/README.md"))
	assert.Equal(t, cli.Good, p.run("new", "other"))
	assert.Contains(t, p.read("other/shop.candle.hcl"), `shop "other"`)
	assert.Equal(t, cli.NotWorked, p.run("new", "other"))
}
