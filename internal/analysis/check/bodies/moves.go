package bodies

import (
	"scantling/internal/address"
	"scantling/internal/piece"
)

// Move is a group that moves in a space.
type Move struct {
	Group piece.Group
	// Fit is nil where no fit says how close it moves.
	Fit *piece.Fit
	// Space is nil where the piece does not say which it is.
	Space *piece.Space
	Parts []*piece.Part
	// Extent is the box around the parts.
	Extent [3]piece.Extent
}

// Moves returns the moving groups in the order of the piece: those that a fit
// moves, and those that are said to be inside a space.
func (x *Index) Moves() []Move {
	var out []Move
	for _, g := range x.Piece.Groups {
		m := Move{Group: g}
		for i := range x.Piece.Fits {
			if f := &x.Piece.Fits[i]; m.Fit == nil && Matches(f.Moves, g.Address) {
				m.Fit = f
			}
		}
		if m.Fit == nil && g.Inside == "" {
			continue
		}
		m.Space = x.spaceOf(g, m.Fit)
		m.Parts = x.Members(g.Address)
		if len(m.Parts) > 0 {
			m.Extent = around(m.Parts)
		}
		out = append(out, m)
	}
	return out
}

// spaceOf returns the space that a group moves in: its own, or that of its fit
// with the group's number.
func (x *Index) spaceOf(g piece.Group, f *piece.Fit) *piece.Space {
	inside := g.Inside
	if inside == "" {
		inside = f.Inside
	}
	var found []*piece.Space
	for i := range x.Piece.Spaces {
		s := &x.Piece.Spaces[i]
		if s.Address == inside {
			return s
		}
		if Matches(inside, s.Address) {
			found = append(found, s)
		}
	}
	n := g.Address.Last().Index
	if n == 0 && len(found) == 1 {
		return found[0]
	}
	for _, s := range found {
		if s.Address.Last().Index == n {
			return s
		}
	}
	return nil
}

// Fronts returns the parts of the move whose front face shows.
func (m Move) Fronts() []*piece.Part {
	var out []*piece.Part
	for _, p := range m.Parts {
		if p.Show == piece.ToFront {
			out = append(out, p)
		}
	}
	return out
}

// Has reports whether a part belongs to the move.
func (m Move) Has(part address.Address) bool {
	for _, p := range m.Parts {
		if p.Address == part {
			return true
		}
	}
	return false
}

// Holds reports whether an address is the group, one of its parts or below them.
func (m Move) Holds(a address.Address) bool { return a != "" && m.Group.Address.Has(a) }

func around(parts []*piece.Part) [3]piece.Extent {
	e := parts[0].Extent
	for _, p := range parts[1:] {
		for i := range e {
			if p.Extent[i].Low.Nm < e[i].Low.Nm {
				e[i].Low = p.Extent[i].Low
			}
			if p.Extent[i].High.Nm > e[i].High.Nm {
				e[i].High = p.Extent[i].High
			}
		}
	}
	return e
}
