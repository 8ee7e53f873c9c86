package view3d

import (
	"fmt"
	"slices"
	"strings"

	"scantling/internal/address"
	"scantling/internal/geom/solid"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/scene"
)

// Solids answers with the solids of parts, each in its part's local frame.
type Solids interface {
	Solid(part address.Address) *solid.Solid
	// Ready returns the part as it stands in the finished piece: in two where a lid was
	// sawn off it.
	Ready(part address.Address) []solid.Placed
	// Cut returns the cut that made the face with that tag, "" for the part's own
	// sides.
	Cut(part address.Address, tag solid.Tag) address.Address
}

// Whole makes the scene of a plan's piece. The parts that could not be shown are
// listed beside it, in the order of the piece.
func Whole(p *plan.Plan, solids Solids) (s scene.Scene, left []address.Address) {
	b := builder{plan: p, solids: solids, meshes: map[*solid.Solid]int{}, materials: map[string]int{}}
	b.scene.Title = p.Piece.Name
	for _, part := range p.Piece.Parts {
		shown := false
		for _, body := range solids.Ready(part.Address) {
			if body.Solid != nil && len(body.Solid.Mesh().Tris) > 0 {
				shown = true
				b.object(part, body)
			}
		}
		if !shown {
			left = append(left, part.Address)
		}
	}
	b.fitted(p.Piece)
	return b.scene, left
}

type builder struct {
	plan      *plan.Plan
	solids    Solids
	scene     scene.Scene
	meshes    map[*solid.Solid]int
	materials map[string]int
}

func (b *builder) object(part piece.Part, body solid.Placed) {
	mesh, ok := b.meshes[body.Solid]
	if !ok {
		mesh = len(b.scene.Meshes)
		b.meshes[body.Solid] = mesh
		b.scene.Meshes = append(b.scene.Meshes, b.mesh(part, body.Solid))
	}
	o := scene.Object{
		Address: string(part.Address), Name: strings.ReplaceAll(part.Name, "_", " "),
		Mesh: mesh, Material: b.material(part.Material), Pose: body.Frame,
	}
	if part.Label != "" {
		o.Name = part.Label
	}
	for _, r := range b.plan.Parts {
		if slices.Contains(r.Members, part.Address) {
			o.Mark = r.Mark
		}
	}
	b.scene.Objects = append(b.scene.Objects, o)
}

// mesh takes over a solid's triangles, those of one face together.
func (b *builder) mesh(part piece.Part, body *solid.Solid) scene.Mesh {
	m := body.Mesh()
	out := scene.Mesh{Name: part.Name, Points: slices.Clone(m.Verts)}
	names := b.faceNames(part, body)
	var order []string
	groups := map[string][][3]uint32{}
	for _, t := range m.Tris {
		name := names(t)
		if groups[name] == nil {
			order = append(order, name)
		}
		groups[name] = append(groups[name], [3]uint32{uint32(t.V[0]), uint32(t.V[1]), uint32(t.V[2])})
	}
	for _, name := range order {
		out.Faces = append(out.Faces, scene.Face{Address: name, First: len(out.Triangles), Count: len(groups[name])})
		out.Triangles = append(out.Triangles, groups[name]...)
	}
	for _, c := range m.Creases {
		out.Edges = append(out.Edges, [2]uint32{uint32(c.A), uint32(c.B)})
	}
	return out
}

// faceNames returns how the faces of a solid are named, relative to the part: a
// cut by its kind and its number among the part's cuts of that kind, a side by
// the side that it faces.
func (b *builder) faceNames(part piece.Part, body *solid.Solid) func(solid.Triangle) string {
	faces := body.Faces()
	cuts := map[address.Address]string{}
	count := map[piece.CutKind]int{}
	for _, c := range b.plan.Piece.Cuts {
		if c.Part == part.Address {
			count[c.Kind]++
			cuts[c.Address] = fmt.Sprintf("%s[%d]", c.Kind, count[c.Kind])
		}
	}
	return func(t solid.Triangle) string {
		if cut := b.solids.Cut(part.Address, t.Tag); cut != "" {
			if name, ok := cuts[cut]; ok {
				return name
			}
			return string(cut)
		}
		return string(sideOf(faces[t.Face]))
	}
}

// sideOf returns the side of the part that a face looks to.
func sideOf(f solid.Face) piece.Side {
	best, most := piece.EndLow, 0.0
	for axis := range 3 {
		if v := f.Normal.At(axis); v > most || -v > most {
			best, most = piece.SideOf(piece.Local(axis), v > 0), max(v, -v)
		}
	}
	return best
}
