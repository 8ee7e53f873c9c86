// Package backtoback judges the wood that is left between cuts from two sides of a
// part, behind a single cut, and in the tongue beside a rebate.
//
// Two housings that meet back to back, or a groove over a housing, leave a thin
// web that breaks or shows through. Cuts count where they lie over each other as
// seen from the face. The wall behind a groove or housing and the tongue that a
// rebate leaves are judged in the same way; the floor under channels is the
// business of the check of land.
//
// Limits, common practice without a source: two fifths of the thickness between
// two cuts (rule of the house "least between"), 3 mm for a tongue ("least
// tongue"), 2 mm for a wall ("least wall"). A cut whose depth is not known is
// unknown.
package backtoback
