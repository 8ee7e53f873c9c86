// Package drawing turns a plan and its solids into drawings in paper space:
// views of the whole, a section, dimensioned drawings of each part with their
// title block, cutting diagrams, sketches of set-ups, forms for readings.
//
// In: a plan, the solids of its parts, words. Out: [page.Drawing], millimetres
// on paper; nothing is written here. Conventions: thick outlines, thin
// dimension lines at 2 : 1, hidden edges dashed, figures above their line and
// read from below or from the right (ISO 128 and ISO 129-1, from memory); each
// size once, places as running dimensions from one reference; first angle where the shop's region is European, third where it is
// American.
//
// What is exact: the figures that are printed are the plan's own. Positions on
// paper are floats. The package must not know how a plan is made: it links no
// solver and evaluates no document.
//
// Words: a view is a picture along one direction; a sketch is a picture that is
// not wholly to scale; a running dimension counts from a ring at the reference; a callout is a letter that ties a cut to its row in the table.
package drawing
