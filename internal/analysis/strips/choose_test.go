package strips_test

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"

	"scantling/internal/analysis/blanks"
	"scantling/internal/analysis/strips"
	"scantling/internal/unit"
)

// panel has equal strips and the others that are named, with their widths in
// millimetres.
func panel(mark string, count int, equal []int64, others ...blanks.Sharing) blanks.Panels {
	return blanks.Panels{Mark: mark, Count: count, Sharings: append([]blanks.Sharing{sharing(blanks.Layout{}, equal...)}, others...)}
}

func sharing(l blanks.Layout, widths ...int64) blanks.Sharing {
	s := blanks.Sharing{Layout: l}
	for _, w := range widths {
		s.Widths = append(s.Widths, unit.MM(w))
	}
	return s
}

var (
	full = blanks.Layout{Way: blanks.Full}
	high = blanks.Layout{Way: blanks.FullHigh}
	more = blanks.Layout{Strips: 3}
)

// TestBetter: in order, and never dearer.
func TestBetter(t *testing.T) {
	base := strips.Score{Boards: strips.Boards{Faults: 1, Bought: 4, Price: 160, Rack: 2}, Strips: 8, Uneven: 100}
	for _, c := range []struct {
		name   string
		change func(s *strips.Score)
		better bool
	}{
		{"the same", func(*strips.Score) {}, false},
		{"all can be cut, though dearer", func(s *strips.Score) { s.Faults, s.Price, s.Bought = 0, 400, 9 }, true},
		{"a board less, the same price", func(s *strips.Score) { s.Bought = 3 }, true},
		{"a board less, but dearer", func(s *strips.Score) { s.Bought, s.Price = 3, 161 }, false},
		{"cheaper, but a board more", func(s *strips.Score) { s.Bought, s.Price = 5, 100 }, false},
		{"cheaper", func(s *strips.Score) { s.Price, s.Rack, s.Strips = 159, 3, 12 }, true},
		{"fewer of the rack", func(s *strips.Score) { s.Rack, s.Strips = 1, 12 }, true},
		{"fewer strips", func(s *strips.Score) { s.Strips, s.Uneven = 7, 900 }, true},
		{"more even", func(s *strips.Score) { s.Uneven = 99 }, true},
		{"less even", func(s *strips.Score) { s.Uneven = 101 }, false},
	} {
		s := base
		c.change(&s)
		if s.Better(base) != c.better {
			t.Errorf("%s: better is %v", c.name, !c.better)
		}
		if s.Better(base) && base.Better(s) {
			t.Errorf("%s: each is better than the other", c.name)
		}
	}
}

// TestTogether: two panels whose rests share a board save it only if both have a rest;
// one that was changed with them and brings nothing goes back to equal strips.
func TestTogether(t *testing.T) {
	panels := []blanks.Panels{
		panel("A", 1, []int64{140, 140}, sharing(full, 190, 90)),
		panel("B", 1, []int64{138, 138}, sharing(full, 190, 86)),
		panel("C", 1, []int64{150, 150}, sharing(full, 190, 110)),
	}
	saw := func(l map[string]blanks.Layout) strips.Boards {
		if l["A"] == full && l["B"] == full {
			return strips.Boards{Bought: 5, Price: 200}
		}
		return strips.Boards{Bought: 6, Price: 240}
	}
	c := strips.Choose(panels, saw, 10, nil)
	if want := map[string]blanks.Layout{"A": full, "B": full}; !reflect.DeepEqual(c.Layouts, want) {
		t.Errorf("%v, want %v", c.Layouts, want)
	}
	if c.Equal.Bought != 6 || c.Chosen.Bought != 5 || c.Chosen.Strips != 6 {
		t.Errorf("%+v", c)
	}
}

// TestEqualStay: fewer or more even strips alone are no reason, and nothing is asked
// where there is no choice or no more can be saved.
func TestEqualStay(t *testing.T) {
	one := func(map[string]blanks.Layout) strips.Boards { return strips.Boards{Bought: 1} }
	odd := []blanks.Panels{panel("A", 1, []int64{50, 60, 70}, sharing(full, 90, 90))}
	if c := strips.Choose(odd, one, 10, nil); len(c.Layouts) > 0 || c.Asked != 2 || c.Chosen != c.Equal {
		t.Errorf("%+v", c)
	}
	if c := strips.Choose(odd, one, 10, func(strips.Boards) bool { return true }); len(c.Layouts) > 0 || c.Asked != 1 {
		t.Errorf("%+v", c)
	}
	if c := strips.Choose([]blanks.Panels{panel("A", 1, []int64{50, 60})}, one, 10, nil); len(c.Layouts) > 0 || c.Asked != 0 {
		t.Errorf("%+v", c)
	}
}

// TestConfirm: what a saw that looks harder does not confirm is not done.
func TestConfirm(t *testing.T) {
	saves := func(l map[string]blanks.Layout) strips.Boards { return strips.Boards{Bought: 3 - len(l)} }
	never := func(map[string]blanks.Layout) strips.Boards { return strips.Boards{Bought: 2} }
	c := strips.Choose([]blanks.Panels{panel("A", 2, []int64{140, 140}, sharing(full, 190, 90))}, saves, 10, nil)
	if got := c.Confirm(saves); len(got.Layouts) != 1 || got.Chosen.Bought != 2 || got.Asked != c.Asked+2 {
		t.Errorf("%+v", got)
	}
	if got := c.Confirm(never); len(got.Layouts) != 0 || got.Chosen.Bought != 2 || got.Chosen.Strips != 4 {
		t.Errorf("%+v", got)
	}
}

// TestChooseLaws, over random panels and boards: never worse than equal strips, no more
// questions than allowed, no single panel left to change for the better if there were
// questions enough, the same answer again.
func TestChooseLaws(t *testing.T) {
	changed := 0
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 11))
		var panels []blanks.Panels
		for i := range 1 + r.IntN(4) {
			p := panel(fmt.Sprintf("P%d", i), 1+r.IntN(3), []int64{100 + r.Int64N(50), 100 + r.Int64N(50)})
			for _, l := range []blanks.Layout{full, high, more, {Room: unit.MM(90)}}[:r.IntN(5)] {
				p.Sharings = append(p.Sharings, sharing(l, 50+r.Int64N(100), 50+r.Int64N(100)))
			}
			panels = append(panels, p)
		}
		salt := r.Uint64()
		asked := 0
		saw := func(l map[string]blanks.Layout) strips.Boards {
			asked++
			h := rand.New(rand.NewPCG(salt, hash(fmt.Sprint(l)))) // maps print in the order of their keys
			return strips.Boards{Faults: h.IntN(8) / 7, Bought: 3 + h.IntN(3), Price: 100 * int64(1+h.IntN(4)), Rack: h.IntN(3)}
		}
		most := 2 + r.IntN(12)
		if seed%2 == 0 {
			most = 10_000
		}
		c := strips.Choose(panels, saw, most, nil)
		if asked > most || c.Asked != asked {
			t.Errorf("seed %d: asked %d times of %d, counted %d", seed, asked, most, c.Asked)
		}
		if len(c.Layouts) > 0 {
			changed++
			if !c.Chosen.Better(c.Equal) || c.Chosen.Boards != saw(c.Layouts) {
				t.Errorf("seed %d: %+v is not better than %+v", seed, c.Chosen, c.Equal)
			}
		}
		if again := strips.Choose(panels, saw, most, nil); !reflect.DeepEqual(again, c) {
			t.Errorf("seed %d: %+v, and then %+v", seed, c, again)
		}
		if len(c.Layouts) == 0 || most < 10_000 {
			continue
		}
		for _, p := range panels {
			for _, s := range p.Sharings {
				other := map[string]blanks.Layout{}
				for m, l := range c.Layouts {
					other[m] = l
				}
				if other[p.Mark] = s.Layout; s.Layout == (blanks.Layout{}) {
					delete(other, p.Mark)
				}
				b := saw(other)
				is := c.Chosen
				if b.Faults < is.Faults || b.Faults == is.Faults && b.Price <= is.Price && b.Bought < is.Bought {
					t.Errorf("seed %d: %s in %v is better still", seed, p.Mark, s.Layout)
				}
			}
		}
	}
	if changed < 100 {
		t.Errorf("only %d changed", changed)
	}
}

func hash(s string) uint64 {
	h := uint64(14695981039346656037)
	for i := range len(s) {
		h = (h ^ uint64(s[i])) * 1099511628211
	}
	return h
}

func BenchmarkChoose(b *testing.B) {
	var panels []blanks.Panels
	for i := range 40 {
		panels = append(panels, panel(fmt.Sprintf("P%d", i), 2, []int64{140, 140}, sharing(full, 190, 90), sharing(more, 93, 93, 94)))
	}
	saw := func(l map[string]blanks.Layout) strips.Boards { return strips.Boards{Bought: 80 - len(l)%7} }
	b.ReportAllocs()
	for b.Loop() {
		strips.Choose(panels, saw, 12, nil)
	}
}
