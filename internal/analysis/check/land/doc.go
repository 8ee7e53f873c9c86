// Package land judges whether enough wood is left around channels and grooves:
// land between two mouths, margin beyond the outer one, floor under them.
//
// Thin land breaks out at the ends and along the mouth while it is cut; a thin
// floor lets the part cup and shows what lies in it. A row is judged by its
// thinnest land, so that it is one finding; so are its margins and its floor.
// Grooves, housings and channels that stand alone are judged against their
// neighbours and against the edge.
//
// Limits, common practice without a source: land and margin a quarter of the
// depth and at least 1.5 mm; floor as much as the depth and at least 3 mm. The
// rules of the house "least land" and "least floor" go before them. A row whose
// sum is not known is unknown.
package land
