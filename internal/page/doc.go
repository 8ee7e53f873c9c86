// Package page is the noun that drawings, booklet and writers share: a display
// list in paper space. It says what stands on the paper and where; it does not
// say how a file is written.
//
// In: strokes, fills, hatches, texts and links, each with the address of what
// it shows and the node of the structure tree it belongs to. Out: a [Drawing]
// (a list of items with no paper yet), a [Page] (items on a sheet of paper) or
// a [Document] (pages, structure tree, outline, anchors).
//
// Units: millimetres on paper as float64; angles in degrees. Frame: origin at
// the top left corner, X to the right, Y down, angles clockwise as seen (from X
// towards Y). Type sizes are the em in millimetres ([Pt] turns points into it).
//
// What is exact: nothing is; coordinates are rounded by the writers, to a
// micrometre. Arcs stay arcs.
//
// The laws of a page are functions, for tests to call: [Outside] lists what
// leaves the margins, [Overlaps] texts and blocks that cover each other,
// [Struck] texts that a line runs through.
//
// Words: a stroke is a drawn line; a hatch is an area filled with parallel
// lines; a block is a declared area that nothing else may enter; a node is an
// element of the structure that a reader hears (heading, paragraph, table,
// figure); an artifact is decoration that no reader hears.
//
// The package knows no wood, no language of documents and no file format.
package page
