// Package analysis is the framework of what is found out about a piece.
//
// An analysis is a value ([Declare]): a name, a text that says what it answers,
// the analyses that it requires, and a pure function. There are three kinds:
// those that derive (one answer), those that decide (an optimiser picks) and
// those that judge ([Check]: findings of pass, fail, error or unknown). A list of
// analyses is checked once ([Validate]: names, texts, needs, no circle) and run
// in the order of their needs ([Run]). Results are read through the analysis
// itself, with its type: adding an analysis is adding a package and a line of the
// list.
//
// In: a [Context] with the piece, the cuts of its joints, the shop, the ledger.
// Solids are worked out only when an analysis that says so asks for them. Out:
// results in the context, diagnostics, and a [Report] of what ran. The framework
// knows no analysis.
package analysis
