package stock

import (
	_ "embed" // the table
	"slices"
	"sync"

	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// System is a system of merchants' sizes.
type System string

// The systems of the table.
const (
	PS20      System = "ps20"       // American softwood, dressed dry (PS 20)
	NHLA      System = "nhla-s2s"   // American hardwood, surfaced two sides, at grading
	EN1313_1  System = "en1313-1"   // European softwood, sawn, at 20 %
	EN1313_2  System = "en1313-2"   // European hardwood, sawn, at 20 %
	AUDressed System = "au-dressed" // Australian dressed sizes
)

// Dimension tells thicknesses from widths in a system.
type Dimension string

// The dimensions of the table.
const (
	Thickness Dimension = "thickness"
	Width     Dimension = "width"
)

// Dressed is one merchant's size.
type Dressed struct {
	System    System
	Dimension Dimension
	// Name is how it is written ("5/4", "27"), Nominal the length that names.
	Name    string
	Nominal unit.Length
	// Actual is what the standard says it measures; a merchant may differ.
	Actual figure.Of[unit.Length]
}

//go:embed data/lumber_sizes.csv
var lumberCSV string

var lumberOnce = sync.OnceValue(func() []Dressed {
	var out []Dressed
	for _, row := range figure.MustTable("lumber_sizes.csv", lumberCSV).Rows() {
		d := Dressed{System: System(row.Text("system")), Dimension: Dimension(row.Text("dimension")), Name: row.Text("nominal")}
		actual, inches := row.Inches("actual_in")
		if inches {
			d.Nominal, _ = row.Inches("nominal")
		} else {
			d.Nominal, _ = row.Millimetres("nominal")
			actual, _ = row.Millimetres("actual_mm")
		}
		d.Actual = figure.Exactly(actual, figure.Source{Key: "stock.size." + string(d.System), Title: row.Text("source"), Status: row.Status("status")})
		if err := row.Err(); err != nil {
			panic("stock: " + err.Error())
		}
		out = append(out, d)
	}
	return out
})

// Sizes returns the sizes of a system in the table's order.
func Sizes(system System, dimension Dimension) []Dressed {
	var out []Dressed
	for _, d := range lumberOnce() {
		if d.System == system && d.Dimension == dimension {
			out = append(out, d)
		}
	}
	return out
}

// ActualOf returns what a nominal size measures in a system (PS 20 dressed dry, NHLA
// S2S, EN 1313 sawn): a 2 x 6 of PS 20 is 38.1 by 139.7.
//
// Errors: "stock.no-such-size" with the nearest size of the system below and
// above.
func ActualOf(system System, dimension Dimension, nominal unit.Length) (figure.Of[unit.Length], error) {
	var below, above unit.Length
	for _, d := range Sizes(system, dimension) {
		switch {
		case d.Nominal == nominal:
			return d.Actual, nil
		case d.Nominal < nominal:
			below = max(below, d.Nominal)
		case above == 0 || d.Nominal < above:
			above = d.Nominal
		}
	}
	return figure.Of[unit.Length]{}, figure.Refuse("stock.no-such-size", message.Word("system", string(system)), message.Length("nominal", nominal),
		message.Length("below", below), message.Length("above", above)).Or("stock.measure-the-board")
}

// ToBuy returns the least size of a system that measures at least what is needed.
//
// Errors: "stock.no-such-size" where the system ends below it.
func ToBuy(system System, dimension Dimension, need unit.Length) (Dressed, error) {
	sizes := slices.DeleteFunc(Sizes(system, dimension), func(d Dressed) bool { return d.Actual.Value < need })
	if len(sizes) == 0 {
		return Dressed{}, figure.Refuse("stock.no-such-size", message.Word("system", string(system)), message.Length("nominal", need),
			message.Length("below", 0), message.Length("above", 0)).Or("stock.glue-up")
	}
	return slices.MinFunc(sizes, func(a, b Dressed) int { return int(a.Actual.Value - b.Actual.Value) }), nil
}

// PlanedAllRound returns what a European sawn size measures when the merchant has
// planed it all round: 4 less (50 x 100 gives 46 x 96; others say 3), 5 less above
// 150. Common practice, no source. Errors: "figure.length-range" outside 10 mm to
// 1 m.
func PlanedAllRound(sawn unit.Length) (figure.Of[unit.Length], error) {
	source := figure.PracticeSource("stock.planed-all-round")
	if err := figure.LengthRange(source.Key, "quantity.sawn", sawn, unit.MM(10), unit.Metre); err != nil {
		return figure.Of[unit.Length]{}, err
	}
	if sawn > unit.MM(150) {
		return figure.Between(sawn-unit.MM(5), sawn-unit.MM(6), sawn-unit.MM(4), source), nil
	}
	return figure.Between(sawn-unit.MM(4), sawn-unit.MM(5), sawn-unit.MM(3), source), nil
}
