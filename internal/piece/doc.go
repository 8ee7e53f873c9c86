// Package piece holds what the maker means: the first of the three nouns.
//
// A [Piece] is plain data: inputs, materials, groups, parts with their sizes
// and places, clear spaces, joints that say who gives way, cuts, contents, fits,
// what must be measured, hardware, finish and the author's own steps. Package
// evaluate makes it from documents; joinery adds the cuts that joints make.
//
// Frames. The piece's own frame has three axes: right, back and up, from the
// left front bottom corner. Every part also has local axes: length along the
// grain, width, thickness, each laid along one axis of the piece ([Frame]); its
// cuts are given in local coordinates from the local origin.
//
// Every length is a [ledger.Figure], exact to the nanometre. The package knows
// neither documents nor plans, and computes nothing but what follows from the
// data in front of it (boxes, frames).
package piece
