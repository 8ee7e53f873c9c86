package joinery

import "scantling/internal/piece"

// housing lets the end of A into a trench across B, through or stopped. Where it
// is stopped, B keeps its wood beyond the stop and A is notched to match.
//
// With overlap d × t × r (depth, thickness of A, run) and stops s: kept by A
// d t (r - Σs), by B d t Σs, by neither the clearances. A and B meet at the
// bottom, both walls, and at each stop on the end of the trench (d t) and under
// the notch (s t).
func (w *work) housing(i int) {
	kind := piece.Housing
	j := &w.joints[i]
	if along, _ := j.partB.Frame.LocalOf(j.meets.run); along == piece.AlongLength {
		kind = piece.Groove
	}
	w.letIn(i, letting{kind: kind, roomHigh: true})
}
