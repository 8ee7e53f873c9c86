package plan

import (
	"slices"

	"scantling/internal/unit"
)

// workpieces holds names against what exists and panels against their strips.
func (c *checker) workpieces() {
	known := map[string]bool{}
	for _, d := range c.plan.Diagrams {
		known[d.ID] = true
	}
	for _, w := range c.plan.Workpieces {
		if known[w.ID] {
			c.add("there are two of %s", w.ID)
		}
		known[w.ID] = true
	}
	for _, w := range c.plan.Workpieces {
		for _, from := range w.From {
			if !known[from] {
				c.add("%s is made from %s, which is nowhere", w.ID, from)
			}
		}
		if w.Kind != PanelPiece && w.Kind != NarrowPanel {
			continue
		}
		sum, n := unit.Length(0), 0
		for _, s := range c.plan.StripsOf(w) {
			sum, n = sum+s.Width.Nm, n+1
		}
		// Strips have what is jointed off their edges over.
		if sum < w.Width.Nm || len(w.Joints) != n-1 || !slices.IsSortedFunc(w.Joints, func(a, b Figure) int { return int(max(-1, min(1, a.Nm-b.Nm))) }) {
			c.add("%s: %d strips of %v in all with %d joints make no panel of %v", w.ID, n, sum, len(w.Joints), w.Width.Nm)
		}
	}
}

// diagrams holds every diagram, and that every blank and strip is cut once.
func (c *checker) diagrams() {
	sizes, made := map[string]Workpiece{}, map[string]int{}
	for _, w := range c.plan.Workpieces {
		sizes[w.ID] = w
	}
	for _, d := range c.plan.Diagrams {
		for _, p := range d.Pieces {
			if len(p.Workpieces()) != d.Count {
				c.add("%s: %d boards are cut, %d workpieces lie at the place of %s", d.ID, d.Count, len(p.Workpieces()), p.Workpiece)
			}
			for _, id := range p.Workpieces() {
				made[id]++
			}
		}
		c.diagram(d, sizes)
	}
	if len(c.plan.Diagrams) == 0 {
		return
	}
	for _, w := range c.plan.Workpieces {
		if (w.Kind == BlankPiece || w.Kind == StripPiece) && made[w.ID] != w.Count {
			c.add("%s is cut %d times, %d are wanted", w.ID, made[w.ID], w.Count)
		}
	}
}

// diagram holds the pieces against the stock, each other and their workpieces.
func (c *checker) diagram(d Diagram, sizes map[string]Workpiece) {
	for i, p := range d.Pieces {
		r := p.Rect
		if !inside(r, d) {
			c.add("%s: %s leaves the stock", d.ID, p.Workpiece)
		}
		length, width := r.Length.Nm, r.Width.Nm
		if p.Turned {
			length, width = width, length
		}
		for _, id := range p.Workpieces() {
			switch w, ok := sizes[id]; {
			case !ok:
				c.add("%s: there is no workpiece %s", d.ID, id)
			case w.Length.Nm != length || w.Width.Nm != width:
				c.add("%s: %s is not the size of its workpiece", d.ID, id)
			case w.Mark != p.Mark:
				c.add("%s: %s is marked %s, its place %s", d.ID, id, w.Mark, p.Mark)
			case w.Thickness.Nm > d.Thickness.Nm:
				c.add("%s: %s is thicker than the stock", d.ID, id)
			}
		}
		for _, q := range d.Pieces[:i] {
			if meets(r, q.Rect, d.Kerf.Nm) {
				c.add("%s: %s and %s lie nearer than a kerf", d.ID, p.Workpiece, q.Workpiece)
			}
		}
	}
	for _, l := range d.Left {
		if !inside(l.Rect, d) || slices.ContainsFunc(d.Pieces, func(p Placed) bool { return meets(l.Rect, p.Rect, 0) }) {
			c.add("%s: a rest lies off the stock or on a piece", d.ID)
		}
	}
	for i, cut := range d.Cuts {
		along := cut.In.Length.Nm
		if cut.Kind == "rip" || cut.Kind == "trim edge" {
			along = cut.In.Width.Nm
		}
		if cut.N != i+1 || !inside(cut.In, d) || cut.At.Nm < 0 || cut.At.Nm > along {
			c.add("%s: cut %d misses what it cuts", d.ID, cut.N)
		}
	}
	w := d.Waste
	if sum := w.Parts + w.Kerf + w.Trim + w.Remnant + w.Rest; sum < w.Whole-1 || sum > w.Whole+1 {
		c.add("%s: the waste adds up to %.1f mm², the stock has %.1f", d.ID, sum, w.Whole)
	}
}

func inside(r Rect, d Diagram) bool {
	return r.Along.Nm >= 0 && r.Across.Nm >= 0 && r.Length.Nm >= 0 && r.Width.Nm >= 0 &&
		r.Along.Nm+r.Length.Nm <= d.Length.Nm && r.Across.Nm+r.Width.Nm <= d.Width.Nm
}

// meets reports whether two rectangles lie nearer to each other than the kerf in
// both directions.
func meets(a, b Rect, kerf unit.Length) bool {
	along := a.Along.Nm < b.Along.Nm+b.Length.Nm+kerf && b.Along.Nm < a.Along.Nm+a.Length.Nm+kerf
	across := a.Across.Nm < b.Across.Nm+b.Width.Nm+kerf && b.Across.Nm < a.Across.Nm+a.Width.Nm+kerf
	return along && across
}

// stages holds rows and stages against each other.
func (c *checker) stages() {
	of := map[string]string{}
	for _, s := range c.plan.Stages {
		for _, m := range s.Marks {
			if _, twice := of[m]; twice {
				c.add("%s stands in two stages", m)
			}
			of[m] = s.ID
		}
	}
	if len(c.plan.Stages) == 0 {
		return
	}
	for _, r := range c.plan.Parts {
		if of[r.Mark] != r.Stage {
			c.add("row %s is of stage %q, which is that of %q", r.Mark, r.Stage, of[r.Mark])
		}
	}
}

// cost holds the buying list against itself and its sum.
func (c *checker) cost() {
	sums := map[string]int64{}
	for _, b := range c.plan.Buying {
		if b.Get < 0 || b.Get < b.Need-b.Have || b.Get > b.Need || b.Sum != int64(b.Get)*b.Price {
			c.add("%s: %d needed, %d there, %d to get at %d each for %d", b.Label, b.Need, b.Have, b.Get, b.Price, b.Sum)
		}
		sums[b.Kind] += b.Sum
	}
	x := c.plan.Cost
	for _, s := range []struct {
		kind string
		is   int64
	}{{"board", x.Timber}, {"sheet", x.Sheet}, {"hardware", x.Hardware}} {
		if sums[s.kind] != s.is {
			c.add("%s: the lines come to %d, the sum says %d", s.kind, sums[s.kind], s.is)
		}
	}
	if x.Timber+x.Sheet+x.Hardware != x.Total {
		c.add("the cost is %d, its parts come to %d", x.Total, x.Timber+x.Sheet+x.Hardware)
	}
}
