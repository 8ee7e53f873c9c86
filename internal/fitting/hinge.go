package fitting

import (
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// maxGap is the widest gap between two parts that a hinge closes.
const maxGap = 3 * unit.Millimetre

// hinge lays a butt hinge between On and With, closed: each leaf in a recess from
// the edge that the knuckle stands out at, half of the hinge's open width in and so
// deep that knuckle and gap come out even, (knuckle - gap) / 2; the pin in line
// with the edge.
func (b *bench) hinge() {
	if !b.needs() {
		return
	}
	out, _ := b.Toward.Axis()
	side, _ := b.Side.Axis()
	if b.Toward == "" || out == side || out == b.Runs {
		b.fail(CodePlace, "fitting.knuckle-way")
		return
	}
	l, name := b.Ledger, b.Name+".hinge"
	here, there := face(b.On, b.Side), face(b.With, b.Side.Opposite())
	gap := l.Less(name, there, here)
	if _, sign := b.Side.Axis(); sign < 0 {
		gap = l.Less(name, here, there)
	}
	if gap.Nm < 0 || gap.Nm > maxGap {
		b.fail(CodePlace, "fitting.gap", message.Address("with", b.With.Address), message.Length("gap", gap.Nm), message.Length("limit", maxGap))
		return
	}
	edge := face(b.On, b.Toward)
	if other := face(b.With, b.Toward); other.Nm != edge.Nm {
		b.fail(CodePlace, "fitting.edges-not-flush", message.Address("with", b.With.Address), message.Length("by", max(other.Nm-edge.Nm, edge.Nm-other.Nm)))
		return
	}
	f := b.Fitting
	knuckle := b.size("knuckle", f.Diameter)
	deep := l.Half(name, l.Less(name, knuckle, gap))
	long := b.about(b.along(b.On), b.size("length", f.Length))
	wide := b.from(edge, l.Half(name, b.size("width", f.Width)), b.Toward.Opposite())
	thick := b.size("thickness", f.Thickness)
	for k, p := range [2]*piece.Part{b.On, b.With} {
		way, wood := [2]piece.Direction{b.Side, b.Side.Opposite()}[k], b.WoodOn
		if k == 1 {
			wood = b.WoodWith
		}
		at := [3]piece.Extent{}
		at[b.Runs], at[out] = long, wide
		at[side] = b.from(face(p, way), deep, way.Opposite())
		b.recess(p, way, at, piece.Recess)
		leaf := at
		floor := at[side].Low
		if _, sign := way.Axis(); sign < 0 {
			floor = at[side].High
		}
		leaf[side] = b.from(floor, thick, way)
		b.body("leaf", leaf)
		mid := l.Half(name, l.Sum(name, wide.Low, wide.High))
		b.screws(p, way, long, mid, f.Screws/2, thick, deep, wood)
	}
	pin := [3]piece.Extent{}
	pin[b.Runs], pin[out] = long, b.about(edge, knuckle)
	pin[side] = b.about(l.Half(name, l.Sum(name, here, there)), knuckle)
	b.drum("knuckle", pin, b.Runs)
}
