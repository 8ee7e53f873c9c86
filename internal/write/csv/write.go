package csv

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"
)

// Table is a header and rows with as many cells as it.
type Table struct {
	Header []string
	Rows   [][]string
}

// Options change how the table is written.
type Options struct {
	// Mark starts the file with a byte order mark, without which some
	// spreadsheets do not take it for UTF-8.
	Mark bool
}

// Write writes the table. It fails if a row has another number of cells than the
// header, saying which, before anything is written; or if w fails.
func Write(w io.Writer, t Table, o Options) error {
	for i, r := range t.Rows {
		if len(r) != len(t.Header) {
			return fmt.Errorf("csv: row %d has %d cells, the header %d", i+1, len(r), len(t.Header))
		}
	}
	if o.Mark {
		if _, err := io.WriteString(w, "\uFEFF"); err != nil {
			return err
		}
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	line := make([]string, len(t.Header))
	put := func(cells []string) {
		for i, c := range cells {
			line[i] = harmless(strings.ToValidUTF8(c, "\uFFFD"))
		}
		out.Write(line) // its error is kept and returned by Error
	}
	put(t.Header)
	for _, r := range t.Rows {
		put(r)
	}
	out.Flush()
	return out.Error()
}

// harmless returns the cell so that no spreadsheet takes it for a formula.
func harmless(cell string) string {
	if cell == "" || plainNumber(cell) {
		return cell
	}
	first := []rune(cell)[0]
	if strings.ContainsRune("=+-@\t\r\n＝＋－＠", first) {
		return "'" + cell
	}
	return cell
}

// plainNumber reports whether the cell is digits with at most a sign before and
// one point or comma inside.
func plainNumber(cell string) bool {
	digits := strings.TrimLeft(cell, "+-")
	if len(cell)-len(digits) > 1 {
		return false
	}
	points := 0
	for i, r := range digits {
		switch {
		case r >= '0' && r <= '9':
		case (r == '.' || r == ',') && i > 0 && i < len(digits)-1:
			points++
		default:
			return false
		}
	}
	return digits != "" && points <= 1
}
