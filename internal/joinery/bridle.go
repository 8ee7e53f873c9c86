package joinery

import "scantling/internal/piece"

// bridle lets a tenon as wide as A into a slot that is open at B's end: A's end at
// the corner of a frame, or its middle over the end of a post. A loses a cheek on
// either side, B the slot between them.
//
// With overlap d × t × r and a tenon t' thick: kept by A d t' r, by B d (t - t') r.
// A and B meet on the tenon's flats, 2 d r where both sides have cheeks; at the
// slot's bottom, and where B's fork stands against A's shoulders.
func (w *work) bridle(i int) {
	j := &w.joints[i]
	j.layFlat()
	m, o, t := j.meets, j.meets.region, j.Tenon
	if t == nil || t.Thickness.Nm <= 0 {
		w.fail(j, tenonFault(j, "joint.no-tenon", 0, j.partA.Thickness.Nm))
		return
	}
	whole := j.partA.Extent[m.across].Size()
	end, _ := j.partB.Frame.Length.Axis()
	grain, _ := j.partA.Frame.Length.Axis()
	b := j.partB.Extent[end]
	switch {
	case end == grain || end == m.across:
		w.fail(j, fault{CodeGrain, "joint.bridle-in-a-line", pairArgs(j.Joint)})
	case o.size(m.across) < whole:
		w.fail(j, tenonFault(j, "joint.tenon-overhangs", whole-o.size(m.across), whole))
	case t.From.Nm < 0 || t.From.Nm+t.Thickness.Nm > whole:
		w.fail(j, tenonFault(j, "joint.tenon-too-thick", t.From.Nm+t.Thickness.Nm, whole))
	case o[end].Low.Nm != b.Low.Nm && o[end].High.Nm != b.High.Nm:
		w.fail(j, tenonFault(j, "joint.bridle-needs-end", min(o[end].Low.Nm-b.Low.Nm, b.High.Nm-o[end].High.Nm), 0))
	}
	if j.failed {
		return
	}
	name := string(j.Address) + ".tenon"
	bar := w.moved(name, o, m.across, false, t.From)
	bar = bar.with(m.across, true, w.ledger.Sum(name, bar[m.across].Low, t.Thickness))
	body := j.partB.Extent[m.across]
	if bar[m.across].Low.Nm <= body.Low.Nm || bar[m.across].High.Nm >= body.High.Nm {
		w.fail(j, tenonFault(j, "joint.bridle-no-fork", min(bar[m.across].Low.Nm-body.Low.Nm, body.High.Nm-bar[m.across].High.Nm), 0))
		return
	}
	j.tenon = bar
	w.add(claim{
		joint: i, loser: j.b, keeper: j.a, cut: bar, kept: bar, kind: piece.Notch,
		open: endAt(j.partB, o), run: 3 - end - m.across,
	})
	w.cheeks(i, o, bar, acrossGrain(j.partA, m.across))
	w.fasten(j)
}

// layFlat turns the meeting so that A does not enter by its thickness.
func (j *joint) layFlat() {
	entry, _ := j.meets.entry.Axis()
	thick, _ := j.partA.Frame.Thickness.Axis()
	if entry != thick {
		return
	}
	length, _ := j.partA.Frame.Length.Axis()
	j.meets.entry, j.meets.across, j.meets.run = piece.Toward(length, 1), thick, 3-length-thick
}
