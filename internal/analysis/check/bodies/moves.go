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
// moves, and those that are said to be inside a space. A piece that goes as a whole into
// an opening that is there already is none.
func (x *Index) Moves() []Move {
	if x.moved {
		return x.moves
	}
	x.moved = true
	fits, spaces := map[address.Address]*piece.Fit{}, map[address.Address]*piece.Space{}
	for i := range x.Piece.Fits {
		if f := &x.Piece.Fits[i]; fits[f.Moves] == nil && !x.Piece.Whole(f) {
			fits[f.Moves] = f
		}
	}
	for i := range x.Piece.Spaces {
		spaces[x.Piece.Spaces[i].Address] = &x.Piece.Spaces[i]
	}
	for _, g := range x.Piece.Groups {
		m := Move{Group: g, Fit: fits[g.Address]}
		if m.Fit == nil {
			m.Fit = fits[bare(g.Address)]
		}
		inside := g.Inside
		switch {
		case m.Fit == nil && inside == "":
			continue
		case inside == "":
			inside = m.Fit.Inside
		}
		m.Space = spaces[inside]
		if last := inside.Last(); m.Space == nil && g.Address.Last().Index > 0 && last.Index == 0 && !last.HasKey {
			m.Space = spaces[inside.Parent().Nth(last.Name, g.Address.Last().Index)]
		}
		m.Parts = x.Members(g.Address)
		if len(m.Parts) > 0 {
			m.Extent = m.Parts[0].Extent
			for _, p := range m.Parts[1:] {
				m.Extent = Around(m.Extent, p.Extent)
			}
		}
		x.moves = append(x.moves, m)
	}
	return x.moves
}

// bare returns an address without its last number.
func bare(a address.Address) address.Address {
	last := a.Last()
	if last.Index == 0 {
		return a
	}
	return a.Parent().Child(last.Name)
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

// Around returns the box around two.
func Around(e, f [3]piece.Extent) [3]piece.Extent {
	for i := range e {
		if f[i].Low.Nm < e[i].Low.Nm {
			e[i].Low = f[i].Low
		}
		if f[i].High.Nm > e[i].High.Nm {
			e[i].High = f[i].High
		}
	}
	return e
}
