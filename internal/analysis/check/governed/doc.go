// Package governed refuses to call a piece safe for a use that standards govern, and says
// which.
//
// What the piece is for stands in the document: piece { purpose = ... }. A cot, a bunk
// bed, a climbing frame and the like are never judged here. A clothing storage unit of
// 27 in and more that weighs 30 lb and more falls under 16 CFR 1261 in the United States
// (read: CPSC business guidance); a piece with drawers as high and heavy whose purpose is
// not said is unknown.
package governed
