// Package marks finds equal parts and gives every part its mark.
//
// In: the parts of a piece with all their cuts. Out: the rows of the part list.
// Two parts of one declaration are equal if they are of one material and have the
// same shape, turned round if need be; left and right are told apart only where
// the mirrored shape is another. Shapes are compared by their exact sizes and
// cuts, without geometry.
//
// A mark is a letter for the group, a number for the part within it, both in the
// order of the document, then, only where the members of a family are not all
// equal, their own numbers ("C1.2") and L or R. Nothing else enters, so a mark
// stays when something is added behind. Parts outside any group have no letter.
//
// Sizes of a row are those of its first member, with their ledger entries. The
// stage of a row is left to the analysis of stages.
package marks
