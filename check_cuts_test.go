package scantling_test

import (
	"slices"
	"testing"

	"scantling/internal/diag"
	"scantling/internal/plan"
	"scantling/internal/unit"
)

// TestCutsInDocuments holds the checks of how cuts are made, and of what was read, to what
// else they tell than in their three documents: by a hair where there is one.
func TestCutsInDocuments(t *testing.T) {
	for _, c := range []struct {
		check, which string
		status       plan.Status
		code         diag.Code // none: the check is silent
	}{
		{"blind", "alone", plan.Fail, "blind-cut-without-a-way"},
		{"blind", "plunge", plan.Pass, ""},
		{"blind", "fixed", plan.Fail, "blind-work-too-short"},
		{"blind", "deep", plan.Fail, "blind-pass-too-deep"},
		{"speeds", "big", plan.Pass, ""},
		{"speeds", "deep", plan.Fail, "pass-too-deep"},
		{"speeds", "nought", plan.Unknown, "pass-not-said"},
		{"speeds", "huge", plan.Fail, "cutter-too-big"},
		{"exposed", "loose", plan.Fail, "dowel-exposed"},
		{"exposed", "away", plan.Pass, ""},
		{"reading", "square", plan.Fail, "opening-not-square"},
		{"reading", "off", plan.Fail, "reading-far-from-plan"},
		{"reading", "cut", plan.Fail, "larger-than-reading"},
	} {
		t.Run(c.check+" "+c.which, func(t *testing.T) {
			if c.code != "" {
				oneFinding(t, c.check, c.which, c.status, c.code)
				return
			}
			if got := findingsOf(t, c.check, c.which); len(got) != 0 {
				t.Errorf("%v", got)
			}
		})
	}
}

// TestHouseRulesInDocuments: what fails by a hair is put up with by a house that says so.
func TestHouseRulesInDocuments(t *testing.T) {
	for check, rule := range map[string]string{"hidden": "hairline", "exposed": "over a dowel", "sag": "sag to the foot"} {
		if got := findingsOf(t, check, "fails"); len(got) != 1 || got[0].Rule != rule {
			t.Errorf("%s: %v does not say that %q changes its limit", check, got, rule)
		}
		if got := findingsOf(t, check, "ruled"); len(got) != 0 {
			t.Errorf("%s: %v", check, got)
		}
	}
}

// TestMoistures: a panel that binds is told with how damp its wood is today and then.
func TestMoistures(t *testing.T) {
	found := findingsOf(t, "panel room", "fails")
	if len(found) != 1 {
		t.Fatal(found)
	}
	roles := map[string]bool{}
	for _, q := range found[0].Figures {
		if roles[q.Role] = true; q.Role == plan.RoleToday || q.Role == plan.RoleThen {
			if q.Value.Dim() != unit.DimMoisture || q.Source.Key != "timber.emc" || q.Entry == 0 {
				t.Errorf("%s: %+v", q.Role, q.Estimate)
			}
		}
	}
	if !roles[plan.RoleLimit] || !roles[plan.RoleToday] || !roles[plan.RoleThen] {
		t.Errorf("told with %v", roles)
	}
}

// TestPassRemedy: the house's rule stands in the shop's document, and is mended there.
func TestPassRemedy(t *testing.T) {
	found := findingsOf(t, "speeds", "deep")
	if len(found) != 1 || len(found[0].Remedy) != 1 || len(found[0].Remedy[0].Edits) != 1 || found[0].Remedy[0].Edits[0].File != "deep.hcl" {
		t.Fatalf("%+v", found)
	}
	applyRemedy(t, checkWorld(t, "speeds"), "deep.piece.hcl", found[0].Remedy[0], nil, found[0])
}

// TestPlungeTakesIt: where the shop has a plunge router the card is its own, and its
// stops are told for the work as it is clamped.
func TestPlungeTakesIt(t *testing.T) {
	r := planNamed(t, checkWorld(t, "blind"), "plunge.piece.hcl", nil)
	i := slices.IndexFunc(r.Plan.Setups, func(s plan.Setup) bool { return s.Cutter != "" })
	if i < 0 || r.Plan.Setups[i].Machine != "router" {
		t.Fatalf("%+v", r.Plan.Setups)
	}
	// The mouth of a channel 3 deep of 3.175 reaches 3.17 from the centre: 280 - 3.17 from one
	// end and 304.9 - 20 - 3.17 from the other.
	want(t, "halts", settingsOf(r, "round-nose 6.35", "left end to cutter at right stop")+" "+settingsOf(r, "round-nose 6.35", "right end to cutter at left stop"), "276.83 281.73")
}
