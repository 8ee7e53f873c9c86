package evaluate

import (
	"scantling/internal/carve/direction"
	"scantling/internal/diag"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// figures fills in everything that the family says of one pair.
func (f *family) figures(j *piece.Joint, p pair) bool {
	e, b, w := f.env(), f.d.block, f.w()
	if f.enters() {
		d := f.depth(p.a, p.b)
		if !d.OK() {
			return false
		}
		j.Depth = w.figure(d)
		if t, _ := p.b.thickness().Is.Length(); !f.corner() && f.kind() != piece.TenonJoint && p.a.form().thick != p.b.form().thick && j.Depth.Nm >= t {
			w.report(diag.Diagnostic{Severity: diag.Error, Code: CodeTooDeepJoint, Where: b.Where, Address: j.Address,
				Text: textOf(CodeTooDeepJoint, message.Text("name", f.d.name), message.Length("depth", j.Depth.Nm), message.Length("thickness", t))})
			return false
		}
	}
	j.Glue = e.words(b, "glue")
	if b.Has("slides") {
		v, _ := f.d.s.maker.Truth(e.value(b, "slides", ""))
		j.Slides = v.Is.Truth()
	}
	j.Over = f.addressesOver()
	ok := f.stops(j, p) && f.clearances(j)
	for _, how := range []string{"pins", "nails", "screws"} {
		if b.Has(how) {
			j.Fasteners = f.fasteners(how, j, p)
			ok = ok && j.Fasteners != nil
		}
	}
	switch f.kind() {
	case piece.BoxJoint:
		ok = f.fingers(j, p) && ok
	case piece.DowelJoint:
		ok = f.dowels(j, p) && ok
	case piece.TongueJoint:
		ok = f.tongue(j, p) && ok
	case piece.MitreJoint:
		ok = f.mitre(j, p) && ok
	case piece.DovetailJoint:
		ok = f.dovetail(j, p) && ok
	case piece.SlidingJoint:
		ok = f.sliding(j, p) && ok
	case piece.TenonJoint:
		ok = f.tenon(j, p) && ok
	case piece.BridleJoint:
		ok = f.bridle(j, p) && ok
	case piece.LooseJoint:
		ok = f.loose(j, p) && ok
	}
	return ok
}

// object works out an attribute that holds named values, and refuses names that
// it does not know.
func (f *family) object(attribute string, known ...string) (formula.Value, bool) {
	v := f.env().value(f.d.block, attribute, "")
	if !v.OK() {
		return v, false
	}
	if v.Kind != formula.Object {
		f.w().fault(formula.CodeWrongKind, v.Where, message.Word("got", v.Word()), message.Word("want", "kind.object"))
		return v, false
	}
	for _, field := range v.Fields {
		ok := false
		for _, k := range known {
			ok = ok || k == field.Name
		}
		if !ok {
			f.w().fault(formula.CodeUnknownField, field.Value.Where, message.Text("word", field.Name), message.Text("block", attribute), message.Text("known", joinWords(known)))
			return v, false
		}
	}
	return v, true
}

// field works out a length of an object; the zero figure if it is not there.
func (f *family) field(v formula.Value, name string, ledgerName string) (piece.Figure, bool) {
	x, found := v.Field(name)
	if !found {
		return piece.Figure{}, true
	}
	l, ok := f.d.s.maker.Length(x, ledgerName)
	if !ok {
		return piece.Figure{}, false
	}
	nm, _ := l.Is.Length()
	if nm < 0 {
		f.w().fault(formula.CodeNotPositive, x.Where, message.Text("name", name), message.Length("got", nm))
		return piece.Figure{}, false
	}
	return f.w().figure(l), true
}

// stops works out how far short of the edge a joint ends, and converts the words
// to the low and the high end of its run.
func (f *family) stops(j *piece.Joint, p pair) bool {
	if !f.d.block.Has("stopped") {
		return true
	}
	v, ok := f.object("stopped", "left", "right", "front", "back", "bottom", "top")
	if !ok {
		return false
	}
	run := runOf(p)
	for _, field := range v.Fields {
		axis, low, _ := direction.Face(field.Name)
		if axis != run {
			f.w().fault(CodeStopped, field.Value.Where, message.Text("word", field.Name), message.Word("axis", axisWord(run)))
			return false
		}
		figure, ok := f.stop(v, field, j, p)
		if !ok {
			return false
		}
		if low {
			j.StopLow = figure
		} else {
			j.StopHigh = figure
		}
	}
	return true
}

// stop is one stopped end: a length, or true for the rule of the trade.
func (f *family) stop(v formula.Value, field formula.Field, j *piece.Joint, p pair) (piece.Figure, bool) {
	name := string(j.Family) + ".stopped." + field.Name
	if field.Value.Kind != formula.Truth {
		return f.field(v, field.Name, name)
	}
	if !field.Value.Is.Truth() {
		return piece.Figure{}, true
	}
	w := f.w()
	step := w.ledger.Given(ledger.Entry{Name: "step", Value: unit.OfLength(w.shop.Step()), Origin: ledger.HouseRule, Where: w.shop.Where})
	id, err := w.ledger.Make(name, ledger.OpCall, "stopped_end", p.b.thickness().Entry, step)
	if err != nil {
		f.d.s.maker.Refused(err, field.Value.Where)
		return piece.Figure{}, false
	}
	return w.ledger.Figure(id), true
}

// runOf is the axis that a joint between two boards runs along: across the
// thickness of neither; for two that lie the same way, along the longer.
func runOf(p pair) piece.Axis {
	a, b := p.a.form().thick, p.b.form().thick
	if a != b {
		return 3 - a - b
	}
	return p.a.form().grain
}

func (f *family) clearances(j *piece.Joint) bool {
	if !f.d.block.Has("clear") {
		return true
	}
	v, ok := f.object("clear", "across", "deep")
	if !ok {
		return false
	}
	var okA, okD bool
	j.ClearAcross, okA = f.field(v, "across", string(j.Family)+".clear.across")
	j.ClearDeep, okD = f.field(v, "deep", string(j.Family)+".clear.deep")
	return okA && okD
}
