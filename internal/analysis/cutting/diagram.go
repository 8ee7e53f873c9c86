package cutting

import (
	"fmt"
	"math"
	"math/big"

	"scantling/internal/ledger"
	"scantling/internal/optimise/account"
	"scantling/internal/optimise/problem"
	"scantling/internal/plan"
)

// diagram reads one cut tree, that of all copies.
func (q *question) diagram(s Stock, id string, copies []copy) plan.Diagram {
	t := tree{q: q, stock: s, id: id, copies: copies, placed: map[*problem.Node]int{}}
	t.out = plan.Diagram{
		ID: id, Stock: s.ID, Label: s.Label, Sheet: s.Sheet, Count: len(copies),
		Length: s.Length, Width: s.Width, Thickness: s.Thickness, Kerf: q.in.Kerf,
	}
	root := copies[0].root
	for n := range root.Nodes() {
		if n.Kind == problem.Finished {
			t.placed[n] = len(t.placed)
		}
	}
	if copies[0].rack {
		t.flaws()
	}
	t.read(root, t.trims())
	t.waste(root)
	return t.out
}

type tree struct {
	q      *question
	stock  Stock
	id     string
	copies []copy
	// placed numbers the finished pieces as the copies do.
	placed map[*problem.Node]int
	out    plan.Diagram
	// areas in square millimetres
	parts, remnant, rest float64
}

// piece returns the workpiece that the first board gives at a finished node.
func (t *tree) piece(n *problem.Node) plan.Workpiece { return t.copies[0].pieces[t.placed[n]] }

// trims lists the saw cuts that square the stock up before the rest, both ends of
// a board and all four sides of a sheet, and returns what is then in hand. The
// edges of a board are made straight on the jointer: no cut of the saw.
func (t *tree) trims() plan.Rect {
	s, l, kerf := t.stock, t.q.in.Ledger, t.q.in.Kerf
	zero := l.Leaf("reference end", 0, ledger.Derived, "")
	hand := plan.Rect{Along: zero, Across: zero, Length: s.Length, Width: s.Width}
	saws := func(trim ledger.Figure) bool { return trim.Nm > 0 && trim.Nm >= kerf.Nm }
	if s.Sheet && saws(s.Edge) {
		t.cut(TrimEdge, hand, l.Less(t.id+".trim", s.Edge, kerf))
		hand.Across, hand.Width = l.Same(t.id+".trim", s.Edge), l.Less(t.id+".width", s.Width, s.Edge)
		t.cut(TrimEdge, hand, l.Less(t.id+".usable width", s.Width, s.Edge, s.Edge))
	}
	hand.Across, hand.Width = l.Same(t.id+".trim", s.Edge), l.Less(t.id+".usable width", s.Width, s.Edge, s.Edge)
	if saws(s.End) {
		t.cut(TrimEnd, hand, l.Less(t.id+".trim", s.End, kerf))
		hand.Along, hand.Length = l.Same(t.id+".trim", s.End), l.Less(t.id+".length", s.Length, s.End)
		t.cut(TrimEnd, hand, l.Less(t.id+".usable length", s.Length, s.End, s.End))
	}
	hand.Along, hand.Length = l.Same(t.id+".trim", s.End), l.Less(t.id+".usable length", s.Length, s.End, s.End)
	return hand
}

// The kinds of saw cut: those that square up, then those that divide.
const (
	TrimEnd  = "trim"
	TrimEdge = "trim edge"
	Rip      = "rip"
	Crosscut = "crosscut"
)

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
		w := t.piece(n)
		r.Length, r.Width = w.Length, w.Width
		if n.Turned {
			r.Length, r.Width = w.Width, w.Length
		}
		placed := plan.Placed{Workpiece: w.ID, Mark: w.Mark, Rect: r, Turned: n.Turned}
		for _, c := range t.copies[1:] {
			placed.Also = append(placed.Also, c.pieces[t.placed[n]].ID)
		}
		t.out.Pieces = append(t.out.Pieces, placed)
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
	kind := Crosscut
	if n.Direction == problem.Rip {
		kind = Rip
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
		w := t.piece(m)
		along, across := w.Length, w.Width
		if m.Turned {
			along, across = across, along
		}
		if n.Direction == problem.Rip && m.Across == n.Across && across.Nm == n.At {
			return across
		}
		if n.Direction == problem.Crosscut && m.Along == n.Along && along.Nm == n.At {
			return along
		}
	}
	return t.q.in.Ledger.Leaf(fmt.Sprintf("%s.cut %d", t.id, len(t.out.Cuts)+1), n.At, ledger.Choice, "cutting engine")
}

// flaws lists the defects of a board of the rack.
func (t *tree) flaws() {
	l := t.q.in.Ledger
	for i, d := range t.stock.Defects {
		id := fmt.Sprintf("%s.defect %d", t.id, i+1)
		t.out.Defects = append(t.out.Defects, plan.Defect{Kind: d.Kind, Rect: plan.Rect{
			Along: d.From, Across: d.Near, Length: l.Less(id, d.To, d.From), Width: l.Less(id, d.Far, d.Near),
		}})
	}
}

// waste shares the board's area out; what is left over is kerf. What of the rest
// is defect is counted as that.
func (t *tree) waste(root *problem.Node) {
	defects := 0.0
	if len(t.out.Defects) > 0 {
		one := problem.Problem{Form: problem.Sheets, Kerf: t.q.in.Kerf.Nm, Stock: []problem.Stock{{
			Size: problem.Size{Length: t.stock.Length.Nm, Width: t.stock.Width.Nm}, Defects: t.stock.boxes(),
		}}}
		a := account.Of(one, problem.Answer{Diagrams: []problem.Diagram{{Root: root, Copies: 1}}})
		nm2, _ := new(big.Float).SetInt(a.Defects).Float64()
		defects = math.Min(nm2/1e12, t.rest)
		t.rest -= defects
	}
	s := t.stock
	whole, inner := area(problem.Size{Length: s.Length.Nm, Width: s.Width.Nm}), area(s.usable())
	kerf := inner - t.parts - t.remnant - t.rest - defects
	if kerf < 1e-6 { // the sums' own rounding
		kerf = 0
	}
	t.out.Waste = plan.Waste{Whole: whole, Parts: t.parts, Kerf: kerf, Trim: whole - inner, Defects: defects, Remnant: t.remnant, Rest: t.rest}
}

// area is in square millimetres.
func area(s problem.Size) float64 {
	return float64(s.Length.Millimetres() * s.Width.Millimetres())
}
