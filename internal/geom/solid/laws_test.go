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
		} else if !s.Mesh().Closed {
			t.Errorf("seed %d: open mesh", seed)
			bad++
		}
	}
	t.Logf("%d of %d failed", bad, seeds(500))
}
