package solid

import (
	"strings"
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

// What strangers may ask for is bounded by counting, and refused with a reason.
func TestBounds(t *testing.T) {
	plank := []Primitive{board(1000, 1000, 18)}
	hole := func(x float64) Primitive {
		return Prism{Frame: shifted(vec.World, at(x, 5, 0)), Profile: polygon.Circle(polygon.P2{}, 1), From: 0, To: 18}
	}
	var many []Primitive
	for i := range MaxPrimitives {
		many = append(many, hole(float64(i)))
	}
	refused := func(s *Solid, word string) {
		t.Helper()
		if st, why := s.Status(); st != Unverified || !strings.Contains(why, word) {
			t.Errorf("status %v, reason %q; want a word about %q", st, why, word)
		}
	}
	refused(Build(plank, many, Options{}), "limit")
	refused(Build(plank, []Primitive{hole(1), Prism{Frame: vec.World, Profile: polygon.Polygon(make([]polygon.P2, 2000)...), To: 1}}, Options{}), "limit")
	refused(Build([]Primitive{board(2*MaxSize, 1, 1)}, nil, Options{}), "limit")
	refused(Build([]Primitive{board(0, 1, 1)}, nil, Options{}), "empty")
	skew := vec.World
	skew.V = at(0.1, 1, 0)
	refused(Build([]Primitive{Block(skew, vec.V3{}, at(1, 1, 1), 1)}, nil, Options{}), "rigid")
	left := vec.World
	left.U = at(-1, 0, 0)
	refused(Build([]Primitive{Block(left, vec.V3{}, at(1, 1, 1), 1)}, nil, Options{}), "right-handed")
	refused(Build([]Primitive{Turned{Frame: vec.World, Profile: polygon.Rect(polygon.P2{X: -1}, polygon.P2{X: 1, Y: 1})}}, nil, Options{}), "axis")
}

// A plane in which too many cuts cross is given up on after a counted amount
// of work.
func TestIntricatePlane(t *testing.T) {
	var a arrangement
	a.reset(fine, 1, 64)
	a.limit = 20_000
	row := a.row()
	setBit(a.mask(row), 0)
	for i := range 200 {
		x := float64(i)
		a.add(polygon.P2{X: x}, polygon.P2{X: x, Y: 200}, row, int32(i))
		a.add(polygon.P2{Y: x}, polygon.P2{X: 200, Y: x}, row, int32(200+i))
	}
	if a.settle() || !a.over() {
		t.Error("forty thousand crossings pass within twenty thousand steps")
	}
	if a.spent > 2*a.limit {
		t.Errorf("%d steps spent", a.spent)
	}
}
