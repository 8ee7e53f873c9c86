// Package sums writes out where a figure comes from, one readable sum a line,
// down to what was written, bought or measured.
//
// In: a ledger and the number of an entry. Out: [Line] values, the figure first,
// below each line the named figures that its sum is made of. What the ledger
// keeps apart for the sake of its arithmetic is drawn together: unnamed results
// stand inside the sum of the figure that they serve, a value that only changes
// its name is passed on, and a size that is a face less the face it was measured
// from is that size. Nothing is computed or rounded: figures are exact to the
// nanometre.
//
// Depth, width and number of lines are bounded ([Options]); what is left out is
// said. The package knows neither the piece nor the documents.
package sums
