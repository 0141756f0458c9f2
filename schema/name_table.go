package schema

// nameTable finds the attributes of a block by name, with one look and one
// comparison: its size and its factor are chosen so that no two names meet.
type nameTable struct {
	places []uint8 // by the name's number; where among the attributes it is, plus one
	factor uint32
}

func (t *nameTable) built() bool { return t.places != nil }

// tableOf is the table for these attributes. The first of a name counts.
func tableOf(attrs []*AttrSpec) nameTable {
	if len(attrs) >= 255 {
		panic("schema: a block with so many attributes needs wider numbers")
	}
	for size := 8; ; size *= 2 {
		for factor := uint32(1); factor < 200; factor += 2 {
			t := nameTable{make([]uint8, size), factor}
			if t.fill(attrs) {
				return t
			}
		}
	}
}

// fill puts the attributes in; false where two names meet.
func (t *nameTable) fill(attrs []*AttrSpec) bool {
	for i, a := range attrs {
		place := &t.places[t.number(a.Name)]
		switch {
		case *place == 0:
			*place = uint8(i + 1)
		case attrs[*place-1].Name != a.Name:
			return false
		}
	}
	return true
}

// number is made of the letters at which names differ most.
func (t *nameTable) number(name string) uint32 {
	n := uint32(len(name))
	if n > 0 {
		n += uint32(name[0])<<5 ^ uint32(name[n/2])<<10 ^ uint32(name[n-1])<<15
	}
	n *= t.factor
	return (n ^ n>>7 ^ n>>15) & uint32(len(t.places)-1)
}

func (t *nameTable) find(name string, attrs []*AttrSpec) (place uint8, ok bool) {
	at := t.places[t.number(name)]
	if at == 0 || attrs[at-1].Name != name {
		return 0, false
	}
	return at - 1, true
}
