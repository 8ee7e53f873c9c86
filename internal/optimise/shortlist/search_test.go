package shortlist

import (
	"context"
	"math"
	"math/bits"
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/problem"
	"scantling/internal/optimise/work"
)

func free() *work.Meter { return work.New(context.Background(), math.MaxInt64) }

// small draws a sheet and a few pieces, some of which may be turned.
func small(r *rand.Rand) Question {
	q := Question{X: 6 + r.Int64N(15), Y: 6 + r.Int64N(15), Scale: 1 << 10, Step: 1, Floor: 0}
	pieces := 0
	for pieces < 7 {
		k := len(q.Left)
		l := ceiling.Piece{Kind: k, X: 1 + r.Int64N(q.X*3/4), Y: 1 + r.Int64N(q.Y*3/4)}
		q.Pieces = append(q.Pieces, l)
		if r.IntN(3) == 0 {
			l.X, l.Y, l.Turned = l.Y, l.X, true
			q.Pieces = append(q.Pieces, l)
		}
		q.Left = append(q.Left, 1+r.IntN(min(2, 7-pieces)))
		pieces += q.Left[k]
		q.Value = append(q.Value, 1+r.Int64N(l.X*l.Y+3))
		price := r.Int64N(q.Value[k]*q.Scale + 1)
		if r.IntN(2) == 0 {
			price = 0
		}
		q.Guide = append(q.Guide, q.Value[k]*q.Scale-price)
		q.Limits += price * int64(q.Left[k])
	}
	return q
}

// exhausted returns the optimum: for every set of pieces all smallest rectangles
// that it can be cut from, by every way to part the set in two.
func exhausted(q Question) int64 {
	var kinds []int
	for k, n := range q.Left {
		for range n {
			kinds = append(kinds, k)
		}
	}
	type box struct{ x, y int64 }
	boxes := make([][]box, 1<<len(kinds))
	best := int64(0)
	for set := 1; set < len(boxes); set++ {
		var all []box
		if bits.OnesCount(uint(set)) == 1 {
			for _, l := range q.Pieces {
				if l.Kind == kinds[bits.TrailingZeros(uint(set))] {
					all = append(all, box{l.X, l.Y})
				}
			}
		}
		for a := (set - 1) & set; a > 0; a = (a - 1) & set {
			for _, p := range boxes[a] {
				for _, r := range boxes[set&^a] {
					all = append(all, box{p.x + r.x, max(p.y, r.y)}, box{max(p.x, r.x), p.y + r.y})
				}
			}
		}
		worth := int64(0)
		for i, k := range kinds {
			if set>>i&1 == 1 {
				worth += q.Value[k]
			}
		}
		for i, b := range all {
			if b.x > q.X || b.y > q.Y {
				continue
			}
			best = max(best, worth)
			least := true
			for j, c := range all {
				if c.x <= b.x && c.y <= b.y && (c != b || j < i) {
					least = false
					break
				}
			}
			if least {
				boxes[set] = append(boxes[set], b)
			}
		}
	}
	return best
}

// TestAgainstExhaustion: with long lists nothing is left out, whatever the
// prices; with short ones the filling is sound and no better than the best.
func TestAgainstExhaustion(t *testing.T) {
	for seed := range uint64(150) {
		q := small(rand.New(rand.NewPCG(seed, 1)))
		want := exhausted(q)
		for _, length := range []int{1, 3, 1 << 14} {
			a, ok := Search(q, length, free())
			if !ok {
				t.Fatalf("seed %d: not through", seed)
			}
			if a.Value > want || a.Complete && a.Value != want {
				t.Errorf("seed %d, length %d: %d (complete: %v), the best is %d", seed, length, a.Value, a.Complete, want)
			}
			if length > 1000 && !a.Complete {
				t.Errorf("seed %d: lists of %d were full", seed, length)
			}
			checkFilling(t, q, a)
		}
		q.Floor = want
		if a, _ := Search(q, 1<<14, free()); a.Filling != nil || !a.Complete {
			t.Errorf("seed %d: something better than the best", seed)
		}
	}
}

// checkFilling lays the pieces out and adds up what they are worth.
func checkFilling(t *testing.T, q Question, a Answer) {
	t.Helper()
	worth := int64(0)
	used := make([]int, len(q.Left))
	var lay func(p *ceiling.Parcel)
	lay = func(p *ceiling.Parcel) {
		if p == nil {
			return
		}
		if p.Piece != nil {
			if p.Piece.X > p.X || p.Piece.Y > p.Y {
				t.Errorf("a piece of %d by %d in %d by %d", p.Piece.X, p.Piece.Y, p.X, p.Y)
			}
			used[p.Piece.Kind]++
			worth += q.Value[p.Piece.Kind]
			return
		}
		x := [2]int64{p.X, p.X}
		y := [2]int64{p.Y, p.Y}
		if p.Cut == problem.Crosscut {
			x = [2]int64{p.At, p.X - p.At}
		} else {
			y = [2]int64{p.At, p.Y - p.At}
		}
		for i, c := range p.Parts {
			if c != nil && (c.X != x[i] || c.Y != y[i]) {
				t.Errorf("a cut at %d of %d by %d leaves %d by %d", p.At, p.X, p.Y, c.X, c.Y)
			}
			lay(c)
		}
	}
	lay(a.Filling)
	if worth != a.Value {
		t.Errorf("said to be worth %d, is worth %d", a.Value, worth)
	}
	for k, n := range used {
		if n > q.Left[k] {
			t.Errorf("%d of kind %d, %d wanted", n, k, q.Left[k])
		}
	}
}

// TestEnds: little work is obeyed, and what it found is sound.
func TestEnds(t *testing.T) {
	for seed := range uint64(20) {
		q := small(rand.New(rand.NewPCG(seed, 2)))
		for _, units := range []int64{1, 300, 3000} {
			m := work.New(context.Background(), units)
			a, ok := Search(q, 8, m)
			if m.Used() > units || ok && m.Ended() || !ok && a.Complete {
				t.Errorf("seed %d: %d units of %d", seed, m.Used(), units)
			}
			if a.Filling != nil {
				checkFilling(t, q, a)
			}
		}
	}
}
