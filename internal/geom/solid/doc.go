// Package solid builds closed bodies from prisms and turned bodies and answers
// questions about their shape.
//
// In: primitives in millimetres (float64) in right-handed frames, each face
// with the caller's [Tag]. [Build] unites bodies and takes cutters away. Out: a
// [Solid]: status, volume, area, centroid, inertia, faces that remember their
// tags, a closed mesh, the stretches of a line inside, sections, and for placed
// solids interference, contact and distance.
//
// The method works plane by plane: faces that lie flush share one plane of a
// table, and whether faces are coplanar is decided there and nowhere else. In
// each plane the sections of all bodies just below and just above it are laid
// into one planar graph whose edges carry which bodies they enter or leave; a
// sweep gives the state of every region, and a face is where wood lies on one
// side only. Round shapes are faceted for this; volume and area are corrected
// to the true surface, and [Solid.Intervals] never uses facets.
//
// A solid whose faces do not close is [Unverified] and says why; so is one that
// asks for what the kernel cannot do. Nothing is exact beyond float64, but equal
// input gives equal bits on every platform: products in sums are fenced and no
// map is walked. The package knows no wood.
package solid
