package sundries

import (
	"strings"

	"scantling/internal/figure"
	"scantling/internal/message"
)

// name is what a thing of a catalogue is called, and what else it is.
type name struct {
	Name string
	// Also lists other names for it.
	Also []string
}

// is reports whether a name means it, whatever its case.
func (n name) is(asked string) bool {
	asked = strings.TrimSpace(asked)
	if strings.EqualFold(n.Name, asked) {
		return true
	}
	for _, a := range n.Also {
		if strings.EqualFold(a, asked) {
			return true
		}
	}
	return false
}

// find returns the thing that a name means.
func find[T any](all []T, asked string, of func(T) name) (T, bool) {
	for _, x := range all {
		if of(x).is(asked) {
			return x, true
		}
	}
	var none T
	return none, false
}

// unknown refuses a name that means nothing, with what there is.
func unknown[T any](key string, all []T, asked string, of func(T) name) error {
	known := make([]message.Arg, len(all))
	for i, x := range all {
		known[i] = message.Text("", of(x).Name)
	}
	if len(asked) > 80 {
		asked = strings.ToValidUTF8(asked[:80], "")
	}
	return figure.Refuse(key, message.Text("name", asked), message.List("known", known...)).Or("sundries.state-it")
}

// readRows reads a table of one figure to a row: what it is of, which figure, the
// value with its range, source and status. New is called for each new thing.
func readRows(file, text, of string, start func(row *figure.Row, n name), put func(which string, f figure.Of[float64])) {
	last := ""
	for _, row := range figure.MustTable(file, text).Rows() {
		n := name{Name: row.Text(of)}
		if also := row.Text("also"); also != "" {
			n.Also = strings.Split(also, ";")
		}
		if n.Name != last {
			start(row, n)
			last = n.Name
		}
		which := row.Text("figure")
		value, _ := row.Number("value")
		low, _ := row.Number("low")
		high, _ := row.Number("high")
		source := figure.Source{Key: "sundries." + of + "." + which, Title: row.Text("source"), Clause: n.Name, Status: row.Status("status")}
		put(which, figure.Between(value, low, high, source))
		if err := row.Err(); err != nil {
			panic("sundries: " + err.Error())
		}
	}
}

// as gives a figure the type of its quantity.
func as[T ~float64](f figure.Of[float64]) figure.Of[T] {
	return figure.Between(T(f.Value), T(f.Low), T(f.High), f.Source)
}

// filled returns a figure, or the usual one where it is not known.
func filled[T any](f, usual figure.Of[T]) figure.Of[T] {
	if f.Known() {
		return f
	}
	return usual
}
