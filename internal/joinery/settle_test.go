package joinery_test

import (
	"fmt"
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// shared returns a place where two parts have wood, or "" if there is none.
func shared(b *builder, cuts []piece.Cut) string {
	var names []string
	for _, p := range b.Piece.Parts {
		names = append(names, string(p.Address))
	}
	found := ""
	b.voxels(names, cuts, func(lo, hi [3]unit.Length, wood, body []bool) {
		n := 0
		for _, w := range wood {
			if w {
				n++
			}
		}
		if n > 1 && found == "" {
			found = fmt.Sprint(lo, wood)
		}
	})
	return found
}

// TestTheOtherWayRound: where the corners go over the back, the top keeps its
// ends whole, the back rebates of the sides end at them and the back is notched.
func TestTheOtherWayRound(t *testing.T) {
	b := carcase(t, 70, 70, 47)
	var backs []address.Address
	for i := range b.Piece.Joints {
		b.Piece.Joints[i].Over = nil
		if a := b.Piece.Joints[i].Address; address.Address("joint.panel").Has(a) {
			backs = append(backs, a)
		}
	}
	for i := range b.Piece.Joints {
		if address.Address("joint.corner").Has(b.Piece.Joints[i].Address) {
			b.Piece.Joints[i].Over = backs
		}
	}
	cuts, _ := b.lower()
	got := trenches(cuts)
	for _, want := range []string{
		// The top's own rebate for the back lies between the sides only.
		"top rebate from face 1: 7..279 across 194..200 deep 7",
		"panel notch from end 1: 0..6<> across 0..7 deep 7",
	} {
		if !slices.Contains(got, want) {
			t.Errorf("missing %q in\n%q", want, got)
		}
	}
	if at := shared(b, cuts); at != "" {
		t.Errorf("two parts have wood at %s", at)
	}
}

// TestMutualOver: two joints that each go over the other are a contradiction.
func TestMutualOver(t *testing.T) {
	b := newBuilder(t)
	b.Part("leg", upright, 0, 400, 0, 400, 0, 4000)
	b.Part("rail", frontGrain, 100, 3000, 100, 250, 3000, 3500)
	b.Part("side", sideGrain, 120, 260, 150, 2000, 3000, 3500)
	b.Joint("a", piece.HousingJoint, "rail", "leg", 300, func(j *piece.Joint) { j.Over = []address.Address{"b"} })
	b.Joint("b", piece.HousingJoint, "side", "leg", 250, func(j *piece.Joint) { j.Over = []address.Address{"a"} })
	_, _, faults := joinery.Lower(&b.Piece, b.Ledger)
	if len(faults) != 1 || faults[0].Code != joinery.CodeClaims || len(faults[0].Related) != 1 {
		t.Errorf("%+v", faults)
	}
}

// TestRandomHeaps: random boards thrown on a heap, every two that overlap joined
// at random, each joint over all later ones. No wood is left to two parts, there
// is no conflict, and the cuts lie inside their parts.
func TestRandomHeaps(t *testing.T) {
	r := seeded(t, 99)
	kinds := []piece.JointKind{piece.HousingJoint, piece.RebateJoint, piece.GrooveJoint}
	frames := []piece.Frame{grainRight, grainUp, grainUpR, grainBack, upright, frontGrain, sideGrain}
	judged := 0
	for n := range 400 {
		b := newBuilder(t)
		count := 3 + r.IntN(3)
		for i := range count {
			var at []int64
			for range 3 {
				lo := r.Int64N(8) * 10
				at = append(at, lo, lo+(1+r.Int64N(8))*10)
			}
			b.Part(fmt.Sprintf("p[%d]", i+1), frames[r.IntN(len(frames))], at...)
		}
		for i := range count {
			for k := range i {
				p, q := &b.Piece.Parts[i], &b.Piece.Parts[k]
				if !meet(p, q) {
					continue
				}
				if r.IntN(2) == 0 {
					p, q = q, p
				}
				clear := r.Int64N(3) * 5
				b.Joint(fmt.Sprintf("j[%d]", len(b.Piece.Joints)+1), kinds[r.IntN(3)], string(p.Address), string(q.Address), 0, func(j *piece.Joint) {
					j.ClearAcross, j.ClearDeep = b.Fig("c", clear), b.Fig("c", clear)
				})
			}
		}
		for i := range b.Piece.Joints {
			for _, later := range b.Piece.Joints[i+1:] {
				b.Piece.Joints[i].Over = append(b.Piece.Joints[i].Over, later.Address)
			}
		}
		cuts, _, faults := joinery.Lower(&b.Piece, b.Ledger)
		buried := false
		for _, f := range faults {
			if f.Code != joinery.CodeBuried {
				t.Errorf("heap %d: %s %v", n, f.Code, f.Text)
			}
			buried = true
		}
		if buried {
			continue
		}
		judged++
		if at := shared(b, cuts); at != "" {
			t.Errorf("heap %d: two parts have wood at %s", n, at)
		}
		for _, c := range cuts {
			s, size := c.Slot, b.Find(string(c.Part)).Sizes()
			open, _ := s.Open.Axis()
			if s.From.Nm < 0 || s.To.Nm > size[s.Run].Nm || s.Near.Nm < 0 || s.Far.Nm > size[s.Across()].Nm ||
				s.Depth.Nm > size[open].Nm || s.From.Nm >= s.To.Nm || s.Near.Nm >= s.Far.Nm || s.Depth.Nm <= 0 {
				t.Errorf("heap %d: %s: %+v", n, c.Address, *s)
			}
		}
		if t.Failed() {
			t.Fatalf("%+v", b.Piece.Joints)
		}
	}
	t.Logf("%d heaps judged", judged)
	if judged < 200 {
		t.Error("too few heaps could be judged")
	}
}

func meet(p, q *piece.Part) bool {
	for i := range 3 {
		if p.Extent[i].Low.Nm >= q.Extent[i].High.Nm || q.Extent[i].Low.Nm >= p.Extent[i].High.Nm {
			return false
		}
	}
	return true
}

// TestBound: with too little work allowed the joints are lowered as far as they
// go, and that is said.
func TestBound(t *testing.T) {
	defer joinery.Limit(20)()
	b := drawer(t, 80, 50, 40)
	cuts, _, faults := joinery.Lower(&b.Piece, b.Ledger)
	if len(cuts) == 0 || len(faults) == 0 || faults[len(faults)-1].Code != joinery.CodeTooMuch {
		t.Errorf("%d cuts, %+v", len(cuts), faults)
	}
}
