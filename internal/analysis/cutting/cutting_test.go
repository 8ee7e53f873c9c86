package cutting_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/blanks"
	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/cutting"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/stock"
	"scantling/internal/unit"
)

// used prints what is used: "id: rack + bought".
func used(res cutting.Result) string {
	var out []string
	for _, u := range res.Used {
		out = append(out, fmt.Sprintf("%s: %d + %d", u.Stock.ID, u.Rack, u.Buy))
	}
	return strings.Join(out, ", ")
}

func TestDecide(t *testing.T) {
	for _, c := range []struct {
		name string
		make func(b *bench)
		used string
	}{
		{"one board", func(b *bench) { b.board("A", 2400, 165, 4, 100); b.pieces("A", "a", 2, 1000, 150) }, "A: 1 + 0"},
		{"a hair too long for one", func(b *bench) { b.board("A", 2400, 165, 4, 100); b.pieces("A", "a", 2, 1189, 150) }, "A: 2 + 0"},
		{"just fits: 2 × 1188 + 3 + 20 = 2399", func(b *bench) { b.board("A", 2400, 165, 4, 100); b.pieces("A", "a", 2, 1188, 150) }, "A: 1 + 0"},
		{"the rack, then what must be bought", func(b *bench) { b.board("A", 2400, 165, 1, 100); b.pieces("A", "a", 3, 2000, 150) }, "A: 1 + 2"},
		{"eleven in the rack before one bought", func(b *bench) { b.board("A", 1000, 165, 11, 100); b.pieces("A", "a", 11, 900, 150) }, "A: 11 + 0"},
		{"nothing in the rack and no price", func(b *bench) { b.board("A", 2400, 165, 0, 0); b.pieces("A", "a", 1, 2000, 150) }, "A: 0 + 1"},
		{"stock that nobody wants", func(b *bench) {
			b.board("A", 2400, 165, 1, 100)
			b.board("B", 2400, 165, 1, 100)
			b.pieces("B", "a", 1, 2000, 150)
		}, "B: 1 + 0"},
		{"a record rack, 8 pieces of 330 on two strips of a sheet", func(b *bench) {
			b.sheet("ply", 2440, 1220, 1)
			b.pieces("ply", "shelf", 3, 862, 330)
			b.pieces("ply", "side", 2, 713, 330)
			b.pieces("ply", "upright", 2, 341, 330)
		}, "ply: 1 + 0"},
	} {
		b := newBench()
		c.make(b)
		res, diags := b.decide(t)
		if got := used(res); got != c.used || len(diags) > 0 {
			t.Errorf("%s: %s, want %s (%v)", c.name, got, c.used, diags)
		}
	}
}

// TestDefects: a board with a knot in its middle gives two of 1000 beside it but not
// one of 2000 across it, and the waste says how much of it is knot. A knot at one
// edge leaves the other edge to long narrow pieces. Boards that are bought are
// taken as sound.
func TestDefects(t *testing.T) {
	for _, c := range []struct {
		name             string
		near, far        int64
		n, length, width int64
		used             string
	}{
		{"two beside it", 0, 165, 2, 1000, 150, "A: 1 + 0"},
		{"none across it", 0, 165, 1, 2000, 150, "A: 0 + 1"},
		{"narrow ones past it", 0, 60, 1, 2000, 90, "A: 1 + 0"},
		{"too wide to pass it", 0, 60, 1, 2000, 110, "A: 0 + 1"},
	} {
		b := newBench()
		s := b.board("A", 2400, 165, 1, 100)
		s.Defects = []cutting.Defect{{Kind: "knot", From: b.fig(1150), To: b.fig(1250), Near: b.fig(c.near), Far: b.fig(c.far)}}
		b.pieces("A", "a", int(c.n), c.length, c.width)
		res, diags := b.decide(t)
		if got := used(res); got != c.used || len(diags) > 0 {
			t.Errorf("%s: %s, want %s (%v)", c.name, got, c.used, diags)
			continue
		}
		d := res.Diagrams[0]
		w := d.Waste
		sum := w.Parts + w.Kerf + w.Trim + w.Defects + w.Remnant + w.Rest
		if sum < w.Whole-0.01 || sum > w.Whole+0.01 {
			t.Errorf("%s: terms %g of %g", c.name, sum, w.Whole)
		}
		if rack := strings.HasSuffix(c.used, "+ 0"); rack != (len(d.Defects) == 1) || w.Defects > 0 && !rack {
			t.Errorf("%s: %d defects, %g mm² of the waste", c.name, len(d.Defects), w.Defects)
		}
		for _, p := range d.Pieces {
			for _, x := range d.Defects {
				a, c := boxOf(p.Rect), boxOf(x.Rect)
				if a.along < c.along+c.length && c.along < a.along+a.length && a.across < c.across+c.width && c.across < a.across+a.width {
					t.Errorf("%s lies on the knot", p.Mark)
				}
			}
		}
	}
}

// TestTogether: four fronts of 304 × 114 stay together in order on one board: 4 × 304
// and 3 kerfs of 3 are 1225, and the boards give 1280 and 1200. Nothing else would
// keep the two on the longer board apart. Where no board is long enough they are
// cut apart, and that is told.
func TestTogether(t *testing.T) {
	for _, c := range []struct {
		name   string
		length int64
		told   int
	}{{"on the longer board", 1300, 0}, {"too long for any", 1240, 1}} {
		b := newBench()
		b.board("A", 1220, 165, 1, 100).Kind = "k"
		b.board("B", c.length, 165, 2, 100).Kind = "k"
		b.pieces("B", "front", 4, 304, 114)
		var row piece.Together
		for i := range 4 {
			part := address.Address(fmt.Sprintf("drawer[%d].front", i+1))
			b.in.Workpieces[i].Parts = []address.Address{part}
			row.Parts = append(row.Parts, part)
		}
		b.pieces("B", "other", 2, 400, 100)
		b.in.Together = []piece.Together{row}
		res, diags := b.decide(t)
		if len(diags) != c.told || c.told > 0 && diags[0].Code != cutting.CodeNotTogether {
			t.Errorf("%s: told %v", c.name, diags)
		}
		if c.told > 0 {
			continue
		}
		at := map[string][2]unit.Length{}
		board := map[string]string{}
		for _, d := range res.Diagrams {
			for _, p := range d.Pieces {
				at[p.Workpiece], board[p.Workpiece] = [2]unit.Length{p.Rect.Along.Nm, p.Rect.Across.Nm}, d.ID
			}
		}
		for i := range 3 {
			a, next := b.in.Workpieces[i].ID, b.in.Workpieces[i+1].ID
			if board[a] != board[next] || at[next][0] != at[a][0]+unit.MM(304+3) || at[next][1] != at[a][1] {
				t.Errorf("%s: %s at %v on %s, %s at %v on %s", c.name, a, at[a], board[a], next, at[next], board[next])
			}
		}
	}
}

// TestRecordRack: three shelves of 862, two sides of 712.8 and two uprights of 341,
// all 330 wide, lie in two strips of a sheet of 2440 × 1220 with a kerf of 3 and 5
// off every side, and more than half of the sheet is kept (an offcut of about 546 by
// 2440). Common practice, no source.
func TestRecordRack(t *testing.T) {
	b := newBench()
	b.sheet("ply", 2440, 1220, 1)
	b.pieces("ply", "shelf", 3, 862, 330)
	b.pieces("ply", "side", 2, 713, 330)
	b.pieces("ply", "upright", 2, 341, 330)
	res, _ := b.decide(t)
	across := map[unit.Length]bool{}
	for _, p := range res.Diagrams[0].Pieces {
		across[p.Rect.Across.Nm] = true
	}
	kept := unit.Length(0)
	for _, l := range res.Diagrams[0].Left {
		if l.Keep {
			kept = max(kept, l.Rect.Width.Nm)
		}
	}
	if len(across) != 2 || kept < unit.MM(540) {
		t.Errorf("%d strips, %v kept", len(across), kept)
	}
}

// TestStandIn: other stock of the same kind stands in where the rack holds too
// little: first what is in the rack, then what is cheap.
func TestStandIn(t *testing.T) {
	for _, c := range []struct {
		name  string
		kinds [2]string
		have  [2]int
		price [2]int64
		used  string
	}{
		{"enough of its own", [2]string{"k", "k"}, [2]int{3, 5}, [2]int64{100, 10}, "A: 3 + 0"},
		{"one short, another in the rack", [2]string{"k", "k"}, [2]int{2, 5}, [2]int64{100, 100}, "A: 2 + 0, B: 1 + 0"},
		{"one short, and the other is cheaper to buy", [2]string{"k", "k"}, [2]int{2, 0}, [2]int64{100, 70}, "A: 2 + 0, B: 0 + 1"},
		{"one short, and its own is cheaper to buy", [2]string{"k", "k"}, [2]int{2, 0}, [2]int64{70, 100}, "A: 2 + 1"},
		{"another kind stands not in", [2]string{"k", "m"}, [2]int{2, 5}, [2]int64{100, 100}, "A: 2 + 1"},
		{"no kind stands not in", [2]string{"", ""}, [2]int{2, 5}, [2]int64{100, 100}, "A: 2 + 1"},
	} {
		b := newBench()
		for i, id := range []string{"A", "B"} {
			b.board(id, []int64{2400, 2300}[i], 165, c.have[i], c.price[i]).Kind = c.kinds[i]
		}
		b.pieces("A", "a", 3, 2000, 150)
		res, diags := b.decide(t)
		if got := used(res); got != c.used || len(diags) > 0 {
			t.Errorf("%s: %s, want %s (%v)", c.name, got, c.used, diags)
		}
	}
}

// TestTooLarge: what does not lie on its stock is told with its figures, and the
// rest is cut.
func TestTooLarge(t *testing.T) {
	b := newBench()
	b.board("A", 2400, 165, 4, 100)
	b.pieces("A", "long", 1, 2381, 150)
	b.pieces("A", "wide", 1, 2000, 162)
	b.pieces("A", "good", 1, 2380, 161)
	res, diags := b.decide(t)
	if len(diags) != 2 || len(res.Diagrams) != 1 || res.Diagrams[0].Pieces[0].Mark != "good" {
		t.Fatalf("%v %+v", diags, res.Diagrams)
	}
	for i, want := range []map[string]int64{{"length": 2381, "longest": 2380}, {"width": 162, "widest": 161}} {
		for name, mm := range want {
			if a, ok := diags[i].Text.Arg(name); !ok || a.Nm != unit.MM(mm) || diags[i].Code != cutting.CodeNotCut {
				t.Errorf("%s of diagnostic %d is %v", name, i+1, a.Nm)
			}
		}
	}
}

// TestGrain: on a sheet with grain every piece lies along it, on one without they
// may turn.
func TestGrain(t *testing.T) {
	for _, turns := range []bool{false, true} {
		b := newBench()
		b.sheet("mdf", 1210, 610, 3).Turns = turns
		b.pieces("mdf", "a", 3, 560, 390) // 3 × 390 + 2 × 3 = 1176 ≤ 1200: one sheet where they turn
		res, _ := b.decide(t)
		want := map[bool]string{false: "mdf: 2 + 0", true: "mdf: 1 + 0"}[turns]
		if used(res) != want {
			t.Errorf("turns %v: %s, want %s", turns, used(res), want)
		}
	}
}

// TestTrims: a board is cut off at both ends, a sheet at all sides; the cuts are
// the first, and what is trimmed is as much as the shop says, the kerf included.
func TestTrims(t *testing.T) {
	b := newBench()
	b.board("A", 2400, 165, 4, 100)
	b.sheet("ply", 1220, 610, 1)
	b.board("rough", 2400, 165, 4, 100).End = b.fig(0)
	for _, s := range []string{"A", "ply", "rough"} {
		b.pieces(s, s, 1, 500, 100)
	}
	res, _ := b.decide(t)
	for i, want := range []string{"trim 7, trim 2380, ", "trim edge 2, trim edge 600, trim 2, trim 1210, ", ""} {
		got := ""
		for _, c := range res.Diagrams[i].Cuts {
			if strings.HasPrefix(c.Kind, "trim") {
				got += fmt.Sprintf("%s %d, ", c.Kind, c.At.Nm/unit.Millimetre)
			}
		}
		if got != want {
			t.Errorf("%s: %q, want %q", res.Diagrams[i].ID, got, want)
		}
	}
	if w := res.Diagrams[1].Waste.Trim; w != 1220*610-1210*600 {
		t.Errorf("%f trimmed", w)
	}
}

// TestAlike: boards that are cut alike and give the same marks are one diagram
// with a count, and every workpiece stands in it.
func TestAlike(t *testing.T) {
	b := newBench()
	b.board("A", 2400, 165, 9, 100)
	b.pieces("A", "a", 6, 1150, 150)
	b.pieces("A", "b", 1, 2300, 150)
	res, _ := b.decide(t)
	if len(res.Diagrams) != 2 {
		t.Fatalf("%d diagrams", len(res.Diagrams))
	}
	counts := map[int]string{}
	for _, d := range res.Diagrams {
		counts[d.Count] = d.Pieces[0].Mark
	}
	if counts[3] != "a" || counts[1] != "b" || len(res.From) != 7 || res.Diagrams[0].ID != "A #1" || res.Diagrams[1].ID != "A #2" {
		t.Errorf("%v %v", counts, res.From)
	}
	// Another mark of the same size is another diagram.
	b = newBench()
	b.board("A", 2400, 165, 9, 100)
	b.pieces("A", "a", 2, 1150, 150)
	b.pieces("A", "b", 2, 1150, 150)
	if res, _ = b.decide(t); len(res.Diagrams) != 2 {
		t.Errorf("%d diagrams", len(res.Diagrams))
	}
}

// TestLongFirst: along a board the long pieces come off before the short ones
// (common practice: a long piece that goes wrong still gives a short one), unless
// what is then in hand is too short for the saw.
func TestLongFirst(t *testing.T) {
	b := newBench()
	b.board("A", 2400, 165, 9, 100)
	b.in.FeedLong = 0
	for _, l := range []int64{400, 900, 250, 600} {
		b.pieces("A", fmt.Sprint(l), 1, l, 150)
	}
	res, _ := b.decide(t)
	var got []string
	for _, p := range res.Diagrams[0].Pieces {
		got = append(got, p.Mark)
	}
	if fmt.Sprint(got) != "[900 600 400 250]" {
		t.Errorf("%v", got)
	}
}

// TestFigures: a size on a diagram is the workpiece's own figure, and the sum
// behind a place leads to the stock, the trims, the sizes and the kerf.
func TestFigures(t *testing.T) {
	b := newBench()
	b.board("A", 2400, 165, 1, 100)
	b.pieces("A", "a", 1, 900, 150)
	b.pieces("A", "b", 1, 800, 150)
	res, _ := b.decide(t)
	d := res.Diagrams[0]
	for i, p := range d.Pieces {
		if p.Rect.Length != b.in.Workpieces[i].Length || p.Rect.Width != b.in.Workpieces[i].Width {
			t.Errorf("%s has figures of its own", p.Workpiece)
		}
	}
	leaves := map[ledger.ID]bool{}
	for _, e := range b.in.Ledger.Explain(d.Pieces[1].Rect.Along.Entry) {
		if e.Op == ledger.OpGiven {
			leaves[e.ID] = true
		}
	}
	for what, f := range map[string]ledger.Figure{"the trim": b.in.Stock[0].End, "the first piece": b.in.Workpieces[0].Length, "the kerf": b.in.Kerf} {
		if !leaves[f.Entry] {
			t.Errorf("the second piece's place does not rest on %s", what)
		}
	}
	if len(leaves) != 3 || d.Pieces[1].Rect.Along.Nm != unit.MM(10+900+3) {
		t.Errorf("%d leaves, at %v", len(leaves), d.Pieces[1].Rect.Along.Nm)
	}
}

// TestBound: an answer that is proved says so.
func TestBound(t *testing.T) {
	b := newBench()
	b.board("A", 2400, 165, 4, 100)
	b.pieces("A", "a", 2, 2000, 150)
	res, _ := b.decide(t)
	for _, d := range res.Diagrams {
		if n, _ := d.Bound.Arg("boards"); d.Bound.Key != "cutting.proved" || n.N != 2 {
			t.Errorf("%+v", d.Bound)
		}
	}
}

// random is a question with boards and a sheet, from a seed.
func random(seed uint64) *bench {
	r := rand.New(rand.NewPCG(seed, 7))
	b := newBench()
	b.in.Kerf = b.in.Ledger.Leaf("kerf", unit.MM(r.Int64N(5)), ledger.HouseRule, "")
	b.in.FeedLong = unit.MM(r.Int64N(2) * 150)
	for i := range 1 + r.IntN(2) {
		s := b.board(fmt.Sprintf("B%d", i+1), 1200+r.Int64N(1400), 120+r.Int64N(80), r.IntN(4), r.Int64N(3)*50)
		s.Kind = []string{"", "k"}[r.IntN(2)]
		if r.IntN(3) == 0 {
			s.End, s.Edge = b.fig(0), b.fig(0)
		}
	}
	s := b.sheet("ply", 1220, 610, r.IntN(2))
	s.Turns = r.IntN(2) == 0
	for i := range 2 + r.IntN(8) {
		id := b.in.Stock[r.IntN(len(b.in.Stock))].ID
		long, wide := 150+r.Int64N(900), 30+r.Int64N(80)
		if id == "ply" {
			wide = 60 + r.Int64N(500)
		}
		b.pieces(id, fmt.Sprintf("m%d", i%4), 1+r.IntN(5), long, wide)
	}
	return b
}

// TestLaws, over random questions: every diagram can be sawn as printed, all of it
// is accounted for, every workpiece is cut once, the rack goes before buying, and
// the same question has the same answer.
func TestLaws(t *testing.T) {
	merged, turned := 0, 0
	for seed := range uint64(60) {
		b := random(seed)
		res, diags := cutting.Decide(t.Context(), b.in)
		for _, f := range recheck(b.in, res, diags) {
			t.Errorf("seed %d: %s", seed, f)
		}
		if len(diags) > 0 {
			t.Errorf("seed %d: %v", seed, diags)
		}
		for _, d := range res.Diagrams {
			if d.Count > 1 {
				merged++
			}
			for _, p := range d.Pieces {
				if p.Turned {
					turned++
				}
			}
		}
		again, _ := cutting.Decide(t.Context(), random(seed).in)
		if fmt.Sprint(res.Diagrams) != fmt.Sprint(again.Diagrams) {
			t.Errorf("seed %d: another answer", seed)
		}
	}
	if merged == 0 || turned == 0 {
		t.Errorf("%d diagrams of several boards, %d pieces turned: the law is not tried", merged, turned)
	}
}

// TestRecheckNotices: the checker above sees what is wrong.
func TestRecheckNotices(t *testing.T) {
	for name, spoil := range map[string]func(d *plan.Diagram){
		"a piece moved":        func(d *plan.Diagram) { d.Pieces[0].Rect.Along.Nm += unit.Millimetre },
		"a piece too wide":     func(d *plan.Diagram) { d.Pieces[0].Rect.Width.Nm += unit.Millimetre },
		"a piece left out":     func(d *plan.Diagram) { d.Pieces = d.Pieces[1:] },
		"a piece twice":        func(d *plan.Diagram) { d.Pieces = append(d.Pieces, d.Pieces[0]) },
		"a cut left out":       func(d *plan.Diagram) { d.Cuts = d.Cuts[1:] },
		"a cut elsewhere":      func(d *plan.Diagram) { d.Cuts[2].At.Nm += unit.Millimetre },
		"cuts out of order":    func(d *plan.Diagram) { d.Cuts[2], d.Cuts[3] = d.Cuts[3], d.Cuts[2] },
		"a rest left out":      func(d *plan.Diagram) { d.Left = d.Left[1:] },
		"a rest kept":          func(d *plan.Diagram) { d.Left[0].Keep = !d.Left[0].Keep },
		"waste not counted":    func(d *plan.Diagram) { d.Waste.Rest += 5 },
		"kerf called rest":     func(d *plan.Diagram) { d.Waste.Rest += 5; d.Waste.Kerf -= 5 },
		"another count":        func(d *plan.Diagram) { d.Count++ },
		"a piece that is none": func(d *plan.Diagram) { d.Pieces[0].Workpiece = "x" },
	} {
		b := newBench()
		b.board("A", 2400, 165, 4, 100)
		b.pieces("A", "a", 2, 1000, 100)
		b.pieces("A", "b", 1, 250, 100)
		res, diags := b.decide(t)
		spoil(&res.Diagrams[0])
		if len(recheck(b.in, res, diags)) == 0 {
			t.Errorf("%s: not noticed", name)
		}
	}
}

// TestShop: the rack as it can be cut.
func TestShop(t *testing.T) {
	s := checktest.Shop()
	s.TrimEnds, s.TrimEdges = unit.MM(10), unit.MM(1) // less than a kerf
	s.Sheets[0].Stock.Grain, s.Sheets[1].Stock.Grain = stock.AlongWidth, stock.NoGrain
	s.Boards[0].Stock.SoldThickness = unit.MM(32)
	other := s.Boards[0]
	other.ID, other.Stock.Length = "cherry 27 short", unit.MM(1500)
	s.Boards = append(s.Boards, other)
	got := cutting.Of(s, blanks.JointEdge, ledger.New(nil))
	if b := got[0]; b.End.Nm != unit.MM(10) || b.Edge.Nm != blanks.JointEdge || b.Sold[2] != unit.MM(32) || b.Kind == "" || b.Kind != got[1].Kind || b.Price != 3800 {
		t.Errorf("%+v", b)
	}
	if p := got[2]; p.Length.Nm != unit.MM(610) || p.End.Nm != unit.MM(3) || p.Turns || p.Kind == got[3].Kind {
		t.Errorf("%+v", p)
	}
	if p := got[3]; !p.Turns {
		t.Errorf("%+v", p)
	}
}

func BenchmarkDecide(b *testing.B) {
	for _, n := range []int{30, 300, 3000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			x := newBench()
			x.in.Budget.Work = 4_000_000
			x.board("A", 2400, 165, n/10, 100)
			x.sheet("ply", 1220, 610, n/10)
			for i := range n / 10 {
				x.pieces("A", fmt.Sprintf("a%d", i), 4, 400+int64(i%40)*10, 60)
				x.pieces("A", fmt.Sprintf("b%d", i), 4, 900, 90)
				x.pieces("ply", fmt.Sprintf("c%d", i), 2, 370, 180+int64(i%5)*10)
			}
			b.ReportAllocs()
			for b.Loop() {
				cutting.Decide(b.Context(), x.in)
			}
		})
	}
}
