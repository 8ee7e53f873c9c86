package hidden

import (
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
)

// heap is boards lying about, some with holes and channels, some turned.
func heap(seed uint64, n int) []solid.Placed {
	r := rand.New(rand.NewPCG(seed, 2))
	var all []solid.Placed
	for range n {
		l, w := float64(10*(4+r.IntN(12))), float64(10*(3+r.IntN(6)))
		sides, caps := solid.Whole(2)
		f := vec.World
		f.Origin = at(float64(5*(2+r.IntN(4))), float64(5*(2+r.IntN(3))), 0)
		g := vec.Frame{Origin: at(0, w/2, 20), U: at(0, 1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}
		cuts := []solid.Primitive{
			solid.Prism{Frame: f, Profile: polygon.Circle(polygon.P2{}, 6), From: 0, To: 20, Sides: sides, Caps: caps},
			solid.Prism{Frame: g, Profile: polygon.RoundBottom(8, 4, 4), From: 0, To: l, Sides: sides, Caps: caps},
			solid.Block(vec.World, at(l/2, 0, 10), at(l/2+10, w, 20), 3),
		}
		s := solid.Build([]solid.Primitive{solid.Block(vec.World, vec.V3{}, at(l, w, 20), 1)}, cuts[:r.IntN(4)], solid.Options{Facets: 8})
		p := vec.World
		if r.IntN(2) == 0 {
			u := at(r.NormFloat64(), r.NormFloat64(), r.NormFloat64()).Unit()
			v := at(r.NormFloat64(), r.NormFloat64(), r.NormFloat64())
			v = v.Sub(u.Mul(u.Dot(v))).Unit()
			p = vec.Frame{U: u, V: v, W: u.Cross(v)}
		}
		p.Origin = at(float64(10*r.IntN(20)), float64(10*r.IntN(20)), float64(20*r.IntN(6)))
		all = append(all, solid.Placed{Solid: s, Frame: p})
	}
	return all
}

// TestBesideEveryTriangle judges points of edges against every triangle, with
// no grid and no intervals. Points within 5 µm of an outline or of the depth
// that decides are left out.
func TestBesideEveryTriangle(t *testing.T) {
	views := []View{
		{Sight: at(-1, -1, -1), Up: at(0, 0, 1), Hidden: true},
		{Sight: at(0, 1, 0), Up: at(0, 0, 1), Hidden: true},
		{Sight: at(0.3, 0.5, -0.8), Up: at(0, 1, 0), Hidden: true},
	}
	used, left := 0, 0
	for seed := range uint64(8) {
		for _, v := range views {
			sc := &scene{paper: v.frame()}
			for i, p := range heap(seed, 12) {
				sc.add(i, p)
			}
			sc.grid()
			r := rand.New(rand.NewPCG(seed, 8))
			for i := range sc.edges {
				e := &sc.edges[i]
				if r.IntN(4) != 0 || e.back {
					continue
				}
				x := r.Float64()
				says, found := false, false
				sc.judge(e, func(a, b float64, hid bool) {
					if n := flat(e.q).Sub(flat(e.p)).Norm(); x > a+5e-3/n && x < b-5e-3/n {
						says, found = hid, true
					}
				})
				truth, ok := sc.bruteHidden(e, x)
				if !ok || !found {
					left++
					continue
				}
				used++
				if says != truth {
					t.Errorf("seed %d view %v edge %d at %.4f: hidden %v, every triangle says %v", seed, v.Sight, i, x, says, truth)
				}
			}
		}
	}
	t.Logf("%d points judged, %d left out", used, left)
	if used < 1000 {
		t.Error("too few points")
	}
}

func (s *scene) bruteHidden(e *edge, x float64) (hid, ok bool) {
	p := e.p.Add(e.q.Sub(e.p).Mul(x))
	q := flat(p)
	ok = true
	for i := range s.tris {
		t := &s.tris[i]
		if t.solid == e.solid && (t.face == e.left || t.face == e.right) {
			continue
		}
		least := math.Inf(1)
		for k := range 3 {
			side := t.p[(k+1)%3].Sub(t.p[k])
			least = min(least, side.Cross(q.Sub(t.p[k]))/side.Norm())
		}
		over := float64(t.a*q.X) + float64(t.b*q.Y) + t.c - p.Z - hides
		switch {
		case least < -5e-3 || over < -5e-3:
		case least > 5e-3 && over > 5e-3:
			hid = true
		default:
			ok = false
		}
	}
	return hid, ok || hid
}

// The visible strokes of a scene are the same whichever order its solids come
// in, but for their numbers.
func TestOrderOfSolidsDoesNotMatter(t *testing.T) {
	length := func(d Drawing) (n float64) {
		for _, s := range d.Strokes {
			ps := s.Points(64)
			for i := range ps[1:] {
				n += ps[i+1].Sub(ps[i]).Norm()
			}
		}
		return n
	}
	v := View{Sight: at(-1, -1, -1), Up: at(0, 0, 1)}
	for seed := range uint64(5) {
		all := heap(seed, 10)
		a := length(Draw(all, v))
		for i, j := 0, len(all)-1; i < j; i, j = i+1, j-1 {
			all[i], all[j] = all[j], all[i]
		}
		if b := length(Draw(all, v)); math.Abs(a-b) > 1e-6*a {
			t.Errorf("seed %d: %.6f mm of strokes, %.6f in the other order", seed, a, b)
		}
	}
}

func BenchmarkCradle(b *testing.B) {
	all := []solid.Placed{{Solid: cradle(), Frame: vec.World}}
	v := View{Sight: at(-1, 1, -1), Up: at(0, 0, 1)}
	Draw(all, v)
	b.ReportAllocs()
	for b.Loop() {
		b.ReportMetric(float64(len(Draw(all, v).Strokes)), "strokes")
	}
}

func BenchmarkSixtyBoards(b *testing.B) {
	all := heap(1, 60)
	for _, v := range []struct {
		name string
		View
	}{
		{"iso", View{Sight: at(-1, 1, -1), Up: at(0, 0, 1)}},
		{"isoHidden", View{Sight: at(-1, 1, -1), Up: at(0, 0, 1), Hidden: true}},
		{"front", View{Sight: at(0, 1, 0), Up: at(0, 0, 1)}},
		{"top", View{Sight: at(0, 0, -1), Up: at(0, 1, 0)}},
	} {
		b.Run(v.name, func(b *testing.B) {
			Draw(all, v.View)
			for b.Loop() {
				b.ReportMetric(float64(len(Draw(all, v.View).Strokes)), "strokes")
			}
		})
	}
}
