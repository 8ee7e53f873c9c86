// Package turns says in which turns a piece is put together: what is measured, which
// group is joined, which part is added to one that stands already.
//
// In: the piece with its groups, joints and measures. Out: [Event] values in an order
// in which each is ready ([Order]). No lengths are worked out. The package must not
// know machines, operations or steps.
package turns
