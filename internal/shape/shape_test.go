package shape_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/piece"
	"scantling/internal/shape"
	"scantling/internal/unit"
)

func mm(x float64) piece.Figure { return piece.Figure{Nm: unit.FromMillimetres(x)} }

// board returns a part of the given sizes at the piece's origin, grain right.
func board(name string, l, w, t float64) piece.Part {
	return piece.Part{
		Address: address.Address(name), Form: piece.Board,
		Frame:  piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp},
		Extent: [3]piece.Extent{{High: mm(l)}, {High: mm(w)}, {High: mm(t)}},
		Length: mm(l), Width: mm(w), Thickness: mm(t),
	}
}

func slot(open piece.Side, run piece.Local, from, to, near, far, depth, corner float64) piece.Cut {
	return piece.Cut{Slot: &piece.Slot{
		Open: open, Run: run, From: mm(from), To: mm(to), Near: mm(near), Far: mm(far), Depth: mm(depth), Corner: mm(corner),
	}}
}

func bore(open piece.Side, x, y, d, depth float64) piece.Cut {
	return piece.Cut{Bore: &piece.Bore{Open: open, At: [2]piece.Figure{mm(x), mm(y)}, Diameter: mm(d), Depth: mm(depth)}}
}

// closedForms are parts with one cut, the wood that it takes worked out by hand,
// and a line along which the wood is known: from a point in local coordinates
// along an axis, the stretches of wood.
var closedForms = []struct {
	name  string
	cut   piece.Cut
	taken float64
}{
	// A board 300 × 100 × 20.
	{"groove through", slot(piece.FaceHigh, piece.AlongLength, 0, 300, 40, 46, 8, 0), 300 * 6 * 8},
	{"groove in an edge", slot(piece.EdgeHigh, piece.AlongLength, 10, 300, 7, 13, 8, 0), 290 * 6 * 8},
	{"rebate", slot(piece.FaceLow, piece.AlongLength, 0, 300, 0, 6, 8, 0), 300 * 6 * 8},
	{"rebate at an end", slot(piece.FaceLow, piece.AlongWidth, 0, 100, 286, 300, 7, 0), 100 * 14 * 7},
	{"housing, stopped", slot(piece.FaceHigh, piece.AlongWidth, 8, 100, 100, 115, 5, 0), 92 * 15 * 5},
	{"notch", slot(piece.EndHigh, piece.AlongThickness, 0, 20, 0, 8, 5, 0), 20 * 8 * 5},
	{"socket", slot(piece.EndLow, piece.AlongThickness, 0, 20, 12, 24, 10, 0), 20 * 12 * 10},
	{"slot right through", slot(piece.FaceHigh, piece.AlongLength, 50, 250, 40, 60, 20, 0), 200 * 20 * 20},
	// Half a circle of radius 3: π 9 / 2.
	{"channel to its radius", slot(piece.FaceHigh, piece.AlongLength, 0, 300, 47, 53, 3, 3), 300 * math.Pi * 9 / 2},
	// A chord 2 deep of radius 5: r² acos(1 - d/r) - (r - d)√(2rd - d²).
	{"channel less than its radius", slot(piece.FaceHigh, piece.AlongLength, 0, 300, 45, 55, 2, 5), 300 * (25*math.Acos(0.6) - 3*4)},
	// 8 wide and 6 deep with corners of 2: the box less two corners (4 - π)/2 · 2².
	{"trough with round corners", slot(piece.FaceHigh, piece.AlongWidth, 0, 100, 140, 148, 6, 2), 100 * (48 - 2*(4-math.Pi))},
	{"hole", bore(piece.FaceHigh, 100, 50, 8, 12), math.Pi * 16 * 12},
	{"hole in an end", bore(piece.EndLow, 50, 10, 8, 30), math.Pi * 16 * 30},
	{"hole in an edge, through", piece.Cut{Bore: &piece.Bore{Open: piece.EdgeLow, At: [2]piece.Figure{mm(100), mm(10)}, Diameter: mm(5), Through: true}}, math.Pi * 6.25 * 100},
	// A scoop 64 wide and 16 deep: radius (64² + 4·16²)/(8·16) = 40, sweep
	// 4 atan(1/2); segment r²(θ - sin θ)/2 through 20.
	{"scoop", piece.Cut{Dip: &piece.Dip{Open: piece.EdgeHigh, Centre: mm(150), Chord: mm(64), Depth: mm(16)}}, 20 * 1600 * (4*math.Atan(0.5) - 0.96) / 2},
	{"scoop out of an end", piece.Cut{Dip: &piece.Dip{Open: piece.EndLow, Centre: mm(50), Chord: mm(64), Depth: mm(16)}}, 20 * 1600 * (4*math.Atan(0.5) - 0.96) / 2},
	// The square less a quarter circle, r²(1 - π/4), along 300.
	{"rounded edge", piece.Cut{Ease: &piece.Ease{Sides: [2]piece.Side{piece.EdgeHigh, piece.FaceHigh}, Radius: mm(3)}}, 300 * 9 * (1 - math.Pi/4)},
	{"chamfered end", piece.Cut{Ease: &piece.Ease{Sides: [2]piece.Side{piece.FaceLow, piece.EndHigh}, Radius: mm(2), Chamfer: true}}, 100 * 2},
}

func TestClosedForms(t *testing.T) {
	for _, c := range closedForms {
		p := piece.Piece{Parts: []piece.Part{board("b", 300, 100, 20)}}
		c.cut.Part = "b"
		s, _ := shape.New(&p, []piece.Cut{c.cut}, shape.DrawingFacets).Of("b")
		if ok, why := s.Verified(); !ok {
			t.Errorf("%s: %s", c.name, why)
			continue
		}
		if got := 600000 - s.Solid.Volume(); math.Abs(got-c.taken) > 1e-6*600000 {
			t.Errorf("%s: %.6f mm³ taken, want %.6f", c.name, got, c.taken)
		}
		// What is taken lies where the cut says: nothing of the cut's faces lies
		// outside the box around it.
		for _, f := range s.Solid.Faces() {
			o := s.Origin(f.Tag)
			if o.Cut == nil && o.Side == "" {
				t.Errorf("%s: face with tag %d comes from nowhere", c.name, f.Tag)
			}
		}
		if m := s.Solid.Mesh(); len(m.Tris) == 0 {
			t.Errorf("%s: no mesh", c.name)
		}
	}
}

// TestOrigins looks at each face of a board with a stopped trench and checks
// that it is named by where it is.
func TestOrigins(t *testing.T) {
	for _, open := range []piece.Side{piece.FaceHigh, piece.FaceLow, piece.EdgeHigh, piece.EdgeLow} {
		p := piece.Piece{Parts: []piece.Part{board("b", 300, 100, 20)}}
		cut := slot(open, piece.AlongLength, 60, 200, 4, 14, 5, 0)
		cut.Part, cut.Address = "b", "j.groove"
		s, _ := shape.New(&p, []piece.Cut{cut}, 8).Of("b")
		axis, high := open.Axis()
		across := int(cut.Slot.Across())
		floor := 5.0
		if high {
			floor = p.Parts[0].Sizes()[axis].Nm.Millimetres() - 5
		}
		want := map[shape.Wall]struct {
			axis int
			at   float64
		}{
			shape.Bottom: {int(axis), floor}, shape.Near: {across, 4}, shape.Far: {across, 14}, shape.Start: {0, 60}, shape.End: {0, 200},
		}
		seen := map[shape.Wall]bool{}
		for _, f := range s.Solid.Faces() {
			o := s.Origin(f.Tag)
			if o.Cut == nil {
				a, up := o.Side.Axis()
				if n := f.Normal.At(int(a)); (n > 0) != up || math.Abs(n) < 0.9 {
					t.Errorf("%s: face of %s looks along %v", open, o.Side, f.Normal)
				}
				continue
			}
			if o.Cut.Address != "j.groove" {
				t.Errorf("face of %s", o.Cut.Address)
			}
			w := want[o.Wall]
			for _, v := range f.Loops[0] {
				if math.Abs(v.At(w.axis)-w.at) > 1e-9 {
					t.Errorf("%s: wall %s at %v", open, o.Wall, v)
				}
			}
			seen[o.Wall] = true
		}
		if len(seen) != 5 {
			t.Errorf("%s: walls seen: %v", open, seen)
		}
	}
}

// TestEqualPartsShareOneSolid: whatever their pose.
func TestEqualPartsShareOneSolid(t *testing.T) {
	a, b, c := board("a", 300, 100, 20), board("b", 300, 100, 20), board("c", 300, 100, 20)
	b.Frame = piece.Frame{Length: piece.ToUp, Width: piece.ToBack, Thickness: piece.ToLeft}
	b.Extent = [3]piece.Extent{{Low: mm(500), High: mm(520)}, {High: mm(100)}, {High: mm(300)}}
	p := piece.Piece{Parts: []piece.Part{a, b, c}}
	groove := func(part string, near float64) piece.Cut {
		x := slot(piece.FaceHigh, piece.AlongLength, 0, 300, near, near+6, 8, 0)
		x.Part = address.Address(part)
		return x
	}
	s := shape.New(&p, []piece.Cut{groove("a", 40), groove("b", 40), groove("c", 41)}, 8)
	all := s.All()
	if all[0].Solid != all[1].Solid || all[0].Solid == all[2].Solid {
		t.Error("equal parts have solids of their own, or unequal ones share")
	}
	// A cache keeps them for the next piece; two workers make no difference.
	cache := new(solid.Cache)
	first := shape.NewIn(cache, &p, p.Cuts, 8).Solve(2)
	p.Parts[2].Label = "changed"
	second := shape.NewIn(cache, &p, p.Cuts, 8).All()
	for i := range first {
		if first[i].Solid != second[i].Solid {
			t.Errorf("part %d was solved twice", i)
		}
	}
	// b's groove lies in its left face, 40 from the front.
	in := all[1].Placed().Intervals(vec.V3{X: 490, Y: 43, Z: 150}, vec.V3{X: 1})
	if len(in) != 1 || math.Abs(in[0].Enter-18) > 1e-9 || math.Abs(in[0].Leave-30) > 1e-9 {
		t.Errorf("wood of b: %+v", in)
	}
}

// TestContent: parts are equal when they are so turned round, in any order and
// description of their cuts; a mirror image is told apart where it differs.
func TestContent(t *testing.T) {
	p := board("p", 300, 100, 20)
	ptrs := func(cuts ...piece.Cut) []*piece.Cut {
		var out []*piece.Cut
		for i := range cuts {
			out = append(out, &cuts[i])
		}
		return out
	}
	groove := slot(piece.FaceHigh, piece.AlongLength, 0, 300, 40, 46, 8, 0)
	hole := bore(piece.FaceHigh, 30, 20, 5, 10)
	turned := []*piece.Cut{}
	turned = append(turned, ptrs(bore(piece.FaceHigh, 270, 80, 5, 10), slot(piece.FaceHigh, piece.AlongLength, 0, 300, 54, 60, 8, 0))...)
	a := shape.ContentOf(&p, ptrs(groove, hole))
	if b := shape.ContentOf(&p, turned); a != b {
		t.Errorf("turned round:\n%s\n%s", a, b)
	}
	other := ptrs(bore(piece.FaceLow, 270, 20, 5, 10), slot(piece.FaceLow, piece.AlongLength, 0, 300, 40, 46, 8, 0))
	if b := shape.ContentOf(&p, other); a != b {
		t.Errorf("turned over:\n%s\n%s", a, b)
	}
	mirrored := ptrs(groove, bore(piece.FaceHigh, 270, 20, 5, 10))
	if b := shape.ContentOf(&p, mirrored); a == b {
		t.Error("the mirror image is taken for the part itself")
	} else if m := shape.MirroredContentOf(&p, ptrs(groove, hole)); m != b {
		t.Errorf("mirror image:\n%s\n%s", m, b)
	}
	if shape.MirroredContentOf(&p, ptrs(groove)) != shape.ContentOf(&p, ptrs(groove)) {
		t.Error("a board with one groove has no hand")
	}
	// One rebate described from the face and from the edge.
	if shape.ContentOf(&p, ptrs(slot(piece.FaceHigh, piece.AlongLength, 0, 300, 0, 6, 8, 0))) !=
		shape.ContentOf(&p, ptrs(slot(piece.EdgeLow, piece.AlongLength, 0, 300, 12, 20, 6, 0))) {
		t.Error("one rebate described twice is two")
	}
}

// TestContentAgreesWithSolids: on seeded random boards, equal content means that
// the kernel finds the solids equal by a turn, and the hands agree.
func TestContentAgreesWithSolids(t *testing.T) {
	const seed = 20260
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 2))
	p := piece.Piece{Parts: []piece.Part{board("p", 60, 40, 20)}}
	handed := 0
	for range 120 {
		var cuts []piece.Cut
		for range 1 + r.IntN(3) {
			x, y := float64(r.IntN(11)*5), float64(r.IntN(7)*5)
			side := []piece.Side{piece.FaceLow, piece.FaceHigh}[r.IntN(2)]
			c := slot(side, piece.AlongLength, x, x+10, y, y+10, 5, 0)
			c.Part = "p"
			cuts = append(cuts, c)
		}
		shapes := shape.New(&p, cuts, 8)
		s, _ := shapes.Of("p")
		if ok, why := s.Verified(); !ok {
			for _, c := range cuts {
				t.Logf("%+v", *c.Slot)
			}
			t.Fatal(why)
		}
		list := shapes.CutsOf("p")
		sameByContent := shape.ContentOf(&p.Parts[0], list) == shape.MirroredContentOf(&p.Parts[0], list)
		if hand := s.Solid.Handed(); hand == sameByContent && !overlapping(cuts) {
			t.Errorf("content says same %v, the solid is handed %v: %v", sameByContent, hand, cuts)
		} else if hand {
			handed++
		}
	}
	if handed == 0 {
		t.Error("no handed board among them")
	}
}

// overlapping says whether two boxes run into or against each other, where one
// shape has several descriptions.
func overlapping(cuts []piece.Cut) bool {
	for i, a := range cuts {
		for _, b := range cuts[:i] {
			near := func(p, q, r, s piece.Figure) bool { return p.Nm <= s.Nm && r.Nm <= q.Nm }
			if near(a.Slot.From, a.Slot.To, b.Slot.From, b.Slot.To) && near(a.Slot.Near, a.Slot.Far, b.Slot.Near, b.Slot.Far) {
				return true
			}
		}
	}
	return false
}

// TestUnverified: what has no shape says so.
func TestUnverified(t *testing.T) {
	p := piece.Piece{Parts: []piece.Part{board("p", 60, 40, 20)}}
	bad := []piece.Cut{
		slot(piece.FaceHigh, piece.AlongThickness, 0, 20, 5, 10, 5, 0),
		slot(piece.FaceHigh, piece.AlongLength, 0, 60, 5, 10, 5, 20),
		{Dip: &piece.Dip{Open: piece.FaceHigh, Chord: mm(10), Depth: mm(2)}},
		{Ease: &piece.Ease{Sides: [2]piece.Side{piece.FaceHigh, piece.FaceLow}, Radius: mm(2)}},
	}
	for i, c := range bad {
		c.Part = "p"
		s, _ := shape.New(&p, []piece.Cut{c}, 8).Of("p")
		if status, why := s.Solid.Status(); status != solid.Unverified || why == "" {
			t.Errorf("%d: %s %q", i, status, why)
		}
	}
}
