// Command jointdoc writes docs/JOINTS.md and its pictures from the documents in
// docs/joints.
package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"scantling/tools/jointdoc/pictures"
)

func main() {
	files, err := pictures.Make(context.Background(), ".")
	for name, data := range files {
		if err == nil {
			err = os.WriteFile(filepath.FromSlash(name), data, 0o644)
		}
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "jointdoc:", err)
		os.Exit(1)
	}
}
