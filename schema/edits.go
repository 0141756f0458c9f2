package schema

// RemoveBlock takes a block and its lines out.
func RemoveBlock(b *Block) Edit { return Edit{File: b.File, Span: b.Span} }
