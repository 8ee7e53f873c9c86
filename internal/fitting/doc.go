// Package fitting lays bought hardware against the parts that it is fixed to: what
// it takes up, and the recesses and holes that it needs.
//
// In: a [Job]: one hardware block's fitting with its sizes from the catalogue, the
// part that it is on, the side, where along and across, and for hinges, catches,
// slides and buttons the other part. Out: bodies by right, back and up in the
// piece, with the piece closed, and cuts in local coordinates of the parts; or a
// [Fault].
//
// All is exact, in whole nanometres; every figure is a sum of the ledger's figures
// of the parts' extents, the places said and the catalogue's sizes, which carry
// their source. Parts are boxes in the axes of the piece: a tilted part takes no
// fitting here.
//
// The package must not know documents or solids. Whether a body collides with wood
// is judged on the finished solids.
//
// Terms: a fitting's length runs along the runs; across is the third axis. The leaf
// is one half of a hinge, the knuckle the barrel about its pin; a plate is the
// smaller half of a catch; a member is one half of a slide.
package fitting
