package setups

import (
	"slices"
	"testing"

	"scantling/internal/analysis/operations"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestNoTrappedCut: whatever grooves and rebates lie side by side or over each
// other on a face, no pass of a card is trapped. The test has its own picture of
// the wood: a comb of a thousand teeth across the part.
func TestNoTrappedCut(t *testing.T) {
	const seed = 11
	r := rng(seed)
	byHand, cut := 0, 0
	for round := range 300 {
		b := newBench()
		width := unit.MM(60 + r.Int64N(200))
		part := b.part("A1", unit.MM(400), width, unit.MM(20))
		depth := unit.MM(2 + r.Int64N(6))
		for range 1 + r.IntN(6) {
			near := unit.MM(r.Int64N(int64(width / unit.MM(1))))
			far := min(near+unit.MM(7+r.Int64N(30)), width)
			if far-near < unit.MM(7) {
				near = far - unit.MM(7)
			}
			b.slot(part, piece.Groove, piece.FaceHigh, piece.AlongLength, near, far, depth, 0)
		}
		res := b.decide(t)
		wood := newComb(width)
		for _, c := range res.Setups {
			closed(t, c)
			if c.Machine != "router table" {
				byHand += len(c.Placements)
				continue
			}
			for _, p := range c.Placements {
				cut += len(p.Cuts)
				if !wood.passes(c, p) {
					t.Fatalf("seed %d, round %d: trapped cut on %s: %+v", seed, round, c.ID, p)
				}
			}
		}
	}
	if cut < 200 {
		t.Errorf("only %d cuts by machine and %d by hand: the test says nothing", cut, byHand)
	}
	t.Logf("%d cuts by machine, %d by hand", cut, byHand)
}

// comb is wood across a part, tooth by tooth, and how deep each is cut.
type comb struct {
	width unit.Length
	depth []unit.Length
}

const teeth = 4000

func newComb(width unit.Length) *comb { return &comb{width, make([]unit.Length, teeth)} }

// passes runs the placement's printed settings and reports whether no pass had
// wood on the fence side only.
func (w *comb) passes(c plan.Setup, p plan.Placement) bool {
	height, _ := find(c.Settings, "height")
	ways := []piece.Side{p.Fence}
	if p.Turn {
		ways = append(ways, p.Fence.Opposite())
	}
	for _, fence := range ways {
		_, high := fence.Axis()
		for _, s := range p.Settings {
			at := s.Passes
			if len(at) == 0 {
				at = []piece.Figure{s.Figure}
			}
			for _, f := range at {
				a, b := f.Nm, f.Nm+c.CutterSize.Nm
				switch s.Word {
				case wordFenceEdge:
				case wordFenceFar:
					a, b = f.Nm-c.CutterSize.Nm, f.Nm
				default:
					continue
				}
				if high {
					a, b = w.width-b, w.width-a
				}
				if !w.pass(a, b, height.Figure.Nm, high) {
					return false
				}
			}
		}
	}
	return true
}

func (w *comb) pass(a, b, depth unit.Length, fenceHigh bool) bool {
	first := max(0, int(int64(a)*teeth/int64(w.width)))
	last := min(teeth, int((int64(b)*teeth+int64(w.width)-1)/int64(w.width)))
	stands := func(i int) bool { return i >= 0 && i < teeth && w.depth[i] < depth }
	below, above := stands(first-2), stands(last+1)
	if fenceHigh {
		below, above = above, below
	}
	for i := first; i < last; i++ {
		w.depth[i] = max(w.depth[i], depth)
	}
	return !below || above
}

// TestTrapped: the definition, by hand. A groove from 20 to 30 in 100 is there.
func TestTrapped(t *testing.T) {
	groove := []void{{20, 30, 5}}
	for _, c := range []struct {
		name        string
		voids       []void
		a, b, depth unit.Length
		want        bool
	}{
		{"in the solid", nil, 20, 30, 5, false},
		{"widened away from the fence", groove, 25, 35, 5, false},
		{"widened towards the fence", groove, 15, 25, 5, true},
		{"deepened", groove, 20, 30, 8, false},
		{"towards the fence, deeper than the groove", groove, 15, 25, 8, false},
		{"rebate at the fence", nil, 0, 10, 5, false},
		{"rebate at the far edge: work between fence and cutter", nil, 90, 100, 5, true},
		{"beyond the far edge", nil, 95, 105, 5, true},
		{"land between", groove, 31, 41, 5, false},
		{"the last of the whole width", []void{{0, 90, 5}}, 88, 100, 5, false},
	} {
		if got := trapped(c.voids, c.a, c.b, c.depth, 100); got != c.want {
			t.Errorf("%s: trapped %v", c.name, got)
		}
	}
	if got := mirrored(groove, 100); got[0] != (void{70, 80, 5}) {
		t.Errorf("mirrored %v", got)
	}
}

// TestMethods: the errors of the three ways, by hand, with a setting good to
// 0.1, a width to 0.2 and a spacer to 0.1: arithmetic, no source.
func TestMethods(t *testing.T) {
	got := Methods(7, 4, true, 100*um, 200*um, 100*um, unit.MM(1))
	want := []Choice{
		{BothEdges, 4, 0, 400 * um}, {OneEdge, 7, 0, 300 * um}, {Spacers, 1, 6, 900 * um},
	}
	if !slices.Equal(got, want) {
		t.Errorf("%+v", got)
	}
	if got := Methods(7, 4, true, 100*um, 200*um, 100*um, 350*um); got[0].Method != OneEdge {
		t.Errorf("a row that must be good to 0.35 is measured by %s", got[0].Method)
	}
	if got := Methods(7, 4, false, 500*um, 200*um, 10*um, 350*um); got[0].Error != unit.MM(1) || got[1].Error != 1200*um {
		t.Errorf("none is good enough: the least error counts, got %+v", got)
	}
	if got := Methods(3, 3, true, 500*um, 100*um, 10*um, unit.MM(1)); got[0].Method != Spacers || got[0].Error != 620*um || len(got) != 2 {
		t.Errorf("no symmetry, two spacers: %+v", got)
	}
}

// TestSides: what lies down, against the fence and ahead; turned end for end the
// other end leads. The vector product by hand: width x thickness = length.
func TestSides(t *testing.T) {
	for _, c := range []struct{ down, fence, leads piece.Side }{
		{piece.FaceLow, piece.EdgeHigh, piece.EndLow},   // as drawn: length to the east, width to the fence, fed west
		{piece.FaceLow, piece.EdgeLow, piece.EndHigh},   // turned end for end
		{piece.FaceHigh, piece.EdgeHigh, piece.EndHigh}, // turned over
		{piece.FaceHigh, piece.EdgeLow, piece.EndLow},
		{piece.FaceLow, piece.EndLow, piece.EdgeLow},
		{piece.FaceHigh, piece.EndLow, piece.EdgeHigh},
		{piece.EdgeLow, piece.FaceLow, piece.EndLow},
		{piece.FaceLow, piece.FaceHigh, ""},
	} {
		if got := operations.Leads(c.down, c.fence); got != c.leads {
			t.Errorf("%s down, %s at the fence: %q leads, want %q", c.down, c.fence, got, c.leads)
		}
		if c.leads != "" && operations.FenceFor(c.down, c.leads) != c.fence {
			t.Errorf("%s down, %s ahead: fence %q", c.down, c.leads, operations.FenceFor(c.down, c.leads))
		}
	}
}

// TestLedgerLaw: re-doing every entry's arithmetic gives its value.
func TestLedgerLaw(t *testing.T) {
	b := newBench()
	tray := b.part("A1", unit.MM(353), unit.MM(120), unit.MM(15))
	for i := range 8 {
		b.slot(tray, piece.Channel, piece.FaceHigh, piece.AlongLength, unit.MM(4+14*int64(i)), unit.MM(4+14*int64(i))+6350*um, 3175*um, 3175*um)
	}
	b.slot(tray, piece.Trough, piece.FaceHigh, piece.AlongWidth, unit.MM(150), unit.MM(190), unit.MM(7), 6350*um)
	for _, c := range b.decide(t).Setups {
		closed(t, c)
	}
	checkLedger(t, b.l)
}

func checkLedger(t *testing.T, l *ledger.Ledger) {
	t.Helper()
	for _, fault := range l.Verify() {
		t.Error(fault)
	}
}

// TestFenceStandsOnceForRowsThatShareIt: two faces of one board and a second board
// have the same housing, wider than any cutter; the fence's places are counted from
// the card's figures, and the card says so many.
func TestFenceStandsOnceForRowsThatShareIt(t *testing.T) {
	b := newBench()
	first := b.part("A1", unit.MM(600), unit.MM(300), unit.MM(20))
	second := b.part("A2", unit.MM(400), unit.MM(300), unit.MM(20))
	b.slot(first, piece.Housing, piece.FaceLow, piece.AlongWidth, unit.MM(200), unit.MM(217), unit.MM(5), 0)
	b.slot(first, piece.Housing, piece.FaceHigh, piece.AlongWidth, unit.MM(200), unit.MM(217), unit.MM(5), 0)
	// From its better end this one is at 183; at 200 only from the other.
	b.slot(second, piece.Housing, piece.FaceLow, piece.AlongWidth, unit.MM(183), unit.MM(200), unit.MM(5), 0)
	res := b.decide(t)
	if len(res.Setups) != 1 {
		t.Fatalf("%d cards, want one", len(res.Setups))
	}
	card := res.Setups[0]
	places := map[unit.Length]bool{}
	runs := 0
	for _, p := range card.Placements {
		for _, s := range p.Settings {
			for _, f := range s.Passes {
				places[f.Nm] = true
				runs++
			}
		}
	}
	if len(card.Placements) != 3 || runs <= len(places) || len(places) != runs/3 {
		t.Errorf("%d rows, %d paths at %d places of the fence: the rows do not share them", len(card.Placements), runs, len(places))
	}
	got := map[string]int64{}
	for _, a := range card.Shared.Args {
		got[a.Name] = a.N
	}
	if got["settings"] != int64(len(places)) {
		t.Errorf("the card says %v, and there are %d places", got, len(places))
	}
}
