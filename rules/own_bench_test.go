package rules_test

import (
	"fmt"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// ownRules are so many rules of a shop's own, of ten kinds over and over.
func ownRules(n int) string {
	kinds := []struct{ about, when, require string }{
		{"mold", `mold.seal.kind == "putty"`, `pour.at <= mold.seal.holds_to - degrees("10 °F")`},
		{"container", `container.material == "glass"`, `recipe.room >= amount("50 °F")`},
		{"dye", `!dye.by_eye`, `dye.weight >= amount("0.001 g")`},
		{"melt", `wax.family == "beeswax"`, `melt.to <= amount("200 °F")`},
		{"pour", "true", `pour.at <= amount("240 °F")`},
		{"wax", `wax.family == "gel"`, `wax.weight >= amount("1 g")`},
		{"batch", "true", `batch.fragrance_of_wax <= amount("15 % of wax")`},
		{"cure", "true", `cure.for >= amount("1 h")`},
		{"trim_wick", `trim_wick.to > amount("1 in")`, `false`},
		{"recipe", `recipe.makes == "taper"`, `count("step", "dip") >= 0`},
	}
	var b strings.Builder
	for i := range n {
		k := kinds[i%len(kinds)]
		fmt.Fprintf(&b, "rule \"own-%d\" {\n  about   = %q\n  when    = %s\n  require = %s\n}\n", i, k.about, k.when, k.require)
	}
	return b.String()
}

// 200 rules of a shop's own over 10,000 recipes beside the built-in rules in
// the same run: "times-built-in" is what a check takes longer with them, in
// terms of what it takes without, and "alone" what a check by them only takes,
// which works out for itself what both look at.
func BenchmarkOwnRules(b *testing.B) {
	files, err := examples.Many(10_000)
	require.NoError(b, err)
	shop, errs := lint.Load(files, ".", nil)
	require.Empty(b, errs)
	shop = shop.With(schema.Read("rules.candle.hcl", []byte(ownRules(200))))
	own := rules.Own(shop)
	require.GreaterOrEqual(b, len(own), 200) // the demo shop's own come along
	all := rules.All()
	both := slices.Concat(all, own)
	lint.Run(shop, both, today)
	var built, alone, together []float64
	for b.Loop() {
		for _, run := range []struct {
			rules []*lint.Rule
			times *[]float64
		}{{all, &built}, {own, &alone}, {both, &together}} {
			runtime.GC()
			*run.times = append(*run.times, timed(func() { lint.Run(shop, run.rules, today) }).Seconds())
		}
	}
	b.ReportMetric((median(together)-median(built))/median(built), "times-built-in")
	b.ReportMetric(median(alone)/median(built), "alone-times-built-in")
	b.ReportMetric(1e6*(median(together)-median(built))/10_000, "own-us/recipe")
}
