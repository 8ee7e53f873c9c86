// Package stow works out a contents block of a document that holds equal things
// in columns and rows: jars, bottles, boxes, sheets, coins. How many cells, how
// large, and what inside size they need, each size as a sum that can be shown.
//
// In: the block, read where it stands ([formula.Reader]). Out: a [Lot] with its
// figures, every one a line of the ledger, and the values that formulas may take
// of it ([Lot.Values]); what is wrong goes to the maker's Report.
//
// Frame: columns lie side by side from left to right, rows one behind the other
// from the front, stacks one on the other; "wide" is across the columns, "deep"
// across the rows.
//
// Sizes of usual things (data/usual.csv) carry a source and a status; nearly all
// are usual figures from memory, so that the thing in hand should be measured.
//
// Rods lie in channels and are not a lot; package evaluate reads them. The
// package must not know parts, spaces or channels.
//
// Exact: everything is whole nanometres. Bounded: cells by share.MaxThings, counts
// by share.MaxCount.
package stow
