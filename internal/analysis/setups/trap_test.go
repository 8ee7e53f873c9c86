package setups

import (
	"slices"
	"testing"

	"scantling/internal/analysis/operations"
	"scantling/internal/diag"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// trapsOf plans the bench and returns how many traps are told, and what the hand gets.
func trapsOf(t *testing.T, b *bench) (traps int, byHand []string) {
	t.Helper()
	derived, _ := operations.Derive(operations.Input{Piece: b.p, Cuts: b.cuts, Rows: b.rows, Workpieces: b.wps, Shop: b.shop, Ledger: b.l})
	res, told := Decide(Input{Piece: b.p, Rows: b.rows, Workpieces: b.wps, Derived: derived, Shop: b.shop, Ledger: b.l})
	for _, d := range told {
		if d.Code == CodeTrapped && d.Severity == diag.Warning {
			traps++
		}
	}
	for _, c := range res.Setups {
		for _, p := range c.Placements {
			for _, a := range p.Cuts {
				if c.Machine == operations.Hand {
					byHand = append(byHand, string(a))
				}
			}
		}
	}
	slices.Sort(byHand)
	return traps, byHand
}

// TestRecessesAlongAnEdge: three recesses for hinges in an edge, each 50 long and 18 of the
// 20 deep, leave the edge between them to bear on the fence: none is a trapped cut. Where
// a rebate of that depth runs through, 2 mm are left to bear, and what can only be reached
// from that edge is given to the hand. Common practice, no source.
func TestRecessesAlongAnEdge(t *testing.T) {
	b := newBench()
	side := b.part("A1", unit.MM(1500), unit.MM(536), unit.MM(20))
	for _, from := range []int64{75, 725, 1375} {
		c := b.slot(side, piece.Recess, piece.EdgeHigh, piece.AlongLength, 0, unit.MM(18), 2750*um, 0)
		c.Slot.From, c.Slot.To, c.Slot.StartOpen, c.Slot.EndOpen = b.fig(unit.MM(from)), b.fig(unit.MM(from+50)), false, false
	}
	if traps, byHand := trapsOf(t, b); traps > 0 || len(byHand) > 0 {
		t.Errorf("%d × %s, by hand %v", traps, CodeTrapped, byHand)
	}
	b = newBench()
	side = b.part("A1", unit.MM(1500), unit.MM(536), unit.MM(20))
	b.slot(side, piece.Rebate, piece.EdgeHigh, piece.AlongLength, 0, unit.MM(18), 2750*um, 0)
	c := b.slot(side, piece.Groove, piece.FaceLow, piece.AlongLength, unit.MM(515), 527700*um, unit.MM(6), 0)
	c.Slot.From, c.Slot.To, c.Slot.StartOpen, c.Slot.EndOpen = b.fig(unit.MM(75)), b.fig(unit.MM(400)), false, false
	if traps, byHand := trapsOf(t, b); traps != 1 || len(byHand) != 1 {
		t.Errorf("beside a rebate that runs through: %d traps, by hand %v", traps, byHand)
	}
}

// TestStretches: a void further along is not beside a cut; one that runs through is beside
// all, and alone takes the bearing away.
func TestStretches(t *testing.T) {
	all := []gone{{void{0, 3, 18}, 75, 125}, {void{0, 3, 5}, 0, 1500}}
	if got := beside(all, 125, 400); len(got) != 1 || got[0].depth != 5 {
		t.Errorf("beside %v", got)
	}
	if got := beside(all, 100, 400); len(got) != 2 {
		t.Errorf("beside %v", got)
	}
	if got := through(all, 1500); len(got) != 1 || got[0].depth != 5 {
		t.Errorf("through %v", got)
	}
}
