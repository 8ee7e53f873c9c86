// Package drawing turns a plan and its solids into drawings in paper space:
// views of the whole, dimensioned drawings of each part, cutting diagrams,
// sketches of set-ups.
//
// In: a plan, the solids of its parts, words. Out: [page.Drawing], millimetres
// on paper; nothing is written here. Conventions: thick outlines, thin
// dimension lines at 2 : 1, hidden edges dashed, figures above their line and
// read from below or from the right (ISO 128 and ISO 129-1, from memory); each
// size once; first angle where the shop's region is European, third where it is
// American.
//
// What is exact: the figures that are printed are the plan's own. Positions on
// paper are floats. The package must not know how a plan is made: it links no
// solver and evaluates no document.
//
// Words: a view is a picture along one direction; a sketch is a picture that is
// not to scale; a callout is a letter that ties a cut to its row in the table.
package drawing
