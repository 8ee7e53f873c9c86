package problems

import (
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// Case is a problem with its proven optimum.
type Case struct {
	problem.Problem
	// Optimum is the least cost, or under MostValue the greatest value.
	Optimum problem.Cost
	// Reference says where the optimum comes from.
	Reference string
}

func board(mm int64, cost problem.Cost, limit int) problem.Stock {
	return problem.Stock{Size: problem.Size{Length: unit.MM(mm)}, Cost: cost, Limit: limit}
}

func sheet(l, w int64, cost problem.Cost) problem.Stock {
	return problem.Stock{Size: problem.Size{Length: unit.MM(l), Width: unit.MM(w)}, Cost: cost}
}

func part(l, w int64, n int) problem.Part {
	return problem.Part{Size: problem.Size{Length: unit.MM(l), Width: unit.MM(w)}, Quantity: n}
}

// Known returns small problems that every solver must get right.
func Known() []Case {
	return append(knownBoards(), knownSheets()...)
}

func knownBoards() []Case {
	return []Case{
		{problem.Problem{
			Name:  "eighths of a board in inches",
			Stock: []problem.Stock{{Size: problem.Size{Length: 96*unit.Inch - unit.Inch/8}, Cost: 7}},
			Parts: []problem.Part{{Size: problem.Size{Length: 12*unit.Inch - unit.Inch/8}, Quantity: 8}},
			Kerf:  unit.Inch / 8,
		}, 7, "8 (12 - 1/8) + 7/8 = 96 - 1/8"},
		{problem.Problem{
			Name:  "one nanometre too long",
			Stock: []problem.Stock{{Size: problem.Size{Length: 96*unit.Inch - unit.Inch/8}, Cost: 7}},
			Parts: []problem.Part{{Size: problem.Size{Length: 12*unit.Inch - unit.Inch/8 + 1}, Quantity: 8}},
			Kerf:  unit.Inch / 8,
		}, 14, "seven in the first board, one in the second"},
		{problem.Problem{
			Name:  "relaxation too low by one",
			Stock: []problem.Stock{board(132, 1, 0)},
			Parts: []problem.Part{part(44, 0, 2), part(33, 0, 3), part(12, 0, 6)},
		}, 3, "smallest known instance without the round-up property (J. Rietz, G. Scheithauer, Optimization 51, 2002; quoted from memory, confirmed by exhaustion in the tests): relaxation 259/132 < 2"},
		{problem.Problem{
			Name:  "offcut first",
			Stock: []problem.Stock{board(2400, 1000, 0), board(900, 1, 1)},
			Parts: []problem.Part{part(1200, 0, 2), part(880, 0, 1)},
			Kerf:  0,
		}, 1001, "the board holds the two long parts exactly, the offcut the short one"},
		{problem.Problem{
			Name: "a knot in the board",
			Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(2000)}, Cost: 1,
				Defects: []problem.Box{{Point: problem.Point{Along: unit.MM(990)}, Size: problem.Size{Length: unit.MM(20)}}}}},
			Parts: []problem.Part{part(990, 0, 2), part(500, 0, 1)},
			Kerf:  unit.MM(3),
		}, 2, "either side of the knot takes one long part and nothing else"},
		{problem.Problem{
			Name:      "kept together",
			Stock:     []problem.Stock{board(1000, 1, 0)},
			Parts:     []problem.Part{part(300, 0, 2), part(400, 0, 1), part(590, 0, 1)},
			Kerf:      unit.MM(10),
			Sequences: []problem.Sequence{{Parts: []int{0, 0}, Direction: problem.Crosscut}},
		}, 2, "the row of 610 leaves 380: neither 400 nor 590 fits beside it, but these two fill the second board; apart they would need two as well"},
		{problem.Problem{
			Name:      "kept together at a price",
			Stock:     []problem.Stock{board(1000, 1, 0)},
			Parts:     []problem.Part{part(400, 0, 2), part(600, 0, 2)},
			Sequences: []problem.Sequence{{Parts: []int{0, 0}, Direction: problem.Crosscut}},
		}, 3, "apart 400 + 600 fills two boards; the row of 800 takes one, the two of 600 one each"},
	}
}

func knownSheets() []Case {
	quarter := problem.Problem{
		Name: "quarters of a sheet", Form: problem.Sheets,
		Stock: []problem.Stock{sheet(1003, 503, 5)},
		Parts: []problem.Part{part(500, 250, 4)},
		Kerf:  unit.MM(3),
	}
	pinwheel := problem.Problem{
		Name: "pinwheel", Form: problem.Sheets,
		Stock: []problem.Stock{sheet(3, 3, 1)},
		Parts: []problem.Part{part(2, 1, 2), part(1, 2, 2), part(1, 1, 1)},
	}
	return []Case{
		{quarter, 5, "500 + 3 + 500 by 250 + 3 + 250"},
		{pinwheel, 2, "the five parts cover the sheet, but only as a pinwheel, which no guillotine cut enters"},
	}
}
