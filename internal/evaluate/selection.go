package evaluate

import (
	"slices"

	"scantling/internal/carve/direction"
	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/message"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// selection is what a name of declared things stands for before it is known how
// many there are: part.divider, part.divider[2], case.side.left, drawer.front.
type selection struct {
	decl  *decl
	picks []choice // the first narrows decl's own instances, later ones go down
	where diag.Place
}

// choice is one level of a selection: a name and, if given, a number and a hand.
type choice struct {
	name string
	nth  int
	hand string
}

func selected(d *decl, where diag.Place) formula.Value {
	return formula.Value{Kind: formula.Reference, Ref: &selection{decl: d, picks: []choice{{name: d.name}}, where: where}, Where: where}
}

// narrowed returns the selection with its last choice changed.
func (x *selection) narrowed(change func(*choice)) formula.Value {
	out := &selection{decl: x.decl, picks: slices.Clone(x.picks), where: x.where}
	change(&out.picks[len(out.picks)-1])
	return formula.Value{Kind: formula.Reference, Ref: out, Where: x.where}
}

// nodes returns everything that the selection stands for, in order.
func (x *selection) nodes() []node {
	at := x.picks[0].keep(x.decl.members())
	for _, p := range x.picks[1:] {
		var next []node
		for _, n := range at {
			s, ok := n.(*scope)
			if !ok {
				continue
			}
			if d := s.inside(p.name); d != nil {
				next = append(next, p.keep(d.members())...)
			}
		}
		at = next
	}
	return at
}

func (p choice) keep(all []node) []node {
	if p.nth == 0 && p.hand == "" {
		return all
	}
	var out []node
	for _, n := range all {
		if p.fits(n) {
			out = append(out, n)
		}
	}
	return out
}

func (p choice) fits(n node) bool {
	nth, hand := 0, ""
	switch n := n.(type) {
	case *part:
		nth, hand = n.nth, n.hand
	case *space:
		nth = n.nth
	case *scope:
		nth = n.nth
	}
	return (p.nth == 0 || p.nth == nth || p.nth == 1 && nth == 0) && (p.hand == "" || p.hand == hand)
}

// inside looks up what a group holds under a name.
func (s *scope) inside(name string) *decl {
	for _, kind := range []string{"part", "space", "group", "use"} {
		if d := s.own(kind, name); d != nil {
			return d
		}
	}
	return nil
}

// holds reports whether a part is one of the selection's, without asking how
// many there are.
func (x *selection) holds(p *part) bool {
	last := len(x.picks) - 1
	if p.decl.name != x.picks[last].name || !x.picks[last].fits(p) {
		return false
	}
	s := p.decl.s
	for i := last - 1; i >= 0; i-- {
		for s != nil && (s.decl == nil || s.decl.name == "") { // recipes without a name are see-through
			s = s.outer()
		}
		if s == nil || s.decl.name != x.picks[i].name || !x.picks[i].fits(s) {
			return false
		}
		if i == 0 {
			return s.decl == x.decl
		}
		s = s.outer()
	}
	return p.decl == x.decl
}

// outer is the scope around, through the borders of documents.
func (s *scope) outer() *scope {
	if s.up != nil {
		return s.up
	}
	return s.host
}

// pickSelection takes a member of things that are not yet counted.
func (e env) pickSelection(x *selection, step document.Step) (formula.Value, bool) {
	last := x.picks[len(x.picks)-1]
	if step.Index != nil {
		return e.numbered(x, step), true
	}
	switch kind := x.kind(); kind {
	case "group", "use":
		return e.pickGroup(x, step)
	case "part":
		if last.hand == "" && x.handed() && (step.Member == "left" || step.Member == "right") {
			return x.narrowed(func(c *choice) { c.hand = step.Member }), true
		}
		if p, ok := only[*part](e, x, step.Where); ok {
			return p.member(step.Member)
		}
		return formula.Value{}, true
	case "space":
		if s, ok := only[*space](e, x, step.Where); ok {
			return s.member(step.Member)
		}
		return formula.Value{}, true
	case "joint":
		if step.Member == "depth" {
			return x.decl.family.plannedDepth(), true
		}
	case "fit":
		return e.s.w.fitMember(x.decl, step.Member)
	case "cut":
		return x.decl.lidMember(step.Member)
	}
	return formula.Value{}, false
}

// kind is the block type of what the selection stands for.
func (x *selection) kind() string {
	if d := x.declared(); d != nil {
		return d.block.Type
	}
	return "none"
}

// handed reports whether the selection stands for parts that come in pairs.
func (x *selection) handed() bool {
	d := x.declared()
	return d != nil && d.block.Has("mirror")
}

// numbered takes number n of repeated things, from 1.
func (e env) numbered(x *selection, step document.Step) formula.Value {
	at := e.s.maker.Eval(step.Index, e, "")
	n, _, ok := e.s.maker.Count(at, 1, maxRepeat, "")
	if !ok {
		return formula.Value{}
	}
	if last := x.picks[len(x.picks)-1]; last.nth != 0 {
		e.s.w.fault(CodeNoMember, step.Where, message.Text("name", "[ ]"), message.Word("of", "kind.reference"))
		return formula.Value{}
	}
	d := x.declared()
	if d == nil || d.failed {
		return formula.Value{}
	}
	if most := d.repeats(); n > most {
		e.s.w.fault(CodeBeyond, step.Where, message.Text("name", d.name), message.Count("got", n), message.Count("most", most))
		return formula.Value{}
	}
	return x.narrowed(func(c *choice) { c.nth = n })
}

// declared is the block that the selection leads to; nil if there is no
// instance of a group on the way.
func (x *selection) declared() *decl {
	d := x.decl
	for _, p := range x.picks[1:] {
		members := d.members()
		if len(members) == 0 {
			return nil
		}
		s, ok := members[0].(*scope)
		if !ok {
			return nil
		}
		if d = s.inside(p.name); d == nil {
			return nil
		}
	}
	return d
}

// failed reports whether it could not be worked out how many there are.
func (x *selection) failed() bool {
	d := x.declared()
	return x.decl.failed || d == nil || d.failed
}

// pickGroup goes down into a group or a recipe in use.
func (e env) pickGroup(x *selection, step document.Step) (formula.Value, bool) {
	out := &selection{decl: x.decl, picks: append(slices.Clone(x.picks), choice{name: step.Member}), where: x.where}
	nodes := x.nodes()
	if len(nodes) == 0 {
		return formula.Value{Kind: formula.Reference, Ref: out}, true // none of them: an empty selection
	}
	s, ok := nodes[0].(*scope)
	if !ok {
		return formula.Value{}, false
	}
	if s.inside(step.Member) != nil {
		return formula.Value{Kind: formula.Reference, Ref: out}, true
	}
	if d := s.types["output"][step.Member]; d != nil && s.host != nil {
		if len(nodes) > 1 {
			e.several(x, step.Where, len(nodes))
			return formula.Value{}, true
		}
		return env{s: s}.value(d.block, "value", string(s.addr.Child(step.Member))), true
	}
	if axis, low, ok := direction.Face(step.Member); ok && low && len(nodes) == 1 {
		return s.w.originPlace(s, axis), true
	}
	var known []string
	for _, d := range s.order {
		known = append(known, d.name)
	}
	return e.unknown(nil, step.Where, step.Member, known), true
}

// only returns the one thing that a selection stands for, or reports that there
// are none or several.
func only[T node](e env, x *selection, where diag.Place) (T, bool) {
	var none T
	nodes := x.nodes()
	if len(nodes) != 1 {
		e.several(x, where, len(nodes))
		return none, false
	}
	t, ok := nodes[0].(T)
	return t, ok
}

func (e env) several(x *selection, where diag.Place, n int) {
	if n == 0 && x.failed() {
		return
	}
	e.s.w.fault(CodeSeveral, where, message.Text("name", x.picks[len(x.picks)-1].name), message.Count("got", n))
}

var sizeWords = [3]string{"wide", "deep", "high"}
var lowWords = [3]string{"left", "front", "bottom"}
var highWords = [3]string{"right", "back", "top"}

// quantity is a length that is already in the ledger.
func quantity(f piece.Figure) formula.Value {
	return formula.Value{Kind: formula.Quantity, Is: unit.OfLength(f.Nm), Entry: f.Entry}
}
