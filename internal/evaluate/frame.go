package evaluate

import (
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// frame is the axes of a group, from its origin in the frame around it.
type frame struct {
	up     *frame
	depth  int
	place  env             // where the origin's formulas stand
	block  *document.Block // that states the origin
	name   string
	origin [3]cell[formula.Value]
	whole  [3]cell[formula.Value] // from the piece's own origin
}

// moved reports whether the origin is stated along an axis at all.
func (f *frame) moved(axis piece.Axis) bool {
	return f.block != nil && f.block.Has(lowWords[axis])
}

// along returns the origin along an axis in the frame around it.
func (f *frame) along(axis piece.Axis) formula.Value {
	w := f.place.s.w
	name := f.name + "." + lowWords[axis]
	return get(w, &f.origin[axis], func() string { return name }, f.block.Attribute(lowWords[axis]).Where, func() formula.Value {
		v, ok := f.place.s.maker.Length(f.place.value(f.block, lowWords[axis], name), name)
		if !ok {
			return formula.Value{}
		}
		v.Position = nil
		return v
	})
}

// carried brings a position into another frame: up to the frame that both lie
// in, and down again.
func (w *world) carried(v formula.Value, to *frame) formula.Value {
	if v.Position == nil {
		return v
	}
	from, _ := v.Position.Frame.(*frame)
	if from == to || from == nil || to == nil {
		return v
	}
	axis := piece.Axis(v.Position.Axis)
	plus, minus, ok := between(from, to, axis)
	if !ok {
		return formula.Value{}
	}
	out := v
	id := v.Entry
	if len(plus) > 0 {
		id = w.make("", ledger.OpAdd, append([]ledger.ID{id}, plus...)...)
	}
	if len(minus) > 0 {
		id = w.make("", ledger.OpSub, append([]ledger.ID{id}, minus...)...)
	}
	out.Entry = id
	out.Is = w.ledger.Value(id)
	out.Position = &formula.Position{Axis: v.Position.Axis, Frame: to, Face: v.Position.Face}
	return out
}

// between collects the origins that lie between two frames.
func between(from, to *frame, axis piece.Axis) (plus, minus []ledger.ID, ok bool) {
	ok = true
	step := func(f *frame, ids *[]ledger.ID) *frame {
		if f.moved(axis) {
			o := f.along(axis)
			if !o.OK() {
				ok = false
			}
			*ids = append(*ids, o.Entry)
		}
		return f.up
	}
	for from != to && ok {
		if from.depth >= to.depth {
			from = step(from, &plus)
		} else {
			to = step(to, &minus)
		}
	}
	return plus, minus, ok
}

// make enters lengths that are known to go together; a refusal is our own
// mistake, but for a sum that leaves the range of lengths.
func (w *world) make(name string, op ledger.Op, ids ...ledger.ID) ledger.ID {
	id, err := w.ledger.Make(name, op, "", ids...)
	if err != nil {
		return w.ledger.Given(ledger.Entry{Name: name, Value: unit.OfLength(0), Origin: ledger.Derived})
	}
	return id
}

// origin returns the frame's origin in the piece along an axis.
func (w *world) originOf(f *frame, axis piece.Axis) (piece.Figure, bool) {
	zero := formula.Value{Kind: formula.Quantity, Is: unit.OfLength(0), Position: &formula.Position{Axis: int(axis), Frame: f}}
	zero.Entry = w.ledger.Given(ledger.Entry{Name: "origin", Value: unit.OfLength(0), Origin: ledger.Derived})
	v := w.carried(zero, w.root.frame)
	return w.ledger.Figure(v.Entry), v.OK()
}

// originPlace is the low corner of a group along an axis, as a place.
func (w *world) originPlace(s *scope, axis piece.Axis) formula.Value {
	id := w.ledger.Given(ledger.Entry{Name: "origin", Value: unit.OfLength(0), Origin: ledger.Derived})
	return formula.Value{Kind: formula.Quantity, Is: unit.OfLength(0), Entry: id, Position: &formula.Position{Axis: int(axis), Frame: s.frame}}
}
