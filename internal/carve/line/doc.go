// Package line makes outlines with arcs of points: corners, and points that the arc
// between two corners goes through.
//
// In: [Dot] values, exact figures in a part's own axes. Out: piece.OutlinePoint
// values, whose corners are the figures themselves and whose bulges are floating
// point; and the same as a polygon.Loop in millimetres, the one crossing out of exact
// figures. It must not know documents, sides or cuts.
package line
