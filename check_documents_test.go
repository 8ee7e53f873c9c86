package scantling_test

import (
	"flag"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"scantling/internal/outside"
	"scantling/internal/world"
)

// The small documents of the checks lie in testdata/checks, in a folder of the check's
// name. A document that differs little from another one stands in the folder's
// cases.txt as the lines in which it differs, so that the hair is what is read:
//
//	fails.piece.hcl from passes.piece.hcl
//	  part "side" {
//	-   high = 685
//	+   high = 686
//
// Lines with - go, lines with + come, lines without either are left and say where. Old
// lines are found by their words, however far they are set in, and must stand in one
// place only; what only comes goes to the end. A blank line ends a change. Pieces and
// shops are made alike, from a document of the folder, one made above, or one of
// ../base. To open one, write them out:
//
//	go test -run TestCheckDocuments . -args -write-checks DIR
var writeChecks = flag.String("write-checks", "", "write the documents of the checks to this folder")

// checkFolder returns the documents of a folder of testdata/checks, made and whole.
func checkFolder(t testing.TB, folder string) map[string][]byte {
	t.Helper()
	dir := filepath.Join(outside.Root(), "testdata", "checks")
	entries, err := os.ReadDir(filepath.Join(dir, folder))
	if err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{}
	read := func(name string) []byte {
		data, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(path.Join(folder, name))))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	cases := ""
	for _, e := range entries {
		if e.Name() == "cases.txt" {
			cases = string(read(e.Name()))
			continue
		}
		files[e.Name()] = read(e.Name())
	}
	name, lines := "", []string(nil)
	end := func() {
		if name != "" {
			files[name] = []byte(strings.Join(lines, "\n") + "\n")
		}
	}
	for block := range strings.SplitSeq(cases, "\n\n") {
		block = strings.Trim(block, "\n")
		head, rest, _ := strings.Cut(block, "\n")
		if made, from, ok := strings.Cut(head, " from "); ok && !strings.Contains(made, " ") {
			end()
			name, block = made, rest
			text, known := files[from]
			if !known {
				text = read(from)
			}
			lines = strings.Split(strings.TrimRight(string(text), "\n"), "\n")
		}
		if block != "" && name != "" {
			if lines, err = change(lines, strings.Split(block, "\n")); err != nil {
				t.Fatalf("%s/cases.txt: %s: %v", folder, name, err)
			}
		}
	}
	end()
	return files
}

// change puts one change into a document's lines.
func change(lines, block []string) ([]string, error) {
	words := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	var old, out []string
	comes := true
	for _, l := range block {
		if l[0] != '+' {
			old = append(old, words(strings.TrimPrefix(l, "-")))
			comes = false
		}
	}
	if comes {
		for _, l := range block {
			out = append(out, l[min(2, len(l)):])
		}
		return append(slices.Clone(lines), out...), nil
	}
	at := -1
	for i := range len(lines) - len(old) + 1 {
		if !slices.EqualFunc(lines[i:i+len(old)], old, func(a, b string) bool { return words(a) == b }) {
			continue
		}
		if at >= 0 {
			return nil, fmt.Errorf("%q stands in lines %d and %d", old, at+1, i+1)
		}
		at = i
	}
	if at < 0 {
		return nil, fmt.Errorf("%q stands nowhere", old)
	}
	next := at
	for _, l := range block {
		switch l[0] {
		case '-':
			next++
		case '+':
			out = append(out, l[min(2, len(l)):])
		default:
			out = append(out, lines[next])
			next++
		}
	}
	return slices.Concat(lines[:at], out, lines[next:]), nil
}

// checkWorld holds the documents of a folder of testdata/checks.
func checkWorld(t testing.TB, folder string) *world.Memory {
	t.Helper()
	w, err := world.NewMemory(checkFolder(t, folder), world.Date{Year: 2026, Month: 3, Day: 1}, 0)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestCheckDocuments makes all the checks' documents, and writes them out if asked to.
func TestCheckDocuments(t *testing.T) {
	entries, err := os.ReadDir(filepath.Join(outside.Root(), "testdata", "checks"))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !e.IsDir() {
			continue
		}
		for name, text := range checkFolder(t, e.Name()) {
			if *writeChecks == "" {
				continue
			}
			dir := filepath.Join(*writeChecks, e.Name())
			if err := os.MkdirAll(dir, 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, name), text, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	_, err = change([]string{"a", "b", "  a"}, []string{"- a", "+ c"})
	if err == nil {
		t.Error("a line that stands twice is changed")
	}
	if _, err = change([]string{"a"}, []string{"- b"}); err == nil {
		t.Error("a line that stands nowhere is changed")
	}
	got, err := change([]string{"a", "x  = 1", "a", "y"}, []string{"x = 1", "- a", "+ b"})
	if err != nil || !slices.Equal(got, []string{"a", "x  = 1", "b", "y"}) {
		t.Errorf("%q %v", got, err)
	}
}
