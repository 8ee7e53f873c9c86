package gltf

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"scantling/internal/geom/vec"
	"scantling/internal/scene"
)

// edgeColour is that of the lines.
var edgeColour = scene.Colour{R: 0x16, G: 0x19, B: 0x1C}

// Write writes the scene. It fails if the scene has faults ([scene.Scene.Faults])
// or is larger than the format's 4 GiB, or if w does.
func Write(w io.Writer, s scene.Scene) error {
	if faults := s.Faults(); len(faults) > 0 {
		return fmt.Errorf("gltf: the scene cannot be written: %s", strings.Join(faults, "; "))
	}
	b := builder{scene: s, meshes: map[[2]int]int{}, parts: make([]*part, len(s.Meshes))}
	b.build()
	text, err := json.Marshal(b.doc)
	if err != nil {
		return fmt.Errorf("gltf: %w", err)
	}
	for len(text)%4 != 0 {
		text = append(text, ' ')
	}
	total := 12 + 8 + len(text)
	if len(b.data) > 0 {
		total += 8 + len(b.data)
	}
	if uint64(total) > math.MaxUint32 {
		return fmt.Errorf("gltf: the file would have %d bytes; the format holds %d", total, uint32(math.MaxUint32))
	}
	le := binary.LittleEndian
	out := append([]byte("glTF"), le.AppendUint32(le.AppendUint32(nil, 2), uint32(total))...)
	out = append(le.AppendUint32(out, uint32(len(text))), "JSON"...)
	out = append(out, text...)
	if len(b.data) > 0 {
		out = append(le.AppendUint32(out, uint32(len(b.data))), "BIN\x00"...)
		out = append(out, b.data...)
	}
	_, err = w.Write(out)
	return err
}

// builder gathers document and binary data.
type builder struct {
	scene  scene.Scene
	doc    document
	data   []byte
	meshes map[[2]int]int // by mesh and material
	parts  []*part        // data of each mesh, once it is written
	edge   int            // material of lines
}

// part holds the accessors of one mesh.
type part struct {
	points, triangles, edges int
	normals                  *int
}

func (b *builder) build() {
	b.doc.Asset = asset{Version: "2.0", Generator: "Scantling"}
	b.doc.Scenes = []sceneEntry{{Name: b.scene.Title}}
	for _, m := range b.scene.Materials {
		b.doc.Materials = append(b.doc.Materials, materialOf(m))
	}
	b.edge = -1
	for _, o := range b.scene.Objects {
		m := b.scene.Meshes[o.Mesh]
		if len(m.Points) == 0 || len(m.Triangles)+len(m.Edges) == 0 {
			continue // the format has no empty meshes
		}
		n := node{Name: nodeName(o), Mesh: b.mesh(o.Mesh, o.Material), Extras: nodeExtras{o.Address, o.Mark, o.Name}}
		n.place(o.Pose)
		b.doc.Scenes[0].Nodes = append(b.doc.Scenes[0].Nodes, len(b.doc.Nodes))
		b.doc.Nodes = append(b.doc.Nodes, n)
	}
	if len(b.data) > 0 {
		b.doc.Buffers = []buffer{{len(b.data)}}
	}
}

// nodeName is what people see in a viewer.
func nodeName(o scene.Object) string {
	return strings.TrimSpace(o.Mark + " " + o.Name)
}

// turned turns a direction from Z up to Y up.
func turned(v vec.V3) vec.V3 { return vec.V3{X: v.X, Y: v.Z, Z: -v.Y} }

// metres turns a point from millimetres with Z up to metres with Y up.
func metres(v vec.V3) vec.V3 { return turned(v).Mul(0.001) }

// place sets the node's pose, left out as far as it is none.
func (n *node) place(f vec.Frame) {
	t := metres(f.Origin)
	if f.U == vec.World.U && f.V == vec.World.V && f.W == vec.World.W {
		if t != (vec.V3{}) {
			n.Translation = &[3]number{number(t.X), number(t.Y), number(t.Z)}
		}
		return
	}
	// Columns: where the format's X, Y and Z of the mesh go. Its Y is our Z, its
	// Z our −Y.
	x, y, z := turned(f.U), turned(f.W), turned(f.V.Mul(-1))
	n.Matrix = &[16]number{
		number(x.X), number(x.Y), number(x.Z), 0,
		number(y.X), number(y.Y), number(y.Z), 0,
		number(z.X), number(z.Y), number(z.Z), 0,
		number(t.X), number(t.Y), number(t.Z), 1,
	}
}

// mesh returns the entry of a mesh in a material, writing it at first use.
func (b *builder) mesh(index, mat int) int {
	key := [2]int{index, mat}
	if n, ok := b.meshes[key]; ok {
		return n
	}
	m := b.scene.Meshes[index]
	p := b.parts[index]
	if p == nil {
		p = b.part(m)
		b.parts[index] = p
	}
	entry := mesh{Name: m.Name}
	if len(m.Triangles) > 0 {
		entry.Primitives = append(entry.Primitives, primitive{
			Attributes: attributes{Position: p.points, Normal: p.normals}, Indices: p.triangles,
			Material: mat, Mode: modeTriangles, Extras: faces(m),
		})
	}
	if len(m.Edges) > 0 {
		if b.edge < 0 {
			b.edge = len(b.doc.Materials)
			b.doc.Materials = append(b.doc.Materials, materialOf(scene.Material{Name: "edge", Role: "edge", Colour: edgeColour}))
		}
		entry.Primitives = append(entry.Primitives, primitive{
			Attributes: attributes{Position: p.points}, Indices: p.edges, Material: b.edge, Mode: modeLines,
		})
	}
	b.doc.Meshes = append(b.doc.Meshes, entry)
	b.meshes[key] = len(b.doc.Meshes) - 1
	return len(b.doc.Meshes) - 1
}

func faces(m scene.Mesh) *faceExtras {
	if len(m.Faces) == 0 {
		return nil
	}
	e := &faceExtras{}
	for _, f := range m.Faces {
		e.Faces = append(e.Faces, [3]any{f.Address, f.First, f.Count})
	}
	return e
}

// part writes the data of one mesh.
func (b *builder) part(m scene.Mesh) *part {
	p := &part{}
	points := make([]vec.V3, len(m.Points))
	for i, q := range m.Points {
		points[i] = metres(q)
	}
	p.points = b.vectors(points, true)
	if m.Normals != nil {
		normals := make([]vec.V3, len(m.Normals))
		for i, q := range m.Normals {
			normals[i] = turned(q.Unit())
		}
		n := b.vectors(normals, false)
		p.normals = &n
	}
	flat := make([]uint32, 0, 3*len(m.Triangles))
	for _, t := range m.Triangles {
		flat = append(flat, t[:]...)
	}
	if len(flat) > 0 {
		p.triangles = b.indices(flat, len(points))
	}
	flat = flat[:0]
	for _, e := range m.Edges {
		flat = append(flat, e[:]...)
	}
	if len(flat) > 0 {
		p.edges = b.indices(flat, len(points))
	}
	return p
}

// vectors writes triples of float32, with their bounds if the format asks for them.
func (b *builder) vectors(v []vec.V3, bounds bool) int {
	a := accessor{Type: typeFloat32, Count: len(v), Kind: "VEC3"}
	low, high := [3]float32{}, [3]float32{}
	start := len(b.data)
	for i, q := range v {
		for axis := range 3 {
			f := float32(q.At(axis))
			if f == 0 {
				f = 0 // no minus sign
			}
			if i == 0 {
				low[axis], high[axis] = f, f
			}
			low[axis], high[axis] = min(low[axis], f), max(high[axis], f)
			b.data = binary.LittleEndian.AppendUint32(b.data, math.Float32bits(f))
		}
	}
	if bounds {
		a.Min, a.Max = &low, &high
	}
	return b.accessor(a, start, targetPoints)
}

// indices writes numbers of points, in two bytes each if that is enough.
func (b *builder) indices(v []uint32, points int) int {
	a := accessor{Type: typeUint32, Count: len(v), Kind: "SCALAR"}
	start := len(b.data)
	// 65535 itself is kept free for restarts (clause 5.24.2).
	small := points < math.MaxUint16
	if small {
		a.Type = typeUint16
	}
	for _, i := range v {
		if small {
			b.data = binary.LittleEndian.AppendUint16(b.data, uint16(i))
		} else {
			b.data = binary.LittleEndian.AppendUint32(b.data, i)
		}
	}
	return b.accessor(a, start, targetIndices)
}

func (b *builder) accessor(a accessor, start, target int) int {
	a.View = len(b.doc.BufferViews)
	b.doc.BufferViews = append(b.doc.BufferViews, bufferView{Offset: start, Length: len(b.data) - start, Target: target})
	for len(b.data)%4 != 0 {
		b.data = append(b.data, 0)
	}
	b.doc.Accessors = append(b.doc.Accessors, a)
	return len(b.doc.Accessors) - 1
}
