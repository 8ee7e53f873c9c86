// Package assembled carries a cut that is made on a group after glue-up to the parts
// that it meets.
//
// In: the parts of a group; a piece.Cut worked out on [Block], the block of wood that
// they stand in. Out: the cut that each part gets ([Onto]), in its own axes. Figures
// are exact; only whether a plane or an outline meets a part is judged in floating
// point. It must not know documents. Tilted parts are left out by the caller.
package assembled
