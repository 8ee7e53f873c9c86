package pictures_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/tools/jointdoc/pictures"
)

// TestCurrent makes the manual of joints and its pictures anew: what is committed
// must be the same, and there must be a picture for every kind of joint and cut
// that the language's manual lists.
func TestCurrent(t *testing.T) {
	root := filepath.Join("..", "..", "..")
	files, err := pictures.Make(t.Context(), root)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range files {
		got, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(name)))
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not current: make docs", name)
		}
	}
	language, err := os.ReadFile(filepath.Join(root, "docs", "LANGUAGE.md"))
	if err != nil {
		t.Fatal(err)
	}
	manual := string(files["docs/JOINTS.md"])
	kinds := 0
	for _, heading := range []string{"\n## Joints\n", "\n### Cuts\n"} {
		_, section, ok := strings.Cut(string(language), heading)
		if !ok {
			t.Fatalf("no section %q", heading)
		}
		_, table, _ := strings.Cut(section, "| --- |")
		table, _, _ = strings.Cut(table, "\n\n")
		for line := range strings.Lines(table) {
			cells := strings.Split(line, "|")
			if len(cells) < 3 {
				continue
			}
			for i, kind := range strings.Split(cells[1], "`") {
				if i%2 == 0 || kind == "eased" {
					continue
				}
				kinds++
				if !strings.Contains(strings.ReplaceAll(manual, " ", ""), `kind="`+strings.ReplaceAll(kind, " ", "")+`"`) {
					t.Errorf("no picture of a %s", kind)
				}
			}
		}
	}
	if kinds < 25 {
		t.Errorf("only %d kinds found", kinds)
	}
}
