package joinery

import "scantling/internal/piece"

// groove lets the edge of a panel A into a groove of B, with clearance across
// and at the bottom; where the groove ends inside B the bottom's clearance stands
// at its end too. All the clearance across lies on the panel's high side (above a
// bottom, behind a back), so that the grooves of all parts round one panel run in
// one plane and are set from whole figures.
//
// With overlap d × t × r: kept by A d t r; by neither, for clearances a across
// and b at the bottom of a groove that is open at both ends,
// (d + b)(t + a) r - d t r. A and B meet on the one wall without clearance, d r,
// and at the bottom, t r, where b is nought.
func (w *work) groove(i int) {
	w.letIn(i, letting{kind: piece.Groove, roomHigh: true, roomAtEnds: true})
}
