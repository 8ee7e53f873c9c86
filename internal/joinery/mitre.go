package joinery

import (
	"math/big"

	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// mitred is a mitre as it lies: A comes along one axis, B along another, and the
// plane goes from the inner corner to the outer one all along the third.
type mitred struct {
	alongA, alongB, run piece.Axis
	wayA, wayB          piece.Direction // in which A and B end
	// in and out are the corner's places along alongA and alongB.
	in, out corner
	// wideA and wideB are the sizes of the overlap along alongA and alongB.
	wideA, wideB piece.Figure
}

// mitre cuts both parts off along the plane from the inner to the outer corner of
// their overlap: at the half angle where they are equally wide, else at the angle
// that brings both corners together. A spline or keys may go across.
//
// With overlap a × b × r and the mitre's length D = √(a² + b²): kept by A and by B
// a b r / 2 each; A and B meet over D r. A spline s thick that goes e into each part
// takes 2 e s r away from both (2 e s D in a frame, where it lies flat) and s r
// (s D) from where they meet; a key s thick and e deep takes e² D² s / (2 a b), and
// e s.
func (w *work) mitre(i int) {
	j := &w.joints[i]
	m, ok := w.mitred(j)
	if !ok {
		return
	}
	o := j.meets.region
	j.meets.run, j.meets.across, j.meets.entry = m.run, m.alongB, m.wayA
	j.neither = new(big.Int)
	meets := new(touch)
	a, b := big.NewInt(int64(m.wideA.Nm)), big.NewInt(int64(m.wideB.Nm))
	meets.all.Set(root(a, b, big.NewInt(int64(o.size(m.run)))))
	for _, side := range [2]bool{true, false} {
		loser, keeper, way, across := j.a, j.b, m.wayA, m.alongB
		corners := []corner{m.in, m.out, {m.out[0], m.in[1]}}
		low, high := m.in[0], m.out[0] // where the plane crosses, at the inner and the outer face
		_, sign := m.wayB.Axis()
		if !side {
			loser, keeper, way, across = j.b, j.a, m.wayB, m.alongA
			corners = []corner{m.in, m.out, {m.in[0], m.out[1]}}
			low, high = m.in[1], m.out[1]
			_, sign = m.wayA.Axis()
		}
		if sign < 0 {
			low, high = high, low
		}
		off, _ := way.Axis()
		kind := piece.Bevel
		if local, _ := w.piece.Parts[loser].Frame.LocalOf(off); local == piece.AlongLength {
			kind = piece.Mitre
		}
		body := prismOf(m.run, o[m.run], lineOf(m.run, m.alongA, corners...))
		c := claim{
			joint: i, loser: loser, keeper: keeper, kind: kind, open: way, run: m.run, lies: new(touch),
			slope: &slope{off: way, across: across, at: [2]piece.Figure{low, high}},
		}.shaped(body, body)
		if side {
			c.lies = meets
		}
		w.add(c)
	}
	switch {
	case j.Spline != nil && w.flat(j, m):
		w.flatSpline(i, m, meets)
	case j.Spline != nil:
		w.spline(i, m, meets)
	}
	if j.Keys != nil {
		w.keys(i, m, meets)
	}
	if j.longGrain(m.alongA) && j.longGrain(m.alongB) {
		meets.long.Set(&meets.all)
	}
	w.fasten(j)
}

// mitred finds how two parts come to a mitre: both end flush with each other's
// outer face, and are alike along the mitre.
func (w *work) mitred(j *joint) (mitred, bool) {
	var m mitred
	seen := 0
	ea, eb := j.partA.Extent, j.partB.Extent
	for _, a := range axes {
		switch {
		case comesTo(ea[a], eb[a]):
			m.alongA, m.wayA = a, piece.Toward(a, sense(ea[a].Low.Nm < eb[a].Low.Nm))
			seen |= 1
		case comesTo(eb[a], ea[a]):
			m.alongB, m.wayB = a, piece.Toward(a, sense(eb[a].Low.Nm < ea[a].Low.Nm))
			seen |= 2
		}
	}
	if seen != 3 {
		w.fail(j, fault{CodeMitre, "joint.mitre-not-flush", pairArgs(j.Joint)})
		return m, false
	}
	m.run = 3 - m.alongA - m.alongB
	if ra, rb := ea[m.run], eb[m.run]; ra.Low.Nm != rb.Low.Nm || ra.High.Nm != rb.High.Nm {
		w.fail(j, noRoom(j, "joint.mitre-of-unequal-parts", ra.Size(), rb.Size()).as(CodeMitre))
		return m, false
	}
	o := j.meets.region
	name := string(j.Address) + ".mitre"
	for k, way := range [2]piece.Direction{m.wayA, m.wayB} {
		a, sign := way.Axis()
		m.in[k], m.out[k] = o.end(a, sign < 0), o.end(a, sign > 0)
		wide := w.ledger.Less(name, o[a].High, o[a].Low)
		if k == 0 {
			m.wideA = wide
		} else {
			m.wideB = wide
		}
	}
	return m, true
}

// comesTo reports whether one stretch covers another, flush at one end only.
func comesTo(a, b piece.Extent) bool {
	low, high := a.Low.Nm < b.Low.Nm, a.High.Nm > b.High.Nm
	return low != high && a.Low.Nm <= b.Low.Nm && a.High.Nm >= b.High.Nm
}

func sense(up bool) int {
	if up {
		return 1
	}
	return -1
}

// flat reports whether the parts of a mitre lie flat, as in a frame.
func (w *work) flat(j *joint, m mitred) bool {
	ta, _ := j.partA.Frame.Thickness.Axis()
	tb, _ := j.partB.Frame.Thickness.Axis()
	return ta == m.run && tb == m.run
}

// diagonal returns a figure of a mitre's triangle by one of the rules
// mitre_along (length × of / √(of² + by²)) and mitre_leg (length × √(of² + by²) / of).
func (w *work) diagonal(j *joint, rule string, length, of, by piece.Figure) piece.Figure {
	name := string(j.Address) + "." + rule
	f, err := w.ledger.Call(name, rule, length.Entry, of.Entry, by.Entry)
	if err == nil {
		return f
	}
	work := proportion.MitreAlong
	if rule == mitreLeg {
		work = proportion.MitreLeg
	}
	return w.ledger.Leaf(name, work(length.Nm, of.Nm, by.Nm), ledger.Derived, "")
}

const (
	mitreAlong = "mitre_along"
	mitreLeg   = "mitre_leg"
)

// toward moves a place on, the way that a part ends, or back.
func (w *work) toward(name string, from piece.Figure, way piece.Direction, by piece.Figure, on bool) piece.Figure {
	if _, sign := way.Axis(); (sign > 0) == on {
		return w.ledger.Sum(name, from, by)
	}
	return w.ledger.Less(name, from, by)
}

// spline claims the groove of a spline that runs along the mitre, square to it.
func (w *work) spline(i int, m mitred, meets *touch) {
	j := &w.joints[i]
	s := j.Spline
	if !w.slip(j, s.Thickness, s.Depth) {
		return
	}
	name := string(j.Address) + ".spline"
	end := w.ledger.Sum(name, s.Heel, s.Thickness)
	deepA, deepB := w.diagonal(j, mitreAlong, s.Depth, m.wideA, m.wideB), w.diagonal(j, mitreAlong, s.Depth, m.wideB, m.wideA)
	at := func(along piece.Figure, toA bool) corner {
		u, v := w.diagonal(j, mitreAlong, along, m.wideA, m.wideB), w.diagonal(j, mitreAlong, along, m.wideB, m.wideA)
		c := corner{w.toward(name, m.in[0], m.wayA, u, true), w.toward(name, m.in[1], m.wayB, v, true)}
		return corner{w.toward(name, c[0], m.wayA, deepB, !toA), w.toward(name, c[1], m.wayB, deepA, toA)}
	}
	corners := []corner{at(s.Heel, true), at(s.Heel, false), at(end, false), at(end, true)}
	// What is left before the outer faces of A and of B.
	leftA := (corners[3][1].Nm - m.out[1].Nm).Abs()
	leftB := (corners[2][0].Nm - m.out[0].Nm).Abs()
	_, signA := m.wayA.Axis()
	_, signB := m.wayB.Axis()
	if (corners[3][1].Nm < m.out[1].Nm) != (signB > 0) || (corners[2][0].Nm < m.out[0].Nm) != (signA > 0) || min(leftA, leftB) <= 0 {
		w.fail(j, noRoom(j, "joint.spline-breaks-out", s.Depth.Nm, s.Depth.Nm-min(leftA, leftB)).as(CodeSlip))
		return
	}
	along, ok := w.splineRun(j, m)
	if !ok {
		return
	}
	body := prismOf(m.run, along, lineOf(m.run, m.alongA, corners...))
	w.slipClaims(i, piece.Groove, body, body, m)
	j.neither.Add(j.neither, body.content())
	lessArea(meets, square(s.Thickness.Nm, body.box.size(m.run)))
}

// splineRun is the stretch that a spline's groove runs: all of the mitre but for
// what is stopped.
func (w *work) splineRun(j *joint, m mitred) (piece.Extent, bool) {
	e := j.meets.region[m.run]
	name := string(j.Address) + ".spline"
	if j.StopLow.Nm > 0 {
		e.Low = w.ledger.Sum(name, e.Low, j.StopLow)
	}
	if j.StopHigh.Nm > 0 {
		e.High = w.ledger.Less(name, e.High, j.StopHigh)
	}
	switch {
	case e.Size() <= 0:
		w.fail(j, fault{CodeStops, "joint.stops-leave-nothing", append(pairArgs(j.Joint), message.Length("stop", max(j.StopLow.Nm, j.StopHigh.Nm)), message.Length("run", j.meets.region.size(m.run)))})
	case j.StopLow.Nm > 0 && j.StopHigh.Nm > 0:
		w.fail(j, noRoom(j, "joint.spline-stopped-twice", j.StopLow.Nm, j.StopHigh.Nm).as(CodeSlip))
	}
	if j.failed {
		return e, false
	}
	return e, true
}

// flatSpline claims the groove of a spline in a frame: in the middle of the
// thickness, from the inner to the outer corner.
func (w *work) flatSpline(i int, m mitred, meets *touch) {
	j := &w.joints[i]
	s := j.Spline
	if !w.slip(j, s.Thickness, s.Depth) {
		return
	}
	r := j.meets.region[m.run]
	if s.Thickness.Nm >= r.Size() {
		w.fail(j, noRoom(j, "joint.slip-too-thick", s.Thickness.Nm, r.Size()).as(CodeSlip))
		return
	}
	name := string(j.Address) + ".spline"
	whole := w.ledger.Less(name, r.High, r.Low)
	low := w.ledger.Sum(name, r.Low, w.ledger.Half(name, w.ledger.Less(name, whole, s.Thickness)))
	along := piece.Extent{Low: low, High: w.ledger.Sum(name, low, s.Thickness)}
	byA, byB := w.diagonal(j, mitreLeg, s.Depth, m.wideB, m.wideA), w.diagonal(j, mitreLeg, s.Depth, m.wideA, m.wideB)
	back := func(c corner, k int) corner {
		if k == 0 {
			c[0] = w.toward(name, c[0], m.wayA, byA, false)
		} else {
			c[1] = w.toward(name, c[1], m.wayB, byB, false)
		}
		return c
	}
	if !w.within(j, m, back(m.in, 0)[0], back(m.in, 1)[1], "joint.spline-breaks-out", s.Depth.Nm) {
		return
	}
	inA := prismOf(m.run, along, lineOf(m.run, m.alongA, back(m.in, 0), back(m.out, 0), m.out, m.in))
	inB := prismOf(m.run, along, lineOf(m.run, m.alongA, back(m.in, 1), back(m.out, 1), m.out, m.in))
	w.slipClaims(i, piece.Groove, inA, inB, m)
	j.neither.Add(j.neither, inA.content()).Add(j.neither, inB.content())
	lessArea(meets, root(big.NewInt(int64(m.wideA.Nm)), big.NewInt(int64(m.wideB.Nm)), big.NewInt(int64(s.Thickness.Nm))))
}

// keys claims the slots of keys across the corner, from outside.
func (w *work) keys(i int, m mitred, meets *touch) {
	j := &w.joints[i]
	k, r := j.Keys, j.meets.region[m.run]
	if !w.slip(j, k.Thickness, k.Depth) {
		return
	}
	if len(k.At) == 0 || len(k.At) > MaxHoles {
		w.fail(j, noRoom(j, "joint.no-slip", 0, r.Size()).as(CodeSlip))
		return
	}
	long := root(big.NewInt(int64(m.wideA.Nm)), big.NewInt(int64(m.wideB.Nm)), big.NewInt(1)).Int64()
	if int64(k.Depth.Nm) >= long {
		w.fail(j, noRoom(j, "joint.key-comes-out-inside", k.Depth.Nm, unit.Length(long)).as(CodeSlip))
		return
	}
	name := string(j.Address) + ".key"
	legA, legB := w.diagonal(j, mitreLeg, k.Depth, m.wideA, m.wideB), w.diagonal(j, mitreLeg, k.Depth, m.wideB, m.wideA)
	if legA.Nm <= 0 || legB.Nm <= 0 { // beyond all measure
		w.fail(j, noRoom(j, "joint.key-comes-out-inside", k.Depth.Nm, unit.Length(long)).as(CodeSlip))
		return
	}
	onA := corner{w.toward(name, m.out[0], m.wayA, legA, false), m.out[1]}
	onB := corner{m.out[0], w.toward(name, m.out[1], m.wayB, legB, false)}
	if !w.within(j, m, onA[0], onB[1], "joint.key-breaks-out", k.Depth.Nm) {
		return
	}
	before := r.Low.Nm
	for _, at := range k.At {
		low := w.ledger.Less(name, w.ledger.Sum(name, r.Low, at), w.ledger.Half(name, k.Thickness))
		along := piece.Extent{Low: low, High: w.ledger.Sum(name, low, k.Thickness)}
		if along.Low.Nm < before || along.High.Nm > r.High.Nm {
			w.fail(j, noRoom(j, "joint.slip-too-thick", k.Thickness.Nm, min(at.Nm, r.Size()-at.Nm)*2).as(CodeSlip))
			return
		}
		before = along.High.Nm
		body := prismOf(m.run, along, lineOf(m.run, m.alongA, onA, m.out, onB))
		w.slipClaims(i, piece.KeySlot, body, body, m)
		j.neither.Add(j.neither, body.content())
		lessArea(meets, square(k.Depth.Nm, k.Thickness.Nm))
	}
}

// within checks that a slip of a depth ends inside A and B: before a place along either.
func (w *work) within(j *joint, m mitred, inA, inB piece.Figure, key string, depth unit.Length) bool {
	for _, c := range [2]struct {
		at  piece.Figure
		p   *piece.Part
		way piece.Direction
	}{{inA, j.partA, m.wayA}, {inB, j.partB, m.wayB}} {
		a, sign := c.way.Axis()
		far, left := c.p.Extent[a].Low.Nm, c.at.Nm-c.p.Extent[a].Low.Nm
		if sign < 0 {
			far, left = c.p.Extent[a].High.Nm, c.p.Extent[a].High.Nm-c.at.Nm
		}
		if left <= 0 {
			w.fail(j, noRoom(j, key, depth, (j.meets.region.end(a, sign < 0).Nm-far).Abs()).as(CodeSlip))
			return false
		}
	}
	return true
}

// slip checks the sizes of a spline or a key.
func (w *work) slip(j *joint, thick, deep piece.Figure) bool {
	if thick.Nm > 0 && deep.Nm > 0 && (j.Spline == nil || j.Spline.Heel.Nm >= 0) {
		return true
	}
	w.fail(j, noRoom(j, "joint.no-slip", min(thick.Nm, deep.Nm), j.meets.region.size(j.meets.run)).as(CodeSlip))
	return false
}

// slipClaims takes the room of a slip from both parts; neither keeps any of it.
func (w *work) slipClaims(i int, kind piece.CutKind, inA, inB prism, m mitred) {
	j := &w.joints[i]
	c := claim{joint: i, kind: kind, run: m.run, lies: new(touch)}
	c.loser, c.keeper, c.open = j.a, j.b, m.wayB
	w.add(c.shaped(inA, prism{}))
	c.loser, c.keeper, c.open = j.b, j.a, m.wayA
	w.add(c.shaped(inB, prism{}))
}

func lessArea(t *touch, area *big.Int) { t.all.Sub(&t.all, area) }

// slipsAfter sets the order at a mitre: what goes across is cut after the mitre.
func slipsAfter(list []piece.Cut) {
	for i := range list {
		if list[i].Kind != piece.Groove && list[i].Kind != piece.KeySlot {
			continue
		}
		for _, c := range list {
			if c.Part == list[i].Part && (c.Kind == piece.Mitre || c.Kind == piece.Bevel) {
				list[i].After = append(list[i].After, c.Address)
			}
		}
	}
}
