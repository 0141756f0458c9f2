// Command names writes rules/shoprule/NAMES.md from the table of names. Run by
// `go generate ./rules/...`, in rules/shoprule.
package main

import (
	"log"
	"os"

	"wickrule/rules/shoprule"
)

func main() {
	if err := os.WriteFile("NAMES.md", []byte(shoprule.Reference()), 0o644); err != nil {
		log.Fatal(err)
	}
}
