// Command findingsdoc writes docs/FINDINGS.md: every code that the analyses tell, from
// the comments of its constant.
package main

import (
	"fmt"
	"os"

	"scantling/tools/findingsdoc/reference"
)

func main() {
	text, err := reference.Page(".")
	if err == nil {
		err = os.WriteFile("docs/FINDINGS.md", text, 0o644)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "findingsdoc:", err)
		os.Exit(1)
	}
}
