package beam

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/optimise/ceiling"
	"scantling/internal/optimise/work"
)

func drawn(r *rand.Rand) Question {
	q := Question{X: 20 + r.Int64N(30), Y: 20 + r.Int64N(30), Most: 40}
	for k := range 3 + r.IntN(6) {
		l := ceiling.Piece{Kind: k, X: 2 + r.Int64N(q.X/2), Y: 2 + r.Int64N(q.Y/2)}
		q.Pieces = append(q.Pieces, l)
		if r.IntN(2) == 0 && l.Y <= q.X && l.X <= q.Y {
			l.X, l.Y, l.Turned = l.Y, l.X, true
			q.Pieces = append(q.Pieces, l)
		}
		q.Left = append(q.Left, 1+r.IntN(3))
		q.Value = append(q.Value, 1+r.Int64N(2*l.X*l.Y))
	}
	q.Rules = []ceiling.Rules{{}, {Two: true}, {Exact: true}, {Two: true, Exact: true}}[r.IntN(4)]
	slices.SortStableFunc(q.Pieces, func(a, b ceiling.Piece) int { return int(b.X*b.Y - a.X*a.Y) })
	return q
}

// TestPlansAreSound adds up what each plan holds, its sizes and its value.
func TestPlansAreSound(t *testing.T) {
	for seed := range uint64(80) {
		q := drawn(rand.New(rand.NewPCG(seed, 1)))
		q.One = seed%2 == 0
		for _, guide := range []Guide{Waste, Large, Larger} {
			plan, ok := Search(q, 1+int(seed%7), guide, nil, work.New(t.Context(), math.MaxInt64))
			if !ok {
				if q.One {
					t.Errorf("seed %d: nothing fits", seed)
				}
				continue
			}
			if q.One && len(plan.Sheets) != 1 || len(plan.Sheets) > q.Most {
				t.Errorf("seed %d: %d sheets", seed, len(plan.Sheets))
			}
			used := make([]int, len(q.Left))
			worth := int64(0)
			for _, s := range plan.Sheets {
				checkSheet(t, q, s)
				for _, l := range placed(s) {
					used[l.Kind]++
					worth += q.Value[l.Kind]
				}
			}
			for k, n := range used {
				if n > q.Left[k] || !q.One && n != q.Left[k] {
					t.Errorf("seed %d: %d of kind %d, %d wanted", seed, n, k, q.Left[k])
				}
			}
			if q.One && worth != plan.Value {
				t.Errorf("seed %d: worth %d, said to be %d", seed, worth, plan.Value)
			}
		}
	}
}

func placed(sheet []ceiling.Strip) (out []ceiling.Piece) {
	for _, s := range sheet {
		for _, c := range s {
			out = append(out, c...)
		}
	}
	return out
}

func height(c []ceiling.Piece) (y int64) {
	for _, l := range c {
		y += l.Y
	}
	return y
}

func checkSheet(t *testing.T, q Question, sheet []ceiling.Strip) {
	t.Helper()
	high := int64(0)
	for _, s := range sheet {
		wide, tall := int64(0), int64(0)
		for _, c := range s {
			if q.Rules.Two && len(c) > 1 || q.Rules.Two && q.Rules.Exact && tall > 0 && height(c) != tall {
				t.Errorf("two stages do not make %v", c)
			}
			for _, l := range c {
				if l.X > c[0].X || q.Rules.Exact && l.X != c[0].X {
					t.Errorf("a piece %d wide on one of %d", l.X, c[0].X)
				}
			}
			wide, tall = wide+c[0].X, max(tall, height(c))
		}
		if high += tall; wide > q.X {
			t.Errorf("a strip of %d on %d", wide, q.X)
		}
	}
	if high > q.Y {
		t.Errorf("strips of %d on %d", high, q.Y)
	}
}

// TestOutlookIsACeiling lays fillings piece by piece, the highest column of each
// strip first: at no step does what comes then gain more than was in view.
func TestOutlookIsACeiling(t *testing.T) {
	for seed := range uint64(150) {
		q := drawn(rand.New(rand.NewPCG(seed, 2)))
		q.One = true
		q.Rules.Exact = false
		view := NewOutlook(q, q.Value, work.New(t.Context(), math.MaxInt64))
		if view == nil {
			t.Fatalf("seed %d: no outlook", seed)
		}
		for _, guide := range []Guide{Large, Loss, LossPerArea} {
			plan, ok := Search(q, 4, guide, view, work.New(t.Context(), math.MaxInt64))
			if !ok {
				t.Fatalf("seed %d: nothing fits", seed)
			}
			if plan.Value > view.Worth() {
				t.Errorf("seed %d: worth %d, at most %d in view", seed, plan.Value, view.Worth())
			}
			rest := plan.Value
			y := int64(0)
			for _, s := range plan.Sheets[0] {
				s = slices.Clone(s)
				slices.SortStableFunc(s, func(a, b []ceiling.Piece) int { return int(height(b) - height(a)) })
				x, tall := int64(0), height(s[0])
				for _, c := range s {
					f := front{y0: y, y1: y, x0: x, x1: x + c[0].X, yc: y}
					for _, l := range c {
						f.yc += l.Y
						if f.y1 = max(f.y1, f.yc); x > 0 {
							f.y1 = y + tall
						}
						if rest -= q.Value[l.Kind]; view.beyond(f) < rest {
							t.Errorf("seed %d, %+v: %d in view, %d gained", seed, f, view.beyond(f), rest)
						}
					}
					x += c[0].X
				}
				y += tall
			}
		}
	}
}
