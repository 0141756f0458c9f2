// Command rulebook writes rules/RULEBOOK.md from the rules. Run by
// `go generate ./rules`, in that folder.
package main

import (
	"log"
	"os"

	"wickrule/rules"
)

func main() {
	if err := os.WriteFile("RULEBOOK.md", []byte(rules.Rulebook(rules.All())), 0o644); err != nil {
		log.Fatal(err)
	}
}
