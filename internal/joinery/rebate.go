package joinery

import "scantling/internal/piece"

// rebate lets A into a step along an edge or an end of B: at the corner of a box,
// or for a back. A stays whole. Clearance across is left at the step's wall.
//
// With overlap d × t × r: kept by A d t r, by B nothing. A and B meet at the
// step's bottom, t r, and its wall, d r.
func (w *work) rebate(i int) {
	j := &w.joints[i]
	a := j.meets.across
	openHigh := j.meets.region[a].High.Nm == j.partB.Extent[a].High.Nm
	w.letIn(i, letting{kind: piece.Rebate, roomHigh: !openHigh})
}
