// Package verdict collects what a check says.
//
// In: findings as a check makes them, with the parts that they are about. Out: a
// list in which every finding names its check and the marks on the wood, in which
// the same fault of the same line of the document is told once, and which holds
// one pass where nothing is wrong ([Findings.Done]), which says so if there was nothing
// to judge ([Findings.Judged]).
//
// A limit is a figure of the trade unless the house has a rule of its name; it
// becomes an entry of the ledger with its origin ([Findings.Limit]). A remedy
// rewrites the one place in the document that a figure was written at
// ([Findings.Rewrite]); where there is no such place there is no edit.
//
// Exact: everything. The package judges nothing.
package verdict
