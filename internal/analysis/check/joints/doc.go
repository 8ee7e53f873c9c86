// Package joints judges whether the screws and nails that hold a shelf, a top or a bottom
// between uprights bear what it carries.
//
// The load is what rests on it with its own weight, or the load that the house reckons
// with ("shelf load"), or else books at 50 lb to the square foot (Architectural Woodwork
// Standards, 2009). Joints at opposite sides take equal parts of it, and the joints of one
// side again. Screws and nails through an upright into the end of a shelf are pushed
// sideways. What they bear is
// estimated by the Wood Handbook's formulae with a safety factor taken out (see strength):
// estimates, with the range that the sources give.
//
// Boards that hang from what is above them are not among those whose load is known.
// Joints that bear on wood, as housings, grooves, rebates and tenons do, and those that
// long grain is glued at, are left out, and so are joints for which no published formula
// was found. Where a figure is missing, as a fastener that the catalogue does not have,
// that is asked once for all.
package joints
