package scantling_test

import (
	"math"
	"testing"

	"scantling"
	"scantling/internal/diag"
	"scantling/internal/figure"
	"scantling/internal/plan"
)

// quantityOf finds the first quantity of a role in the findings of a code.
func quantityOf(findings []plan.Finding, code diag.Code, role string) (plan.Finding, plan.Quantity, bool) {
	for _, f := range findings {
		for _, q := range f.Figures {
			if f.Code == code && q.Role == role {
				return f, q, true
			}
		}
	}
	return plan.Finding{}, plan.Quantity{}, false
}

// TestQuantitiesOfTheChecks: what a verdict tells besides its two lengths has its value, its
// entry in the ledger and its source, and a range where its sources have one. Ratios are
// held against the two sizes of the same finding or document by hand.
func TestQuantitiesOfTheChecks(t *testing.T) {
	for _, c := range []struct {
		folder string
		code   diag.Code
		role   string
		value  float64 // nought: only that there is one
		ranged bool
		status figure.Status
	}{
		{"racking", "drawer-wider-than-long", plan.RoleRatio, 0, false, figure.Stated},
		{"racking", "drawer-wider-than-long", plan.RoleAsked, 1, false, figure.Practice},
		{"short-grain", "short-grain-at-end", plan.RoleRatio, 5.9 / 6, false, figure.Stated},
		{"short-grain", "short-grain-at-end", plan.RoleAsked, 1, false, figure.Practice},
		{"fronts", "fronts-touch", plan.RoleGrows, 0, false, ""}, // flat-sawn: one coefficient,
		{"cup", "cups-while-it-waits", plan.RoleWorst, 0, true, ""},
	} {
		r, err := scantling.Plan(t.Context(), checkWorld(t, c.folder), "fails.piece.hcl", scantling.Options{})
		if err != nil {
			t.Fatal(err)
		}
		f, q, ok := quantityOf(r.Plan.Findings, c.code, c.role)
		if !ok {
			t.Errorf("%s: %s tells no %q", c.folder, c.code, c.role)
			continue
		}
		if _, known := r.Plan.Ledger.Entry(q.Entry); !known || q.Source.Status == "" || c.status != "" && q.Source.Status != c.status {
			t.Errorf("%s %s: entry %d, source %+v", c.folder, c.role, q.Entry, q.Source)
		}
		x, low, high := q.Value.Float(), q.Low.Float(), q.High.Float()
		if c.value != 0 && math.Abs(x-c.value) > 1e-9 {
			t.Errorf("%s %s: %g, by hand %g", c.folder, c.role, x, c.value)
		}
		if x <= 0 || c.ranged != (low < x && x < high) || low > x || high != 0 && high < x {
			t.Errorf("%s %s: %g of %g to %g", c.folder, c.role, x, low, high)
		}
		if c.folder == "racking" && c.role == plan.RoleRatio && math.Abs(x-float64(f.Is.Nm)/float64(f.Limit.Nm)) > 1e-9 { // its limit is its width
			t.Errorf("ratio %g of %s by %s", x, mm(f.Is.Nm), mm(f.Limit.Nm))
		}
		if c.role == plan.RoleGrows {
			two := 0.0
			for _, q := range f.Figures {
				if q.Role == c.role {
					two += q.Value.Float()
				}
			}
			if room := float64(f.Limit.Nm); math.Abs(two+5e5-room) > 1 && math.Abs(q.Value.Float()*2+5e5-room) > 1 { // half a millimetre is left, see the check
				t.Errorf("both grow by %g, wanted are %g", two, room)
			}
		}
	}
}
