// Package hidden judges whether a groove or rebate of a joint shows at the end of
// its part as a hole.
//
// A groove for a bottom that runs out through the end of a side leaves a square
// hole in the finished piece, unless what goes into it fills it or another part
// covers it. The opening at each end that a cut runs out through is held against
// the finished wood of all other parts; what moves in the piece covers nothing of
// what stands still, and the other way round. Openings that lie side by side are one
// opening. Up to 0.5 mm wide they are a hairline and do not count; beside the part that
// fills the cut the joint's own clearance comes on top of that, for as much again.
//
// Common practice without a source; the rule of the house "hairline" changes it. A cut for a part that the piece does not have
// is unknown.
package hidden
