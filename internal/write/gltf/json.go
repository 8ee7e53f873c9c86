package gltf

// The part of glTF 2.0 (ISO/IEC 12113:2022) that is written; names and numbers
// are those of clause 5.

type document struct {
	Asset       asset        `json:"asset"`
	Scene       int          `json:"scene"`
	Scenes      []sceneEntry `json:"scenes"`
	Nodes       []node       `json:"nodes,omitempty"`
	Meshes      []mesh       `json:"meshes,omitempty"`
	Materials   []material   `json:"materials,omitempty"`
	Accessors   []accessor   `json:"accessors,omitempty"`
	BufferViews []bufferView `json:"bufferViews,omitempty"`
	Buffers     []buffer     `json:"buffers,omitempty"`
}

type asset struct {
	Version   string `json:"version"`
	Generator string `json:"generator"`
}

type sceneEntry struct {
	Name  string `json:"name,omitempty"`
	Nodes []int  `json:"nodes,omitempty"`
}

type node struct {
	Name        string      `json:"name,omitempty"`
	Mesh        int         `json:"mesh"`
	Matrix      *[16]number `json:"matrix,omitempty"`
	Translation *[3]number  `json:"translation,omitempty"`
	Extras      nodeExtras  `json:"extras"`
}

type nodeExtras struct {
	Address string `json:"address"`
	Mark    string `json:"mark,omitempty"`
	Name    string `json:"name,omitempty"`
}

type mesh struct {
	Name       string      `json:"name,omitempty"`
	Primitives []primitive `json:"primitives"`
}

type primitive struct {
	Attributes attributes  `json:"attributes"`
	Indices    int         `json:"indices"`
	Material   int         `json:"material"`
	Mode       int         `json:"mode"`
	Extras     *faceExtras `json:"extras,omitempty"`
}

type attributes struct {
	Position int  `json:"POSITION"`
	Normal   *int `json:"NORMAL,omitempty"`
}

type faceExtras struct {
	Faces [][3]any `json:"faces"`
}

type material struct {
	Name      string         `json:"name,omitempty"`
	PBR       pbr            `json:"pbrMetallicRoughness"`
	AlphaMode string         `json:"alphaMode,omitempty"`
	Extras    materialExtras `json:"extras"`
}

type materialExtras struct {
	Role string `json:"role,omitempty"`
}

type pbr struct {
	Base      [4]number `json:"baseColorFactor"`
	Metallic  number    `json:"metallicFactor"`
	Roughness number    `json:"roughnessFactor"`
}

type accessor struct {
	View  int         `json:"bufferView"`
	Type  int         `json:"componentType"`
	Count int         `json:"count"`
	Kind  string      `json:"type"`
	Min   *[3]float32 `json:"min,omitempty"`
	Max   *[3]float32 `json:"max,omitempty"`
}

type bufferView struct {
	Buffer int `json:"buffer"`
	Offset int `json:"byteOffset"`
	Length int `json:"byteLength"`
	Target int `json:"target"`
}

type buffer struct {
	Length int `json:"byteLength"`
}

// Numbers of the format.
const (
	modeLines     = 1
	modeTriangles = 4

	typeUint16  = 5123
	typeUint32  = 5125
	typeFloat32 = 5126

	targetPoints  = 34962
	targetIndices = 34963
)
