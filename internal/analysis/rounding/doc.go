// Package rounding finds what each size of a part does at its ends, and so to which
// side it is rounded where it is shown in fractions of an inch.
//
// In: a piece and the rows of its part list. Out: for every row and each of length,
// width and thickness a [plan.Going]: the size goes into something (a group into the
// opening of its fit, a bottom into its grooves, a divider into housings at both ends,
// the thickness of a board into the housing that is cut for it), or something must go
// between (a part that holds an opening apart), or it must match other parts. Which of
// these follows from fits, joints and spaces and is typed nowhere; a size that does
// both goes in, for what is too large cannot be put together at all.
//
// Nothing is rounded here and no figure is made. Sizes of one row are of equal parts;
// the row goes in where one of its members does.
package rounding
