// Package gluejoint judges whether the joints between the strips of a glued-up
// panel stay out of its cuts.
//
// A joint that runs along the bottom of a channel or groove is weak, shows, and
// opens where the wood is thinnest; it belongs on a land. Every joint of a panel is
// held against the cuts of its part that run along it: it must lie outside them.
// Cuts across the panel cross every joint and do not count; of holes and recesses
// those count that a joint runs through.
//
// Common practice without a source. A panel of several strips whose joints are not
// known is unknown.
package gluejoint
