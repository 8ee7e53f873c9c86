// Package naming puts addresses, marks, groups and sides of parts into the words
// that a maker uses at the bench.
//
// In: a plan and words. Out: text: "Drawer 1, tray 2" for an address, "left side"
// for a row, "C1" where every row of that family is meant, "back edge" for a
// side of a part. The author's own names and labels are shown as they are.
//
// The package holds no prose: what is not the author's comes from the catalogue.
// It knows neither paper nor how a plan is made, and computes no figure.
package naming
