// Package assembly judges whether the piece can be put together.
//
// In: the parts with all their cuts. Out: a failure for every set of parts, or
// groups, that lock each other: no one of them, nor several together, can be slid
// away from the rest, straight along an axis of the piece; it names what blocks
// what, and where. Unknown where a part is no board: its box is not its shape. A
// pass if everything comes apart.
//
// A group is put together by itself and then moves as one: its own parts and
// groups must come apart, and it must come out of what it stands in. Taking apart
// along an axis splits a set into pieces that block each other in a circle and
// are locked on that axis; each of them is tried again along the other axes,
// until single parts are left. As taking something away never blocks anything
// else, the order of splitting does not matter: if there is an order in which the
// set comes apart by straight slides along the three axes, one is found.
//
// Parts are boxes less the boxes of their cuts, in whole nanometres; curved cuts
// count as the boxes around them. Touching is not blocking. Glue, time and hands
// do not enter, nor slides that are not straight along an axis (a panel sprung
// or tilted into its place).
package assembly
