package piece

import "scantling/internal/address"

// InPlace is the length or width of a part that was read where the part goes, between
// those that it is let into. These stand as they are drawn; the part is made to what was
// read, its end 1 (or edge 1) where it is drawn.
type InPlace struct {
	Part  address.Address `json:"part"`
	Along Local           `json:"along"`
	// Drawn is the size as planned, Size what was read, or what the part was cut to.
	Drawn Figure `json:"drawn"`
	Size  Figure `json:"size"`
	// Far are the parts that it meets at its end 2 (or edge 2).
	Far []address.Address `json:"far,omitempty"`
}

// FarEnd lists the parts that a joint holds to a part where that ends along one of its
// own axes, at end 2 or edge 2.
func (p *Piece) FarEnd(of *Part, along Local) []address.Address {
	axis, sign := of.Frame.Directions()[along].Axis()
	at := of.Extent[axis].High.Nm
	if sign < 0 {
		at = of.Extent[axis].Low.Nm
	}
	var out []address.Address
	for i := range p.Parts {
		q := &p.Parts[i]
		if q.Extent[axis].Low.Nm <= at && at <= q.Extent[axis].High.Nm && p.joined(of.Address, q.Address) {
			out = append(out, q.Address)
		}
	}
	return out
}

// joined reports whether a joint holds two parts together.
func (p *Piece) joined(a, b address.Address) bool {
	for i := range p.Joints {
		if j := &p.Joints[i]; j.A == a && j.B == b || j.A == b && j.B == a {
			return true
		}
	}
	return false
}
