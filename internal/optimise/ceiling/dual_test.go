package ceiling

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/work"
)

// sawnUp cuts a rectangle at random until its pieces are small enough or it has had enough
// cuts: what comes of it lies on one sheet.
func sawnUp(r *rand.Rand, x, y int64, cuts int) [][2]int64 {
	if cuts > 0 && (x > 1 || y > 1) {
		if x > 1 && (y == 1 || r.IntN(2) == 0) {
			at := 1 + r.Int64N(x-1)
			return append(sawnUp(r, at, y, cuts-1), sawnUp(r, x-at, y, cuts-1)...)
		}
		if y > 1 {
			at := 1 + r.Int64N(y-1)
			return append(sawnUp(r, x, at, cuts-1), sawnUp(r, x, y-at, cuts-1)...)
		}
	}
	return [][2]int64{{x, y}}
}

// TestSheetsAllowsWhatWasSawn: n sheets sawn up need no more than n, and, as nothing of them
// was lost, no fewer. The pieces may be smaller than what was sawn off, and may be turned.
func TestSheetsAllowsWhatWasSawn(t *testing.T) {
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 7))
		x, y, n := 2+r.Int64N(60), 2+r.Int64N(60), 1+r.IntN(5)
		var pieces []Piece
		var demand []int
		shrunk := r.IntN(2) == 0
		for range n {
			for _, s := range sawnUp(r, x, y, 1+r.IntN(4)) {
				k := len(demand)
				demand = append(demand, 1)
				if shrunk {
					s = [2]int64{1 + r.Int64N(s[0]), 1 + r.Int64N(s[1])}
				}
				pieces = append(pieces, Piece{Kind: k, X: s[0], Y: s[1]})
				if r.IntN(4) == 0 {
					pieces = append(pieces, Piece{Kind: k, X: s[1], Y: s[0]})
				}
			}
		}
		got := Sheets(x, y, pieces, demand, work.New(context.Background(), math.MaxInt64))
		if got > int64(n) || !shrunk && got < int64(n) {
			t.Errorf("seed %d: %d sheets, sawn out of %d (shrunk: %v)", seed, got, n, shrunk)
		}
		if early := Sheets(x, y, pieces, demand, work.New(context.Background(), r.Int64N(2000))); early > got {
			t.Errorf("seed %d: %d with little work, %d with enough", seed, early, got)
		}
	}
}

// TestSheetsByHand: what area alone does not tell.
func TestSheetsByHand(t *testing.T) {
	for _, c := range []struct {
		what   string
		pieces []Piece
		demand []int
		want   int64
	}{
		{"three pieces over half of both sides", []Piece{{Kind: 0, X: 51, Y: 51}}, []int{3}, 3},
		{"five pieces over a third of both sides, four to a sheet", []Piece{{Kind: 0, X: 34, Y: 34}}, []int{5}, 2},
		{"long ones that lie one above another", []Piece{{Kind: 0, X: 60, Y: 34}}, []int{3}, 2},
		{"nothing", nil, nil, 0},
	} {
		if got := Sheets(100, 100, c.pieces, c.demand, work.New(context.Background(), math.MaxInt64)); got != c.want {
			t.Errorf("%s: %d, by hand %d", c.what, got, c.want)
		}
	}
}

// TestPointsLoseNothing: every sum of sides within the axis still fits when each is put at the
// point below what is before it, so that points hold as many as units do.
func TestPointsLoseNothing(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 9))
		size := 5 + r.Int64N(80)
		var pieces []Piece
		var left []int
		for k := range 1 + r.IntN(4) {
			pieces, left = append(pieces, Piece{Kind: k, X: 1 + r.Int64N(size), Y: 1}), append(left, 1+r.IntN(4))
		}
		p := XPoints(size, pieces, left)
		// The most pieces side by side, by unit and by point, in any numbers.
		most := make([]int, size+1)
		for x := int64(1); x <= size; x++ {
			for _, l := range pieces {
				if l.X <= x {
					most[x] = max(most[x], most[x-l.X]+1)
				}
			}
		}
		at := make([]int, len(p.At))
		for i, x := range p.At {
			for _, l := range pieces {
				if l.X <= x {
					at[i] = max(at[i], at[p.Below(x-l.X)]+1)
				}
			}
		}
		limited := 0
		for k, l := range left {
			limited = max(limited, min(l, int(size/pieces[k].X)))
		}
		if got := at[len(at)-1]; got > most[size] || got < limited {
			t.Errorf("seed %d: %d pieces by points, %d by units, %d of one kind", seed, got, most[size], limited)
		}
		for s := int64(0); s <= size; s++ {
			if b, a := p.Below(s), p.Above(s); p.At[b] > s || a < len(p.At) && (p.At[a] < s || a-b > 1) {
				t.Errorf("seed %d: below %d lies %d, above it point %d", seed, s, p.At[b], a)
			}
		}
	}
}
