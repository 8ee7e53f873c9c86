package coarse

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"scantling/internal/optimise/work"
)

func free() *work.Meter { return work.New(context.Background(), math.MaxInt64) }

// drawn returns up to five sides of few copies and one or two rooms, some of
// them just as long as some row.
func drawn(r *rand.Rand) (sides []Side, rooms []int64) {
	room := 10_000 + r.Int64N(1_000_000)
	seen := map[int64]bool{}
	for range 1 + r.IntN(5) {
		size := 1 + r.Int64N(room+room/8)
		if r.IntN(3) == 0 {
			size = room / (2 + r.Int64N(6)) // so many just fit
		}
		if r.IntN(4) == 0 {
			size = size/127*127 + 127
		}
		if !seen[size] {
			seen[size] = true
			sides = append(sides, Side{size, 1 + r.IntN(4)})
		}
	}
	rooms = []int64{room}
	if r.IntN(2) == 0 {
		rooms = append(rooms, 1+r.Int64N(room))
	}
	if r.IntN(2) == 0 {
		sum := int64(0)
		for _, s := range sides {
			sum += s.Size * int64(r.IntN(s.Copies+1))
		}
		if sum > 0 {
			rooms = append(rooms, sum)
		}
	}
	return sides, rooms
}

// rows calls visit with the true and the new length of every row.
func rows(sides []Side, to []int64, visit func(size, sum int64)) {
	var lay func(i int, size, sum int64)
	lay = func(i int, size, sum int64) {
		if i == len(sides) {
			visit(size, sum)
			return
		}
		for n := range sides[i].Copies + 1 {
			lay(i+1, size+int64(n)*sides[i].Size, sum+int64(n)*to[i])
		}
	}
	lay(0, 0, 0)
}

// TestRooms lays every row of small axes: what truly fits, fits the loose room,
// and what fits the tight room, truly fits; and the loose room is no greater
// than some row asks for.
func TestRooms(t *testing.T) {
	same, both := 0, 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 21))
		sides, rooms := drawn(r)
		s, ok := Axis(sides, rooms, 1<<14, false, free())
		if !ok {
			t.Logf("seed %d: no scale for %v in %v", seed, sides, rooms)
			continue
		}
		if both++; s.Same() {
			same++
		}
		for i, room := range rooms {
			longest := int64(0)
			rows(sides, s.To, func(size, sum int64) {
				if size <= room {
					longest = max(longest, sum)
				}
				if size <= room && sum > s.Loose[i] || size > room && sum <= s.Tight[i] {
					t.Errorf("seed %d: a row of %d on %d becomes %d on %d or %d", seed, size, room, sum, s.Tight[i], s.Loose[i])
				}
			})
			if longest != s.Loose[i] || s.Tight[i] > s.Loose[i] {
				t.Errorf("seed %d: loose %d, tight %d, the longest row %d", seed, s.Loose[i], s.Tight[i], longest)
			}
		}
	}
	if both < 380 || same < both*3/4 {
		t.Errorf("%d scales, of which %d lose nothing", both, same)
	}
}

// TestApart asks for sizes that stay apart: there are none where a hundred lie
// within one part in five thousand.
func TestApart(t *testing.T) {
	rooms := []int64{1_000_000}
	var sides []Side
	for i := range int64(100) {
		sides = append(sides, Side{300_000 + 2*i, 3})
	}
	if _, ok := Axis(sides, rooms, 1<<14, false, free()); !ok {
		t.Error("no scale where they may become equal")
	}
	if s, ok := Axis(sides, rooms, 1<<14, true, free()); ok {
		t.Errorf("a hundred numbers that differ among %v", s.To)
	}
	sides = []Side{{300_000, 3}, {300_400, 3}, {100_001, 9}}
	if s, ok := Axis(sides, rooms, 1<<14, true, free()); !ok || s.To[0] >= s.To[1] {
		t.Errorf("four hundred in a million are told apart: %v %v", s, ok)
	}
}

// TestFine takes sizes of a coarse unit, all many times as large, and one of them
// off by one: the rows that fit stay the same.
func TestFine(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 22))
		room := 800 + r.Int64N(3000)
		var sides []Side
		seen := map[int64]bool{}
		for range 4 + r.IntN(20) {
			if size := room/20 + r.Int64N(room*3/4); !seen[size] {
				seen[size] = true
				sides = append(sides, Side{size * 127, 1 + r.IntN(8)})
			}
		}
		if s, ok := Axis(sides, []int64{room * 127}, 1<<14, false, free()); !ok || !s.Same() {
			t.Errorf("seed %d: all sizes times 127: %v", seed, s.Lost())
		}
		sides[r.IntN(len(sides))].Size += 1 - 2*r.Int64N(2)
		if s, ok := Axis(sides, []int64{room * 127}, 1<<14, false, free()); !ok || s.Loose[0]-s.Tight[0] > 1 {
			t.Errorf("seed %d: and one off by one: %d", seed, s.Loose[0]-s.Tight[0])
		}
	}
}

// TestEnds stops a search for a scale at every stage.
func TestEnds(t *testing.T) {
	sides, rooms := drawn(rand.New(rand.NewPCG(3, 23)))
	for units := int64(1); units < 10_000_000; units *= 3 {
		m := work.New(t.Context(), units)
		Axis(sides, rooms, 1<<14, false, m)
		if m.Used() > units {
			t.Errorf("%d units of %d", m.Used(), units)
		}
	}
	if _, ok := Axis(sides, nil, 1<<14, false, free()); ok {
		t.Error("a scale for no room")
	}
}

func BenchmarkAxis(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 24))
	var sides []Side
	for range 60 {
		sides = append(sides, Side{32_000 + 127*r.Int64N(4000), 4})
	}
	for b.Loop() {
		Axis(sides, []int64{780_800 + 1024}, 1<<14, false, free())
	}
}
