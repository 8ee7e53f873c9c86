package cutting

import (
	"fmt"

	"scantling/internal/ledger"
	"scantling/internal/optimise/problem"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// diagram reads one cut tree.
func (q *question) diagram(id string, root *problem.Node) plan.Diagram {
	s := q.stock
	t := tree{q: q, id: id, placed: map[*problem.Node]plan.Workpiece{}}
	t.out = plan.Diagram{
		ID: id, Stock: s.ID, Label: s.Label, Sheet: s.Sheet, Count: 1,
		Length: s.Length, Width: s.Width, Thickness: s.Thickness, Kerf: q.in.Kerf,
	}
	for n := range root.Nodes() {
		if n.Kind == problem.Finished {
			t.placed[n] = q.waiting[n.Part][0]
			q.waiting[n.Part] = q.waiting[n.Part][1:]
		}
	}
	l := q.in.Ledger
	rect := plan.Rect{
		Along:  l.Same(id+".trim", s.End),
		Across: l.Same(id+".trim", s.Edge),
		Length: l.Less(id+".usable length", s.Length, s.End, s.End),
		Width:  l.Less(id+".usable width", s.Width, s.Edge, s.Edge),
	}
	t.trims(rect)
	t.read(root, rect)
	t.waste()
	return t.out
}

type tree struct {
	q      *question
	id     string
	placed map[*problem.Node]plan.Workpiece
	out    plan.Diagram
	// areas in square nanometres
	parts, remnant, rest int64
}

// trims lists the cuts that square the board up before the rest.
func (t *tree) trims(usable plan.Rect) {
	s := t.q.stock
	zero := t.q.in.Ledger.Leaf("reference end", 0, ledger.Derived, "")
	whole := plan.Rect{Along: zero, Across: zero, Length: s.Length, Width: s.Width}
	if s.End.Nm >= t.q.in.Kerf.Nm && s.End.Nm > 0 {
		t.cut("trim", whole, t.q.in.Ledger.Less(t.id+".trim", s.End, t.q.in.Kerf))
	}
}

func (t *tree) cut(kind string, in plan.Rect, at ledger.Figure) {
	t.out.Cuts = append(t.out.Cuts, plan.SawCut{N: len(t.out.Cuts) + 1, Kind: kind, In: in, At: at})
}

// read walks the tree in sawing order.
func (t *tree) read(n *problem.Node, r plan.Rect) {
	if n == nil {
		return
	}
	switch n.Kind {
	case problem.Finished:
		w := t.placed[n]
		r.Length, r.Width = w.Length, w.Width
		t.out.Pieces = append(t.out.Pieces, plan.Placed{Workpiece: w.ID, Mark: w.Mark, Rect: r, Turned: n.Turned})
		t.parts += area(n.Size)
	case problem.Remnant:
		t.out.Left = append(t.out.Left, plan.Left{Rect: r, Keep: true})
		t.remnant += area(n.Size)
	case problem.Waste:
		t.out.Left = append(t.out.Left, plan.Left{Rect: r})
		t.rest += area(n.Size)
	case problem.Sawn:
		t.sawn(n, r)
	}
}

func (t *tree) sawn(n *problem.Node, r plan.Rect) {
	l, kerf := t.q.in.Ledger, t.q.in.Kerf
	at := t.at(n)
	near, far := r, r
	kind := "crosscut"
	if n.Direction == problem.Rip {
		kind = "rip"
		near.Width = at
		far.Across = l.Sum(t.id+".across", r.Across, at, kerf)
		far.Width = l.Less(t.id+".width", r.Width, at, kerf)
	} else {
		near.Length = at
		far.Along = l.Sum(t.id+".along", r.Along, at, kerf)
		far.Length = l.Less(t.id+".length", r.Length, at, kerf)
	}
	t.cut(kind, r, at)
	t.read(n.Near, near)
	t.read(n.Far, far)
}

// at returns the figure of a cut's place: the size of the workpiece that it
// makes, where there is one of just that size, else the engine's choice.
func (t *tree) at(n *problem.Node) ledger.Figure {
	for m := range n.Near.Nodes() {
		if m.Kind != problem.Finished {
			continue
		}
		w := t.placed[m]
		if n.Direction == problem.Rip && m.Across == n.Across && w.Width.Nm == n.At {
			return w.Width
		}
		if n.Direction == problem.Crosscut && m.Along == n.Along && w.Length.Nm == n.At {
			return w.Length
		}
	}
	return t.q.in.Ledger.Leaf(fmt.Sprintf("%s.cut %d", t.id, len(t.out.Cuts)+1), n.At, ledger.Choice, "cutting engine")
}

// waste shares the board's area out; what is left over is kerf.
func (t *tree) waste() {
	s := t.q.stock
	whole := area(problem.Size{Length: s.Length.Nm, Width: s.Width.Nm})
	inner := area(problem.Size{Length: s.Length.Nm - 2*s.End.Nm, Width: s.Width.Nm - 2*s.Edge.Nm})
	kerf := inner - t.parts - t.remnant - t.rest
	t.out.Waste = plan.Waste{
		Whole: squareMillimetres(whole), Parts: squareMillimetres(t.parts), Kerf: squareMillimetres(kerf),
		Trim: squareMillimetres(whole - inner), Remnant: squareMillimetres(t.remnant), Rest: squareMillimetres(t.rest),
	}
}

// area is in square micrometres, so that it stays in range for any stock.
func area(s problem.Size) int64 {
	return int64(s.Length/unit.Micrometre) * int64(s.Width/unit.Micrometre)
}

func squareMillimetres(squareMicrometres int64) float64 { return float64(squareMicrometres) / 1e6 }
