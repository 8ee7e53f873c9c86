// Package plane draws the planes of tapers, bevels, mitres and compound angles.
//
// In: a part, the side that goes, one or two slopes in exact figures. Out: a
// piece.Slice in the part's own axes ([Slice]); whether one takes anything
// ([Crosses], in floating point millimetres). It must not know documents or angles.
package plane
