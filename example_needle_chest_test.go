package scantling_test

import (
	"slices"
	"testing"

	"scantling/internal/address"
	"scantling/internal/plan"
)

// TestNeedleChestLoaded: 24 needles of 8 g are 192 g, so the chest's mass, and how it stands
// with its drawers out, are known loaded as well as empty. It stands in all of them.
func TestNeedleChestLoaded(t *testing.T) {
	p := planExample(t, "needle-chest", nil).Plan
	by := map[string][]plan.Standing{}
	for _, s := range p.Strength.Standing {
		by[s.Case] = append(by[s.Case], s)
		if !s.Mass.Known() || !s.Holds.Known() || s.Holds.Low.Float() <= 0 {
			t.Errorf("%s, out %v: mass %v, holds %v", s.Case, s.Out, s.Mass, s.Holds)
		}
	}
	// Shut, each of three drawers out, the worst two together, all three.
	if len(by["empty"]) != 6 || len(by["loaded"]) != 6 {
		t.Fatalf("%d cases empty, %d loaded", len(by["empty"]), len(by["loaded"]))
	}
	if more := by["loaded"][0].Mass.Value.Float() - by["empty"][0].Mass.Value.Float(); more < 191.9 || more > 192.1 {
		t.Errorf("the needles weigh %.1f g, by hand 192", more)
	}
	known := 0
	for _, s := range p.Strength.Shelves {
		for _, l := range s.Loads {
			if l.Case == "contents" && slices.Contains([]address.Address{"drawer[1].bottom", "drawer[2].bottom", "drawer[3].bottom"}, s.Part) && l.AtOnce.Known() {
				known++
			}
		}
	}
	if known != 3 {
		t.Errorf("how far the bottoms sag is known of %d drawers of 3", known)
	}
}

// TestNeedleChestDividersRead: who wants to read the dividers' length from the case asks for
// it in four lines; the case is tried without them, and nothing is glued before.
func TestNeedleChestDividersRead(t *testing.T) {
	const before = "measure \"openings\" {\n"
	r := planExample(t, "needle-chest", nil, before, `measure "dividers" {
  of     = case.divider
  take   = ["length"]
  before = [case.divider]
}

`+before)
	if got := codes(r); slices.Contains(got, "rehearsal-order") {
		t.Error(got)
	}
	at := func(id string) int {
		return slices.IndexFunc(r.Plan.Steps, func(s plan.Step) bool { return s.ID == id })
	}
	if a, b, c := at("try: measure.dividers"), at("measure: measure.dividers"), at("assemble: case"); a < 0 || a >= b || b >= c {
		t.Errorf("tried at %d, read at %d, glued at %d", a, b, c)
	}
}
