package joinery

import "scantling/internal/piece"

// tongue lets a tongue along A's edge or end into a groove of B. A loses its
// shoulders beside the tongue; where the joint floats, the groove is deeper or wider
// than the tongue and A's shoulders stand off B.
//
// With overlap d × t × r, a tongue s thick, and clearances a across, b at the bottom
// and g at the shoulders: kept by A d s r, by B d (t - s) r, by neither
// (d + b)(s + a) r - d s r and g (t - s) r. A and B meet on both walls of the groove,
// 2 d r (one where a is not nought), at the bottom s r where b is nought, and over
// the shoulders (t - s) r where g is nought.
func (w *work) tongue(i int) {
	j := &w.joints[i]
	entry, fromHigh, ok := w.enter(j)
	if !ok {
		return
	}
	main, beyond, notched, ok := w.stops(j)
	if !ok {
		return
	}
	across := j.meets.across
	bodyA, bodyB := box(j.partA.Extent), box(j.partB.Extent)
	tongue, ok := w.tongueOf(j, main, bodyA)
	if !ok {
		return
	}
	kind := piece.Housing
	if along, _ := j.partB.Frame.LocalOf(j.meets.run); along == piece.AlongLength {
		kind = piece.Groove
	}
	cut := w.grow(j, tongue, bodyB, entry, !fromHigh, j.ClearDeep)
	cut = w.grow(j, cut, bodyB, across, true, j.ClearAcross)
	w.add(claim{
		joint: i, loser: j.b, keeper: j.a, cut: cut, kept: tongue, kind: kind,
		open: j.meets.entry.Opposite(), run: j.meets.run, stops: [2]bool{j.StopLow.Nm > 0, j.StopHigh.Nm > 0},
	})
	for _, high := range [2]bool{false, true} {
		kept := main.with(across, !high, tongue.end(across, high))
		kept = kept.with(across, high, main.end(across, high))
		cut := kept.with(across, high, bodyA.end(across, high))
		if !cut.solid() {
			continue
		}
		cut = w.grow(j, cut, bodyA, entry, fromHigh, j.Tongue.Gap)
		sign := -1
		if high {
			sign = 1
		}
		w.add(claim{
			joint: i, loser: j.a, keeper: j.b, cut: cut, kept: kept, kind: piece.Tongued,
			open: piece.Toward(across, sign), run: j.meets.run,
		})
	}
	w.notchEnds(i, beyond, notched)
	w.fasten(j)
}

// tongueOf is the tongue as a box. The groove must have a wall at either side.
func (w *work) tongueOf(j *joint, main, body box) (box, bool) {
	t, across := j.Tongue, j.meets.across
	if t == nil || t.Thickness.Nm <= 0 {
		w.fail(j, noRoom(j, "joint.no-tongue", 0, main.size(across)).as(CodeTongue))
		return main, false
	}
	name := string(j.Address) + ".tongue"
	low := w.ledger.Sum(name, body[across].Low, t.From)
	high := w.ledger.Sum(name, low, t.Thickness)
	wall := j.partB.Extent[across]
	room := high.Nm + j.ClearAcross.Nm
	if low.Nm < body[across].Low.Nm || high.Nm > body[across].High.Nm || low.Nm <= wall.Low.Nm || room >= wall.High.Nm {
		w.fail(j, noRoom(j, "joint.tongue-breaks-out", t.From.Nm+t.Thickness.Nm+j.ClearAcross.Nm, min(body[across].High.Nm, wall.High.Nm)-body[across].Low.Nm).as(CodeTongue))
		return main, false
	}
	return main.with(across, false, low).with(across, true, high), true
}

// notchEnds claims A's ends beyond a stopped cut, where B keeps its wood.
func (w *work) notchEnds(i int, beyond [2]box, notched [2]bool) {
	j := &w.joints[i]
	for k := range beyond {
		if notched[k] {
			w.add(claim{
				joint: i, loser: j.a, keeper: j.b, cut: beyond[k], kept: beyond[k], kind: piece.Notch,
				open: j.meets.entry, run: j.meets.across,
			})
		}
	}
}
