package corner

import (
	"context"
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

func random(seed uint64) Question {
	r := rand.New(rand.NewPCG(seed, 3))
	q := Question{X: 60 + r.Int64N(60), Y: 40 + r.Int64N(60), Width: 50, Most: 5}
	for k := range 2 + r.IntN(8) {
		l := ceiling.Piece{Kind: k, X: 5 + r.Int64N(50), Y: 5 + r.Int64N(35)}
		q.Pieces = append(q.Pieces, l)
		q.Left = append(q.Left, 1+r.IntN(3))
		q.Value = append(q.Value, (l.X*l.Y*(80+r.Int64N(40)))<<20)
		if r.IntN(3) == 0 {
			q.Pieces = append(q.Pieces, ceiling.Piece{Kind: k, Turned: true, X: l.Y, Y: l.X})
		}
	}
	return q
}

// fits checks that a parcel is cut in two within itself, and counts its pieces.
func fits(t *testing.T, p *ceiling.Parcel, used []int) {
	t.Helper()
	if p == nil {
		return
	}
	if p.Piece != nil {
		if used[p.Piece.Kind]++; p.Piece.X > p.X || p.Piece.Y > p.Y {
			t.Fatalf("a piece of %d by %d in a rectangle of %d by %d", p.Piece.X, p.Piece.Y, p.X, p.Y)
		}
	}
	near, far := p.Parts[0], p.Parts[1]
	switch p.Cut {
	case problem.Crosscut:
		if near.X != p.At || near.X+far.X > p.X || near.Y > p.Y || far.Y > p.Y || far.X < 0 {
			t.Fatalf("%d by %d is cut at x %d into %d and %d", p.X, p.Y, p.At, near.X, far.X)
		}
	case problem.Rip:
		if near.Y != p.At || near.Y+far.Y > p.Y || near.X > p.X || far.X > p.X || far.Y < 0 {
			t.Fatalf("%d by %d is cut at y %d into %d and %d", p.X, p.Y, p.At, near.Y, far.Y)
		}
	}
	fits(t, near, used)
	fits(t, far, used)
}

// TestFillings: whatever the sizes, fillings lie within the sheet, keep to the
// limits, are worth more than the floor and come in falling order; and what is
// found for any number of copies is never above the raster's ceiling, which a recursion
// that shares no code with this one works out (Beasley 1985, see there).
func TestFillings(t *testing.T) {
	some := 0
	for seed := range uint64(300) {
		q := random(seed)
		meter := work.New(context.Background(), 1e10)
		var raster ceiling.Raster
		if !raster.Build(q.X, q.Y, q.Pieces, q.Value, q.Left, meter) {
			t.Fatal("no raster")
		}
		q.Floor = raster.Top() / 10 * 8
		var f Filler
		last := raster.Top()
		for n, root := range f.Fill(q, meter) {
			some++
			used := make([]int, len(q.Left))
			fits(t, root, used)
			value := int64(0)
			for k, u := range used {
				if value += int64(u) * q.Value[k]; u > q.Left[k] {
					t.Fatalf("seed %d: %d of kind %d, %d are left", seed, u, k, q.Left[k])
				}
			}
			if value <= q.Floor || value > last {
				t.Fatalf("seed %d, filling %d: worth %d, floor %d, the one before %d", seed, n, value, q.Floor, last)
			}
			last = value
		}
	}
	if some < 300 {
		t.Errorf("only %d fillings were found of 300 questions", some)
	}
}

// TestTable: with pieces cut along their sides a rectangle is worth no more than with
// any cuts, and the pieces of the table's own filling are worth what it says.
func TestTable(t *testing.T) {
	less := 0
	for seed := range uint64(300) {
		q := random(seed)
		meter := work.New(context.Background(), 1e10)
		var raster ceiling.Raster
		var tb table
		if !raster.Build(q.X, q.Y, q.Pieces, q.Value, q.Left, meter) || !tb.frame(q, meter) || !tb.fill(q.Value, meter) {
			t.Fatal("no table")
		}
		used, sum := make([]int, len(q.Left)), int64(0)
		tb.uses(used)
		for k, n := range used {
			sum += int64(n) * (q.Value[k] >> tb.shift << tb.shift)
		}
		if sum < raster.Top()/100*95 {
			less++
		}
		if tb.top() != sum || sum > raster.Top() {
			t.Errorf("seed %d: the table says %d, its pieces are worth %d, with any cuts %d", seed, tb.top(), sum, raster.Top())
		}
	}
	if less > 10 {
		t.Errorf("%d of 300 sheets lose more than a twentieth by cutting along sides only", less)
	}
}

// TestMeter: a filler whose meter ends finds nothing more and takes nothing more.
func TestMeter(t *testing.T) {
	q := random(1)
	for limit := int64(0); limit < 100_000; limit += 997 {
		meter := work.New(context.Background(), limit)
		var f Filler
		f.Fill(q, meter)
		if meter.Used() > limit {
			t.Fatalf("%d of %d units", meter.Used(), limit)
		}
	}
}

func BenchmarkFill(b *testing.B) {
	q := random(7)
	for b.Loop() {
		var f Filler
		f.Fill(q, work.New(context.Background(), 1e10))
	}
}
