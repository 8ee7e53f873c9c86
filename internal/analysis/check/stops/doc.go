// Package stops judges where what slides comes to rest: a stop when it is pushed
// in, an out-stop when it is pulled, and room behind it in the driest season.
//
// The way of every bit of the drawer's wood is followed straight back and straight
// to the front until it meets wood that does not move with it. A drawer that
// meets nothing behind has no stop. One that is stopped by what stands behind the
// whole drawer, the case's back, pushes the back off in time and cannot be
// adjusted; a block that is glued there for it can be planed until the front is flush. A drawer that nothing holds in front, and that has no turn-button or
// other stop among its hardware, falls out; one that is held by wood can never be
// taken out. Behind the drawer, room must be left when the case has shrunk.
//
// All of it is common practice without a source; movement by the Wood Handbook's
// equations. Where the space, the wood of the case or its air is not known, the
// room behind is unknown.
package stops
