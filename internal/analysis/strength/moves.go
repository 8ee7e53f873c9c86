package strength

import (
	"scantling/internal/address"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// move is a group that slides out of the piece to the front.
type move struct {
	group address.Address
	fit   *piece.Fit
	parts []*piece.Part
	// low and high are the ends of its parts by axis.
	low, high [3]piece.Figure
	// out is how far it comes out, once asked for.
	out piece.Figure
}

// moving lists the groups that a fit moves, or that are inside a space, and that can
// come out to the front: their space is open there, or nobody says.
func (e *estimator) moving() []move {
	fits, spaces := map[address.Address]*piece.Fit{}, map[address.Address]*piece.Space{}
	for i := range e.Piece.Fits {
		if f := &e.Piece.Fits[i]; fits[f.Moves] == nil && !e.Piece.Whole(f) {
			fits[f.Moves] = f
		}
	}
	for i := range e.Piece.Spaces {
		spaces[e.Piece.Spaces[i].Address] = &e.Piece.Spaces[i]
	}
	var out []move
	for i := range e.Piece.Groups {
		g := &e.Piece.Groups[i]
		m := move{group: g.Address, fit: fits[g.Address]}
		if m.fit == nil {
			m.fit = fits[bare(g.Address)]
		}
		inside := g.Inside
		switch {
		case m.fit == nil && inside == "":
			continue
		case inside == "":
			inside = m.fit.Inside
		}
		s := spaces[inside]
		if last := inside.Last(); s == nil && g.Address.Last().Index > 0 {
			s = spaces[inside.Parent().Nth(last.Name, g.Address.Last().Index)]
		}
		if s != nil && s.Bounds[2*int(piece.Back)] != "" {
			continue // it does not come out to the front
		}
		for k := range e.Piece.Parts {
			if p := &e.Piece.Parts[k]; g.Address.Has(p.Address) {
				m.parts = append(m.parts, p)
			}
		}
		if len(m.parts) > 0 {
			m.around()
			out = append(out, m)
		}
	}
	return out
}

func bare(a address.Address) address.Address {
	last := a.Last()
	if last.Index == 0 {
		return a
	}
	return a.Parent().Child(last.Name)
}

func (m *move) around() {
	for i, p := range m.parts {
		for a, x := range p.Extent {
			if i == 0 || x.Low.Nm < m.low[a].Nm {
				m.low[a] = x.Low
			}
			if i == 0 || x.High.Nm > m.high[a].Nm {
				m.high[a] = x.High
			}
		}
	}
}

// of returns the move that a part or group goes with, or nil.
func (e *estimator) of(a address.Address) *move {
	if m, ok := e.goes[a]; ok {
		return m
	}
	var found *move
	for i := range e.moves {
		if e.moves[i].group == a || e.moves[i].group.Has(a) {
			found = &e.moves[i]
			break
		}
	}
	e.goes[a] = found
	return found
}

func (m *move) size(a piece.Axis) unit.Length { return m.high[a].Nm - m.low[a].Nm }
