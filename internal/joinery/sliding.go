package joinery

import (
	"math/big"

	"scantling/internal/piece"
)

// sliding lets a dovetail along A's end or edge slide into an undercut housing of B,
// whole or with one side square, through or stopped at one end; where it is stopped,
// A is notched. The dovetail stands in the middle of A's thickness, a half one at A's
// low face.
//
// With overlap d × t × r, a neck k, a lean l at each of n sides (two, or one) and
// stops s: kept by A d (k + n l / 2)(r - Σs), by B the rest. A and B meet on the
// flanks, √(d² + l²) (or d on a square side) times r - Σs; at the bottom
// (k + n l)(r - Σs); at the shoulders (t - k)(r - Σs); and at each stop on the
// dovetail's end and under the notch, s t.
func (w *work) sliding(i int) {
	j := &w.joints[i]
	entry, fromHigh, ok := w.enter(j)
	if !ok {
		return
	}
	main, beyond, notched, ok := w.stops(j)
	if !ok || !w.slides(j, main) {
		return
	}
	run, across := j.meets.run, j.meets.across
	name := string(j.Address) + ".dovetail"
	mouth, end := main.end(entry, fromHigh), main.end(entry, !fromHigh)
	low, high := w.neck(j, name, main)
	wideLow, wideHigh := low, w.ledger.Sum(name, high, j.Slide.Lean)
	if !j.Slide.OneSide {
		wideLow = w.ledger.Less(name, low, j.Slide.Lean)
	}
	tail := prismOf(run, main[run], lineOf(run, entry,
		corner{mouth, low}, corner{mouth, high}, corner{end, wideHigh}, corner{end, wideLow}))
	kind := piece.Housing
	if along, _ := j.partB.Frame.LocalOf(run); along == piece.AlongLength {
		kind = piece.Groove
	}
	w.add(claim{
		joint: i, loser: j.b, keeper: j.a, kind: kind, open: j.meets.entry.Opposite(), run: run,
		stops: [2]bool{j.StopLow.Nm > 0, j.StopHigh.Nm > 0}, lies: slideContact(j, main, tail, notched),
	}.shaped(w.deeper(j, name, tail, entry, fromHigh), tail))
	for _, side := range [2]bool{false, true} {
		root, tip, sign := low, wideLow, -1
		if side {
			root, tip, sign = high, wideHigh, 1
		}
		face := main.end(across, side)
		line := []corner{{mouth, face}, {end, face}, {end, tip}, {mouth, root}}
		if tip.Nm == face.Nm {
			line = []corner{{mouth, face}, {end, face}, {mouth, root}}
		}
		if root.Nm == face.Nm {
			continue
		}
		cheek := prismOf(run, main[run], lineOf(run, entry, line...))
		w.add(claim{
			joint: i, loser: j.a, keeper: j.b, kind: piece.Flank, open: piece.Toward(across, sign), run: run, lies: new(touch),
		}.shaped(cheek, cheek))
	}
	w.notchEnds(i, beyond, notched)
}

// slides checks that the dovetail has room in A and that it can be slid in: its
// housing must come out at one end at least.
func (w *work) slides(j *joint, main box) bool {
	s, across, run := j.Slide, j.meets.across, j.meets.run
	if s == nil || s.Neck.Nm <= 0 || s.Lean.Nm <= 0 {
		w.fail(j, noRoom(j, "joint.no-lean", 0, main.size(across)).as(CodeTails))
		return false
	}
	wide := s.Neck.Nm + s.Lean.Nm
	if !s.OneSide {
		wide += s.Lean.Nm
	}
	if room := main.size(across); wide > room {
		w.fail(j, noRoom(j, "joint.tail-too-thick", wide, room).as(CodeTails))
		return false
	}
	b := j.partB.Extent[run]
	if main[run].Low.Nm != b.Low.Nm && main[run].High.Nm != b.High.Nm {
		gap := min(main[run].Low.Nm-b.Low.Nm, b.High.Nm-main[run].High.Nm)
		w.fail(j, noRoom(j, "joint.no-way-to-slide", gap, 0).as(CodeTails))
		return false
	}
	return true
}

// neck returns where the neck lies across A's thickness.
func (w *work) neck(j *joint, name string, main box) (low, high piece.Figure) {
	e := main[j.meets.across]
	low = e.Low
	if !j.Slide.OneSide {
		whole := w.ledger.Less(name, e.High, e.Low)
		low = w.ledger.Sum(name, e.Low, w.ledger.Half(name, w.ledger.Less(name, whole, j.Slide.Neck)))
	}
	return low, w.ledger.Sum(name, low, j.Slide.Neck)
}

// deeper is the housing of a dovetail: with room at the bottom its walls go on at
// the same slope.
func (w *work) deeper(j *joint, name string, tail prism, entry piece.Axis, fromHigh bool) prism {
	if j.ClearDeep.Nm <= 0 {
		return tail
	}
	room := w.grow(j, tail.box, j.partB.Extent, entry, !fromHigh, j.ClearDeep)
	at, was := room.end(entry, !fromHigh), tail.box.end(entry, !fromHigh)
	d := int64(tail.box.size(entry))
	more := w.ledger.Times(name, j.Slide.Lean, int64(room.size(entry))-d, d)
	k := 0
	if section(tail.axis)[1] == entry {
		k = 1
	}
	line := make([]corner, len(tail.line))
	middle := w.ledger.Half(name, w.ledger.Sum(name, tail.box[j.meets.across].Low, tail.box[j.meets.across].High))
	for i, c := range tail.line {
		if line[i] = c; c[k].Nm != was.Nm {
			continue
		}
		line[i][k] = at
		switch {
		case c[1-k].Nm > middle.Nm:
			line[i][1-k] = w.ledger.Sum(name, c[1-k], more)
		case !j.Slide.OneSide:
			line[i][1-k] = w.ledger.Less(name, c[1-k], more)
		}
	}
	return prismOf(tail.axis, tail.box[tail.axis], line)
}

// slideContact is where the parts of a sliding dovetail meet, but for the notches of
// stopped ends.
func slideContact(j *joint, main box, tail prism, notched [2]bool) *touch {
	entry, _ := j.meets.entry.Axis()
	d, r := main.size(entry), main.size(j.meets.run)
	length := big.NewInt(int64(r))
	lean := root(big.NewInt(int64(d)), big.NewInt(int64(j.Slide.Lean.Nm)), length)
	out := new(touch)
	out.all.Add(&out.all, lean)
	if j.Slide.OneSide {
		out.all.Add(&out.all, square(d, r))
	} else {
		out.all.Add(&out.all, lean)
	}
	if j.longGrain(j.meets.across) {
		out.long.Set(&out.all)
	}
	flat := square(main.size(j.meets.across)-j.Slide.Neck.Nm, r)
	if j.ClearDeep.Nm <= 0 {
		flat.Add(flat, square(tail.box.size(j.meets.across), r))
	}
	out.all.Add(&out.all, flat)
	if j.longGrain(entry) {
		out.long.Add(&out.long, flat)
	}
	for _, at := range notched {
		if at {
			end := twiceArea(tail.line)
			out.all.Add(&out.all, end.Rsh(end, 1))
		}
	}
	return out
}
