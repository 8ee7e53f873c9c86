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
	"strconv"
	"testing"
	"time"

	"scantling/internal/geom/vec"
	"scantling/internal/outside"
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
	// OneByOne takes the cutters away in turn, not their union at once.
	OneByOne bool      `json:"oneByOne,omitempty"`
	A        *refScene `json:"a,omitempty"`
	B        *refScene `json:"b,omitempty"`
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
// node and the module that tools/reference/package.json names.
func reference(t testing.TB) string {
	t.Helper()
	outside.Module(t, "the kernel beside manifold-3d", "manifold-3d")
	return filepath.Join("..", "..", "..", "tools", "reference")
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
func facetedVolume(s *Solid) float64 { return s.Mesh().volume() }

// TestBesideReference compares volumes with manifold-3d (npm, version in
// tools/reference/package.json) on random boards: within 0.05 mm³. The long tier
// adds fresh seeds.
func TestBesideReference(t *testing.T) {
	reference(t)
	besideReference(t, firstSeed(t), seeds(500))
	if os.Getenv("LONG") != "" {
		besideReference(t, uint64(time.Now().UnixNano()), 2000)
	}
}

func besideReference(t *testing.T, first, n uint64) {
	const facets = 8
	var scenes []refScene
	for seed := range n {
		b, c := randomBoard(first + seed)
		scenes = append(scenes, refOf(b, c, facets, vec.World))
	}
	worst, at := 0.0, uint64(0)
	second := 0
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
			// The union of cutters that touch along a line has gone wrong in the
			// reference (seed 4004763: by 125 mm³). Ask it to cut one by one.
			again := scenes[i]
			again.OneByOne = true
			a = ask(t, []refScene{again})[0]
			second++
			d = math.Abs(facetedVolume(s) - a.Volume)
		}
		if d > 0.05 {
			t.Errorf("seed %d: volume %.4f, reference %.4f", seed, facetedVolume(s), a.Volume)
		}
		if d > worst {
			worst, at = d, seed
		}
	}
	t.Logf("%d boards from seed %d: worst difference %.6f mm³ (seed %d); %d judged by cutting one by one", n, first, worst, at, second)
	if second > int(n)/1000 {
		t.Errorf("%d boards needed a second judge", second)
	}
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

// firstSeed is where the random boards start: SEED chooses fresh ones.
func firstSeed(t *testing.T) uint64 {
	if v := os.Getenv("SEED"); v != "" {
		n, err := strconv.ParseUint(v, 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	return 100_000
}

// tilted turns a frame by a small angle about a random axis.
func tilted(f vec.Frame, a float64, r *rand.Rand) vec.Frame {
	axis := at(r.NormFloat64(), r.NormFloat64(), r.NormFloat64()).Unit()
	turn := func(v vec.V3) vec.V3 {
		return v.Mul(math.Cos(a)).Add(axis.Cross(v).Mul(math.Sin(a))).Add(axis.Mul(axis.Dot(v) * (1 - math.Cos(a))))
	}
	u, v := turn(f.U).Unit(), turn(f.V)
	v = v.Sub(u.Mul(u.Dot(v))).Unit()
	return vec.Frame{Origin: f.Origin, U: u, V: v, W: u.Cross(v)}
}

// Cuts tilted by 1e-2 to 1e-9 radians lie nearly flush with faces and with one
// another: no one cuts wood so, but measured sizes may say so. A few such
// boards are unverified, none is wrong by more than 0.1 mm³: 50 nm, within which
// faces are flush, over 20 cm².
func TestNearlyFlushBesideReference(t *testing.T) {
	reference(t)
	const facets = 8
	var scenes []refScene
	var solids []*Solid
	n, unverified := seeds(150), 0
	for seed := uint64(700_000); seed < 700_000+n; seed++ {
		r := rand.New(rand.NewPCG(seed, 55))
		b, c := randomBoard(seed)
		a := math.Pow(10, -float64(2+seed%8))
		for i := range c {
			if p := c[i].(Prism); r.IntN(2) == 0 {
				p.Frame = tilted(p.Frame, a, r)
				c[i] = p
			}
		}
		s := Build(b, c, Options{Facets: facets})
		if s.status != Verified {
			unverified++
			continue
		}
		solids, scenes = append(solids, s), append(scenes, refOf(b, c, facets, vec.World))
	}
	worst := 0.0
	for i, a := range ask(t, scenes) {
		d := math.Abs(facetedVolume(solids[i]) - a.Volume)
		if d > 0.1 {
			t.Errorf("board %d: volume %.4f, reference %.4f", i, facetedVolume(solids[i]), a.Volume)
		}
		worst = max(worst, d)
	}
	t.Logf("%d boards, %d unverified, worst difference of the others %.6f mm³", n, unverified, worst)
	if unverified > int(n)/12 {
		t.Errorf("%d of %d unverified", unverified, n)
	}
}
