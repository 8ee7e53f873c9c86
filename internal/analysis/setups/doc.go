// Package setups decides how each machine is adjusted: one card for machine,
// cutter and height, with one placement for each setting of the fence.
//
// In: the operations with the way that each cut is offered (package operations),
// the part rows and the shop. Out: [plan.Setup] values in working order and the
// operations with the card that they belong to. Lengths are whole nanometres
// with ledger entries; sides are the part's own.
//
// Exact: every setting; sums close to the nanometre. Decided: how a row of equal
// cuts is measured (from one edge, from both, by spacers), by the number of
// settings among those whose error, with the accuracy that the shop states, is
// small enough ([Methods]). A trapped cut is never issued: [trapped] is asked
// before every pass.
//
// The package must not know any particular piece, nor how steps are told.
//
// Glossary: a card is a [plan.Setup]; a placement is one way of offering work at
// one setting of the fence; the near edge of the cutter is the one towards the
// fence; work is turned when it goes through a second time end for end.
package setups
