package shape_test

import (
	"fmt"
	"math/rand/v2"

	"scantling/internal/geom/solid"
	"scantling/internal/piece"
	"scantling/internal/shape"
)

// maker makes random parts on a 5 mm grid, so that flush, touching and tangent
// cuts are common, with every form of cut.
type maker struct {
	*rand.Rand
	size [3]float64
}

// grid returns a multiple of five from lo to hi, or lo.
func (m maker) grid(lo, hi float64) float64 {
	n := int((hi - lo) / 5)
	if n <= 0 {
		return lo
	}
	return lo + 5*float64(m.IntN(n+1))
}

// randomPart returns a part and its cuts.
func randomPart(seed uint64) (piece.Part, []piece.Cut) {
	m := maker{Rand: rand.New(rand.NewPCG(seed, 40))}
	m.size = [3]float64{m.grid(60, 200), m.grid(30, 80), m.grid(10, 30)}
	part := board("b", m.size[0], m.size[1], m.size[2])
	switch m.IntN(8) {
	case 0: // an outline: two corners off, one of them round, a round hole
		l, w := m.size[0], m.size[1]
		part = outline(l, w, m.size[2], [3]float64{10, 0, 0}, [3]float64{l, 0, 0}, [3]float64{l, w - 10, 0.41421356237309503}, [3]float64{l - 10, w, 0}, [3]float64{0, w, 0}, [3]float64{0, 10, 0})
		part.Address = "b"
		if m.IntN(2) == 0 {
			part.Holes = [][]piece.OutlinePoint{points([3]float64{30, 15, -1}, [3]float64{20, 15, -1})}
		}
	case 1: // turned
		m.size[1], m.size[2] = 40, 40
		l := m.size[0]
		part = board("b", l, 40, 40)
		part.Form = piece.Round
		at := func(along, r, bulge float64) piece.ProfilePoint {
			return piece.ProfilePoint{Along: mm(along), Radius: mm(r), Bulge: bulge}
		}
		part.Profile = []piece.ProfilePoint{at(0, 20, 0), at(20, 20, 0), at(20, 15, []float64{1, -1, 0.5}[m.IntN(3)]), at(30, 15, 0), at(l-10, m.grid(5, 20), 0), at(l, 15, 0)}
	}
	var cuts []piece.Cut
	for n := 2 + m.IntN(7); len(cuts) < n; {
		c := m.cut()
		c.Part = "b"
		cuts = append(cuts, c)
	}
	return part, cuts
}

func (m maker) side() piece.Side { return piece.SideOf(piece.Local(m.IntN(3)), m.IntN(2) == 0) }

func (m maker) cut() piece.Cut {
	switch m.IntN(12) {
	case 0, 1, 2, 3, 4:
		return m.slot()
	case 5, 6:
		return m.bore()
	case 7:
		return m.slice()
	case 8, 9:
		return m.pocket()
	case 10:
		s := m.side()
		o := m.side()
		for a, _ := s.Axis(); ; o = m.side() {
			if b, _ := o.Axis(); b != a {
				break
			}
		}
		c := easing(s, o, m.grid(5, 10), m.IntN(3) == 0, 0, 0)
		c.Ease.Chamfer = !c.Ease.Cove && m.IntN(2) == 0
		if m.IntN(2) == 0 {
			a, _ := s.Axis()
			b, _ := o.Axis()
			whole := m.size[3-a-b]
			c.Ease.From = mm(m.grid(0, whole-10))
			c.Ease.To = mm(m.grid(c.Ease.From.Nm.Millimetres()+5, whole))
		}
		return c
	}
	s := []piece.Side{piece.EdgeLow, piece.EdgeHigh, piece.EndLow, piece.EndHigh}[m.IntN(4)]
	return piece.Cut{Dip: &piece.Dip{Open: s, Centre: mm(m.grid(0, m.size[0])), Chord: mm(m.grid(20, 40)), Depth: mm(m.grid(5, 10))}}
}

func (m maker) slot() piece.Cut {
	open := m.side()
	a, _ := open.Axis()
	run := piece.Local((int(a) + 1 + m.IntN(2)) % 3)
	x := 3 - a - run
	width := m.grid(5, min(20, m.size[x]))
	from, near := m.grid(0, m.size[run]-5), m.grid(0, m.size[x]-width)
	to := m.grid(from+width+5, m.size[run])
	depth := m.grid(5, m.size[a])
	c := slot(open, run, from, to, near, near+width, depth, 0)
	long := to-from >= width // room for two round ends
	switch m.IntN(7) {
	case 0: // round in plan
		if long {
			c.Slot.EndRadius = mm(width / 2)
		}
	case 1:
		if long {
			c.Slot.EndRadius = mm(2.5)
		}
	case 2: // round-bottomed, flat ends
		c.Slot.Corner = mm(width / 2)
	case 3: // ball ends
		c.Slot.Corner = mm(width / 2)
		if long {
			c.Slot.EndRadius = mm(width / 2)
		}
	case 4: // a smaller corner under the same ends
		c.Slot.Corner = mm(2.5)
		if long {
			c.Slot.EndRadius = mm(max(2.5, width/2))
		}
	case 5: // V, to a point or with a flat
		l := []float64{width / 2, 1, 2.5}[m.IntN(3)]
		c.Slot.LeanNear, c.Slot.LeanFar = mm(l), mm(l)
		if long && m.IntN(2) == 0 {
			c.Slot.EndRadius = mm(width / 2)
		}
	default: // undercut, one wall or both
		c.Slot.LeanNear, c.Slot.LeanFar = mm(-1.25), mm([]float64{0, -1.25}[m.IntN(2)])
		if to-from >= width+5 && c.Slot.LeanFar.Nm != 0 && m.IntN(2) == 0 {
			c.Slot.EndRadius = mm(width / 2)
		}
	}
	return c
}

func (m maker) bore() piece.Cut {
	open := m.side()
	a, _ := open.Axis()
	first, second := across(a)
	d := []float64{5, 10, 8}[m.IntN(3)]
	c := bore(open, m.grid(0, m.size[first]), m.grid(0, m.size[second]), d, m.grid(5, m.size[a]))
	if m.IntN(3) == 0 {
		c = through(c)
	}
	if m.IntN(2) == 0 {
		c = sunk(c, d+5, []float64{2.5, 5, 1.7}[m.IntN(3)], m.IntN(2) == 0)
	}
	return c
}

// slice cuts off little, through points of the grid.
func (m maker) slice() piece.Cut {
	off := m.side()
	a, high := off.Axis()
	first, second := across(a)
	var at [3]float64
	for k := range at {
		if at[k] = m.grid(-10, 10); high {
			at[k] += m.size[a]
		}
	}
	if m.IntN(3) == 0 {
		at[2] = at[0]
	}
	return slice(off, [2]float64{0, 0}, [2]float64{m.size[first], m.size[second]}, at)
}

func (m maker) pocket() piece.Cut {
	open := m.side()
	a, _ := open.Axis()
	first, second := across(a)
	x, y := m.grid(-5, m.size[first]-5), m.grid(-5, m.size[second]-5)
	w, h := m.grid(15, 40), m.grid(10, 30)
	shapes := [][]piece.OutlinePoint{
		points([3]float64{x, y, 0}, [3]float64{x + w, y, 0}, [3]float64{x + w - 5, y + h, 0}, [3]float64{x + 5, y + h, 0}),
		points([3]float64{x, y, 0.5}, [3]float64{x + w, y, 0}, [3]float64{x + w, y + h, -0.3}, [3]float64{x, y + h, 0}),
		points([3]float64{x, y, 0}, [3]float64{x + w, y, 1}, [3]float64{x + w, y + h, 0}, [3]float64{x, y + h, 0}),
		points([3]float64{x, y, 0}, [3]float64{x + w, y, 0}, [3]float64{x + w, y + 5, 0}, [3]float64{x + 5, y + 5, 0}, [3]float64{x + 5, y + h, 0}, [3]float64{x, y + h, 0}),
	}
	return piece.Cut{Pocket: &piece.Pocket{Open: open, Depth: mm(m.grid(5, m.size[a])), Through: m.IntN(4) == 0, Outline: shapes[m.IntN(4)]}}
}

// told prints the cuts of a part, for a seed that has failed.
func told(cuts []piece.Cut) (out string) {
	for _, c := range cuts {
		switch {
		case c.Slot != nil:
			out += fmt.Sprintf("slot %+v\n", *c.Slot)
		case c.Bore != nil:
			out += fmt.Sprintf("bore %+v\n", *c.Bore)
		case c.Dip != nil:
			out += fmt.Sprintf("dip %+v\n", *c.Dip)
		case c.Ease != nil:
			out += fmt.Sprintf("ease %+v\n", *c.Ease)
		case c.Slice != nil:
			out += fmt.Sprintf("slice %+v\n", *c.Slice)
		case c.Pocket != nil:
			out += fmt.Sprintf("pocket %+v\n", *c.Pocket)
		}
	}
	return out
}

// solidAsIs solves one part, verified or not.
func solidAsIs(part piece.Part, cuts []piece.Cut, facets int) *solid.Solid {
	p := piece.Piece{Parts: []piece.Part{part}, Cuts: cuts}
	return shape.New(&p, nil, facets).At(0).Solid
}
