package plan

import "scantling/internal/unit"

// Overall returns the size of the whole piece along right, back and up: the box
// around all its parts.
func (p *Plan) Overall() [3]unit.Length {
	var low, high, size [3]unit.Length
	for i, part := range p.Piece.Parts {
		for axis, e := range part.Extent {
			if i == 0 || e.Low.Nm < low[axis] {
				low[axis] = e.Low.Nm
			}
			if i == 0 || e.High.Nm > high[axis] {
				high[axis] = e.High.Nm
			}
		}
	}
	for axis := range size {
		size[axis] = high[axis] - low[axis]
	}
	return size
}
