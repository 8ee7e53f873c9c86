package solid

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// seeds returns how many random boards to try: n in the ordinary tier, ten
// times as many with LONG=1.
func seeds(n int) uint64 {
	if os.Getenv("LONG") != "" {
		return uint64(10 * n)
	}
	return uint64(n)
}

func TestRandomBoardsClose(t *testing.T) {
	bad := 0
	for seed := range seeds(500) {
		b, c := randomBoard(seed)
		s := Build(b, c, Options{Facets: 8})
		if st, why := s.Status(); st != Verified {
			t.Errorf("seed %d: unverified: %s", seed, why)
			bad++
		}
	}
	t.Logf("%d of %d failed", bad, seeds(500))
}

// Boards that went wrong once: two lines that crossed at a slant were taken for
// one, and an edge was split for ever beside a vertex that had not merged.
func TestBoardsThatFailed(t *testing.T) {
	for _, seed := range []uint64{100638, 104102} {
		b, c := randomBoard(seed)
		if st, why := Build(b, c, Options{Facets: 8}).Status(); st != Verified {
			t.Errorf("seed %d: unverified: %s", seed, why)
		}
	}
}

// shifted is the frame f moved by d.
func shifted(f vec.Frame, d vec.V3) vec.Frame {
	f.Origin = f.Origin.Add(d)
	return f
}

// A less B and A ∩ B add up to A, A and B being random.
func TestDifferenceAndOverlapAddUp(t *testing.T) {
	for seed := uint64(200_000); seed < 200_000+seeds(150); seed++ {
		b, c := randomBoard(seed)
		a, bit := b[0], c[0]
		whole := Build([]Primitive{a}, nil, Options{Facets: 8})
		rest := Build([]Primitive{a}, []Primitive{bit}, Options{Facets: 8})
		taken := Interference(Placed{whole, vec.World}, Placed{Build([]Primitive{bit}, nil, Options{Facets: 8}), vec.World})
		if taken.Status != Verified || rest.status != Verified {
			t.Fatalf("seed %d: %q %q", seed, taken.Reason, rest.reason)
		}
		near(t, fmt.Sprintf("seed %d", seed), facetedVolume(rest)+taken.Volume+taken.Facets, facetedVolume(whole), 1e-3)
	}
}

// Mirroring and turning a solid keep its volume, area and moments: to 2e-3 mm³,
// which is 60 nm over its faces, the distance within which faces are flush.
func TestMirrorAndPoseKeepMeasures(t *testing.T) {
	for seed := uint64(210_000); seed < 210_000+seeds(60); seed++ {
		r := rand.New(rand.NewPCG(seed, 1))
		b, c := randomBoard(seed)
		s := Build(b, c, Options{Facets: 8})
		m := s.Mirrored()
		pose := randomFrame(r, at(r.Float64()*3000, r.Float64()*3000, r.Float64()*3000))
		p := Build(posed(b, pose), posed(c, pose), Options{Facets: 8})
		verified(t, m)
		verified(t, p)
		for _, o := range []*Solid{m, p} {
			near(t, fmt.Sprintf("seed %d volume", seed), o.Volume(), s.Volume(), 2e-3)
			near(t, fmt.Sprintf("seed %d area", seed), o.Area(), s.Area(), 1e-3)
		}
		if d := p.Centroid().Sub(pose.ToWorld(s.Centroid())).Norm(); d > 1e-5 {
			t.Errorf("seed %d: the centroid moved by %g", seed, d)
		}
		i, j := s.Inertia(), p.Inertia()
		near(t, fmt.Sprintf("seed %d trace", seed), j.XX+j.YY+j.ZZ, i.XX+i.YY+i.ZZ, 1e-6*(i.XX+i.YY+i.ZZ))
	}
}

func posed(list []Primitive, f vec.Frame) []Primitive {
	var out []Primitive
	for _, p := range list {
		q := p.(Prism)
		q.Frame = q.Frame.Then(f)
		out = append(out, q)
	}
	return out
}

// The order of cuts does not matter, and equal input gives equal bytes.
func TestCutsCommute(t *testing.T) {
	for seed := uint64(220_000); seed < 220_000+seeds(60); seed++ {
		b, c := randomBoard(seed)
		s := Build(b, c, Options{Facets: 8})
		back := slices.Clone(c)
		slices.Reverse(back)
		near(t, fmt.Sprintf("seed %d", seed), Build(b, back, Options{Facets: 8}).Volume(), s.Volume(), 2e-3)
		again := Build(b, c, Options{Facets: 8})
		if !slices.Equal(s.Mesh().Verts, again.Mesh().Verts) || !slices.Equal(s.Mesh().Tris, again.Mesh().Tris) {
			t.Errorf("seed %d: two runs differ", seed)
		}
	}
}

// A shelf in its housing, each placed by its own chain of frames far from the
// origin: glue area as the formula of the joint gives it, no interference.
func TestTouchingInSeparatePoses(t *testing.T) {
	side := Build([]Primitive{Block(vec.World, vec.V3{}, at(400, 250, 18), 1)},
		[]Primitive{Block(vec.World, at(100, 0, 12), at(118, 250, 18), 2)}, Options{})
	shelf := Build([]Primitive{Block(vec.World, vec.V3{}, at(600, 250, 18), 3)}, nil, Options{})
	// The shelf's length runs up from the housing's floor.
	inSide := vec.Frame{Origin: at(118, 0, 12), U: at(0, 0, 1), V: at(0, 1, 0), W: at(-1, 0, 0)}
	want := 18*250.0 + 2*6*250
	worst := 0.0
	for seed := range seeds(200) {
		r := rand.New(rand.NewPCG(seed, 3))
		pose := randomFrame(r, at(r.Float64()*3000, r.Float64()*3000, r.Float64()*3000))
		// The side by one frame; the shelf by way of three others.
		aside := randomFrame(r, at(r.Float64()*500, r.Float64()*500, 0))
		back := within(vec.World, aside)
		chain := inSide.Then(back).Then(aside).Then(pose)
		a, b := Placed{side, pose}, Placed{shelf, chain}
		if o := Interference(a, b); o.Volume != 0 || o.Status != Verified {
			t.Errorf("seed %d: interference %+v", seed, o)
		}
		c := Contact(a, b)
		worst = max(worst, math.Abs(c.Area-want))
		if math.Abs(c.Area-want) > 1e-4 {
			t.Errorf("seed %d: contact %.6f, want %.0f", seed, c.Area, want)
		}
		if g := Distance(a, b); g.Distance != 0 {
			t.Errorf("seed %d: distance %g", seed, g.Distance)
		}
	}
	t.Logf("worst error of the glue area: %.2g mm²", worst)
}

// Lines through random boards: what Intervals says beside where the line meets
// the mesh. Boards with round cuts are compared at the gap of a facet.
func TestIntervalsBesideMesh(t *testing.T) {
	lines, skipped := 0, 0
	for seed := uint64(230_000); seed < 230_000+seeds(150); seed++ {
		r := rand.New(rand.NewPCG(seed, 4))
		b, c := randomBoard(seed)
		flat := c[:0:0]
		for _, p := range c {
			if q := p.(Prism); !hasArc(q.Profile) {
				flat = append(flat, p)
			}
		}
		s := Build(b, flat, Options{})
		lo, hi := s.Bounds()
		for range 10 {
			o := at(lo.X+r.Float64()*(hi.X-lo.X), lo.Y+r.Float64()*(hi.Y-lo.Y), lo.Z+r.Float64()*(hi.Z-lo.Z))
			d := at(r.NormFloat64(), r.NormFloat64(), r.NormFloat64()).Unit()
			want, ok := meshCrossings(s, o, d)
			if !ok {
				skipped++
				continue
			}
			lines++
			var got []float64
			for _, i := range s.Intervals(o, d) {
				got = append(got, i.Enter, i.Leave)
			}
			if len(got) != len(want) {
				t.Errorf("seed %d: %v, mesh %v", seed, got, want)
				continue
			}
			for k := range got {
				if math.Abs(got[k]-want[k]) > 1e-6 {
					t.Errorf("seed %d: %v, mesh %v", seed, got, want)
					break
				}
			}
		}
	}
	t.Logf("%d lines, %d left out as too near an edge", lines, skipped)
	if lines < 20*skipped {
		t.Error("too many lines left out")
	}
}

func hasArc(p polygon.Profile) bool {
	for _, l := range p.Loops() {
		for _, v := range l {
			if v.Bulge != 0 {
				return true
			}
		}
	}
	return false
}

// meshCrossings cuts the mesh with a line; ok is false where the line passes
// within a micrometre of an edge.
func meshCrossings(s *Solid, o, d vec.V3) (ts []float64, ok bool) {
	m := s.Mesh()
	for _, t := range m.Tris {
		a, b, c := m.Verts[t.V[0]], m.Verts[t.V[1]], m.Verts[t.V[2]]
		n := b.Sub(a).Cross(c.Sub(a)).Unit()
		if abs(n.Dot(d)) < 1e-9 {
			continue
		}
		x := n.Dot(a.Sub(o)) / n.Dot(d)
		p := o.Add(d.Mul(x))
		least := inf
		for k := range 3 {
			u, v := m.Verts[t.V[k]], m.Verts[t.V[(k+1)%3]]
			least = min(least, n.Dot(v.Sub(u).Unit().Cross(p.Sub(u))))
		}
		switch {
		case abs(least) < 1e-3:
			return nil, false
		case least > 0:
			ts = append(ts, x)
		}
	}
	slices.Sort(ts)
	return ts, true
}

// A dowel in a hole of its own size, turned by any angle about its axis, does
// not interfere; one that is 0.1 too thick does, and so does one pushed aside.
func TestDowelInItsHole(t *testing.T) {
	hole := Prism{Frame: shifted(vec.World, at(50, 30, 0)), Profile: polygon.Circle(polygon.P2{}, 4), From: 0, To: 20}
	wood := Build([]Primitive{board(100, 60, 20)}, []Primitive{hole}, Options{})
	dowel := func(r float64) *Solid {
		return Build([]Primitive{Prism{Frame: vec.World, Profile: polygon.Circle(polygon.P2{}, r), From: 0, To: 40}}, nil, Options{})
	}
	for k := range 20 {
		a := float64(k) * 0.0321
		f := vec.Frame{Origin: at(50, 30, -10), U: at(math.Cos(a), math.Sin(a), 0), V: at(-math.Sin(a), math.Cos(a), 0), W: at(0, 0, 1)}
		if o := Interference(Placed{wood, vec.World}, Placed{dowel(4), f}); o.Volume != 0 || o.Status != Verified {
			t.Errorf("turned by %.3f: %+v", a, o)
		}
		if o := Interference(Placed{wood, vec.World}, Placed{dowel(4.1), f}); !(o.Volume > 0 && o.Depth > 0) {
			t.Errorf("0.1 too thick, turned by %.3f: %+v", a, o)
		}
		f.Origin.X += 0.3
		if o := Interference(Placed{wood, vec.World}, Placed{dowel(4), f}); o.Depth < 0.1 {
			t.Errorf("pushed aside by 0.3, turned by %.3f: %+v", a, o)
		}
	}
}

// A plane parts a solid into two that add up to it and touch over the section.
func TestSectionPartsTheSolid(t *testing.T) {
	for seed := uint64(240_000); seed < 240_000+seeds(60); seed++ {
		r := rand.New(rand.NewPCG(seed, 9))
		b, c := randomBoard(seed)
		s := Build(b, c, Options{Facets: 8})
		lo, hi := s.Bounds()
		o := at(lo.X+r.Float64()*(hi.X-lo.X), lo.Y+r.Float64()*(hi.Y-lo.Y), lo.Z+r.Float64()*(hi.Z-lo.Z))
		f := randomFrame(r, o)
		if r.IntN(2) == 0 { // square to the board and in the grid: flush with faces
			f = vec.Frame{Origin: at(math.Round(o.X/5)*5, o.Y, o.Z), U: at(0, 1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}
		}
		back := s.Behind(f, 99)
		front := s.Behind(vec.Frame{Origin: f.Origin, U: f.V, V: f.U, W: f.W.Mul(-1)}, 99)
		verified(t, back)
		verified(t, front)
		near(t, fmt.Sprintf("seed %d volumes", seed), facetedVolume(back)+facetedVolume(front), facetedVolume(s), 2e-3)
		regions, why := Section(Placed{s, vec.World}, f)
		if why != "" {
			t.Errorf("seed %d: %s", seed, why)
		}
		var area float64
		for _, g := range regions {
			area += g.Area()
		}
		touching := Contact(Placed{back, vec.World}, Placed{front, vec.World})
		var across float64
		for _, p := range touching.Places {
			if p.TagA == 99 && p.TagB == 99 {
				across += p.Area
			}
		}
		if f.W.X == 1 {
			// Where the plane lies in a face of the solid, wood behind it shows in
			// the section but nothing lies in front to touch: then look a little
			// behind that face.
			if across > area+1e-3 {
				t.Errorf("seed %d: contact %.6f, section %.6f", seed, across, area)
			}
			g := f
			g.Origin.X -= 1e-4
			regions, _ := Section(Placed{s, vec.World}, g)
			var nearby float64
			for _, r := range regions {
				nearby += r.Area()
			}
			near(t, fmt.Sprintf("seed %d, a little behind", seed), area, nearby, 0.1)
			continue
		}
		near(t, fmt.Sprintf("seed %d areas", seed), across, area, 1e-3)
	}
}
