package inplace

import (
	"slices"

	"scantling/internal/address"
	"scantling/internal/ledger"
	"scantling/internal/piece"
)

// Apply returns the piece and the cuts of its joints with every part as large as it was
// read where it goes. Where nothing was read they are those that were given.
func Apply(drawn *piece.Piece, cuts []piece.Cut, l *ledger.Ledger) (*piece.Piece, []piece.Cut) {
	if len(drawn.InPlace) == 0 {
		return drawn, cuts
	}
	made := *drawn
	made.Parts, made.Cuts, made.Series, cuts = slices.Clone(drawn.Parts), slices.Clone(drawn.Cuts), slices.Clone(drawn.Series), slices.Clone(cuts)
	for _, x := range drawn.InPlace {
		i := slices.IndexFunc(made.Parts, func(p piece.Part) bool { return p.Address == x.Part })
		if i < 0 {
			continue
		}
		f := farEnd{InPlace: x, ledger: l, joints: map[address.Address]bool{}}
		for _, j := range drawn.Joints {
			if j.A == x.Part && slices.Contains(x.Far, j.B) || j.B == x.Part && slices.Contains(x.Far, j.A) {
				f.joints[j.Address] = true
			}
		}
		f.part(&made.Parts[i])
		for _, list := range [2][]piece.Cut{made.Cuts, cuts} {
			for k := range list {
				if list[k].Part == x.Part {
					list[k] = f.cut(list[k])
				}
			}
		}
		for k := range made.Series {
			if made.Series[k].Part == x.Part {
				f.series(&made.Series[k])
			}
		}
	}
	return &made, cuts
}

// farEnd moves what belongs to the end of a part that is made to a reading.
type farEnd struct {
	piece.InPlace
	ledger *ledger.Ledger
	// joints are those with the parts at that end.
	joints map[address.Address]bool
}

// moved is a place at the far end where it comes to lie.
func (f farEnd) moved(at piece.Figure) piece.Figure {
	if at.Nm == f.Drawn.Nm {
		return f.Size
	}
	return f.ledger.Sum("", f.ledger.Less("", at, f.Drawn), f.Size)
}

// end is a limit of what is cut, which goes along if it is the part's own.
func (f farEnd) end(at piece.Figure, along bool) piece.Figure {
	if along || at.Nm == f.Drawn.Nm {
		return f.moved(at)
	}
	return at
}

// part makes the part as large as was read, and its outline with it.
func (f farEnd) part(p *piece.Part) {
	name := string(p.Address)
	axis, sign := p.Frame.Directions()[f.Along].Axis()
	e := &p.Extent[axis]
	if sign > 0 {
		e.High = f.ledger.Sum(name+".made", e.Low, f.Size)
	} else {
		e.Low = f.ledger.Less(name+".made", e.High, f.Size)
	}
	if f.Along == piece.AlongLength {
		p.Length = f.Size
	} else {
		p.Width = f.Size
	}
	p.Outline = f.line(p.Outline, f.Along == piece.AlongLength)
	holes := slices.Clone(p.Holes)
	for i := range holes {
		holes[i] = f.line(holes[i], f.Along == piece.AlongLength)
	}
	p.Holes = holes
	if f.Along == piece.AlongLength {
		p.Profile = slices.Clone(p.Profile)
		for i := range p.Profile {
			p.Profile[i].Along = f.end(p.Profile[i].Along, false)
		}
	}
}

// line moves those corners of a line that lie at the far end.
func (f farEnd) line(line []piece.OutlinePoint, first bool) []piece.OutlinePoint {
	out := slices.Clone(line)
	for i := range out {
		if first {
			out[i].Along = f.end(out[i].Along, false)
		} else {
			out[i].Across = f.end(out[i].Across, false)
		}
	}
	return out
}

// series lets the last stretch of a row take the difference, if it can.
func (f farEnd) series(s *piece.Series) {
	n := len(s.Terms)
	if s.Across != f.Along || n == 0 || s.Whole.Nm != f.Drawn.Nm {
		return
	}
	last := f.moved(s.Terms[n-1].Figure)
	if last.Nm < 0 {
		return
	}
	s.Terms = slices.Clone(s.Terms)
	s.Terms[n-1].Figure, s.Whole = last, f.Size
}
