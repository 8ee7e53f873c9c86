package joinery

import "scantling/internal/piece"

// mitreTenons mitres the ends of two tenons that meet in a leg, where both joints
// ask for it: each keeps the wood on its own side of the plane from the corner
// between their shoulders to the corner between their ends. It reports whether that
// settles the region that both keep. What lies beyond the plane goes over the whole
// width of a tenon.
func (w *work) mitreTenons(a, b *claim, region box) bool {
	ja, jb := &w.joints[a.joint], &w.joints[b.joint]
	for _, j := range [2]*joint{ja, jb} {
		if !j.hasTenon || !j.Tenon.Mitred {
			return false
		}
	}
	ea, wayA := ja.meets.entry.Axis()
	eb, wayB := jb.meets.entry.Axis()
	if ea == eb {
		return false
	}
	key := [2]int{min(a.joint, b.joint), max(a.joint, b.joint)}
	if w.tips[key] {
		return true
	}
	first, ok := w.mitredEnd(ja, region, wayA, eb, wayB)
	second, good := w.mitredEnd(jb, region, wayB, ea, wayA)
	if !ok || !good {
		return false
	}
	if w.tips == nil {
		w.tips = map[[2]int]bool{}
	}
	w.tips[key] = true
	w.holes = append(w.holes, first, second)
	return true
}

// mitredEnd is the cut that mitres the end of a joint's tenon, which goes its way
// along its entry; the other tenon comes along the other axis. It reports false
// where the plane would reach the part behind the shoulder.
func (w *work) mitredEnd(j *joint, region box, way int, other piece.Axis, otherWay int) (piece.Cut, bool) {
	p, name := j.partA, string(j.Address)+".mitre"
	entry, _ := j.meets.entry.Axis()
	near, far := region.end(entry, way < 0), region.end(entry, way > 0)
	from, to := region.end(other, otherWay < 0), region.end(other, otherWay > 0)
	at := func(along piece.Figure) piece.Figure {
		run := w.ledger.Less(name, along, near)
		return w.ledger.Sum(name, from, w.ledger.Times(name, run, int64(to.Nm-from.Nm), int64(far.Nm-near.Nm)))
	}
	shoulder := at(j.tenon.end(entry, way < 0))
	out := otherWay < 0 // the side from which the other tenon comes
	if face := p.Extent[other]; out && shoulder.Nm < face.High.Nm || !out && shoulder.Nm > face.Low.Nm {
		return piece.Cut{}, false
	}
	s := w.slice(p, &slope{
		off: piece.Toward(other, sign(out)), across: entry, at: [2]piece.Figure{at(p.Extent[entry].Low), at(p.Extent[entry].High)},
	})
	return piece.Cut{Kind: piece.Mitre, Part: p.Address, Joint: j.Address, With: j.B, Slice: &s, Where: j.Where}, true
}
