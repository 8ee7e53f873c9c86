// Package contents says how each thing lies in the piece: how deep it sinks, how
// far it stands above the surface, how much land is left beside it.
//
// In: the piece with its contents, channels and series. Out: one line for each
// thing. Exact but for the root in the seat of a rod, which is rounded to the
// nanometre by package share. Nothing is decided here.
package contents
