// Package schema is the house format: the language of candle recipes, from
// bytes to typed blocks and back.
//
// Reading never fails: Read always returns a File, whose values are Absent,
// Broken or Known, and the problems it met on the way. Byte offsets into the
// text as given are the only positions inside; lines, columns and UTF-16
// units are made at the edges, from Text.
//
// The language itself is one table (Language): blocks, attributes, types,
// units, choices, references, words of explanation. Reading, validation,
// completion, hovers and FORMAT.md all come from it.
package schema
