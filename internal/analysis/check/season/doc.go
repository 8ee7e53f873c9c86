// Package season judges what the seasons do to fits, to glued joints and to loose
// trays.
//
// A fit must not bind when the wood is wettest, and need not be looser than its
// wood's swing and a little play ask for when it is driest. Solid wood glued
// across its grain, to wood along its grain or to sheet goods, over more than a
// hand's width will split or bow; screwed tight it will split at the screws, so
// they sit in slots that reach to either side as far as the wood moves from its
// middle. Trays and other loose solid parts between the
// walls of what they lie in must have room to grow.
//
// Movement is by the Wood Handbook's equations with the catalogue's coefficients.
// Limits of common practice without a source: 100 mm of glued cross-grain width
// (rule of the house "cross grain"), 1.5 mm of play at the wet end ("play at wet
// end"). A wood that the catalogue does not have, or a shop that does not tell its
// air, makes the answer unknown.
package season
