package solid

import (
	"bufio"
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"scantling/internal/geom/vec"
)

// What the reference reads and writes; see tools/reference/solids.mjs.
type refPrim struct {
	Loops [][][2]float64 `json:"loops"`
	From  float64        `json:"from"`
	To    float64        `json:"to"`
	Frame [4][3]float64  `json:"frame"`
}

type refScene struct {
	Bodies  []refPrim `json:"bodies,omitempty"`
	Cutters []refPrim `json:"cutters"`
	A       *refScene `json:"a,omitempty"`
	B       *refScene `json:"b,omitempty"`
}

type refAnswer struct {
	Volume, Area, Ms float64
	Triangles        int
	Status           string
}

func refPrims(list []Primitive, facets int, pose vec.Frame) []refPrim {
	out := []refPrim{}
	for _, q := range list {
		p := q.(Prism)
		r := refPrim{From: min(p.From, p.To), To: max(p.From, p.To)}
		for _, f := range p.Profile.Flatten(facets) {
			var ring [][2]float64
			for _, pt := range f.Points {
				ring = append(ring, [2]float64{pt.X, pt.Y})
			}
			r.Loops = append(r.Loops, ring)
		}
		fr := p.Frame.Then(pose)
		for i, v := range [4]vec.V3{fr.Origin, fr.U, fr.V, fr.W} {
			r.Frame[i] = [3]float64{v.X, v.Y, v.Z}
		}
		out = append(out, r)
	}
	return out
}

func refOf(b, c []Primitive, facets int, pose vec.Frame) refScene {
	return refScene{Bodies: refPrims(b, facets, pose), Cutters: refPrims(c, facets, pose)}
}

// reference returns the folder of the outside reference, or skips: it needs
// node and the module that tools/reference/package.json names. With
// REQUIRE=all its absence is a failure.
func reference(t testing.TB) string {
	t.Helper()
	dir := filepath.Join("..", "..", "..", "tools", "reference")
	_, err := os.Stat(filepath.Join(dir, "node_modules", "manifold-3d", "manifold.wasm"))
	if err == nil {
		_, err = exec.LookPath("node")
	}
	if err != nil {
		if os.Getenv("REQUIRE") == "all" {
			t.Fatalf("the reference is missing: %v", err)
		}
		t.Skipf("left out: manifold-3d beside the kernel (run npm ci in tools/reference; needs node): %v", err)
	}
	return dir
}

// ask runs the reference over scenes.
func ask(t testing.TB, scenes []refScene, args ...string) []refAnswer {
	t.Helper()
	dir := reference(t)
	var in bytes.Buffer
	enc := json.NewEncoder(&in)
	for _, s := range scenes {
		if err := enc.Encode(s); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command("node", append([]string{"solids.mjs"}, args...)...)
	cmd.Dir, cmd.Stdin, cmd.Stderr = dir, &in, os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("the reference failed: %v", err)
	}
	var answers []refAnswer
	sc := bufio.NewScanner(bytes.NewReader(out))
	for sc.Scan() {
		var a refAnswer
		if err := json.Unmarshal(sc.Bytes(), &a); err != nil {
			t.Fatal(err)
		}
		answers = append(answers, a)
	}
	if len(answers) != len(scenes) {
		t.Fatalf("%d answers to %d scenes", len(answers), len(scenes))
	}
	return answers
}

// facetedVolume is the volume within the facets, which is what the reference
// measures.
func facetedVolume(s *Solid) float64 {
	m := s.Mesh()
	mid := s.body.lo.Add(s.body.hi).Mul(0.5)
	var v float64
	for _, t := range m.Tris {
		v += m.Verts[t.V[0]].Sub(mid).Dot(m.Verts[t.V[1]].Sub(mid).Cross(m.Verts[t.V[2]].Sub(mid))) / 6
	}
	return v
}

// TestBesideReference compares volumes with manifold-3d (npm, version in
// tools/reference/package.json) on random boards: within 0.05 mm³.
func TestBesideReference(t *testing.T) {
	reference(t)
	const facets = 8
	first, n := uint64(100_000), seeds(500)
	var scenes []refScene
	for seed := range n {
		b, c := randomBoard(first + seed)
		scenes = append(scenes, refOf(b, c, facets, vec.World))
	}
	worst, at := 0.0, uint64(0)
	for i, a := range ask(t, scenes) {
		seed := first + uint64(i)
		b, c := randomBoard(seed)
		s := Build(b, c, Options{Facets: facets})
		if st, why := s.Status(); st != Verified {
			t.Errorf("seed %d: unverified: %s", seed, why)
			continue
		}
		d := math.Abs(facetedVolume(s) - a.Volume)
		if d > 0.05 {
			t.Errorf("seed %d: volume %.4f, reference %.4f", seed, facetedVolume(s), a.Volume)
		}
		if d > worst {
			worst, at = d, seed
		}
	}
	t.Logf("%d boards from seed %d: worst difference %.6f mm³ (seed %d)", n, first, worst, at)
}

// TestOverlapsBesideReference compares the overlap of pairs of random boards in
// arbitrary poses with manifold-3d: within 0.05 mm³.
func TestOverlapsBesideReference(t *testing.T) {
	reference(t)
	const facets = 8
	type pair struct{ a, b Placed }
	var pairs []pair
	var scenes []refScene
	for seed := uint64(300_000); seed < 300_000+seeds(80); seed++ {
		r := rand.New(rand.NewPCG(seed, 6))
		b1, c1 := randomBoard(seed)
		b2, c2 := randomBoard(seed + 1_000_000)
		f := shifted(vec.World, at(float64(r.IntN(16))*5, float64(r.IntN(12))*5, float64(r.IntN(5))*5))
		if r.IntN(2) == 0 {
			f = randomFrame(r, f.Origin)
		}
		s1, s2 := refOf(b1, c1, facets, vec.World), refOf(b2, c2, facets, f)
		scenes = append(scenes, refScene{Cutters: []refPrim{}, A: &s1, B: &s2})
		pairs = append(pairs, pair{Placed{Build(b1, c1, Options{Facets: facets}), vec.World}, Placed{Build(b2, c2, Options{Facets: facets}), f}})
	}
	worst, meeting := 0.0, 0
	for i, a := range ask(t, scenes) {
		o := Interference(pairs[i].a, pairs[i].b)
		if o.Status != Verified {
			t.Errorf("pair %d: unverified: %s", i, o.Reason)
			continue
		}
		d := math.Abs(o.Volume + o.Facets - a.Volume)
		if d > 0.05 {
			t.Errorf("pair %d: overlap %.4f, reference %.4f", i, o.Volume+o.Facets, a.Volume)
		}
		if a.Volume > 0 {
			meeting++
		}
		worst = max(worst, d)
	}
	t.Logf("%d pairs, %d of them overlapping: worst difference %.6f mm³", len(pairs), meeting, worst)
}
