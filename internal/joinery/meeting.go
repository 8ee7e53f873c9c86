package joinery

import (
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// meeting is how the bodies of a pair lie to each other.
type meeting struct {
	// region is the overlap; where the bodies only touch it is flat along normal.
	region box
	flat   bool
	normal piece.Axis
	// entry is the way that A goes into B; run and across are the other axes.
	entry       piece.Direction
	run, across piece.Axis
}

// gap is how far two bodies are apart along an axis.
type gap struct {
	axis piece.Axis
	size unit.Length
}

// apartBy returns the greatest distance along an axis between two boxes; a
// negative size is an overlap on every axis, nought is a touch.
func apartBy(a, b box) gap {
	g := gap{size: max(a[0].Low.Nm-b[0].High.Nm, b[0].Low.Nm-a[0].High.Nm)}
	for _, i := range axes[1:] {
		if d := max(a[i].Low.Nm-b[i].High.Nm, b[i].Low.Nm-a[i].High.Nm); d > g.size {
			g = gap{i, d}
		}
	}
	return g
}

// look finds how A and B meet. It reports false if they do not: apart, or
// touching along a line only.
func look(a, b *piece.Part, depth unit.Length) (meeting, bool) {
	ba, bb := box(a.Extent), box(b.Extent)
	m := meeting{region: meet(bb, ba)}
	thin := 0
	for _, i := range axes {
		switch s := m.region.size(i); {
		case s < 0:
			return m, false
		case s == 0:
			m.flat, m.normal = true, i
			thin++
		}
	}
	if thin > 1 {
		return m, false
	}
	if m.flat {
		m.entry = piece.Toward(m.normal, 1)
		if ba[m.normal].Low.Nm == bb[m.normal].High.Nm {
			m.entry = piece.Toward(m.normal, -1)
		}
	} else {
		m.entry = entryOf(ba, bb, m.region, depth)
	}
	m.lay(a)
	return m, true
}

// lay chooses run and across: across is the axis of A's thickness, unless A
// enters by its thickness; then the longer of the two is the run.
func (m *meeting) lay(a *piece.Part) {
	e, _ := m.entry.Axis()
	p, q := (e+1)%3, (e+2)%3
	thick, _ := a.Frame.Thickness.Axis()
	switch {
	case thick == p:
		m.across, m.run = p, q
	case thick == q:
		m.across, m.run = q, p
	case m.region.size(p) > m.region.size(q):
		m.run, m.across = p, q
	default:
		m.run, m.across = q, p
	}
}

// entryOf finds the way that A goes into B: along an axis on which A stands out
// of B at one side only. Where several would do, the one whose overlap is the
// joint's depth is meant, then the one with the least overlap.
func entryOf(a, b, region box, depth unit.Length) piece.Direction {
	best, rank := piece.Direction(""), 0
	var least unit.Length
	for _, i := range axes {
		low, high := a[i].Low.Nm < b[i].Low.Nm, a[i].High.Nm > b[i].High.Nm
		flushLow, flushHigh := a[i].Low.Nm == b[i].Low.Nm, a[i].High.Nm == b[i].High.Nm
		way := piece.Direction("")
		r := 0
		switch {
		case high && !low:
			way, r = piece.Toward(i, -1), 4
		case low && !high:
			way, r = piece.Toward(i, 1), 4
		case low && high: // A goes right through
			way, r = piece.Toward(i, 1), 1
		case flushHigh && !flushLow: // A is let in flush
			way, r = piece.Toward(i, -1), 2
		case flushLow && !flushHigh:
			way, r = piece.Toward(i, 1), 2
		default:
			continue
		}
		s := region.size(i)
		if depth > 0 && s == depth {
			r += 4
		}
		if r > rank || (r == rank && s < least) {
			best, rank, least = way, r, s
		}
	}
	if best == "" {
		return piece.ToDown
	}
	return best
}
