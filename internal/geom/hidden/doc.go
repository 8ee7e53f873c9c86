// Package hidden draws placed solids as seen along a direction: lines and arcs
// in millimetres on the paper plane, visible and hidden.
//
// In: solids in poses, a direction of sight and which way is up. Out: strokes,
// each with the solid it belongs to and the tags of the two faces that meet in
// it. An edge is the pair of true surfaces that meet there, so the facets of a
// round hole come out as one arc; pieces in line are merged and of lines that
// lie on one another the visible one is kept.
//
// The projection is parallel. Visibility is worked out per edge by exact
// intervals against the front faces, with no pixels: what lies less than 0.01 mm
// in front does not hide. Round shapes hide as faceted, so an outline is off by
// up to the gap of a facet. The package knows no wood.
package hidden
