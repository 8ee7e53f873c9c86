package evaluate

import (
	"scantling/internal/piece"
	"scantling/internal/proportion"
)

// dovetail works out the row of tails: so many as the joint says or the width takes,
// pins and half pins of half the thickness unless said, the tails sharing the rest.
// Where the parts do not come to a corner with their end grain, there is no row: the
// joinery says so.
func (f *family) dovetail(j *piece.Joint, p pair) bool {
	w := f.w()
	v, count, _, ok := f.saying("tails", "count", "count", "pin", "half_pin", "slope")
	if !ok {
		return false
	}
	fa, fb := p.a.form(), p.b.form()
	if fa.grain != fb.thick || fb.grain != fa.thick {
		return true
	}
	run := runOf(p)
	ea, eb := p.a.extentIn(run), p.b.extentIn(run)
	thick := p.a.thickness()
	if !ea.ok || !eb.ok || !thick.OK() {
		return false
	}
	low, high := w.ledger.Greatest("", ea.low, eb.low), w.ledger.Least("", ea.high, eb.high)
	width := w.ledger.Less(string(j.Address)+".width", high, low)
	t := &piece.Tails{}
	if f.d.block.Has("lap") {
		if t.Lap, ok = f.lap(p.b); !ok {
			return false
		}
	}
	var okL, okP, okH bool
	t.Lean, okL = f.lean(v, string(j.Address)+".lean", j.Depth, p.a)
	pin, okP := f.saidOr(v, "pin", "pin", func() (piece.Figure, bool) { return f.byRuleOf("pin", "pin", thick.Entry) })
	half, okH := f.saidOr(v, "half_pin", "half-pin", func() (piece.Figure, bool) { return f.byRuleOf("half-pin", "pin", thick.Entry) })
	if !okL || !okP || !okH {
		return false
	}
	if count == 0 {
		nm, _ := thick.Is.Length()
		n, err := proportion.TailCount(width.Nm, nm, pin.Nm, half.Nm, t.Lean.Nm)
		if err != nil {
			f.d.s.maker.Refused(err, f.d.block.Where)
			return false
		}
		count = n
	}
	f.row(j, t, width, pin, half, count)
	j.Tails = t
	return true
}

// row lays out a row of tails: a half pin, then tails and pins by turns, and a half
// pin; they add up to the width exactly.
func (f *family) row(j *piece.Joint, t *piece.Tails, width, pin, half piece.Figure, count int) {
	l, name := f.w().ledger, string(j.Address)+".tail"
	pins := []piece.Figure{half}
	for range count - 1 {
		pins = append(pins, pin)
	}
	t.Pins = append(pins, half)
	rest := l.Less(name, append([]piece.Figure{width}, t.Pins...)...)
	for k := range count {
		t.Tails = append(t.Tails, l.ShareOf(name, rest, k+1, count))
	}
}
