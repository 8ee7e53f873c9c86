// Package shape is the bridge from wood to geometry: a part and its cuts become
// a solid.
//
// In: parts and cuts of a [piece.Piece], exact and in local coordinates. Out: a
// [Shape] for each part: the solid in the part's own axes (x along the length, y
// across the width, z through the thickness, from the local origin, in
// millimetres), its pose in the piece, and for every face where it comes from: a
// side of the part or a wall of a cut ([Shape.Origin]).
//
// Parts with the same sizes and the same cuts share one solid, wherever they
// stand. Solids are worked out when they are first asked for. Cutters reach a
// little beyond the part where a cut is open, so that no skin is left.
//
// [Content] describes a part by its sizes and cuts alone, exactly, so that equal
// parts can be found without any geometry, turned round or mirrored.
//
// The ends of a slot that stops inside the wood are flat, or as round as its
// EndRadius says: then they are what the cutter leaves where it is let in. Bored
// holes end flat, whatever the point of the drill. Crossing into floating point
// happens in this package and nowhere above it. The package knows no plan.
package shape
