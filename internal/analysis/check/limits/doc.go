// Package limits judges whether every blank, strip, panel, sheet and test piece
// stays within this shop's machines at every stage: jointed and sawn as thick as
// the board is, planed to its thickness, routed at the size it then has.
//
// A part is judged on the workpiece that is in hand when the machine runs: a short
// part on the longer blank that it is cut from. Where the machine that is meant
// refuses and another one of the shop, or work by hand, does it, that is a note
// that says which. Where none does it is an error, or a warning where sources
// differ on the limit. A panel wider than the thicknesser whose halves go through
// is a note.
//
// Limits are the machines' own, from the shop document, or the usual ones of
// their kind with their source. A task for which the shop names no machine is
// unknown, and so is a glued-up panel at a thicknesser of which nobody has said how
// wide it planes: no source gives that for the kind.
package limits
