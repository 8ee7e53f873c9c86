package view3d

import (
	"slices"

	"scantling/internal/piece"
	"scantling/internal/scene"
	"scantling/internal/shape"
)

// metal is the look of bought hardware.
var metal = scene.Material{Name: "hardware", Role: "hardware", Colour: scene.Colour{R: 0xB8, G: 0xA4, B: 0x6C}, Opacity: 1}

// fitted shows what the piece's hardware takes up, one object for each body.
func (b *builder) fitted(p *piece.Piece) {
	for i := range p.Hardware {
		h := &p.Hardware[i]
		for _, x := range h.Bodies {
			at := shape.Fitted(x, shape.ScreenFacets)
			m := at.Solid.Mesh()
			if len(m.Tris) == 0 {
				continue
			}
			mesh := scene.Mesh{Name: h.Kind, Points: slices.Clone(m.Verts)}
			for _, t := range m.Tris {
				mesh.Triangles = append(mesh.Triangles, [3]uint32{uint32(t.V[0]), uint32(t.V[1]), uint32(t.V[2])})
			}
			for _, c := range m.Creases {
				mesh.Edges = append(mesh.Edges, [2]uint32{uint32(c.A), uint32(c.B)})
			}
			b.scene.Meshes = append(b.scene.Meshes, mesh)
			b.scene.Objects = append(b.scene.Objects, scene.Object{
				Address: string(h.Address), Name: h.Kind, Mesh: len(b.scene.Meshes) - 1, Material: b.metal(), Pose: at.Frame,
			})
		}
	}
}

// metal returns the number of the look of hardware.
func (b *builder) metal() int {
	if n, ok := b.materials[metal.Role]; ok {
		return n
	}
	n := len(b.scene.Materials)
	b.materials[metal.Role] = n
	b.scene.Materials = append(b.scene.Materials, metal)
	return n
}
