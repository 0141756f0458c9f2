package batch

// Families are the families that have usual figures.
func Families() []string {
	var names []string
	for i := range families {
		names = append(names, families[i].name)
	}
	return names
}

// LowestCeilingStands says whether the family's row for no grade has a ceiling
// and a flash point that no row of a grade is below.
func LowestCeilingStands(name string) bool {
	var all *family
	for i := range families {
		if families[i].name == name && families[i].grade == "" {
			all = &families[i]
		}
	}
	for i := range families {
		f := &families[i]
		if f.name == name && (all == nil || f.neverAbove.Cmp(all.neverAbove) < 0 || f.flashPoint.Cmp(all.flashPoint) < 0) {
			return false
		}
	}
	return true
}
