package shape

import (
	"scantling/internal/address"
	"scantling/internal/geom/solid"
	"scantling/internal/piece"
)

// Half returns what a lid that is sawn off leaves of part number i: what goes off with
// the lid, or what stays with the base, where both were glued.
func (s *Shapes) Half(i int, sawn *piece.Sawn, lid bool) *Shape {
	p := s.parts[i]
	j := s.job(i)
	for n, c := range s.cuts[p.Address] {
		if sawn.Saws(c) {
			gone := *c.Slot
			at, same := p.Frame.LocalOf(piece.Up)
			if lid == (same > 0) {
				gone.Near = piece.Figure{}
			} else {
				gone.Far = p.Sizes()[at]
			}
			all := *c
			all.Slot = &gone
			j.Cutters = append(j.Cutters, cutters(p, &all, n)...)
		}
	}
	return &Shape{Part: p, Cuts: s.cuts[p.Address], Solid: s.cache.Build(j), Frame: p.Placed()}
}

// Ready returns a part as it stands in the finished piece, with every lid that was sawn
// off on its base again: of a wall that was sawn through what is left with the base, and
// then what went off with the lid. It returns nothing where the piece has no such part.
func (s *Shapes) Ready(a address.Address) []solid.Placed {
	i, ok := s.index[a]
	if !ok {
		return nil
	}
	for k := range s.sawn {
		sawn := &s.sawn[k]
		switch {
		case sawn.Wall(a):
			return []solid.Placed{s.Half(i, sawn, false).Placed(), lowered(s.Half(i, sawn, true), sawn)}
		case sawn.Lifts(a):
			return []solid.Placed{lowered(s.At(i), sawn)}
		}
	}
	return []solid.Placed{s.At(i).Placed()}
}

// lowered puts what goes off with a lid on its base.
func lowered(s *Shape, sawn *piece.Sawn) solid.Placed {
	out := s.Placed()
	out.Frame.Origin.Z -= sawn.Takes.Nm.Millimetres()
	return out
}
