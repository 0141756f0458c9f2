package schema

// RemoveBlock takes a block and its lines out.
func RemoveBlock(b *Block) Edit { return Edit{File: b.File, Span: b.Span} }

func removeLine(f *File, b *Block, value Span) Edit { return Edit{f, value, ""} }
