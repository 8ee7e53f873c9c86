package joinery

import (
	"math"

	"scantling/internal/geom/vec"
	"scantling/internal/piece"
	"scantling/internal/unit"
)

// Around returns boxes in the piece, by right, back and up, that hold all the
// wood that a cut takes; only limits in nanometres are set, without ledger
// entries. They are exact for slots with square corners and the boxes around the
// curve or the slope for everything else. Of a tilted part they are boxes around
// the box as it stands.
func Around(p *piece.Part, c *piece.Cut) [][3]piece.Extent {
	lo, hi, ok := Limits(p, c)
	if !ok {
		return nil
	}
	if p.Tilt != nil {
		return [][3]piece.Extent{tilted(p, lo, hi)}
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

// tilted returns the box of the piece around local limits of a tilted part.
func tilted(p *piece.Part, lo, hi [3]unit.Length) box {
	f := p.Placed()
	least := [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
	most := [3]float64{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for k := range 8 {
		c := lo
		for a := range c {
			if k>>a&1 != 0 {
				c[a] = hi[a]
			}
		}
		v := f.ToWorld(vec.Of(c[0], c[1], c[2]))
		for a := range 3 {
			least[a], most[a] = min(least[a], v.At(a)), max(most[a], v.At(a))
		}
	}
	var b box
	for a := range b {
		b[a] = piece.Extent{
			Low:  piece.Figure{Nm: unit.FromMillimetres(least[a]) - 1},
			High: piece.Figure{Nm: unit.FromMillimetres(most[a]) + 1},
		}
	}
	return b
}

// Stands returns the box of the piece around a part's uncut body as it stands: its
// extent, or for a tilted part the box around the tilted body.
func Stands(p *piece.Part) [3]piece.Extent {
	if p.Tilt == nil {
		return p.Extent
	}
	s := p.Sizes()
	return tilted(p, [3]unit.Length{}, [3]unit.Length{s[0].Nm, s[1].Nm, s[2].Nm})
}
