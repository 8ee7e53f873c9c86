package joinery

import (
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// driving is how fasteners go in: through first into second, spread along one
// axis, in the middle of the region along another.
type driving struct {
	first, second *piece.Part
	way           piece.Direction
	spread, mid   piece.Axis
}

// drive decides from where fasteners are driven: where parts touch, through the
// one whose thickness is crossed (A first); into a rebate, through A into the
// step's wall; into a housing or groove, through B into A's end; into a halving,
// through A's half; into a mitre, through A's outer face; into a tongue, through B's
// face; pegs right across a tenon or a bridle, through B and the tenon. Fingers, tails
// and parts edge to edge take none.
func (j *joint) drive() (driving, bool) {
	m := j.meets
	entry, _ := m.entry.Axis()
	d := driving{first: j.partA, second: j.partB, way: m.entry, spread: m.run, mid: m.across}
	switch j.Kind {
	case piece.ButtJoint, piece.DowelJoint:
		thickA, _ := j.partA.Frame.Thickness.Axis()
		thickB, _ := j.partB.Frame.Thickness.Axis()
		if thickA != m.normal && thickB == m.normal {
			d.first, d.second, d.way = j.partB, j.partA, m.entry.Opposite()
		}
	case piece.RebateJoint:
		open := m.region[m.across].High.Nm == j.partB.Extent[m.across].High.Nm
		d.way, d.mid = piece.Toward(m.across, 1), entry
		if open {
			d.way = d.way.Opposite()
		}
	case piece.TenonJoint, piece.BridleJoint:
		d.first, d.second, d.way, d.mid = j.partB, j.partA, piece.Toward(m.across, 1), entry
	case piece.HousingJoint, piece.GrooveJoint:
		d.first, d.second, d.way = j.partB, j.partA, m.entry.Opposite()
	case piece.HalvingJoint:
		d.spread, d.mid = (entry+1)%3, (entry+2)%3
		if m.region.size(d.mid) > m.region.size(d.spread) {
			d.spread, d.mid = d.mid, d.spread
		}
	case piece.MitreJoint: // through A's outer face into B
		sign := sense(j.partB.Extent[m.across].Low.Nm < j.partA.Extent[m.across].Low.Nm)
		d.way, d.mid = piece.Toward(m.across, -sign), entry
	case piece.TongueJoint: // through B's face into A's end or edge; not through its width
		thick, _ := j.partB.Frame.Thickness.Axis()
		d.first, d.second, d.way = j.partB, j.partA, m.entry.Opposite()
		return d, thick == entry
	default:
		return d, false
	}
	return d, true
}

// fasten checks that the joint's fasteners have room and bores their pilot
// holes, if they want any: through the first part and on into the second.
func (w *work) fasten(j *joint) {
	f := j.Fasteners
	if f == nil || f.Count < 1 || j.failed {
		return
	}
	d, ok := j.drive()
	if !ok {
		if f.Pilot.Nm > 0 {
			w.fail(j, noRoom(j, "joint.no-way-in", f.Pilot.Nm, 0))
		}
		return
	}
	wide := widest(f)
	at, ok := w.row(j, d.spread, f.Count, f.Margin, wide)
	if !ok || wide.Nm <= 0 {
		return
	}
	mid := w.middle(j, d.mid)
	depth, ok := w.pilotDepth(j, d)
	if !ok || !w.headFits(j, d, mid.Nm) {
		return
	}
	axis, _ := d.way.Axis()
	through := f.Clearance
	if through.Nm <= 0 {
		through = f.Pilot
	}
	for k, x := range at {
		spot := [3]piece.Figure{}
		spot[d.spread], spot[d.mid] = x, mid
		if along := d.frees(); f.Slot.Nm > 0 && (along != d.spread || 2*k+1 != len(at)) {
			w.slotHole(j, d, spot, along, through)
		} else {
			w.bore(j, d.first, d.way.Opposite(), spot, through, w.along(d.first, axis)).Sink = f.Sink
		}
		if f.Pilot.Nm > 0 {
			w.bore(j, d.second, d.way.Opposite(), spot, f.Pilot, depth)
		}
	}
}

// pilotDepth works out how deep pilot holes go into the second part.
func (w *work) pilotDepth(j *joint, d driving) (piece.Figure, bool) {
	f := j.Fasteners
	if f.Pilot.Nm <= 0 {
		return piece.Figure{}, true
	}
	axis, sign := d.way.Axis()
	if j.pegged() {
		return w.along(d.second, axis), w.pegsMeetTenon(j, d)
	}
	start := d.first.Extent[axis].Low
	name := string(j.Address) + ".pilot"
	var depth piece.Figure
	if sign > 0 {
		depth = w.ledger.Less(name, w.ledger.Sum(name, start, f.Depth), d.second.Extent[axis].Low)
	} else {
		start = d.first.Extent[axis].High
		depth = w.ledger.Less(name, d.second.Extent[axis].High, w.ledger.Less(name, start, f.Depth))
	}
	size := d.second.Extent[axis].Size()
	switch {
	case depth.Nm <= 0:
		w.fail(j, noRoom(j, "joint.pilot-too-short", f.Depth.Nm, d.first.Extent[axis].Size()))
	case f.Clearance.Nm > 0 && depth.Nm >= size:
		w.fail(j, noRoom(j, "joint.screw-comes-out", depth.Nm, size))
	}
	return depth, !j.failed
}

// pegged reports whether the joint's fasteners are pegs across a tenon: they go
// right through, whatever their length.
func (j *joint) pegged() bool { return j.Kind == piece.TenonJoint || j.Kind == piece.BridleJoint }

// pegsMeetTenon checks that a row of pegs lies in the tenon, not in its shoulders.
func (w *work) pegsMeetTenon(j *joint, d driving) bool {
	f, r := j.Fasteners, j.meets.region[d.spread]
	low, high := j.tenon[d.spread].Low.Nm-r.Low.Nm, r.High.Nm-j.tenon[d.spread].High.Nm
	if least := max(low, high) + f.Pilot.Nm/2; f.Count > 1 && f.Margin.Nm < least {
		w.fail(j, noRoom(j, "joint.peg-beside-tenon", f.Margin.Nm, least))
		return false
	}
	return true
}

// widest is the widest hole that a fastener asks for.
func widest(f *piece.Fasteners) piece.Figure {
	out := f.Pilot
	if f.Clearance.Nm > out.Nm {
		out = f.Clearance
	}
	if f.Sink != nil && f.Sink.Diameter.Nm > out.Nm {
		out = f.Sink.Diameter
	}
	return out
}

// headFits checks that the holes in a line keep within both parts.
func (w *work) headFits(j *joint, d driving, line unit.Length) bool {
	f := j.Fasteners
	axis, _ := d.way.Axis()
	if thick := d.first.Extent[axis].Size(); f.Sink != nil && f.Sink.Depth.Nm >= thick {
		w.fail(j, noRoom(j, "joint.sink-too-deep", f.Sink.Depth.Nm, thick))
		return false
	}
	for k, p := range [2]*piece.Part{d.first, d.second} {
		wide := [2]piece.Figure{widest(f), f.Pilot}[k].Nm
		e := p.Extent[d.mid]
		if room := 2 * min(line-e.Low.Nm, e.High.Nm-line); wide > room {
			w.fail(j, noRoom(j, "joint.hole-too-wide", wide, room))
			return false
		}
	}
	return true
}

// row places count things along an axis of the joint: the first a margin from
// its low end, the last a margin from its high end, the rest shared between.
func (w *work) row(j *joint, along piece.Axis, count int, margin, thick piece.Figure) ([]piece.Figure, bool) {
	r := j.meets.region[along]
	if count > MaxHoles {
		w.fail(j, fault{CodeHoles, "joint.too-many-holes", append(pairArgs(j.Joint), message.Count("count", count), message.Count("limit", MaxHoles))})
		return nil, false
	}
	if count == 1 {
		return []piece.Figure{w.middle(j, along)}, true
	}
	name := string(j.Address) + ".place"
	first, last := w.ledger.Sum(name, r.Low, margin), w.ledger.Less(name, r.High, margin)
	if margin.Nm < thick.Nm/2 || last.Nm-first.Nm < thick.Nm*unit.Length(count-1) || last.Nm <= first.Nm {
		w.fail(j, noRoom(j, "joint.no-room-for-row", margin.Nm*2+thick.Nm*unit.Length(count-1), r.Size()))
		return nil, false
	}
	span := w.ledger.Less(name, last, first)
	out := make([]piece.Figure, count)
	for k := range out {
		switch k {
		case 0:
			out[k] = first
		case count - 1:
			out[k] = last
		default:
			out[k] = w.ledger.Sum(name, first, w.ledger.Times(name, span, int64(k), int64(count-1)))
		}
	}
	return out, true
}

// MaxHoles bounds the holes of one joint.
const MaxHoles = 500

// middle returns the middle of the joint's region along an axis.
func (w *work) middle(j *joint, a piece.Axis) piece.Figure {
	name := string(j.Address) + ".middle"
	r := j.meets.region[a]
	return w.ledger.Half(name, w.ledger.Sum(name, r.Low, r.High))
}

// along returns the part's size along an axis of the piece.
func (w *work) along(p *piece.Part, a piece.Axis) piece.Figure {
	local, _ := p.Frame.LocalOf(a)
	return p.Sizes()[local]
}

// bore files a hole in a part from the side that faces a direction and returns it;
// spot gives its centre along the two other axes of the piece.
func (w *work) bore(j *joint, p *piece.Part, open piece.Direction, spot [3]piece.Figure, diameter, depth piece.Figure) *piece.Bore {
	axis, _ := open.Axis()
	size := w.along(p, axis)
	b := piece.Bore{Open: p.Frame.SideToward(open), Diameter: diameter, Depth: depth}
	if depth.Nm >= size.Nm {
		b.Depth, b.Through = size, true
	}
	k := 0
	for _, d := range p.Frame.Directions() {
		a, sign := d.Axis()
		if a == axis {
			continue
		}
		name := string(p.Address) + ".hole"
		if sign > 0 {
			b.At[k] = w.ledger.Less(name, spot[a], p.Extent[a].Low)
		} else {
			b.At[k] = w.ledger.Less(name, p.Extent[a].High, spot[a])
		}
		k++
	}
	with := j.A
	if p == j.partA {
		with = j.B
	}
	w.holes = append(w.holes, piece.Cut{
		Kind: piece.Hole, Part: p.Address, Joint: j.Address, With: with, Bore: &b, Where: j.Where,
	})
	return &b
}
