// Package holds judges whether what the piece is made for goes in and comes out
// again, and can be taken hold of.
//
// A lot of jars, boxes, sheets or coins needs an inside size that is a sum; the
// space that holds it must have it, with all other contents of that space. Each
// thing must pass the openings that it is put in through, turned as it may be. A
// lid hinged at the back must swing clear of caps and shoulders. What stands
// between dividers must stand out enough to be pinched, rods far enough apart for
// a finger, and a rod in a stopped channel must find its length and play between
// the round ends. In a lined channel a rod must still lie on the bottom.
//
// Every finding says by how much it fails and what would do: fewer things, less
// play, a lower divider, a bigger cutter. Limits for fingers are common practice
// without a source; the rules of the house "finger between" and "least grip" go
// before them. Contents that name no space are unknown. Usual sizes that nobody
// measured are told with their status.
package holds
