// Package rehearsal carries the printed plan out on paper and judges whether the
// piece comes out of it.
//
// In: a plan (diagrams, workpieces, operations, set-up cards, steps) as it would
// be printed, the cuts of the design, and the limits of the machines. Out:
// findings: one pass, or what failed and by how much.
//
// It knows no planner: it reads the figures that a person would read and works
// out from them alone what each machine does. Sizes follow from board to part;
// where a cut lands in a part follows from the side against the fence, the
// setting, the cutter's size and the height; stops bound it along the feed. The
// result is compared with the design to a micrometre: every cut made, once, in
// its place, by a machine that may be fed with the work at that stage, with wood
// left to hold it by, no pass trapped, in an order in which all is there that is
// needed.
//
// Frame: a part's own axes from its local origin; a workpiece that is still long
// begins with its squared end 1. Lengths are whole nanometres.
package rehearsal
