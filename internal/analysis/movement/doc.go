// Package movement says what the seasons do to every fit: how much the moving
// wood grows to the dampest and shrinks to the driest that the piece will meet,
// what to leave today, and what then remains.
//
// In: the piece's fits, the species of the moving parts, the moisture content
// now and at both ends. Out: clearances with their figures. Growth across the
// grain follows the Wood Handbook (FPL-GTR-190, Eq. 13-1); along the grain wood
// is taken not to move. Lengths are rounded once, by package timber.
package movement
