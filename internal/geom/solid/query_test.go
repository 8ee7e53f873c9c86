package solid

import (
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

func TestSection(t *testing.T) {
	sides, caps := Whole(2)
	hole := Prism{Frame: vec.Frame{Origin: at(30, 20, 0), U: at(1, 0, 0), V: at(0, 1, 0), W: at(0, 0, 1)},
		Profile: polygon.Rect(polygon.P2{X: -5, Y: -5}, polygon.P2{X: 5, Y: 5}), From: 0, To: 20, Sides: sides, Caps: caps}
	s := Build([]Primitive{board(100, 60, 20)}, []Primitive{hole}, Options{})
	f := vec.World
	f.Origin.Z = 10
	r, why := Section(Placed{s, vec.World}, f)
	if why != "" || len(r) != 1 || len(r[0].Holes) != 1 {
		t.Fatalf("section: %q %+v", why, r)
	}
	near(t, "area", r[0].Area(), 6000-100, 1e-9)
	for _, tag := range r[0].Holes[0].Tags {
		if tag != 2 {
			t.Errorf("a side of the hole has tag %d", tag)
		}
	}
	// A plane in a face shows the wood behind it; one beyond shows nothing.
	f.Origin.Z = 20
	if r, _ := Section(Placed{s, vec.World}, f); len(r) != 1 {
		t.Errorf("plane in the top face: %d regions", len(r))
	}
	f.Origin.Z = 0
	if r, _ := Section(Placed{s, vec.World}, f); len(r) != 0 {
		t.Errorf("plane in the bottom face: %d regions", len(r))
	}
	// Through the hole, upright: two pieces.
	f = vec.Frame{Origin: at(30, 0, 0), U: at(0, 1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}
	if r, _ := Section(Placed{s, vec.World}, f); len(r) != 2 {
		t.Errorf("through the hole: %d regions", len(r))
	}
}

func TestDistance(t *testing.T) {
	s := Build([]Primitive{board(100, 60, 20)}, nil, Options{})
	for _, c := range []struct {
		o    vec.V3
		want float64
	}{
		{at(0, 0, 20), 0}, {at(0, 0, 25), 5}, {at(103, 64, 20), 5}, {at(103, 64, 32), 13}, {at(5, 5, 5), 0},
	} {
		f := vec.World
		f.Origin = c.o
		near(t, "distance", Distance(Placed{s, vec.World}, Placed{s, f}).Distance, c.want, 1e-9)
	}
	// One inside the hollow of another, and one swallowed whole.
	small := Build([]Primitive{board(2, 2, 2)}, nil, Options{})
	f := vec.World
	f.Origin = at(40, 20, 8)
	near(t, "swallowed", Distance(Placed{small, f}, Placed{s, vec.World}).Distance, 0, 0)
}

func TestHands(t *testing.T) {
	notch := func(x, y float64) Primitive { return Block(vec.World, at(x, y, 10), at(x+10, y+20, 20), 5) }
	plain := Build([]Primitive{board(100, 60, 20)}, []Primitive{notch(0, 20)}, Options{})
	if plain.Handed() {
		t.Error("a notch in the middle of an end has no hand")
	}
	// Through the thickness a corner notch can be turned over; stopped it cannot.
	handed := Build([]Primitive{board(100, 60, 20)}, []Primitive{notch(0, 0)}, Options{})
	if !handed.Handed() {
		t.Error("a stopped notch in one corner has a hand")
	}
	through := Build([]Primitive{board(100, 60, 20)}, []Primitive{Block(vec.World, at(0, 0, 0), at(10, 20, 20), 5)}, Options{})
	if through.Handed() {
		t.Error("a through notch in one corner can be turned over")
	}
	other := Build([]Primitive{board(100, 60, 20)}, []Primitive{notch(90, 40)}, Options{})
	if f, ok := Same(handed, other); !ok || f.U.X != -1 {
		t.Errorf("turned half round: %v %v", f, ok)
	}
	if _, ok := Same(plain, handed); ok {
		t.Error("different notches count as the same")
	}
	near(t, "mirror keeps volume", handed.Mirrored().Volume(), handed.Volume(), 1e-6)
}
