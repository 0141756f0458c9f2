// Package drill makes exercises for new staff: a sound recipe of the shop with
// one to three slips planted in it, each of which the checker finds and names,
// and nothing else. It marks what the learner makes of it with the same
// checker, and gives hints.
//
// An exercise is a function of the shop, the rules, the day and a seed: a class
// that shares the seed has the same exercises.
package drill
