// Package bodies lets checks look at parts, what moves, and the wood that is left.
//
// In: the context of an analysis. Out: an [Index] of parts with their cuts,
// materials and spaces; the moving groups with the spaces that they move in
// ([Index.Moves]); boxes, in a part's own axes or in the piece, and what is left
// of a box when finished wood is taken away.
//
// Lengths are whole nanometres and boxes exact; a round cut counts as the box
// around it, so that wood is never supposed where there may be none. The package
// judges nothing and enters nothing in the ledger.
//
// Terms: a move is a group with the space it moves in and the fit that says how
// close; along is an axis of the piece.
package bodies
