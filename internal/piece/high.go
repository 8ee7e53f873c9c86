package piece

import "scantling/internal/unit"

// High returns how far the piece reaches from its lowest part to its highest.
func (p *Piece) High() unit.Length {
	var low, high unit.Length
	for i := range p.Parts {
		e := p.Parts[i].Extent[Up]
		if i == 0 || e.Low.Nm < low {
			low = e.Low.Nm
		}
		if i == 0 || e.High.Nm > high {
			high = e.High.Nm
		}
	}
	return high - low
}
