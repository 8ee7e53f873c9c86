// Package lp solves linear programs that grow by columns: minimise the cost of
// non-negative columns that together cover every row.
//
// In: rows "sum of entries >= demand" (a limit is a row with negative entries
// and a negative demand) and columns with few entries. Out: amounts of the
// columns, prices (duals) of the rows. The method is the revised simplex method
// with an explicit inverse (Chvátal, "Linear Programming", Freeman 1983,
// chapters 7 and 8); demands are perturbed a little against cycling, which
// leaves the prices of an optimal basis as they are.
//
// Everything is floating point with fenced products, the same on every machine,
// and proves nothing: callers round the prices and check them in whole numbers.
package lp
