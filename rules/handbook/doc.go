// Package handbook makes the pages of a shop's handbook: every rule in force,
// built-in and of the shop's own, with examples and what the checker really
// says of them; the figures on the shelves; the trials; the words of the trade;
// the format. The pages need no server and nothing from elsewhere.
//
// The same shop, rules and day always give the same bytes.
package handbook
