package cutting_test

import (
	"testing"

	"scantling/internal/analysis/check/checktest"
	"scantling/internal/analysis/cutting"
	"scantling/internal/optimise/problem"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

// TestNarrowFeed: a strip of 39 beside a piece of 54 gives two of 30 × 480, which
// takes cuts of a piece 39 wide. A saw that takes nothing under 40 needs a second
// board: the long piece leaves no other way. Sizes by hand: 96 usable, 54 and a kerf
// of 3 leave 39; the saw takes 39 where its limit is 39.
func TestNarrowFeed(t *testing.T) {
	for _, c := range []struct {
		least int64
		used  string
	}{{0, "A: 1 + 0"}, {39, "A: 1 + 0"}, {40, "A: 2 + 0"}} {
		b := newBench()
		b.in.FeedShort = unit.MM(c.least)
		b.board("A", 1020, 100, 2, 100)
		b.pieces("A", "long", 1, 1000, 54)
		b.pieces("A", "short", 2, 480, 30)
		res, diags := b.decide(t)
		if got := used(res); got != c.used || len(diags) > 0 {
			t.Errorf("least %d: %s, want %s (%v)", c.least, got, c.used, diags)
		}
	}
}

// TestSawOfTheShop: the shop's saw bounds what is fed, of two the one that takes the
// shortest work; a shop without a saw bounds nothing.
func TestSawOfTheShop(t *testing.T) {
	s := checktest.Shop()
	saws := 0
	for i := range s.Machines {
		if s.Machines[i].Tool.Kind == tool.TableSaw {
			s.Machines[i].Tool.Least.Length = tool.Stated("least_length", unit.MM(180))
			s.Machines[i].Tool.Least.Width = tool.Stated("least_rip", unit.MM(12))
			other := s.Machines[i]
			other.ID = "small saw"
			other.Tool.Least.Length = tool.Stated("least_length", unit.MM(120))
			other.Tool.Least.Width = tool.Stated("least_rip", unit.MM(20))
			s.Machines = append(s.Machines, other)
			saws++
		}
	}
	if saws != 1 {
		t.Fatalf("the shop has %d table saws", saws)
	}
	if got := cutting.FeedOf(s); got != (problem.Feed{Long: unit.MM(120), Short: unit.MM(20)}) {
		t.Errorf("%v", got)
	}
	s.Machines = nil
	if got := cutting.FeedOf(s); got != (problem.Feed{}) {
		t.Errorf("%v", got)
	}
}
