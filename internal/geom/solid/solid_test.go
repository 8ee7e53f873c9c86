package solid

import (
	"fmt"
	"math"
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/vec"
)

func at(x, y, z float64) vec.V3 { return vec.V3{X: x, Y: y, Z: z} }

func board(l, w, t float64) Prism { return Block(vec.World, vec.V3{}, at(l, w, t), 1) }

// near fails unless got is within tol of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.9f, want %.9f ± %g", what, got, want, tol)
	}
}

func verified(t *testing.T, s *Solid) {
	t.Helper()
	if st, why := s.Status(); st != Verified {
		t.Fatalf("unverified: %s", why)
	}
}

// along is the frame at p whose W runs along world Y and U along X.
func along(p vec.V3) vec.Frame {
	return vec.Frame{Origin: p, U: at(-1, 0, 0), V: at(0, 0, 1), W: at(0, 1, 0)}
}

func TestClosedForms(t *testing.T) {
	b := board(100, 60, 20)
	sides, caps := Whole(2)
	hole := Prism{Frame: vec.Frame{Origin: at(30, 20, 0), U: at(1, 0, 0), V: at(0, 1, 0), W: at(0, 0, 1)},
		Profile: polygon.Circle(polygon.P2{}, 5), From: 0, To: 20, Sides: sides, Caps: caps}
	housing := Block(vec.World, at(40, 0, 14), at(58, 60, 20), 3)
	channel := Prism{Frame: along(at(80, 0, 20)), Profile: polygon.RoundBottom(9.5, 4.75, 4.75), From: 0, To: 60, Sides: sides, Caps: caps}
	for _, c := range []struct {
		name         string
		cut          []Primitive
		volume, area float64
	}{
		{"board", nil, 120000, 2*(100*60+100*20+60*20) + 0},
		{"through hole", []Primitive{hole}, 120000 - math.Pi*25*20, 18400 - 2*math.Pi*25 + 2*math.Pi*5*20},
		{"housing", []Primitive{housing}, 120000 - 18*6*60, 18400 + 2*6*60 - 2*6*18},
		{"channel", []Primitive{channel}, 120000 - math.Pi*4.75*4.75/2*60, 18400 - 9.5*60 + math.Pi*4.75*60 - math.Pi*4.75*4.75},
		{"all", []Primitive{hole, housing, channel}, 120000 - math.Pi*25*20 - 18*6*60 - math.Pi*4.75*4.75/2*60, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := Build([]Primitive{b}, c.cut, Options{})
			verified(t, s)
			near(t, "volume", s.Volume(), c.volume, c.volume*1e-8)
			if c.area != 0 {
				near(t, "area", s.Area(), c.area, c.area*1e-7)
			}
		})
	}
}

func TestInterferenceAndContact(t *testing.T) {
	a := Placed{Build([]Primitive{board(100, 60, 20)}, nil, Options{}), vec.World}
	shift := func(x, y, z float64) vec.Frame {
		f := vec.World
		f.Origin = at(x, y, z)
		return f
	}
	b := Placed{a.Solid, shift(0, 0, 20)}
	if o := Interference(a, b); o.Volume != 0 || o.Status != Verified {
		t.Errorf("touching boards overlap: %+v", o)
	}
	if c := Contact(a, b); math.Abs(c.Area-6000) > 1e-6 || len(c.Places) != 1 || c.Places[0].Normal.Z < 0.99 {
		t.Errorf("contact of stacked boards: %+v", c)
	}
	b.Frame = shift(90, 10, 19.5)
	o := Interference(a, b)
	near(t, "overlap", o.Volume, 10*50*0.5, 1e-6)
	near(t, "depth", o.Depth, 0.5, 1e-9)
	if o.Where.Sub(at(95, 35, 19.75)).Norm() > 1e-6 {
		t.Errorf("where: %v", o.Where)
	}
}

func TestTurned(t *testing.T) {
	p2 := func(x, y float64) polygon.P2 { return polygon.P2{X: x, Y: y} }
	v := func(x, y, bulge float64) polygon.Vertex { return polygon.Vertex{P2: p2(x, y), Bulge: bulge} }
	for _, c := range []struct {
		name         string
		loop         polygon.Loop
		volume, area float64
	}{
		{"rod", polygon.Loop{v(0, 0, 0), v(5, 0, 0), v(5, 40, 0), v(0, 40, 0)}, math.Pi * 25 * 40, 2*math.Pi*25 + 2*math.Pi*5*40},
		{"cone", polygon.Loop{v(0, 0, 0), v(6, 0, 0), v(0, 8, 0)}, math.Pi * 36 * 8 / 3, math.Pi*36 + math.Pi*6*10},
		{"ball", polygon.Loop{v(0, -6, 1), v(0, 6, 0)}, 4. / 3 * math.Pi * 216, 4 * math.Pi * 36},
		{"ring", polygon.Loop{v(12, 0, 1), v(8, 0, 1)}, 2 * math.Pi * 10 * math.Pi * 4, 2 * math.Pi * 10 * 2 * math.Pi * 2},
		{"tube", polygon.Loop{v(3, 0, 0), v(5, 0, 0), v(5, 40, 0), v(3, 40, 0)}, math.Pi * 16 * 40, 2*math.Pi*16 + 2*math.Pi*8*40},
	} {
		s := Build([]Primitive{Turned{Frame: vec.World, Profile: polygon.Profile{Outer: c.loop}, Sides: []Tag{4}}}, nil, Options{})
		verified(t, s)
		near(t, c.name+" volume", s.Volume(), c.volume, c.volume*1e-6)
		near(t, c.name+" area", s.Area(), c.area, c.area*1e-5)
		t.Logf("%s: volume %.2e, area %.2e relative", c.name, s.Volume()/c.volume-1, s.Area()/c.area-1)
	}
	ball := Build([]Primitive{Turned{Frame: vec.World, Profile: polygon.Profile{Outer: polygon.Loop{v(0, -6, 1), v(0, 6, 0)}}}}, nil, Options{})
	got := ball.Intervals(at(-10, 3, 1), at(1, 0, 0))
	half := math.Sqrt(36 - 9 - 1)
	if len(got) != 1 || math.Abs(got[0].Enter-(10-half)) > 1e-9 || math.Abs(got[0].Leave-(10+half)) > 1e-9 {
		t.Errorf("line through the ball: %+v", got)
	}
	ring := Build([]Primitive{Turned{Frame: vec.World, Profile: polygon.Profile{Outer: polygon.Loop{v(12, 0, 1), v(8, 0, 1)}}}}, nil, Options{})
	if got := ring.Intervals(at(-20, 0, 0), at(1, 0, 0)); len(got) != 2 || math.Abs(got[1].Enter-28) > 1e-9 || math.Abs(got[1].Leave-32) > 1e-9 {
		t.Errorf("line through the ring: %+v", got)
	}
}

// Closed forms of whole boards, each within 1e-6 of the volume removed, at the
// facets of the screen and of drawings.
func TestRemovedVolumes(t *testing.T) {
	const r = 4.75
	half := math.Pi * r * r / 2
	others := 8*math.Pi*2.5*2.5*18 + 4*(9-math.Pi*9/4)*600
	for _, facets := range []int{8, 16, 32} {
		for _, through := range []bool{false, true} {
			b, c := cradle(through)
			s := Build(b, c, Options{Facets: facets})
			verified(t, s)
			length := 550.0
			if through {
				length = 600
			}
			removed := 36*half*length + others
			near(t, fmt.Sprintf("36 channels at %d facets, through %v", facets, through), 600*380*18-s.Volume(), removed, 1e-6*removed)
		}
		plain := []Primitive{board(100, 60, 20)}
		// A hole whose centre lies e beyond the edge where two boards meet: the
		// circular segment r² acos(e/r) - e √(r² - e²).
		e := 2.0
		hole := Prism{Frame: shifted(vec.World, at(50, 60+e, 0)), Profile: polygon.Circle(polygon.P2{}, 5), From: 0, To: 20}
		want := (25*math.Acos(e/5) - e*math.Sqrt(25-e*e)) * 20
		s := Build(plain, []Primitive{hole}, Options{Facets: facets})
		verified(t, s)
		near(t, fmt.Sprintf("hole on a joint line at %d facets", facets), 120000-s.Volume(), want, 1e-6*want)
		// A channel with the ends that a ball-nosed cutter leaves.
		w := vec.Frame{Origin: at(20, 30, 20), U: at(0, 1, 0), V: at(0, 0, 1), W: at(1, 0, 0)}
		ball := polygon.Profile{Outer: polygon.Loop{{P2: polygon.P2{Y: -r}, Bulge: 1}, {P2: polygon.P2{Y: r}}}}
		far := shifted(w, at(60, 0, 0))
		cut := []Primitive{
			Prism{Frame: w, Profile: polygon.RoundBottom(2*r, r, r), From: 0, To: 60},
			Turned{Frame: w, Profile: ball}, Turned{Frame: far, Profile: ball},
		}
		s = Build(plain, cut, Options{Facets: facets})
		verified(t, s)
		want = half*60 + 2*math.Pi*r*r*r/3
		near(t, fmt.Sprintf("ball ends at %d facets", facets), 120000-s.Volume(), want, 1e-6*want)
	}
}
