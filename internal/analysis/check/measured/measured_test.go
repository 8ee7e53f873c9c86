package measured_test

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/check/measured"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/plan"
)

func TestMeasured(t *testing.T) {
	without := func(what string) func(*piece.Piece) {
		return func(p *piece.Piece) {
			p.Measures[0].Take = slices.DeleteFunc(p.Measures[0].Take, func(s string) bool { return s == what })
		}
	}
	for _, c := range []struct {
		name   string
		change func(*piece.Piece)
		status plan.Status
		codes  []diag.Code
	}{
		{"the chest's own", func(*piece.Piece) {}, plan.Pass, []diag.Code{measured.CodeMeasured}},
		{"by the family's name", func(p *piece.Piece) {
			p.Measures[0].Of, p.Measures[0].Before = []address.Address{"case.opening"}, []address.Address{"drawer"}
		}, plan.Pass, []diag.Code{measured.CodeMeasured}},
		{"not behind", without("width back"), plan.Fail, []diag.Code{measured.CodeOneEnd}},
		{"not at the right", without("height right"), plan.Fail, []diag.Code{measured.CodeOneEnd}},
		{"no diagonals", without("diagonals"), plan.Fail, []diag.Code{measured.CodeDiagonals}},
		{"too late", func(p *piece.Piece) { p.Measures[0].Before = p.Measures[0].Before[:1] }, plan.Fail, []diag.Code{measured.CodeTooLate}},
		{"one opening forgotten", func(p *piece.Piece) { p.Measures[0].Of = p.Measures[0].Of[:1] }, plan.Unknown, []diag.Code{measured.CodeNoMeasure}},
		{"nothing measured", func(p *piece.Piece) { p.Measures = nil }, plan.Unknown, []diag.Code{measured.CodeNoMeasure, measured.CodeNoMeasure}},
	} {
		b := checktest.Chest()
		c.change(&b.Piece)
		t.Log(c.name)
		got := checktest.Run(t, b, checktest.Shop(), measured.Analysis)
		// Both openings are of one measure block: one finding.
		checktest.Want(t, got, c.status, c.codes...)
	}
}

func TestNothingMoves(t *testing.T) {
	b := checktest.Chest()
	b.Piece.Fits = nil
	checktest.Want(t, checktest.Run(t, b, checktest.Shop(), measured.Analysis), plan.Pass, measured.CodeMeasured)
}
