// Package plan holds the whole answer: the second of the three nouns.
//
// A [Plan] is plain data, versioned ([Schema]) and stored as JSON. Analyses fill
// it and outputs read it; neither knows the other. It carries the piece that it
// was made from and the ledger in which every figure can be looked up, so that a
// stored plan can be drawn, printed and checked by itself.
//
// Lengths are [piece.Figure] (whole nanometres with a ledger entry). What a
// person is told is a [message.Message]. Ids of workpieces, operations, set-ups
// and steps are readable, unique in the plan, and depend only on what they name.
package plan
