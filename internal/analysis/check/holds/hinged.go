package holds

import (
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/piece"
)

// hinged returns how a lid swings that is sawn off the box in which contents stand and
// hinged at the outside of its back: what the document need not say of it; nil where
// there is none.
func (j *judge) hinged(c *piece.Contents) *piece.Lid {
	for _, in := range c.In {
		space := j.spaces[in]
		if space == nil {
			continue
		}
		for i := range j.Piece.Sawn {
			s := &j.Piece.Sawn[i]
			up := space.Extent[piece.Up]
			if s.Group != space.Group && !j.bounds(s, space) || up.Low.Nm > s.Lost.Low.Nm || up.High.Nm < s.Lost.High.Nm || !j.hingedBehind(s) {
				continue
			}
			back, l, name := s.Extent[piece.Back].High, j.Ledger, string(c.Address)+".lid"
			return &piece.Lid{
				Arm:  l.Less(name+".arm", back, space.Extent[piece.Back].Low),
				Rim:  l.Less(name+".rim", s.Lost.Low, up.Low),
				Back: l.Less(name+".back", back, space.Extent[piece.Back].High),
			}
		}
	}
	return nil
}

// bounds reports whether a wall of the box bounds a space.
func (j *judge) bounds(s *piece.Sawn, space *piece.Space) bool {
	return slices.ContainsFunc(space.Bounds[:], func(b string) bool {
		return slices.ContainsFunc(s.Walls, func(w address.Address) bool { return strings.HasPrefix(b, string(w)+".") })
	})
}

// hingedBehind reports whether hinges are on the wall at the back.
func (j *judge) hingedBehind(s *piece.Sawn) bool {
	for i := range j.Piece.Hardware {
		h := &j.Piece.Hardware[i]
		if !strings.Contains(h.Kind, "hinge") || !s.Wall(h.On) {
			continue
		}
		if p := j.index.Part(h.On); p != nil && p.Extent[piece.Back].High.Nm == s.Extent[piece.Back].High.Nm && p.Extent[piece.Back].Low.Nm > s.Extent[piece.Back].Low.Nm {
			return true
		}
	}
	return false
}
