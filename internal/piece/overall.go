package piece

import "scantling/internal/unit"

// High returns how far the piece reaches from its lowest part to its highest, with lids
// that are sawn off on their bases.
func (p *Piece) High() unit.Length {
	return p.Overall()[Up]
}

// Overall returns the size of the finished piece along right, back and up: the box
// around all its parts, with lids that are sawn off on their bases.
func (p *Piece) Overall() [3]unit.Length {
	var low, high, size [3]unit.Length
	for i := range p.Parts {
		for axis, e := range p.Parts[i].Extent {
			top := p.Shut(p.Parts[i].Address, Axis(axis), e.High.Nm)
			if i == 0 || e.Low.Nm < low[axis] {
				low[axis] = e.Low.Nm
			}
			if i == 0 || top > high[axis] {
				high[axis] = top
			}
		}
	}
	for axis := range size {
		size[axis] = high[axis] - low[axis]
	}
	return size
}
