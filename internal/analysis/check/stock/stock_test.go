package stock_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/stock"
	"scantling/internal/diag"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	timberyard "scantling/internal/stock"
)

// Two boards of 1800 want two of 2400: one of them a hair longer, and of the rack
// only one.
func TestStock(t *testing.T) {
	for _, c := range []struct {
		name   string
		have   int
		price  timberyard.Money
		stock  string
		status plan.Status
		code   diag.Code
	}{
		{"all in the rack", 2, 0, "cherry 27", plan.Pass, stock.CodeThere},
		{"one to buy, priced", 1, 3800, "cherry 27", plan.Pass, stock.CodeThere},
		{"one to buy, without a price", 1, 0, "cherry 27", plan.Unknown, stock.CodeNoPrice},
		{"nothing answers", 2, 0, "", plan.Fail, stock.CodeNothing},
	} {
		b := trial.New()
		b.Part("one", trial.GrainRight, 0, 18000, 0, 1400, 0, 140)
		b.Part("two", trial.GrainRight, 0, 18000, 0, 1400, 200, 340)
		checktest.Materials(b)
		b.Piece.Materials[0].Stock = c.stock
		s := checktest.Shop()
		s.Boards[0].Have, s.Boards[0].Stock.Price = c.have, timberyard.Price{Amount: c.price, Per: timberyard.PerPiece}
		t.Log(c.name)
		checktest.Want(t, checktest.Run(t, b, s, stock.Analysis), c.status, c.code)
	}
}

// Pins and buttons that must be bought want a price as well.
func TestFittings(t *testing.T) {
	b := checktest.Chest()
	s := checktest.Shop()
	s.Fittings = []shop.Fitting{{ID: "panel pin 20", Have: 500}, {ID: "turn button", Have: 1}}
	b.Piece.Parts, b.Piece.Materials = nil, nil
	b.Piece.Joints, b.Piece.Cuts = nil, nil
	checktest.Want(t, checktest.Run(t, b, s, stock.Analysis), plan.Unknown, stock.CodeNoPrice)
	s.Fittings[1].Have = 2
	checktest.Want(t, checktest.Run(t, b, s, stock.Analysis), plan.Pass, stock.CodeThere)
}
