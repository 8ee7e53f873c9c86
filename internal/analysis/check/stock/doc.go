// Package stock judges whether all that the plan needs beyond the rack can be had
// and has a price.
//
// What the rack holds is used first. Of what must be bought the shop's list should
// say what it costs; without a price the cost of the piece is unknown, and so is
// whether the merchant has it at all. A material that nothing in the rack or the
// list answers to is an error.
//
// In: the buying list. Figures are counts, not lengths, so findings carry them in
// their text.
package stock
