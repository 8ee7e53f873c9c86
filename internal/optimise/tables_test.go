package optimise_test

import (
	"os"
	"slices"
	"strings"
	"testing"
)

const publishedHead = "| set | cut how | instances | at best-known | proved | mean gap to our bound | worst above best-known | median s | worst s | most work | date | machine |\n" +
	"| --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- | --- |\n"

// writeTables puts rows into the tables of a Markdown file that have the given
// head, each in place of the row with the same name (up to the first figures). A
// file has one such table for boards and one for sheets, or one for both; a row
// goes into the last one that already names its set, or the first.
func writeTables(t *testing.T, rows []string, head string) {
	t.Helper()
	text, err := os.ReadFile(*publishedOut)
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.Split(string(text), head)
	if len(parts) == 1 {
		t.Fatalf("%s has no table with the head\n%s", *publishedOut, head)
	}
	for _, row := range rows {
		at := 1
		for i, p := range parts[1:] {
			if strings.HasPrefix(p, "| "+row[2:4]) { // 1d or 2d
				at = i + 1
			}
		}
		parts[at] = putRow(parts[at], row)
	}
	if err := os.WriteFile(*publishedOut, []byte(strings.Join(parts, head)), 0o644); err != nil {
		t.Fatal(err)
	}
}

// putRow puts a row into the table that text begins with, in order of names.
func putRow(text, row string) string {
	lines := strings.Split(text, "\n")
	end := slices.IndexFunc(lines, func(l string) bool { return !strings.HasPrefix(l, "|") })
	table, after := slices.Clone(lines[:end]), lines[end:]
	table = slices.DeleteFunc(table, func(l string) bool { return rowName(l) == rowName(row) })
	table = append(table, row)
	slices.Sort(table)
	return strings.Join(append(table, after...), "\n")
}

// rowName is a row's first cells, up to the first that is a figure.
func rowName(row string) string {
	var name []string
	for cell := range strings.SplitSeq(strings.Trim(row, "| "), "|") {
		cell = strings.TrimSpace(cell)
		if cell != "" && strings.Trim(cell, "0123456789") == "" {
			break
		}
		name = append(name, cell)
	}
	return strings.Join(name, "|")
}

// TestTables checks that a row is put in place of the old one of the same name
// and leaves the rest of the file alone.
func TestTables(t *testing.T) {
	old := "| 1d-a | whole | 4 | 1 |\n| 1d-b | whole | 5 | 2 |\n\nAfter.\n\nMore.\n"
	if got, want := putRow(old, "| 1d-b | whole | 6 | 3 |"), "| 1d-a | whole | 4 | 1 |\n| 1d-b | whole | 6 | 3 |\n\nAfter.\n\nMore.\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := putRow("\n## Next\n\nMore.\n", "| 1d-b | 6 |"), "| 1d-b | 6 |\n\n## Next\n\nMore.\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
