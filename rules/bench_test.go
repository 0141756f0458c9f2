package rules_test

import (
	"fmt"
	"io/fs"
	"regexp"
	"runtime"
	"runtime/debug"
	"slices"
	"sync"
	"sync/atomic"
	"testing"
	"testing/fstest"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/cooling"
	"wickrule/schema"
)

// Speed is told as a ratio to a floor measured in the same run: the same files
// read, and parsed as HCL, and nothing else. Run with
//
//	go test ./rules -run '^$' -bench . -benchtime 5x

// manyRecipes is the shop that is measured.
func manyRecipes(t testing.TB, recipes int) fstest.MapFS {
	shop, err := examples.Many(recipes)
	require.NoError(t, err)
	return shop
}

// parseOnly is the floor: every file read and parsed, on all processors, and
// dropped.
func parseOnly(shop fstest.MapFS) {
	names := make([]string, 0, len(shop))
	for name := range shop {
		names = append(names, name)
	}
	var next atomic.Int64
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(names); i = int(next.Add(1)) - 1 {
				data, _ := fs.ReadFile(shop, names[i])
				hclsyntax.ParseConfig(data, names[i], hcl.InitialPos)
			}
		})
	}
	wg.Wait()
}

func timed(work func()) time.Duration {
	start := time.Now()
	work()
	return time.Since(start)
}

// The whole check of a shop, from files to findings, beside the floor.
func BenchmarkWholeCheck(b *testing.B) {
	for _, n := range []int{100, 10_000} {
		b.Run(fmt.Sprintf("%d-recipes", n), func(b *testing.B) {
			files := manyRecipes(b, n)
			all := rules.All()
			var floors, checks []float64
			for b.Loop() {
				floors = append(floors, timed(func() { parseOnly(files) }).Seconds())
				checks = append(checks, timed(func() {
					shop, _ := lint.Load(files, ".", nil)
					lint.Run(shop, all, today)
				}).Seconds())
			}
			b.ReportMetric(median(checks)/median(floors), "times-floor")
			b.ReportMetric(1e6*median(checks)/float64(n), "us/recipe")
			b.ReportMetric(1e6*median(floors)/float64(n), "floor-us/recipe")
		})
	}
}

// What the parts of a check cost beside the floor, in one process on one
// processor. "reading-%" is all of schema.Read, from bytes to typed blocks with
// whichever parser takes the text, in percent of what HCL's parser takes for the
// same files; "rules-%" is the shop's index, facts and rules. Nothing is subtracted: the two
// together are the check, and the floor is no part of it. Garbage is collected
// between the three and not during them, since when it falls due says nothing
// of who made it: the whole check above pays for all of it.
func BenchmarkBesideTheParse(b *testing.B) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	defer debug.SetGCPercent(debug.SetGCPercent(-1))
	files := manyRecipes(b, 500)
	var parses, reads, runs []float64
	all := rules.All()
	for b.Loop() {
		decoded := make([]*schema.File, 0, len(files))
		runtime.GC()
		parse := timed(func() {
			for name, f := range files {
				hclsyntax.ParseConfig(f.Data, name, hcl.InitialPos)
			}
		})
		runtime.GC()
		read := timed(func() {
			for name, f := range files {
				decoded = append(decoded, schema.Read(name, f.Data))
			}
		})
		runtime.GC()
		run := timed(func() { lint.Run(lint.NewShop(".", decoded), all, today) })
		parses = append(parses, parse.Seconds())
		reads = append(reads, read.Seconds())
		runs = append(runs, run.Seconds())
	}
	b.ReportMetric(100*median(reads)/median(parses), "reading-%")
	b.ReportMetric(100*median(runs)/median(parses), "rules-%")
}

func median(values []float64) float64 {
	slices.Sort(values)
	return values[len(values)/2]
}

// What a shop keeps in memory for each recipe beside its text, once it is
// read and checked.
func BenchmarkMemory(b *testing.B) {
	for _, n := range []int{10_000, 100_000} {
		b.Run(fmt.Sprintf("%d-recipes", n), func(b *testing.B) {
			files := manyRecipes(b, n)
			texts := 0
			for _, f := range files {
				texts += len(f.Data)
			}
			for b.Loop() {
				before := liveHeap()
				shop, _ := lint.Load(files, ".", nil)
				report := lint.Run(shop, rules.All(), today)
				kept := liveHeap() - before
				b.ReportMetric(float64(kept)/float64(n), "bytes/recipe")
				b.ReportMetric(float64(kept-uint64(texts))/float64(n), "bytes-beside-text/recipe")
				b.ReportMetric(float64(texts)/float64(n), "text/recipe")
				runtime.KeepAlive(report)
			}
		})
	}
}

func liveHeap() uint64 {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// asksTheModel are the rules that rest on the cooling model.
var asksTheModel = []string{"narrow-pour-window", "relief-holes-too-early", "relief-holes-too-late", "second-pour-too-soon", "unmold-too-soon"}

// What the cooling model adds to the check of 10,000 recipes that share
// vessels and waxes: "cooling-us/recipe", and "cooling-%" of all rules and
// facts. In the second shop every other candle is unmolded too soon, so that no
// bound decides and the model is asked; each vessel and wax is worked out once.
func BenchmarkCooling(b *testing.B) {
	const n = 10_000
	soon := regexp.MustCompile(`(?s)(step "unmold" \{\s*after = )"[^"]*"`)
	for _, shop := range []struct {
		name  string
		spoil bool
	}{{"sound", false}, {"unmolded-too-soon", true}} {
		b.Run(shop.name, func(b *testing.B) {
			files := manyRecipes(b, n)
			var read []*schema.File
			i := 0
			for name, f := range files {
				if i++; shop.spoil && i%2 == 0 {
					f.Data = soon.ReplaceAll(f.Data, []byte(`${1}"1 h"`))
				}
				read = append(read, schema.Read(name, f.Data))
			}
			all := rules.All()
			without := slices.DeleteFunc(slices.Clone(all), func(r *lint.Rule) bool { return slices.Contains(asksTheModel, r.Name) })
			var more, most []float64
			for b.Loop() {
				runtime.GC()
				less := timed(func() { lint.Run(lint.NewShop(".", read), without, today) })
				runtime.GC()
				full := timed(func() { lint.Run(lint.NewShop(".", read), all, today) })
				more = append(more, (full - less).Seconds())
				most = append(most, full.Seconds())
			}
			b.ReportMetric(1e6*median(more)/n, "cooling-us/recipe")
			b.ReportMetric(100*median(more)/median(most), "cooling-%")
			shop := lint.NewShop(".", read)
			lint.Run(shop, all, today)
			b.ReportMetric(float64(cooling.WorkedOut(shop)), "worked-out")
		})
	}
}
