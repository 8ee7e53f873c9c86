package joinery

import (
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Around returns boxes in the piece, by right, back and up, that hold all the
// wood that a cut takes; only limits in nanometres are set, without ledger
// entries. They are exact for slots with square corners and the boxes around the
// curve for everything else.
func Around(p *piece.Part, c *piece.Cut) [][3]piece.Extent {
	size := p.Sizes()
	lo, hi := [3]unit.Length{}, [3]unit.Length{size[0].Nm, size[1].Nm, size[2].Nm}
	inwards := func(s piece.Side, depth unit.Length) {
		a, high := s.Axis()
		if high {
			lo[a] = size[a].Nm - depth
		} else {
			hi[a] = depth
		}
	}
	switch {
	case c.Slot != nil:
		s := c.Slot
		if open, _ := s.Open.Axis(); open == s.Run {
			return nil
		}
		inwards(s.Open, s.Depth.Nm)
		lo[s.Run], hi[s.Run] = s.From.Nm, s.To.Nm
		lo[s.Across()], hi[s.Across()] = s.Near.Nm, s.Far.Nm
	case c.Bore != nil:
		inwards(c.Bore.Open, c.Bore.Depth.Nm)
		if c.Bore.Through {
			a, _ := c.Bore.Open.Axis()
			lo[a], hi[a] = 0, size[a].Nm
		}
		open, _ := c.Bore.Open.Axis()
		r := (c.Bore.Diameter.Nm + 1) / 2
		k := 0
		for a := range lo {
			if piece.Local(a) != open {
				lo[a], hi[a] = c.Bore.At[k].Nm-r, c.Bore.At[k].Nm+r
				k++
			}
		}
	case c.Dip != nil:
		inwards(c.Dip.Open, c.Dip.Depth.Nm)
		open, _ := c.Dip.Open.Axis()
		along := piece.AlongLength
		if open == piece.AlongLength {
			along = piece.AlongWidth
		}
		half := (c.Dip.Chord.Nm + 1) / 2
		lo[along], hi[along] = c.Dip.Centre.Nm-half, c.Dip.Centre.Nm+half
	case c.Ease != nil:
		for _, s := range c.Ease.Sides {
			inwards(s, c.Ease.Radius.Nm)
		}
	default:
		return nil
	}
	b := placed(p, lo, hi)
	if body := box(p.Extent); overlaps(b, body) {
		return [][3]piece.Extent{meet(b, body)}
	}
	return nil
}

// placed turns local limits into a box of the piece.
func placed(p *piece.Part, lo, hi [3]unit.Length) box {
	origin := p.Origin()
	var b box
	for k, d := range p.Frame.Directions() {
		a, sign := d.Axis()
		low, high := origin[a]+lo[k], origin[a]+hi[k]
		if sign < 0 {
			low, high = origin[a]-hi[k], origin[a]-lo[k]
		}
		b[a] = piece.Extent{Low: piece.Figure{Nm: low}, High: piece.Figure{Nm: high}}
	}
	return b
}
