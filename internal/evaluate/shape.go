package evaluate

import (
	"cmp"

	"scantling/internal/carve/direction"
	"scantling/internal/document"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// form works out how the part's own axes lie: length along the grain, thickness
// along the one axis that has a single place (or, where all three sizes are
// stated, along the lesser of the two across the grain), width along the third.
func (p *part) form() shape {
	return get(p.w(), &p.shape, func() string { return p.name() + ".grain" }, p.decl.block.Where, p.workForm)
}

func (p *part) workForm() shape {
	w, b := p.w(), p.decl.block
	grain, ok := p.direction("grain")
	if !ok {
		return shape{one: -1}
	}
	out := shape{one: -1}
	out.grain, _ = grain.Axis()
	for axis := range 3 {
		n := stated(b, piece.Axis(axis))
		if b.Has("diameter") && axis != int(out.grain) {
			n++
		}
		switch {
		case n == 1 && out.one < 0 && axis != int(out.grain):
			out.one = axis
		case n == 2:
		case b.Broken || b.Unsure:
			return shape{one: -1}
		default:
			w.fault(CodePlaces, b.Where, message.Text("name", p.decl.name), message.Word("axis", axisWord(piece.Axis(axis))), message.Count("got", n))
			return shape{one: -1}
		}
	}
	across := [2]piece.Axis{(out.grain + 1) % 3, (out.grain + 2) % 3}
	if across[0] > across[1] {
		across[0], across[1] = across[1], across[0]
	}
	switch {
	case out.one >= 0:
		out.thick = piece.Axis(out.one)
	case p.roughSize(across[0]) < p.roughSize(across[1]):
		out.thick = across[0]
	default:
		out.thick = across[1]
	}
	out.wide = 3 - out.grain - out.thick
	out.show, out.ok = p.shows()
	out.frame = frameOf(grain, out)
	return out
}

// stated counts what is said of an axis: places and size.
func stated(b *document.Block, axis piece.Axis) int {
	n := 0
	for _, word := range []string{lowWords[axis], highWords[axis], sizeWords[axis]} {
		if b.Has(word) {
			n++
		}
	}
	return n
}

// roughSize is a size as stated, before joints: enough to tell the lesser.
func (p *part) roughSize(axis piece.Axis) unit.Length {
	for _, word := range []string{sizeWords[axis], "diameter"} {
		if p.decl.block.Has(word) {
			l, _ := p.stated(axis, word).Is.Length()
			return l
		}
	}
	low, _ := p.stated(axis, lowWords[axis]).Is.Length()
	high, _ := p.stated(axis, highWords[axis]).Is.Length()
	return high - low
}

// frameOf lays the part's axes: length along the grain as it is written,
// thickness towards the face that shows, width so that they are right-handed.
func frameOf(grain piece.Direction, s shape) piece.Frame {
	out := piece.Frame{Length: grain, Thickness: piece.Toward(s.thick, 1)}
	if s.show != "" {
		if axis, sign := s.show.Axis(); axis == s.thick {
			out.Thickness = piece.Toward(axis, sign)
		}
	}
	t, st := out.Thickness.Axis()
	l, sl := grain.Axis()
	sign := st * sl // of thickness × length
	if (int(t)+1)%3 != int(l) {
		sign = -sign
	}
	out.Width = piece.Toward(s.wide, sign)
	return out
}

// direction works out an attribute that names one of the six ways.
func (p *part) direction(attribute string) (piece.Direction, bool) {
	b := p.decl.block
	if !b.Has(attribute) {
		p.decl.s.missing(b, attribute)
		return "", false
	}
	word := p.e.words(b, attribute)
	d, ok := direction.Way(word)
	if !ok && word != "" {
		p.e.reader(b).BadWord(attribute, word, []string{"right", "left", "back", "front", "up", "down"})
	}
	return d, ok
}

var faceWords = []string{"left", "right", "front", "back", "top", "bottom"}

// shows works out the face that shows; a pair's inside and outside are mirrored.
func (p *part) shows() (piece.Direction, bool) {
	b := p.decl.block
	if !b.Has("show") {
		return "", true
	}
	word := p.e.words(b, "show")
	if d, ok := direction.Facing(word, p.hand); ok {
		return d, true
	}
	if word != "" {
		p.e.reader(b).BadWord("show", word, faceWords)
	}
	return "", false
}

// collectPart writes a part into the piece.
func (p *part) collect() {
	w := p.w()
	f := p.form()
	m := p.material()
	var x [3]extent
	ok := f.ok && m != nil
	for axis := range 3 {
		x[axis] = p.extentIn(piece.Axis(axis))
		ok = ok && x[axis].ok
	}
	thick := p.thickness()
	if !ok || !thick.OK() {
		return
	}
	out := piece.Part{
		Address: p.addr, Name: p.decl.name, Label: p.e.words(p.decl.block, "label"), Group: p.e.s.group, Form: p.outer(),
		Material: m.name(), Frame: f.frame, Hand: p.hand, Show: f.show, Where: p.decl.block.Where,
	}
	if p.twin != nil {
		out.Twin = p.twin.addr
	}
	var sizes [3]piece.Figure
	for axis := range 3 {
		out.Extent[axis] = piece.Extent{Low: x[axis].low, High: x[axis].high}
		name := cmp.Or(map[piece.Axis]string{f.grain: "length", f.wide: "width", f.thick: "thickness"}[piece.Axis(axis)], "size")
		sizes[axis] = w.ledger.Less(p.name()+"."+name, x[axis].high, x[axis].low)
	}
	out.Length, out.Width, out.Thickness = sizes[f.grain], sizes[f.wide], sizes[f.thick]
	if most, ok := m.thickness().Is.Length(); ok && f.one < 0 {
		p.checkThickness(m, out.Thickness.Nm, most)
	}
	if !p.formed(&out) || !p.tilted(&out) {
		return
	}
	_, out.Cut = w.record.placed[cutClass].Cuts[p.addr]
	out.CutAfter = w.addresses(p.e, p.decl.block, "after")
	p.done = &out
	w.out.Parts = append(w.out.Parts, out)
}

// checkThickness holds a stated thickness against the material's: a board may be
// planed thinner, a sheet may not.
func (p *part) checkThickness(m *material, got, most unit.Length) {
	if got > most || m.stock().Sheet && got != most {
		p.tooThick(got, most)
	}
}
