// Package measured judges whether every opening that something must fit is
// measured before that is cut: its width in front and behind, its height at both
// sides, and its diagonals.
//
// A case comes out otherwise than it was drawn; what goes in is cut to what was
// read. A width or height that is taken at one end only does not show that the
// opening is wider behind. What is cut to the opening must wait for the readings.
//
// That openings are measured at both ends is common practice without a source. A
// fit whose space no measure names is unknown: whether it will fit is not known.
package measured
