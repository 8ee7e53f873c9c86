package coarse

import (
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/problem"
)

// cut cuts a rectangle at random, with pieces somewhat smaller than what they
// lie in, and returns it with all sizes over eight, rounded down; sizes holds
// the true ones by kind.
func cut(r *rand.Rand, x, y int64, sizes *[][2]int64) *ceiling.Parcel {
	p := &ceiling.Parcel{X: x / 8, Y: y / 8}
	switch n := r.IntN(5); {
	case n == 0 && len(*sizes) > 0:
		return nil
	case n < 3 && x > 60 && y > 60:
		if p.Cut = problem.Crosscut; r.IntN(2) == 0 {
			p.Cut = problem.Rip
			at := 20 + r.Int64N(y-40)
			p.At = at / 8
			p.Parts = [2]*ceiling.Parcel{cut(r, x, at, sizes), cut(r, x, y-at, sizes)}
			break
		}
		at := 20 + r.Int64N(x-40)
		p.At = at / 8
		p.Parts = [2]*ceiling.Parcel{cut(r, at, y, sizes), cut(r, x-at, y, sizes)}
	default:
		tx, ty := x-r.Int64N(x/3+1), y-r.Int64N(y/3+1)
		p.Piece = &ceiling.Piece{Kind: len(*sizes), X: tx / 8, Y: ty / 8}
		*sizes = append(*sizes, [2]int64{tx, ty})
	}
	return p
}

func lookUp(sizes [][2]int64) True {
	return func(l ceiling.Piece) ceiling.Piece {
		l.X, l.Y = sizes[l.Kind][0], sizes[l.Kind][1]
		return l
	}
}

// TestParcelBack lays rectangles out that were cut with true sizes: they fit the
// sheet they came from, every part lies in what it was cut from, and no piece is
// lost; on a sheet that is less than the pieces need they do not fit.
func TestParcelBack(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 31))
		x, y := 200+r.Int64N(2000), 200+r.Int64N(2000)
		var sizes [][2]int64
		p := cut(r, x, y, &sizes)
		back := lookUp(sizes).Parcel(p, x, y)
		if back == nil || back.X != x || back.Y != y {
			t.Fatalf("seed %d: does not fit: %v", seed, back)
		}
		seen := make([]int, len(sizes))
		back.Walk(func(q *ceiling.Parcel) {
			a, b := q.Parts[0], q.Parts[1]
			switch q.Cut {
			case problem.Crosscut:
				if a.X != q.At || a.X+b.X != q.X || a.Y != q.Y || b.Y != q.Y {
					t.Errorf("seed %d: %+v falls into %+v and %+v", seed, q, a, b)
				}
			case problem.Rip:
				if a.Y != q.At || a.Y+b.Y != q.Y || a.X != q.X || b.X != q.X {
					t.Errorf("seed %d: %+v falls into %+v and %+v", seed, q, a, b)
				}
			default:
				if seen[q.Piece.Kind]++; q.Piece.X > q.X || q.Piece.Y > q.Y || [2]int64{q.Piece.X, q.Piece.Y} != sizes[q.Piece.Kind] {
					t.Errorf("seed %d: %+v in %+v", seed, q.Piece, q)
				}
			}
		})
		for k, n := range seen {
			if n != 1 {
				t.Errorf("seed %d: piece %d %d times", seed, k, n)
			}
		}
		need := lookUp(sizes).need(p)
		if lookUp(sizes).Parcel(p, need.X, need.Y) == nil || lookUp(sizes).Parcel(p, need.X-1, need.Y) != nil || lookUp(sizes).Parcel(p, need.X, need.Y-1) != nil {
			t.Errorf("seed %d: fits what is too small, or not what is just enough", seed)
		}
	}
}

// TestStripsBack stacks pieces that were equally wide once rounded.
func TestStripsBack(t *testing.T) {
	sizes := [][2]int64{{401, 100}, {407, 200}, {395, 50}}
	rounded := func(k int) ceiling.Piece { return ceiling.Piece{Kind: k, X: sizes[k][0] / 8, Y: sizes[k][1] / 8} }
	strips := []ceiling.Strip{{{rounded(0), rounded(1)}, {rounded(2)}}, {{rounded(2)}}}
	back := lookUp(sizes).Strips(strips, 407+395, 300+50)
	if back == nil || back[0][0][0].Kind != 1 || back[0][0][1].Kind != 0 || back[0][0][0].X != 407 {
		t.Errorf("%v", back)
	}
	if lookUp(sizes).Strips(strips, 407+394, 350) != nil || lookUp(sizes).Strips(strips, 802, 349) != nil {
		t.Error("fits what is too small")
	}
}
