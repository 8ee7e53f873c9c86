// Package movement says what the seasons do to every fit: how much the moving
// wood grows to the dampest and shrinks to the driest that the piece will meet,
// what to leave today, and what then remains; above, from side to side, and behind,
// where the walls of a case take of the clearance as they shrink.
//
// In: the piece's fits and spaces, the species of the parts, the moisture content
// now and at both ends. Out: clearances with their figures. Growth across the
// grain follows the Wood Handbook (FPL-GTR-190, 2010, Equations 13-1 and 13-2,
// coefficients of Table 13-5); along the grain wood, and plywood at all, is taken
// not to move. Lengths are rounded once, by package timber.
package movement
