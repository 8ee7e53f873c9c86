package solid

import (
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// FuzzBuild cuts a board with prisms and turned bodies made from bytes: no
// panic, and what is verified has a volume between nothing and the board.
func FuzzBuild(f *testing.F) {
	f.Add([]byte{0, 0, 0, 0, 40, 4, 0, 0, 0, 40, 0, 10, 40, 40, 0, 0, 40, 200})
	f.Add([]byte{1, 20, 20, 9, 30, 3, 10, 10, 64, 20, 10, 64, 5, 5, 0})
	f.Add([]byte{2, 50, 30, 9, 30, 3, 0, 10, 64, 20, 10, 0, 5, 5, 0, 0, 50, 30, 20, 30, 3, 0, 0, 0, 10, 0, 0, 10, 10, 0})
	f.Fuzz(func(t *testing.T, raw []byte) {
		var cuts []Primitive
		for len(raw) > 6 && len(cuts) < 6 {
			head := raw[:6]
			n := min(3+int(head[5]%8), (len(raw)-6)/3)
			var l polygon.Loop
			for i := range n {
				b := raw[6+3*i:]
				l = append(l, polygon.Vertex{P2: polygon.P2{X: float64(b[0] % 64), Y: float64(b[1] % 64)}, Bulge: float64(int8(b[2])) / 96})
			}
			raw = raw[6+3*n:]
			fr := vec.World
			if head[0]&2 != 0 {
				fr = vec.Frame{U: at(0.6, 0.8, 0), V: at(-0.8, 0.6, 0), W: at(0, 0, 1)}
			}
			if head[0]&4 != 0 {
				fr.U, fr.V, fr.W = fr.V, fr.W, fr.U
			}
			fr.Origin = at(float64(head[1]%128), float64(head[2]%64), float64(head[3]%32))
			if head[0]&1 != 0 {
				cuts = append(cuts, Turned{Frame: fr, Profile: polygon.Profile{Outer: l}})
			} else {
				cuts = append(cuts, Prism{Frame: fr, Profile: polygon.Profile{Outer: l}, From: -3, To: float64(head[4] % 32)})
			}
		}
		s := Build([]Primitive{board(100, 60, 20)}, cuts, Options{Facets: 4})
		st, why := s.Status()
		if st != Verified {
			if why == "" {
				t.Fatal("unverified without a reason")
			}
			return
		}
		if v := facetedVolume(s); v < -1e-3 || v > 120000+1e-3 {
			t.Fatalf("volume %g", v)
		}
		s.Volume()
		s.Intervals(at(0, 30, 10), at(1, 0, 0))
	})
}
