// Package shortlist fills one sheet with pieces of the greatest value, each kind
// no more often than it is wanted.
//
// In: a [Question]: a sheet and pieces in whole units, one kerf added to all, so
// that sizes simply add up; how many of each kind, what they are worth, what
// their limits cost; a meter. Out: the best filling found, and whether nothing
// was left out, so that no better one exists.
//
// For every rectangle whose sides are points of the axes, a short list is kept
// of the fillings that are worth most; longer rectangles join two shorter ones.
// It is the recursion that gives the ceiling of any number of copies ([ceiling]),
// with several fillings for each rectangle that know what they hold, as in the
// methods that build patterns from the bottom up (Wang, "Two algorithms for
// constrained two-dimensional cutting stock problems", Operations Research 31,
// 1983; Viswanathan and Bagchi, "Best-first search methods for constrained
// two-dimensional cutting stock problems", Operations Research 41, 1993).
// Fillings are compared by their value less the prices of the limits, and those
// are dropped that the best of what may lie beside them does not raise above
// what is known. The lists grow from run to run; when none was full, all was
// tried.
package shortlist
