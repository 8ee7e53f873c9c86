// Package operations derives the passes that make a piece: for every workpiece
// and every cut, which machine and which cutter, offered which way, and what
// must be done before.
//
// In: the piece with all its cuts, the part rows, the graph of workpieces, the
// cutting diagrams, and a [Workshop]. Out: [plan.Operation] values and, for each
// cut, the [Job] that tells how it is offered. Lengths are whole nanometres with
// ledger entries; sides and axes are the part's own ([piece.Side]).
//
// Exact: where a cut lies. A choice between ways that all work is made by the
// least number of passes ([Way.Cost]), so that it can be explained.
//
// What the shop's machines can do comes from the shop; the package must not know
// any particular piece, and settings, stops and cards belong to package setups.
//
// Glossary: a way is machine, cutter and the side that lies down; a path is one
// course of the cutter, beside which others may lie; work is long while it has
// not been cut to its finished length; the guide is what the work is held
// against (fence, mitre gauge, sled, hand).
package operations
