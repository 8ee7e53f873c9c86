package operations

import (
	"math/rand/v2"
	"testing"

	"scantling/internal/tool"
	"scantling/internal/unit"
)

// TestPathsByHand: a groove of 5.8 by a kerf of 3 wants the blade 2.8 further, which is
// less than nine tenths of it and the rest: one further path, 0.2 over the first. With a
// groove of 6 the overlap would be nothing: 2.7, then 3. A cutter of 6.35 steps 5.7.
func TestPathsByHand(t *testing.T) {
	for _, c := range []struct {
		size, width unit.Length // tenths, hundredths below
		want        []unit.Length
	}{
		{300, 580, []unit.Length{280}}, {300, 600, []unit.Length{270, 300}}, {300, 560, []unit.Length{260}},
		{300, 840, []unit.Length{270, 540}}, {300, 850, []unit.Length{275, 550}}, {300, 900, []unit.Length{270, 540, 600}},
		{635, 1215, []unit.Length{580}},
	} {
		size := c.size * 10 * unit.Micrometre
		got, err := paths((c.width-c.size)*10*unit.Micrometre, size, step(tool.Cutter{Diameter: size}))
		if err != nil || len(got) != len(c.want) {
			t.Errorf("%v of %v: %v (%v)", c.size, c.width, got, err)
			continue
		}
		for i := range got {
			if got[i] != c.want[i]*10*unit.Micrometre {
				t.Errorf("%v of %v: %v", c.size, c.width, got)
			}
		}
	}
}

// TestPathsClear: whatever the widths, paths rise, none leaves wood between itself and
// the one before, and the last ends the cut.
func TestPathsClear(t *testing.T) {
	for seed := range uint64(5000) {
		r := rand.New(rand.NewPCG(seed, 3))
		size := unit.MM(2) + unit.Length(r.Int64N(int64(unit.MM(20))))
		shift := 1 + unit.Length(r.Int64N(int64(unit.MM(100))))
		got, err := paths(shift, size, step(tool.Cutter{Diameter: size}))
		if err != nil || got[len(got)-1] != shift {
			t.Fatalf("seed %d: %v (%v)", seed, got, err)
		}
		last := unit.Length(0)
		for _, at := range got {
			if at <= last || at-last > size-leastOverlap {
				t.Fatalf("seed %d: cutter %v, paths %v", seed, size, got)
			}
			last = at
		}
	}
}
