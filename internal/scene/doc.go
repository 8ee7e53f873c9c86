// Package scene is the noun that 3-D views share: triangles with materials and
// the addresses of what they show.
//
// In: meshes, one for each different solid, with the address of every face;
// objects that place a mesh in space. Equal parts are one mesh and several
// objects. Out: a [Scene], plain data for the writers and for picking.
//
// Units: millimetres as float64. Frame: the piece's own, right-handed, Z up;
// a writer turns it into its format's frame. Poses are rigid and keep the
// handedness.
//
// What is exact: nothing is. Triangles are wound anticlockwise as seen from
// outside.
//
// Words: a facet is one triangle; a face is a run of facets that one cut or one
// side of the board made; an edge is a line where faces meet, drawn as a line.
//
// The package knows no wood and no file format.
package scene
