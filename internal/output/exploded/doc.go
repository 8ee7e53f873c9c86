// Package exploded says how far each part is moved in a view of a group taken apart.
//
// In: a plan with its removals, a group, and a gap. Out: a shift for each part of the
// group, in millimetres of the piece by right, back and up. Parts are judged by
// the boxes around their uncut bodies, so that nothing is exact: it is for looking
// at. The package draws nothing and must not know of paper.
package exploded
