package apart

import (
	"slices"

	"scantling/internal/geom/solid"
	"scantling/internal/geom/vec"
	"scantling/internal/joinery"
	"scantling/internal/piece"
)

// way is a direction with its opposite: along an axis of the piece, or slanting.
type way struct {
	dir     vec.V3
	axis    int // -1 for a slanting one
	frame   vec.Frame
	shadows []shadow // by part, of a slanting way; made when first needed
}

// MaxWays bounds the slanting ways that are looked at.
const MaxWays = 24

// waysOf returns up, back and right, then what tilted parts and mitres add.
func waysOf(p *piece.Piece) []way {
	out := []way{
		{dir: vec.V3{Z: 1}, axis: 2}, {dir: vec.V3{Y: 1}, axis: 1}, {dir: vec.V3{X: 1}, axis: 0},
	}
	add := func(d vec.V3) {
		n := d.Norm()
		if n < 1e-9 || len(out) >= 3+MaxWays {
			return
		}
		d = d.Mul(1 / n)
		if slices.ContainsFunc(out, func(w way) bool { return parallel(w.dir, d) }) {
			return
		}
		e := vec.V3{X: 1}
		if d.X > 0.6 || d.X < -0.6 {
			e = vec.V3{Y: 1}
		}
		u := e.Cross(d).Unit()
		out = append(out, way{dir: d, axis: -1, frame: vec.Frame{U: u, V: d.Cross(u), W: d}})
	}
	frames := map[string]vec.Frame{}
	for i := range p.Parts {
		f := p.Parts[i].Placed()
		frames[string(p.Parts[i].Address)] = f
		if p.Parts[i].Tilt != nil {
			add(f.U)
			add(f.V)
			add(f.W)
		}
	}
	for _, j := range p.Joints {
		if j.Kind != piece.MitreJoint {
			continue
		}
		// Two boards meet at a corner along their length or, in a box, their
		// thickness: every diagonal of two of their axes may be the one.
		a, b := frames[string(j.A)], frames[string(j.B)]
		add(a.U.Add(b.U))
		add(a.U.Sub(b.U))
		add(a.U.Add(a.W))
		add(a.U.Sub(a.W))
	}
	return out
}

// parallel reports whether two unit vectors lie along one line.
func parallel(a, b vec.V3) bool {
	d := a.Dot(b)
	return d > 1-1e-9 || d < -1+1e-9
}

// boundsOf returns what each joint that is held by dowels or loose tongues lets
// happen: its two parts part only along these, by their indices, the lesser first.
func boundsOf(p *piece.Piece, lowered []joinery.Lowered) map[[2]int][]vec.V3 {
	index := map[string]int{}
	frames := make([]vec.Frame, len(p.Parts))
	for i := range p.Parts {
		index[string(p.Parts[i].Address)], frames[i] = i, p.Parts[i].Placed()
	}
	joints := map[string]*piece.Joint{}
	for i := range p.Joints {
		joints[string(p.Joints[i].Address)] = &p.Joints[i]
	}
	out := map[[2]int][]vec.V3{}
	for _, l := range lowered {
		j := joints[string(l.Joint)]
		a, okA := index[string(l.A)]
		b, okB := index[string(l.B)]
		if j == nil || !okA || !okB {
			continue
		}
		pair := [2]int{min(a, b), max(a, b)}
		// Parts that are turned alike, the same turn turns what is between them.
		turn := func(d vec.V3) vec.V3 {
			local := p.Parts[a]
			local.Tilt = nil
			f := local.Placed()
			return frames[a].DirToWorld(vec.V3{X: d.Dot(f.U), Y: d.Dot(f.V), Z: d.Dot(f.W)})
		}
		switch {
		case j.Kind == piece.DowelJoint || j.Kind == piece.LooseJoint:
			out[pair] = append(out[pair], turn(alongOf(l.Entry)))
		case j.Kind == piece.MitreJoint && j.Spline != nil:
			run := alongAxis(int(l.Run))
			fa, fb := frames[a], frames[b]
			out[pair] = append(out[pair], turn(run), fa.U.Add(fb.U).Unit(), fa.U.Sub(fb.U).Unit(), fa.U.Add(fa.W).Unit(), fa.U.Sub(fa.W).Unit())
		}
	}
	return out
}

func alongOf(d piece.Direction) vec.V3 {
	a, _ := d.Axis()
	return alongAxis(int(a))
}

func alongAxis(a int) vec.V3 {
	return [3]vec.V3{{X: 1}, {Y: 1}, {Z: 1}}[a]
}

// reach returns how far everything lies from end to end, in millimetres, and more.
func reach(all []timber) float64 {
	var lo, hi vec.V3
	for i := range all {
		for k, c := range all[i].corners {
			if i == 0 && k == 0 {
				lo, hi = c, c
			}
			lo = vec.V3{X: min(lo.X, c.X), Y: min(lo.Y, c.Y), Z: min(lo.Z, c.Z)}
			hi = vec.V3{X: max(hi.X, c.X), Y: max(hi.Y, c.Y), Z: max(hi.Z, c.Z)}
		}
	}
	return min(hi.Sub(lo).Norm()+10, solid.MaxSize)
}
