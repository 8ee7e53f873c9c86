package joinery_test

import (
	"testing"

	"scantling/internal/address"
	"scantling/internal/joinery"
	"scantling/internal/piece"
)

// framed is a stile and a rail with a panel in grooves of both: the panel's corner
// lies in the tenon.
func framed(b *builder, over ...address.Address) {
	b.Part("stile", upright, 0, 600, 0, 200, 0, 4000)
	b.Part("rail", frontGrain, 200, 3000, 0, 200, 200, 800)
	b.Part("panel", upright, 500, 2600, 70, 130, 700, 3600)
	b.Joint("tenon", piece.TenonJoint, "rail", "stile", 400, func(j *piece.Joint) { j.Tenon = b.tenon(70, 60, 60, 0) })
	groove := func(j *piece.Joint) { j.Over = over }
	b.Joint("groove.stile", piece.GrooveJoint, "panel", "stile", 100, groove)
	b.Joint("groove.rail", piece.GrooveJoint, "panel", "rail", 100, groove)
}

// shelved is a leg with a stretcher's tenon at the height at which a shelf is let
// into the leg from the other side.
func shelved(b *builder, over ...address.Address) {
	b.Part("leg", upright, 0, 450, 0, 450, 0, 4000)
	b.Part("stretcher", frontGrain, 150, 3000, 100, 300, 900, 1500)
	b.Part("shelf", grainRight, 300, 3000, 200, 3000, 1100, 1280)
	b.Joint("tenon", piece.TenonJoint, "stretcher", "leg", 300, func(j *piece.Joint) { j.Tenon, j.Over = b.tenon(65, 70, 60, 60), over })
	b.Joint("shelf.leg", piece.HousingJoint, "shelf", "leg", 0, func(j *piece.Joint) { j.Over = nil })
	b.Joint("shelf.stretcher", piece.HousingJoint, "shelf", "stretcher", 0, nil)
}

// TestWhereThreeMeet: a panel's corner in a tenon, a tenon where a shelf is let in:
// errors that name both joints until one goes over the other; then no wood is left
// to two parts.
func TestWhereThreeMeet(t *testing.T) {
	for _, c := range []struct {
		name  string
		build func(b *builder, over ...address.Address)
		over  []address.Address
	}{
		{"panel", framed, []address.Address{"tenon"}},
		{"shelf", shelved, []address.Address{"shelf"}},
	} {
		b := newBuilder(t)
		c.build(b)
		_, _, faults := joinery.Lower(&b.Piece, b.Ledger)
		told := false
		for _, f := range faults {
			told = told || f.Code == joinery.CodeClaims && len(f.Related) == 1
		}
		if !told {
			t.Errorf("%s: no conflict: %+v", c.name, faults)
		}
		b = newBuilder(t)
		c.build(b, c.over...)
		cuts, _, faults := joinery.Lower(&b.Piece, b.Ledger)
		for _, f := range faults {
			t.Errorf("%s: %s %v", c.name, f.Code, f.Text)
		}
		if at := shared(b, cuts); at != "" {
			t.Errorf("%s: two parts have wood at %s", c.name, at)
		}
	}
}

// TestTenonLaws: random legs and rails, tenons stopped and through, haunched or
// not, square and round, from either side: the exact count of cells where all is
// square, and every fifth pair against the solids.
func TestTenonLaws(t *testing.T) {
	r := seeded(t, 20261126)
	between := func(lo, hi int64) int64 { return lo + r.Int64N(hi-lo+1) }
	made := 0
	for n := range 300 {
		b := newBuilder(t)
		size, deep, thick, wide := between(300, 700), between(400, 600), between(120, 300), between(250, 1200)
		front := between(0, deep-thick)
		depth, through := between(60, size-60), r.IntN(3) == 0
		if through {
			depth = size
		}
		bottom := between(200, 900)
		top := bottom + wide + between(0, 2)*150
		tenon := between(40, thick-40)
		from := between(0, thick-tenon)
		low, high := between(0, wide/4), between(0, wide/4)
		if r.IntN(2) == 0 {
			b.Part("leg", upright, 0, size, 0, deep, 0, top)
			b.Part("rail", frontGrain, size-depth, 3000, front, front+thick, bottom, bottom+wide)
		} else { // from the other side, lying the other way
			b.Part("leg", grainUpR, 3000-size, 3000, 0, deep, 0, top)
			b.Part("rail", frontGrain, 0, 3000-size+depth, front, front+thick, bottom, bottom+wide)
		}
		haunched := between(0, 3)
		b.Joint("j", piece.TenonJoint, "rail", "leg", depth, func(j *piece.Joint) {
			j.Tenon = b.tenon(from, tenon, low, high)
			j.Tenon.Through, j.Tenon.Round = through, r.IntN(3) == 0
			if side := [2]int64{low, high}[haunched%2]; haunched > 1 && side > 0 && depth > 50 {
				j.Tenon.Haunch, j.Tenon.HaunchHigh = b.Fig("g", between(10, depth-10)), haunched%2 == 1
			}
			if !through && r.IntN(2) == 0 {
				j.ClearDeep = b.Fig("c", between(1, 15))
			}
		})
		cuts, low2, faults := joinery.Lower(&b.Piece, b.Ledger)
		if len(low2) == 0 {
			for _, f := range faults {
				if f.Code != joinery.CodeTenon {
					t.Fatalf("pair %d: %s %v", n, f.Code, f.Text)
				}
			}
			continue
		}
		made++
		if !b.Piece.Joints[0].Tenon.Round {
			checkPair(t, b, cuts, low2[0])
		}
		if n%5 == 0 {
			checkSolids(t, b, cuts, low2[0])
		}
		if t.Failed() {
			t.Fatalf("pair %d: %+v\n%+v\n%+v", n, b.Piece.Parts, *b.Piece.Joints[0].Tenon, trenches(cuts))
		}
	}
	t.Logf("%d of 300 pairs made", made)
	if made < 150 {
		t.Error("too few pairs could be made")
	}
}
