package hidden

import (
	"math"
	"slices"
	"testing"

	"scantling/internal/geom/polygon"
	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
)

func at(x, y, z float64) vec.V3 { return vec.V3{X: x, Y: y, Z: z} }

func plate(holes ...solid.Primitive) *solid.Solid {
	return solid.Build([]solid.Primitive{solid.Block(vec.World, vec.V3{}, at(100, 60, 20), 1)}, holes, solid.Options{})
}

func hole(x, y, r float64) solid.Primitive {
	f := vec.World
	f.Origin = at(x, y, 0)
	sides, caps := solid.Whole(2)
	return solid.Prism{Frame: f, Profile: polygon.Circle(polygon.P2{}, r), From: 0, To: 20, Sides: sides, Caps: caps}
}

func count(d Drawing, want func(Stroke) bool) int {
	n := 0
	for _, s := range d.Strokes {
		if want(s) {
			n++
		}
	}
	return n
}

func TestTopView(t *testing.T) {
	all := []solid.Placed{{Solid: plate(hole(30, 20, 5)), Frame: vec.World}}
	d := Draw(all, View{Sight: at(0, 0, -1), Up: at(0, 1, 0), Hidden: true})
	if n := count(d, func(s Stroke) bool { return s.Kind == Line }); n != 4 {
		t.Errorf("%d lines, want the outline's 4: %+v", n, d.Strokes)
	}
	if n := count(d, func(s Stroke) bool { return s.Kind == Arc }); n != 1 {
		t.Fatalf("%d arcs, want the hole's circle: %+v", n, d.Strokes)
	}
	for _, s := range d.Strokes {
		if s.Hidden {
			t.Errorf("hidden stroke in a top view: %+v", s)
		}
		if s.Kind == Arc {
			if math.Abs(s.Sweep-2*math.Pi) > 1e-9 || s.Centre.Sub(polygon.P2{X: 30, Y: 20}).Norm() > 1e-9 ||
				math.Abs(s.Major.Norm()-5) > 1e-9 || math.Abs(s.Minor.Norm()-5) > 1e-9 || s.Tags != [2]solid.Tag{1, 2} {
				t.Errorf("the hole is drawn as %+v", s)
			}
		}
	}
}

// The front view of a plate with a hole across it shows the hole as two hidden
// lines, where its round face turns away.
func TestFrontViewHidesTheHole(t *testing.T) {
	all := []solid.Placed{{Solid: plate(hole(30, 20, 5)), Frame: vec.World}}
	d := Draw(all, View{Sight: at(0, 1, 0), Up: at(0, 0, 1), Hidden: true})
	if n := count(d, func(s Stroke) bool { return !s.Hidden }); n != 4 {
		t.Errorf("%d visible strokes, want 4: %+v", n, d.Strokes)
	}
	var xs []float64
	for _, s := range d.Strokes {
		if s.Hidden {
			xs = append(xs, s.From.X)
			if !s.Outline || math.Abs(s.From.X-s.To.X) > 1e-9 {
				t.Errorf("hidden stroke %+v", s)
			}
		}
	}
	slices.Sort(xs)
	if len(xs) != 2 || math.Abs(xs[0]-25) > 1e-9 || math.Abs(xs[1]-35) > 1e-9 {
		t.Errorf("hidden lines at %v, want 25 and 35", xs)
	}
}

func TestOneBoardHidesAnother(t *testing.T) {
	f := vec.World
	f.Origin = at(50, 30, 40)
	all := []solid.Placed{{Solid: plate(), Frame: vec.World}, {Solid: plate(), Frame: f}}
	d := Draw(all, View{Sight: at(0, 0, -1), Up: at(0, 1, 0)})
	var below, above float64
	for _, s := range d.Strokes {
		l := s.To.Sub(s.From).Norm()
		if s.Solid == 0 {
			below += l
		} else {
			above += l
		}
	}
	if math.Abs(above-320) > 1e-6 || math.Abs(below-(320-50-30)) > 2e-3 {
		t.Errorf("visible lengths %.6f above and %.6f below; want 320 and 240", above, below)
	}
}

func TestIsometricRing(t *testing.T) {
	all := []solid.Placed{{Solid: plate(hole(50, 30, 20)), Frame: vec.World}}
	d := Draw(all, View{Sight: at(-1, -1, -1), Up: at(0, 0, 1)})
	arcs := 0
	for _, s := range d.Strokes {
		if s.Kind == Arc {
			arcs++
			// A circle of radius 20 seen along (1,1,1): half axes 20 and 20/√3.
			if math.Abs(s.Major.Norm()-20) > 1e-6 || math.Abs(s.Minor.Norm()-20/math.Sqrt(3)) > 1e-6 {
				t.Errorf("half axes %.6f and %.6f", s.Major.Norm(), s.Minor.Norm())
			}
		}
	}
	if arcs != 2 {
		t.Errorf("%d arcs, want the whole upper rim and what shows of the lower", arcs)
	}
}
