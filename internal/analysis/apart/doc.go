// Package apart finds an order in which the piece comes apart, and so, turned
// round, one in which it goes together.
//
// In: the parts with all their cuts, and their finished solids. Out: removals in
// order ([Taken].Removals), group by group: what is taken, which way it slides and how
// far until it is clear; and the sets that lock each other ([Taken].Locked), each
// as small as it can be made: with any one member gone the rest comes apart.
//
// A group is put together by itself and then moves as one. Along a direction
// every two members either block each other or do not (the directional blocking
// graph of R. Wilson and J.-C. Latombe, Geometric reasoning about mechanical
// assembly, Artificial Intelligence 71, 1994, from memory). Members that block each
// other in a circle stay together; a set of two circles or more splits, and each is
// tried again along the other directions. Taking something away blocks nothing
// else, so the order of splitting does not matter: if there is an order of straight
// slides along the directions looked at, one is found. The directions are right,
// back and up, both ways; where these do not do, the own axes of tilted parts and
// the diagonals across which mitres are drawn apart.
//
// Parts are first looked at as boxes in whole nanometres, exact for square cuts:
// wood that is surely in the way and wood that surely is not is told by them.
// Where curves and slopes leave a doubt, and only where the answer turns on it, the
// solid of one part is swept past the other. Touching is not blocking. Dowels and
// loose tongues, which are no parts, let their joint be drawn only along
// themselves. Glue, time and hands do not enter, nor panels that are sprung or
// tilted into their places. Work is bounded by counts of looks and of sweeps.
//
// Terms: a member is a part, or a group as one; a way is a direction with its
// opposite; a ring is a set of members that block each other in a circle.
package apart
