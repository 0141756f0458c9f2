package heat

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// heatSource is what a melt stands over: as it says itself, else as its pot
// says. Said is the recipe's value that decides; the source is "" where
// nothing says it, and then lacks and attr are what could.
type heatSource struct {
	said   schema.Value
	source string
	pot    *schema.Block // the pot in stock, where that decides
	lacks  *schema.Block
	attr   string
}

func sourceOf(p *lint.Pass, melt *schema.Block) heatSource {
	if over := melt.Get("over"); !over.Absent() {
		return heatSource{said: over, source: over.Text()}
	}
	key := p.Recipe.Get("pot")
	if key.Absent() {
		return heatSource{lacks: melt, attr: "over"}
	}
	pot, known := p.Stock("pot", key.Text())
	if !known {
		return heatSource{said: key} // unknown-key says so
	}
	heat := pot.Get("heat")
	if heat.Absent() {
		return heatSource{lacks: pot, attr: "heat"}
	}
	return heatSource{said: key, source: heat.Text(), pot: pot}
}

const (
	directHeat = "direct heat"
	microwave  = "microwave"
)

// lastMelt is the melt before a step; nil: none.
func lastMelt(b *batch.Batch, before int) *schema.Block {
	for i := before - 1; i >= 0; i-- {
		if b.Steps[i].Kind == "melt" {
			return b.Steps[i].Block
		}
	}
	return nil
}
