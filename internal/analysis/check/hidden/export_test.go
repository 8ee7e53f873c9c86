package hidden

// Widest is the search that its tests hold to openings drawn by hand.
var Widest = widest
