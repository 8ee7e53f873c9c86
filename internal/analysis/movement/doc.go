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
//
// [Follow] says more, as estimates with their ranges: the air of the seasons, what
// every part does across its grain, every pair that is joined across the grain with
// its restraint and what comes of it, the cup of boards that are channelled on one
// face while they wait (diffusion), and the bow of solid wood glued to sheet goods.
// Its own limit, common practice without a source: glue across 100 mm of moving wood
// is put up with (house rule "cross grain"). What is missing is said, never guessed:
// the cup of a board needs a reading of the wood's core (`moisture` of the board in the
// shop, or house rule "core moisture").
package movement
