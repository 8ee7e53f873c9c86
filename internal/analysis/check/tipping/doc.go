// Package tipping judges whether the piece stays on its feet: empty and loaded, with its
// drawers out one by one and together, right out where no out-stop holds them.
//
// It falls where what holds it down about its front feet comes to nothing: that is told of
// any piece. One that a small pull tips is told as well, if it is high and heavy enough to
// hurt: a level pull of less than 50 N at its top or its highest drawer, about what a child
// pulls (common practice, no source), of a piece from 27 in high and 30 lb heavy on, empty
// or loaded, which is what 16 CFR 1261 (ASTM F2057-23) takes in of clothing storage units.
// A bedside table of 600 mm is below that; furniture for children is judged whatever it
// weighs. Rules of the house change all three: "least pull" in newtons, "tipping height",
// "tipping mass" in kilograms. Furniture that can tip is fixed to the wall; where a standard
// governs it, that is another check.
package tipping
