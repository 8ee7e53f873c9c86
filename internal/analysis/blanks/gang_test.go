package blanks_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/blanks"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// gangs prints blanks: "length: parts".
func gangs(all []plan.Workpiece) []string {
	var out []string
	for _, w := range all {
		if w.Kind == plan.BlankPiece || w.Kind == plan.PanelPiece {
			out = append(out, fmt.Sprintf("%d: %v", tenths(w.Length), w.Parts))
		}
	}
	return out
}

// TestGangs: short parts of one profile share a blank: 2 ends of 6, and 3 of kerf
// between two parts.
func TestGangs(t *testing.T) {
	for _, c := range []struct {
		name string
		make func(b *bench)
		want string
	}{
		{"four share one", func(b *bench) { b.row("A1", 4, 1000, 400, 180) }, "[4210: [A1[1] A1[2] A1[3] A1[4]]]"},
		{"one alone is kept long", func(b *bench) { b.row("A1", 1, 1000, 400, 180) }, "[3050: [A1[1]]]"},
		{"two that are too short together are kept long", func(b *bench) { b.row("A1", 2, 1000, 400, 180) }, "[3050: [A1[1] A1[2]]]"},
		{"no more than the gang length: 3 × 280 + 2 × 3 + 12 = 858", func(b *bench) { b.row("A1", 4, 2800, 400, 180) }, "[8580: [A1[1] A1[2] A1[3]] 3050: [A1[4]]]"},
		{"or than the board gives", func(b *bench) { b.in.Stock[0].Length = unit.MM(620); b.row("A1", 3, 2800, 400, 180) }, "[5750: [A1[1] A1[2]] 3050: [A1[3]]]"},
		{"two rows of one profile share", func(b *bench) { b.row("A1", 2, 1000, 400, 180); b.row("B1", 1, 1500, 400, 180) }, "[3680: [A1[1] A1[2] B1[1]]]"},
		{"another width does not", func(b *bench) { b.row("A1", 2, 1000, 400, 180); b.row("B1", 1, 1000, 410, 180) }, "[3050: [A1[1] A1[2]] 3050: [B1[1]]]"},
		{"another stage does not", func(b *bench) { b.row("A1", 2, 1000, 400, 180); b.row("B1", 1, 1000, 400, 180).Stage = "2" }, "[3050: [A1[1] A1[2]] 3050: [B1[1]]]"},
		{"what has a row of channels keeps a blank of its own", func(b *bench) { b.row("A1", 2, 1000, 400, 180); b.channels(2, 100, 200, 80) }, "[3050: [A1[1]] 3050: [A1[2]]]"},
		{"parts that are long enough do not share", func(b *bench) { b.row("A1", 2, 3000, 400, 180) }, "[3120: [A1[1]] 3120: [A1[2]]]"},
		{"wider than a board and short: glued up long, cut across afterwards", func(b *bench) { b.row("A1", 3, 1500, 2500, 180) }, "[4680: [A1[1] A1[2] A1[3]]]"},
	} {
		b := newBench()
		c.make(b)
		out, diags := b.derive(t)
		if got := fmt.Sprint(gangs(out)); got != c.want || len(diags) > 0 {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
}

// A panel for a gang is glued up from strips as long as the gang.
func TestGangPanel(t *testing.T) {
	b := newBench()
	b.row("A1", 3, 1500, 2500, 180)
	out, _ := b.derive(t)
	panel := find(out, plan.PanelPiece)[0]
	if strips := find(out, plan.StripPiece); len(strips) != 2 || tenths(strips[0].Length) != 4680 || keys(panel.Why) != "[blanks.ganged blanks.glued-up]" {
		t.Errorf("%d strips, %s", len(strips), keys(panel.Why))
	}
}

// A part of a gang that serves several rows names it in each row.
func TestGangServesSeveralRows(t *testing.T) {
	b := newBench()
	b.row("A1", 1, 1000, 400, 180)
	b.row("B1", 2, 1500, 400, 180)
	out, _ := b.derive(t)
	for _, p := range find(out, plan.PartPiece) {
		if fmt.Sprint(p.From) != "[blank.A1.1]" {
			t.Errorf("%s is made from %v", p.ID, p.From)
		}
	}
}

// TestGangLaws, over random short parts: every part in one blank; a blank with
// several is as long as its parts, the kerfs between them and both ends, or as
// long as the machines want; none is longer than the gang length allows.
func TestGangLaws(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 6))
		b := newBench()
		lengths := map[address.Address]unit.Length{}
		for i := range 1 + r.IntN(5) {
			row := b.row(fmt.Sprintf("A%d", i+1), 1+r.IntN(6), 100+r.Int64N(3500), []int64{400, 500, 2500}[r.IntN(3)], 180)
			for _, m := range row.Members {
				lengths[m] = row.Length.Nm
			}
		}
		out, diags := blanks.Derive(b.in)
		for _, f := range b.laws(out, diags) {
			t.Errorf("seed %d: %s", seed, f)
		}
		for _, w := range append(find(out, plan.BlankPiece), find(out, plan.PanelPiece)...) {
			want := 2*b.in.Allowances.End.Nm - b.in.Allowances.Kerf.Nm
			for _, p := range w.Parts {
				want += lengths[p] + b.in.Allowances.Kerf.Nm
			}
			if want = max(want, unit.MM(305)); w.Length.Nm != want {
				t.Errorf("seed %d: %s of %v is %v long, want %v", seed, w.ID, w.Parts, w.Length.Nm, want)
			}
			if len(w.Parts) > 1 && w.Length.Nm > b.in.Allowances.Gang {
				t.Errorf("seed %d: a gang of %v", seed, w.Length.Nm)
			}
		}
	}
}

func BenchmarkDerive(b *testing.B) {
	for _, n := range []int{30, 300, 3000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			x := newBench()
			x.in.Stock[0].Have = n
			for i := range n / 10 {
				x.row(fmt.Sprintf("A%d", i+1), 4, 4000+int64(i), 900, 180)
				x.row(fmt.Sprintf("B%d", i+1), 4, 1000+int64(i), 400, 180)
				x.row(fmt.Sprintf("C%d", i+1), 2, 5000+int64(i), 3000, 180)
				x.channels(12, 120, 250, 120)
			}
			b.ReportAllocs()
			for b.Loop() {
				blanks.Derive(x.in)
			}
		})
	}
}
