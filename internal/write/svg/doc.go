// Package svg writes drawings and pages as SVG 1.1.
//
// In: a [page.Drawing], cropped to its area, or a [page.Page]. Out: the text of
// one svg element. The same input gives the same bytes.
//
// Units: the user unit is a millimetre on paper, rounded to a micrometre. The
// frame is that of package page. Arcs stay arcs; text stays text.
//
// Every element carries the address of what it shows as data-address. Colours
// and widths are classes: with [Options.Looks] the colours are the variables of
// the page's style sheet, so that day, evening and sun restyle the drawing;
// without, they are the shades for print and the file stands by itself.
//
// The package knows pages and faces and nothing else.
package svg
