package shape_test

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"hash"
	"math"
	"testing"

	"scantling/internal/geom/vec"
)

// TestSameBytes: random parts with every form of cut have the same meshes and
// measures, bit for bit, on every machine that runs this test: natively and under
// js/wasm. A change of the kernel that moves a bit changes the sum on purpose.
func TestSameBytes(t *testing.T) {
	const want = "f230bf14bda037f324ad370a"
	h := sha256.New()
	for seed := uint64(70_000); seed < 70_030; seed++ {
		part, cuts := randomPart(seed)
		s := solidAsIs(part, cuts, 8)
		m := s.Mesh()
		for _, v := range m.Verts {
			put(h, v)
		}
		for _, tri := range m.Tris {
			binary.Write(h, binary.LittleEndian, tri.V)
			binary.Write(h, binary.LittleEndian, int32(tri.Tag))
		}
		put(h, vec.V3{X: s.Volume(), Y: s.Area()})
		put(h, s.Centroid())
	}
	if got := hex.EncodeToString(h.Sum(nil)[:12]); got != want {
		t.Errorf("sum %s, want %s", got, want)
	}
}

func put(h hash.Hash, v vec.V3) {
	for _, x := range [3]float64{v.X, v.Y, v.Z} {
		binary.Write(h, binary.LittleEndian, math.Float64bits(x))
	}
}
