package solid

import (
	"math"
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

// The glue area of a dowel in its hole is its round surface, 2πr to a length,
// however dowel and hole are turned to each other.
func TestRoundContact(t *testing.T) {
	hole := Prism{Frame: shifted(vec.World, at(50, 30, 0)), Profile: polygon.Circle(polygon.P2{}, 4), From: 5, To: 20, Sides: []Tag{7}}
	wood := Build([]Primitive{board(100, 60, 20)}, []Primitive{hole}, Options{})
	dowel := Build([]Primitive{Turned{Frame: vec.World, Profile: polygon.Rect(polygon.P2{}, polygon.P2{X: 4, Y: 40}), Sides: []Tag{9}}}, nil, Options{})
	for k := range 20 {
		a := float64(k) * 0.17
		f := vec.Frame{Origin: at(50, 30, 8), U: at(math.Cos(a), math.Sin(a), 0), V: at(-math.Sin(a), math.Cos(a), 0), W: at(0, 0, 1)}
		c := Contact(Placed{wood, vec.World}, Placed{dowel, f})
		near(t, "glue area", c.Area, 2*math.Pi*4*12, 1e-6)
		if len(c.Places) != 1 || c.Places[0].TagA != 7 || c.Places[0].TagB != 9 || !c.Places[0].Round {
			t.Errorf("places: %+v", c.Places)
		}
		near(t, "middle", c.Places[0].Middle.Z, 14, 1e-6)
	}
	// A rod in a half-round channel of its own radius touches half of it.
	channel := Prism{Frame: along(at(80, 0, 20)), Profile: polygon.RoundBottom(8, 4, 4), From: 0, To: 60}
	tray := Build([]Primitive{board(100, 60, 20)}, []Primitive{channel}, Options{})
	f := along(at(80, 10, 20))
	c := Contact(Placed{tray, vec.World}, Placed{dowel, f})
	near(t, "rod in its channel", c.Area, math.Pi*4*40, 1e-6)
}

func TestInTheWay(t *testing.T) {
	side := Build([]Primitive{Block(vec.World, vec.V3{}, at(400, 250, 18), 1)},
		[]Primitive{Block(vec.World, at(100, 0, 12), at(118, 240, 18), 2)}, Options{})
	shelf := Build([]Primitive{Block(vec.World, at(100, 0, 12), at(118, 240, 600), 3)}, nil, Options{})
	a, b := Placed{shelf, vec.World}, Placed{side, vec.World}
	for _, c := range []struct {
		name  string
		shift vec.V3
		free  bool
	}{
		{"up, out of the housing", at(0, 0, 50), true},
		{"forward, along the housing", at(0, -50, 0), true},
		{"back, into the stopped end", at(0, 50, 0), false},
		{"sideways, into the cheek", at(1, 0, 0), false},
		{"down, into the floor", at(0, 0, -5), false},
	} {
		o := InTheWay(a, b, c.shift)
		if o.Status != Verified || (o.Volume == 0) != c.free {
			t.Errorf("%s: %+v", c.name, o)
		}
	}
	// 6 deep, 18 wide: what of the side the shelf would sweep.
	near(t, "back by 5", InTheWay(a, b, at(0, 5, 0)).Volume, 5*6*18, 1e-6)
	// A dowel leaves its hole along its axis only, however it is turned.
	hole := Prism{Frame: shifted(vec.World, at(50, 30, 0)), Profile: polygon.Circle(polygon.P2{}, 4), From: 5, To: 20}
	wood := Placed{Build([]Primitive{board(100, 60, 20)}, []Primitive{hole}, Options{}), vec.World}
	rod := Build([]Primitive{Prism{Frame: vec.World, Profile: polygon.Circle(polygon.P2{}, 4), From: 5, To: 40}}, nil, Options{})
	f := vec.Frame{Origin: at(50, 30, 0), U: at(0.96, 0.28, 0), V: at(-0.28, 0.96, 0), W: at(0, 0, 1)}
	if o := InTheWay(Placed{rod, f}, wood, at(0, 0, 30)); o.Volume != 0 {
		t.Errorf("a dowel drawn from its hole: %+v", o)
	}
	if o := InTheWay(Placed{rod, f}, wood, at(2, 0, 0)); o.Volume == 0 {
		t.Error("a dowel moves sideways in its hole")
	}
}

func TestBehind(t *testing.T) {
	s := Build([]Primitive{board(100, 60, 20)}, nil, Options{})
	f := vec.Frame{Origin: at(30, 0, 0), U: at(0, 1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}
	half := s.Behind(f, 44)
	verified(t, half)
	near(t, "volume behind", half.Volume(), 30*60*20, 1e-9)
	found := false
	for _, face := range half.Faces() {
		found = found || face.Tag == 44
	}
	if !found {
		t.Error("the cut face has lost its tag")
	}
}
