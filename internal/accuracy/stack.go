package accuracy

import (
	"math"

	"scantling/internal/figure"
	"scantling/internal/mechanics"
	"scantling/internal/unit"
)

// Worst returns the sum of the errors: what they come to if all go the same way.
func Worst(each ...unit.Length) unit.Length {
	var sum unit.Length
	for _, e := range each {
		sum += e.Abs()
	}
	return sum
}

// Statistical returns the root of the sum of the squares: what the errors come to
// nearly always, if they are independent. Rounded up.
func Statistical(each ...unit.Length) unit.Length {
	sum := 0.0
	for _, e := range each {
		mm := e.Millimetres()
		sum += float64(mm * mm)
	}
	return unit.Length(math.Ceil(math.Sqrt(sum) * float64(unit.Millimetre)))
}

// SourceGrades is the source of [Grade].
var SourceGrades = figure.Source{Key: "accuracy.grades", Title: "ISO 286-1", Edition: "2010", Clause: "Table 1", Status: figure.Memory}

// Grade returns the standard tolerance IT6 to IT14 for sizes over low and up to
// high: so many times i = 0.45 D^(1/3) + 0.001 D micrometres, D the geometric mean
// in millimetres (ISO 286-1; from memory). The standard's table rounds it. The whole
// width of the tolerance, not half.
//
// Errors: "figure.number-range" for other grades, "figure.length-range" outside 3
// to 500 mm.
func Grade(it int, low, high unit.Length) (unit.Length, error) {
	if err := figure.NumberRange(SourceGrades.Key, "quantity.grade", mechanics.Ratio(it), 6, 14); err != nil {
		return 0, err
	}
	for _, l := range []unit.Length{low, high} {
		if err := figure.LengthRange(SourceGrades.Key, "quantity.size", l, 3*unit.Millimetre, 500*unit.Millimetre); err != nil {
			return 0, err
		}
	}
	d := math.Sqrt(low.Millimetres() * high.Millimetres())
	i := float64(0.45*mechanics.Power(d, 1.0/3)) + float64(0.001*d)
	times := [...]float64{10, 16, 25, 40, 64, 100, 160, 250, 400}[it-6]
	return unit.FromMillimetres(times * i / 1000), nil
}
