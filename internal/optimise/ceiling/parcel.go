package ceiling

import "scantling/internal/optimise/problem"

// Parcel is a rectangle that is cut in two, or holds one piece at its corner.
type Parcel struct {
	X, Y  int64
	Cut   problem.Direction // Crosscut divides x, Rip y; Any: not cut
	At    int64
	Parts [2]*Parcel // nil: nothing but waste
	Piece *Piece
}

// Walk visits the parcel and all within it.
func (p *Parcel) Walk(visit func(*Parcel)) {
	if p == nil {
		return
	}
	visit(p)
	p.Parts[0].Walk(visit)
	p.Parts[1].Walk(visit)
}

// Less returns a copy of p without parcel q, or nil if nothing is left.
func (p *Parcel) Less(q *Parcel) *Parcel {
	if p == nil || p == q {
		return nil
	}
	c := *p
	c.Parts = [2]*Parcel{p.Parts[0].Less(q), p.Parts[1].Less(q)}
	if c.Cut != problem.Any && c.Parts[0] == nil && c.Parts[1] == nil {
		return nil
	}
	return &c
}
