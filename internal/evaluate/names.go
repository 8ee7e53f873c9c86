package evaluate

import (
	"maps"
	"slices"
	"strings"

	"scantling/internal/diag"
	"scantling/internal/document"
	"scantling/internal/formula"
	"scantling/internal/ledger"
	"scantling/internal/message"
	"scantling/internal/unit"
)

// families are the words that lead to declared blocks: part.side, joint.corner.
var families = []string{"part", "space", "joint", "cut", "series", "hardware", "fit", "measure", "use"}

// Name resolves a dotted name where a formula stands.
func (e env) Name(n *document.Name) formula.Value {
	v, steps := e.root(n)
	if !v.OK() {
		return v
	}
	v = e.Pick(v, steps)
	v.Where = n.Place()
	return e.s.w.carried(v, e.s.frame)
}

// root resolves the first one or two steps of a name.
func (e env) root(n *document.Name) (formula.Value, []document.Step) {
	switch n.Root {
	case "nth":
		return e.nthValue(e.number(), n), n.Steps
	case "nth_of":
		return e.nthOf(n)
	case "input", "sizes", "material", "contents":
		name, ok := member(n.Steps)
		if !ok {
			return e.unknown(n, n.Place(), n.Root, nil), nil
		}
		return e.value1(n, n.Root, name), n.Steps[1:]
	}
	if slices.Contains(families, n.Root) {
		name, ok := member(n.Steps)
		if !ok {
			return e.unknown(n, n.Place(), n.Root, nil), nil
		}
		d := e.s.find(n.Root, name)
		if d == nil {
			return e.unknown(n, n.Steps[0].Where, name, e.s.known(n.Root)), nil
		}
		return selected(d, n.Place()), n.Steps[1:]
	}
	if e.bare {
		if v, ok := e.s.outermost().size(n.Root); ok {
			return v, n.Steps
		}
	}
	for _, kind := range []string{"group", "use"} {
		if d := e.s.find(kind, n.Root); d != nil {
			return selected(d, n.Place()), n.Steps
		}
	}
	return e.unknown(n, e.rootPlace(n), n.Root, e.rootNames()), nil
}

// value1 resolves input.x, sizes.x, material.x and contents.x.
func (e env) value1(n *document.Name, root, name string) formula.Value {
	top := e.s.outermost()
	switch root {
	case "input":
		if in := top.inputs[name]; in != nil {
			return in.get()
		}
		return e.unknown(n, n.Steps[0].Where, name, slices.Sorted(maps.Keys(top.inputs)))
	case "sizes":
		if v, ok := top.size(name); ok {
			return v
		}
		return e.unknown(n, n.Steps[0].Where, name, slices.Sorted(maps.Keys(top.sizes)))
	case "material":
		if m := top.materials[name]; m != nil {
			return formula.Value{Kind: formula.Reference, Ref: m}
		}
		return e.unknown(n, n.Steps[0].Where, name, slices.Sorted(maps.Keys(top.materials)))
	}
	if c := top.contents[name]; c != nil {
		return formula.Value{Kind: formula.Reference, Ref: c}
	}
	return e.unknown(n, n.Steps[0].Where, name, slices.Sorted(maps.Keys(top.contents)))
}

func member(steps []document.Step) (string, bool) {
	if len(steps) == 0 || steps[0].Index != nil {
		return "", false
	}
	return steps[0].Member, true
}

func (e env) nthValue(nth int, n *document.Name) formula.Value {
	if nth == 0 {
		e.s.w.fault(CodeNoNth, n.Place())
		return formula.Value{}
	}
	id := e.s.w.ledger.Given(ledger.Entry{Name: "nth", Value: unit.OfCount(nth), Origin: ledger.Document, Where: n.Place()})
	return formula.Value{Kind: formula.Quantity, Is: unit.OfCount(nth), Entry: id, Where: n.Place()}
}

// nthOf resolves nth_of.drawer: the number of the drawer that this stands in.
func (e env) nthOf(n *document.Name) (formula.Value, []document.Step) {
	name, ok := member(n.Steps)
	if !ok {
		return e.unknown(n, n.Place(), n.Root, nil), nil
	}
	var known []string
	for s := e.s; s != nil; s = s.up {
		if s.decl == nil {
			continue
		}
		if s.decl.name == name && s.nth > 0 {
			return e.nthValue(s.nth, n), n.Steps[1:]
		}
		known = append(known, s.decl.name)
	}
	return e.unknown(n, n.Steps[0].Where, name, known), nil
}

func (e env) rootPlace(n *document.Name) diag.Place {
	at := n.Place()
	at.End = at.Start + len(n.Root)
	return at
}

func (e env) rootNames() []string {
	out := append([]string{"input", "sizes", "material", "contents", "nth", "nth_of"}, families...)
	if e.bare {
		out = append(out, slices.Sorted(maps.Keys(e.s.outermost().sizes))...)
	}
	return append(append(out, e.s.known("group")...), e.s.known("use")...)
}

// unknown reports a name that means nothing here, with the nearest one that does.
func (e env) unknown(n *document.Name, where diag.Place, name string, known []string) formula.Value {
	if e.s.lost() || slices.Contains(e.s.file.Misread, name) {
		return formula.Value{} // it may have been declared where the text could not be read
	}
	d := diag.Diagnostic{Severity: diag.Error, Code: CodeUnknownName, Where: where, Text: textOf(CodeUnknownName, message.Text("name", name))}
	word := name
	if where.End-where.Start != len(name) { // a step is placed with its dot
		where.Start = where.End - len(name)
		where.Column += 1
		d.Where = where
	}
	written := e.s.file.Written(where)
	near := document.Nearest(word, known)
	if before, _, ok := strings.Cut(name, "-"); ok && slices.Contains(known, before) {
		near = strings.ReplaceAll(name, "-", " - ") // a minus without spaces reads as part of the name
	}
	if near != "" && written == name {
		d.Remedies = []diag.Remedy{e.s.file.Replace(where, near)}
	}
	e.s.w.report(d)
	return formula.Value{}
}

// Pick takes members of a value, one step after another.
func (e env) Pick(v formula.Value, steps []document.Step) formula.Value {
	for _, step := range steps {
		if !v.OK() {
			return v
		}
		next, ok := e.s.maker.Pick(v, step, e)
		if !ok && v.Kind == formula.Reference {
			next, ok = e.pickReference(v, step)
		}
		if !ok {
			e.noMember(v, step)
			return formula.Value{}
		}
		v = next
	}
	return v
}

func (e env) pickReference(v formula.Value, step document.Step) (formula.Value, bool) {
	switch ref := v.Ref.(type) {
	case *material:
		if step.Index == nil && step.Member == "thickness" {
			return ref.thickness(), true
		}
	case *contents:
		if step.Index == nil {
			return ref.member(step.Member)
		}
	case *thing:
		if step.Index == nil {
			return ref.member(step.Member)
		}
	case *selection:
		return e.pickSelection(ref, step)
	}
	return formula.Value{}, false
}

func (e env) noMember(v formula.Value, step document.Step) {
	name := step.Member
	if step.Index != nil {
		name = "[ ]"
	}
	e.s.w.fault(CodeNoMember, step.Where, message.Text("name", name), message.Word("of", v.Word()))
}
