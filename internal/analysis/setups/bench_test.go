package setups

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"scantling/internal/address"
	"scantling/internal/analysis/operations"
	"scantling/internal/ledger"
	"scantling/internal/piece"
	"scantling/internal/plan"
	"scantling/internal/tool"
	"scantling/internal/unit"
)

const um = unit.Micrometre

// bench is a workbench for tests: a shop, a piece, its rows.
type bench struct {
	l    *ledger.Ledger
	p    *piece.Piece
	rows []plan.PartRow
	wps  []plan.Workpiece
	cuts []piece.Cut
	shop operations.Workshop
}

func newBench() *bench {
	b := &bench{l: ledger.New(nil), p: &piece.Piece{Name: "test"}}
	router := tool.Machine{Name: "router table", Kind: tool.RouterTable, Least: tool.Limits{Length: tool.Stated("least_length", unit.MM(305))}, Accuracy: tool.Stated("accuracy", 100*um)}
	saw := tool.Machine{Name: "table saw", Kind: tool.TableSaw, Least: tool.Limits{Length: tool.Stated("least_length", unit.MM(150))}, Kerf: tool.Stated("kerf", unit.MM(3)), Accuracy: tool.Stated("accuracy", 200*um)}
	b.shop = operations.Workshop{
		Machines: []tool.Machine{
			saw, router,
			{Name: "jointer", Kind: tool.Jointer, Least: tool.Limits{Length: tool.Stated("least_length", unit.MM(300))}},
			{Name: "thicknesser", Kind: tool.ThicknessPlaner, Least: tool.Limits{Length: tool.Stated("least_length", unit.MM(305))}},
			{Name: "drill press", Kind: tool.DrillPress},
		},
		Cutters: []tool.Cutter{
			{Name: "straight 6.35", Shape: tool.Straight, Diameter: 6350 * um, CuttingLength: unit.MM(19)},
			{Name: "straight 12.7", Shape: tool.Straight, Diameter: 12700 * um, CuttingLength: unit.MM(25)},
			{Name: "round-nose 6.35", Shape: tool.RoundNose, Diameter: 6350 * um},
			{Name: "round-nose 12.7", Shape: tool.RoundNose, Diameter: 12700 * um},
			{Name: "round-nose 25.4", Shape: tool.RoundNose, Diameter: 25400 * um, Greatest: 22000},
			{Name: "drill 5", Shape: tool.Drill, Diameter: unit.MM(5)},
		},
		Reach: map[string]unit.Length{"router table": unit.MM(320)},
	}
	return b
}

func (b *bench) fig(l unit.Length) piece.Figure {
	return b.l.Leaf("test", l, ledger.Document, "")
}

// part adds a part of its own row: length to the right, width back, thickness up.
func (b *bench) part(mark string, length, width, thickness unit.Length) address.Address {
	a := address.Address("part." + mark)
	b.p.Parts = append(b.p.Parts, piece.Part{
		Address: a, Name: mark, Frame: piece.Frame{Length: piece.ToRight, Width: piece.ToBack, Thickness: piece.ToUp},
		Length: b.fig(length), Width: b.fig(width), Thickness: b.fig(thickness),
	})
	b.rows = append(b.rows, plan.PartRow{
		Mark: mark, Name: mark, Members: []address.Address{a}, Species: "cherry", Stage: "1",
		Length: b.fig(length), Width: b.fig(width), Thickness: b.fig(thickness),
	})
	return a
}

// slot adds a slot across its part's third axis, from near to far.
func (b *bench) slot(on address.Address, kind piece.CutKind, open piece.Side, run piece.Local, near, far, depth, corner unit.Length) *piece.Cut {
	var size [3]unit.Length
	for _, p := range b.p.Parts {
		if p.Address == on {
			size = [3]unit.Length{p.Length.Nm, p.Width.Nm, p.Thickness.Nm}
		}
	}
	b.cuts = append(b.cuts, piece.Cut{
		Address: on.Nth(string(kind), len(b.cuts)+1), Kind: kind, Part: on,
		Slot: &piece.Slot{
			Open: open, Run: run, From: b.fig(0), To: b.fig(size[run]), StartOpen: true, EndOpen: true,
			Near: b.fig(near), Far: b.fig(far), Depth: b.fig(depth), Corner: b.fig(corner),
		},
	})
	return &b.cuts[len(b.cuts)-1]
}

func (b *bench) decide(t *testing.T) Result {
	t.Helper()
	derived, list := operations.Derive(operations.Input{Piece: b.p, Cuts: b.cuts, Rows: b.rows, Workpieces: b.wps, Shop: b.shop, Ledger: b.l})
	for _, dg := range list {
		t.Logf("%s: %v", dg.Code, dg.Text)
		for _, r := range dg.Related {
			t.Logf("   %v", r.Text)
		}
	}
	res, more := Decide(Input{Piece: b.p, Rows: b.rows, Workpieces: b.wps, Derived: derived, Shop: b.shop, Ledger: b.l})
	for _, dg := range more {
		t.Logf("%s: %v", dg.Code, dg.Text)
	}
	return res
}

// values returns the figures of a setting over a card's placements, in order,
// each as millimetres.
func values(c plan.Setup, word string) []float64 {
	var out []float64
	for _, p := range c.Placements {
		for _, s := range p.Settings {
			if s.Word == word {
				out = append(out, s.Figure.Nm.Millimetres())
			}
		}
	}
	return out
}

// closed fails the test unless every sum of the card closes to the nanometre.
func closed(t *testing.T, c plan.Setup) {
	t.Helper()
	sums := c.Sums
	for _, p := range c.Placements {
		sums = append(sums, p.Sums...)
	}
	for _, s := range sums {
		var total unit.Length
		for _, term := range s.Terms {
			total += term.Figure.Nm
		}
		if total != s.Total.Nm {
			t.Errorf("%s, %s: terms make %d, total %d", c.ID, s.Title.Key, total, s.Total.Nm)
		}
	}
}

func equal(a, b []float64) bool { return fmt.Sprint(a) == fmt.Sprint(b) }

func rng(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 1)) }
