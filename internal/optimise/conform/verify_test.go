package conform_test

import (
	"testing"

	"scantling/internal/optimise/conform"
	"scantling/internal/optimise/problem"
	"scantling/internal/unit"
)

// hand returns a small problem and an answer made by hand: a sheet of 1000 × 500
// with 10 trimmed at the start, kerf 5, one part of 400 × 200 and one of
// 585 × 200 turned from 200 × 585.
func hand() (problem.Problem, problem.Answer) {
	mm := unit.MM
	size := func(l, w int64) problem.Size { return problem.Size{Length: mm(l), Width: mm(w)} }
	box := func(x, y, l, w int64) problem.Box {
		return problem.Box{Point: problem.Point{Along: mm(x), Across: mm(y)}, Size: size(l, w)}
	}
	p := problem.Problem{
		Form: problem.Sheets, Kerf: mm(5), Useful: size(300, 200),
		Stock: []problem.Stock{{Size: size(1000, 500), Cost: 9, Limit: 1, Trim: problem.Trim{Start: mm(10)},
			Defects: []problem.Box{box(50, 300, 10, 10)}}},
		Parts: []problem.Part{
			{Size: size(400, 200), Quantity: 1},
			{Size: size(200, 585), Quantity: 1, Turn: true},
		},
		Cutting: problem.Cutting{Stages: 2, First: problem.Rip},
		Feed:    problem.Feed{Long: mm(500), Short: mm(100)},
	}
	strip := &problem.Node{Box: box(10, 0, 990, 200), Kind: problem.Sawn, Direction: problem.Crosscut, At: mm(400),
		Near: &problem.Node{Box: box(10, 0, 400, 200), Kind: problem.Finished},
		Far:  &problem.Node{Box: box(415, 0, 585, 200), Kind: problem.Finished, Part: 1, Turned: true},
	}
	root := &problem.Node{Box: box(10, 0, 990, 500), Kind: problem.Sawn, Direction: problem.Rip, At: mm(200), Near: strip,
		Far: &problem.Node{Box: box(10, 205, 990, 295), Kind: problem.Remnant},
	}
	return p, problem.Answer{
		Diagrams: []problem.Diagram{{Copies: 1, Root: root}},
		Cost:     9, Bound: 9, Proof: problem.ByMaterial, Status: problem.Proved,
	}
}

func TestHand(t *testing.T) {
	p, a := hand()
	if err := conform.Verify(p, a); err != nil {
		t.Fatal(err)
	}
}

// TestMutants checks that every single thing made wrong is seen.
func TestMutants(t *testing.T) {
	type mutant struct {
		name   string
		change func(*problem.Problem, *problem.Answer)
	}
	root := func(a *problem.Answer) *problem.Node { return a.Diagrams[0].Root }
	for _, m := range []mutant{
		{"kerf", func(p *problem.Problem, _ *problem.Answer) { p.Kerf++ }},
		{"part longer", func(p *problem.Problem, _ *problem.Answer) { p.Parts[0].Length++ }},
		{"part narrower", func(p *problem.Problem, _ *problem.Answer) { p.Parts[1].Length-- }},
		{"grain", func(p *problem.Problem, _ *problem.Answer) { p.Parts[1].Turn = false }},
		{"turned flag", func(_ *problem.Problem, a *problem.Answer) { root(a).Near.Far.Turned = false }},
		{"one too few", func(p *problem.Problem, _ *problem.Answer) { p.Parts[0].Quantity = 2 }},
		{"one too many", func(p *problem.Problem, _ *problem.Answer) { p.Parts[0].Quantity = 0 }},
		{"stock limit", func(_ *problem.Problem, a *problem.Answer) { a.Diagrams[0].Copies = 2; a.Cost = 18 }},
		{"cost", func(_ *problem.Problem, a *problem.Answer) { a.Cost = 8 }},
		{"bound above cost", func(_ *problem.Problem, a *problem.Answer) { a.Bound = 10 }},
		{"status", func(_ *problem.Problem, a *problem.Answer) { a.Status = problem.Gap }},
		{"proof", func(_ *problem.Problem, a *problem.Answer) { a.Proof = 0 }},
		{"trim", func(p *problem.Problem, _ *problem.Answer) { p.Stock[0].Trim.Start++ }},
		{"stock size", func(p *problem.Problem, _ *problem.Answer) { p.Stock[0].Width-- }},
		{"defect", func(p *problem.Problem, _ *problem.Answer) { p.Stock[0].Defects[0].Across = unit.MM(195) }},
		{"stages", func(p *problem.Problem, a *problem.Answer) {
			p.Cutting.First = problem.Crosscut // then the rip is the second stage and the crosscut a third
			p.Cutting.Exact = true
		}},
		{"feed", func(p *problem.Problem, _ *problem.Answer) { p.Feed.Long = unit.MM(991) }},
		{"feed width", func(p *problem.Problem, _ *problem.Answer) { p.Feed.Short = unit.MM(201) }},
		{"cut moved", func(_ *problem.Problem, a *problem.Answer) { root(a).At++ }},
		{"child left out", func(_ *problem.Problem, a *problem.Answer) { root(a).Far = nil }},
		{"child moved", func(_ *problem.Problem, a *problem.Answer) { root(a).Far.Across++ }},
		{"remnant called waste", func(_ *problem.Problem, a *problem.Answer) { root(a).Far.Kind = problem.Waste }},
		{"waste called remnant", func(p *problem.Problem, _ *problem.Answer) { p.Useful.Width = unit.MM(296) }},
		{"unknown part", func(_ *problem.Problem, a *problem.Answer) { root(a).Near.Near.Part = 2 }},
		{"unknown stock", func(_ *problem.Problem, a *problem.Answer) { a.Diagrams[0].Stock = 1 }},
		{"direction", func(_ *problem.Problem, a *problem.Answer) { root(a).Direction = problem.Crosscut }},
		{"part with children", func(_ *problem.Problem, a *problem.Answer) { root(a).Near.Near.Far = root(a).Far }},
		{"sequence not kept", func(p *problem.Problem, _ *problem.Answer) {
			p.Sequences = []problem.Sequence{{Parts: []int{1, 0}, Direction: problem.Crosscut}}
		}},
	} {
		p, a := hand()
		m.change(&p, &a)
		if conform.Verify(p, a) == nil {
			t.Errorf("%s: not seen", m.name)
		}
	}
	p, a := hand()
	p.Sequences = []problem.Sequence{{Parts: []int{0, 1}, Direction: problem.Crosscut}}
	if err := conform.Verify(p, a); err != nil {
		t.Errorf("a sequence that is kept: %v", err)
	}
}
