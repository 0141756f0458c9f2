package labels

import (
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
)

const exampleLabel = "label \"quiet-base\" {\n  markets    = [\"US\"]\n  languages  = [\"en\"]\n  signal     = \"WARNING\"\n" +
	"  cautions   = [\"burn within sight\", \"keep away from things that catch fire\", \"keep away from children\"]\n" +
	"  net_weight = \"1 lb 5 oz (595 g)\"\n  contact    = \"Larkspur Quay Candleworks\"\n  lot        = \"date of the pour\"\n}\n"

// eachLabelled calls the check for the labels on each vessel that has any.
func eachLabelled(p *lint.Pass, b *batch.Batch, check func(attached)) {
	if !p.Loud(lint.Levels{}) {
		return
	}
	for _, on := range labelsOf(p, b) {
		if !on.broken && len(on.labels) > 0 {
			check(on)
		}
	}
}

// without is an example's text with one part written another way.
func without(text, part, instead string) string { return strings.Replace(text, part, instead, 1) }
