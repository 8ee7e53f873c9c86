package bodies_test

import (
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis"
	"scantling/internal/analysis/check/bodies"
	"scantling/internal/joinery"
	"scantling/internal/piece"
	"scantling/internal/piece/trial"
	"scantling/internal/unit"
)

func TestMatches(t *testing.T) {
	for _, c := range []struct {
		pattern, a address.Address
		want       bool
	}{
		{"drawer", "drawer[2]", true}, {"drawer[2]", "drawer[2]", true}, {"drawer[1]", "drawer[2]", false}, {"drawer[1]", "drawer[12]", false},
		{"drawer", "drawers", false}, {"drawer", "drawer[2].front", false}, {"case.opening", "case.opening[3]", true}, {"drawer.front", "drawer[1].front", true},
		{"drawer.front", "drawer[1].back", false}, {"case", "", false}, {"", "case", false}, {"", "", true},
		{"tray.channel", `tray.channel["4.0 a"]`, false}, {`tray.channel["4.0 a"]`, `tray.channel["4.0 a"]`, true}, {"drawer[1]", "drawer", false},
	} {
		if got := bodies.Matches(c.pattern, c.a); got != c.want {
			t.Errorf("%q for %q: %v", c.pattern, c.a, got)
		}
	}
}

// Law: what is left of a box without others, and what was taken, make it up.
func TestLess(t *testing.T) {
	const seed = 7
	r := rand.New(rand.NewPCG(seed, 1))
	t.Logf("seed %d", seed)
	box := func(most int64) bodies.Box {
		var b bodies.Box
		for i := range b {
			low := unit.Length(r.Int64N(most))
			b[i] = bodies.Span{Low: low, High: low + 1 + unit.Length(r.Int64N(most))}
		}
		return b
	}
	volume := func(b bodies.Box) int64 { return int64(b[0].Size() * b[1].Size() * b[2].Size()) }
	for range 2000 {
		b, cuts := box(12), []bodies.Box{box(12), box(12), box(12)}
		left := []bodies.Box{b}
		for _, c := range cuts {
			left = bodies.LessAll(left, c)
		}
		var sum, want int64
		for i, l := range left {
			sum += volume(l)
			for _, m := range left[i+1:] {
				if l.Overlaps(m) {
					t.Fatalf("%v and %v overlap", l, m)
				}
			}
		}
		for x := b[0].Low; x < b[0].High; x++ {
			for y := b[1].Low; y < b[1].High; y++ {
				for z := b[2].Low; z < b[2].High; z++ {
					cell := bodies.Box{{Low: x, High: x + 1}, {Low: y, High: y + 1}, {Low: z, High: z + 1}}
					if !cell.Overlaps(cuts[0]) && !cell.Overlaps(cuts[1]) && !cell.Overlaps(cuts[2]) {
						want++
					}
				}
			}
		}
		if sum != want {
			t.Fatalf("%v less %v leaves %d, want %d", b, cuts, sum, want)
		}
	}
}

// The wood of a board with a groove along it and one across, by hand.
func TestWood(t *testing.T) {
	b := trial.New()
	b.Part("board", trial.Front, 1000, 3000, 0, 100, 0, 600)
	b.Slot("board", "groove", piece.Groove, piece.FaceLow, piece.AlongLength, 0, 2000, 100, 140, 50, 0)
	b.Slot("board", "notch", piece.Notch, piece.EdgeHigh, piece.AlongThickness, 0, 100, 500, 700, 60, 0)
	x := bodies.Of(&analysis.Context{Piece: &b.Piece, Ledger: b.Ledger})
	p := x.Part("board")
	var mm3 float64
	for _, w := range x.WoodOf(p) {
		mm3 += w[0].Size().Millimetres() * w[1].Size().Millimetres() * w[2].Size().Millimetres()
	}
	if want := 200.*10*60 - 200*4*5 - 20*6*10; mm3 < want-1e-6 || mm3 > want+1e-6 {
		t.Errorf("wood %g, want %g", mm3, want)
	}
	// FaceLow of a front is behind: its thickness grows to the front.
	air := x.Without([]bodies.Box{{{Low: 110 * unit.Millimetre, High: 120 * unit.Millimetre}, {Low: 5 * unit.Millimetre, High: 10 * unit.Millimetre}, {Low: 9 * unit.Millimetre, High: 15 * unit.Millimetre}}}, p)
	if len(air) != 1 || air[0][2] != (bodies.Span{Low: 10 * unit.Millimetre, High: 14 * unit.Millimetre}) {
		t.Errorf("air %v", air)
	}
	axis, span := bodies.Place(p, piece.AlongThickness, bodies.Span{Low: 0, High: unit.Millimetre})
	if axis != piece.Back || span != (bodies.Span{Low: 9 * unit.Millimetre, High: 10 * unit.Millimetre}) {
		t.Errorf("placed %v %v", axis, span)
	}
}

// TestMoves: by fit, by being inside, by the family's name and number.
func TestMoves(t *testing.T) {
	b := trial.Chest()
	cuts, _, _ := joinery.Lower(&b.Piece, b.Ledger)
	c := &analysis.Context{Piece: &b.Piece, Cuts: cuts, Ledger: b.Ledger}
	m := bodies.Of(c).Moves()
	if len(m) != 2 || m[1].Fit != nil || m[1].Space == nil || m[1].Space.Address != "case.opening[2]" || len(m[1].Parts) != 6 {
		t.Fatalf("%+v", m)
	}
	for i := range b.Piece.Groups {
		b.Piece.Groups[i].Inside = ""
	}
	if m := bodies.Of(c).Moves(); len(m) != 0 {
		t.Errorf("without fits %d groups move", len(m))
	}
	b.Piece.Fits = []piece.Fit{{Address: "fit.drawer", Moves: "drawer", Inside: "case.opening"}}
	m = bodies.Of(c).Moves()
	if len(m) != 2 || m[0].Fit == nil || m[1].Space == nil || m[1].Space.Address != "case.opening[2]" {
		t.Errorf("%+v", m)
	}
	if e := m[0].Extent; e[piece.Back].Size() != unit.MM(380) || e[piece.Right].Size() != unit.MM(200) {
		t.Errorf("extent %v", e)
	}
}
