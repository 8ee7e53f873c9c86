package page

// NodeID is the number of a node in a [Tree].
type NodeID int

// The two nodes that every tree has.
const (
	// Artifact is the node of what no reader hears: rules, frames, headers, footers.
	Artifact NodeID = 0
	// Root is the document itself.
	Root NodeID = 1
)

// Role is what a node is.
type Role uint8

// The roles; the names in brackets are those of ISO 32000-1:2008 clause 14.8.4.
const (
	RoleArtifact   Role = iota
	RoleDocument        // [Document]
	RoleSection         // [Sect]
	RoleH1              // [H1]
	RoleH2              // [H2]
	RoleH3              // [H3]
	RoleParagraph       // [P]
	RoleList            // [L]
	RoleListItem        // [LI]
	RoleLabel           // [Lbl] the number or bullet of a list item
	RoleListBody        // [LBody]
	RoleTable           // [Table]
	RoleRow             // [TR]
	RoleHeaderCell      // [TH]
	RoleCell            // [TD]
	RoleFigure          // [Figure] a drawing; needs Alt
	RoleCaption         // [Caption]
	RoleLink            // [Link]
)

// Node is one element of the structure that a reader hears.
type Node struct {
	Role   Role
	Parent NodeID
	// Alt says in words what a figure shows.
	Alt string
	// OfRow makes a header cell the header of its row, else of its column.
	OfRow bool
	// Columns is how many columns a cell spans; 0 and 1 are one.
	Columns int
}

// Tree is the structure of a document in reading order. Its first two nodes are
// [Artifact] and [Root]; a parent comes before its children.
type Tree []Node

// NewTree returns a tree with nothing but its first two nodes.
func NewTree() Tree { return Tree{{Role: RoleArtifact}, {Role: RoleDocument}} }

// Add appends a node and returns its number.
func (t *Tree) Add(n Node) NodeID {
	*t = append(*t, n)
	return NodeID(len(*t) - 1)
}

// Valid reports whether the number names a node of the tree.
func (t Tree) Valid(id NodeID) bool { return id >= 0 && int(id) < len(t) }
