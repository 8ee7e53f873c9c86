package share

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"scantling/internal/unit"
)

func cells(n int, size unit.Length) []Thing {
	out := make([]Thing, n)
	for i := range out {
		out[i] = Thing{Key: fmt.Sprint(i + 1), Mouth: size}
	}
	return out
}

// TestRowsOfTheTrade: sums that a competent maker writes down (no source).
func TestRowsOfTheTrade(t *testing.T) {
	// 36 cells of 10 and twice 10 are 380, the first centre at 15.
	row, err := Least(cells(36, unit.MM(10)), Rule{Margin: unit.MM(10)})
	if err != nil || row.Width != unit.MM(380) || row.Slots[0].Centre() != unit.MM(15) || row.Slots[35].Centre() != unit.MM(365) {
		t.Errorf("36 cells: %v %v", row.Width.Millimetres(), err)
	}
	// 6 cells of 27 with dividers of 5 are 187.
	if row, _ := Least(cells(6, unit.MM(27)), Rule{Land: unit.MM(5)}); row.Width != unit.MM(187) {
		t.Errorf("6 cells: %v", row.Width.Millimetres())
	}
	// Four bays in 442 between walls and dividers of 8: 42 spare, shared.
	var bays []Thing
	for _, w := range []int64{70, 75, 85, 130} {
		bays = append(bays, Thing{Key: fmt.Sprint(w), Mouth: unit.MM(w)})
	}
	row, _ = Least(bays, Rule{Land: unit.MM(8), Margin: unit.MM(8)})
	row, err = row.Close(unit.MM(442), ToOpenings)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []unit.Length{80500 * um, 85500 * um, 95500 * um, 140500 * um} {
		if row.Slots[i].Mouth != want {
			t.Errorf("bay %d: %v, want %v", i+1, row.Slots[i].Mouth.Millimetres(), want.Millimetres())
		}
	}
	for i, want := range []unit.Length{88500 * um, 182000 * um, 285500 * um} { // the dividers' near sides
		if got := row.Slots[i].Right(); got != want {
			t.Errorf("divider %d at %v, want %v", i+1, got.Millimetres(), want.Millimetres())
		}
	}
	// Seven handles of 25 with 13 for a finger: pitch 38, centres 25 ... 253 in 278.
	handles := make([]Thing, 7)
	for i := range handles {
		handles[i] = Thing{Mouth: 23600 * um, Body: unit.MM(25)}
	}
	row, _ = Least(handles, Rule{Margin: 13200 * um, Play: unit.MM(13), Land: unit.MM(5)})
	if row.Width != unit.MM(278) || row.Slots[3].Centre() != unit.MM(139) || row.Slots[6].Centre() != unit.MM(253) {
		t.Errorf("gouges: %v", row)
	}
}

func TestPitch(t *testing.T) {
	needle := Thing{Mouth: unit.MM(4), Body: unit.MM(4), Head: unit.MM(12)}
	rule := Rule{Land: unit.MM(2), Play: unit.MM(1)}
	if got := rule.Pitch(needle, needle); got != unit.MM(13) {
		t.Errorf("same way: %v, want head and play", got.Millimetres())
	}
	rule.Lie = HeadToTail
	if got := rule.Pitch(needle, needle); got != unit.MM(9) {
		t.Errorf("head to tail: %v, want half the head, half the body and play", got.Millimetres())
	}
	// Thin bodies: heads of 20 at every second place keep apart too.
	thin := Thing{Mouth: unit.MM(2), Body: unit.MM(2), Head: unit.MM(20)}
	row, err := Least(slices.Repeat([]Thing{thin}, 4), rule)
	if err != nil {
		t.Fatal(err)
	}
	if got := row.Slots[2].Centre() - row.Slots[0].Centre(); got < unit.MM(21) {
		t.Errorf("two heads at one end are %v apart", got.Millimetres())
	}
	rule = Rule{Land: unit.MM(2), Step: unit.Millimetre / 2}
	if got := rule.Pitch(Thing{Mouth: 3100 * um}, Thing{Mouth: 3300 * um}); got != 5500*um {
		t.Errorf("stepped pitch %v, want 5.5", got.Millimetres())
	}
}

func randomRule(rng *rand.Rand) Rule {
	r := Rule{
		Land: unit.Length(rng.Int64N(4e6)), Margin: unit.Length(rng.Int64N(2e7)),
		Play: unit.Length(rng.Int64N(3e6)), WallPlay: unit.Length(rng.Int64N(3e6)),
		Lie: Lie(rng.IntN(2)), Even: rng.IntN(2) == 0,
	}
	if rng.IntN(2) == 0 {
		r.Step = unit.Millimetre / 2
	}
	return r
}

func randomThings(rng *rand.Rand, n int) []Thing {
	out := make([]Thing, n)
	for i := range out {
		body := 1 + unit.Length(rng.Int64N(2e7))
		out[i] = Thing{Key: fmt.Sprint(i), Body: body, Mouth: 1 + unit.Length(rng.Int64N(2e7))}
		if rng.IntN(2) == 0 {
			out[i].Head = body + unit.Length(rng.Int64N(2e7))
		}
	}
	return out
}

// TestRowLaws: rows keep every distance of their rule, close to the nanometre
// under every spread, and never get narrower by widening.
func TestRowLaws(t *testing.T) {
	const seed = 32
	rng := rand.New(rand.NewPCG(seed, 0))
	for i := range 1500 {
		things, rule := randomThings(rng, rng.IntN(14)), randomRule(rng)
		least, err := Least(things, rule)
		if err != nil {
			t.Fatal(seed, i, err)
		}
		width := least.Width + unit.Length(rng.Int64N(5e7))
		for _, to := range []Spread{"", ToLands, ToMargins, ToAll, ToOpenings, ToEnd} {
			row, err := least, error(nil)
			if to != "" {
				row, err = least.Close(width, to)
			}
			if err != nil {
				t.Fatal(seed, i, err)
			}
			if msg := faultOf(row, things, rule, to); msg != "" {
				t.Fatalf("seed %d step %d spread %q: %s\n%+v\n%+v\n%+v", seed, i, to, msg, rule, things, row)
			}
		}
		if least.Width > 0 {
			wantKey(t, second(least.Close(least.Width-1, ToLands)), "share.row-too-wide")
		}
	}
}

func faultOf(row Row, things []Thing, rule Rule, to Spread) string {
	sum := unit.Length(0)
	for _, term := range row.Terms() {
		if term.Length < 0 {
			return "a term below zero"
		}
		sum += term.Length
	}
	if sum != row.Width {
		return fmt.Sprintf("terms add up to %d, not %d", sum, row.Width)
	}
	centre2 := func(i int) unit.Length { return 2*row.Slots[i].Left + row.Slots[i].Mouth }
	for i, a := range things {
		s := row.Slots[i]
		if s.Key != a.Key || s.Mouth < a.Mouth || (to != ToOpenings && s.Mouth != a.Mouth) {
			return fmt.Sprintf("thing %d lost its place", i)
		}
		if s.Left < rule.Margin || row.Width-s.Right() < rule.Margin {
			return fmt.Sprintf("margin at %d", i)
		}
		if centre2(i) < a.widest()+2*rule.WallPlay || 2*row.Width-centre2(i) < a.widest()+2*rule.WallPlay {
			return fmt.Sprintf("thing %d in the wall", i)
		}
		for j := i + 1; j < min(i+3, len(things)); j++ {
			b := things[j]
			if j == i+1 && row.Slots[j].Left-s.Right() < rule.Land {
				return fmt.Sprintf("land after %d", i)
			}
			room := centre2(j) - centre2(i) - 2*rule.Play
			sameWay := rule.Lie == SameWay || j == i+2
			if sameWay && room < a.widest()+b.widest() {
				return fmt.Sprintf("heads of %d and %d", i, j)
			}
			if !sameWay && (room < a.widest()+b.Body || room < a.Body+b.widest()) {
				return fmt.Sprintf("head of %d beside %d", i, j)
			}
		}
	}
	return ""
}

func TestEvenRow(t *testing.T) {
	const seed = 33
	rng := rand.New(rand.NewPCG(seed, 0))
	for i := range 300 {
		rule := randomRule(rng)
		rule.Even, rule.Step = true, unit.Millimetre
		things := randomThings(rng, 6)
		for j := range things {
			things[j].Mouth = things[j].Mouth / 2 * 2
		}
		rule.Margin = unit.MM(60) // no wall decides
		row, err := Least(things, rule)
		if err != nil {
			t.Fatal(err)
		}
		for j := 2; j < len(things); j++ {
			if a, b := row.Slots[j].Centre()-row.Slots[j-1].Centre(), row.Slots[1].Centre()-row.Slots[0].Centre(); a != b || a%unit.Millimetre != 0 {
				t.Fatalf("seed %d step %d: pitches %d and %d", seed, i, a, b)
			}
		}
	}
}

func TestFillUp(t *testing.T) {
	things := cells(24, unit.MM(10))
	spare := Thing{Mouth: unit.MM(10)}
	name := func(n int) string { return fmt.Sprintf("spare %d", n) }
	f, err := FillUp(things, Rule{Margin: unit.MM(10)}, unit.MM(385), spare, name, ToMargins)
	if err != nil || f.Spare != 12 || f.Row.Width != unit.MM(385) || f.Row.Slots[0].Left != 12500*um || f.Row.Slots[35].Key != "spare 12" || len(f.Things) != 36 {
		t.Errorf("filled: %d spare, %+v %v", f.Spare, f.Row.Slots[0], err)
	}
	if f, err := FillUp(things, Rule{Margin: unit.MM(10)}, unit.MM(265), spare, name, ToEnd); err != nil || f.Spare != 0 {
		t.Errorf("no room for a spare: %+v %v", f.Spare, err)
	}
	wantKey(t, second(FillUp(things, Rule{}, unit.MM(239), spare, name, ToEnd)), "share.row-too-wide")
	if len(things) != 24 {
		t.Error("the things were changed")
	}
	const seed = 34
	rng := rand.New(rand.NewPCG(seed, 0))
	for i := range 200 {
		things, rule := randomThings(rng, 1+rng.IntN(8)), randomRule(rng)
		extra := randomThings(rng, 1)[0]
		least, _ := Least(things, rule)
		width := least.Width + unit.Length(rng.Int64N(2e8))
		f, err := FillUp(things, rule, width, extra, name, ToAll)
		if err != nil {
			t.Fatal(seed, i, err)
		}
		one, _ := Least(append(slices.Clone(f.Things), extra), rule)
		if one.Width <= width {
			t.Fatalf("seed %d step %d: one more would fit", seed, i)
		}
	}
}

func TestRowBounds(t *testing.T) {
	wantKey(t, second(Least(make([]Thing, MaxThings+1), Rule{})), "share.too-many-things")
	wantKey(t, second(Least([]Thing{{Mouth: -1}}, Rule{})), "figure.length-range")
	wantKey(t, second(Least(nil, Rule{Land: 20 * unit.Metre})), "figure.length-range")
	if row, err := Least(nil, Rule{Margin: 5}); err != nil || row.Width != 10 || len(row.Terms()) != 1 {
		t.Errorf("an empty row: %+v %v", row, err)
	}
}

func same(l unit.Length) unit.Length { return l }

func TestDeal(t *testing.T) {
	mm := func(ws ...int64) []unit.Length {
		var out []unit.Length
		for _, w := range ws {
			out = append(out, unit.MM(w))
		}
		return out
	}
	for _, c := range []struct {
		things []unit.Length
		n      int
		want   []int // how many in each
	}{
		{mm(1, 1, 1, 1), 2, []int{2, 2}},
		{mm(1, 1, 1, 1, 1), 2, []int{3, 2}},
		{mm(9, 1, 1, 1), 2, []int{1, 3}},
		{mm(1, 2, 3, 4, 5, 6), 3, []int{3, 2, 1}},
		{mm(5), 3, []int{1, 0, 0}},
		{nil, 2, []int{0, 0}},
		{mm(0, 0, 0), 2, []int{2, 1}},
	} {
		got, err := Deal(c.things, same, c.n)
		if err != nil || len(got) != c.n {
			t.Fatal(err)
		}
		for k, n := range c.want {
			if len(got[k]) != n {
				t.Errorf("%v into %d: %v", c.things, c.n, got)
				break
			}
		}
	}
	wantKey(t, second(Deal(mm(1), same, 0)), "share.no-groups")
	wantKey(t, second(Deal(mm(1), same, MaxGroups+1)), "share.no-groups")
	wantKey(t, second(Deal(make([]unit.Length, MaxThings+1), same, 2)), "share.too-many-things")
	wantKey(t, second(Deal([]unit.Length{-1}, same, 2)), "figure.length-range")
}

// TestDealLaws: against trying every division of up to ten things.
func TestDealLaws(t *testing.T) {
	const seed = 35
	rng := rand.New(rand.NewPCG(seed, 0))
	for i := range 400 {
		things := make([]unit.Length, 1+rng.IntN(10))
		for j := range things {
			things[j] = unit.Length(rng.Int64N(40)) * unit.Millimetre
		}
		n := 1 + rng.IntN(5)
		got, err := Deal(things, same, n)
		if err != nil {
			t.Fatal(seed, i, err)
		}
		if back := slices.Concat(got...); !slices.Equal(back, things) {
			t.Fatalf("seed %d step %d: %v dealt as %v", seed, i, things, got)
		}
		wide, sum := judge(got)
		bestWide, bestSum := unit.Length(1<<62), int64(1<<62)
		divisions(things, min(n, len(things)), func(d [][]unit.Length) {
			if w, s := judge(d); w < bestWide || (w == bestWide && s < bestSum) {
				bestWide, bestSum = w, s
			}
		})
		if wide != bestWide || sum != bestSum {
			t.Fatalf("seed %d step %d: %v into %d: widest %d squares %d, best %d and %d", seed, i, things, n, wide, sum, bestWide, bestSum)
		}
	}
}

func judge(groups [][]unit.Length) (widest unit.Length, squares int64) {
	for _, g := range groups {
		w := unit.Length(0)
		for _, x := range g {
			w += x
		}
		widest = max(widest, w)
		squares += int64(w/unit.Millimetre) * int64(w/unit.Millimetre)
	}
	return widest, squares
}

func divisions(things []unit.Length, n int, visit func([][]unit.Length)) {
	if n == 1 {
		visit([][]unit.Length{things})
		return
	}
	for first := 1; first <= len(things)-(n-1); first++ {
		divisions(things[first:], n-1, func(rest [][]unit.Length) {
			visit(append([][]unit.Length{things[:first]}, rest...))
		})
	}
}

func BenchmarkSeat(b *testing.B) {
	g := Groove{12700 * um, unit.MM(8)}
	for b.Loop() {
		_, _ = g.Seat(unit.MM(30))
	}
}

func BenchmarkChannelFor(b *testing.B) {
	for b.Loop() {
		_, _ = ChannelFor(unit.MM(10), noses, unit.MM(11))
	}
}

func BenchmarkRow(b *testing.B) {
	for _, n := range []int{24, 300, MaxThings} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			things := randomThings(rand.New(rand.NewPCG(1, 0)), n)
			for b.Loop() {
				row, _ := Least(things, Rule{Land: um, Lie: HeadToTail})
				_, _ = row.Close(row.Width+um, ToAll)
			}
		})
	}
}

func BenchmarkDeal(b *testing.B) {
	for _, n := range []int{24, 300, MaxThings} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			rng := rand.New(rand.NewPCG(1, 0))
			things := make([]unit.Length, n)
			for i := range things {
				things[i] = unit.Length(rng.Int64N(1e7))
			}
			for b.Loop() {
				_, _ = Deal(things, same, 5)
			}
		})
	}
}
