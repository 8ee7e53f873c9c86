package polygon

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Check says what is wrong with the outline, or nil: usable numbers, some
// area, no loop that crosses itself or another, holes inside the outer loop.
// Crossings are judged on the outline flattened at 16 facets to the half
// circle; loops may touch at single points.
func (p Profile) Check() error {
	if err := p.checkVertices(); err != nil {
		return err
	}
	flats := p.Flatten(16)
	for k, f := range flats {
		if math.Abs(f.Area()) < 1e-9 {
			return fmt.Errorf("loop %d encloses no area", k)
		}
	}
	if a, b, ok := firstCrossing(flats); ok {
		return fmt.Errorf("segments %d and %d cross", a, b)
	}
	outer := Profile{Outer: p.Outer}
	for k := range p.Holes {
		if !outer.Contains(flats[k+1].inner()) {
			return fmt.Errorf("hole %d lies outside the outline", k+1)
		}
	}
	if p.Area() <= 0 {
		return errors.New("the holes take all of the outline")
	}
	return nil
}

// inner returns a point just inside the loop, beside its first chord.
func (f Flat) inner() P2 {
	a, b := f.Points[0], f.Points[1]
	side := b.Sub(a).Left().Mul(1e-4)
	if f.Area() < 0 {
		side = side.Mul(-1)
	}
	return a.Add(b).Mul(0.5).Add(side)
}

type chord struct {
	a, b    P2
	segment int32
}

// firstCrossing returns two segments of which chords properly cross.
func firstCrossing(flats []Flat) (int32, int32, bool) {
	if len(flats) == 1 && flats[0].Convex() {
		return 0, 0, false
	}
	var all []chord
	for _, f := range flats {
		for i, a := range f.Points {
			all = append(all, chord{a, f.Points[(i+1)%len(f.Points)], f.Segment[i]})
		}
	}
	slices.SortStableFunc(all, func(s, t chord) int {
		l, r := min(s.a.X, s.b.X), min(t.a.X, t.b.X)
		switch {
		case l < r:
			return -1
		case l > r:
			return 1
		}
		return 0
	})
	for i, s := range all {
		reach := max(s.a.X, s.b.X)
		for _, t := range all[i+1:] {
			if min(t.a.X, t.b.X) > reach {
				break
			}
			if cross(s, t) {
				return s.segment, t.segment, true
			}
		}
	}
	return 0, 0, false
}

// Convex says whether the loop turns left everywhere and goes round once.
func (f Flat) Convex() bool {
	n := len(f.Points)
	flips := 0
	for i, p := range f.Points {
		q, r := f.Points[(i+1)%n], f.Points[(i+2)%n]
		d, e := q.Sub(p), r.Sub(q)
		if d.Cross(e) < 0 {
			return false
		}
		if (d.X < 0 || (d.X == 0 && d.Y < 0)) != (e.X < 0 || (e.X == 0 && e.Y < 0)) {
			flips++
		}
	}
	return flips == 2
}

// cross says whether two chords cross at a point inside both, by more than a
// nanometre.
func cross(s, t chord) bool {
	apart := func(c chord, p, q P2) bool {
		d := c.b.Sub(c.a)
		n := d.Norm()
		u, v := d.Cross(p.Sub(c.a))/n, d.Cross(q.Sub(c.a))/n
		return (u > hair && v < -hair) || (u < -hair && v > hair)
	}
	return apart(s, t.a, t.b) && apart(t, s.a, s.b)
}
