package batch

// Families are the families that have usual figures.
func Families() []string {
	var names []string
	for i := range families {
		names = append(names, families[i].name)
	}
	return names
}
