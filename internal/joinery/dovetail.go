package joinery

import (
	"math/big"

	"scantling/internal/piece"
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// dovetail shares the corner of two parts out in tails of A, wider at their ends,
// and pins of B between them, from the low end of the joint's run: a half pin first
// and last. With a lap, B keeps wood before the tails' ends: half-blind. Both parts
// must come to the corner with their end grain.
//
// With tails d long, of widths a at their ends, pins of widths p at theirs, n tails,
// a lean l and A's thickness t: kept by A t d Σ(a - l), by B t (d Σp + n d l). A and
// B meet on the flanks, 2 n t √(d² + l²); between the pins on their roots, t Σ(p + 2 l)
// less l at either edge; on A's faces, d Σ(a - l); and with a lap on the tails' ends,
// t Σa.
func (w *work) dovetail(i int) {
	j := &w.joints[i]
	turn, ok := w.endGrain(j)
	if !ok || !w.tailsFit(j, turn) {
		return
	}
	o := j.meets.region
	t := j.Tails
	j.meets.run, j.meets.across = turn.run, turn.alongB
	j.meets.entry = turn.endA
	_, sign := turn.endA.Axis()
	tip, root := o.end(turn.alongA, sign > 0), o.end(turn.alongA, sign < 0)
	name := string(j.Address) + ".tail"
	at := o[turn.run].Low
	for k, pin := range t.Pins {
		next := w.ledger.Sum(name, at, pin)
		if k == len(t.Tails) {
			next = o[turn.run].High
		}
		low, high := at, next
		if k > 0 {
			low = w.ledger.Less(name, at, t.Lean)
		}
		if k < len(t.Tails) {
			high = w.ledger.Sum(name, next, t.Lean)
		}
		body := prismOf(turn.alongB, o[turn.alongB], lineOf(turn.alongB, turn.alongA,
			corner{tip, at}, corner{tip, next}, corner{root, high}, corner{root, low}))
		w.add(claim{
			joint: i, loser: j.a, keeper: j.b, kind: piece.Tail, open: turn.endA, run: turn.alongB, lies: new(touch),
		}.shaped(body, body))
		if at = next; k == len(t.Tails) {
			break
		}
		next = w.ledger.Sum(name, at, t.Tails[k])
		body = prismOf(turn.alongB, o[turn.alongB], lineOf(turn.alongB, turn.alongA,
			corner{tip, at}, corner{tip, next}, corner{root, w.ledger.Less(name, next, t.Lean)}, corner{root, w.ledger.Sum(name, at, t.Lean)}))
		w.add(claim{
			joint: i, loser: j.b, keeper: j.a, kind: piece.Pin, open: turn.endA.Opposite(), run: turn.alongB, lies: new(touch),
		}.shaped(body, body))
		at = next
	}
	w.claims[len(w.claims)-1].lies = tailContact(t, o, turn)
}

// tailsFit checks the row of tails against the corner.
func (w *work) tailsFit(j *joint, turn turning) bool {
	t := j.Tails
	o := j.meets.region
	name := string(j.Address) + ".tail"
	width := w.ledger.Less(name, o[turn.run].High, o[turn.run].Low)
	if t == nil || len(t.Tails) == 0 || len(t.Pins) != len(t.Tails)+1 || len(t.Tails) > MaxHoles {
		w.fail(j, fingersDiffer(j, piece.Figure{}, width))
		return false
	}
	if !w.flush(j, j.partA, j.partB, turn.alongA, t.Lap) || !w.flush(j, j.partB, j.partA, turn.alongB, piece.Figure{}) {
		return false
	}
	sum := w.ledger.Sum(name, append(append([]piece.Figure{}, t.Tails...), t.Pins...)...)
	if sum.Nm != width.Nm {
		w.fail(j, fingersDiffer(j, sum, width))
		return false
	}
	for _, a := range t.Tails {
		if narrow := a.Nm - 2*t.Lean.Nm; narrow < LeastTail {
			w.fail(j, noRoom(j, "joint.tail-too-narrow", narrow, LeastTail).as(CodeTails))
			return false
		}
	}
	for _, p := range t.Pins {
		if p.Nm < LeastPin {
			w.fail(j, noRoom(j, "joint.pin-too-narrow", p.Nm, LeastPin).as(CodeTails))
			return false
		}
	}
	if t.Lean.Nm <= 0 {
		w.fail(j, noRoom(j, "joint.no-lean", t.Lean.Nm, o.size(turn.alongA)).as(CodeTails))
		return false
	}
	return true
}

// The narrowest that can be cut: a tail must keep some wood at its root, and a
// blade must go between two tails. Common practice, no source.
const (
	LeastTail = proportion.LeastRoot
	LeastPin  = 3 * unit.Millimetre / 2
)

// tailContact is where the parts of a dovetail meet. Long grain meets on the flanks.
func tailContact(t *piece.Tails, o box, turn turning) *touch {
	long, thick := big.NewInt(int64(o.size(turn.alongA))), big.NewInt(int64(o.size(turn.alongB)))
	lean := big.NewInt(int64(t.Lean.Nm))
	out := new(touch)
	out.long.Set(root(long, lean, new(big.Int).Mul(big.NewInt(int64(2*len(t.Tails))), thick)))
	var tails, roots, faces unit.Length
	for _, a := range t.Tails {
		tails, faces = tails+a.Nm, faces+a.Nm-t.Lean.Nm
	}
	for k, p := range t.Pins {
		roots += p.Nm + t.Lean.Nm
		if k > 0 && k < len(t.Tails) {
			roots += t.Lean.Nm
		}
	}
	out.all.Add(&out.long, square(faces, o.size(turn.alongA)))
	out.all.Add(&out.all, square(roots, o.size(turn.alongB)))
	if t.Lap.Nm > 0 {
		out.all.Add(&out.all, square(tails, o.size(turn.alongB)))
	}
	return out
}
