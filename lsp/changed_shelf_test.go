package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A shelf that changes on disk is seen in the open recipe that leans on it.
func TestShelfChangesOnDiskUnderAnOpenRecipe(t *testing.T) {
	disk := &shared{files: demoShop(t)}
	recipe, shelf := string(disk.files[tide].Data), "shop/stock/waxes.candle.hcl"
	stock := string(disk.files[shelf].Data)
	e := connect(t, disk, "shop", able)
	require.Empty(t, e.findings(e.open(tide, recipe)))
	lowered := strings.Replace(stock, `fragrance_limit  = "6 % of wax"`, `fragrance_limit  = "1 % of wax"`, 1)
	require.NotEqual(t, stock, lowered)
	disk.write(shelf, lowered)
	e.changedOnDisk(altered, shelf)
	e.sees(tide, "fragrance-over-limit")
	disk.write(shelf, stock)
	e.changedOnDisk(altered, shelf)
	e.sees(tide)
}
