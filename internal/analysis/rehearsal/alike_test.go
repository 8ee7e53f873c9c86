package rehearsal

import (
	"testing"

	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestBoardsCutAlike: two boards on one diagram give a workpiece each at every
// place; one that is left out, named twice or not there is noticed.
func TestBoardsCutAlike(t *testing.T) {
	b := newBench()
	b.part("A1", 2, unit.MM(410), unit.MM(100), unit.MM(14))
	p := b.plan(t)
	if len(p.Diagrams) != 2 {
		t.Fatalf("%d diagrams", len(p.Diagrams))
	}
	one := p.Diagrams[0]
	merged := func(count int, also ...string) []plan.Diagram {
		g := one
		g.Count = count
		g.Pieces = []plan.Placed{one.Pieces[0]}
		g.Pieces[0].Also = also
		return []plan.Diagram{g}
	}
	second := p.Diagrams[1].Pieces[0].Workpiece
	for _, c := range []struct {
		name     string
		diagrams []plan.Diagram
		pass     bool
	}{
		{"one each", merged(2, second), true},
		{"the second left out", merged(1), false},
		{"the first from both", merged(2), false},
		{"the first twice", merged(2, one.Pieces[0].Workpiece), false},
		{"a third board", merged(3, second), false},
		{"one that is nowhere", merged(2, "elsewhere"), false},
	} {
		q := *p
		q.Diagrams = c.diagrams
		r := newRehearsal(Input{Plan: &q, Cuts: b.cuts, Machines: b.shop.Machines, Cutters: b.shop.Cutters})
		r.diagrams()
		if passed := len(r.findings) == 0; passed != c.pass {
			t.Errorf("%s: %s", c.name, say(r.findings))
		}
	}
}
