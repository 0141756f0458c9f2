// Package lint is the engine: a shop of files becomes an immutable snapshot,
// rules look at it, and what they find becomes one sorted report.
//
// Rules are values in a slice that the caller hands in; the engine knows none
// of them. A rule sees its Pass and nothing else. How loud a rule speaks is
// decided in one place (loudness.go). Nothing here opens a file, reads the
// clock or knows a figure of the trade.
package lint
