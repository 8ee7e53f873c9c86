package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/carve/direction"
	"scantling/internal/diag"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// space is a clear space between faces.
type space struct {
	decl *decl
	nth  int
	addr address.Address
	e    env
	low  [3]cell[formula.Value] // in the frame of its scope
	high [3]cell[formula.Value]
	size [3]cell[formula.Value]
}

func (s *space) address() address.Address { return s.addr }

func (s *space) w() *world { return s.decl.s.w }

func (d *decl) newSpace(nth int) *space {
	return &space{decl: d, nth: nth, addr: addressOf(d.s.addr, d.name, nth), e: env{s: d.s, nth: nth}}
}

// member resolves what may be named of a space: its bounds and clear sizes.
func (s *space) member(name string) (formula.Value, bool) {
	if axis, low, ok := direction.Face(name); ok {
		v := s.end(axis, !low)
		if v.OK() && v.Position == nil {
			v.Position = &formula.Position{Axis: int(axis), Frame: s.e.s.frame}
		}
		return v, true
	}
	for axis, word := range sizeWords {
		if name == word {
			return s.clear(piece.Axis(axis)), true
		}
	}
	return formula.Value{}, false
}

// end is a bound of the space, with the face that bounds it if one was named.
func (s *space) end(axis piece.Axis, high bool) formula.Value {
	word, at := lowWords[axis], &s.low[axis]
	if high {
		word, at = highWords[axis], &s.high[axis]
	}
	name := string(s.addr) + "." + word
	return get(s.w(), at, func() string { return name }, s.decl.block.Where, func() formula.Value {
		return s.workEnd(axis, high, word, name)
	})
}

func (s *space) workEnd(axis piece.Axis, high bool, word, name string) formula.Value {
	w, b := s.w(), s.decl.block
	if n := stated(b, axis); n != 2 {
		if !b.Broken && !b.Unsure {
			w.fault(CodePlaces, b.Where, message.Text("name", s.decl.name), message.Word("axis", axisWord(axis)), message.Count("got", n))
		}
		return formula.Value{}
	}
	measured, ok := s.measured(axis)
	if !b.Has(word) || ok && high && b.Has(lowWords[axis]) {
		return s.across(axis, high, measured, name)
	}
	v, ok := s.e.length(b, word, name)
	if ok && v.Position != nil && v.Position.Axis != int(axis) {
		w.fault(CodeWrongAxis, b.Attribute(word).Value.Place(), message.Text("name", word),
			message.Word("got", axisWord(piece.Axis(v.Position.Axis))), message.Word("want", axisWord(axis)))
		return formula.Value{}
	}
	if !ok {
		return formula.Value{}
	}
	return v
}

// across is the end that follows from the other one and the size.
func (s *space) across(axis piece.Axis, high bool, size formula.Value, name string) formula.Value {
	op := ledger.OpSub
	if high {
		op = ledger.OpAdd
	}
	from := s.end(axis, !high)
	if !size.OK() {
		size, _ = s.e.length(s.decl.block, sizeWords[axis], string(s.addr)+"."+sizeWords[axis])
	}
	if !from.OK() || !size.OK() {
		return formula.Value{}
	}
	v := quantity(s.w().ledger.Figure(s.w().make(name, op, from.Entry, size.Entry)))
	if s.decl.block.Has(highWords[axis]) && high { // measured: the face is still what bounds it
		if stated, ok := s.e.length(s.decl.block, highWords[axis], ""); ok && stated.Position != nil {
			v.Position = &formula.Position{Axis: int(axis), Frame: s.e.s.frame, Face: stated.Position.Face}
		}
	}
	return v
}

// clear is the clear size along an axis: as measured, or from bound to bound.
func (s *space) clear(axis piece.Axis) formula.Value {
	name := string(s.addr) + "." + sizeWords[axis]
	return get(s.w(), &s.size[axis], func() string { return name }, s.decl.block.Where, func() formula.Value {
		if v, ok := s.measured(axis); ok {
			return v
		}
		low, high := s.end(axis, false), s.end(axis, true)
		if !low.OK() || !high.OK() {
			return formula.Value{}
		}
		if axis == piece.Up {
			if lost := s.lost(low, high); lost.OK() {
				return quantity(s.w().ledger.Figure(s.w().make(name, ledger.OpSub, high.Entry, low.Entry, lost.Entry)))
			}
		}
		return quantity(s.w().ledger.Figure(s.w().make(name, ledger.OpSub, high.Entry, low.Entry)))
	})
}

// collect writes the space into the piece.
func (s *space) collect() {
	w := s.w()
	out := piece.Space{Address: s.addr, Label: s.e.words(s.decl.block, "label"), Group: s.e.s.group, Where: s.decl.block.Where}
	ok := true
	for axis := range 3 {
		a := piece.Axis(axis)
		low, high, clear := s.end(a, false), s.end(a, true), s.clear(a)
		if !low.OK() || !high.OK() || !clear.OK() {
			ok = false
			continue
		}
		out.Bounds[2*axis], out.Bounds[2*axis+1] = boundOf(low), boundOf(high)
		for i, v := range []formula.Value{low, high} {
			v.Position = &formula.Position{Axis: axis, Frame: s.e.s.frame}
			v = w.carried(v, w.root.frame)
			ok = ok && v.OK()
			if i == 0 {
				out.Extent[axis].Low = w.figure(v)
			} else {
				out.Extent[axis].High = w.figure(v)
			}
		}
		out.Clear[axis] = w.figure(clear)
		if ok && out.Extent[axis].Size() <= 0 {
			w.report(diag.Diagnostic{Severity: diag.Error, Code: formula.CodeNotPositive, Where: s.decl.block.Where, Address: s.addr,
				Text: textOf(formula.CodeNotPositive, message.Text("name", string(s.addr)+"."+sizeWords[axis]), message.Length("got", out.Extent[axis].Size()))})
			ok = false
		}
	}
	if ok {
		w.out.Spaces = append(w.out.Spaces, out)
		s.compared()
	}
}

// boundOf names the face that a bound lies at: the part's address and the
// direction word of the face.
func boundOf(v formula.Value) string {
	if v.Position == nil {
		return ""
	}
	f, ok := v.Position.Face.(*face)
	if !ok || f == nil {
		return ""
	}
	word := lowWords[f.axis]
	if f.high {
		word = highWords[f.axis]
	}
	return string(f.of.addr) + "." + word
}
