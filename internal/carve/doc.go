// Package carve works out the cuts that a document writes on parts: one block on
// one part at a time, in the part's own coordinates.
//
// In: a [Site], the block with what is needed to work its formulas out, the part
// as it is in the piece, and the shop. Out: piece.Cut and piece.Series values
// ([Cuts], [Series]); a row of channels takes its cutters and depths from the shop.
// What is wrong is reported and left out.
//
// Frames: words name the piece's directions (left, front, bottom ...); plain
// lengths count from the part's low end along that direction, positions are where
// they are; what comes out counts from the part's local origin. For the right one
// of a pair directions from left to right are mirrored. Everything is exact, and
// the terms of a row add up to the part.
//
// The package must not know groups, joints or other parts.
package carve
