package gltf

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scantling/internal/geom/vec"
	"scantling/internal/scene"
)

// block is a box from the origin, wound outwards, with its six faces and edges.
func block(x, y, z float64) scene.Mesh {
	m := scene.Mesh{Name: fmt.Sprintf("block %v × %v × %v", x, y, z)}
	for i := range 8 {
		m.Points = append(m.Points, vec.V3{X: x * float64(i&1), Y: y * float64(i>>1&1), Z: z * float64(i>>2)})
	}
	for i, q := range [][4]uint32{{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}} {
		m.Triangles = append(m.Triangles, [3]uint32{q[0], q[1], q[2]}, [3]uint32{q[0], q[2], q[3]})
		name := []string{"bottom", "top", "front", "back", "left", "right"}[i]
		m.Faces = append(m.Faces, scene.Face{Address: "face." + name, First: 2 * i, Count: 2})
	}
	for _, e := range [][2]uint32{{0, 1}, {2, 3}, {4, 5}, {6, 7}, {0, 2}, {1, 3}, {4, 6}, {5, 7}, {0, 4}, {1, 5}, {2, 6}, {3, 7}} {
		m.Edges = append(m.Edges, e)
	}
	return m
}

func sample() scene.Scene {
	quarter := vec.Frame{Origin: vec.V3{X: 100, Y: 20, Z: 5}, U: vec.V3{Y: 1}, V: vec.V3{X: -1}, W: vec.V3{Z: 1}}
	moved := vec.World
	moved.Origin = vec.V3{X: 1, Y: 2, Z: 3}
	return scene.Scene{
		Title: "Two sides", Materials: []scene.Material{
			{Name: "oak", Role: "timber", Colour: scene.Colour{R: 0xEB, G: 0xCB, B: 0x78}, Opacity: 1},
			{Name: "needle", Role: "contents", Colour: scene.Colour{R: 0x86, G: 0xBF, B: 0xE0}, Opacity: 0.4},
		},
		Meshes: []scene.Mesh{block(350, 12, 80), block(4, 4, 350)},
		Objects: []scene.Object{
			{Address: "drawer[1].side.left", Mark: "B1", Name: "Drawer side", Pose: vec.World},
			{Address: "drawer[1].side.right", Mark: "B2", Name: "Drawer side", Pose: quarter},
			{Address: `tray.needle["4.0 a"]`, Name: "Needle", Mesh: 1, Material: 1, Pose: moved},
		},
	}
}

// read is a small reader of GLB files: it checks what the format asks for and
// returns each node's triangles in the piece's own frame, in millimetres.
type read struct {
	t    *testing.T
	doc  document
	data []byte
}

func readGLB(t *testing.T, file []byte) read {
	t.Helper()
	le := binary.LittleEndian
	if string(file[:4]) != "glTF" || le.Uint32(file[4:]) != 2 || int(le.Uint32(file[8:])) != len(file) {
		t.Fatalf("header % x of %d bytes", file[:12], len(file))
	}
	r := read{t: t}
	for at := 12; at < len(file); {
		size, kind := int(le.Uint32(file[at:])), string(file[at+4:at+8])
		chunk := file[at+8 : at+8+size]
		if size%4 != 0 {
			t.Errorf("chunk %q has %d bytes", kind, size)
		}
		switch kind {
		case "JSON":
			d := json.NewDecoder(bytes.NewReader(chunk))
			d.DisallowUnknownFields()
			if err := d.Decode(&r.doc); err != nil {
				t.Fatal(err)
			}
		case "BIN\x00":
			r.data = chunk
		default:
			t.Errorf("chunk %q", kind)
		}
		at += 8 + size
	}
	if r.doc.Asset.Version != "2.0" {
		t.Errorf("version %q", r.doc.Asset.Version)
	}
	return r
}

// values returns the numbers of an accessor.
func (r read) values(index int) (v []float64) {
	a := r.doc.Accessors[index]
	view := r.doc.BufferViews[a.View]
	size := map[int]int{typeUint16: 2, typeUint32: 4, typeFloat32: 4}[a.Type]
	n := a.Count * map[string]int{"SCALAR": 1, "VEC3": 3}[a.Kind]
	if n*size > view.Length || view.Offset+view.Length > len(r.data) || view.Offset%size != 0 {
		r.t.Fatalf("accessor %d: %d values of %d bytes in view %+v of %d", index, n, size, view, len(r.data))
	}
	for i := range n {
		b := r.data[view.Offset+i*size:]
		switch a.Type {
		case typeUint16:
			v = append(v, float64(binary.LittleEndian.Uint16(b)))
		case typeUint32:
			v = append(v, float64(binary.LittleEndian.Uint32(b)))
		default:
			v = append(v, float64(math.Float32frombits(binary.LittleEndian.Uint32(b))))
		}
	}
	return v
}

// points returns a primitive's points in the piece's frame, placed by the node.
func (r read) points(n node, p primitive) (points []vec.V3) {
	v := r.values(p.Attributes.Position)
	a := r.doc.Accessors[p.Attributes.Position]
	for i := 0; i < len(v); i += 3 {
		for axis := range 3 {
			if f := float32(v[i+axis]); f < a.Min[axis] || f > a.Max[axis] {
				r.t.Errorf("point outside the bounds of its accessor")
			}
		}
		q := vec.V3{X: v[i], Y: v[i+1], Z: v[i+2]}
		switch {
		case n.Matrix != nil:
			m := n.Matrix
			at := func(row int) float64 {
				return float64(m[row])*q.X + float64(m[4+row])*q.Y + float64(m[8+row])*q.Z + float64(m[12+row])
			}
			q = vec.V3{X: at(0), Y: at(1), Z: at(2)}
		case n.Translation != nil:
			q = q.Add(vec.V3{X: float64(n.Translation[0]), Y: float64(n.Translation[1]), Z: float64(n.Translation[2])})
		}
		points = append(points, vec.V3{X: q.X, Y: -q.Z, Z: q.Y}.Mul(1000))
	}
	return points
}

func write(t testing.TB, s scene.Scene) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, s); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// TestReadBack checks places and volumes of what was written against the scene.
func TestReadBack(t *testing.T) {
	s := sample()
	r := readGLB(t, write(t, s))
	if len(r.doc.Nodes) != 3 || len(r.doc.Meshes) != 2 {
		t.Fatalf("%d nodes, %d meshes", len(r.doc.Nodes), len(r.doc.Meshes))
	}
	for i, n := range r.doc.Nodes {
		o := s.Objects[i]
		if n.Extras.Address != o.Address || n.Extras.Mark != o.Mark || n.Extras.Name != o.Name {
			t.Errorf("extras %+v", n.Extras)
		}
		m := s.Meshes[o.Mesh]
		prims := r.doc.Meshes[n.Mesh].Primitives
		if len(prims) != 2 || prims[0].Mode != modeTriangles || prims[1].Mode != modeLines {
			t.Fatalf("primitives %+v", prims)
		}
		if prims[0].Material != o.Material {
			t.Errorf("material %d, want %d", prims[0].Material, o.Material)
		}
		points := r.points(n, prims[0])
		for k, p := range points {
			if want := o.Pose.ToWorld(m.Points[k]); p.Sub(want).Norm() > 1e-3 {
				t.Errorf("object %d: point %d at %v, want %v", i, k, p, want)
			}
		}
		idx := r.values(prims[0].Indices)
		volume := 0.0
		for k := 0; k < len(idx); k += 3 {
			a, b, c := points[int(idx[k])], points[int(idx[k+1])], points[int(idx[k+2])]
			volume += a.Cross(b).Dot(c) / 6
		}
		far := m.Points[7]
		if want := far.X * far.Y * far.Z; math.Abs(volume-want) > 1e-4*want {
			t.Errorf("object %d encloses %.1f mm³, want %.1f", i, volume, want)
		}
		if f := prims[0].Extras.Faces; len(f) != 6 || f[1][0] != "face.top" || f[1][1] != 2.0 || f[1][2] != 2.0 {
			t.Errorf("faces %v", f)
		}
		if e := r.values(prims[1].Indices); len(e) != 24 {
			t.Errorf("%d ends of edges", len(e))
		}
	}
	if m := r.doc.Materials; len(m) != 3 || m[1].AlphaMode != "BLEND" || m[0].AlphaMode != "" || m[2].Name != "edge" || m[1].Extras.Role != "contents" {
		t.Errorf("materials %+v", m)
	}
}

// TestPoses checks random rigid poses.
func TestPoses(t *testing.T) {
	seed := rand.Uint64()
	rng := rand.New(rand.NewPCG(seed, 3))
	for range 200 {
		u := vec.V3{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()}.Unit()
		w := u.Cross(vec.V3{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()}).Unit()
		s := sample()
		s.Objects = s.Objects[:1]
		s.Objects[0].Pose = vec.Frame{Origin: vec.V3{X: 1000 * rng.Float64(), Y: 7, Z: -300}, U: u, V: w.Cross(u), W: w}
		r := readGLB(t, write(t, s))
		for k, p := range r.points(r.doc.Nodes[0], r.doc.Meshes[0].Primitives[0]) {
			if want := s.Objects[0].Pose.ToWorld(s.Meshes[0].Points[k]); p.Sub(want).Norm() > 1e-3 {
				t.Fatalf("seed %d: point at %v, want %v", seed, p, want)
			}
		}
	}
}

func TestSharing(t *testing.T) {
	s := sample()
	one := len(write(t, s))
	for i := range 50 {
		o := s.Objects[0]
		o.Address = fmt.Sprintf("drawer[%d].side.left", i+2)
		s.Objects = append(s.Objects, o)
	}
	r := readGLB(t, write(t, s))
	if len(r.doc.Meshes) != 2 || len(r.doc.Nodes) != 53 {
		t.Errorf("%d meshes for %d nodes", len(r.doc.Meshes), len(r.doc.Nodes))
	}
	if more := (len(write(t, s)) - one) / 50; more > 200 {
		t.Errorf("each further object takes %d bytes", more)
	}
}

func TestLargeIndices(t *testing.T) {
	s := sample()
	m := scene.Mesh{Points: make([]vec.V3, 70000), Triangles: [][3]uint32{{0, 69998, 69999}}}
	m.Normals = make([]vec.V3, len(m.Points))
	for i := range m.Points {
		m.Points[i].X, m.Normals[i].Z = float64(i), 2
	}
	s.Meshes[0] = m
	r := readGLB(t, write(t, s))
	prim := r.doc.Meshes[r.doc.Nodes[0].Mesh].Primitives[0]
	if v := r.values(prim.Indices); v[2] != 69999 {
		t.Errorf("index %v", v[2])
	}
	if n := r.values(*prim.Attributes.Normal); n[1] != 1 || n[2] != 0 {
		t.Errorf("normal %v: up is Y and of length one", n[:3])
	}
}

func TestEmptyAndFaulty(t *testing.T) {
	r := readGLB(t, write(t, scene.Scene{Title: "nothing"}))
	if len(r.doc.Nodes) != 0 || r.data != nil {
		t.Errorf("%+v", r.doc)
	}
	s := sample()
	s.Meshes = append(s.Meshes, scene.Mesh{})
	s.Objects = append(s.Objects, scene.Object{Mesh: 2, Pose: vec.World})
	if r := readGLB(t, write(t, s)); len(r.doc.Nodes) != 3 {
		t.Errorf("%d nodes: an empty mesh has none", len(r.doc.Nodes))
	}
	s.Objects[0].Mesh = 9
	if err := Write(io.Discard, s); err == nil || !strings.Contains(err.Error(), "mesh 9 of 3") {
		t.Errorf("error %v", err)
	}
	full := errors.New("disk full")
	if err := Write(failing{full}, sample()); !errors.Is(err, full) {
		t.Errorf("error %v, want that of the writer", err)
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

// TestLinear compares the colour curve with the library's power.
func TestLinear(t *testing.T) {
	for c := range 256 {
		v := float64(c) / 255
		want := v / 12.92
		if v > 0.04045 {
			want = math.Pow((v+0.055)/1.055, 2.4)
		}
		if got := linear(uint8(c)); math.Abs(got-want) > 1e-14 {
			t.Errorf("linear(%d) = %v, want %v", c, got, want)
		}
	}
}

// golden is the SHA-256 of the sample, the same on every machine.
const golden = "5b1de1dd01a5c5992a03d082fe9b4f50fc7238e3f2a8fbd929582b8921251507"

func TestGolden(t *testing.T) {
	a := write(t, sample())
	if dir := os.Getenv("SCANTLING_LOOK"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, "sample.glb"), a, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a, write(t, sample())) {
		t.Error("the same scene gave two files")
	}
	if got := fmt.Sprintf("%x", sha256.Sum256(a)); got != golden {
		t.Errorf("SHA-256 of the sample is %s, want %s", got, golden)
	}
}

func BenchmarkWrite(b *testing.B) {
	s := sample()
	for i := range 3000 {
		o := s.Objects[i%3]
		s.Objects = append(s.Objects, o)
	}
	for b.Loop() {
		if err := Write(io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}
