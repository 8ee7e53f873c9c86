package joinery

import (
	"math"

	"scantling/internal/geom/polygon"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// reach is a box in local coordinates: by length, width and thickness.
type reach struct{ lo, hi [3]unit.Length }

// inwards limits the box to a depth from a side.
func (r *reach) inwards(s piece.Side, depth unit.Length) {
	a, high := s.Axis()
	if high {
		r.lo[a] = r.hi[a] - depth
	} else {
		r.hi[a] = depth
	}
}

// Limits returns the local box around what a cut takes, false where it takes
// nothing or is none.
func Limits(p *piece.Part, c *piece.Cut) (lo, hi [3]unit.Length, ok bool) {
	size := p.Sizes()
	r := reach{hi: [3]unit.Length{size[0].Nm, size[1].Nm, size[2].Nm}}
	switch {
	case c.Slot != nil:
		s := c.Slot
		if open, _ := s.Open.Axis(); open == s.Run || s.Run < piece.AlongLength || s.Run > piece.AlongThickness {
			return lo, hi, false
		}
		r.inwards(s.Open, s.Depth.Nm)
		r.lo[s.Run], r.hi[s.Run] = s.From.Nm, s.To.Nm
		// An undercut wall reaches beyond its mouth.
		r.lo[s.Across()] = s.Near.Nm + min(s.LeanNear.Nm, 0)
		r.hi[s.Across()] = s.Far.Nm - min(s.LeanFar.Nm, 0)
	case c.Bore != nil:
		r.hole(c.Bore)
	case c.Dip != nil:
		r.inwards(c.Dip.Open, c.Dip.Depth.Nm)
		along := piece.AlongLength
		if open, _ := c.Dip.Open.Axis(); open == piece.AlongLength {
			along = piece.AlongWidth
		}
		half := (c.Dip.Chord.Nm + 1) / 2
		r.lo[along], r.hi[along] = c.Dip.Centre.Nm-half, c.Dip.Centre.Nm+half
	case c.Ease != nil:
		a, _ := c.Ease.Sides[0].Axis()
		b, _ := c.Ease.Sides[1].Axis()
		if a == b {
			return lo, hi, false
		}
		for _, s := range c.Ease.Sides {
			r.inwards(s, c.Ease.Radius.Nm)
		}
		if c.Ease.From.Nm != 0 || c.Ease.To.Nm != 0 {
			along := 3 - a - b
			r.lo[along], r.hi[along] = c.Ease.From.Nm, c.Ease.To.Nm
		}
	case c.Slice != nil:
		if !r.beyond(c.Slice) {
			return lo, hi, false
		}
	case c.Pocket != nil:
		r.pocket(c.Pocket)
	default:
		return lo, hi, false
	}
	return r.lo, r.hi, true
}

func (r *reach) hole(b *piece.Bore) {
	open, _ := b.Open.Axis()
	depth, d := b.Depth.Nm, b.Diameter.Nm
	if b.Sink != nil {
		depth, d = max(depth, b.Sink.Depth.Nm), max(d, b.Sink.Diameter.Nm)
	}
	if !b.Through {
		r.inwards(b.Open, depth)
	}
	half := (d + 1) / 2
	k := 0
	for a := range r.lo {
		if piece.Local(a) != open {
			r.lo[a], r.hi[a] = b.At[k].Nm-half, b.At[k].Nm+half
			k++
		}
	}
}

func (r *reach) pocket(k *piece.Pocket) {
	open, _ := k.Open.Axis()
	if !k.Through {
		r.inwards(k.Open, min(k.Depth.Nm, r.hi[open]))
	}
	if len(k.Outline) == 0 {
		return
	}
	loop := make(polygon.Loop, len(k.Outline))
	for i, v := range k.Outline {
		loop[i] = polygon.Vertex{P2: polygon.P2{X: v.Along.Nm.Millimetres(), Y: v.Across.Nm.Millimetres()}, Bulge: v.Bulge}
	}
	low, high := polygon.Profile{Outer: loop}.Bounds()
	n := 0
	for a := range r.lo {
		if piece.Local(a) == open {
			continue
		}
		l, h := low.X, high.X
		if n == 1 {
			l, h = low.Y, high.Y
		}
		r.lo[a], r.hi[a] = unit.FromMillimetres(l)-1, unit.FromMillimetres(h)+1
		n++
	}
}

// beyond limits the box to what lies beyond a slice's plane, false where nothing
// does or the stations fix no plane. Along Off's axis the plane stands at
// At[0] + s (x - From[0]) + t (y - From[1]).
func (r *reach) beyond(c *piece.Slice) bool {
	off, high := c.Off.Axis()
	var plan [2]int
	n := 0
	for a := range r.lo {
		if piece.Local(a) != off {
			plan[n] = a
			n++
		}
	}
	if c.From[0].Nm == c.To[0].Nm || c.From[1].Nm == c.To[1].Nm {
		return false
	}
	var slope [2]float64
	for k := range slope {
		slope[k] = float64(c.At[k+1].Nm-c.At[0].Nm) / float64(c.To[k].Nm-c.From[k].Nm)
	}
	at := func(x, y unit.Length) float64 {
		return float64(c.At[0].Nm) + float64(slope[0]*float64(x-c.From[0].Nm)) + float64(slope[1]*float64(y-c.From[1].Nm))
	}
	sign, side := 1.0, float64(r.hi[off])
	if !high {
		sign, side = -1, float64(r.lo[off])
	}
	// The corner of the plan at which the plane cuts deepest.
	var deep [2]unit.Length
	for k, a := range plan {
		if deep[k] = r.lo[a]; sign*slope[k] < 0 {
			deep[k] = r.hi[a]
		}
	}
	depth := sign * (side - at(deep[0], deep[1]))
	if !(depth > 0) {
		return false
	}
	r.inwards(c.Off, min(unit.Length(math.Ceil(min(depth, 1e15)))+1, r.hi[off]))
	// Away from that corner the plane leaves the part.
	for k, a := range plan {
		if slope[k] == 0 {
			continue
		}
		run := unit.Length(math.Ceil(min(depth/math.Abs(slope[k]), 1e15))) + 1
		if deep[k] == r.lo[a] {
			r.hi[a] = min(r.hi[a], deep[k]+run)
		} else {
			r.lo[a] = max(r.lo[a], deep[k]-run)
		}
	}
	return true
}
