package evaluate

import (
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// loose works out the row of a loose tenon joint: how many must be said, all else
// follows the rules of the trade.
func (f *family) loose(j *piece.Joint, p pair) bool {
	w := f.w()
	if !f.d.block.Has("loose") {
		f.d.s.missing(f.d.block, "loose")
		return false
	}
	v, ok := f.object("loose", "thickness", "width", "count", "margin", "in_of", "in_into")
	if !ok {
		return false
	}
	n, counted := v.Field("count")
	if !counted {
		w.fault(formula.CodeMissing, v.Where, message.Text("name", "count"), message.Text("block", "loose"))
		return false
	}
	out := &piece.Loose{}
	if out.Count, _, ok = f.d.s.maker.Count(n, 1, 100, ""); !ok {
		return false
	}
	j.Loose = out
	m, flat, ok := f.meeting(j, p)
	if !ok || !flat {
		return ok // that they overlap is told when the joint is made
	}
	for _, c := range []struct {
		to          *piece.Figure
		field, rule string
		into        piece.Figure
	}{
		{&out.Thickness, "thickness", "loose_thickness", m.intoB}, {&out.Width, "width", "loose_width", m.intoB}, {&out.Margin, "margin", "loose_margin", m.intoB},
		{&out.InA, "in_of", "loose_into", m.intoA}, {&out.InB, "in_into", "loose_into", m.intoB},
	} {
		*c.to, ok = f.saidOr(v, c.field, "loose."+c.field, func() (piece.Figure, bool) {
			return f.byRuleOf("loose."+c.field, c.rule, m.thin.Entry, m.long.Entry, c.into.Entry)
		})
		if !ok {
			return false
		}
	}
	return true
}

// touching is how two parts lie against each other: how deep each is behind the
// meeting, and the meeting's lesser and greater size.
type touching struct{ intoA, intoB, thin, long piece.Figure }

// meeting measures where two parts touch; flat is false where they do not touch
// over a face.
func (f *family) meeting(j *piece.Joint, p pair) (out touching, flat, ok bool) {
	l, name := f.w().ledger, string(j.Address)+".meeting"
	var over []piece.Figure
	for axis := range 3 {
		a, b := p.a.extentIn(piece.Axis(axis)), p.b.extentIn(piece.Axis(axis))
		if !a.ok || !b.ok {
			return out, false, false
		}
		size := l.Less(name, l.Least(name, a.high, b.high), l.Greatest(name, a.low, b.low))
		if size.Nm == 0 {
			out.intoA, out.intoB = l.Less(name, a.high, a.low), l.Less(name, b.high, b.low)
			continue
		}
		over = append(over, size)
	}
	if len(over) != 2 {
		return out, false, true
	}
	out.thin, out.long = over[0], over[1]
	if out.thin.Nm > out.long.Nm {
		out.thin, out.long = out.long, out.thin
	}
	return out, true, true
}
