package scantling_test

import (
	"crypto/sha256"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

var hashesTo = flag.String("hashes", "", "write the SHA-256 of every output of the demonstration piece to this file")

// TestSameDocumentsSameBytes writes everything twice in one process and compares
// the hashes; with -hashes it leaves them in a file, so that runs on other
// platforms and with other numbers of workers can be compared
// (tools/hashes.sh).
func TestSameDocumentsSameBytes(t *testing.T) {
	first := hashes(t)
	if second := hashes(t); first != second {
		t.Errorf("two runs differ:\n%s\n%s", first, second)
	}
	if *hashesTo != "" {
		if err := os.WriteFile(*hashesTo, []byte(first), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func hashes(t *testing.T) string {
	t.Helper()
	files, err := planDemo(t, nil).Files()
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	for _, f := range files {
		fmt.Fprintf(&out, "%x  %s\n", sha256.Sum256(f.Data), f.Name)
	}
	return out.String()
}
