// Package fronts judges drawer fronts, doors and lids beside one another.
//
// Two that face each other across a gap, or one and a fixed part beside it, grow
// towards each other until the dampest time of the year: a drawer's front from where
// its drawer stands, a door or lid from its hinges. The gap of today must take that and
// leave half a millimetre (common practice, no source; a house rule "between fronts"
// changes it). Fronts of sheet goods do not grow and want that half millimetre alone.
// What lies beside the way of a front that is pulled out counts as beside it, and
// nothing may lie in its way: another drawer's front over its opening keeps it shut.
//
// A front in an opening of its own has a fit, which package season judges against the
// walls of the opening; the two are not told twice. Movement is by the Wood Handbook's
// equations; a timber that the catalogue does not have makes the answer unknown.
package fronts
