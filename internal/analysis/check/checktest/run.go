package checktest

import (
	"slices"
	"testing"

	"scantling/internal/analysis"
	"scantling/internal/diag"
	"scantling/internal/joinery"
	"scantling/internal/piece/trial"
	"scantling/internal/plan"
	"scantling/internal/shop"
	"scantling/internal/unit"
	"scantling/internal/words"
)

// Run runs a check, and all that it requires, on a piece in a shop. What it says
// must have words.
func Run(t testing.TB, b *trial.Builder, s *shop.Shop, check analysis.Check) []plan.Finding {
	t.Helper()
	if _, _, faults := joinery.Lower(&b.Piece, b.Ledger); len(faults) > 0 {
		t.Errorf("joint %s: %s", faults[0].Address, faults[0].Code)
	}
	return RunFaulty(t, b, s, check)
}

// RunFaulty is Run for a piece with joints that cannot be made.
func RunFaulty(t testing.TB, b *trial.Builder, s *shop.Shop, check analysis.Check) []plan.Finding {
	t.Helper()
	cuts, lowered, _ := joinery.Lower(&b.Piece, b.Ledger)
	c := &analysis.Context{Piece: &b.Piece, Cuts: cuts, Joints: lowered, Shop: s, Ledger: b.Ledger}
	report, err := analysis.Run(c, needs(nil, check))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range report.Findings {
		for _, fault := range words.Missing(f.Text) {
			t.Errorf("%s: %v", f.Code, fault)
		}
		for _, r := range f.Remedy {
			for _, fault := range words.Missing(r.Text) {
				t.Errorf("remedy of %s: %v", f.Code, fault)
			}
		}
	}
	if off := b.Ledger.Verify(); len(off) > 0 {
		t.Errorf("the ledger does not verify: %v", off)
	}
	return report.Findings
}

// needs lists a check and all that it requires, once each.
func needs(list []analysis.Analysis, a analysis.Analysis) []analysis.Analysis {
	if slices.Contains(list, a) {
		return list
	}
	for _, r := range a.Info().Requires {
		list = needs(list, r)
	}
	return append(list, a)
}

// Want checks that the findings are just those of the codes given, as often as
// given, in any order, and returns them by code.
func Want(t testing.TB, got []plan.Finding, status plan.Status, codes ...diag.Code) []plan.Finding {
	t.Helper()
	var is []diag.Code
	for _, f := range got {
		is = append(is, f.Code)
		if f.Status != status {
			t.Errorf("%s is %s, want %s", f.Code, f.Status, status)
		}
	}
	slices.Sort(is)
	slices.Sort(codes)
	if !slices.Equal(is, codes) {
		say := words.New(words.English, words.British, unit.Show{}, "")
		for _, f := range got {
			t.Logf("%s %s %s: %s", f.Status, f.Code, f.Address, say.Say(f.Text))
		}
		t.Fatalf("findings %v, want %v", is, codes)
	}
	return got
}
