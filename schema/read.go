package schema

// Read reads one file. It never fails: what it cannot read stands among the
// problems.
func Read(name string, src []byte) *File { return &File{Name: name, Text: NewText(string(src))} }

func belowRim(string) bool { return false }
