package collision

import (
	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
)

// measured is the spaces that have been measured, by the groups that move in
// them. What was measured as clear is clear, however the parts round it are drawn.
//
// So it is with a part that was read where it goes, and what it meets at the end to
// which it was read: in them are the pairs of the two.
type measured struct {
	inside map[address.Address]*piece.Space
	parent map[address.Address]address.Address
	in     map[[2]address.Address]bool
}

func measuredOf(p *piece.Piece, l *ledger.Ledger) measured {
	m := measured{inside: map[address.Address]*piece.Space{}, parent: map[address.Address]address.Address{}, in: map[[2]address.Address]bool{}}
	for _, x := range p.InPlace {
		for _, far := range x.Far {
			m.in[pair(x.Part, far)] = true
		}
	}
	spaces := map[address.Address]*piece.Space{}
	for i := range p.Spaces {
		s := &p.Spaces[i]
		for _, c := range s.Clear {
			if e, _ := l.Entry(c.Entry); e.Origin == ledger.Measured || e.Origin == ledger.FromMeasured {
				spaces[s.Address] = s
			}
		}
	}
	for i := range p.Groups {
		g := &p.Groups[i]
		m.parent[g.Address] = g.Parent
		if s := spaces[g.Inside]; s != nil {
			m.inside[g.Address] = s
		}
	}
	return m
}

// clears reports whether all that two bodies share lies in a measured space in
// which one of them moves, and the other does not.
func (m measured) clears(a, b *piece.Part) bool {
	if m.in[pair(a.Address, b.Address)] {
		return true
	}
	sa, sb := m.spaceOf(a), m.spaceOf(b)
	if sa == sb {
		return false
	}
	for _, s := range [2]*piece.Space{sa, sb} {
		if s != nil && within(a, b, s) {
			return true
		}
	}
	return false
}

// spaceOf returns the measured space that the part moves in, or nil.
func (m measured) spaceOf(p *piece.Part) *piece.Space {
	g := p.Group
	for range len(m.parent) + 1 {
		if s := m.inside[g]; s != nil {
			return s
		}
		up, ok := m.parent[g]
		if !ok {
			break
		}
		g = up
	}
	return nil
}

func within(a, b *piece.Part, s *piece.Space) bool {
	for i := range 3 {
		low := max(a.Extent[i].Low.Nm, b.Extent[i].Low.Nm)
		high := min(a.Extent[i].High.Nm, b.Extent[i].High.Nm)
		if low < s.Extent[i].Low.Nm || high > s.Extent[i].High.Nm {
			return false
		}
	}
	return true
}
