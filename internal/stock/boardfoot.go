package stock

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// BoardFeet is a quantity of timber in sixty-fourths of a board foot; a board foot
// is 12 x 12 x 1 inches.
type BoardFeet int64

// BoardFoot is one board foot.
const BoardFoot BoardFeet = 64

// SquareFeet is a surface measure in whole square feet.
type SquareFeet int64

// SourceBoardFoot is the source of [SurfaceMeasure] and [BoardFeetOf].
var SourceBoardFoot = figure.Source{Key: "stock.board-foot", Title: "NHLA rules as given by an American hardwood export council page and an importer's page", Status: figure.Read}

// SurfaceMeasure returns the surface measure of a board in whole square feet by
// the NHLA rules: the width in inches and fractions times the length in whole
// feet, the odd inches cut off, over 12, to the nearest whole number. An exact
// half goes up here; graders let it go up and down by turns.
//
// Errors: "figure.length-range" outside what a board measures.
func SurfaceMeasure(width, length unit.Length) (SquareFeet, error) {
	if err := figure.LengthRange(SourceBoardFoot.Key, "quantity.width", width, 0, 2*unit.Metre); err != nil {
		return 0, err
	}
	if err := figure.LengthRange(SourceBoardFoot.Key, "quantity.length", length, 0, maxBoard); err != nil {
		return 0, err
	}
	feet := length / unit.Foot
	return SquareFeet((2*width*feet + 12*unit.Inch) / (24 * unit.Inch)), nil
}

// BoardFeetOf returns the board feet of a board: its surface measure times its
// nominal thickness in inches; less than an inch counts as one (NHLA rules).
//
// Errors: those of [SurfaceMeasure]; "stock.no-inch-thickness" where the nominal
// thickness is no whole number of sixty-fourths of an inch.
func BoardFeetOf(width, length, nominal unit.Length) (BoardFeet, error) {
	measure, err := SurfaceMeasure(width, length)
	if err != nil {
		return 0, err
	}
	if err := figure.LengthRange(SourceBoardFoot.Key, "quantity.thickness", nominal, 1, unit.Metre); err != nil {
		return 0, err
	}
	nominal = max(nominal, unit.Inch)
	if nominal%unit.SixtyFourth != 0 {
		return 0, figure.Refuse("stock.no-inch-thickness", message.Length("nominal", nominal)).Or("stock.say-quarters")
	}
	return BoardFeet(measure) * BoardFeet(nominal/unit.SixtyFourth), nil
}
