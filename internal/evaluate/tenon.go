package evaluate

import (
	"scantling/internal/carve/direction"
	"scantling/internal/diag"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/proportion"
	"scantling/internal/unit"
)

// tenonSaid is what the joint says of its tenons, worked out once; nothing said is
// an object without fields.
func (f *family) tenonSaid() formula.Value {
	b := f.d.block
	return get(f.w(), &f.tenoned, func() string { return "joint." + f.d.name + ".tenon" }, b.Where, func() formula.Value {
		if !b.Has("tenon") {
			return formula.Value{Kind: formula.Object, Where: b.Where}
		}
		known := []string{"thickness", "from"}
		if f.kind() == piece.TenonJoint {
			known = append(known, "left", "right", "front", "back", "bottom", "top", "haunch", "through", "round", "mitred")
		}
		v, ok := f.object("tenon", known...)
		if !ok {
			return formula.Value{}
		}
		return v
	})
}

// through reports whether the joint's tenons go right through.
func (f *family) through() bool { return f.flag(f.tenonSaid(), "through") }

// flag is a truth of an object; false where nothing is said.
func (f *family) flag(v formula.Value, name string) bool {
	x, found := v.Field(name)
	if !found {
		return false
	}
	t, _ := f.d.s.maker.Truth(x)
	return t.Is.Truth()
}

// byRuleOf is a figure that a rule of the trade gives, with the shop's step as its
// last argument.
func (f *family) byRuleOf(name, rule string, args ...ledger.ID) (piece.Figure, bool) {
	w := f.w()
	step := w.ledger.Given(ledger.Entry{Name: "step", Value: unit.OfLength(w.shop.Step()), Origin: ledger.HouseRule, Where: w.shop.Where})
	id, err := w.ledger.Make(string(f.address())+"."+name, ledger.OpCall, rule, append(args, step)...)
	if err != nil {
		f.d.s.maker.Refused(err, f.d.block.Where)
		return piece.Figure{}, false
	}
	return w.ledger.Figure(id), true
}

// practice is a figure of the trade that depends on nothing.
func (f *family) practice(name string, value unit.Length, key string) piece.Figure {
	w := f.w()
	return w.ledger.Figure(w.ledger.Given(ledger.Entry{Name: string(f.address()) + "." + name, Value: unit.OfLength(value), Origin: ledger.Reference, Source: key, Status: "practice"}))
}

// saidOr is a length of an object, or what the rule gives where it is not said.
func (f *family) saidOr(v formula.Value, field, name string, rule func() (piece.Figure, bool)) (piece.Figure, bool) {
	if _, said := v.Field(field); said {
		return f.field(v, field, string(f.address())+"."+name)
	}
	return rule()
}

// thickAndFrom works out how thick a tenon is and where it lies: a third, in the
// middle, unless the joint says otherwise.
func (f *family) thickAndFrom(v formula.Value, a *part) (*piece.Tenon, bool) {
	if !v.OK() && v.Kind != formula.Object {
		return nil, false
	}
	thick := a.thickness()
	if !thick.OK() {
		return nil, false
	}
	out := &piece.Tenon{}
	var okT, okF bool
	out.Thickness, okT = f.saidOr(v, "thickness", "tenon.thickness", func() (piece.Figure, bool) {
		return f.byRuleOf("tenon.thickness", "tenon_thickness", thick.Entry)
	})
	if !okT {
		return nil, false
	}
	out.From, okF = f.saidOr(v, "from", "tenon.from", func() (piece.Figure, bool) {
		l, name := f.w().ledger, string(f.address())+".tenon.from"
		return l.Half(name, l.Less(name, f.w().figure(thick), out.Thickness)), true
	})
	return out, okF
}

// bridle works out the tenon of a bridle: as wide as its part, and as long as what
// it crosses is wide.
func (f *family) bridle(j *piece.Joint, p pair) bool {
	out, ok := f.thickAndFrom(f.tenonSaid(), p.a)
	size := p.b.size(p.a.form().grain)
	if !ok || !size.OK() {
		return false
	}
	none := f.w().ledger.Less(string(f.address())+".tenon.shoulder", out.Thickness, out.Thickness)
	out.Low, out.High = none, none
	j.Tenon, j.Depth = out, f.w().figure(size)
	return true
}

// tenon works out a tenon: its thickness, its shoulders, its haunch where it stands
// at the end of the part that it goes into, and the glue room below it.
func (f *family) tenon(j *piece.Joint, p pair) bool {
	v := f.tenonSaid()
	out, ok := f.thickAndFrom(v, p.a)
	if !ok {
		return false
	}
	out.Through, out.Round, out.Mitred = f.flag(v, "through"), f.flag(v, "round"), f.flag(v, "mitred")
	j.Tenon = out
	if !f.shoulders(j, p, v) {
		return false
	}
	if clear := f.d.block.Has("clear"); !clear && !out.Through {
		j.ClearDeep = f.practice("glue-room", proportion.GlueRoom().Value, proportion.GlueRoom().Source.Key)
	}
	return true
}

// shoulders works out the shoulders at the tenon's edges and the haunch.
func (f *family) shoulders(j *piece.Joint, p pair, v formula.Value) bool {
	w, run := f.w(), p.a.form().wide
	for _, field := range v.Fields {
		if axis, _, face := direction.Face(field.Name); face && axis != run {
			w.report(diag.Diagnostic{Severity: diag.Error, Code: CodeShoulder, Where: field.Value.Where, Address: j.Address,
				Text: textOf(CodeShoulder, message.Text("word", field.Name), message.Word("axis", axisWord(run)))})
			return false
		}
	}
	ea := p.a.extentIn(run)
	if !ea.ok {
		return false
	}
	width := w.ledger.Less(string(j.Address)+".width", ea.high, ea.low)
	near := f.nearEnd(j, p, run)
	haunch, said := v.Field("haunch")
	for k, name := range [2]string{lowWords[run], highWords[run]} {
		rule := func() (piece.Figure, bool) {
			if near[k] {
				return f.byRuleOf("tenon."+name, "haunch_shoulder", width.Entry, j.Tenon.Thickness.Entry)
			}
			return f.byRuleOf("tenon."+name, "tenon_shoulder", width.Entry)
		}
		s, ok := f.saidOr(v, name, "tenon."+name, rule)
		if !ok {
			return false
		}
		*[2]*piece.Figure{&j.Tenon.Low, &j.Tenon.High}[k] = s
		if near[k] || said && k == 1 && !near[0] {
			j.Tenon.HaunchHigh = k == 1
		}
	}
	switch {
	case said && haunch.Kind != formula.Truth:
		h, ok := f.field(v, "haunch", string(f.address())+".tenon.haunch")
		j.Tenon.Haunch = h
		return ok
	case said && haunch.Is.Truth(), !said && (near[0] || near[1]):
		j.Tenon.Haunch = w.ledger.Same(string(f.address())+".tenon.haunch", j.Tenon.Thickness)
	}
	return true
}

// nearEnd tells at which ends of the tenon's width the part that it goes into ends
// too, so that a mortise as wide as the tenon's part would run out there.
func (f *family) nearEnd(j *piece.Joint, p pair, run piece.Axis) [2]bool {
	if p.b.form().grain != run {
		return [2]bool{}
	}
	a, b := p.a.extentIn(run), p.b.extentIn(run)
	if !a.ok || !b.ok {
		return [2]bool{}
	}
	end, err := proportion.MortiseEnd(j.Tenon.Thickness.Nm)
	if err != nil {
		return [2]bool{}
	}
	return [2]bool{a.low.Nm-b.low.Nm < end.Value, b.high.Nm-a.high.Nm < end.Value}
}
