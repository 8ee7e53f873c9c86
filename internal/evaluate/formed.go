package evaluate

import (
	"cmp"

	"scantling/internal/carve"
	"scantling/internal/carve/direction"
	"scantling/internal/carve/fault"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
)

// forms are the words for what kind of thing a part is.
var forms = []string{"board", "outline", "round"}

// outer is the form of the part: as said, or what its outline or its diameter
// makes it.
func (p *part) outer() piece.Form {
	b := p.decl.block
	switch word := p.e.words(b, "form"); {
	case word == "" && b.Has("outline"):
		return piece.Outline
	case word == "" && (b.Has("diameter") || b.Has("profile")):
		return piece.Round
	case word == "" || word == "board":
		return piece.Board
	case word == "outline":
		return piece.Outline
	case word == "round":
		return piece.Round
	default:
		p.e.reader(b).BadWord("form", word, forms)
		return piece.Board
	}
}

// sized is the part's size along an axis as it is written, and whether it is: a
// round part has its diameter both ways across the grain.
func (p *part) sized(axis piece.Axis) (v formula.Value, said bool) {
	b := p.decl.block
	switch {
	case b.Has(sizeWords[axis]):
		return p.stated(axis, sizeWords[axis]), true
	case b.Has("diameter") && p.form().ok && axis != p.form().grain:
		return p.stated(axis, "diameter"), true
	}
	return formula.Value{}, false
}

// formed works out the outline or the profile of a part that is not a plain board.
func (p *part) formed(out *piece.Part) bool {
	if out.Form == piece.Board {
		return true
	}
	return carve.Form(carve.Site{
		Reader: p.e.reader(p.decl.block), Shop: p.w().shop, Part: *out, Name: p.decl.name, Address: p.addr,
		Carried: func(v formula.Value) formula.Value { return p.w().carried(v, p.w().root.frame) },
	}, out)
}

// tilted works out how a part leans out of the piece's axes: each turn moves the
// side opposite to the one named by from.
func (p *part) tilted(out *piece.Part) bool {
	b := p.decl.block
	if !b.Has("leans") {
		return true
	}
	v := p.e.value(b, "leans", "")
	items := []formula.Value{v}
	if v.Kind == formula.List {
		items = v.Items
	}
	last := &out.Tilt
	for i, item := range items {
		t, ok := p.tilt(item, out)
		if !ok || i >= 3 {
			if ok {
				p.w().fault(CodeLeans, v.Where, message.Text("name", p.decl.name))
			}
			return false
		}
		*last = t
		last = &t.Then
	}
	return true
}

// tilt reads one turn: { toward = "back", by = "12 deg", from = "bottom" }.
func (p *part) tilt(v formula.Value, out *piece.Part) (*piece.Tilt, bool) {
	w := p.w()
	toward, okT := p.turnWord(v, "toward", direction.Way)
	from, okF := p.turnWord(v, "from", func(word string) (piece.Direction, bool) { return direction.Facing(word, "") })
	by, said := v.Field("by")
	if !v.OK() {
		return nil, false
	}
	to, sign := toward.Axis()
	low, side := from.Axis()
	if v.Kind != formula.Object || len(v.Fields) != 3 || !okT || !okF || !said || to == low {
		w.fault(CodeLeans, v.Where, message.Text("name", p.decl.name))
		return nil, false
	}
	angle, ok := p.e.s.maker.Angle(by, p.name()+".leans")
	if !ok {
		return nil, false
	}
	if x := angle.Is.Float(); x <= 0 || x >= 90 {
		w.fault(fault.CodeAngle, by.Where, message.Text("name", p.name()+".leans"), message.Ratio("got", x), message.Ratio("least", 0), message.Ratio("most", 90))
		return nil, false
	}
	t := &piece.Tilt{About: 3 - to - low, Degrees: angle.Is.Float()}
	// Anticlockwise about an axis is from the next axis towards the one after it.
	// The far side lies against the direction that the near one faces.
	turn := -side * sign
	if (t.About+1)%3 != low {
		turn = -turn
	}
	t.Degrees = float64(float64(turn) * t.Degrees)
	for a := range 3 {
		e := out.Extent[a]
		switch {
		case piece.Axis(a) != low:
			t.Through[a] = w.ledger.Half("", w.ledger.Sum("", e.Low, e.High))
		case side < 0:
			t.Through[a] = e.Low
		default:
			t.Through[a] = e.High
		}
	}
	return t, true
}

// turnWord reads a direction of a turn; for the right one of a pair left and right
// are exchanged.
func (p *part) turnWord(v formula.Value, field string, read func(string) (piece.Direction, bool)) (piece.Direction, bool) {
	f, said := v.Field(field)
	if !said {
		return "", false
	}
	d, ok := read(f.Is.Text())
	if axis, _ := d.Axis(); ok && p.hand == "right" && axis == piece.Right {
		d = d.Opposite()
	}
	return cmp.Or(d, piece.ToRight), ok
}
