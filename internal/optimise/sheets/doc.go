// Package sheets solves the cutting of sheets and wide boards by guillotine
// cuts: several sizes with prices and limits, kerf, trims, defects, parts that
// may be turned, two or three stages or any number.
//
// In: a checked [problem.Problem] of form Sheets, a meter. Out: diagrams, a
// cost (or value), a proven bound.
//
// Inside, lengths are whole multiples of the common measure and one kerf is
// added to every part and to the usable sheet, in both directions. A pattern is
// one sheet's filling: strips side by side, columns along a strip, parts stacked
// in a column (three stages and a trimming cut). Its axes are x, along the
// strips, and y, across them: the model turns the sheet so that strips are what
// the first cuts make.
//
// What can be proved comes from package ceiling, the beams and the short lists
// are packages of their own; this one lays the problem out for them, fills,
// corrects and rebuilds plans, prices patterns for package cover, and turns what
// is found into diagrams.
package sheets
