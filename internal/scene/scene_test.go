package scene

import (
	"math"
	"strings"
	"testing"

	"scantling/internal/geom/vec"
)

func tetrahedron() Scene {
	return Scene{
		Materials: []Material{{Name: "oak", Opacity: 1}},
		Meshes: []Mesh{{
			Name:      "corner",
			Points:    []vec.V3{{}, {X: 10}, {Y: 10}, {Z: 10}},
			Triangles: [][3]uint32{{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}},
			Faces:     []Face{{"face.bottom", 0, 1}, {"face.slope", 1, 3}},
			Edges:     [][2]uint32{{0, 1}, {1, 2}},
		}},
		Objects: []Object{{Address: "a", Pose: vec.World}, {Address: "b", Pose: vec.World}},
	}
}

func TestFaults(t *testing.T) {
	if f := tetrahedron().Faults(); len(f) != 0 {
		t.Fatalf("a good scene has faults: %q", f)
	}
	for _, c := range []struct {
		spoil func(*Scene)
		want  string
	}{
		{func(s *Scene) { s.Objects[1].Mesh = 3 }, "mesh 3 of 1"},
		{func(s *Scene) { s.Objects[1].Material = -1 }, "material -1 of 1"},
		{func(s *Scene) { s.Objects[0].Pose.U = vec.V3{X: -1} }, "not rigid"},
		{func(s *Scene) { s.Objects[0].Pose.U = vec.V3{X: 1.1} }, "not rigid"},
		{func(s *Scene) { s.Meshes[0].Triangles[2][1] = 4 }, "names point 4 of 4"},
		{func(s *Scene) { s.Meshes[0].Edges[1][0] = 9 }, "names point 9 of 4"},
		{func(s *Scene) { s.Meshes[0].Points[1].Y = math.NaN() }, "not finite"},
		{func(s *Scene) { s.Meshes[0].Faces[1].Count = 2 }, "cover 3 of 4"},
		{func(s *Scene) { s.Meshes[0].Faces[1].First = 2 }, "where 1 is next"},
		{func(s *Scene) { s.Meshes[0].Normals = make([]vec.V3, 2) }, "2 normals for 4"},
	} {
		s := tetrahedron()
		c.spoil(&s)
		if got := strings.Join(s.Faults(), "; "); !strings.Contains(got, c.want) {
			t.Errorf("faults %q, want %q", got, c.want)
		}
	}
	if a, ok := tetrahedron().Meshes[0].FaceOf(2); !ok || a != "face.slope" {
		t.Errorf("face of triangle 2 is %q", a)
	}
}
