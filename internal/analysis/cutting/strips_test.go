package cutting_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/blanks"
	"scantling/internal/analysis/cutting"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// shared is a bench with panels to share out.
type shared struct {
	*bench
	from blanks.Input
}

// newShared has ash 2400 × 200 to be bought at 40, of which 2380 × 195 are used, and a
// jointer that takes it.
func newShared() *shared {
	s := &shared{bench: newBench()}
	s.in.Budget.Work = 1_000_000
	s.from = blanks.Input{Piece: &piece.Piece{}, Ledger: s.in.Ledger, Allowances: blanks.Usual(s.in.Ledger)}
	s.timber("ash", 200, 0, 40)
	return s
}

// timber adds boards of one thickness, in the rack or to be bought.
func (s *shared) timber(id string, width int64, have int, price int64) {
	b := s.board(id, 2400, width, have, price)
	b.Edge, b.Kind = s.in.Ledger.Leaf("edge", blanks.JointEdge, ledger.HouseRule, ""), "ash 27"
	s.from.Stock = append(s.from.Stock, blanks.Stock{ID: id, Species: "ash", Length: unit.MM(2400), Width: unit.MM(width), Thickness: unit.MM(27),
		End: unit.MM(10), Edge: blanks.JointEdge, Have: have})
}

// parts adds n parts of a mark, 20 thick.
func (s *shared) parts(mark string, n int, length, width int64) {
	r := plan.PartRow{Mark: mark, Material: "case", Species: "ash", Stage: "1", Length: s.fig(length), Width: s.fig(width), Thickness: s.fig(20)}
	for i := range n {
		a := address.Address("").Nth(mark, i+1)
		r.Members = append(r.Members, a)
		s.from.Piece.Parts = append(s.from.Piece.Parts, piece.Part{Address: a})
	}
	s.from.Rows = append(s.from.Rows, r)
}

// boards are those that it takes to cut the workpieces, with equal strips and as they
// are shared out, both counted in diagrams that are sawn up again.
func (s *shared) boards(t *testing.T) (equal, is string, chosen cutting.Chosen) {
	t.Helper()
	count := func(from blanks.Input, made []plan.Workpiece) string {
		in := s.in
		in.Ledger, in.Workpieces = from.Ledger, nil
		for _, w := range made {
			if w.Kind == plan.BlankPiece || w.Kind == plan.StripPiece {
				in.Workpieces = append(in.Workpieces, w)
			}
		}
		res, diags := cutting.Decide(t.Context(), in)
		for _, f := range recheck(in, res, diags) {
			t.Error(f)
		}
		return used(res)
	}
	from := s.from
	from.Ledger = s.from.Ledger.Clone()
	even, _ := blanks.Derive(from)
	equal = count(from, even)
	chosen, diags := cutting.Share(t.Context(), s.from, s.in)
	if len(diags) > 0 {
		t.Error(diags)
	}
	return equal, count(s.from, chosen.Workpieces), chosen
}

// TestShare: when strips that are not equal save boards, and when they do not. A blank
// is 12 longer and 5 wider than its part, a strip has 1 more at each edge.
func TestShare(t *testing.T) {
	for _, c := range []struct {
		name      string
		make      func(s *shared)
		equal, is string
		why       string
	}{
		// Equal strips of 144.5 lie one beside another on no board: two to a board, eight
		// in all. 195 and 94: four of 195 are two boards, four of 94 one, two abreast.
		{"four shelves of 280", func(s *shared) { s.parts("S", 4, 1100, 280) }, "ash: 0 + 4", "ash: 0 + 3", "strips.fewer-bought"},
		// The rests would be 114, of which no two lie abreast.
		{"four shelves of 300", func(s *shared) { s.parts("S", 4, 1100, 300) }, "ash: 0 + 4", "ash: 0 + 4", ""},
		// One of each: the rests of both, 94 and 84, lie abreast; neither does beside a strip
		// of the other that is half its width.
		{"two rests on one board", func(s *shared) { s.parts("S", 1, 2200, 280); s.parts("T", 1, 2200, 270) }, "ash: 0 + 4", "ash: 0 + 3", "strips.fewer-bought"},
		// Three strips of 137 leave 55 beside them, too little for rails of 65, of which three
		// lie abreast.
		{"a top and four rails", func(s *shared) { s.parts("T", 1, 2200, 400); s.parts("R", 4, 2200, 60) }, "ash: 0 + 5", "ash: 0 + 4", "strips.fewer-bought"},
		// The rack has four: with equal strips all would be cut.
		{"a board of the rack stays", func(s *shared) { s.in.Stock[0].Have, s.from.Stock[0].Have = 4, 4; s.parts("S", 4, 1100, 280) }, "ash: 4 + 0", "ash: 3 + 0", "strips.fewer-used"},
		// By area one board less cannot do.
		{"a panel that fills its boards", func(s *shared) { s.parts("S", 1, 2360, 381) }, "ash: 0 + 2", "ash: 0 + 2", ""},
	} {
		s := newShared()
		c.make(s)
		equal, is, chosen := s.boards(t)
		if equal != c.equal || is != c.is {
			t.Errorf("%s: %s with equal strips, %s as chosen; want %s and %s", c.name, equal, is, c.equal, c.is)
		}
		if chosen.Asked > cutting.Questions {
			t.Errorf("%s: the engine was asked %d times", c.name, chosen.Asked)
		}
		why := ""
		for _, w := range chosen.Workpieces {
			for _, m := range w.Why {
				if len(m.Key) > 6 && m.Key[:6] == "strips" {
					why = m.Key
				}
			}
		}
		if why != c.why || (c.why == "") != (len(chosen.Layouts) == 0) {
			t.Errorf("%s: the reason is %q, want %q; %v", c.name, why, c.why, chosen.Layouts)
		}
	}
}

// TestShareLaws, over random panels and rails: never more boards bought than with equal
// strips, and never fewer of the rack left without a board saved; what is told to be
// saved is what the diagrams say; the same answer again.
func TestShareLaws(t *testing.T) {
	saved := 0
	for seed := range uint64(9) {
		make := func() *shared {
			r := rand.New(rand.NewPCG(seed, 23))
			s := newShared()
			s.in.Budget.Work = 400_000
			if have := r.IntN(4); have > 0 {
				s.timber("ash narrow", 120+r.Int64N(60), have, 25)
			}
			for i := range 1 + r.IntN(3) {
				s.parts(fmt.Sprintf("P%d", i), 1+r.IntN(3), 500+r.Int64N(1600), 200+r.Int64N(250))
			}
			for i := range r.IntN(3) {
				s.parts(fmt.Sprintf("R%d", i), 1+r.IntN(4), 400+r.Int64N(1700), 30+r.Int64N(80))
			}
			return s
		}
		s := make()
		_, is, chosen := s.boards(t)
		e, c := chosen.Equal, chosen.Chosen
		if len(chosen.Layouts) > 0 {
			saved++
			if !c.Better(e) || c.Bought == e.Bought && c.Price == e.Price && c.Rack >= e.Rack && c.Faults == e.Faults {
				t.Errorf("seed %d: %+v for %+v", seed, c, e)
			}
			if got := count(is); got != c.Bought+c.Rack {
				t.Errorf("seed %d: %s, told %+v", seed, is, c)
			}
		} else if c != e {
			t.Errorf("seed %d: equal strips stay, and %+v is not %+v", seed, c, e)
		}
		if seed%3 > 0 {
			continue
		}
		again, _ := cutting.Share(t.Context(), make().from, s.in)
		if fmt.Sprint(again.Choice) != fmt.Sprint(chosen.Choice) {
			t.Errorf("seed %d: another choice", seed)
		}
	}
	if saved < 2 {
		t.Errorf("only %d save anything", saved)
	}
}

// count adds up what is used.
func count(used string) int {
	sum, n, in := 0, 0, false
	for i := range len(used) + 1 {
		if i < len(used) && in && used[i] >= '0' && used[i] <= '9' {
			n = 10*n + int(used[i]-'0')
			continue
		}
		sum, n = sum+n, 0
		if i < len(used) {
			in = used[i] == ':' || in && used[i] != ','
		}
	}
	return sum
}

func BenchmarkShare(b *testing.B) {
	s := newShared()
	s.parts("S", 2, 1100, 280)
	s.parts("T", 2, 900, 300)
	s.parts("U", 1, 1400, 420)
	s.parts("R", 6, 700, 60)
	b.ReportAllocs()
	for b.Loop() {
		cutting.Share(b.Context(), s.from, s.in)
	}
}
