package view3d

import (
	"bytes"
	"math"
	"testing"

	"scantling/internal/address"
	"scantling/internal/geom/solid"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/shape"
	"scantling/internal/unit"
	"scantling/internal/write/gltf"
)

// shapes stands in for the front door's solids.
type shapes struct{ *shape.Shapes }

func (s shapes) Solid(a address.Address) *solid.Solid {
	if sh, ok := s.Of(a); ok {
		return sh.Solid
	}
	return nil
}

func (s shapes) Cut(a address.Address, t solid.Tag) address.Address {
	if sh, ok := s.Of(a); ok {
		if c := sh.Origin(t).Cut; c != nil {
			return c.Address
		}
	}
	return ""
}

func fig(mm int64) plan.Figure { return plan.Figure{Nm: unit.MM(mm)} }

// board is a part of 100 × 40 × 10 lying along right, back, up.
func board(at string, low, high int64) piece.Part {
	return piece.Part{
		Address: address.Address(at), Name: "shelf", Form: piece.Board, Material: "case",
		Extent: [3]piece.Extent{{Low: fig(low), High: fig(low + 100)}, {Low: fig(0), High: fig(40)}, {Low: fig(high), High: fig(high + 10)}},
		Frame:  piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp},
		Length: fig(100), Width: fig(40), Thickness: fig(10),
	}
}

func sample() *plan.Plan {
	a, b := board("shelf[1]", 0, 0), board("shelf[2]", 0, 50)
	p := &piece.Piece{Name: "Rack", Parts: []piece.Part{a, b}, Materials: []piece.Material{{Name: "case", Species: "cherry"}}}
	for _, part := range p.Parts {
		p.Cuts = append(p.Cuts, piece.Cut{
			Address: part.Address.Child("groove"), Kind: piece.Groove, Part: part.Address,
			Slot: &piece.Slot{Open: piece.FaceHigh, Run: piece.AlongLength, From: fig(0), To: fig(100), StartOpen: true, EndOpen: true, Near: fig(10), Far: fig(16), Depth: fig(4)},
		})
	}
	return &plan.Plan{Piece: p, Parts: []plan.PartRow{{Mark: "A1", Members: []address.Address{a.Address, b.Address}}}}
}

// Two equal shelves are one mesh and two objects; every face has a name; the
// surface encloses the volume of the board less its groove.
func TestScene(t *testing.T) {
	p := sample()
	s, left := Whole(p, shapes{shape.New(p.Piece, nil, shape.ScreenFacets)})
	if len(left) != 0 || len(s.Meshes) != 1 || len(s.Objects) != 2 || len(s.Materials) != 1 {
		t.Fatalf("left out %v; %d meshes, %d objects, %d materials", left, len(s.Meshes), len(s.Objects), len(s.Materials))
	}
	if f := s.Faults(); f != nil {
		t.Fatal(f)
	}
	if o := s.Objects[1]; o.Mark != "A1" || o.Address != "shelf[2]" || o.Pose.Origin.Z != 50 {
		t.Errorf("second shelf: %+v", o)
	}
	m := s.Meshes[0]
	faces := map[string]int{}
	for _, f := range m.Faces {
		faces[f.Address] += f.Count
	}
	for _, want := range []string{"groove[1]", "end 1", "end 2", "edge 1", "edge 2", "face 1", "face 2"} {
		if faces[want] == 0 {
			t.Errorf("no face %q in %v", want, faces)
		}
	}
	volume := 0.0
	for _, tri := range m.Triangles {
		a, b, c := m.Points[tri[0]], m.Points[tri[1]], m.Points[tri[2]]
		volume += a.Dot(b.Cross(c)) / 6
	}
	if want := 100.0 * (40*10 - 6*4); math.Abs(volume-want) > 1e-6 {
		t.Errorf("volume %v, want %v", volume, want)
	}
	var out bytes.Buffer
	if err := gltf.Write(&out, s); err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(out.Bytes(), []byte("glTF")) {
		t.Error("no GLB")
	}
}

// A part without a solid is named, and the rest is shown.
func TestSceneLeavesOut(t *testing.T) {
	p := sample()
	whole := shape.New(p.Piece, nil, shape.ScreenFacets)
	p.Piece.Parts = append(p.Piece.Parts, board("gone", 0, 90))
	s, left := Whole(p, shapes{whole})
	if len(left) != 1 || left[0] != "gone" || len(s.Objects) != 2 {
		t.Errorf("left out %v, %d objects", left, len(s.Objects))
	}
}

// TestHardware: a knob's drum of 20 × 18 is one object more, of metal, its surface
// round the volume of a drum (8 facets to a half circle leave out 2.6 %).
func TestHardware(t *testing.T) {
	p := sample()
	p.Piece.Hardware = []piece.Hardware{{Address: "hardware.knob", Kind: "knob 20", Count: 1, Bodies: []piece.Body{{
		Of: 1, Word: "knob", Round: true, Axis: piece.Back,
		Extent: [3]piece.Extent{{Low: fig(40), High: fig(60)}, {Low: fig(-18), High: fig(0)}, {Low: fig(0), High: fig(20)}},
	}}}}
	s, _ := Whole(p, shapes{shape.New(p.Piece, nil, shape.ScreenFacets)})
	if len(s.Objects) != 3 || len(s.Materials) != 2 || s.Materials[1].Role != "hardware" {
		t.Fatalf("%d objects, %+v", len(s.Objects), s.Materials)
	}
	if f := s.Faults(); f != nil {
		t.Fatal(f)
	}
	o := s.Objects[2]
	m := s.Meshes[o.Mesh]
	volume, front := 0.0, math.Inf(1)
	for _, tri := range m.Triangles {
		a, b, c := m.Points[tri[0]], m.Points[tri[1]], m.Points[tri[2]]
		volume += a.Dot(b.Cross(c)) / 6
		front = min(front, o.Pose.ToWorld(a).Y)
	}
	if want := math.Pi * 100 * 18; math.Abs(volume-want) > 0.03*want || o.Address != "hardware.knob" || front != -18 {
		t.Errorf("%s: %v mm³, want about %v; front at %v", o.Address, volume, want, front)
	}
}
