package joinery

import (
	"scantling/internal/figure"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// tenon lets a tenon on A's end into a mortise of B, stopped or through, with a
// haunch at one of its shoulders if the joint asks for one. A loses the cheeks and
// the shoulders, B the mortise, which is deeper than the tenon is long by the
// clearance at its bottom.
//
// With overlap d × t × r, a tenon t' thick between shoulders l and h on a width
// r, a haunch g long at the shoulder h, and glue room c: kept by A
// d t' (r - l - h) + g t' h, by B the rest of d t r, by neither c t' (r - l - h).
// A and B meet on the cheeks, 2 d (r - l - h) + 2 g h; at the tenon's edges,
// 2 d t'; at the haunch's bottom t' h; and over the shoulders.
//
// With round ends the mortise keeps the half circles of its cutter and the tenon
// is rounded to match: see rounding.
func (w *work) tenon(i int) {
	j := &w.joints[i]
	entry, fromHigh, ok := w.enter(j)
	if !ok || !w.tenonFits(j, entry) {
		return
	}
	t, m := j.Tenon, j.meets
	o := m.region
	name := string(j.Address) + ".tenon"
	bar := o // all along the width, as thick as the tenon
	bar = w.moved(name, bar, m.across, false, t.From)
	bar = bar.with(m.across, true, w.ledger.Sum(name, bar[m.across].Low, t.Thickness))
	main := bar
	main = w.moved(name, main, m.run, false, t.Low)
	main = w.moved(name, main, m.run, true, t.High)
	if !w.mortiseFits(j, main, entry) {
		return
	}
	j.tenon, j.hasTenon = main, true
	cut := main
	if !t.Through {
		cut = w.grow(j, main, box(j.partB.Extent), entry, !fromHigh, j.ClearDeep)
	}
	mortise := claim{
		joint: i, loser: j.b, keeper: j.a, cut: cut, kept: main, kind: piece.Mortise,
		open: m.entry.Opposite(), run: m.run, stops: [2]bool{true, true},
	}
	if t.Round {
		mortise.endRadius = w.ledger.Half(name, t.Thickness)
	}
	w.add(mortise)
	w.haunch(i, bar, main, entry, fromHigh)
	w.cheeks(i, o, bar, m.run)
	if t.Round {
		w.roundTenon(j, main, entry)
	}
	w.fasten(j)
}

// moved returns the box with one limit moved inwards.
func (w *work) moved(name string, b box, a piece.Axis, high bool, by piece.Figure) box {
	switch {
	case by.Nm == 0:
		return b
	case high:
		return b.with(a, true, w.ledger.Less(name, b[a].High, by))
	}
	return b.with(a, false, w.ledger.Sum(name, b[a].Low, by))
}

// haunch claims the shoulders: what lies beyond the tenon's edges within its
// thickness, and the haunch that stays.
func (w *work) haunch(i int, bar, main box, entry piece.Axis, fromHigh bool) {
	j := &w.joints[i]
	t, run := j.Tenon, j.meets.run
	for k, high := range [2]bool{false, true} {
		if [2]piece.Figure{t.Low, t.High}[k].Nm == 0 {
			continue
		}
		shoulder := bar.with(run, !high, main.end(run, high))
		if t.Haunch.Nm > 0 && t.HaunchHigh == high {
			name := string(j.Address) + ".haunch"
			at := w.ledger.Sum(name, bar[entry].Low, t.Haunch)
			if fromHigh {
				at = w.ledger.Less(name, bar[entry].High, t.Haunch)
			}
			stays := shoulder.with(entry, !fromHigh, at)
			shoulder = shoulder.with(entry, fromHigh, at)
			cut := stays
			if t.Round { // the round end of the mortise is squared up for the haunch
				cut = w.moved(name, cut, run, !high, w.ledger.Less(name, w.ledger.Less(name, t.Thickness, t.Thickness), w.ledger.Half(name, t.Thickness)))
			}
			w.add(claim{
				joint: i, loser: j.b, keeper: j.a, cut: cut, kept: stays, shared: t.Round, kind: piece.Groove,
				open: j.meets.entry.Opposite(), run: run,
			})
		}
		w.add(claim{
			joint: i, loser: j.a, keeper: j.b, cut: shoulder, kept: shoulder, kind: piece.Cheek, yields: true,
			open: piece.Toward(run, sign(high)), run: j.meets.across,
		})
	}
}

// cheeks claims what lies on both sides of a tenon or a tongue.
func (w *work) cheeks(i int, whole, bar box, run piece.Axis) {
	j := &w.joints[i]
	across := j.meets.across
	for _, high := range [2]bool{false, true} {
		if bar.end(across, high).Nm == whole.end(across, high).Nm {
			continue
		}
		cheek := whole.with(across, !high, bar.end(across, high))
		w.add(claim{
			joint: i, loser: j.a, keeper: j.b, cut: cheek, kept: cheek, kind: piece.Cheek, yields: true,
			open: piece.Toward(across, sign(high)), run: run,
		})
	}
}

func sign(high bool) int {
	if high {
		return 1
	}
	return -1
}

// tenonFits checks the tenon against A and against how the parts meet.
func (w *work) tenonFits(j *joint, entry piece.Axis) bool {
	t, m := j.Tenon, j.meets
	if t == nil || t.Thickness.Nm <= 0 {
		w.fail(j, tenonFault(j, "joint.no-tenon", 0, j.partA.Thickness.Nm))
		return false
	}
	if along, _ := j.partA.Frame.Length.Axis(); along != entry {
		w.fail(j, fault{CodeGrain, "joint.tenon-needs-end-grain", pairArgs(j.Joint)})
		return false
	}
	whole, wide := j.partA.Extent[m.across].Size(), j.partA.Extent[m.run].Size()
	size := j.partB.Extent[entry].Size()
	for _, c := range []struct {
		bad       bool
		key       string
		is, limit unit.Length
	}{
		{m.region.size(m.across) < whole, "joint.tenon-overhangs", whole - m.region.size(m.across), whole},
		{m.region.size(m.run) < wide, "joint.tenon-overhangs", wide - m.region.size(m.run), wide},
		{t.From.Nm < 0 || t.From.Nm+t.Thickness.Nm > whole, "joint.tenon-too-thick", t.From.Nm + t.Thickness.Nm, whole},
		{t.Low.Nm < 0 || t.High.Nm < 0 || t.Low.Nm+t.High.Nm >= wide, "joint.shoulders-leave-nothing", t.Low.Nm + t.High.Nm, wide},
		{t.Haunch.Nm >= m.region.size(entry), "joint.haunch-too-long", t.Haunch.Nm, m.region.size(entry)},
		{t.Haunch.Nm > 0 && t.HaunchHigh && t.High.Nm == 0, "joint.haunch-without-shoulder", 0, t.Haunch.Nm},
		{t.Haunch.Nm > 0 && !t.HaunchHigh && t.Low.Nm == 0, "joint.haunch-without-shoulder", 0, t.Haunch.Nm},
		{t.Round && t.Low.Nm+t.High.Nm+t.Thickness.Nm > wide, "joint.round-tenon-narrow", wide - t.Low.Nm - t.High.Nm, t.Thickness.Nm},
		{t.Through && m.region.size(entry) < size, "joint.tenon-not-through", m.region.size(entry), size},
		{j.ClearAcross.Nm > 0, "joint.tenon-clear-across", j.ClearAcross.Nm, 0},
		{!t.Through && m.region.size(entry)+j.ClearDeep.Nm >= size, "joint.mortise-comes-out", m.region.size(entry) + j.ClearDeep.Nm, size},
	} {
		if c.bad {
			w.fail(j, tenonFault(j, c.key, c.is, c.limit))
			return false
		}
	}
	return true
}

// mortiseFits checks what B keeps round the mortise: nothing is an error, little a
// warning.
func (w *work) mortiseFits(j *joint, main box, entry piece.Axis) bool {
	b := box(j.partB.Extent)
	m := j.meets
	along, _ := j.partB.Frame.Length.Axis()
	for _, c := range [2]struct {
		a         piece.Axis
		key, thin string
	}{{m.across, "joint.mortise-open", "joint.mortise-thin"}, {m.run, "joint.mortise-runs-out", "joint.mortise-near-end"}} {
		rule := proportion.MortiseWall
		of := b.size(c.a)
		if c.a == along {
			rule, of = proportion.MortiseEnd, j.Tenon.Thickness.Nm
		}
		least := leastOf(rule(of))
		low, high := main[c.a].Low.Nm-b[c.a].Low.Nm, b[c.a].High.Nm-main[c.a].High.Nm
		switch wall := min(low, high); {
		case wall <= 0:
			w.fail(j, tenonFault(j, c.key, 0, least))
			return false
		case wall < least:
			w.warn(j, tenonFault(j, c.thin, wall, least))
		}
	}
	if long, most := main.size(m.run), b.size(m.run)/3; m.run != along && long > most {
		w.warn(j, tenonFault(j, "joint.mortise-across", long, most))
	}
	if behind := b.size(entry) - m.region.size(entry) - j.ClearDeep.Nm; !j.Tenon.Through {
		if least := leastOf(proportion.MortiseWall(b.size(entry))); behind < least {
			w.warn(j, tenonFault(j, "joint.mortise-deep", behind, least))
		}
	}
	return true
}

// leastOf is the value of a rule, nought where it has none.
func leastOf(f figure.Of[unit.Length], err error) unit.Length {
	if err != nil {
		return 0
	}
	return f.Value
}

func tenonFault(j *joint, key string, is, limit unit.Length) fault {
	return fault{CodeTenon, key, append(pairArgs(j.Joint), message.Length("is", is), message.Length("limit", limit))}
}

// cutOff reports tenons that another joint would cut through short of their ends:
// the end would fall off.
func (w *work) cutOff() {
	for i := range w.joints {
		j := &w.joints[i]
		if j.failed || !j.hasTenon {
			continue
		}
		entry, toward := j.meets.entry.Axis()
		for k := range w.claims {
			c := &w.claims[k]
			if c.gone || c.loser != j.a || c.joint == i || !overlaps(c.cut, j.tenon) {
				continue
			}
			x := meet(j.tenon, c.cut)
			tip, end := j.tenon.end(entry, toward > 0).Nm, x.end(entry, toward > 0).Nm
			across := x.size(j.meets.across) == j.tenon.size(j.meets.across) && x.size(j.meets.run) == j.tenon.size(j.meets.run)
			if beyond := (tip - end) * unit.Length(toward); across && beyond > 0 {
				f := tenonFault(j, "joint.tenon-cut-off", beyond, j.tenon.size(entry)-beyond-x.size(entry))
				f.args = append(f.args, message.Address("other", w.joints[c.joint].Address))
				w.fail(j, f)
			}
		}
	}
}
