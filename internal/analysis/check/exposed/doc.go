// Package exposed judges whether another cut opens the hole of a dowel or the mortise of
// a loose tenon, or leaves it too little cover.
//
// In: the cuts of all joints and of the document. Every other cut of the same part is
// held against every hole of a dowel joint or loose tenons; where they cross, the dowel
// shows or is cut through, and where less than 2 mm of wood is left between them it
// breaks out or shows as a shadow. What meets inside a joint does not count: holes and
// mortises from two sides of a post may run into each other, and screws may go where a
// dowel is. Nor do slopes and eased edges.
//
// Common practice without a source; the rule of the house "over a dowel" changes it.
// Round cuts count as the boxes around them. Where holes and cuts lie is always known.
package exposed
