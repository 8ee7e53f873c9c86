// Package joinery lowers joints into cuts: what the maker means becomes what is
// taken from each part.
//
// In: a [piece.Piece] whose parts are drawn with all that joints add to them,
// and whose joints are pairs. Out: the cuts that the joints make, in local
// coordinates of the parts, and for each joint the numbers of its own formula
// ([Lowered]); diagnostics for joints that cannot be made. Nothing of the piece
// is changed.
//
// A joint partitions the overlap of the uncut bodies: what part A keeps, what
// part B keeps and, where it wants clearance, what neither keeps. Bodies are
// boxes in the axes of the piece, in whole nanometres. What a joint claims is a box
// too, or, for dovetails and mitres, a prism: a box of one convex section along an
// axis, whose corners are figures in whole nanometres. Whether two of them share
// wood is exact; where a slope meets the diagonal of a mitre or is cut through by
// another joint, the new corner is rounded to the nanometre. Every figure of a cut is
// made by the ledger from its figures of the parts' extents and of the joint's own
// sizes.
//
// A claim is written as a slot where it is one, with walls that lean where its section
// is a trapezoid that opens at a side of the part; a mitre as a slice; anything else
// as a pocket from the side that its section runs out at.
//
// Where two joints claim the same wood for different parts, the joint that says
// it goes over the other is cut whole and the other ends at it; if neither says
// so, that is an error that names both. Two joints that both take the wood from
// the same part are no conflict. What yields to a prism ends at the box around what
// the two have in common. Mitres that meet in one corner share it out among
// themselves.
//
// A cut runs out through the end of its part wherever the wood beyond is gone
// anyway, or where running out shows nowhere: every side on which the longer cut
// is open lies against finished wood of another part. An end that the document
// stops is never run out.
//
// The package knows joints and boxes; it knows neither documents nor solids, nor
// how a cut is made.
//
// Terms: a slip is what goes across a mitre, a spline or a key; the entry is the way in which A goes into B; the run is the axis along
// which the cut is long; across is the third axis. A claim is wood taken from
// one part for the sake of another.
package joinery
