package conform

import (
	"errors"
	"fmt"

	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// Verify returns all that is wrong with a as an answer to p, or nil.
func Verify(p problem.Problem, a problem.Answer) error {
	v := &verifier{p: p, made: make([]int, len(p.Parts)), used: make([]int, len(p.Stock))}
	for i, d := range a.Diagrams {
		v.where = fmt.Sprintf("diagram %d", i+1)
		v.diagram(d)
	}
	v.where = "answer"
	v.totals(a)
	v.verdict(a)
	return errors.Join(v.faults...)
}

const maxFaults = 20

type verifier struct {
	p      problem.Problem
	where  string
	faults []error
	made   []int
	used   []int
	cost   problem.Cost
	value  problem.Cost
	rows   [][]*problem.Node // parts of sequences in order of sawing, one list per diagram copy
	stock  problem.Stock
}

func (v *verifier) failf(format string, args ...any) {
	if len(v.faults) < maxFaults {
		v.faults = append(v.faults, fmt.Errorf(v.where+": "+format, args...))
	}
}

func (v *verifier) diagram(d problem.Diagram) {
	if d.Stock < 0 || d.Stock >= len(v.p.Stock) || d.Copies < 1 || d.Root == nil {
		v.failf("stock %d, copies %d, root %v", d.Stock, d.Copies, d.Root != nil)
		return
	}
	v.stock = v.p.Stock[d.Stock]
	v.used[d.Stock] += d.Copies
	v.cost += v.stock.Cost * problem.Cost(d.Copies)
	s := v.stock
	want := problem.Box{Point: problem.Point{Along: s.Trim.Start}, Size: problem.Size{Length: s.Length - s.Trim.Start - s.Trim.End}}
	if v.p.Form == problem.Sheets {
		want.Across = s.Trim.Low
		want.Width = s.Width - s.Trim.Low - s.Trim.High
	}
	if d.Root.Box != want {
		v.failf("begins with %v, trimmed stock is %v", d.Root.Box, want)
	}
	made := make([]int, len(v.p.Parts))
	v.piece(d.Root, trail{}, made)
	for i, n := range made {
		v.made[i] += n * d.Copies
		v.value += v.p.Parts[i].Value * problem.Cost(n*d.Copies)
	}
	if len(v.p.Sequences) > 0 {
		for range d.Copies {
			v.rows = append(v.rows, v.row(d.Root))
		}
	}
}

// row lists the finished pieces that belong to sequences, where they lie.
func (v *verifier) row(root *problem.Node) []*problem.Node {
	held := map[int]bool{}
	for _, s := range v.p.Sequences {
		for _, i := range s.Parts {
			held[i] = true
		}
	}
	var out []*problem.Node
	for n := range root.Nodes() {
		if n.Kind == problem.Finished && held[n.Part] {
			out = append(out, n)
		}
	}
	return out
}

// trail is how a piece came to be: how often the direction was taken up, and
// which it was last.
type trail struct {
	stage int
	last  problem.Direction
}

func (v *verifier) piece(n *problem.Node, t trail, made []int) {
	if n == nil {
		return
	}
	if n.Length <= 0 || v.p.Form == problem.Sheets && n.Width <= 0 {
		v.failf("a piece of %d × %d nm", n.Length, n.Width)
		return
	}
	switch n.Kind {
	case problem.Sawn:
		v.cut(n, t, made)
	case problem.Finished:
		v.part(n, made)
	case problem.Remnant, problem.Waste:
		u := v.p.Useful
		useful := u != (problem.Size{}) && n.Length >= u.Length && (v.p.Form == problem.Boards || n.Width >= u.Width)
		if useful != (n.Kind == problem.Remnant) {
			v.failf("a rest of %d × %d nm is called %d", n.Length, n.Width, n.Kind)
		}
	default:
		v.failf("kind %d", n.Kind)
	}
	if n.Kind != problem.Sawn && (n.Near != nil || n.Far != nil) {
		v.failf("a piece that is not sawn has children")
	}
}

func (v *verifier) cut(n *problem.Node, t trail, made []int) {
	if n.Direction != t.last {
		t.stage++
		if t.stage == 1 && v.p.Cutting.First != problem.Any && v.p.Form == problem.Sheets && n.Direction != v.p.Cutting.First {
			t.stage++ // the first stage is empty
		}
		t.last = n.Direction
	}
	v.stage(n, t)
	v.feed(n)
	near, far := n.Box, n.Box
	size := n.Length
	switch {
	case n.Direction == problem.Crosscut:
		near.Length = n.At
		far.Along += n.At + v.p.Kerf
		far.Length -= n.At + v.p.Kerf
	case n.Direction == problem.Rip && v.p.Form == problem.Sheets:
		size = n.Width
		near.Width = n.At
		far.Across += n.At + v.p.Kerf
		far.Width -= n.At + v.p.Kerf
	default:
		v.failf("a cut in direction %d", n.Direction)
		return
	}
	if n.At <= -v.p.Kerf && v.p.Kerf > 0 || n.At >= size || n.At < 0 && v.p.Kerf == 0 {
		v.failf("a cut at %d nm of %d misses the piece", n.At, size)
	}
	v.child(n.Near, near, n.At > 0)
	v.child(n.Far, far, n.At+v.p.Kerf < size)
	v.piece(n.Near, t, made)
	v.piece(n.Far, t, made)
}

func (v *verifier) child(n *problem.Node, want problem.Box, there bool) {
	switch {
	case (n != nil) != there:
		v.failf("a cut leaves %v, but the tree says %v", want, n != nil)
	case n != nil && n.Box != want:
		v.failf("a cut leaves %v, but the tree says %v", want, n.Box)
	}
}

// stage checks the number of stages. One trimming cut more is allowed unless
// the stages are exact: it takes waste off one finished part.
func (v *verifier) stage(n *problem.Node, t trail) {
	most := v.p.Cutting.Stages
	if most == 0 || v.p.Form == problem.Boards || t.stage <= most {
		return
	}
	trims := !v.p.Cutting.Exact && t.stage == most+1 && trimmed(n) == 1
	if !trims {
		v.failf("a cut of stage %d, %d are allowed", t.stage, most)
	}
}

// trimmed returns how many finished parts lie in n, counting anything that is
// cut in the other direction as many.
func trimmed(n *problem.Node) int {
	const many = 1000
	parts := 0
	for _, c := range []*problem.Node{n.Near, n.Far} {
		switch {
		case c == nil:
		case c.Kind == problem.Finished:
			parts++
		case c.Kind == problem.Sawn && c.Direction == n.Direction:
			parts += trimmed(c)
		case c.Kind == problem.Sawn:
			parts += many
		}
	}
	return parts
}

func (v *verifier) feed(n *problem.Node) {
	long, short := n.Length, n.Width
	if v.p.Form == problem.Boards {
		short = v.p.Feed.Short
	} else if long < short {
		long, short = short, long
	}
	if long < v.p.Feed.Long || short < v.p.Feed.Short {
		v.failf("a piece of %d × %d nm is put to the saw, the least is %d × %d", n.Length, n.Width, v.p.Feed.Long, v.p.Feed.Short)
	}
}

func (v *verifier) part(n *problem.Node, made []int) {
	if n.Part < 0 || n.Part >= len(v.p.Parts) {
		v.failf("part number %d", n.Part)
		return
	}
	made[n.Part]++
	part := v.p.Parts[n.Part]
	l, w := part.Length, part.Width
	if n.Turned {
		if !part.Turn || v.p.Form == problem.Boards {
			v.failf("part %d is turned against its grain", n.Part)
		}
		l, w = w, l
	}
	if n.Length != l || v.p.Form == problem.Sheets && n.Width != w {
		v.failf("part %d comes out %d × %d nm, wanted %d × %d", n.Part, n.Length, n.Width, l, w)
	}
	for _, d := range v.stock.Defects {
		if overlap(n.Along, n.Length, d.Along, d.Length) && (v.p.Form == problem.Boards || overlap(n.Across, n.Width, d.Across, d.Width)) {
			v.failf("part %d covers a defect at %v", n.Part, d)
		}
	}
}

func overlap(a, la, b, lb unit.Length) bool { return a < b+lb && b < a+la }
