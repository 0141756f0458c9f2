package batch

import (
	"slices"

	"wickrule/schema"
)

// MadeIn is what comes out of one vessel of the recipe: pillar, jar, tealight,
// votive, taper or melt; "" where that cannot be read. The recipe's own word
// counts as far as such a vessel can make that: what is poured into a container
// stays in it, and is no pillar whatever the recipe says. Where a recipe has
// several vessels, each is asked for itself; one that is not in stock makes
// what the recipe says. What has a wick is lit, and is judged as a candle
// whatever is said of melts: wick-in-melt says that the two do not agree.
func (b *Batch) MadeIn(v *Vessel) string {
	made := b.saidToMake(v)
	if made != "melt" || v.Stock == nil || !b.wickNamed(v) {
		return made
	}
	if v.Kind == "mold" {
		return "pillar"
	}
	return inContainer(v)
}

// wickNamed says whether a wick is named for the vessel, by itself or by a step
// that sets it.
func (b *Batch) wickNamed(v *Vessel) bool {
	if v.Wicks == 0 {
		return false
	}
	if !v.WickSaid.Absent() {
		return true
	}
	for i := range b.Steps {
		s := &b.Steps[i]
		if s.Kind == "set wick" && !s.Block.Get("wick").Absent() && slices.ContainsFunc(s.Vessels, func(at int) bool { return &b.Vessels[at] == v }) {
			return true
		}
	}
	return false
}

// SaidToBeMelts says whether the recipe or the stock says that what comes out
// of the vessel are melts, with a wick or without one, and where it is said.
func (b *Batch) SaidToBeMelts(v *Vessel) (schema.Value, bool) {
	if v.Stock == nil || b.saidToMake(v) != "melt" {
		return schema.Value{}, false
	}
	if said := b.Recipe.Get("makes"); said.Text() == "melt" {
		return said, true
	}
	if v.Kind == "mold" {
		return v.Stock.Get("makes"), true
	}
	return v.Stock.Get("kind"), true
}

func (b *Batch) saidToMake(v *Vessel) string {
	said := b.Recipe.Get("makes")
	whole := said.Text()
	if v.Stock == nil || said.Broken() {
		return whole
	}
	if whole == "melt" && canMake(v.Kind, whole) && !(len(b.Vessels) > 1 && b.wickNamed(v)) {
		return whole // several kinds of vessel may all be filled with melts; beside them one with a wick is a candle
	}
	if whole != "" && canMake(v.Kind, whole) && (len(b.Vessels) == 1 || v.Kind == "container" && v.Stock.Get("kind").Text() == "votive glass") {
		return whole
	}
	switch v.Kind {
	case "taper":
		return "taper"
	case "mold":
		switch makes := v.Stock.Get("makes"); {
		case !makes.Absent():
			return makes.Text()
		case whole != "" && canMake("mold", whole):
			return whole
		}
		return "pillar"
	}
	switch kind := v.Stock.Get("kind"); {
	case kind.Text() == "clamshell":
		return "melt"
	case kind.Broken():
		return ""
	}
	return inContainer(v)
}

// inContainer is the candle that a container of its kind holds.
func inContainer(v *Vessel) string {
	switch v.Stock.Get("kind").Text() {
	case "tealight cup":
		return "tealight"
	case "votive glass":
		return "votive"
	}
	return "jar"
}

func canMake(kind, what string) bool {
	switch kind {
	case "container":
		return what == "jar" || what == "tealight" || what == "votive" || what == "melt"
	case "mold":
		return what != "jar"
	}
	return what == kind
}
