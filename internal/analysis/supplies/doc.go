// Package supplies lists the glues and finishes that the piece is made with, with
// everything that is known of them: times, temperatures, pressures, coverage, and
// how much finish is wanted.
//
// In: the piece's joints and finishes, the shop's own figures, the trade's
// catalogue (package sundries). Out: one entry for each, in the order of the
// document; every figure with its range, source and status, and a line in the
// ledger. A glue or finish that nobody knows has no figures. How much finish is
// wanted is an estimate: the whole surface of the parts' boxes, before what stays
// in the brush.
package supplies
