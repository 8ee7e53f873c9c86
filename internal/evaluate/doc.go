// Package evaluate turns documents into a piece.
//
// In: [Sources]: the design document, the shop document, recipes, the as-built
// record, the choices file and what the user has set inputs to. Out: [Result]: a
// piece.Piece with every size and place worked out and every joint resolved into
// pairs, the shop, one ledger that leads from every figure down to what was
// written, and everything that is wrong, each once. [Piece] is the one entry.
//
// Values are worked out when they are asked for and kept, so that the order of
// writing does not matter; a circle is reported whole. What cannot be worked out
// is left out of the piece and what rests on it stays silent.
//
// Frames: a group has its own axes, parallel to the piece's, from its origin. A
// formula stands in the frame of its group; a place named in another group is
// carried over. Parts, spaces and cuts leave the package in the piece's frame
// (cuts in the part's own), as package piece says.
//
// Extents: along each axis a part is given two of low place, high place and
// size; the one axis that has a single place takes the material's thickness. A
// place that is a face of another part, with nothing added, is where the part
// stops; a joint between the two that enters adds its depth there.
//
// Everything is exact. Work is bounded by counting ([Limits], [Work]). The
// package must not know plans, solids or outputs.
package evaluate
