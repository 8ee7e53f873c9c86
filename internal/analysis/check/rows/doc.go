// Package rows judges rows of equal spaces that do not close.
//
// Dividers, shelves or slats that repeat with one space between each two, from wall to
// wall, are meant to leave that space before the first and behind the last as well. Where
// sizes are stated or rounded one by one, or the work came out otherwise than planned,
// they do not add up to the room: what is spare or short falls on one end, where it is
// seen. The sum is told with its figures.
//
// A last space that differs by up to a tenth of a millimetre closes (common practice, no
// source; rule of the house "row closes"), one that differs by more than a tenth of itself
// is meant otherwise. Walls are those of a measured space, where the row stands in one,
// else the nearest parts. Exact.
package rows
