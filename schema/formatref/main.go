// Command formatref writes FORMAT.md from the language table.
package main

import (
	"fmt"
	"os"

	"wickrule/schema"
)

func main() {
	if err := os.WriteFile("FORMAT.md", []byte(schema.Reference()), 0o644); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
