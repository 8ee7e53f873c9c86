// Command plandoc writes docs/PLAN.md: the stored plan, type by type and key by
// key, from the comments of its Go types.
package main

import (
	"fmt"
	"os"

	"scantling/tools/plandoc/reference"
)

func main() {
	text, err := reference.Plan(".")
	if err == nil {
		err = os.WriteFile("docs/PLAN.md", text, 0o644)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "plandoc:", err)
		os.Exit(1)
	}
}
