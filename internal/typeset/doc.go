// Package typeset sets blocks of text, tables and drawings on pages.
//
// In: [Settings] (paper, margins, type size, columns, running title) and a list
// of blocks in reading order: [Heading], [Paragraph], [List], [Table],
// [Figure], [Box], [Beside], [Together], [Contents], [Space], [NewPage]. Out: a
// [page.Document] with its structure tree, outline and anchors, and notes on
// what had to give way ([Note]).
//
// Units: millimetres on paper; type sizes are the em in millimetres. Frame:
// that of package page.
//
// How it works: every block becomes slabs, the least pieces that no page break
// cuts (a line, a table row, a figure), each knowing whether it must stay with
// the next. Slabs are then stacked into columns. Lines are broken greedily and
// set ragged right. The result depends on the input alone and takes time in
// proportion to it.
//
// What is promised: nothing leaves the margins; table rows are whole unless one
// is taller than a column; the header row stands again on each page; a heading
// is never the last thing on a page; at least two lines of a paragraph stay
// together. A drawing larger than its column is made smaller and noted: draw
// for [Settings.Column] instead.
//
// The package holds no words of any language: what it prints was handed to it.
// It knows no wood and no file format.
package typeset
