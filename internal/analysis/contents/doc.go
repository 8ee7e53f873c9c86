// Package contents says how each thing lies in the piece: how deep it sinks, how
// far it stands above the surface, how much land is left beside it, at which end
// its head lies and how far that hangs clear of its trough.
//
// A thing in a lined channel, or one with flats, lies otherwise than a round rod on
// bare wood: what it would do bare, and on a flat, is told too. Lots of equal things
// stand in spaces: what they need, have and spare ([Stow]).
//
// In: the piece with its contents, channels, troughs and series. Out: one line for
// each thing. Exact but for the root in the seat of a rod, which is rounded to the
// nanometre by package share. Nothing is decided here.
package contents
