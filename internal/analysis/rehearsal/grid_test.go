package rehearsal_test

import (
	"fmt"
	"os"
	"testing"

	"scantling/internal/analysis"
	"scantling/internal/analysis/cutting"
	"scantling/internal/analysis/marks"
	"scantling/internal/analysis/operations"
	"scantling/internal/analysis/rehearsal"
	"scantling/internal/analysis/sequence"
	"scantling/internal/analysis/setups"
	"scantling/internal/analysis/stages"
	"scantling/internal/evaluate"
	"scantling/internal/joinery"
	"scantling/internal/plan"
)

// TestGrid carries the demonstration piece out over a grid of its inputs, without
// cutting diagrams; one in seventeen unless all are asked for.
func TestGrid(t *testing.T) {
	n, done, hand, placements := 0, 0, 0, 0
	src := sources(t)
	for _, drawers := range []string{"2", "3", "4", "5"} {
		for _, length := range []string{"250", "300", "350", "400"} {
			for _, side := range []string{"12", "14", "18"} {
				for _, head := range []string{"8", "12", "16"} {
					for _, wide := range []string{"160", "220", "420"} {
						if n++; n%17 != 0 && os.Getenv("LONG") == "" {
							continue
						}
						src.Inputs = map[string]string{"drawers": drawers, "needle_length": length, "side_thickness": side, "head_diameter": head, "least_width": wide}
						h, all := carriedOut(t, src)
						done, hand, placements = done+1, hand+h, placements+all
					}
				}
			}
		}
	}
	t.Logf("%d of %d sizes carried out; %d of %d cuts by hand", done, n, hand, placements)
}

// quick plans a piece without cutting diagrams.
func quick(t *testing.T, src evaluate.Sources) (*plan.Plan, rehearsal.Input) {
	t.Helper()
	e := evaluate.Piece(src)
	cuts, low, faults := joinery.Lower(e.Piece, e.Ledger)
	for _, d := range append(e.Diagnostics, faults...) {
		t.Errorf("%v: %s %s %v", src.Inputs, d.Code, d.Address, d.Text)
	}
	c := &analysis.Context{Piece: e.Piece, Cuts: cuts, Joints: low, Shop: e.Shop, Ledger: e.Ledger}
	if _, err := analysis.Run(c, []analysis.Analysis{marks.Analysis, stages.Analysis, cutting.Strips}); err != nil {
		t.Fatal(err)
	}
	s, shop, workpieces := stages.Analysis.Get(c), operations.Of(e.Shop), cutting.Strips.Get(c).Workpieces
	derived, _ := operations.Derive(operations.Input{Piece: e.Piece, Cuts: c.AllCuts(), Rows: s.Rows, Stages: s.Stages, Workpieces: workpieces, Shop: shop, Ledger: e.Ledger})
	cards, _ := setups.Decide(setups.Input{Piece: e.Piece, Rows: s.Rows, Workpieces: workpieces, Derived: derived, Shop: shop, Ledger: e.Ledger})
	steps, _ := sequence.Decide(sequence.Input{
		Piece: e.Piece, Cuts: c.AllCuts(), Rows: s.Rows, Stages: s.Stages, Measures: s.Measures, Workpieces: workpieces,
		Operations: cards.Operations, Setups: cards.Setups,
	})
	p := &plan.Plan{Piece: e.Piece, Parts: s.Rows, Stages: s.Stages, Workpieces: workpieces, Operations: cards.Operations, Setups: cards.Setups, Steps: steps, Ledger: e.Ledger}
	return p, rehearsal.Input{Plan: p, Cuts: c.AllCuts(), Machines: shop.Machines, Cutters: shop.Cutters}
}

// carriedOut plans and rehearses and counts the cuts by hand.
func carriedOut(t *testing.T, src evaluate.Sources) (hand, all int) {
	t.Helper()
	p, in := quick(t, src)
	findings, _ := rehearsal.Check(in)
	for _, f := range findings {
		if f.Status != plan.Pass {
			t.Errorf("%v: %s %s %s", src.Inputs, f.Code, f.Address, fmt.Sprint(f.Text))
		}
	}
	for _, card := range p.Setups {
		for _, q := range card.Placements {
			all += len(q.Cuts)
			if card.Machine == operations.Hand {
				hand += len(q.Cuts)
			}
		}
	}
	return hand, all
}
