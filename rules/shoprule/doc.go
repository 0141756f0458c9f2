// Package shoprule reads the rules a shop writes for itself and makes checks
// of them. A rule's expressions are parsed as HCL and compiled to exact
// quantities with dimensions: what is written wrongly is told where it is
// read, and never answers a silent "false" later. What a rule may ask for
// stands in NAMES.md, which is made from the table here.
//
// A rule is compiled once for its text, and evaluated on need: once for each
// combination of the blocks it names.
package shoprule

//go:generate go run ./names
