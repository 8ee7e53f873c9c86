package optimise_test

import (
	"errors"
	"strings"
	"testing"

	"scantling/internal/optimise"
	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// TestBadOrders: what cannot be cut, or is no order, is refused before any work is done,
// and the message says which part or stock, by how much, and what would do.
func TestBadOrders(t *testing.T) {
	mm := unit.MM
	boards := func() problem.Problem {
		return problem.Problem{Kerf: mm(3),
			Stock: []problem.Stock{{ID: "oak", Size: problem.Size{Length: mm(2400)}, Cost: 7, Trim: problem.Trim{Start: mm(20)}}},
			Parts: []problem.Part{{ID: "rail", Size: problem.Size{Length: mm(500)}, Quantity: 2}, {ID: "leg", Size: problem.Size{Length: mm(720)}, Quantity: 4}}}
	}
	sheets := func() problem.Problem {
		return problem.Problem{Form: problem.Sheets, Kerf: mm(3),
			Stock: []problem.Stock{{ID: "ply", Size: problem.Size{Length: mm(2440), Width: mm(1220)}, Cost: 7}},
			Parts: []problem.Part{{ID: "side", Size: problem.Size{Length: mm(700), Width: mm(300)}, Quantity: 2}}}
	}
	for _, c := range []struct {
		name   string
		from   func() problem.Problem
		change func(*problem.Problem)
		why    problem.Reason
		words  []string
	}{
		{"longer than any board", boards, func(p *problem.Problem) { p.Parts[1].Length = mm(2381) }, problem.TooLong,
			[]string{"part 2 (leg) is 2381 mm long", "stock 1 (oak), has 2380 mm clear", "1 mm too little", "Stock with 2381 mm clear would do"}},
		{"longer by a nanometre", boards, func(p *problem.Problem) { p.Parts[1].Length = mm(2380) + 1 }, problem.TooLong, []string{"0.000001 mm too little"}},
		{"longer than what is clear of a defect", boards, func(p *problem.Problem) {
			p.Stock[0].Defects = []problem.Box{{Point: problem.Point{Along: mm(700)}, Size: problem.Size{Length: mm(1000)}}}
		}, problem.TooLong, []string{"part 2 (leg) is 720 mm long", "has 700 mm clear", "20 mm too little"}},
		{"wider than any sheet", sheets, func(p *problem.Problem) { p.Parts[0].Width = mm(1221) }, problem.TooLong,
			[]string{"part 1 (side) is 1221 mm wide", "1220 mm clear there: 1 mm too little"}},
		{"against the grain", sheets, func(p *problem.Problem) { p.Parts[0].Length, p.Parts[0].Width = mm(300), mm(1300) }, problem.TooLong, []string{"1300 mm wide", "80 mm too little"}},
		{"a row too long", boards, func(p *problem.Problem) {
			p.Sequences = []problem.Sequence{{Parts: []int{1, 1, 1, 1}, Direction: problem.Crosscut}}
		}, problem.TooLong, []string{"sequence from part 2 (leg) is 2889 mm long", "509 mm too little"}}, // 4 x 720 + 3 x 3
		{"too few boards", boards, func(p *problem.Problem) { p.Stock[0].Limit = 1 }, problem.Shortage, []string{"raise a limit"}},
		{"no size", boards, func(p *problem.Problem) { p.Parts[0].Length = 0 }, problem.BadSize, []string{"part 1 (rail): length 0 mm is not above 0"}},
		{"a negative size", boards, func(p *problem.Problem) { p.Parts[0].Length = -mm(5) }, problem.BadSize, []string{"length -5 mm"}},
		{"a negative kerf", boards, func(p *problem.Problem) { p.Kerf = -1 }, problem.BadSize, []string{"kerf of -0.000001 mm"}},
		{"the greatest number", boards, func(p *problem.Problem) { p.Parts[0].Length = 1<<63 - 1 }, problem.BadSize, []string{"part 1 (rail)", "at most"}},
		{"the least number", boards, func(p *problem.Problem) { p.Stock[0].Length = -1 << 63 }, problem.BadSize, []string{"stock 1 (oak)"}},
		{"trims that overflow", boards, func(p *problem.Problem) { p.Stock[0].Trim = problem.Trim{Start: 1 << 62, End: 1 << 62} }, problem.BadSize, []string{"stock 1 (oak): trim"}},
		{"trims that leave nothing", boards, func(p *problem.Problem) { p.Stock[0].Trim.End = mm(2380) }, problem.BadSize, []string{"leave nothing"}},
		{"a defect that overflows", boards, func(p *problem.Problem) {
			p.Stock[0].Defects = []problem.Box{{Point: problem.Point{Along: 1 << 62}, Size: problem.Size{Length: 1 << 62}}}
		}, problem.BadSize, []string{"stock 1 (oak): a defect"}},
		{"an absurd count", boards, func(p *problem.Problem) { p.Parts[0].Quantity = 1 << 60 }, problem.Count, []string{"part 1 (rail)", "not between 0 and 200000"}},
		{"counts that add up to one", boards, func(p *problem.Problem) { p.Parts[0].Quantity, p.Parts[1].Quantity = 150_000, 150_000 }, problem.Count, []string{"more than 200000 pieces", "split the order"}},
		{"a negative count", boards, func(p *problem.Problem) { p.Parts[0].Quantity = -1 }, problem.Count, []string{"part 1 (rail)", "quantity -1"}},
		{"an absurd limit", boards, func(p *problem.Problem) { p.Stock[0].Limit = -1 << 63 }, problem.Count, []string{"stock 1 (oak): limit"}},
		{"too many kinds", boards, func(p *problem.Problem) { p.Parts = make([]problem.Part, problem.MaxKinds+1) }, problem.Count, []string{"5001 kinds of parts", "at most 5000"}},
		{"nothing wanted", boards, func(p *problem.Problem) { p.Parts[0].Quantity, p.Parts[1].Quantity = 0, 0 }, problem.Empty, []string{"nothing to cut"}},
		{"a cost that overflows", boards, func(p *problem.Problem) { p.Stock[0].Cost = 1<<63 - 1 }, problem.Range, []string{"stock 1 (oak): cost"}},
		{"a negative value", sheets, func(p *problem.Problem) { p.Goal, p.Parts[0].Value = problem.MostValue, -1 }, problem.Range, []string{"part 1 (side): value -1"}},
		{"a part that no sequence has", boards, func(p *problem.Problem) {
			p.Sequences = []problem.Sequence{{Parts: []int{-1, 9}, Direction: problem.Crosscut}}
		}, problem.Malformed, []string{"names part number 0 of 2"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := c.from()
			if _, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 1000}); err != nil {
				t.Fatalf("the order without the fault is refused: %v", err)
			}
			c.change(&p)
			_, err := optimise.Solve(t.Context(), p, problem.Budget{})
			var f *problem.Fault
			if !errors.As(err, &f) || f.Reason != c.why {
				t.Fatalf("wanted a fault for %s, got %v", c.why, err)
			}
			for _, w := range c.words {
				if !strings.Contains(f.Text, w) {
					t.Errorf("%q does not say %q", f.Text, w)
				}
			}
		})
	}
}

// TestRemedyOfTooLong: the stock that the message asks for does, and a nanometre less
// does not.
func TestRemedyOfTooLong(t *testing.T) {
	p := problem.Problem{Kerf: unit.MM(3),
		Stock: []problem.Stock{{Size: problem.Size{Length: unit.MM(2000)}, Cost: 1, Trim: problem.Trim{Start: unit.MM(10), End: unit.MM(5)}}},
		Parts: []problem.Part{{Size: problem.Size{Length: 80 * unit.Inch}, Quantity: 1}}}
	var f *problem.Fault
	if _, err := optimise.Solve(t.Context(), p, problem.Budget{}); !errors.As(err, &f) || f.Have-f.Limit != 80*unit.Inch-unit.MM(1985) {
		t.Fatalf("%v", err)
	}
	p.Stock[0].Length += f.Have - f.Limit - 1
	if _, err := optimise.Solve(t.Context(), p, problem.Budget{}); !errors.As(err, &f) || f.Have-f.Limit != 1 {
		t.Errorf("a nanometre less: %v", err)
	}
	p.Stock[0].Length++
	if a, err := optimise.Solve(t.Context(), p, problem.Budget{}); err != nil || a.Cost != 1 || conform.Verify(p, a) != nil {
		t.Errorf("as asked for: %v %v", a.Cost, err)
	}
}

// TestGreatestNumbers: the largest lengths, costs and counts that are accepted are
// answered soundly, without overflow, within the work allowed.
func TestGreatestNumbers(t *testing.T) {
	for _, form := range []problem.Form{problem.Boards, problem.Sheets} {
		for _, part := range []unit.Length{unit.MaxLength, unit.MaxLength/3 - 1, unit.MaxLength / 5_001} {
			p := problem.Problem{Form: form, Kerf: 1,
				Stock: []problem.Stock{{Size: problem.Size{Length: unit.MaxLength, Width: unit.MaxLength}, Cost: problem.MaxCost}},
				Parts: []problem.Part{{Size: problem.Size{Length: part, Width: unit.MaxLength}, Quantity: problem.MaxPieces}}}
			a, err := optimise.Solve(t.Context(), p, problem.Budget{Work: 200_000})
			if err != nil {
				t.Errorf("form %d, parts of %v: %v", form, part, err)
				continue
			}
			if err := conform.Verify(p, a); err != nil {
				t.Errorf("form %d, parts of %v: %v", form, part, err)
			}
			// All but the last board are full: so many in one, by division.
			each := int64((unit.MaxLength + 1) / (part + 1))
			if want := problem.Cost((problem.MaxPieces+each-1)/each) * problem.MaxCost; a.Bound > want || a.Cost < want || a.Cost <= 0 {
				t.Errorf("form %d, parts of %v: cost %d, bound %d, by division %d", form, part, a.Cost, a.Bound, want)
			} else if a.Cost != want {
				t.Logf("form %d, parts of %v: cost %d, by division %d", form, part, a.Cost, want)
			}
		}
	}
}
