// Package estimate makes estimates through the ledger: a registered pure function
// called on entries for the value, and again on the ends of their ranges for the low
// and the high end.
//
// In: a ledger that knows the function, arguments with their ranges. Out: a
// [plan.Estimate] whose entry can be done again. Values that a function returns are
// rounded here, so that every machine stores the same. The package knows no formula.
package estimate
