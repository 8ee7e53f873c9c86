package evaluate

import (
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/timber"
	"scantling/internal/unit"
)

// corner reports whether the joint turns a corner, where a part goes right through
// the other, but for the lap of a half-blind dovetail.
func (f *family) corner() bool {
	switch f.kind() {
	case piece.BoxJoint, piece.MitreJoint, piece.DovetailJoint:
		return true
	}
	return false
}

// cornerDepth is how far a part goes into the other at a corner.
func (f *family) cornerDepth(a, b *part) formula.Value {
	switch {
	case f.kind() == piece.DovetailJoint && f.d.block.Has("lap"):
		lap, ok := f.lap(b)
		if thick := b.thickness(); ok && lap.Nm == 0 {
			return thick
		} else if ok && thick.OK() {
			l := f.w().ledger
			return quantity(l.Less(string(f.address())+".depth", f.w().figure(thick), lap))
		}
		return formula.Value{}
	case f.kind() == piece.MitreJoint && a.form().thick == b.form().thick && a.form().ok && b.form().ok:
		return b.size(b.form().wide) // a frame
	}
	return b.thickness()
}

// lap is the wood that stays before the tails of a half-blind dovetail.
func (f *family) lap(b *part) (piece.Figure, bool) {
	v := f.env().value(f.d.block, "lap", "")
	name := string(f.address()) + ".lap"
	if v.Kind != formula.Truth {
		l, ok := f.env().length(f.d.block, "lap", name)
		if !ok || !f.env().reader(f.d.block).Positive(l, "lap", name) {
			return piece.Figure{}, false
		}
		if thick, _ := b.thickness().Is.Length(); f.w().figure(l).Nm >= thick {
			f.w().fault(CodeTooDeepJoint, l.Where, message.Text("name", f.d.name), message.Length("depth", f.w().figure(l).Nm), message.Length("thickness", thick))
			return piece.Figure{}, false
		}
		return f.w().figure(l), true
	}
	thick := b.thickness()
	if !v.Is.Truth() || !thick.OK() {
		return piece.Figure{}, thick.OK()
	}
	return f.byRuleOf("lap", "lap", thick.Entry)
}

// saying works out an attribute that is a truth, a count, or an object of the known
// names; the count is 0 where there is none, and said is false for nothing or false.
func (f *family) saying(attribute, most string, known ...string) (v formula.Value, count int, said, ok bool) {
	nothing := formula.Value{Kind: formula.Object, Where: f.d.block.Where}
	if !f.d.block.Has(attribute) {
		return nothing, 0, false, true
	}
	v = f.env().value(f.d.block, attribute, "")
	switch {
	case v.Kind == formula.Truth:
		nothing.Where = v.Where
		return nothing, 0, v.Is.Truth(), true
	case v.Kind == formula.Quantity && most != "":
		n, _, ok := f.d.s.maker.Count(v, 1, 100, "")
		nothing.Where = v.Where
		return nothing, n, true, ok
	}
	if v, ok = f.object(attribute, known...); !ok {
		return v, 0, false, false
	}
	if n, counted := v.Field("count"); counted && most != "" {
		count, _, ok = f.d.s.maker.Count(n, 1, 100, "")
	}
	return v, count, true, ok
}

// tongue works out a tongue: a third of the thinner part, in the middle of A's
// thickness, unless the joint says otherwise.
func (f *family) tongue(j *piece.Joint, p pair) bool {
	v, _, _, ok := f.saying("tongue", "", "thickness", "from", "gap")
	thick, other := p.a.thickness(), p.b.thickness()
	if !ok || !thick.OK() || !other.OK() {
		return false
	}
	l := f.w().ledger
	out := &piece.Tongue{}
	var okT, okF, okG bool
	out.Thickness, okT = f.saidOr(v, "thickness", "tongue.thickness", func() (piece.Figure, bool) {
		thinner := l.Least(string(f.address())+".tongue.of", f.w().figure(thick), f.w().figure(other))
		return f.byRuleOf("tongue.thickness", "tongue_thickness", thinner.Entry)
	})
	out.From, okF = f.saidOr(v, "from", "tongue.from", func() (piece.Figure, bool) {
		name := string(f.address()) + ".tongue.from"
		return l.Half(name, l.Less(name, f.w().figure(thick), out.Thickness)), true
	})
	out.Gap, okG = f.field(v, "gap", string(f.address())+".tongue.gap")
	j.Tongue = out
	return okT && okF && okG
}

// lean is how far the side of a dovetail leans in over a length: at the slope that is
// said, so many times as long as its lean, or by the rule for its wood.
func (f *family) lean(v formula.Value, name string, length piece.Figure, a *part) (piece.Figure, bool) {
	w := f.w()
	if x, said := v.Field("slope"); said {
		n, ok := f.d.s.maker.Number(x, unit.DimRatio, name+".slope")
		if !ok {
			return piece.Figure{}, false
		}
		if slope := n.Is.Float(); slope < 1 || slope > 100 {
			w.fault(CodeSlope, x.Where, message.Text("name", f.d.name))
			return piece.Figure{}, false
		}
		return w.ledger.Figure(w.make(name, ledger.OpDiv, length.Entry, n.Entry)), true
	}
	rule := "lean_hardwood"
	if m := a.material(); m != nil {
		if s, err := m.s.w.shop.Wood(m.stock().Species); err == nil && s.Kind == timber.Softwood {
			rule = "lean_softwood"
		}
	}
	id, err := w.ledger.Make(name, ledger.OpCall, rule, length.Entry)
	if err != nil {
		f.d.s.maker.Refused(err, f.d.block.Where)
		return piece.Figure{}, false
	}
	return w.ledger.Figure(id), true
}

// sliding works out a sliding dovetail: two thirds of A's thickness at its neck,
// unless the joint says otherwise.
func (f *family) sliding(j *piece.Joint, p pair) bool {
	v, _, _, ok := f.saying("slide", "", "neck", "slope", "one_side")
	thick, side := p.a.thickness(), p.b.thickness()
	if !ok || !thick.OK() || !side.OK() {
		return false
	}
	out := &piece.Slide{OneSide: f.flag(v, "one_side")}
	var okN, okL bool
	out.Neck, okN = f.saidOr(v, "neck", "slide.neck", func() (piece.Figure, bool) {
		return f.byRuleOf("slide.neck", "slide_neck", side.Entry, thick.Entry)
	})
	out.Lean, okL = f.lean(v, string(f.address())+".slide.lean", j.Depth, p.a)
	j.Slide = out
	return okN && okL
}
