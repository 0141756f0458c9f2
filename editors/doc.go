// Package editors holds a set-up for each editor, to be copied, and the tests
// that run the language server in those editors. There is no code in it but the
// tests.
package editors
