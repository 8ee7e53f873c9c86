package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/carve/direction"
	"scantling/internal/diag"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// part is one board or piece of sheet.
type part struct {
	decl *decl
	nth  int
	// hand is "left" or "right" for one of a pair and twin the other.
	hand string
	twin *part
	addr address.Address
	e    env

	low, high [3]cell[formula.Value] // in the frame of its scope
	whole     [3]cell[extent]        // in the piece's frame
	thick     cell[formula.Value]
	stuff     cell[*material]
	across    cell[formula.Value] // the width of a pair
	done      *piece.Part         // as it is in the piece
	conflict  bool                // it is cut, and not as it must be now
	shape     cell[shape]
}

// extent is a stretch in the piece's frame; ok is false if it could not be
// worked out.
type extent struct {
	low, high piece.Figure
	ok        bool
}

// shape says how a part's own axes lie.
type shape struct {
	grain piece.Axis
	thick piece.Axis
	wide  piece.Axis
	frame piece.Frame
	show  piece.Direction
	// one is the axis that takes the material's thickness, -1 if all are stated.
	one int
	ok  bool
}

// face is a side of a part that places can be named by.
type face struct {
	of   *part
	axis piece.Axis
	high bool
}

func (p *part) address() address.Address { return p.addr }

func (p *part) w() *world { return p.decl.s.w }

func (p *part) name() string { return string(p.addr) }

// newParts makes one instance of a part, or a pair.
func (d *decl) newParts(nth int) []node {
	s := d.s
	addr := addressOf(s.addr, d.name, nth)
	p := &part{decl: d, nth: nth, addr: addr, e: env{s: s, nth: nth}}
	if !d.block.Has("mirror") {
		return []node{p}
	}
	p.hand, p.addr = "left", addr.Child("left")
	q := &part{decl: d, nth: nth, hand: "right", addr: addr.Child("right"), e: p.e, twin: p}
	p.twin = q
	return []node{p, q}
}

// member resolves what may be named of a part: faces, sizes, thickness.
func (p *part) member(name string) (formula.Value, bool) {
	if name == "inside" || name == "outside" {
		if p.hand == "" {
			p.w().fault(CodeNoHand, p.decl.block.Where, message.Text("name", p.decl.name))
			return formula.Value{}, true
		}
		right := (p.hand == "left") == (name == "inside")
		return p.place(piece.Right, right), true
	}
	if axis, low, ok := direction.Face(name); ok {
		return p.place(axis, !low), true
	}
	for axis, word := range sizeWords {
		if name == word {
			return p.size(piece.Axis(axis)), true
		}
	}
	if name == "thickness" {
		return p.thickness(), true
	}
	return formula.Value{}, false
}

// place is a face of the part as a position in the frame of its scope.
func (p *part) place(axis piece.Axis, high bool) formula.Value {
	v := p.end(axis, high)
	if v.OK() {
		v.Position = &formula.Position{Axis: int(axis), Frame: p.e.s.frame, Face: &face{p, axis, high}}
	}
	return v
}

// size is the part's size along an axis.
func (p *part) size(axis piece.Axis) formula.Value {
	if _, _, cut := p.asCut(axis); !cut {
		if v, said := p.sized(axis); said {
			return v
		}
	}
	if p.form().one == int(axis) {
		return p.thickness()
	}
	low, high := p.end(axis, false), p.end(axis, true)
	if !low.OK() || !high.OK() {
		return formula.Value{}
	}
	return quantity(p.w().ledger.Figure(p.w().make(p.name()+"."+sizeWords[axis], ledger.OpSub, high.Entry, low.Entry)))
}

// end is where the part ends along an axis, with what joints add there.
func (p *part) end(axis piece.Axis, high bool) formula.Value {
	word, at := lowWords[axis], &p.low[axis]
	if high {
		word, at = highWords[axis], &p.high[axis]
	}
	name := p.name() + "." + word
	return get(p.w(), at, func() string { return name }, p.decl.block.Where, func() formula.Value {
		if v, frozen := p.frozenEnd(axis, high, name); frozen {
			return v
		}
		return p.plannedEnd(axis, high, word, name)
	})
}

func (p *part) plannedEnd(axis piece.Axis, high bool, word, name string) formula.Value {
	if p.hand == "right" {
		return p.mirrored(axis, high, name)
	}
	return p.workEnd(axis, high, word, name)
}

// unfrozen is an end as it is planned, even if this part is cut already: its
// twin need not be.
func (p *part) unfrozen(axis piece.Axis, high bool) formula.Value {
	if _, _, cut := p.asCut(axis); !cut {
		return p.end(axis, high)
	}
	word := lowWords[axis]
	if high {
		word = highWords[axis]
	}
	return p.plannedEnd(axis, high, word, p.name()+"."+word)
}

func (p *part) workEnd(axis piece.Axis, high bool, word, name string) formula.Value {
	w, b := p.w(), p.decl.block
	if b.Has(word) {
		return p.joinedEnd(axis, high, p.stated(axis, word), name)
	}
	other, op := highWords[axis], ledger.OpSub
	if high {
		other, op = lowWords[axis], ledger.OpAdd
	}
	if !b.Has(other) {
		if !b.Broken && !b.Unsure {
			w.fault(CodePlaces, b.Where, message.Text("name", p.decl.name), message.Word("axis", axisWord(axis)))
		}
		return formula.Value{}
	}
	from := p.end(axis, !high)
	size, said := p.sized(axis)
	if !said {
		size = p.thickness()
	}
	if !from.OK() || !size.OK() {
		return formula.Value{}
	}
	return quantity(w.ledger.Figure(w.make(name, op, from.Entry, size.Entry)))
}

// stated works out a place or a size as it is written.
func (p *part) stated(axis piece.Axis, word string) formula.Value {
	name := p.name() + "." + word
	v, ok := p.e.length(p.decl.block, word, name)
	if !ok {
		return formula.Value{}
	}
	if word == sizeWords[axis] && !p.e.reader(p.decl.block).Positive(v, word, name) {
		return formula.Value{}
	}
	if v.Position != nil && v.Position.Axis != int(axis) {
		p.w().fault(CodeWrongAxis, p.decl.block.Attribute(word).Value.Place(), message.Text("name", word),
			message.Word("got", axisWord(piece.Axis(v.Position.Axis))), message.Word("want", axisWord(axis)))
		return formula.Value{}
	}
	return v
}

// joinedEnd moves an end that stops at a face by the depth of the joint that
// enters there.
func (p *part) joinedEnd(axis piece.Axis, high bool, v formula.Value, name string) formula.Value {
	if !v.OK() || v.Position == nil || v.Position.Face == nil {
		return v
	}
	f, ok := v.Position.Face.(*face)
	if !ok || f.of == p || f.high == high {
		return v // flush with a face that looks the same way: nothing to enter
	}
	depth, adds, ok := p.enters(f.of, axis)
	if !ok {
		return formula.Value{}
	}
	if !adds {
		return v
	}
	op := ledger.OpSub
	if high {
		op = ledger.OpAdd
	}
	return quantity(p.w().ledger.Figure(p.w().make(name, op, v.Entry, depth.Entry)))
}

// mirrored is the end of the right one of a pair: the left one's other end,
// taken from the width that both stand in. Along other axes they are alike.
func (p *part) mirrored(axis piece.Axis, high bool, name string) formula.Value {
	b := p.decl.block
	if axis != piece.Right {
		return p.twin.unfrozen(axis, high)
	}
	if p.form().one == int(axis) && high != b.Has("left") { // the inner face: as far in as this one is thick
		op := ledger.OpSub
		if high {
			op = ledger.OpAdd
		}
		return p.sum(name, op, p.end(axis, !high), p.thickness())
	}
	return p.sum(name, ledger.OpSub, p.twin.mirror(), p.twin.unfrozen(axis, !high))
}

// mirror is the width that a pair stands in.
func (p *part) mirror() formula.Value {
	name := p.name() + ".mirror"
	return get(p.w(), &p.across, func() string { return name }, p.decl.block.Where, func() formula.Value {
		v, _ := p.e.length(p.decl.block, "mirror", name)
		return v
	})
}

// sum adds two lengths or takes one from the other.
func (p *part) sum(name string, op ledger.Op, a, b formula.Value) formula.Value {
	if !a.OK() || !b.OK() {
		return formula.Value{}
	}
	return quantity(p.w().ledger.Figure(p.w().make(name, op, a.Entry, b.Entry)))
}

// thickness is the part's size across its faces: as measured, or the material's.
func (p *part) thickness() formula.Value {
	name := p.name() + ".thickness"
	return get(p.w(), &p.thick, func() string { return name }, p.decl.block.Where, func() formula.Value {
		if v, ok := p.w().record.thickness(p.w(), p.addr, name); ok {
			return v
		}
		if s := p.form(); s.ok && s.one < 0 {
			return p.size(s.thick)
		}
		m := p.material()
		if m == nil {
			return formula.Value{}
		}
		return m.thickness()
	})
}

// material is what the part is made of.
func (p *part) material() *material {
	return get(p.w(), &p.stuff, func() string { return p.name() + ".of" }, p.decl.block.Where, func() *material {
		if !p.decl.block.Has("of") {
			p.decl.s.missing(p.decl.block, "of")
			return nil
		}
		v := p.e.value(p.decl.block, "of", "")
		m, ok := v.Ref.(*material)
		if v.OK() && !ok {
			p.w().fault(formula.CodeWrongReference, v.Where, message.Word("want", "kind.material"), message.Word("got", v.Word()))
		}
		return m
	})
}

func axisWord(a piece.Axis) string { return [3]string{"axis.right", "axis.back", "axis.up"}[a] }

// extentIn works out the part's stretch along an axis in the piece's frame.
func (p *part) extentIn(axis piece.Axis) extent {
	return get(p.w(), &p.whole[axis], func() string { return p.name() }, p.decl.block.Where, func() extent {
		low, high := p.end(axis, false), p.end(axis, true)
		if !low.OK() || !high.OK() {
			return extent{}
		}
		w := p.w()
		carry := func(v formula.Value) (piece.Figure, bool) {
			v.Position = &formula.Position{Axis: int(axis), Frame: p.e.s.frame}
			v = w.carried(v, w.root.frame)
			return w.figure(v), v.OK()
		}
		l, okL := carry(low)
		h, okH := carry(high)
		if okL && okH && h.Nm <= l.Nm {
			w.report(diag.Diagnostic{Severity: diag.Error, Code: formula.CodeNotPositive, Where: p.decl.block.Where, Address: p.addr,
				Text: textOf(formula.CodeNotPositive, message.Text("name", p.name()+"."+sizeWords[axis]), message.Length("got", h.Nm-l.Nm))})
			return extent{}
		}
		return extent{l, h, okL && okH}
	})
}

// tooThick tells a part that is thicker than its material.
func (p *part) tooThick(got, most unit.Length) {
	p.w().report(diag.Diagnostic{Severity: diag.Error, Code: CodeThicker, Where: p.decl.block.Where, Address: p.addr,
		Text: textOf(CodeThicker, message.Text("name", p.name()), message.Length("got", got), message.Length("most", most))})
}
