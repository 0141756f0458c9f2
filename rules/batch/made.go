package batch

// MadeIn is what comes out of one vessel of the recipe: pillar, jar, tealight,
// votive, taper or melt; "" where that cannot be read. The recipe's own word
// counts as far as such a vessel can make that: what is poured into a container
// stays in it, and is no pillar whatever the recipe says. Where a recipe has
// several vessels, each is asked for itself; one that is not in stock makes
// what the recipe says.
func (b *Batch) MadeIn(v *Vessel) string {
	said := b.Recipe.Get("makes")
	whole := said.Text()
	if v.Stock == nil || said.Broken() {
		return whole
	}
	if whole == "melt" && canMake(v.Kind, whole) && v.WickSaid.Absent() {
		return whole // several kinds of vessel may all be filled with melts
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
	kind := v.Stock.Get("kind")
	switch kind.Text() {
	case "tealight cup":
		return "tealight"
	case "votive glass":
		return "votive"
	case "clamshell":
		return "melt"
	}
	if kind.Broken() {
		return ""
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
