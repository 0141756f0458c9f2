package rules_test

import (
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// An edit of one recipe in a shop of 10,000, read and checked, beside the floor
// of parsing that file, which is taken in between; and an edit of a wax that a
// part of the shop leans on. Garbage is collected as the language server does
// it: before the edits begin, and in pauses (lsp/collect.go), which come long
// before the 4,000 edits that fill the room it has (cli/lsp.go). The floor's
// garbage, three times that of an edit, is not the server's: it would fill the
// room in its place.
func BenchmarkLive(b *testing.B) {
	files, err := examples.Many(10_000)
	require.NoError(b, err)
	shop, _ := lint.Load(files, ".", nil)
	all := rules.All()
	live := lint.NewLive(shop, func(*lint.Shop) []*lint.Rule { return all }, today)
	live.Settle(nil, 1<<30)
	name := "recipes/00004.candle.hcl"
	texts := [2]string{string(files[name].Data), strings.Replace(string(files[name].Data), `"`, `"x`, 1)}
	runtime.GC()
	b.Run("Edit", func(b *testing.B) {
		defer debug.SetGCPercent(debug.SetGCPercent(-1))
		var edits, parses []time.Duration
		for i := 0; b.Loop(); i++ {
			if i%500 == 499 {
				runtime.GC() // the pause
			}
			start := time.Now()
			live.Edit([]*schema.File{schema.Read(name, []byte(texts[i%2]))}, nil)
			live.Settle(func(file string) bool { return file == name }, 1<<30)
			edited := time.Now()
			hclsyntax.ParseConfig([]byte(texts[i%2]), name, hcl.InitialPos)
			edits, parses = append(edits, edited.Sub(start)), append(parses, time.Since(edited))
		}
		slices.Sort(edits)
		slices.Sort(parses)
		parse := float64(parses[len(parses)/2])
		b.ReportMetric(float64(edits[len(edits)/2])/parse, "p50-in-parses")
		b.ReportMetric(float64(edits[len(edits)*99/100])/parse, "p99-in-parses")
		b.ReportMetric(parse/1000, "parse-p50-us")
	})
	defer debug.SetGCPercent(debug.SetGCPercent(200))
	b.Run("Settled", func(b *testing.B) {
		for i := 0; b.Loop(); i++ {
			live.Edit([]*schema.File{schema.Read(name, []byte(texts[i%2]))}, nil)
			live.Settle(nil, 1<<30)
		}
	})
	b.Run("Floor", func(b *testing.B) {
		for b.Loop() {
			hclsyntax.ParseConfig([]byte(texts[0]), name, hcl.InitialPos)
		}
	})
	waxes := "stock/waxes.candle.hcl"
	stock := string(files[waxes].Data)
	changed := strings.Replace(stock, "never_above", "density", 1)
	require.NotEqual(b, stock, changed)
	b.Run("Stock", func(b *testing.B) {
		rechecked := 0
		for i := 0; b.Loop(); i++ {
			live.Edit([]*schema.File{schema.Read(waxes, []byte([2]string{changed, stock}[i%2]))}, nil)
			touched, _ := live.Settle(nil, 1<<30)
			rechecked = len(touched)
		}
		b.ReportMetric(float64(rechecked), "files-rechecked")
	})
}
