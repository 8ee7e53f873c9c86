// Package cutter judges whether the shop has the cutters that the cuts need, and
// how the rods lie in their channels.
//
// A channel needs a round-nose cutter of just its radius whose edges reach its
// depth; a groove, housing, trough or recess a straight cutter no wider than it is
// that reaches, or, where it runs through, a saw no thicker than it is wide; a
// hole a drill of its size. A cutter that the document names must be in the shop.
// A rod should lie half its diameter deep: less is a note, less than a quarter a
// warning, for it rolls out; a handle with flats does not roll, and only the
// quarter counts. A rod thicker than its channel rides on the edges.
//
// Limits of depth are the cutters' own, from the shop. That half of a rod lies in
// the wood is common practice without a source. A shop without cutters, a cutter
// whose cutting length nobody stated and a rod that lies nowhere are unknown.
package cutter
