// Package schema is the house format: the language of candle recipes, from
// bytes to typed blocks and back.
//
// Reading never fails: Read always returns a File, whose values are Absent,
// Broken or Known, and the problems it met on the way. Byte offsets into the
// text as given are the only positions inside; lines, columns and UTF-16
// units are made at the edges, from Text.
//
// Two parsers make one small syntax tree (syntax.go), and everything after that
// is one way. The quick one (parse_plain.go) takes plain texts, which nearly all
// recipes are, or declines; HCL's (parse_hcl.go) takes the rest, and repairs
// come only behind it. The tree is our own, since HCL's nodes for a recipe take
// six times the memory and ten times the time of the whole quick parse, and so
// that HCL's syntax stands in one file.
//
// The language itself is one table (Language): blocks, attributes, types,
// units, choices, references, words of explanation. Reading, validation,
// completion, hovers and FORMAT.md all come from it.
package schema
