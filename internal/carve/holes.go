package carve

import (
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// holes works out the side and the line of a row of holes: at = { front = 12 } is
// where they lie across the row, which runs along the third axis.
func (r *row) holes() bool {
	var ok bool
	if r.lie.side, r.lie.open, ok = r.open("side"); !ok {
		return false
	}
	if !r.Has("at") {
		r.Missing("at")
		return false
	}
	v := r.Value("at", "")
	if v.OK() && v.Kind != formula.Object {
		r.Fault(formula.CodeWrongKind, v.Where, message.Word("got", v.Word()), message.Word("want", "kind.object"))
	}
	if v.Kind != formula.Object {
		return false
	}
	for _, f := range v.Fields {
		axis, at, ok := r.from(f, r.lie.open)
		if !ok {
			return false
		}
		r.fixed, r.axis = at, 3-r.lie.open-axis
	}
	if len(v.Fields) != 1 {
		r.Fault(fault.CodeHoleRow, v.Where, message.Text("name", r.Name))
		return false
	}
	return true
}

// deep is how deep the cuts of a row go.
func (r *row) deep() (piece.Figure, bool) {
	whole := r.size(r.lie.open)
	if r.yes("through") {
		return whole, true
	}
	v, ok := r.need("depth")
	if !ok || !r.Positive(v, "depth", r.name+".depth") {
		return piece.Figure{}, false
	}
	if r.figure(v).Nm >= whole.Nm && r.out.Kind != piece.Notch {
		r.Fault(fault.CodeCutThrough, r.Block.Where, message.Text("name", r.Name), message.Length("depth", r.figure(v).Nm), message.Length("thickness", whole.Nm))
		return piece.Figure{}, false
	}
	return r.figure(v), true
}

// bored is one hole of the row.
func (r *row) bored(c *piece.Cut, m mouth) bool {
	b := &piece.Bore{Open: r.lie.side, Diameter: m.width, Depth: m.depth, Through: r.yes("through")}
	b.At[0], b.At[1] = m.at, r.fixed
	other, _ := r.Part.Frame.LocalOf(3 - r.lie.open - r.axis)
	if r.local > other {
		b.At[0], b.At[1] = b.At[1], b.At[0]
	}
	c.Bore = b
	return r.sunk(b)
}
