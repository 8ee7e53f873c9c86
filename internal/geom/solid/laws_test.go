package solid

import (
	"os"
	"testing"
)

// seeds returns how many random boards to try: n in the ordinary tier, ten
// times as many with LONG=1.
func seeds(n int) uint64 {
	if os.Getenv("LONG") != "" {
		return uint64(10 * n)
	}
	return uint64(n)
}

func TestRandomBoardsClose(t *testing.T) {
	bad := 0
	for seed := range seeds(500) {
		b, c := randomBoard(seed)
		s := Build(b, c, Options{Facets: 8})
		if st, why := s.Status(); st != Verified {
			t.Errorf("seed %d: unverified: %s", seed, why)
			bad++
		}
	}
	t.Logf("%d of %d failed", bad, seeds(500))
}

// Boards that went wrong once: two lines that crossed at a slant were taken for
// one, and an edge was split for ever beside a vertex that had not merged.
func TestBoardsThatFailed(t *testing.T) {
	for _, seed := range []uint64{100638, 104102} {
		b, c := randomBoard(seed)
		if st, why := Build(b, c, Options{Facets: 8}).Status(); st != Verified {
			t.Errorf("seed %d: unverified: %s", seed, why)
		}
	}
}
