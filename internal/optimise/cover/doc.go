// Package cover solves the problem behind all cutting for the least cost: choose
// patterns, each the filling of one piece of stock, that together hold every
// piece that is wanted.
//
// In: a [Problem] (how many of each kind are wanted, stock with costs and
// limits) and an [Oracle] that knows what fits on a piece of stock. Out: the
// cheapest plan found and a proven bound.
//
// The method is column generation (Gilmore and Gomory, Operations Research 9,
// 1961) with smoothed prices, branching on how many pieces of each stock are
// used, diving (rounding the relaxation step by step, with new patterns for what
// is left at every step), and, where the bound falls just short, cuts over a few
// kinds at a time and branching on whether two pieces share a board. Prices are rounded to whole numbers, and what they
// prove is worked out exactly from the oracle's proven worths: floats steer,
// whole numbers prove.
//
// It knows no lengths and no saw.
package cover
