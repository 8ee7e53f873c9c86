package figure

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"iter"
	"math/big"
	"strconv"
	"strings"

	"scantling/internal/unit"
)

// Table is a CSV file with a heading.
type Table struct {
	Name string
	head map[string]int
	rows [][]string
}

// Bounds of a table: more is refused.
const (
	MaxTableBytes = 1 << 20
	maxCell       = 2000
)

// ReadTable reads a CSV file with a heading line. Every row must have as many
// cells as the heading; a column name may stand once only.
func ReadTable(name, text string) (Table, error) {
	if len(text) > MaxTableBytes {
		return Table{}, fmt.Errorf("%s: %d bytes, at most %d are read", name, len(text), MaxTableBytes)
	}
	r := csv.NewReader(strings.NewReader(text))
	head, err := r.Read()
	if err != nil {
		return Table{}, fmt.Errorf("%s: heading: %w", name, err)
	}
	t := Table{Name: name, head: make(map[string]int, len(head))}
	for i, column := range head {
		if _, twice := t.head[column]; twice {
			return Table{}, fmt.Errorf("%s: column %q stands twice", name, column)
		}
		t.head[column] = i
	}
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return t, nil
		}
		if err != nil {
			return Table{}, fmt.Errorf("%s: %w", name, err)
		}
		for _, cell := range row {
			if len(cell) > maxCell {
				return Table{}, fmt.Errorf("%s: a cell of %d bytes, at most %d are read", name, len(cell), maxCell)
			}
		}
		t.rows = append(t.rows, row)
	}
}

// MustTable reads an embedded table. It panics on a fault, which is then ours.
func MustTable(name, text string) Table {
	t, err := ReadTable(name, text)
	if err != nil {
		panic("figure: " + err.Error())
	}
	return t
}

// Len returns the number of rows below the heading.
func (t Table) Len() int { return len(t.rows) }

// Has reports whether the table has the column.
func (t Table) Has(column string) bool {
	_, ok := t.head[column]
	return ok
}

// Rows walks the rows in file order, counted from 1 below the heading.
func (t Table) Rows() iter.Seq2[int, *Row] {
	return func(yield func(int, *Row) bool) {
		for i := range t.rows {
			if !yield(i+1, &Row{table: t, number: i + 1, cells: t.rows[i]}) {
				return
			}
		}
	}
}

// Row is one row of a table. The first cell that cannot be read as asked stays
// in Err; later readings of the row go on.
type Row struct {
	table  Table
	number int
	cells  []string
	err    error
}

// Err returns the first fault found in the row, with table, row and column.
func (r *Row) Err() error { return r.err }

func (r *Row) fault(column, format string, args ...any) {
	if r.err == nil {
		r.err = fmt.Errorf("%s row %d column %s: %s", r.table.Name, r.number, column, fmt.Sprintf(format, args...))
	}
}

// Text returns the cell without outer blanks.
func (r *Row) Text(column string) string {
	i, ok := r.table.head[column]
	if !ok {
		r.fault(column, "no such column")
		return ""
	}
	return strings.TrimSpace(r.cells[i])
}

// Number returns the cell as a number; ok is false where the cell is empty.
func (r *Row) Number(column string) (x float64, ok bool) {
	text := r.Text(column)
	if text == "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || x-x != 0 { // x-x is not zero for infinities and NaN
		r.fault(column, "%q is no number", text)
		return 0, false
	}
	return x, true
}

// Count returns the cell as a whole number; ok is false where the cell is empty.
func (r *Row) Count(column string) (n int, ok bool) {
	text := r.Text(column)
	if text == "" {
		return 0, false
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		r.fault(column, "%q is no whole number", text)
		return 0, false
	}
	return n, true
}

// Millimetres returns a cell in decimal millimetres as a length, exact to the
// nanometre; ok is false where the cell is empty.
func (r *Row) Millimetres(column string) (l unit.Length, ok bool) {
	return r.length(column, unit.Millimetre)
}

// Inches returns a cell in inches, decimal ("1.5") or as the trade writes it
// ("1-1/16", "5/4"), as a length; ok is false where the cell is empty.
func (r *Row) Inches(column string) (l unit.Length, ok bool) {
	return r.length(column, unit.Inch)
}

func (r *Row) length(column string, per unit.Length) (unit.Length, bool) {
	text := r.Text(column)
	if text == "" {
		return 0, false
	}
	l, err := scaled(text, per)
	if err != nil {
		r.fault(column, "%v", err)
		return 0, false
	}
	return l, true
}

// scaled reads "19.05", "5/4" or "1-1/16" and multiplies it by per, to the
// nearest nanometre.
func scaled(text string, per unit.Length) (unit.Length, error) {
	whole, part, mixed := strings.Cut(text, "-")
	if !mixed {
		whole, part = "0", text
	}
	var sum big.Rat
	for _, piece := range [...]string{whole, part} {
		if len(piece) > 20 || strings.ContainsAny(piece, "eExXpP_+") {
			return 0, fmt.Errorf("%q is no length", text)
		}
		x, ok := new(big.Rat).SetString(piece)
		if !ok || x.Sign() < 0 {
			return 0, fmt.Errorf("%q is no length", text)
		}
		sum.Add(&sum, x)
	}
	sum.Mul(&sum, new(big.Rat).SetInt64(int64(per)))
	sum.Add(&sum, big.NewRat(1, 2))
	n := new(big.Int).Quo(sum.Num(), sum.Denom())
	if !n.IsInt64() || unit.Length(n.Int64()) > unit.MaxLength {
		return 0, fmt.Errorf("%q is longer than %g mm", text, unit.MaxLength.Millimetres())
	}
	return unit.Length(n.Int64()), nil
}

// Status returns the cell as a status.
func (r *Row) Status(column string) Status {
	text := r.Text(column)
	s, ok := ParseStatus(text)
	if !ok {
		r.fault(column, "%q is no status", text)
	}
	return s
}
