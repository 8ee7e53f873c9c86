// Package spacing lays out rows: the way from the first centre to each other one.
//
// In: widths, pitches and lands as figures. Out: [Row], centres as figures of the
// same ledger. Exact. It must not know what stands in the row, or where the row is.
package spacing
