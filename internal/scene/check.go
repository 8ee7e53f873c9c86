package scene

import (
	"fmt"
	"math"

	"scantling/internal/geom/vec"
)

// Faults says what is wrong with the scene: indices out of range, faces that do
// not cover the triangles, poses that are not rigid, numbers that are none. A
// scene without faults can be written by every writer.
func (s Scene) Faults() (faults []string) {
	add := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	for i, m := range s.Meshes {
		for _, f := range m.faults() {
			add("mesh %d %q: %s", i, m.Name, f)
		}
	}
	for i, o := range s.Objects {
		if o.Mesh < 0 || o.Mesh >= len(s.Meshes) {
			add("object %d %q: mesh %d of %d", i, o.Address, o.Mesh, len(s.Meshes))
		}
		if o.Material < 0 || o.Material >= len(s.Materials) {
			add("object %d %q: material %d of %d", i, o.Address, o.Material, len(s.Materials))
		}
		if !rigid(o.Pose) {
			add("object %d %q: pose is not rigid", i, o.Address)
		}
	}
	return faults
}

func (m Mesh) faults() (faults []string) {
	n := uint32(len(m.Points))
	for i, p := range m.Points {
		if !finite(p) {
			return append(faults, fmt.Sprintf("point %d is not finite", i))
		}
	}
	if m.Normals != nil && len(m.Normals) != len(m.Points) {
		faults = append(faults, fmt.Sprintf("%d normals for %d points", len(m.Normals), n))
	}
	for i, t := range m.Triangles {
		if max(t[0], t[1], t[2]) >= n {
			faults = append(faults, fmt.Sprintf("triangle %d names point %d of %d", i, max(t[0], t[1], t[2]), n))
			break
		}
	}
	for i, e := range m.Edges {
		if max(e[0], e[1]) >= n {
			faults = append(faults, fmt.Sprintf("edge %d names point %d of %d", i, max(e[0], e[1]), n))
			break
		}
	}
	at := 0
	for _, f := range m.Faces {
		if f.First != at || f.Count <= 0 {
			faults = append(faults, fmt.Sprintf("face %q has triangles %d+%d where %d is next", f.Address, f.First, f.Count, at))
			return faults
		}
		at += f.Count
	}
	if m.Faces != nil && at != len(m.Triangles) {
		faults = append(faults, fmt.Sprintf("faces cover %d of %d triangles", at, len(m.Triangles)))
	}
	return faults
}

// FaceOf returns the address of the face that a triangle belongs to, and false
// where none is known.
func (m Mesh) FaceOf(triangle int) (string, bool) {
	for _, f := range m.Faces {
		if triangle >= f.First && triangle < f.First+f.Count {
			return f.Address, true
		}
	}
	return "", false
}

func finite(p vec.V3) bool {
	for axis := range 3 {
		if v := p.At(axis); math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// rigid reports whether the frame is orthonormal and right-handed, to 1e-9.
func rigid(f vec.Frame) bool {
	const eps = 1e-9
	near := func(a, b float64) bool { return math.Abs(a-b) <= eps }
	return finite(f.Origin) && near(f.U.Dot(f.U), 1) && near(f.V.Dot(f.V), 1) && near(f.W.Dot(f.W), 1) &&
		near(f.U.Dot(f.V), 0) && near(f.V.Dot(f.W), 0) && near(f.W.Dot(f.U), 0) && near(f.U.Cross(f.V).Dot(f.W), 1)
}
