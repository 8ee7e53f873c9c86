package operations

import (
	"math"
	"slices"

	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// Degrees is an angle as a scale on a machine shows it.
type Degrees float64

// The furthest that a mitre gauge is swung, and that a blade is tilted. Common
// practice, no source.
const (
	mostSwing Degrees = 60
	mostTilt  Degrees = 45.05
)

// Lean is how a plane that takes off an end or an edge is sawn.
type Lean struct {
	// Swing is how far the mitre gauge is turned from square and Tilt how far the
	// blade leans, both to a tenth of a degree.
	Swing, Tilt Degrees
	// Against is the edge against the gauge (or the fence, for an edge). The sawn end
	// lies at the operator's right; the blade leans away from gauge or fence, so
	// the side that lies up comes out the longer.
	Against piece.Side
	// Leads goes in first; empty where either end may.
	Leads piece.Side
	// Trails says that the edge against the gauge comes out the longer: the gauge
	// is swung so that the sawn end goes in last.
	Trails bool
	// Stop is from the other end (or from the fence) to the blade at the table,
	// along Against; without an entry where the other end is not there.
	Stop piece.Figure
	// Long and Short are the greatest and least that is left, from the other end or
	// the other edge; OverFirst and OverSecond how much the plane runs off over the
	// other two axes, in the order length, width, thickness.
	Long, Short           piece.Figure
	OverFirst, OverSecond piece.Figure
}

// plane is a slice as it lies in a part of whole size.
type plane struct {
	slice piece.Slice
	axis  piece.Local // Off's
	high  bool
	size  [2]float64 // of the other two axes
	left  [2][2]piece.Figure
}

// planeOf lays a slice out by what it leaves at the four corners, from the
// opposite side; false where it does not run over the whole section, or leaves the
// part somewhere.
func planeOf(l *ledger.Ledger, name string, s piece.Slice, w work) (plane, bool) {
	p := plane{slice: s}
	p.axis, p.high = s.Off.Axis()
	whole := w.size[p.axis]
	k := 0
	var begins [2]int // 1 where the plane is given from the high limit down
	for a := range piece.Local(3) {
		if a == p.axis {
			continue
		}
		if s.From[k].Nm > s.To[k].Nm {
			begins[k] = 1
		}
		if min(s.From[k].Nm, s.To[k].Nm) != 0 || max(s.From[k].Nm, s.To[k].Nm) != w.size[a].Nm {
			return p, false
		}
		p.size[k] = w.size[a].Nm.Millimetres()
		k++
	}
	corner := [2][2]piece.Figure{{s.At[0], s.At[2]}, {s.At[1], l.Less(name+".corner", l.Sum(name+".corner", s.At[1], s.At[2]), s.At[0])}}
	for i := range 2 {
		for j := range 2 {
			at := corner[i^begins[0]][j^begins[1]]
			if at.Nm < -unit.Micrometre || at.Nm > whole.Nm+unit.Micrometre {
				return p, false
			}
			if !p.high {
				at = l.Less(name+".left", whole, at)
			}
			p.left[i][j] = at
		}
	}
	return p, true
}

// degrees is the angle of a rise over a run, to a tenth of a degree.
func degrees(rise, run float64) Degrees {
	return Degrees(math.Round(math.Atan2(rise, run)*1800/math.Pi) / 10)
}

// lean works out how the plane is sawn with the work flat on the table.
func (p plane) lean(l *ledger.Ledger, name string) Lean {
	out := Lean{Long: p.left[0][0], Short: p.left[0][0]}
	for i := range 2 {
		for j := range 2 {
			if f := p.left[i][j]; f.Nm > out.Long.Nm {
				out.Long = f
			} else if f.Nm < out.Short.Nm {
				out.Short = f
			}
		}
	}
	over := func(a, b piece.Figure) piece.Figure {
		if b.Nm > a.Nm {
			a, b = b, a
		}
		return l.Less(name+".over", a, b)
	}
	out.OverFirst, out.OverSecond = over(p.left[0][0], p.left[1][0]), over(p.left[0][0], p.left[0][1])
	first := out.OverFirst.Nm.Millimetres() / p.size[0]
	out.Swing = degrees(first, 1)
	out.Tilt = degrees(out.OverSecond.Nm.Millimetres()/p.size[1], math.Sqrt(1+float64(first*first)))
	return out
}

// slicer tries to saw a plane off: an end with the mitre gauge, swung or with the
// blade tilted or both, an edge along the fence with the blade tilted; a taper at
// the band saw to its line. What is left over is the hand's.
func (way *Way) slicer(shop Workshop, l *ledger.Ledger, cut piece.Cut, others []piece.Cut, w work) {
	name := string(cut.Address)
	axis, _ := cut.Slice.Off.Axis()
	if axis == piece.AlongThickness || w.long {
		return
	}
	p, ok := planeOf(l, name, *cut.Slice, w)
	if !ok {
		way.taper(shop, cut, w)
		return
	}
	lean := p.lean(l, name)
	if axis == piece.AlongWidth && lean.OverFirst.Nm != 0 {
		way.taper(shop, cut, w)
		return
	}
	down, leads := p.lie(lean)
	lean.Against, lean.Leads = leads.Opposite(), leads
	if axis == piece.AlongWidth {
		lean.Against, lean.Leads = cut.Slice.Off.Opposite(), ""
	}
	table := 0
	if _, high := down.Axis(); high {
		table = 1
	}
	edge := 0
	if a, high := lean.Against.Axis(); a == piece.AlongWidth && high && axis == piece.AlongLength {
		edge = 1
	}
	lean.Trails = p.left[edge][table].Nm >= p.left[1-edge][table].Nm
	if isThere(l, others, *cut.Slice, edge, w) {
		lean.Stop = p.left[edge][table]
	} else if axis == piece.AlongWidth {
		return // nothing to run along the fence
	}
	for _, kind := range []tool.Kind{tool.TableSaw, tool.MitreSaw} {
		if kind == tool.MitreSaw && axis == piece.AlongWidth {
			return
		}
		for _, m := range shop.Of(kind) {
			if !takesLean(m, lean, axis, w) {
				continue
			}
			way.Machine, way.Kind, way.Guide, way.Down, way.Lean = m.Name, m.Kind, ByGauge, down, &lean
			if axis == piece.AlongWidth {
				way.Guide = ByFence
			}
			way.Size = l.Leaf("machine."+m.Name+".kerf", m.Kerf.Value, ledger.Bought, "")
			return
		}
	}
}

// lie chooses what lies down and goes ahead: where the blade is tilted the shorter
// face lies down; where it is not, the longer edge is against the gauge.
func (p plane) lie(n Lean) (down, leads piece.Side) {
	off := p.slice.Off
	if n.OverSecond.Nm > 0 {
		down = piece.SideOf(piece.AlongThickness, p.left[0][1].Nm < p.left[0][0].Nm)
		return down, Leads(down, off)
	}
	leads = piece.SideOf(piece.AlongWidth, p.left[0][0].Nm >= p.left[1][0].Nm)
	return cross(leads, off), leads
}

// isThere reports whether the opposite side keeps its full size on that edge at one
// of the faces, where a high stop or fence touches it, whatever other planes take.
func isThere(l *ledger.Ledger, others []piece.Cut, s piece.Slice, edge int, w work) bool {
	return !slices.ContainsFunc(others, func(c piece.Cut) bool {
		if c.Slice == nil || c.Slice.Off != s.Off.Opposite() {
			return false
		}
		q, ok := planeOf(l, string(c.Address), *c.Slice, w)
		return !ok || max(q.left[edge][0].Nm, q.left[edge][1].Nm) < w.size[q.axis].Nm
	})
}

// takesLean reports whether a saw is swung and tilted that far, and may be fed
// with the work.
func takesLean(m tool.Machine, n Lean, axis piece.Local, w work) bool {
	if n.Swing > mostSwing || n.Tilt > mostTilt || !m.Kerf.Known() {
		return false
	}
	through := unit.FromMillimetres(w.size[2].Nm.Millimetres() / math.Cos(float64(n.Tilt)*math.Pi/180))
	size := tool.Size{Length: max(w.size[0].Nm, w.size[1].Nm), Thickness: through}
	if axis == piece.AlongWidth {
		size.Length = w.size[0].Nm
	}
	return len(m.Check(size)) == 0
}

// taper takes the band saw where the work may be fed: to the line, and the rest is
// planed.
func (way *Way) taper(shop Workshop, cut piece.Cut, w work) {
	if axis, _ := cut.Slice.Off.Axis(); axis != piece.AlongWidth || cut.Slice.At[0].Nm != cut.Slice.At[2].Nm {
		return // a face, or a line that leans: sawn and planed by hand
	}
	for _, m := range shop.Of(tool.BandSaw) {
		if len(m.Check(tool.Size{Length: w.size[0].Nm, Thickness: w.size[2].Nm})) == 0 {
			way.Machine, way.Kind, way.Guide, way.Down = m.Name, m.Kind, ByTable, piece.FaceLow
			return
		}
	}
}
