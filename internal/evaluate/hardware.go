package evaluate

import (
	"scantling/internal/carve/direction"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/fitting"
	"scantling/internal/formula"
	"scantling/internal/hardware"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/timber"
)

// collectHardware writes a fitting into the piece: with a side it is laid against
// its part, one for each part that it is on; else it is only bought.
func (d *decl) collectHardware() {
	if !d.present() {
		return
	}
	w, e := d.s.w, env{s: d.s}
	if !d.block.Has("kind") {
		d.s.missing(d.block, "kind")
		return
	}
	out := piece.Hardware{
		Address: d.top(), Kind: e.words(d.block, "kind"), Label: e.words(d.block, "label"), Count: 1, Note: e.words(d.block, "note"), Where: d.block.Where,
	}
	if d.block.Has("count") {
		out.Count, _, _ = d.s.maker.Count(e.value(d.block, "count", ""), 0, maxRepeat, "")
	}
	if d.block.Has("side") {
		d.fit(out)
		return
	}
	for _, word := range []string{"with", "runs", "toward", "margin", "centre"} {
		if a := d.block.Attribute(word); a != nil {
			w.fault(CodeNoSide, a.Where, message.Text("name", d.name), message.Text("word", word))
			return
		}
	}
	if on := w.addresses(e, d.block, "on"); len(on) > 0 {
		out.On = on[0]
	}
	w.out.Hardware = append(w.out.Hardware, out)
}

// fit lays a fitting against every part that it is on.
func (d *decl) fit(out piece.Hardware) {
	w, e := d.s.w, env{s: d.s}
	if !d.block.Has("on") {
		d.s.missing(d.block, "on")
		return
	}
	f, ok := d.fittingOf(out.Kind)
	if !ok {
		return
	}
	on, with := d.partsOf(e, "on"), d.partsOf(e, "with")
	for i, p := range on {
		h := out
		if len(on) > 1 {
			h.Address = d.s.addr.Child(d.block.Type).Nth(slug(d.name), i+1)
		}
		j := fitting.Job{Name: slug(d.name), Fitting: f, Count: out.Count, On: p.done, WoodOn: p.wood(), Ledger: w.ledger, Where: d.block.Where}
		h.On = p.addr
		if len(with) > 0 {
			q := with[min(i, len(with)-1)]
			j.With, j.WoodWith, h.With = q.done, q.wood(), q.addr
		}
		if !d.lies(&j, p) {
			return
		}
		made, fault := fitting.Lay(j)
		if fault != nil {
			w.report(diag.Diagnostic{Severity: diag.Error, Code: fault.Code, Text: fault.Text, Where: d.block.Where, Address: h.Address})
			return
		}
		h.Side, h.Bodies = j.Side, made.Bodies
		w.out.Hardware = append(w.out.Hardware, h)
		if !d.keep(made.Cuts) {
			return
		}
	}
}

// fittingOf returns the fitting of a kind: as the shop states it, else as the
// catalogue has it.
func (d *decl) fittingOf(kind string) (hardware.Fitting, bool) {
	if x, ok := d.s.w.shop.Fitting(kind); ok && x.Sizes != nil {
		return *x.Sizes, true
	}
	f, err := hardware.FindFitting(kind)
	if err != nil {
		d.s.maker.Refused(err, d.block.Attribute("kind").Value.Place())
	}
	return f, err == nil
}

// partsOf lists the parts that an attribute names and that are in the piece.
func (d *decl) partsOf(e env, attribute string) []*part {
	var out []*part
	for _, x := range e.selections(d.block, attribute, "part") {
		for _, n := range x.nodes() {
			p, ok := n.(*part)
			if !ok {
				d.s.w.fault(formula.CodeWrongReference, x.where, message.Word("want", "kind.part"), message.Word("got", "kind.reference"))
				continue
			}
			if p.done != nil {
				out = append(out, p)
			}
		}
	}
	return out
}

// wood says how hard the part's wood is; sheets count as hard.
func (p *part) wood() hardware.Wood {
	if m := p.material(); m != nil {
		if s, err := m.s.w.shop.Wood(m.stock().Species); err == nil && s.Kind == timber.Softwood {
			return hardware.SoftWood
		}
	}
	return hardware.HardWood
}

// lies works out the side that a fitting lies against and where on it.
func (d *decl) lies(j *fitting.Job, p *part) bool {
	e, b := env{s: d.s}, d.block
	var ok bool
	if j.Side, ok = d.facing("side", p); !ok {
		return false
	}
	if b.Has("toward") {
		if j.Toward, ok = d.facing("toward", p); !ok {
			return false
		}
	}
	if j.Runs, ok = d.runs(j); !ok {
		return false
	}
	side, _ := j.Side.Axis()
	if j.Margin, ok = d.placed(e, b, "margin", p, j.Runs); !ok {
		return false
	}
	j.Centre, ok = d.placed(e, b, "centre", p, 3-side-j.Runs)
	return ok
}

// facing reads a word for a side of the part.
func (d *decl) facing(attribute string, p *part) (piece.Direction, bool) {
	word := env{s: d.s}.words(d.block, attribute)
	way, ok := direction.Facing(word, p.hand)
	if !ok && word != "" {
		env{s: d.s}.reader(d.block).BadWord(attribute, word, faceWords)
	}
	return way, ok
}

// runs is the axis that the fitting's length lies along: as said; of a hinge, the
// one that is left; else along the grain, or along the part's width on its ends.
func (d *decl) runs(j *fitting.Job) (piece.Axis, bool) {
	side, _ := j.Side.Axis()
	if d.block.Has("runs") {
		word := env{s: d.s}.words(d.block, "runs")
		way, ok := direction.Way(word)
		if !ok {
			env{s: d.s}.reader(d.block).BadWord("runs", word, []string{"right", "back", "up"})
			return 0, false
		}
		axis, _ := way.Axis()
		return axis, true
	}
	if toward, _ := j.Toward.Axis(); j.Toward != "" && toward != side {
		return 3 - side - toward, true
	}
	from := j.On
	if j.Fitting.Kind == hardware.Button && j.With != nil {
		from = j.With
	}
	if along, _ := from.Frame.Length.Axis(); along != side {
		return along, true
	}
	along, _ := from.Frame.Width.Axis()
	if along == side {
		along, _ = from.Frame.Thickness.Axis()
	}
	return along, true
}

// placed works out a place along an axis: a plain length counts from the part's low
// end, a face is where that face is; nil where nothing is said.
func (d *decl) placed(e env, b *document.Block, attribute string, p *part, axis piece.Axis) (*piece.Figure, bool) {
	if !b.Has(attribute) {
		return nil, true
	}
	w := d.s.w
	v, ok := e.length(b, attribute, string(d.top())+"."+attribute)
	if !ok {
		return nil, false
	}
	if v.Position != nil {
		if v.Position.Axis != int(axis) {
			w.fault(CodeWrongAxis, b.Attribute(attribute).Value.Place(), message.Text("name", attribute),
				message.Word("got", axisWord(piece.Axis(v.Position.Axis))), message.Word("want", axisWord(axis)))
			return nil, false
		}
		if v = w.carried(v, w.root.frame); !v.OK() {
			return nil, false
		}
		f := w.ledger.Less(string(d.top())+"."+attribute, w.figure(v), p.done.Extent[axis].Low)
		return &f, true
	}
	f := w.figure(v)
	return &f, true
}
