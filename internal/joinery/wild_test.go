package joinery_test

import (
	"math/rand/v2"
	"testing"

	"scantling/internal/joinery"
	"scantling/internal/piece"
)

// TestWildFigures: whatever a document says of tongues, mitres and dovetails, they are
// made or refused; nothing panics and every cut has a form.
func TestWildFigures(t *testing.T) {
	r := seeded(t, 20261128)
	made := 0
	for n := range rounds(3000) {
		b := newRuled(t)
		if n%2 == 0 {
			wildCorner(b, r)
		} else {
			randomCorner(b, r)
			spoil(b, r)
		}
		cuts, low, faults := joinery.Lower(&b.Piece, b.Ledger)
		if len(low) == 0 && len(faults) == 0 {
			t.Fatalf("corner %d: neither made nor refused: %+v", n, b.Piece.Joints)
		}
		made += len(low)
		if n%8 == 1 && len(low) == 1 {
			if checkPartition(t, b, cuts, low[0]); t.Failed() {
				t.Fatalf("corner %d: %+v\n%+v", n, b.Piece.Parts, b.Piece.Joints)
			}
		}
		for _, c := range cuts {
			if c.Slot == nil && c.Slice == nil && c.Pocket == nil && c.Bore == nil {
				t.Fatalf("corner %d: %s has no form", n, c.Address)
			}
		}
	}
	t.Logf("%d of %d made", made, rounds(3000))
	if made < 100 {
		t.Error("too few corners were made")
	}
}

func wildCorner(b *builder, r *rand.Rand) {
	sizes := []int64{1, 2, 30, 100, 120, 500, 2000, 40000, 1_000_000}
	any := func() int64 { return sizes[r.IntN(len(sizes))] }
	odd := func() piece.Figure {
		return b.Fig("odd", []int64{-10, 0, 1, 5, 30, 60, 100, 5000, 1_000_000}[r.IntN(9)])
	}
	frames := []piece.Frame{grainRight, grainUp, grainUpR, grainBack, upright, frontGrain, sideGrain}
	box := func(name string) {
		var at []int64
		for range 3 {
			low := int64(0)
			if r.IntN(3) == 0 {
				low = any() / 2
			}
			at = append(at, low, low+any())
		}
		b.Part(name, frames[r.IntN(len(frames))], at...)
	}
	box("a")
	box("b")
	kinds := []piece.JointKind{piece.TongueJoint, piece.MitreJoint, piece.DovetailJoint, piece.SlidingJoint, piece.BoxJoint}
	b.Joint("j", kinds[r.IntN(len(kinds))], "a", "b", 0, func(j *piece.Joint) {
		j.ClearAcross, j.ClearDeep, j.StopLow, j.StopHigh = odd(), odd(), odd(), odd()
		if r.IntN(2) == 0 {
			j.ClearAcross, j.ClearDeep, j.StopLow, j.StopHigh = piece.Figure{}, piece.Figure{}, piece.Figure{}, piece.Figure{}
		}
		if r.IntN(4) > 0 {
			j.Tongue = &piece.Tongue{Thickness: odd(), From: odd(), Gap: odd()}
			j.Spline = &piece.Spline{Thickness: odd(), Depth: odd(), Heel: odd()}
			j.Slide = &piece.Slide{Neck: odd(), Lean: odd(), OneSide: r.IntN(2) == 0}
			j.Tails = &piece.Tails{Lean: odd(), Lap: odd(), Tails: []piece.Figure{odd(), odd()}, Pins: []piece.Figure{odd(), odd(), odd()}}
		}
		if r.IntN(2) == 0 {
			j.Keys = &piece.Keys{Thickness: odd(), Depth: odd(), At: []piece.Figure{odd(), odd()}}
		}
	})
}

// spoil changes one figure of a corner that can be made.
func spoil(b *builder, r *rand.Rand) {
	j := &b.Piece.Joints[0]
	f := b.Fig("odd", []int64{-10, 0, 1, 5, 20, 30, 60, 100, 200, 5000, 1_000_000}[r.IntN(11)])
	figures := []*piece.Figure{&j.StopLow, &j.StopHigh, &j.ClearDeep, &j.ClearAcross}
	if j.Tails != nil {
		figures = append(figures, &j.Tails.Lean, &j.Tails.Lap, &j.Tails.Tails[0], &j.Tails.Pins[0])
	}
	if j.Spline != nil {
		figures = append(figures, &j.Spline.Depth, &j.Spline.Thickness, &j.Spline.Heel)
	}
	if j.Keys != nil {
		figures = append(figures, &j.Keys.Depth, &j.Keys.Thickness, &j.Keys.At[0])
	}
	if j.Slide != nil {
		figures = append(figures, &j.Slide.Neck, &j.Slide.Lean)
	}
	*figures[r.IntN(len(figures))] = f
}
