// Package pins judges whether a rebate that is glued to end grain is held by
// something else as well.
//
// Glue holds badly on end grain: a board whose end goes into a rebate of solid wood
// wants pins, screws or dowels, through the joint itself or through another joint
// of the same two parts. Sheet goods have no end grain to speak of: in plywood half of
// the layers run along whichever edge is glued, and in boards of fibres or chips no edge is
// like end grain. Pins or screws then hold the joint while the glue sets, which is a choice.
//
// Common practice without a source. A joint that could not be made is unknown.
package pins
