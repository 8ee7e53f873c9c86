package scantling_test

import (
	"math"
	"slices"
	"testing"

	"scantling"
	"scantling/internal/analysis/operations"
	"scantling/internal/analysis/rehearsal"
	"scantling/internal/diag"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestLidShut: the drawn and shown box is the shut one: each wall in two, the base's
// half up to 50.6, the lid's from there to 82.2, the top at 5 below.
func TestLidShut(t *testing.T) {
	r := planExample(t, "bottle-box", nil)
	near := func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }
	walls := 0
	for _, p := range r.Plan.Piece.Parts {
		ready := r.Solids().Ready(p.Address)
		if !r.Plan.Piece.Sawn[0].Wall(p.Address) {
			if len(ready) != 1 {
				t.Errorf("%s stands in %d", p.Address, len(ready))
			}
			continue
		}
		walls++
		if len(ready) != 2 {
			t.Fatalf("%s stands in %d", p.Address, len(ready))
		}
		low, high := ready[0].Bounds()
		from, to := ready[1].Bounds()
		if !near(low.Z, 0) || !near(high.Z, 50.6) || !near(from.Z, 50.6) || !near(to.Z, 82.2) {
			t.Errorf("%s: base %v to %v, lid %v to %v", p.Address, low.Z, high.Z, from.Z, to.Z)
		}
	}
	if walls != 4 {
		t.Errorf("%d walls", walls)
	}
	if _, top := r.Solids().Ready("box.top")[0].Bounds(); !near(top.Z, 77.2) {
		t.Errorf("the top lies at %v", top.Z)
	}
}

// TestLidGoesOffFirst: what stands in the box goes in when the lid is off, and nothing
// does where none is sawn off.
func TestLidGoesOffFirst(t *testing.T) {
	r := planExample(t, "bottle-box", nil)
	first := r.Plan.Removals[0]
	if first.Group != "" || len(first.Taken) != 1 || first.Taken[0] != "box.lid" || first.Way != "up" {
		t.Errorf("first comes off %v, %s", first.Taken, first.Way)
	}
	at := func(id string) int {
		return slices.IndexFunc(r.Plan.Steps, func(s plan.Step) bool { return s.ID == id })
	}
	lid := slices.IndexFunc(r.Plan.Steps, func(s plan.Step) bool { return s.Text.Key == "steps.lid" })
	if lid < at("assemble: box") || at("hardware: hardware.hinge") < lid {
		t.Errorf("glued at %d, sawn at %d, hinged at %d", at("assemble: box"), lid, at("hardware: hardware.hinge"))
	}
	closed := planExample(t, "bottle-box", nil, "  on    = box\n", "  on    = box\n  if    = false\n")
	if !slices.Contains(codes(closed), "assembly-locked") {
		t.Errorf("a closed box takes its dividers: %v", codes(closed))
	}
}

// TestLidByHand: by hand the lines are marked on the walls, the card is the bench's, and
// a handsaw loses 1: 61 + 21.2 + 1 = 83.2.
func TestLidByHand(t *testing.T) {
	r := planExample(t, "bottle-box", nil, "  clean = 0 ", "  saw   = \"hand\"\n  clean = 0 ")
	want(t, "side", sizesOf(t, r, "box.side.left"), "144 83.2 10")
	if r.HasErrors() || slices.Contains(codes(r), "lid-by-hand") {
		t.Errorf("%v", codes(r))
	}
	card := slices.IndexFunc(r.Plan.Setups, func(s plan.Setup) bool {
		return s.Machine == operations.Hand && len(s.Placements[0].Cuts) > 0 && s.Placements[0].Cuts[0].Last().Name == "lid"
	})
	if card < 0 {
		t.Fatal("no card tells of the lid")
	}
	for _, p := range r.Plan.Setups[card].Placements { // edge 1 is the upper one
		want(t, p.Mark, mm(p.Settings[0].Figure.Nm, p.Settings[1].Figure.Nm), "31.6 32.6")
	}
}

// TestLidSlips: the rehearsal reads the card alone: a fence 1 off, a blade through the
// wall, the base against the fence.
func TestLidSlips(t *testing.T) {
	for _, c := range []struct {
		name string
		slip func(*plan.Setup)
		code diag.Code
	}{
		{"as printed", func(*plan.Setup) {}, rehearsal.CodeDone},
		{"fence", func(s *plan.Setup) { s.Placements[0].Settings[0].Figure.Nm += unit.Millimetre }, rehearsal.CodeCut},
		{"blade", func(s *plan.Setup) { s.Settings[0].Figure.Nm = unit.MM(10) }, rehearsal.CodeHold},
		{"blade too low", func(s *plan.Setup) { s.Settings[0].Figure.Nm = unit.MM(6) }, rehearsal.CodeHold},
		{"turned over", func(s *plan.Setup) { s.Placements[0].Fence = s.Placements[0].Fence.Opposite() }, rehearsal.CodeCut},
	} {
		r := planExample(t, "bottle-box", nil)
		at := slices.IndexFunc(r.Plan.Setups, func(s plan.Setup) bool { return s.Title.Key == "setups.title.lid" })
		c.slip(&r.Plan.Setups[at])
		if found := rehearsed(r); !slices.ContainsFunc(found, func(f plan.Finding) bool { return f.Code == c.code }) {
			t.Errorf("%s: %v", c.name, found)
		}
	}
}

func rehearsed(r *scantling.Result) []plan.Finding {
	shop := operations.Of(r.Shop)
	found, _ := rehearsal.Check(rehearsal.Input{Plan: r.Plan, Cuts: r.Plan.Piece.Cuts, Machines: shop.Machines, Cutters: shop.Cutters})
	return found
}
