// Package direction reads the words that documents use for directions: right, left,
// back, front, up and down in which something runs; left, right, front, back, top,
// bottom, inside and outside for what looks there.
//
// In: words, and of a pair which one of it is meant. Out: piece.Direction and
// piece.Axis values. For the right one of a pair left and right are exchanged. It
// must not know what is cut.
package direction
