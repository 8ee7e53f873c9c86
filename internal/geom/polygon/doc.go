// Package polygon holds flat outlines made of straight and round segments.
//
// In: loops of vertices in millimetres (float64), each with the bulge of the
// segment that leaves it. Out: area and centroid, which are exact for arcs (no
// facets enter them), orientation, validity, where a line crosses, and the same
// outline flattened into chords for the solid kernel.
//
// The plane has x to the right and y up; anticlockwise is positive. Facets of
// an arc break at whole multiples of half a turn over the facet count, measured
// from the x axis, so that two outlines of the same radius get the same chords.
// Nothing here is exact beyond float64, and the package knows no wood.
//
// Terms: a segment is one side of a loop; its bulge is the tangent of a quarter
// of its sweep (0 straight, 1 a half circle anticlockwise, negative clockwise);
// a facet is one chord of a flattened segment; the gap is the distance from the
// middle of a chord to its arc.
package polygon
