// Package reach finds the number in the document by which a figure can be changed: the
// remedy of a check whose figure is not written as such but added up from others.
//
// In: the ledger, a figure, the figure wanted. Out: an edit that puts another number in
// the place of one that is written, in the document's own unit. Only sums, differences,
// equal names and products with fixed numbers are followed, exactly; of several numbers
// the greatest that counts once is changed, which is a size rather than an allowance.
// What else rests on that number changes with it: the plan says what comes of it.
package reach
