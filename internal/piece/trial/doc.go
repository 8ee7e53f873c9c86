// Package trial puts pieces together by hand, for tests of what comes after the
// documents: boxes with joints, a drawer, a carcase, a chest with trays.
//
// In: places in tenths of a millimetre, for short. Out: a [piece.Piece] with
// extents, sizes and figures in a ledger, as evaluation would give it. Nothing of
// the product may use it.
package trial
