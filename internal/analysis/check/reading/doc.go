// Package reading judges what was read from the work: whether an opening came out
// even enough for what must fit it, and whether that is cut to the smallest
// reading.
//
// The widths in front and behind may differ by the fit's clearance from side to
// side, the heights at both sides by the clearance above: what is fitted to the
// smaller end then still moves at the other without rattling more than twice. A
// difference of the diagonals, where it is recorded, may be as much as the
// clearance from side to side. What goes in must leave the fit's clearance at the
// smallest reading. A reading that is more than 5 mm off what is planned is taken for a
// slip of the pen, or for another opening's.
//
// Common practice without a source; the rules of the house "reading off plan" and
// "square" change two of the limits, the other two are the document's own clearances. Where nothing was read yet there is nothing to
// judge, and the check passes; where one end was read and the other was not, the
// answer is unknown.
package reading
