package evaluate

import (
	"scantling/internal/address"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// family is a joint block: every part of one kind into every part of another.
type family struct {
	d        *decl
	kinds    cell[piece.JointKind]
	of, into cell[[]*selection]
	overs    cell[[]*family]
	depths   map[depthKey]*cell[formula.Value]
	said     cell[formula.Value]
	tenoned  cell[formula.Value]
	pairs    []pair
}

type pair struct{ a, b *part }

// depthKey tells apart what a depth by rule depends on.
type depthKey struct{ a, b unit.Length }

func (f *family) w() *world { return f.d.s.w }

func (f *family) env() env { return env{s: f.d.s} }

// address of the joint block: joint.corner in its group.
func (f *family) address() address.Address {
	return f.d.s.addr.Child("joint").Child(slug(f.d.name))
}

var jointKinds = []piece.JointKind{
	piece.ButtJoint, piece.HousingJoint, piece.RebateJoint, piece.GrooveJoint, piece.BoxJoint, piece.HalvingJoint, piece.DowelJoint,
	piece.TongueJoint, piece.MitreJoint, piece.DovetailJoint, piece.SlidingJoint,
	piece.TenonJoint, piece.BridleJoint, piece.LooseJoint,
}

func jointWords() []string {
	out := make([]string, len(jointKinds))
	for i, k := range jointKinds {
		out[i] = string(k)
	}
	return out
}

func (f *family) kind() piece.JointKind {
	b := f.d.block
	return get(f.w(), &f.kinds, func() string { return "joint." + f.d.name + ".kind" }, b.Where, func() piece.JointKind {
		if !b.Has("kind") {
			f.d.s.missing(b, "kind")
			return ""
		}
		word := f.env().words(b, "kind")
		for _, k := range jointKinds {
			if word == string(k) {
				return k
			}
		}
		if word != "" {
			f.env().reader(b).BadWord("kind", word, jointWords())
		}
		return ""
	})
}

// enters reports whether parts grow by the joint's depth.
func (f *family) enters() bool {
	switch f.kind() {
	case piece.HousingJoint, piece.RebateJoint, piece.GrooveJoint, piece.BoxJoint, piece.TenonJoint,
		piece.TongueJoint, piece.MitreJoint, piece.DovetailJoint, piece.SlidingJoint:
		return true
	}
	return false
}

// entersAlong reports whether the joint lets a part in along an axis: tenons and
// tails go along the grain only.
func (f *family) entersAlong(p *part, axis piece.Axis) bool {
	return f.kind() != piece.TenonJoint && f.kind() != piece.DovetailJoint || p.form().grain == axis
}

func (f *family) side(attribute string) []*selection {
	at := &f.of
	if attribute == "into" {
		at = &f.into
	}
	return get(f.w(), at, func() string { return "joint." + f.d.name + "." + attribute }, f.d.block.Where, func() []*selection {
		if !f.d.block.Has(attribute) {
			f.d.s.missing(f.d.block, attribute)
			return nil
		}
		return f.env().selections(f.d.block, attribute, "part")
	})
}

// selections works out an attribute that names things, one or a list.
func (e env) selections(b *document.Block, attribute, want string) []*selection {
	a := b.Attribute(attribute)
	if a == nil {
		return nil
	}
	v := e.s.maker.Eval(a.Value, e, "")
	items := []formula.Value{v}
	if v.Kind == formula.List {
		items = v.Items
	}
	var out []*selection
	for _, item := range items {
		x, ok := item.Ref.(*selection)
		if item.OK() && !ok {
			e.s.w.fault(formula.CodeWrongReference, item.Where, message.Word("want", "kind."+want), message.Word("got", item.Word()))
		}
		if ok {
			x.where = item.Where
			out = append(out, x)
		}
	}
	return out
}

func (f *family) holds(attribute string, p *part) bool {
	for _, x := range f.side(attribute) {
		if x.holds(p) {
			return true
		}
	}
	return false
}

// enters finds the joint by which the part goes into another at a face across an
// axis, and how deep; adds is false where none enters.
func (p *part) enters(q *part, axis piece.Axis) (depth formula.Value, adds, ok bool) {
	for s := p.decl.s; s != nil; s = s.outer() {
		for _, d := range s.order {
			f := d.family
			if f == nil || !d.present() || !f.enters() || !f.holds("of", p) || !f.holds("into", q) || !f.entersAlong(p, axis) {
				continue
			}
			v := f.depth(p, q)
			return v, true, v.OK()
		}
	}
	return formula.Value{}, false, true
}

// depth is how far a goes into b.
func (f *family) depth(a, b *part) formula.Value {
	w, block := f.w(), f.d.block
	if f.corner() && b != nil {
		return f.cornerDepth(a, b)
	}
	if f.kind() == piece.TenonJoint && f.through() && b != nil {
		return b.size(a.form().grain)
	}
	if block.Has("depth") {
		name := string(f.address()) + ".depth"
		return get(w, &f.said, func() string { return "joint." + f.d.name + ".depth" }, block.Attribute("depth").Where, func() formula.Value {
			v, ok := f.env().length(block, "depth", name)
			if !ok || !f.env().reader(block).Positive(v, "depth", name) {
				return formula.Value{}
			}
			return v.At(nil)
		})
	}
	ta, tb := a.thickness(), b.thickness()
	if f.kind() == piece.TenonJoint {
		tb = b.size(a.form().grain)
	}
	if !ta.OK() || !tb.OK() {
		return formula.Value{}
	}
	la, _ := ta.Is.Length()
	lb, _ := tb.Is.Length()
	if f.depths == nil {
		f.depths = map[depthKey]*cell[formula.Value]{}
	}
	key := depthKey{la, lb}
	if f.depths[key] == nil {
		f.depths[key] = &cell[formula.Value]{}
	}
	return get(w, f.depths[key], func() string { return "joint." + f.d.name + ".depth" }, block.Where, func() formula.Value {
		return f.byRule(a, ta, tb)
	})
}

// byRule is the depth that the trade's proportions give.
func (f *family) byRule(a *part, ta, tb formula.Value) formula.Value {
	w := f.w()
	rule := map[piece.JointKind]string{piece.HousingJoint: "housing_depth", piece.RebateJoint: "rebate_depth", piece.GrooveJoint: "groove_depth",
		piece.TenonJoint: "tenon_length", piece.TongueJoint: "tongue_depth", piece.SlidingJoint: "slide_depth"}[f.kind()]
	if rule == "" {
		return formula.Value{}
	}
	if m := a.material(); f.kind() == piece.RebateJoint && m != nil && m.stock().Sheet {
		rule = "back_rebate_depth"
	}
	step := w.ledger.Given(ledger.Entry{Name: "step", Value: unit.OfLength(w.shop.Step()), Origin: ledger.HouseRule, Where: w.shop.Where})
	id, err := w.ledger.Make(string(f.address())+".depth", ledger.OpCall, rule, tb.Entry, ta.Entry, step)
	if err != nil {
		f.d.s.maker.Refused(err, f.d.block.Where)
		return formula.Value{}
	}
	return quantity(w.ledger.Figure(id))
}

// plannedDepth is the depth of the family's first pair, for joint.x.depth.
func (f *family) plannedDepth() formula.Value {
	if !f.enters() {
		if f.kind() != "" {
			f.w().fault(CodeNoDepth, f.d.block.Where, message.Text("name", f.d.name))
		}
		return formula.Value{}
	}
	if f.d.block.Has("depth") && !f.corner() {
		return f.depth(nil, nil)
	}
	for _, x := range f.side("of") {
		for _, a := range x.nodes() {
			for _, y := range f.side("into") {
				for _, b := range y.nodes() {
					pa, okA := a.(*part)
					pb, okB := b.(*part)
					if okA && okB {
						return f.depth(pa, pb)
					}
				}
			}
		}
	}
	return formula.Value{}
}
