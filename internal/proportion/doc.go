// Package proportion holds the trade's rules for the sizes of joints: how deep a
// housing, how wide a rebate, which fingers, dowels and pins.
//
// In: thicknesses and widths of the parts that meet, the cutters' and dowels'
// sizes in the shop, the step to round to. Out: [figure.Of] a length with the
// range that makers use and the key of the rule, so that it can be cited and
// overridden; or a small value made of such lengths.
//
// Exact: lengths are whole nanometres; a proportion is rounded once, to the step.
// None of these rules has a published source that was seen: all are common
// practice and say so, unless a function names another origin.
//
// The package must not know parts, joints as drawn, species or documents: it
// answers before any size is known.
//
// Glossary: the side is the part that a joint is cut into; a tongue is what a
// rebate leaves; a finger is one of the interlocking pieces of a box joint; the
// step is the least change that a shop sets (half a millimetre, 1/32 in).
package proportion
