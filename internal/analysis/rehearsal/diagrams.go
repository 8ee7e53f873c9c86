package rehearsal

import (
	"slices"

	"scantling/internal/message"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// rect is a rectangle in hand: along and across the stock.
type rect struct{ along, across, length, width unit.Length }

func rectOf(r plan.Rect) rect { return rect{r.Along.Nm, r.Across.Nm, r.Length.Nm, r.Width.Nm} }

// diagrams saws every diagram up as printed: each cut must find its rectangle in
// hand, and every piece must lie in what is left in hand at the end.
func (r *rehearsal) diagrams() {
	made := map[string]int{}
	for _, g := range r.Plan.Diagrams {
		r.saw(g)
		for _, p := range g.Pieces {
			r.place(g, p, made)
		}
	}
	if len(r.Plan.Diagrams) == 0 {
		return
	}
	for _, w := range r.Plan.Workpieces {
		if w.Kind != plan.BlankPiece && w.Kind != plan.StripPiece {
			continue
		}
		switch n := made[w.ID]; {
		case n < w.Count:
			r.fail(CodeMissing, "rehearsal.not-sawn", "", message.Text("id", w.ID))
		case n > w.Count:
			r.fail(CodeTwice, "rehearsal.sawn-twice", "", message.Text("id", w.ID))
		}
	}
}

// place counts the workpieces that are cut at one place, one from every board, and
// holds their sizes against what the place gives.
func (r *rehearsal) place(g plan.Diagram, p plan.Placed, made map[string]int) {
	if len(p.Also) > 0 && len(p.Also)+1 != max(1, g.Count) {
		r.fail(CodeDiagram, "rehearsal.piece-not-in-hand", "", message.Text("diagram", g.ID), message.Text("id", p.Workpiece))
	}
	for _, id := range p.Workpieces() {
		if made[id]++; len(p.Also) == 0 {
			made[id] += max(1, g.Count) - 1 // all boards give the same
		}
		w, ok := r.work[id]
		if !ok {
			r.fail(CodeDiagram, "rehearsal.unknown-workpiece", "", message.Text("id", id), message.Text("diagram", g.ID))
			continue
		}
		got := rectOf(p.Rect)
		if p.Turned {
			got.length, got.width = got.width, got.length
		}
		if got.length < w.Length.Nm || got.width < w.Width.Nm || g.Thickness.Nm < w.Thickness.Nm {
			r.fail(CodeSize, "rehearsal.piece-too-small", "", message.Text("id", id), message.Text("diagram", g.ID))
		}
	}
}

func (r *rehearsal) saw(g plan.Diagram) {
	whole := rect{0, 0, g.Length.Nm, g.Width.Nm}
	var hand []rect
	for _, c := range g.Cuts {
		in := rectOf(c.In)
		if c.Kind == "trim" || c.Kind == "trim edge" {
			continue
		}
		if hand == nil {
			if !within(in, whole) {
				r.fail(CodeDiagram, "rehearsal.off-the-board", "", message.Text("diagram", g.ID), message.Count("cut", c.N))
				return
			}
			hand = []rect{in}
		}
		i := slices.Index(hand, in)
		along := c.Kind != "rip"
		size := in.length
		if !along {
			size = in.width
		}
		if i < 0 || c.At.Nm <= 0 || c.At.Nm > size {
			r.fail(CodeDiagram, "rehearsal.not-in-hand", "", message.Text("diagram", g.ID), message.Count("cut", c.N))
			return
		}
		if key, is, limit := r.refused(in); key != "" {
			r.fail(CodeMachine, key, "", message.Text("diagram", g.ID), message.Count("cut", c.N), message.Length("is", is), message.Length("limit", limit))
			return
		}
		near, far := in, in
		if along {
			near.length = c.At.Nm
			far.along, far.length = in.along+c.At.Nm+g.Kerf.Nm, in.length-c.At.Nm-g.Kerf.Nm
		} else {
			near.width = c.At.Nm
			far.across, far.width = in.across+c.At.Nm+g.Kerf.Nm, in.width-c.At.Nm-g.Kerf.Nm
		}
		hand = slices.Replace(hand, i, i+1, near)
		if far.length > 0 && far.width > 0 {
			hand = append(hand, far)
		}
	}
	if hand == nil {
		hand = []rect{whole}
	}
	for _, p := range g.Pieces {
		for _, d := range g.Defects {
			if overlap(rectOf(p.Rect), rectOf(d.Rect)) {
				r.fail(CodeDiagram, "rehearsal.piece-on-defect", "", message.Text("diagram", g.ID), message.Text("id", p.Workpiece))
			}
		}
		i := slices.IndexFunc(hand, func(h rect) bool { return within(rectOf(p.Rect), h) })
		if i < 0 {
			r.fail(CodeDiagram, "rehearsal.piece-not-in-hand", "", message.Text("diagram", g.ID), message.Text("id", p.Workpiece))
			continue
		}
		hand = slices.Delete(hand, i, i+1)
	}
}

// refused says why no table saw of the shop may be fed with a piece: it is too
// short, or too narrow between the fence and the blade. Of several saws any may take
// it; of those that do not, the least limit is told.
func (r *rehearsal) refused(in rect) (key string, is, limit unit.Length) {
	long, short := max(in.length, in.width), min(in.length, in.width)
	for _, m := range r.Machines {
		if m.Kind != tool.TableSaw {
			continue
		}
		var k string
		var i, l unit.Length
		switch least := m.Completed().Least; {
		case long < least.Length.Value:
			k, i, l = "rehearsal.too-short-to-saw", long, least.Length.Value
		case short < least.Width.Value:
			k, i, l = "rehearsal.too-narrow-to-saw", short, least.Width.Value
		default:
			return "", 0, 0
		}
		if key == "" || l < limit {
			key, is, limit = k, i, l
		}
	}
	return key, is, limit
}

func overlap(a, b rect) bool {
	return a.along < b.along+b.length && b.along < a.along+a.length && a.across < b.across+b.width && b.across < a.across+a.width
}

func within(a, b rect) bool {
	return a.along >= b.along && a.across >= b.across && a.along+a.length <= b.along+b.length && a.across+a.width <= b.across+b.width
}
