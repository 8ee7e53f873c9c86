package exploded

import (
	"math"
	"testing"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
)

// TestExploded: a drawer's sides between a front and a back that go off first and
// a bottom that goes off last: what is removed later stands less far out, nothing
// moves but along its own way, and the boxes of all are clear of each other.
func TestExploded(t *testing.T) {
	b := trial.New()
	b.Part("left", trial.LeftSide, 0, 100, 0, 1000, 0, 500)
	b.Part("right", trial.RightSide, 900, 1000, 0, 1000, 0, 500)
	b.Part("bottom", trial.GrainRight, 60, 940, 0, 1000, 50, 100)
	p := &plan.Plan{Piece: &b.Piece, Ledger: ledger.New(nil)}
	if _, ok := Of(p, "", 0.1); ok {
		t.Error("no removals, and yet taken apart")
	}
	p.Removals = []plan.Removal{
		{Taken: []address.Address{"right"}, Way: piece.ToRight, Along: [3]float64{1, 0, 0}},
		{Taken: []address.Address{"bottom"}, Way: piece.ToRight, Along: [3]float64{1, 0, 0}},
	}
	at, ok := Of(p, "", 0.1)
	// The bottom has 4 mm in the left side, the gap is 10 mm: 14; the right side
	// has 4 mm of the bottom besides: 28.
	if !ok || at["left"].X != 0 || off(at["bottom"].X, 14) || off(at["right"].X, 28) {
		t.Errorf("%v %v", at, ok)
	}
	for a, v := range at {
		if v.Y != 0 || v.Z != 0 {
			t.Errorf("%s moves by %v", a, v)
		}
	}
}

func off(x, want float64) bool { return math.Abs(x-want) > 1e-6 }
