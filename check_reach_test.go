package scantling_test

import "testing"

// TestNoFenceReaches: the sockets in the middle of boards 700 wide are beyond the fence of the
// router table. They are made another way, and none is left out of the plan.
func TestNoFenceReaches(t *testing.T) {
	r := planNamed(t, checkWorld(t, "tipping"), "over.piece.hcl", nil)
	if len(r.Plan.Setups) == 0 {
		t.Fatal("nothing is planned")
	}
	if tells("rehearsal-missing")(r) {
		t.Error("a cut is never made")
	}
}
