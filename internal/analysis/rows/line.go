package rows

import (
	"cmp"
	"slices"

	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// block is a part as boxes in the piece's axes.
type block struct {
	part  *piece.Part
	index int
	body  region
	airs  []placedAir
}

type placedAir struct {
	cut           *piece.Cut
	taken, unsure []region
}

// region is a box in the piece, limits in nanometres.
type region struct{ lo, hi [3]unit.Length }

func regionOf(e [3]piece.Extent) (r region) {
	for a := range e {
		r.lo[a], r.hi[a] = e[a].Low.Nm, e[a].High.Nm
	}
	return r
}

// model is the piece as boxes.
type model struct {
	piece  *piece.Piece
	ledger *ledger.Ledger
	blocks []*block
	spaces []*piece.Space
	bodies *slicing        // of blocks
	clear  *slicing        // of spaces
	drawn  map[string]bool // rows by their wood
	bands  [3][]flat       // of the rows drawn along each axis
	looks  *int            // at boxes, so far
}

func newModel(p *piece.Piece, joints []piece.Cut, l *ledger.Ledger) *model {
	m := &model{piece: p, ledger: l, blocks: make([]*block, len(p.Parts)), drawn: map[string]bool{}, looks: new(int)}
	for i := range p.Spaces {
		m.spaces = append(m.spaces, &p.Spaces[i])
	}
	index := map[string]int{}
	for i := range p.Parts {
		part := &p.Parts[i]
		b := &block{part: part, index: i}
		m.blocks[i] = b
		b.body = regionOf(part.Extent)
		index[string(part.Address)] = i
	}
	for _, list := range [2][]piece.Cut{p.Cuts, joints} {
		for k := range list {
			i, ok := index[string(list[k].Part)]
			if !ok {
				continue
			}
			b := m.blocks[i]
			a := airOf(b.part, &list[k])
			b.airs = append(b.airs, placedAir{a.cut, placeAll(b.part, a.taken), placeAll(b.part, a.unsure)})
		}
	}
	var bodies, spaces []region
	for _, b := range m.blocks {
		bodies = append(bodies, b.body)
	}
	for _, s := range m.spaces {
		spaces = append(spaces, regionOf(s.Extent))
	}
	m.bodies, m.clear = newSlicing(bodies), newSlicing(spaces)
	return m
}

// over returns the model of what lines along an axis through a region can meet:
// parts with their cuts, and spaces.
func (m *model) over(axis piece.Axis, r region) *model {
	out := *m
	out.blocks, out.spaces = nil, nil
	l := line{axis: axis}
	f := flatOf(l, r)
	for _, i := range m.bodies.near(l, r) {
		b := m.blocks[i]
		if !f.meets(l, b.body) {
			continue
		}
		*m.looks += 1 + len(b.airs)
		near := &block{part: b.part, index: b.index, body: b.body}
		for _, a := range b.airs {
			if a.meets(l, f) {
				near.airs = append(near.airs, a)
			}
		}
		out.blocks = append(out.blocks, near)
	}
	for _, i := range m.clear.near(l, r) {
		if s := m.spaces[i]; f.meets(l, regionOf(s.Extent)) {
			out.spaces = append(out.spaces, s)
		}
	}
	return &out
}

// meets reports whether some of a cut reaches into a rectangle, seen along a line.
func (a placedAir) meets(l line, f flat) bool {
	for _, list := range [2][]region{a.taken, a.unsure} {
		for _, r := range list {
			if f.meets(l, r) {
				return true
			}
		}
	}
	return false
}

// placeAll lays local boxes into the piece, dropping those that have no volume.
func placeAll(p *piece.Part, list []limits) []region {
	o := p.Origin()
	var out []region
	for _, l := range list {
		var r region
		empty := false
		for k, d := range p.Frame.Directions() {
			a, sign := d.Axis()
			r.lo[a], r.hi[a] = o[a]+l.lo[k], o[a]+l.hi[k]
			if sign < 0 {
				r.lo[a], r.hi[a] = o[a]-l.hi[k], o[a]-l.lo[k]
			}
			empty = empty || l.lo[k] >= l.hi[k]
		}
		if !empty {
			out = append(out, r)
		}
	}
	return out
}

// line runs along an axis, through a point of the two others: those with at[axis]
// left out.
type line struct {
	axis piece.Axis
	at   [3]unit.Length
}

// across returns the two other axes.
func (l line) across() [2]piece.Axis {
	switch l.axis {
	case piece.Right:
		return [2]piece.Axis{piece.Back, piece.Up}
	case piece.Back:
		return [2]piece.Axis{piece.Right, piece.Up}
	}
	return [2]piece.Axis{piece.Right, piece.Back}
}

// hits reports whether the line passes through the inside of a region.
func (l line) hits(r region) bool {
	for _, a := range l.across() {
		if l.at[a] <= r.lo[a] || l.at[a] >= r.hi[a] {
			return false
		}
	}
	return true
}

// grazes reports whether the line runs in a side of a region.
func (l line) grazes(r region) bool {
	edge := false
	for _, a := range l.across() {
		if l.at[a] < r.lo[a] || l.at[a] > r.hi[a] {
			return false
		}
		edge = edge || l.at[a] == r.lo[a] || l.at[a] == r.hi[a]
	}
	return edge
}

// stretch is wood of one part along a line. The cuts are those at which it begins
// and ends, nil for the part's own sides.
type stretch struct {
	from, to       unit.Length
	b              *block
	before, behind *piece.Cut
}

// wood returns the wood along the line in order; false where the line runs along
// a side of something, or through the wall of a curved cut, or where parts share
// wood.
func (m *model) wood(l line) ([]stretch, bool) {
	var out []stretch
	for _, b := range m.blocks {
		*m.looks += 1 + len(b.airs)
		if l.grazes(b.body) {
			return nil, false
		}
		if !l.hits(b.body) {
			continue
		}
		list := []stretch{{from: b.body.lo[l.axis], to: b.body.hi[l.axis], b: b}}
		for _, a := range b.airs {
			for _, u := range a.unsure {
				if l.hits(u) || l.grazes(u) {
					return nil, false
				}
			}
			for _, t := range a.taken {
				if l.grazes(t) {
					return nil, false
				}
				if l.hits(t) {
					list = without(list, t.lo[l.axis], t.hi[l.axis], a.cut)
				}
			}
		}
		out = append(out, list...)
	}
	slices.SortStableFunc(out, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	for i := 1; i < len(out); i++ {
		if out[i].from < out[i-1].to {
			return nil, false
		}
	}
	return out, true
}

// without takes a stretch of air out of wood.
func without(list []stretch, from, to unit.Length, c *piece.Cut) []stretch {
	var out []stretch
	for _, s := range list {
		if to <= s.from || from >= s.to {
			out = append(out, s)
			continue
		}
		if s.from < from {
			left := s
			left.to, left.behind = from, c
			out = append(out, left)
		}
		if s.to > to {
			right := s
			right.from, right.before = to, c
			out = append(out, right)
		}
	}
	return out
}
