// Package bow judges solid wood that is glued face to face to sheet goods.
//
// The wood moves with the seasons, the sheet hardly does, and the pair bows like two
// metals that are riveted together (Timoshenko, 1925). A straight edge shows a bow of
// 1/32 in to the foot of width (common practice, no source; a house rule "bow to the
// foot" changes it); a pair that stands off further at the dry or the damp end of the
// year is told. So is one that moves in a fit and would take up the room that the fit
// leaves there, if that is less. Wood on the sheet's other face, at least half as thick
// and with its grain the same way, holds against it: what is left then is not judged.
// All are estimates, with the range that the wood has.
package bow
