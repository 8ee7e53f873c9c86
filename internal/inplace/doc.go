// Package inplace gives parts the sizes that were read where they go.
//
// In: a piece as it is drawn, with the cuts of its joints in local coordinates, and
// what was read between the parts that others are let into ([piece.InPlace]). Out: the
// piece and the cuts with those parts as they are made. Lengths are exact.
//
// A part keeps its end 1 (or edge 1) where it is drawn, and its end 2 lies as far from
// it as was read. What belongs to end 2 goes with it: what is cut there, and what a
// joint with a part at that end cuts. Everything else keeps its distance from end 1. No
// other part changes: those that it goes into are made by the time they are read
// between, so that their housings stay as they are planned, and on paper the part ends
// short of a housing's bottom, or in it, by what was read more or less.
//
// The package knows neither the record nor what is planned from the piece.
package inplace
