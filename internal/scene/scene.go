package scene

import "scantling/internal/geom/vec"

// Colour is an opaque sRGB colour.
type Colour struct{ R, G, B uint8 }

// Material is how a surface looks. Role names what it stands for ("timber",
// "sheet", "hardware", "contents"), so that a look may show it its own way.
type Material struct {
	Name   string
	Role   string
	Colour Colour
	// Opacity is 1 for solid; contents and open fronts may be less.
	Opacity float64
}

// Face is a run of triangles with one address, relative to the part:
// "face.top", "groove[1].floor".
type Face struct {
	Address string
	// First and Count are triangles of the mesh.
	First, Count int
}

// Mesh is the surface of one solid in its own frame.
type Mesh struct {
	// Name is for people who look into a file.
	Name   string
	Points []vec.V3
	// Normals has one direction for each point, or is nil: then facets are flat.
	Normals []vec.V3
	// Triangles index Points.
	Triangles [][3]uint32
	// Faces cover the triangles in order, without gaps; nil if no face is known.
	Faces []Face
	// Edges index Points in pairs: lines to draw.
	Edges [][2]uint32
}

// Object is a mesh in its place.
type Object struct {
	// Address is that of the part, "drawer[2].side.left".
	Address string
	// Mark is what is written on the part ("B2"); Name is its name in words.
	Mark, Name string
	Mesh       int
	Material   int
	// Pose turns points of the mesh into the piece's frame.
	Pose vec.Frame
}

// Scene is all that a view shows.
type Scene struct {
	Title     string
	Materials []Material
	Meshes    []Mesh
	Objects   []Object
}
