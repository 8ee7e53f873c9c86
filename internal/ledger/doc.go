// Package ledger remembers where each figure comes from.
//
// Every figure of a plan is a [Figure]: a length and the [ID] of its [Entry].
// An entry holds the exact value, the operation and arguments that it was made
// with, where it was written, and its origin. The law, which a test holds for
// every figure of a plan, is that re-doing an entry's arithmetic gives its
// value ([Ledger.Verify]).
//
// In: lengths and values from documents, shop, record and reference tables.
// Out: figures. Exact: everything; values are rationals and are rounded once,
// by an entry of their own ([OpRound] or when a length is cut to nanometres).
// Two halves of an odd number of nanometres therefore add up exactly as entries
// but not as figures: what must close to the nanometre is shared out by
// [Ledger.ShareOf].
// The package must not know what a figure is used for.
package ledger
